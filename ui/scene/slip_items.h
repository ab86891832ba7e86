#pragma once
// What lies over everything else for a hand: notes, and the tags of pinned readings. They are drawn with the words (note_painter.h,
// pinned_painter.cpp); the items only say where they lie.

#include "ui/scene/bench_item.h"

namespace tiepoint::ui {

class NoteItem : public BenchItem {
public:
    using BenchItem::BenchItem;

    void follow(int index, bool restyled) override;
    bool meet(Point at, Under& under) const override;
    QPainterPath shape() const override;

private:
    QRectF frame_;  ///< of the paper; the knot is at the hole
};

class TagItem : public BenchItem {
public:
    using BenchItem::BenchItem;

    void follow(int index, bool restyled) override;  ///< of the picture's tags
    bool meet(Point at, Under& under) const override;
    QPainterPath shape() const override;

private:
    PinnedTag tag_;
};

}  // namespace tiepoint::ui
