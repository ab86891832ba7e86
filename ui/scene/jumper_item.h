#pragma once
// A jumper in the scene: its wire, and the ends that can be gripped.

#include "ui/scene/bench_item.h"

#include <array>

namespace tiepoint::ui {

class JumperItem : public BenchItem {
public:
    using BenchItem::BenchItem;

    void follow(int index, bool restyled) override;
    void addPatches(Patches& patches) const override;
    bool meet(Point at, Under& under) const override;
    /// A band that holds one of its ends, or all of it; not one that only crosses it.
    bool isTouched(const QRectF& band) const override;
    QPainterPath shape() const override;

private:
    const Jumper& jumper() const { return picture().bench().jumpers[static_cast<std::size_t>(index_)]; }
    bool passesOverHole(Point at) const;

    int index_ = -1;
    Jumper known_;
    std::array<Point, 2> ends_;
    Arc arc_;
    Patch patch_;                                ///< at rest and opaque
    mutable std::optional<QPainterPath> shape_;  ///< worked out when it is first asked for
};

}  // namespace tiepoint::ui
