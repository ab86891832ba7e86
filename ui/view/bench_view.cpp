#include "ui/view/bench_view.h"

#include "ui/gesture/gesture_table.h"
#include "ui/gesture/table_gesture.h"
#include "ui/gesture/turning.h"
#include "ui/view/view_assembly.h"

namespace tiepoint::ui {
BenchView::BenchView(BenchDocument& document, LiveBench& live, QWidget* parent) : QGraphicsView(parent) {
    setFrameShape(NoFrame);
    setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    setVerticalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    setViewportUpdateMode(NoViewportUpdate);  // the canvas knows what changes
    setTransformationAnchor(NoAnchor);
    setResizeAnchor(NoAnchor);
    setInteractive(false);
    setFocusPolicy(Qt::StrongFocus);
    setAccessibleName(tr("Bench"));
    viewport()->setMouseTracking(true);
    viewport()->setAttribute(Qt::WA_OpaquePaintEvent);
    viewport()->setAttribute(Qt::WA_AcceptTouchEvents);
    assembly_ = std::make_unique<ViewAssembly>(*this, document, live);
    setScene(&assembly_->scene);
}

BenchView::~BenchView() {
    setScene(nullptr);                       // it goes first
    const auto last = std::move(assembly_);  // what its fields tell the view as they go finds nothing any more
}

const Picture& BenchView::picture() const { return assembly_->picture; }
Picture BenchView::wholePicture() const { return assembly_->shown.whole(); }
const BenchScene& BenchView::benchScene() const { return assembly_->scene; }
void BenchView::setThemeName(ThemeName name) { assembly_->followTheme(theme(name)); }

void BenchView::setViews(const Views& views) {
    if (views != assembly_->picture.views) assembly_->turnTo(views);
}

const Views& BenchView::views() const { return assembly_->picture.views; }
QStringList BenchView::selection() const { return assembly_->marks.selection(); }
void BenchView::setSelection(const QStringList& ids) { assembly_->marks.setSelection(ids); }
QString BenchView::hoveredPart() const { return QString::fromStdString(assembly_->picture.marks.hoverPart); }
void BenchView::fitBench() { assembly_->camera.fit(assembly_->fittedArea()); }
void BenchView::zoomAt(QPointF viewPos, double factor) { assembly_->camera.zoomAt(viewPos, factor); }
double BenchView::pixelsPerMm() const { return assembly_->camera.pixelsPerMm(); }
Point BenchView::toMm(QPointF viewPos) const { return assembly_->camera.toMm(viewPos); }
QPointF BenchView::fromMm(Point mm) const { return assembly_->camera.fromMm(mm); }

RoomMode& BenchView::room() { return assembly_->room; }
const RoomMode& BenchView::room() const { return assembly_->room; }
BenchMarks& BenchView::marks() { return assembly_->marks; }

void BenchView::beginPlacing(const QString& kind, const QString& presetValue, QPoint globalPos) {
    ViewAssembly& all = *assembly_;
    all.freeHands();
    auto gesture = gestureFromTray(all.hand, kind, presetValue);
    if (!gesture) return;
    setFocus(Qt::OtherFocusReason);
    all.pointer.carryFromTray(std::move(gesture), viewport()->mapFromGlobal(QPointF(globalPos)));
}

void BenchView::setCovered(const QRect& inView) { assembly_->fields.setCovered(inView); }
void BenchView::setDrawer(const ResistorDrawer& drawer) { assembly_->fields.setDrawer(drawer); }

void BenchView::beginMovingBoard(const QString& id) {
    ViewAssembly& all = *assembly_;
    const Board* board = all.picture.bench().findBoard(id.toStdString());
    if (!board) return;
    const Rect frame = board->frameMm();
    const Point middle{frame.left + frame.width / 2, frame.top + frame.height / 2};
    all.freeHands();
    setFocus(Qt::OtherFocusReason);
    all.pointer.carry(std::make_unique<TableGesture>(all.hand, id.toStdString()), middle);
    all.marks.set(&Marks::say, std::string("arrows move it, Enter puts it down"));
}

bool BenchView::isGesturing() const { return assembly_->gestures.isUnderWay(); }
bool BenchView::isTyping() const { return assembly_->fields.isTyping(); }
bool BenchView::isMoving() const { return assembly_->motion.isMoving(); }
std::optional<Hole> BenchView::cursor() const { return assembly_->cursor.hole(); }

void BenchView::setCursorHole(const std::optional<Hole>& hole) {
    if (hole && holeMm(assembly_->picture.bench(), *hole))
        assembly_->cursor.show(*hole);
    else
        assembly_->cursor.hide();
}

std::optional<Hole> BenchView::holeAtHand() const { return assembly_->pinning.holeHere(); }
void BenchView::setThingActions(const ThingActions& actions) { assembly_->menu.setActions(actions); }
void BenchView::say(const QString& words) {
    assembly_->marks.flash(words.toStdString(), besideSelection(assembly_->picture));
}
void BenchView::turnSelection(int direction) { ui::turnSelection(assembly_->hand, direction); }
void BenchView::pinReading() { assembly_->pinning.pinHere(); }
void BenchView::probe() { assembly_->pinning.probeHere(); }
void BenchView::beginNote() {
    const QPointF at = assembly_->pointer.at();
    assembly_->notes.begin(at, assembly_->hovering.under(at));
}

void BenchView::setFindings(std::shared_ptr<const std::vector<Finding>> findings, int current) {
    assembly_->shown.setFindings(std::move(findings));
    assembly_->marks.marks().finding = current;
    assembly_->marks.show();
}

void BenchView::setLadderAllowed(bool allowed) { assembly_->fields.setLadderAllowed(allowed); }
void BenchView::forgetBefore() { assembly_->shown.forgetBefore(); }
void BenchView::setVeiled(bool veiled) { assembly_->shown.setVeiled(veiled); }
void BenchView::setPlan(std::optional<std::vector<HungTag>> tags) { assembly_->shown.setPlan(std::move(tags)); }

QRectF BenchView::findingMark(int finding) const {
    for (const FindingMark& mark : assembly_->frame.findingMarks()) {
        if (mark.finding == finding) return viewportTransform().mapRect(mark.frame);
    }
    return {};
}

bool BenchView::event(QEvent* event) {
    return (assembly_ && assembly_->events.takeOfView(*event)) || QGraphicsView::event(event);
}

bool BenchView::viewportEvent(QEvent* event) {
    return (assembly_ && assembly_->events.takeOfViewport(*event)) || QGraphicsView::viewportEvent(event);
}

void BenchView::keyPressEvent(QKeyEvent* event) { assembly_->events.takeKey(*event); }
void BenchView::keyReleaseEvent(QKeyEvent* event) { assembly_->events.takeKey(*event); }

void BenchView::paintEvent(QPaintEvent* event) {
    QPainter painter(viewport());
    assembly_->frame.paint(painter, event->region());
    if (isMoving()) assembly_->frame.prewarm();
}

void BenchView::resizeEvent(QResizeEvent* event) {
    QGraphicsView::resizeEvent(event);
    if (!assembly_) return;
    assembly_->camera.refit(assembly_->fittedArea());
    assembly_->followZoom();
}

}  // namespace tiepoint::ui
