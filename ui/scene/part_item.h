#pragma once
// A part in the scene: its body, its leads, its sockets, and what of it a hand presses, switches or turns.

#include "ui/scene/bench_item.h"

#include <vector>

namespace tiepoint::ui {

class PartItem : public BenchItem {
public:
    using BenchItem::BenchItem;

    void follow(int index, bool restyled) override;
    void addPatches(Patches& patches) const override;
    bool meet(Point at, Under& under) const override;
    /// The body counts, not its leads: a supply's cables reach over half the bench.
    bool isTouched(const QRectF& band) const override { return outline().body.intersects(band); }
    QPainterPath shape() const override { return outline().all; }

private:
    /// Where a hand meets what of it, mm.
    struct Outlines {
        QPainterPath body, control;
        QPainterPath reach;  ///< the body as it is drawn, and the leads as broad as a hand finds them
        QPainterPath all;
        std::vector<QPainterPath> cables;  ///< by lead, with its plug, of a part that stands on the table
    };
    const Outlines& outline() const;
    Outlines makeOutlines() const;
    Level level() const;
    void meetSocket(int lead, double away, Point at, Under& under) const;
    void meetLead(Point at, bool onBody, Under& under) const;
    void meetCable(Point at, Under& under) const;
    bool meansLeg(int lead, Point at) const;

    const Part& part() const { return picture().bench().parts[static_cast<std::size_t>(index_)]; }
    const PartPlace& place() const { return picture().table->parts[static_cast<std::size_t>(index_)]; }

    int index_ = -1;
    Part known_;
    std::vector<Point> knownPoints_;
    Patch patch_;                               ///< at rest and opaque
    mutable std::optional<Outlines> outlines_;  ///< worked out when it is first asked for
};

}  // namespace tiepoint::ui
