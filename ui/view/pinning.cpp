#include "ui/view/pinning.h"

#include "core/bench/describe.h"
#include "ui/gesture/measurands.h"
#include "ui/gesture/probe_gesture.h"

#include <QMenu>

#include <algorithm>

namespace tiepoint::ui {
namespace {

/// What the menu says for a reading, which is pinned already or not.
QString pinWords(const Bench& bench, const Measurand& of) {
    const bool there = std::any_of(bench.pinned.begin(), bench.pinned.end(),
                                   [&](const PinnedReading& reading) { return reading.of == of; });
    return QString::fromStdString((there ? "Unpin " : "Pin ") + measurandInWords(bench, of));
}

}  // namespace

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

void Pinning::openMenu(const QContextMenuEvent& event) {
    if (needs_.gestures.isUnderWay()) return;
    const Picture& picture = needs_.hand.picture();
    const bool byMouse = event.reason() == QContextMenuEvent::Mouse;
    if (byMouse) needs_.pointer.setAt(event.pos());
    const Under under = needs_.hovering.under(needs_.pointer.at());
    const auto choices = byMouse ? measurandsOf(picture, under) : measurandsHere();
    const auto hole = byMouse ? under.hole : holeHere();
    if (choices.empty()) return;
    auto* menu = new QMenu(needs_.viewport.parentWidget());
    menu->setAttribute(Qt::WA_DeleteOnClose);
    for (const Measurand& of : choices)
        QObject::connect(menu->addAction(pinWords(picture.bench(), of)), &QAction::triggered, &needs_.viewport,
                         [this, of] { pin(of); });
    if (hole && std::holds_alternative<VoltsAt>(choices.front())) {
        QObject::connect(menu->addAction(QStringLiteral("Pin volts between this hole and another\u2026")),
                         &QAction::triggered, &needs_.viewport, [this, hole] { probeFrom(hole); });
    }
    menu->popup(byMouse ? event.globalPos() : menuPlace(event));
}

QPoint Pinning::menuPlace(const QContextMenuEvent& event) const {
    const auto& cursor = needs_.cursor.hole();
    if (!cursor) return event.globalPos();
    return needs_.viewport.mapToGlobal(needs_.camera.fromMm(needs_.hand.picture().seenAt(*cursor)).toPoint());
}

}  // namespace tiepoint::ui
