#pragma once
// Move: everything selected follows the pointer in whole holes. A single part may also go to another board, and turns with [ and ].

#include "ui/gesture/gesture.h"

namespace tiepoint::ui {

class MoveGesture : public Gesture {
public:
    MoveGesture(Hand& hand, std::string thing) : Gesture(hand), thing_(std::move(thing)) {}

    void press(const Pointer& pointer) override;
    void move(const Pointer& pointer) override;
    void release(const Pointer& pointer) override;
    void cancel() override { hand().clearMarks(); }
    bool key(int key, const Pointer& pointer) override;

private:
    struct Aim {
        std::vector<Operation> operations;
        std::vector<Hole> targets;
        std::string refused;  ///< why nothing of it may be done, or empty
        std::optional<Part> part;
        std::shared_ptr<const Bench> group;  ///< all that moves, where it would go
    };
    Aim aim(const Pointer& pointer) const;
    Aim aimSinglePart(const Pointer& pointer, const Part& part) const;
    Aim aimGroup(const Pointer& pointer, const std::vector<std::string>& ids) const;
    std::shared_ptr<const Bench> carried(std::vector<Part> parts, std::vector<Jumper> jumpers) const;
    std::vector<std::string> moving() const;
    bool standsOnTable() const;

    std::string thing_;
    Point from_;
    int quarterTurns_ = 0;  ///< since the press
};

/// Parts, jumpers and notes shifted by whole columns and rows. Empty operations: nothing to do.
struct Shift {
    std::vector<Operation> operations;  ///< none if anything is refused
    std::vector<Hole> targets;
    std::vector<Part> parts;      ///< where they would go, refused or not
    std::vector<Jumper> jumpers;  ///< the same
    std::string refused;          ///< the first reason
};
Shift shiftThings(const Bench& bench, const std::vector<std::string>& ids, int columns, int rows);

}  // namespace tiepoint::ui
