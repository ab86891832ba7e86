#include "ui/view/view_assembly.h"

#include "ui/paint/projecting.h"
#include "ui/paint/shade.h"

namespace tiepoint::ui {
namespace {

constexpr double kStillAmpere = 1e-6;
constexpr double kFitMarginMm = 3;

/// The finding whose symbol lies there, or -1.
int findingOf(std::span<const FindingMark> marks, QPointF mm) {
    for (const FindingMark& mark : marks) {
        if (mark.frame.contains(mm)) return mark.finding;
    }
    return -1;
}

}  // namespace

BenchView::Assembly::Assembly(BenchView& owner, BenchDocument& benchDocument, LiveBench& live)
    : view(owner),
      document(benchDocument),
      shown(picture, document, live),
      scene(picture),
      marks(picture.marks),
      camera(owner),
      ring(*owner.viewport()),
      frame({owner, picture, scene, marks, camera, ink, ring}),
      fields(document, picture, gestures, camera, &owner),
      notes(document, picture, camera, &owner),
      hand({picture, document, live, marks, scene, camera}),
      hovering(*owner.viewport(), hand, marks, camera,
               [this](QPointF mm) { return findingOf(frame.findingMarks(), mm); }),
      pointer({*owner.viewport(), hand, gestures, hovering, camera, ink}),
      cursor(picture, marks, gestures, camera),
      knobs(hand),
      wheel(picture, hovering, knobs, fields, camera),
      keyboard({hand, marks, gestures, pointer, cursor, knobs, fields, notes}),
      fingers(hand, hovering),
      pinning({*owner.viewport(), hand, hovering, cursor, pointer, gestures, camera}) {
    picture.theme = &theme(ThemeName::Day);
    fields.setTheme(*picture.theme);
    notes.setTheme(*picture.theme);
    connectShown();
    connectHands();
    followBench();
    camera.fit(fittedArea());
}

void BenchView::Assembly::connectShown() {
    connect(&shown, &LivePicture::benchChanged, &view, [this] { followBench(); });
    connect(&shown, &LivePicture::answered, &frame, &ViewFrame::resume);
    connect(&shown, &LivePicture::restyled, &frame, [this] { scene.follow(true); });
    connect(&shown, &LivePicture::changed, &frame, [this] {
        scene.followTags();
        followMotion(view.isVisible());
        frame.follow();
    });
    connect(&marks, &BenchMarks::changed, &frame, &ViewFrame::follow);
    connect(&marks, &BenchMarks::carriedCleared, &frame, [this] { scene.setPale({}); });
    connect(&marks, &BenchMarks::selectionChanged, &fields, &ValueFields::follow);
    connect(&motion, &Motion::ticked, &frame, [this] {
        shown.setPhase(motion.phaseMm());
        frame.follow();
    });
    connect(&camera, &Camera::moved, &view, [this] {
        followZoom();
        fields.follow();
        frame.follow();
    });
}

void BenchView::Assembly::connectHands() {
    connect(&gestures, &GestureRun::begun, &marks, &BenchMarks::clearHover);
    connect(&gestures, &GestureRun::begun, &fields, &ValueFields::follow);
    connect(&gestures, &GestureRun::ended, &fields, [this] {
        fields.follow();
        hand.setAtPointer(std::nullopt, std::nullopt);
        marks.clearCarried();
    });
    connect(&pointer, &PointerHand::pressed, &cursor, &HoleCursor::hide);
    connect(&pointer, &PointerHand::moved, &frame, [this] {
        ring.moveTo(pointer.at());
        if (ring.isShown()) frame.follow();
    });
    connect(&fields, &ValueFields::done, &view, [this] { view.setFocus(Qt::OtherFocusReason); });
    connect(&marks, &BenchMarks::selectionChanged, &view, [this] { notes.followSelection(pointer.at()); });
    connect(&notes.box(), &NoteBox::done, &view, [this](const QString& id) {
        if (!id.isEmpty()) marks.setSelection({id});
        view.setFocus(Qt::OtherFocusReason);
    });
    // What the view tells others, after all of its own know.
    connect(&marks, &BenchMarks::selectionChanged, &view, &BenchView::selectionChanged);
    connect(&marks, &BenchMarks::hoverChanged, &view, &BenchView::hoverChanged);
    connect(&cursor, &HoleCursor::moved, &view, &BenchView::cursorMoved);
    connect(&pointer, &PointerHand::findingChosen, &view, &BenchView::findingChosen);
    connect(&gestures, &GestureRun::ended, &view, &BenchView::gestureEnded);
    connect(&fields, &ValueFields::cardWanted, &view, &BenchView::valueTyped);
}

void BenchView::Assembly::followBench() {
    gestures.followBench();  // it may be undone or replaced under the hand
    shown.followBench(BenchScene::deriveNets(document.bench()));
    scene.follow();
    marks.followBench(picture.bench());
    cursor.followBench();
    frame.hold();
    shown.followLive();
    camera.include(fittedArea());
    fields.follow();
}

void BenchView::Assembly::followMotion(bool visible) {
    const Snapshot* live = picture.live();
    motion.setMoving(visible && live && picture.views.arrows != Arrows::Off &&
                     live->largestCurrentAmpere > kStillAmpere);
}

void BenchView::Assembly::followTheme(const Theme& theme) {
    fields.setTheme(theme);
    notes.setTheme(theme);
    shown.setTheme(theme);
    frame.followAll();
}

void BenchView::Assembly::turnTo(const Views& views) {
    const bool turns = views.turned != picture.views.turned;
    if (turns) {
        gestures.cancel();
        marks.clearHover();
    }
    shown.setViews(views);
    if (turns) camera.include(fittedArea());
    frame.followAll();
    Q_EMIT view.viewsChanged();
}

QRectF BenchView::Assembly::fittedArea() const {
    if (ring.isShown()) return circuitArea(picture);
    return toQt(picture.table->allMm).adjusted(-kFitMarginMm, -kFitMarginMm, kFitMarginMm, kFitMarginMm);
}

void BenchView::Assembly::followZoom() {
    shown.setScale(camera.pixelsPerMm() * view.devicePixelRatioF(),
                   ring.isShown() ? projectedSizes(view.viewport()->height(), camera.pixelsPerMm()) : WordSizes{});
}

void BenchView::Assembly::setProjecting(bool projecting) {
    if (projecting == ring.isShown()) return;
    ring.setShown(projecting);
    followInking();
    camera.fit(fittedArea());
    followZoom();
    frame.followAll();
}

void BenchView::Assembly::followInking() {
    pointer.setInking((inking ? Qt::LeftButton : Qt::NoButton) | (ring.isShown() ? Qt::RightButton : Qt::NoButton));
}

}  // namespace tiepoint::ui
