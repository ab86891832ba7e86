#include "ui/view/bench_view.h"

#include "ui/access/bench_access.h"
#include "ui/view/bench_view_body.h"

#include <QMouseEvent>
#include <QTouchEvent>

namespace tiepoint::ui {
BenchView::BenchView(BenchDocument& document, LiveBench& live, QWidget* parent) : QGraphicsView(parent) {
    installBenchAccess();  // before anyone asks for the view's node
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
    body_ = std::make_unique<Body>(*this, document, live);
    setScene(&body_->scene_);
}

BenchView::~BenchView() {
    setScene(nullptr);  // the body's scene goes first
}

const Picture& BenchView::picture() const { return body_->picture_; }

void BenchView::setThemeName(ThemeName name) { body_->setTheme(theme(name)); }

void BenchView::setViews(const Views& views) {
    if (views != body_->picture_.views) body_->setViews(views);
}

const Views& BenchView::views() const { return body_->picture_.views; }
QStringList BenchView::selection() const { return body_->selection(); }
void BenchView::setSelection(const QStringList& ids) { body_->setSelection(ids); }
QString BenchView::hoveredPart() const { return QString::fromStdString(body_->picture_.marks.hoverPart); }
void BenchView::fitBench() { body_->fit(); }
void BenchView::zoomAt(QPointF viewPos, double factor) { body_->camera_.zoomAt(viewPos, factor); }

void BenchView::setProjecting(bool projecting) { body_->setProjecting(projecting); }
bool BenchView::isProjecting() const { return body_->projecting_; }
void BenchView::setInking(bool inking) { body_->inking_ = inking; }
void BenchView::wipeInk() { body_->wipeInk(); }
const Ink& BenchView::ink() const { return body_->ink_; }

Point BenchView::toMm(QPointF viewPos) const {
    const QPointF mm = viewportTransform().inverted().map(viewPos);
    return {mm.x(), mm.y()};
}

QPointF BenchView::fromMm(Point mm) const { return viewportTransform().map(QPointF(mm.x, mm.y)); }

void BenchView::beginPlacing(const QString& kind, const QString& presetValue, QPoint globalPos) {
    body_->place(kind, presetValue, globalPos);
}
bool BenchView::isGesturing() const { return body_->gesture_ != nullptr; }
bool BenchView::isTyping() const { return body_->valueBox_.isTyping(); }
bool BenchView::isMoving() const { return body_->motion_.isMoving(); }
double BenchView::pixelsPerMm() const { return body_->camera_.pixelsPerMm(); }
std::optional<Hole> BenchView::cursor() const { return body_->picture_.marks.cursor; }
void BenchView::say(const std::string& words, Point at) { body_->flash(words, at); }

void BenchView::setGuideHoles(const std::vector<Hole>& holes) {
    if (holes == body_->picture_.marks.guide) return;
    body_->picture_.marks.guide = holes;
    body_->showMarks();
}

void BenchView::setLit(const std::string& id) {
    if (id == body_->picture_.marks.lit) return;
    body_->picture_.marks.lit = id;
    body_->showMarks();
}

void BenchView::pinReading() { body_->pinHere(); }
void BenchView::probe() { body_->probeFrom(body_->holeHere()); }
void BenchView::setFindings(std::shared_ptr<const std::vector<Finding>> findings, int current) {
    body_->picture_.findings = std::move(findings);
    body_->picture_.marks.finding = current;
    body_->showMarks();
}

QRectF BenchView::findingMark(int finding) const {
    for (const FindingMark& mark : body_->canvas_.findingMarks(body_->picture_)) {
        if (mark.finding == finding) return viewportTransform().mapRect(mark.frame);
    }
    return {};
}

void BenchView::setMended(std::shared_ptr<const Bench> mended) {
    if (mended == body_->picture_.marks.mended) return;
    body_->picture_.marks.mended = std::move(mended);
    body_->showMarks();
}

void BenchView::beginNote() { body_->beginNote(); }

void BenchView::setCursorHole(const std::optional<Hole>& hole) {
    if (hole && holeMm(body_->picture_.bench(), *hole))
        body_->showCursor(*hole);
    else
        body_->hideCursor();
}

// --- events ---

bool BenchView::event(QEvent* event) {
    if (event->type() == QEvent::ShortcutOverride && body_ && body_->keys_.wants(*static_cast<QKeyEvent*>(event))) {
        event->accept();
        return true;
    }
    return QGraphicsView::event(event);
}

bool BenchView::viewportEvent(QEvent* event) {
    if (event->type() == QEvent::Leave && body_) body_->leave();
    const bool touches = event->type() == QEvent::TouchBegin || event->type() == QEvent::TouchUpdate ||
                         event->type() == QEvent::TouchEnd || event->type() == QEvent::TouchCancel;
    if (touches && body_) {
        event->setAccepted(body_->touch(*static_cast<QTouchEvent*>(event)));
        return event->isAccepted();
    }
    return QGraphicsView::viewportEvent(event);
}

void BenchView::paintEvent(QPaintEvent* event) {
    QPainter painter(viewport());
    body_->paint(painter, event->region());
}

void BenchView::mousePressEvent(QMouseEvent* event) { body_->press(*event); }
void BenchView::mouseDoubleClickEvent(QMouseEvent* event) {
    const std::string note = whatLiesAt(body_->picture_, toMm(event->position())).note;
    if (!note.empty()) return body_->editNote(note);
    body_->press(*event);  // two quick presses of a button are two presses
}
void BenchView::mouseMoveEvent(QMouseEvent* event) {
    body_->move(event->position(), event->buttons(), event->modifiers());
}
void BenchView::mouseReleaseEvent(QMouseEvent* event) {
    body_->release(event->position(), event->button(), event->modifiers());
}
void BenchView::wheelEvent(QWheelEvent* event) { body_->wheel(*event); }

void BenchView::keyPressEvent(QKeyEvent* event) {
    if (event->key() == Qt::Key_Space) {
        body_->spaceHeld_ = true;
        if (!event->isAutoRepeat()) body_->operate(true);
        return;
    }
    Body& body = *body_;
    if (body.gesture_) {
        if (event->key() == Qt::Key_Escape) return body.cancelGesture();
        if (body.keyToGesture(event->key()) || body.leadGesture(*event)) return;
    }
    if (!body.keys_.press(*event)) event->ignore();
}

void BenchView::keyReleaseEvent(QKeyEvent* event) {
    if (event->key() == Qt::Key_Space && !event->isAutoRepeat()) {
        body_->spaceHeld_ = false;
        body_->operate(false);
    }
    if (!body_->keys_.release(*event)) event->ignore();
}

void BenchView::contextMenuEvent(QContextMenuEvent* event) { body_->openMenu(*event); }

void BenchView::focusInEvent(QFocusEvent* event) {
    QGraphicsView::focusInEvent(event);
    // Whoever comes by the keyboard must see where it is.
    if (event->reason() == Qt::TabFocusReason || event->reason() == Qt::BacktabFocusReason) body_->restoreCursor();
}

void BenchView::focusOutEvent(QFocusEvent* event) {
    body_->loseFocus();
    body_->hideCursor();
    QGraphicsView::focusOutEvent(event);
}

void BenchView::resizeEvent(QResizeEvent* event) {
    QGraphicsView::resizeEvent(event);
    if (body_) body_->camera_.refit();
    if (body_) body_->followZoom();
}

void BenchView::showEvent(QShowEvent* event) {
    QGraphicsView::showEvent(event);
    body_->followMotion();
}

void BenchView::hideEvent(QHideEvent* event) {
    QGraphicsView::hideEvent(event);
    body_->followMotion();
}

bool BenchView::eventFilter(QObject* watched, QEvent* event) {
    return body_ && body_->followElsewhere(watched, event) ? true : QGraphicsView::eventFilter(watched, event);
}

}  // namespace tiepoint::ui
