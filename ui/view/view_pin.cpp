// Pinning readings: by a key at what is pointed at, or by the menu of the right button.

#include "core/bench/describe.h"
#include "ui/gesture/measurands.h"
#include "ui/gesture/probe_gesture.h"
#include "ui/view/bench_view_body.h"

#include <QContextMenuEvent>
#include <QMenu>

#include <algorithm>

namespace tiepoint::ui {

/// The keyboard's place counts while its cursor shows or the mouse is elsewhere, else what lies under the pointer.
bool BenchView::Body::pointsByMouse() const { return !picture_.marks.cursor && view_.viewport()->underMouse(); }

std::vector<Measurand> BenchView::Body::measurandsHere() const {
    std::vector<Measurand> here;
    if (pointsByMouse()) here = measurandsOf(picture_, whatLiesAt(picture_, view_.toMm(lastAt_)));
    return here.empty() ? measurandsOf(picture_, picture_.marks.cursor) : here;
}

std::optional<Hole> BenchView::Body::holeHere() const {
    if (pointsByMouse()) return whatLiesAt(picture_, view_.toMm(lastAt_)).hole;
    return picture_.marks.cursor;
}

void BenchView::Body::pin(const Measurand& of) {
    if (const auto why = document_.push(pinEdit(picture_.bench(), of))) flash(why->toStdString(), view_.toMm(lastAt_));
}

void BenchView::Body::pinHere() {
    const auto here = measurandsHere();
    if (here.empty()) return flash("point at a hole, a part or a jumper first", view_.toMm(lastAt_));
    pin(here.front());
}

void BenchView::Body::probeFrom(const std::optional<Hole>& hole) {
    if (gesture_) return;
    if (!hole) return flash("point at the first hole first", view_.toMm(lastAt_));
    if (!pointsByMouse()) showCursor(*hole);
    clearMarks();
    const Point at = picture_.seenAt(*hole);
    const Pointer pointer{at, view_.fromMm(at), Qt::LeftButton, {}, true};
    lastAt_ = pointer.inView;
    downButton_ = Qt::LeftButton;
    buttonDown_ = false;
    dragged_ = true;
    begin(std::make_unique<ProbeGesture>(*this, *hole), pointer);
    with([&](Gesture& g) { g.move(pointer); });
}

void BenchView::Body::openMenu(const QContextMenuEvent& event) {
    if (gesture_ || projecting_) return;  // the right button draws there
    const bool byMouse = event.reason() == QContextMenuEvent::Mouse;
    if (byMouse) lastAt_ = event.pos();
    const Under under = whatLiesAt(picture_, view_.toMm(lastAt_));
    const auto choices = byMouse ? measurandsOf(picture_, under) : measurandsHere();
    const auto hole = byMouse ? under.hole : holeHere();
    if (choices.empty()) return;
    auto* menu = new QMenu(&view_);
    menu->setAttribute(Qt::WA_DeleteOnClose);
    for (const Measurand& of : choices) {
        const auto& pinned = picture_.bench().pinned;
        const bool there =
            std::any_of(pinned.begin(), pinned.end(), [&](const PinnedReading& reading) { return reading.of == of; });
        const QString words =
            QString::fromStdString((there ? "Unpin " : "Pin ") + measurandInWords(picture_.bench(), of));
        QObject::connect(menu->addAction(words), &QAction::triggered, &view_, [this, of] { pin(of); });
    }
    if (hole && std::holds_alternative<VoltsAt>(choices.front())) {
        QObject::connect(menu->addAction(QStringLiteral("Pin volts between this hole and another\u2026")),
                         &QAction::triggered, &view_, [this, hole] { probeFrom(hole); });
    }
    const QPoint keyboardAt =
        picture_.marks.cursor
            ? view_.viewport()->mapToGlobal(view_.fromMm(picture_.seenAt(*picture_.marks.cursor)).toPoint())
            : event.globalPos();
    menu->popup(byMouse ? event.globalPos() : keyboardAt);
}

}  // namespace tiepoint::ui
