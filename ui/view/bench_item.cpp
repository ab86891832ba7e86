#include "ui/view/bench_item.h"

#include "ui/paint/bench_painter.h"
#include "ui/paint/rest_look.h"

namespace tiepoint::ui {

BenchItem::BenchItem(const Picture& picture) : picture_(picture) { setAcceptedMouseButtons(Qt::NoButton); }

void BenchItem::followPart(int index, bool restyled) {
    index_ = index;
    const auto i = static_cast<std::size_t>(index);
    const PartPlace& place = picture_.table->parts[i];
    std::vector<Point> points = place.leadsMm;
    points.push_back(place.pose.centre);
    const Part& part = picture_.bench().parts[i];
    if (!adopt(std::pair(part, std::move(points)), partBounds(picture_, index), restyled)) return;
    // Seen from below, a part is cut off where its board ends.
    alike_ = !picture_.table->turned;
    if (alike_) look_ = restLook(picture_, index, bounds_);
}

void BenchItem::followJumper(int index, bool restyled) {
    index_ = index;
    const Jumper& jumper = picture_.bench().jumpers[static_cast<std::size_t>(index)];
    const std::array<Point, 2> ends{endMm(picture_.bench(), *picture_.table, jumper.ends[0]),
                                    endMm(picture_.bench(), *picture_.table, jumper.ends[1])};
    if (!adopt(std::pair(jumper, ends), jumperBounds(picture_, index), restyled)) return;
    alike_ = !picture_.table->turned;
    if (alike_) look_ = restLookOfJumper(picture_, index, bounds_);
}

bool BenchItem::adopt(Shape shape, const QRectF& bounds, bool restyled) {
    static std::uint64_t changes = 0;
    const bool same = shape == shape_ && bounds == bounds_;
    shape_ = std::move(shape);
    if (same && !restyled) return false;
    prepareGeometryChange();
    bounds_ = bounds;
    look_ = PatchLook() << ++changes;
    return true;
}

void BenchItem::addPatch(Patches& patches) const {
    patches.push_back({bounds_, look_, [this](QPainter& painter) {
                           if (std::holds_alternative<std::pair<Jumper, std::array<Point, 2>>>(shape_)) {
                               paintJumper(painter, picture_, index_);
                           } else {
                               paintPart(painter, picture_, index_);
                           }
                       }});
    patches.back().movable = alike_;
    patches.back().opacity = opacity();
}

void BenchItem::paint(QPainter* painter, const QStyleOptionGraphicsItem*, QWidget*) {
    Patches patches;
    addPatch(patches);
    paintPatches(*painter, patches);
}

}  // namespace tiepoint::ui
