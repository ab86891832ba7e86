#include "ui/view/view_assembly.h"

#include "core/bench/cable_routes.h"
#include "ui/paint/board_back.h"
#include "ui/paint/note_places.h"
#include "ui/paint/projecting.h"
#include "ui/paint/shade.h"
#include "ui/paint/tag_ground.h"

#include <cmath>
#include <utility>

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

ViewAssembly::ViewAssembly(BenchView& owner, BenchDocument& benchDocument, LiveBench& live)
    : view(owner),
      document(benchDocument),
      shown(picture, document, live),
      scene(picture),
      marks(picture.marks),
      camera(owner),
      room(*owner.viewport()),
      frame({owner, picture, scene, marks, camera, room}),
      fields(document, picture, gestures, camera, &owner),
      notes(document, picture, camera, &owner),
      hand({picture, document, live, marks, scene, camera}),
      hovering(*owner.viewport(), hand, marks, camera,
               [this](QPointF mm) { return findingOf(frame.findingMarks(), mm); }),
      pointer({*owner.viewport(), hand, gestures, hovering, camera, room}),
      cursor(picture, marks, gestures, camera),
      knobs(hand),
      wheel(picture, hovering, knobs, fields, camera),
      keyboard({hand, marks, gestures, pointer, cursor, knobs, fields, notes}),
      fingers(hand, hovering),
      pinning({*owner.viewport(), hand, hovering, cursor, pointer, gestures, camera}),
      menu({*owner.viewport(), hand, marks, hovering, pointer, gestures, camera, pinning}),
      events(*this) {
    picture.theme = &theme(ThemeName::Day);
    fields.setTheme(*picture.theme);
    notes.setTheme(*picture.theme);
    connectShown();
    connectHands();
    followBench();
    camera.fit(fittedArea());
}

void ViewAssembly::connectShown() {
    QObject::connect(&shown, &LivePicture::benchChanged, &view, [this] { followBench(); });
    QObject::connect(&shown, &LivePicture::answered, &frame, &ViewFrame::resume);
    QObject::connect(&shown, &LivePicture::restyled, &frame, [this] { scene.follow(true); });
    QObject::connect(&shown, &LivePicture::changed, &frame, [this] {
        scene.followTags();
        followMotion(view.isVisible());
        frame.follow();
    });
    QObject::connect(&marks, &BenchMarks::changed, &frame, &ViewFrame::follow);
    QObject::connect(&marks, &BenchMarks::carriedCleared, &frame, [this] { scene.setPale({}); });
    QObject::connect(&marks, &BenchMarks::selectionChanged, &shown, &LivePicture::followSelection);
    QObject::connect(&marks, &BenchMarks::selectionChanged, &fields, &ValueFields::follow);
    QObject::connect(&motion, &Motion::ticked, &frame, [this] {
        shown.setPhase(motion.phaseMm());
        frame.follow();
    });
    QObject::connect(&room, &RoomMode::projectingChanged, &frame, [this] {
        camera.fit(fittedArea());
        followZoom();
        frame.followAll();
    });
    QObject::connect(&room, &RoomMode::inkWiped, &frame, &ViewFrame::followAll);
    QObject::connect(&camera, &Camera::moved, &view, [this] {
        followZoom();
        fields.follow();
        frame.follow();
    });
}

void ViewAssembly::connectHands() {
    QObject::connect(&gestures, &GestureRun::begun, &marks, &BenchMarks::clearHover);
    QObject::connect(&gestures, &GestureRun::begun, &fields, &ValueFields::follow);
    QObject::connect(&gestures, &GestureRun::ended, &fields, [this] {
        fields.follow();
        hand.setAtPointer(std::nullopt, std::nullopt);
        marks.clearCarried();
    });
    QObject::connect(&pointer, &PointerHand::pressed, &cursor, &HoleCursor::hide);
    QObject::connect(&pointer, &PointerHand::moved, &frame, [this] {
        room.ring().moveTo(pointer.at());
        if (room.isProjecting()) frame.follow();
    });
    QObject::connect(&fields, &ValueFields::done, &view, [this] { view.setFocus(Qt::OtherFocusReason); });
    QObject::connect(&marks, &BenchMarks::selectionChanged, &view, [this] { notes.followSelection(pointer.at()); });
    QObject::connect(&notes.box(), &NoteBox::done, &view, [this](const QString& id) {
        if (!id.isEmpty()) marks.setSelection({id});
        view.setFocus(Qt::OtherFocusReason);
    });
    // What the view tells others, after all of its own know.
    QObject::connect(&marks, &BenchMarks::selectionChanged, &view, &BenchView::selectionChanged);
    QObject::connect(&marks, &BenchMarks::hoverChanged, &view, &BenchView::hoverChanged);
    QObject::connect(&cursor, &HoleCursor::moved, &view, &BenchView::cursorMoved);
    QObject::connect(&pointer, &PointerHand::findingChosen, &view, &BenchView::findingChosen);
    QObject::connect(&gestures, &GestureRun::ended, &view, &BenchView::gestureEnded);
    QObject::connect(&fields, &ValueFields::cardWanted, &view, &BenchView::valueTyped);
}

void ViewAssembly::followBench() {
    const bool gaveUp = gestures.followBench();  // it may be undone or replaced under the hand
    shown.followBench(BenchScene::deriveNets(document.bench()));
    scene.follow();
    marks.followBench(picture.bench());
    cursor.followBench();
    frame.hold();
    shown.followLive();
    followTable();
    fields.follow();
    if (gaveUp) marks.flash("the bench has changed: your hand lets go", camera.toMm(pointer.at()));
}

/// A board that has come or gone is always shown with all the others; what was moved is, while the whole bench is.
void ViewAssembly::followTable() {
    const Bench& bench = picture.bench();
    std::vector<Rect> stands;
    for (const Board& board : bench.boards) stands.push_back(board.frameMm());
    for (std::size_t i = 0; i < bench.parts.size(); ++i) {
        if (standsOnTable(bench.parts[i])) stands.push_back(frameOf(picture.table->parts[i]));
    }
    const bool otherBoards = std::exchange(boards_, bench.boards.size()) != bench.boards.size();
    const bool moved = stands != stands_;
    stands_ = std::move(stands);
    if (otherBoards || (moved && camera.isFitted()))
        camera.fit(fittedArea());
    else
        camera.include(fittedArea());
}

void ViewAssembly::freeHands() {
    gestures.cancel();
    marks.clear();
    if (!picture.views.turned) return;
    Views upright = picture.views;
    upright.turned = false;
    turnTo(upright);
}

void ViewAssembly::followMotion(bool visible) {
    const Snapshot* live = picture.live();
    motion.setMoving(visible && live && picture.views.arrows != Arrows::Off && live->largestFlow() > kStillAmpere);
}

void ViewAssembly::followTheme(const Theme& theme) {
    fields.setTheme(theme);
    notes.setTheme(theme);
    shown.setTheme(theme);
    frame.followAll();
}

void ViewAssembly::turnTo(const Views& views) {
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

QRectF ViewAssembly::fittedArea() const { return room.isProjecting() ? withRestOfTable(neededArea()) : neededArea(); }

/// The area grown to the shape of the view. Where there is room beside the circuit it shows the table: all of it in the middle, if it fits.
QRectF ViewAssembly::withRestOfTable(const QRectF& area) const {
    const QSizeF size = view.viewport()->size();
    if (area.isEmpty() || size.isEmpty()) return area;
    const QRectF table = toQt(picture.table->allMm);
    const auto grown = [](double least, double most, double length, double tableLeast, double tableMost) {
        if (length <= most - least) return std::pair(least, most - least);
        const double middle = length < tableMost - tableLeast
                                  ? std::clamp((least + most - length) / 2, tableLeast, tableMost - length)
                                  : (tableLeast + tableMost - length) / 2;
        return std::pair(std::clamp(middle, most - length, least), length);  // the circuit first
    };
    const double aspect = size.width() / size.height();
    const auto [left, width] = grown(area.left(), area.right(), area.height() * aspect, table.left(), table.right());
    const auto [top, height] = grown(area.top(), area.bottom(), area.width() / aspect, table.top(), table.bottom());
    return {left, top, width, height};
}

/// All that a hand or an eye needs: before a room the circuit, else the whole table; with room for tags and notes.
QRectF ViewAssembly::neededArea() const {
    const QRectF things =
        room.isProjecting()
            ? circuitArea(picture)
            : toQt(picture.table->allMm).adjusted(-kFitMarginMm, -kFitMarginMm, kFitMarginMm, kFitMarginMm);
    // Tags and notes beside the boards are as large on the screen whatever the zoom, which their room makes smaller: rounds settle that.
    constexpr int kRounds = 24;
    constexpr double kSettledMm = 0.02;
    QRectF area = things, before;
    for (int i = 0; i < kRounds; ++i) {
        Picture there = picture;
        there.sizes = sizesAt(camera.scaleToFit(area));
        const double band = tagBandMm(there.sizes.readingMm);
        const double sign = picture.table->turned ? turnSignMm(there.sizes) : 0;
        const QRectF boards = toQt(picture.table->boardsMm).adjusted(0, -band, 0, band + sign);
        const QRectF next =
            things.united({things.left(), boards.top(), things.width(), boards.height()}).united(notesArea(there));
        const bool isSettled =
            std::abs(next.width() - area.width()) + std::abs(next.height() - area.height()) < kSettledMm;
        if (isSettled) return next;
        before = std::exchange(area, next);
    }
    return area.united(before);  // it goes to and fro between two layouts of notes
}

WordSizes ViewAssembly::sizesAt(double pixelsPerMm) const {
    return room.isProjecting() ? projectedSizes(view.viewport()->height(), pixelsPerMm)
                               : deskSizes(view.window()->height(), pixelsPerMm);
}

void ViewAssembly::followZoom() {
    const QRectF sight = camera.sight();
    const QRectF seenMm(toQt(camera.toMm(sight.topLeft())), toQt(camera.toMm(sight.bottomRight())));
    shown.setScale(camera.pixelsPerMm() * view.devicePixelRatioF(), sizesAt(camera.pixelsPerMm()), seenMm);
}

}  // namespace tiepoint::ui
