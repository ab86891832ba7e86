// The keyboard's part of the view: a cursor that walks from hole to hole, and gestures led by it as by a pointer.

#include "core/edit/neighbour.h"
#include "core/edit/placement.h"
#include "ui/gesture/jumper_gesture.h"
#include "ui/gesture/knob_gesture.h"
#include "ui/gesture/lead_gesture.h"
#include "ui/gesture/press_gesture.h"
#include "ui/gesture/selecting.h"
#include "ui/view/bench_view_body.h"

#include <QKeyEvent>

#include <algorithm>

namespace tiepoint::ui {
namespace {

constexpr int kSightPixels = 40;  ///< the cursor keeps this far from the edges of the view
constexpr double kAnywhereMm = 1e6;
constexpr double kKnobStep = 0.05;  ///< of its range

/// The free socket of a part, or nothing.
std::optional<Socket> freeSocket(const Bench& bench, const Part& part) {
    for (int lead = 0; lead < static_cast<int>(part.kind->leads.size()); ++lead) {
        const JumperEnd end = Socket{part.id, lead};
        const bool taken = std::any_of(bench.jumpers.begin(), bench.jumpers.end(),
                                       [&](const Jumper& j) { return j.ends[0] == end || j.ends[1] == end; });
        if (part.kind->leads[static_cast<std::size_t>(lead)].socket && !taken) return Socket{part.id, lead};
    }
    return std::nullopt;
}

/// The lead of a supply to take in hand: the first that hangs, else the first.
int leadToTake(const Part& part) {
    const auto hanging = std::find(part.leads.begin(), part.leads.end(), std::nullopt);
    return hanging == part.leads.end() ? 0 : static_cast<int>(hanging - part.leads.begin());
}

}  // namespace

void BenchView::Body::showCursor(const Hole& hole) {
    const Point at = picture_.seenAt(hole);
    const bool moved = picture_.marks.cursor != hole;
    picture_.marks.cursor = keptCursor_ = hole;
    const QRectF sight =
        QRectF(view_.viewport()->rect()).adjusted(kSightPixels, kSightPixels, -kSightPixels, -kSightPixels);
    const QPointF in = view_.fromMm(at);
    const QPointF inside(std::clamp(in.x(), sight.left(), std::max(sight.left(), sight.right())),
                         std::clamp(in.y(), sight.top(), std::max(sight.top(), sight.bottom())));
    if (inside != in) camera_.panBy(inside - in);
    if (!gesture_) {
        const auto occupant = occupantOf(picture_.bench(), hole);
        setHover(picture_.layout->netOfHole(picture_.layout->holeIndex(hole)), at,
                 occupant ? occupant->id : std::string());
    }
    showMarks();
    if (moved) Q_EMIT view_.cursorMoved();
}

void BenchView::Body::hideCursor() {
    if (!picture_.marks.cursor) return;
    picture_.marks.cursor.reset();
    clearHover();
    showMarks();
    Q_EMIT view_.cursorMoved();
}

void BenchView::Body::restoreCursor() {
    if (picture_.marks.cursor) return;
    const QRectF view(view_.viewport()->rect());
    auto hole = keptCursor_
                    ? keptCursor_
                    : nearestHole(picture_.bench(), picture_.table->seen(view_.toMm(view.center())), kAnywhereMm);
    if (hole) showCursor(*hole);
}

void BenchView::Body::walk(int columns, int rows) {
    if (!picture_.marks.cursor) return restoreCursor();
    if (const auto next = neighbourHole(picture_.bench(), *picture_.marks.cursor, columns, rows)) showCursor(*next);
}

bool BenchView::Body::leadGesture(const QKeyEvent& event) {
    if (buttonDown_) return false;  // the mouse has it
    const int key = event.key();
    const bool arrow = key >= Qt::Key_Left && key <= Qt::Key_Down;
    const bool ends = key == Qt::Key_Return || key == Qt::Key_Enter;
    if (!arrow && !ends) return false;
    if (arrow)
        walk(key == Qt::Key_Left    ? -1
             : key == Qt::Key_Right ? 1
                                    : 0,
             key == Qt::Key_Up     ? -1
             : key == Qt::Key_Down ? 1
                                   : 0);
    if (!picture_.marks.cursor) return true;
    const Point at = gesture_->handleFor(picture_.seenAt(*picture_.marks.cursor));
    Pointer pointer{at, view_.fromMm(at), Qt::LeftButton, event.modifiers(), true};
    lastAt_ = pointer.inView;
    with([&](Gesture& g) { arrow ? g.move(pointer) : g.release(pointer); });
    if (!gesture_ && picture_.marks.cursor) showCursor(*picture_.marks.cursor);
    return true;
}

void BenchView::Body::enter() {
    if (!picture_.marks.cursor) return restoreCursor();
    const auto occupant = occupantOf(picture_.bench(), *picture_.marks.cursor);
    if (!occupant) return wire();
    selectByClick(*this, occupant->id, {});
}

void BenchView::Body::wire() {
    const auto& selected = picture_.marks.selected;
    const Part* part = selected.size() == 1 ? picture_.bench().findPart(selected.front()) : nullptr;
    const bool stands = part && part->kind->package->reach == Reach::Flying;
    if (!picture_.marks.cursor) restoreCursor();
    if (!picture_.marks.cursor) return;
    if (picture_.table->turned)
        return flash("nothing goes in from below: key 5 turns the board back", picture_.seenAt(*picture_.marks.cursor));
    Under under;
    std::unique_ptr<Gesture> gesture;
    if (stands && !part->kind->leads.front().socket) {
        gesture = std::make_unique<LeadGesture>(*this, End{part->id, leadToTake(*part), false});
    } else {
        if (stands)
            under.socket = freeSocket(picture_.bench(), *part);
        else
            under.hole = picture_.marks.cursor;
        gesture = std::make_unique<JumperGesture>(*this, under);
    }
    clearMarks();
    const Point at = picture_.seenAt(*picture_.marks.cursor);
    const Pointer pointer{at, view_.fromMm(at), Qt::LeftButton, {}, true};
    lastAt_ = pointer.inView;
    downButton_ = Qt::LeftButton;
    buttonDown_ = false;
    dragged_ = true;
    begin(std::move(gesture), pointer);
    if (gesture_) with([&](Gesture& g) { g.move(pointer); });
}

void BenchView::Body::stepValue(int steps) {
    if (ladder_.step(steps)) return;
    const auto& selected = picture_.marks.selected;
    if (selected.size() != 1) return;
    if (!sinceWheel_.isValid() || sinceWheel_.elapsed() > kWheelPauseMs) wheelGesture_ = document_.newGesture();
    sinceWheel_.start();
    KnobGesture::turnBy(*this, selected.front(), steps * kKnobStep, wheelGesture_);
}

void BenchView::Body::operate(bool down) {
    if (!down) {
        if (!operated_.empty()) PressGesture::releasePart(*this, std::exchange(operated_, {}));
        return;
    }
    const auto& selected = picture_.marks.selected;
    std::string id = selected.size() == 1 ? selected.front() : std::string();
    if (id.empty() && picture_.marks.cursor) {
        if (const auto occupant = occupantOf(picture_.bench(), *picture_.marks.cursor)) id = occupant->id;
    }
    const Part* part = picture_.bench().findPart(id);
    if (!part || gesture_) return;
    if (part->kind->hasCap) {
        operated_ = id;
        PressGesture::pressPart(*this, id, {});
    } else {
        KnobGesture::flip(*this, id);
    }
}

void BenchView::Body::beginNote() {
    const auto& selected = picture_.marks.selected;
    if (selected.size() == 1 && picture_.bench().findNote(selected.front())) return editNote(selected.front());
    std::optional<Hole> hole = picture_.marks.cursor;
    if (const Part* part = selected.size() == 1 ? picture_.bench().findPart(selected.front()) : nullptr;
        part && !hole) {
        const auto lead =
            std::find_if(part->leads.begin(), part->leads.end(), [](const auto& l) { return l.has_value(); });
        if (lead != part->leads.end()) hole = *lead;
    }
    if (!hole) hole = nearestHole(picture_.bench(), picture_.table->seen(view_.toMm(lastAt_)), kAnywhereMm);
    if (hole) noteBox_.beginNew(*hole, view_.fromMm(picture_.seenAt(*hole)).toPoint());
}

void BenchView::Body::editNote(const std::string& id) {
    const Note* note = picture_.bench().findNote(id);
    if (note) noteBox_.beginEdit(id, view_.fromMm(picture_.seenAt(note->at)).toPoint());
}

}  // namespace tiepoint::ui
