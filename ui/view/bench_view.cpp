#include "ui/view/bench_view.h"

#include "ui/gesture/gesture_table.h"
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
    assembly_ = std::make_unique<Assembly>(*this, document, live);
    setScene(&assembly_->scene);
}

BenchView::~BenchView() {
    setScene(nullptr);  // it goes first
}

const Picture& BenchView::picture() const { return assembly_->picture; }
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

void BenchView::setProjecting(bool projecting) { assembly_->setProjecting(projecting); }
bool BenchView::isProjecting() const { return assembly_->ring.isShown(); }

void BenchView::setInking(bool inking) {
    assembly_->inking = inking;
    assembly_->followInking();
}

void BenchView::wipeInk() {
    assembly_->ink.wipe();
    assembly_->frame.followAll();
}

const Ink& BenchView::ink() const { return assembly_->ink; }

void BenchView::beginPlacing(const QString& kind, const QString& presetValue, QPoint globalPos) {
    Assembly& all = *assembly_;
    all.gestures.cancel();
    all.marks.clear();
    if (all.picture.views.turned) {  // nothing goes into holes from below
        Views upright = all.picture.views;
        upright.turned = false;
        setViews(upright);
    }
    auto gesture = gestureFromTray(all.hand, kind, presetValue);
    if (!gesture) return;
    setFocus(Qt::OtherFocusReason);
    all.pointer.carryFromTray(std::move(gesture), viewport()->mapFromGlobal(QPointF(globalPos)));
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

void BenchView::say(const std::string& words, Point at) { assembly_->marks.flash(words, at); }
void BenchView::setGuideHoles(const std::vector<Hole>& holes) { assembly_->marks.set(&Marks::guide, holes); }
void BenchView::setLit(const std::string& id) { assembly_->marks.set(&Marks::lit, id); }
void BenchView::setMended(std::shared_ptr<const Bench> mended) { assembly_->marks.set(&Marks::mended, mended); }
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

QRectF BenchView::findingMark(int finding) const {
    for (const FindingMark& mark : assembly_->frame.findingMarks()) {
        if (mark.finding == finding) return viewportTransform().mapRect(mark.frame);
    }
    return {};
}

// --- events: each goes to whoever deals with it ---

bool BenchView::event(QEvent* event) {
    if (event->type() == QEvent::ShortcutOverride && assembly_ &&
        assembly_->keyboard.wants(*static_cast<QKeyEvent*>(event))) {
        event->accept();
        return true;
    }
    return QGraphicsView::event(event);
}

bool BenchView::viewportEvent(QEvent* event) {
    const bool touches = event->type() == QEvent::TouchBegin || event->type() == QEvent::TouchUpdate ||
                         event->type() == QEvent::TouchEnd || event->type() == QEvent::TouchCancel;
    if (touches && assembly_) {
        event->setAccepted(assembly_->fingers.touch(*static_cast<QTouchEvent*>(event)));
        return event->isAccepted();
    }
    if (event->type() == QEvent::Leave && assembly_) {
        if (!isGesturing()) assembly_->marks.clearHover();
        if (isProjecting()) assembly_->frame.follow();
    }
    return QGraphicsView::viewportEvent(event);
}

void BenchView::paintEvent(QPaintEvent* event) {
    QPainter painter(viewport());
    assembly_->frame.paint(painter, event->region());
    if (isMoving()) assembly_->frame.prewarm();
}

void BenchView::mousePressEvent(QMouseEvent* event) { assembly_->pointer.press(*event); }

void BenchView::mouseDoubleClickEvent(QMouseEvent* event) {
    const std::string note = assembly_->hovering.under(event->position()).note;
    if (!note.empty()) return assembly_->notes.edit(note);
    assembly_->pointer.press(*event);  // two quick presses of a button are two presses
}

void BenchView::mouseMoveEvent(QMouseEvent* event) {
    assembly_->pointer.move(event->position(), event->buttons(), event->modifiers());
}

void BenchView::mouseReleaseEvent(QMouseEvent* event) {
    assembly_->pointer.release(event->position(), event->button(), event->modifiers());
}

void BenchView::wheelEvent(QWheelEvent* event) { assembly_->wheel.turn(*event); }

void BenchView::keyPressEvent(QKeyEvent* event) {
    if (!assembly_->keyboard.press(*event)) event->ignore();
}

void BenchView::keyReleaseEvent(QKeyEvent* event) {
    if (!assembly_->keyboard.release(*event)) event->ignore();
}

void BenchView::contextMenuEvent(QContextMenuEvent* event) {
    if (!isProjecting()) assembly_->pinning.openMenu(*event);  // else the right button draws
}

void BenchView::focusInEvent(QFocusEvent* event) {
    QGraphicsView::focusInEvent(event);
    // Whoever comes by the keyboard must see where it is.
    if (event->reason() == Qt::TabFocusReason || event->reason() == Qt::BacktabFocusReason) assembly_->cursor.restore();
}

void BenchView::focusOutEvent(QFocusEvent* event) {
    assembly_->keyboard.loseFocus();
    assembly_->fingers.forget();
    assembly_->hand.releaseAll();
    assembly_->cursor.hide();
    QGraphicsView::focusOutEvent(event);
}

void BenchView::resizeEvent(QResizeEvent* event) {
    QGraphicsView::resizeEvent(event);
    if (!assembly_) return;
    assembly_->camera.refit();
    assembly_->followZoom();
}

void BenchView::showEvent(QShowEvent* event) {
    QGraphicsView::showEvent(event);
    assembly_->followMotion(true);
}

void BenchView::hideEvent(QHideEvent* event) {
    QGraphicsView::hideEvent(event);
    assembly_->followMotion(false);
}

}  // namespace tiepoint::ui
