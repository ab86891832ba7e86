#include "ui/view/pinning.h"

#include "core/bench/describe.h"
#include "ui/gesture/measurands.h"
#include "ui/gesture/probe_gesture.h"

#include <algorithm>

namespace tiepoint::ui {
/// The keyboard's place counts while its cursor shows or the mouse is elsewhere, else what lies under the pointer.
bool Pinning::pointsByMouse() const { return !needs_.cursor.hole() && needs_.viewport.underMouse(); }

std::vector<Measurand> Pinning::measurandsHere() const {
    const Picture& picture = needs_.hand.picture();
    std::vector<Measurand> here;
    if (pointsByMouse()) here = measurandsOf(picture, needs_.hovering.under(needs_.pointer.at()));
    return here.empty() ? measurandsOf(picture, picture.marks.cursor) : here;
}

std::optional<Hole> Pinning::holeHere() const {
    return pointsByMouse() ? needs_.hovering.under(needs_.pointer.at()).hole : needs_.cursor.hole();
}

void Pinning::pin(const Measurand& of) {
    if (const auto why = needs_.hand.document().push(pinEdit(needs_.hand.picture().bench(), of)))
        needs_.hand.flash(why->toStdString(), wordsAt());
}

QString Pinning::pinWords(const Measurand& of) const {
    const Bench& bench = needs_.hand.picture().bench();
    const bool there =
        std::ranges::any_of(bench.pinned, [&](const PinnedReading& reading) { return reading.of == of; });
    return QString::fromStdString((there ? "Unpin " : "Pin ") + measurandInWords(bench, of));
}

void Pinning::pinHere() {
    const auto here = measurandsHere();
    if (here.empty()) return needs_.hand.flash("point at a hole, a part or a jumper first", wordsAt());
    pin(here.front());
}

void Pinning::probeFrom(const std::optional<Hole>& hole) {
    if (needs_.gestures.isUnderWay()) return;
    if (!hole) return needs_.hand.flash("point at the first hole first", wordsAt());
    if (!pointsByMouse()) needs_.cursor.show(*hole);
    needs_.hand.clearMarks();
    needs_.pointer.carry(std::make_unique<ProbeGesture>(needs_.hand, *hole), needs_.hand.picture().seenAt(*hole));
}

}  // namespace tiepoint::ui
