#pragma once
// A board in the scene: its grid of holes, and the strips and rails that join them. The geometry and the nets are the core's; the item
// says which hole, which strip and which net lie where the board is seen.

#include "ui/paint/board_layer.h"
#include "ui/scene/bench_item.h"

namespace tiepoint::ui {

class BoardItem : public BenchItem {
public:
    using BenchItem::BenchItem;

    void follow(int index, bool restyled) override;
    void addPatches(Patches& patches) const override;
    bool meet(Point at, Under& under) const override;
    QPainterPath shape() const override;

    /// The hole whose face a place belongs to, or nothing.
    std::optional<Hole> holeAt(Point at) const;
    /// The strip or rail that a hole of the board opens into, by its number in the layout.
    int stripOf(const Hole& hole) const;
    /// The net that the union-find put that strip into.
    int netOf(const Hole& hole) const;

private:
    const Board& board() const { return picture().bench().boards[static_cast<std::size_t>(index_)]; }

    int index_ = -1;
    mutable BoardSeen seen_;  ///< of which the patches are
    mutable Patches patches_;
};

}  // namespace tiepoint::ui
