#pragma once
// What lies over the parts and hides them: notes, and the tags of pinned readings.

#include "ui/scene/bench_item.h"

namespace tiepoint::ui {

class NoteItem : public BenchItem {
public:
    using BenchItem::BenchItem;

    void follow(int index, bool restyled) override;
    void addPatches(Patches& patches) const override;
    bool meet(Point at, Under& under) const override;
    QPainterPath shape() const override;

private:
    int index_ = -1;
    QRectF frame_;  ///< of the slip; the pin is the hole's
};

class TagItem : public BenchItem {
public:
    using BenchItem::BenchItem;

    void follow(int index, bool restyled) override;  ///< of the picture's tags
    void addPatches(Patches& patches) const override;
    bool meet(Point at, Under& under) const override;
    QPainterPath shape() const override;

private:
    PinnedTag tag_;
};

}  // namespace tiepoint::ui
