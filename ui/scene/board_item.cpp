#include "ui/scene/board_item.h"

#include "core/edit/placement.h"
#include "ui/paint/bench_painter.h"
#include "ui/paint/shade.h"

namespace tiepoint::ui {
namespace {

constexpr double kHoleFaceMm = kPitchMm / 2;  ///< about a hole: the whole face of a board is holes
constexpr double kNearHoleMm = 2.1;           ///< so near to a hole a hand means the hole, however it shakes
constexpr double kBoardRoomMm = 5;            ///< its shadow, and its flap when it is turned over, reach so far

}  // namespace

void BoardItem::follow(int index, bool) {
    index_ = index;
    lie(shape().boundingRect().adjusted(-kBoardRoomMm, -kBoardRoomMm, kBoardRoomMm, kBoardRoomMm), Level::Boards,
        index);
}

void BoardItem::addPatches(Patches& patches) const {
    if (const BoardSeen now = boardSeen(picture(), index_); now != seen_) {
        seen_ = now;
        patches_.clear();
        addBoard(patches_, now);
    }
    patches.insert(patches.end(), patches_.begin(), patches_.end());
}

QPainterPath BoardItem::shape() const {
    const Rect frame = board().frameMm();
    QPainterPath path;
    path.addRect(QRectF(toQt(picture().table->seen({frame.left, frame.top})),
                        toQt(picture().table->seen({frame.right(), frame.bottom()})))
                     .normalized());
    return path;
}

std::optional<Hole> BoardItem::holeAt(Point at) const {
    return nearestHole(board(), picture().table->seen(at), kHoleFaceMm);
}

int BoardItem::stripOf(const Hole& hole) const {
    const Layout& layout = *picture().layout;
    return layout.stripOfHole[static_cast<std::size_t>(layout.holeIndex(hole))];
}

int BoardItem::netOf(const Hole& hole) const {
    return picture().layout->netOfStrip[static_cast<std::size_t>(stripOf(hole))];
}

bool BoardItem::meet(Point at, Under& under) const {
    if (under.board.empty() && !nearestHole(board(), picture().table->seen(at), kNearHoleMm)) under.board = id();
    const auto hole = holeAt(at);
    if (!hole || under.hole) return false;
    under.hole = hole;
    if (under.net < 0 && under.body.empty()) {
        under.net = netOf(*hole);
        under.netAt = picture().seenAt(*hole);
    }
    return false;
}

}  // namespace tiepoint::ui
