// What the view shows: the document's bench, its live snapshot, marks, words and the frame. The pointer's part is in
// view_pointer.cpp, the frame's in view_frame.cpp.

#include "ui/view/bench_view_body.h"

#include "ui/paint/bench_painter.h"
#include "ui/paint/part_scenes.h"
#include "ui/paint/projecting.h"
#include "ui/paint/shade.h"

#include <QGuiApplication>

#include <algorithm>
#include <cmath>
#include <utility>

namespace tiepoint::ui {
namespace {

constexpr int kFrameMs = 16;    ///< how long a frame waits for the answer to an edit
constexpr int kFlashMs = 2600;  ///< how long words beside the pointer stay
constexpr double kStillAmpere = 1e-6;
constexpr double kFitMarginMm = 3;

}  // namespace

BenchView::Body::Body(BenchView& view, BenchDocument& document, LiveBench& live)
    : view_(view),
      document_(document),
      live_(live),
      scene_(picture_),
      camera_(view),
      motion_(nullptr),
      valueBox_(document, &view),
      ladder_(document, &view),
      noteBox_(document, &view),
      keys_(*this, *this) {
    picture_.theme = &theme(ThemeName::Day);
    flashing_.setSingleShot(true);
    flashing_.setInterval(kFlashMs);
    waiting_.setSingleShot(true);
    waiting_.setInterval(kFrameMs);
    QObject::connect(&flashing_, &QTimer::timeout, &view, [this] {
        picture_.marks.say.clear();
        showMarks();
    });
    QObject::connect(&waiting_, &QTimer::timeout, &view, [this] { resumeFrames(); });
    QObject::connect(&before_, &Before::faded, &view, [this] {
        picture_.changes = nullptr;
        showMarks();
    });
    QObject::connect(&document, &BenchDocument::benchReplaced, &view,
                     [this] { before_.forget(); });  // nothing to compare with
    QObject::connect(&document, &BenchDocument::benchChanged, &view, [this] { followDocument(); });
    QObject::connect(&live, &LiveBench::snapshotReady, &view, [this] { followLive(); });
    QObject::connect(&motion_, &Motion::ticked, &view, [this] { tick(); });
    QObject::connect(&camera_, &Camera::moved, &view, [this] {
        followZoom();
        followLadder();
        showMarks();
    });
    QObject::connect(&ladder_, &ValueLadder::done, &view, [this] { view_.setFocus(Qt::OtherFocusReason); });
    QObject::connect(&valueBox_, &ValueBox::done, &view, [this] { view_.setFocus(Qt::OtherFocusReason); });
    QObject::connect(&noteBox_, &NoteBox::done, &view, [this](const QString& id) {
        if (!id.isEmpty()) setSelection({id});
        view_.setFocus(Qt::OtherFocusReason);
    });
    valueBox_.setLook(*picture_.theme);
    noteBox_.setTheme(*picture_.theme);
    followDocument();
    fit();
}

BenchView::Body::~Body() { setAtPointer(std::nullopt, std::nullopt); }

// --- the bench and what it does ---

void BenchView::Body::followDocument() {
    if (gesture_ && !inGesture_) endGesture();  // undone or replaced under the hand
    picture_.layout = buildLayout(document_.bench());
    picture_.arrangeTable();
    picture_.snapshot = nullptr;
    picture_.pinned = nullptr;
    litNets_.clear();
    clearHover();
    QStringList left = selection();
    left.removeIf([this](const QString& id) {
        const std::string name = id.toStdString();
        return !picture_.bench().findPart(name) && !picture_.bench().findJumper(name) &&
               !picture_.bench().findNote(name) && !picture_.bench().findPinned(name);
    });
    setSelection(left);
    if (picture_.marks.cursor && !holeMm(picture_.bench(), *picture_.marks.cursor)) hideCursor();
    if (keptCursor_ && !holeMm(picture_.bench(), *keptCursor_)) keptCursor_.reset();
    scene_.follow();
    holdFrame();
    followLive();
    includeAll();
    followLadder();
}

void BenchView::Body::followLive() {
    const auto snapshot = live_.snapshot();
    if (snapshot && snapshot->revision == document_.revision()) {
        picture_.snapshot = snapshot;
        picture_.arrangePinned();
        if (before_.follow(snapshot)) picture_.changes = before_.changes();
        // One truth: the snapshot's layout and ours are of the same bench, and its indices hold for both.
        resumeFrames();
    }
    followMotion();
    showMarks();
}

void BenchView::Body::holdFrame() {
    // The answer to an edit is there within a millisecond or two; until then the old frame stays, rather than one without marks.
    if (!waiting_.isActive()) waiting_.start();
    view_.viewport()->setUpdatesEnabled(false);
}

void BenchView::Body::resumeFrames() {
    waiting_.stop();
    if (!view_.viewport()->updatesEnabled()) view_.viewport()->setUpdatesEnabled(true);
}

void BenchView::Body::followMotion() {
    const Snapshot* live = picture_.live();
    motion_.setMoving(view_.isVisible() && live && picture_.views.arrows != Arrows::Off &&
                      live->largestCurrentAmpere > kStillAmpere);
}

void BenchView::Body::setTheme(const Theme& theme) {
    picture_.theme = &theme;
    valueBox_.setLook(theme);
    ladder_.setTheme(theme);
    noteBox_.setTheme(theme);
    scene_.follow(true);
    view_.viewport()->update();
}

void BenchView::Body::setViews(const Views& views) {
    const bool turns = views.turned != picture_.views.turned;
    picture_.views = views;
    if (turns) {
        cancelGesture();
        clearHover();
        picture_.arrangeTable();
        scene_.follow(true);
        includeAll();
    }
    picture_.arrangePinned();
    followMotion();
    view_.viewport()->update();
    Q_EMIT view_.viewsChanged();
}

void BenchView::Body::includeAll() { camera_.include(fittedArea()); }

QRectF BenchView::Body::fittedArea() const {
    if (projecting_) return circuitArea(picture_);
    return toQt(picture_.table->allMm).adjusted(-kFitMarginMm, -kFitMarginMm, kFitMarginMm, kFitMarginMm);
}

void BenchView::Body::followZoom() {
    picture_.pixelsPerMm = camera_.pixelsPerMm() * view_.devicePixelRatioF();
    const WordSizes sizes =
        projecting_ ? projectedSizes(view_.viewport()->height(), camera_.pixelsPerMm()) : WordSizes{};
    if (sizes == picture_.sizes) return;
    picture_.sizes = sizes;
    picture_.arrangePinned();
    scene_.follow(true);  // words on supplies stand as large
}

void BenchView::Body::setProjecting(bool projecting) {
    if (projecting == projecting_) return;
    projecting_ = projecting;
    fit();
    followZoom();
    view_.viewport()->update();
}

void BenchView::Body::wipeInk() {
    ink_.wipe();
    view_.viewport()->update();
}

void BenchView::Body::fit() { camera_.fit(fittedArea()); }

// --- marks and words ---

void BenchView::Body::lightNets(std::vector<int> nets) {
    std::sort(nets.begin(), nets.end());
    nets.erase(std::unique(nets.begin(), nets.end()), nets.end());
    litNets_ = std::move(nets);
    showMarks();
}

void BenchView::Body::clearMarks() {
    Marks& marks = picture_.marks;
    marks.targets.clear();
    marks.carried.reset();
    marks.group.reset();
    marks.drawn.reset();
    marks.drawnFree.reset();
    marks.probe.reset();
    marks.refused = false;
    marks.say.clear();
    litNets_.clear();
    flashing_.stop();
    scene_.setPale({});
    showMarks();
}

void BenchView::Body::flash(const std::string& words, Point at) {
    picture_.marks.say = words;
    picture_.marks.sayAt = at;
    flashing_.start();
    showMarks();
}

void BenchView::Body::setBand(const std::optional<QRectF>& band) {
    picture_.marks.band = band;
    showMarks();
}

void BenchView::Body::setAtPointer(const std::optional<Part>& part, std::optional<int> jumperColour) {
    const QString wanted = part           ? QString::fromStdString(part->id)
                           : jumperColour ? QString::number(*jumperColour)
                                          : QString();
    if (wanted == atPointer_) return;
    if (!atPointer_.isEmpty()) QGuiApplication::restoreOverrideCursor();
    atPointer_ = wanted;
    if (wanted.isEmpty()) return;
    constexpr double kCursorMm = 14, kLengthMm = 9;
    const double scale = std::min(camera_.pixelsPerMm(), 6.0);  // larger cursors are refused by some systems
    QPixmap picture(QSize(1, 1) * static_cast<int>(std::lround(kCursorMm * scale)));
    picture.fill(Qt::transparent);
    QPainter painter(&picture);
    painter.setRenderHint(QPainter::Antialiasing);
    painter.translate(picture.width() / 2.0, picture.height() / 2.0);
    painter.scale(scale, scale);
    if (part) {
        const double room = kCursorMm / std::max(kCursorMm, std::max(part->kind->package->bodyLengthMm,
                                                                     part->kind->package->bodyWidthMm));
        painter.scale(room, room);
        paintSample(painter, *picture_.theme, *part);
    } else {
        paintJumperSample(painter, *picture_.theme, *jumperColour, kLengthMm);
    }
    painter.end();
    QGuiApplication::setOverrideCursor(QCursor(picture));
}

QStringList BenchView::Body::selection() const {
    QStringList ids;
    for (const std::string& id : picture_.marks.selected) ids << QString::fromStdString(id);
    return ids;
}

void BenchView::Body::setSelection(const QStringList& ids) {
    if (ids == selection()) return;
    picture_.marks.selected.clear();
    for (const QString& id : ids) picture_.marks.selected.push_back(id.toStdString());
    showMarks();
    followLadder();
    Q_EMIT view_.selectionChanged();
}

/// The ladder stands beside the one selected part, out of the way while something is carried.
void BenchView::Body::followLadder() {
    const auto& selected = picture_.marks.selected;
    const int part =
        selected.size() == 1 && !gesture_ && picture_.layout ? picture_.bench().partIndex(selected.front()) : -1;
    if (part < 0 || static_cast<std::size_t>(part) >= picture_.table->parts.size()) return ladder_.follow({}, {});
    const QRectF body = findPackagePainter(picture_.bench().parts[static_cast<std::size_t>(part)].kind->package->name)
                            ->body(sceneOf(picture_, part))
                            .boundingRect();
    // Below the boards, or above them: nothing that it changes may be hidden by it.
    const Rect& boards = picture_.table->boardsMm;
    const QRectF around(view_.fromMm({body.left(), std::min(body.top(), boards.top)}),
                        view_.fromMm({body.right(), std::max(body.bottom(), boards.bottom())}));
    ladder_.follow(selected.front(), around.toAlignedRect());
}

void BenchView::Body::beginTyping(const std::string& partId, const QString& typed) {
    const int part = picture_.bench().partIndex(partId);
    if (part < 0) return;
    if (typedValueOf(picture_.bench().parts[static_cast<std::size_t>(part)]) < 0) {
        Q_EMIT view_.valueTyped(QString::fromStdString(partId));
        return;
    }
    const Outline& body = picture_.table->parts[static_cast<std::size_t>(part)].pose.body;
    valueBox_.begin(partId, typed, view_.fromMm({body.centre.x, body.centre.y + body.halfWidth}).toPoint());
}

}  // namespace tiepoint::ui
