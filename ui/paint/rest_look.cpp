#include "ui/paint/rest_look.h"

#include "core/bench/bench_file.h"
#include "core/bench/turned_table.h"
#include "ui/paint/bench_painter.h"
#include "ui/paint/part_scenes.h"
#include "ui/paint/shade.h"

#include <cmath>
#include <string>

namespace tiepoint::ui {
namespace {

constexpr double kLookMm = 1e-3;  ///< places closer than this look the same

/// Folds where something is, as seen from the corner of its patch, so that it looks the same in other holes.
class Outline {
public:
    explicit Outline(const QRectF& mm) : corner_(mm.topLeft()) {}
    Outline& add(QPointF at) {
        look_ << std::lround((at.x() - corner_.x()) / kLookMm) << std::lround((at.y() - corner_.y()) / kLookMm);
        return *this;
    }
    Outline& add(std::string_view words) {
        look_ << words;
        return *this;
    }
    Outline& add(double figure) {
        look_ << figure;
        return *this;
    }
    const PatchLook& look() const { return look_; }

private:
    QPointF corner_;
    PatchLook look_;
};

/// What a part is apart from its name and its place.
std::string natureOf(Part part) {
    part.id.clear();
    part.leads.assign(part.leads.size(), std::nullopt);
    return partLine(part);
}

}  // namespace

PatchLook restLook(const Picture& picture, int part, const QRectF& mm) {
    const auto i = static_cast<std::size_t>(part);
    const PartPlace& place = picture.table->parts[i];
    Outline outline(mm);
    outline.add("part").add(natureOf(picture.bench().parts[i])).add(toQt(place.pose.centre)).add(place.pose.angle);
    for (const Point& lead : place.leadsMm) outline.add(toQt(lead));
    if (standsOnBoard(picture.bench().parts[i])) return outline.look();
    for (const WireCurve& cable : place.cablesMm) outline.add(toQt(cable.b)).add(toQt(cable.c));
    // Its words stand larger for a room.
    if (picture.sizes.numberMm > 0) outline.add(picture.sizes.wordsMm).add(picture.sizes.readingMm);
    return outline.add(picture.bench().parts[i].id).look();
}

PatchLook restLookOfJumper(const Picture& picture, int jumper, const QRectF& mm) {
    const Jumper& which = picture.bench().jumpers[static_cast<std::size_t>(jumper)];
    Outline outline(mm);
    outline.add("jumper").add(which.colour).add(which.flat ? 1.0 : 0.0);
    const QPainterPath line = jumperLine(picture, jumper);
    for (int i = 0; i < line.elementCount(); ++i) outline.add(QPointF(line.elementAt(i)));
    return outline.look();
}

}  // namespace tiepoint::ui
