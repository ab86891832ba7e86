#pragma once
// Table: a board, with all that is on it, or a supply or an instrument follows the pointer over the table. A board docks to another that it
// comes near to. Begins with the button down, or carried with the button up; then arrows move it, with Ctrl five pitches, and Enter lets go.

#include "core/base/result.h"
#include "ui/gesture/gesture.h"

namespace tiepoint::ui {

class TableGesture : public Gesture {
public:
    /// `thing`: the id of a board, or of a part that stands on the table.
    TableGesture(Hand& hand, std::string thing) : Gesture(hand), thing_(std::move(thing)) {}

    void press(const Pointer& pointer) override { from_ = pointer.at; }
    bool canLeaveSight() const override { return true; }
    void move(const Pointer& pointer) override;
    void release(const Pointer& pointer) override;
    void cancel() override { hand().clearMarks(); }
    bool key(int key, const Pointer& pointer) override;

private:
    const Board* board() const { return bench().findBoard(thing_); }
    Point cornerMm() const;
    /// Where it would come to lie, in pitches.
    Point landing(const Pointer& pointer) const;
    Result<Edit> editTo(Point at) const;
    std::string wordsAt(Point at) const;
    Point onTable(Point at) const;
    std::shared_ptr<const Bench> carriedTo(Point at) const;

    std::string thing_;
    Point from_;
};

}  // namespace tiepoint::ui
