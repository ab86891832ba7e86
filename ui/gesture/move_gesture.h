#pragma once
// Move: everything selected follows the pointer in whole holes, on its board or onto another; ends in rails go along. A single part also
// turns with [ and ].

#include "core/edit/group.h"
#include "ui/gesture/gesture.h"

namespace tiepoint::ui {

/// Parts, jumpers and notes after a step. Empty operations: nothing to do.
struct Shift {
    std::vector<Operation> operations;  ///< none if anything is refused
    std::vector<Hole> targets;
    Group group;          ///< where they would go, refused or not
    std::string refused;  ///< the first reason
};
/// `placer` must be of that bench, with what moves of `ids` away.
Shift shiftThings(const Bench& bench, const GroupPlacer& placer, const std::vector<std::string>& ids, const Step& step);
Shift shiftThings(const Bench& bench, const std::vector<std::string>& ids, const Step& step);

class MoveGesture : public Gesture {
public:
    MoveGesture(Hand& hand, std::string thing) : Gesture(hand), thing_(std::move(thing)) {}

    void press(const Pointer& pointer) override;
    bool canLeaveSight() const override { return true; }
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
        std::optional<Jumper> drawn;         ///< out of a socket, which isn't on the boards
        std::shared_ptr<const Bench> group;  ///< all that moves, where it would go
    };
    Aim aim(const Pointer& pointer) const;
    Aim aimSinglePart(const Pointer& pointer, const Part& part) const;
    Aim aimGroup(const Pointer& pointer, const std::vector<std::string>& ids) const;
    std::optional<Hole> leadingHole(const std::vector<std::string>& ids) const;
    std::optional<Shift> shiftTo(const Pointer& pointer, const std::vector<std::string>& ids) const;
    std::shared_ptr<const Bench> carried(Group group) const;
    std::vector<std::string> moving() const;
    bool standsOnTable() const;

    std::string thing_;
    Point from_;
    int quarterTurns_ = 0;                         ///< since the press
    mutable std::unique_ptr<GroupPlacer> placer_;  ///< made for the first step that is tried
};

}  // namespace tiepoint::ui
