#include "ui/window/sheet_view.h"

#include "core/snapshot/readings.h"
#include "core/snapshot/throws.h"
#include "ui/paint/arrow_marks.h"
#include "ui/paint/shade.h"
#include "ui/sheet/glide.h"
#include "ui/theme/panels.h"
#include "ui/view/bench_marks.h"

#include <QMouseEvent>
#include <QPainter>

namespace tiepoint::ui {
namespace {

constexpr double kSheetCrease = 26, kSheetInset = 38, kSheetHead = 54, kSheetPad = 16;  // of the 1080-line layout
constexpr double kMostSheetPixelsPerMm = 9.5;
constexpr int kSheetTickMs = 33, kSheetGlideMs = 280;

/// Where on the board the tag of a net stands that is pointed at on the sheet.
Point placeOnBoard(const Picture& picture, int net) {
    const Layout& layout = *picture.layout;
    for (const Joint& joint : layout.joints) {
        if (joint.net == net && joint.hole >= 0) return picture.seenAt(layout.holeAt(joint.hole));
    }
    return {};
}

double easedShare(double share) { return share * share * (3 - 2 * share); }

}  // namespace

SheetView::SheetView(BenchDocument& document, LiveBench& live, BenchView& view, QWidget* parent)
    : QWidget(parent),
      document_(document),
      live_(live),
      view_(view),
      look_{&theme(ThemeName::Day), 1},
      fold_(new QToolButton(this)) {
    setMouseTracking(true);
    setAccessibleName(QStringLiteral("Circuit diagram"));
    fold_->setText(QStringLiteral("Fold up"));
    fold_->setFocusPolicy(Qt::TabFocus);
    connect(fold_, &QToolButton::clicked, this, &SheetView::foldWanted);
    connect(&document_, &BenchDocument::benchChanged, this, &SheetView::followBench);
    connect(&live_, &LiveBench::snapshotReady, this, [this] {
        followMotion();
        update();
    });
    connect(&view_, &BenchView::hoverChanged, this, [this] { update(); });
    connect(&view_, &BenchView::viewsChanged, this, [this] {
        followMotion();
        update();
    });
    ticking_.setInterval(kSheetTickMs);
    connect(&ticking_, &QTimer::timeout, this, &SheetView::tick);
}

void SheetView::setLook(const Look& look) {
    look_ = look;
    fold_->setStyleSheet(wordButtonStyle(look));
    fold_->adjustSize();
    fold_->move(width() - fold_->width() - look_.ipx(kSheetInset),
                beside_ ? look_.ipx(8) : look_.ipx(kSheetCrease + 8));
    update();
}

void SheetView::setBeside(bool beside) {
    beside_ = beside;
    fold_->setVisible(!beside);
    update();
}

void SheetView::setStyle(SymbolStyle style) {
    style_ = style;
    followBench();
}

void SheetView::followBench() {
    if (!isVisible()) return;
    const auto layout = view_.picture().layout;
    if (!layout || layout->bench != document_.bench()) return;
    const QRectF frame = room();
    const double ratio = frame.height() > 1 ? frame.width() / frame.height() : 2;
    auto next = diagramOf(layout, style_, sheet_.get(), ratio);
    before_ = sheet_ ? sheet_ : nullptr;
    sheet_ = std::move(next);
    gliding_.start();
    followMotion();
    update();
}

// --- moving ---

void SheetView::followMotion() {
    const bool flows = sheet_ && view_.views().arrows != Arrows::Off && seen().live() &&
                       seen().live()->largestCurrentAmpere >= kNoCurrentAmpere;
    const bool moves = isVisible() && (flows || before_);
    if (moves == ticking_.isActive()) return;
    if (moves) {
        clock_.start();
        ticking_.start();
    } else {
        ticking_.stop();
    }
}

void SheetView::tick() {
    constexpr double kSecondsPerMs = 1e-3;
    phaseMm_ += kArrowSpeedMmPerSecond * static_cast<double>(clock_.restart()) * kSecondsPerMs;
    if (before_ && gliding_.elapsed() >= kSheetGlideMs) {
        before_ = nullptr;
        followMotion();
    }
    update();
}

// --- where things lie ---

QRectF SheetView::paper() const {
    return QRectF(rect()).adjusted(0, beside_ ? 0 : look_.px(kSheetCrease), 0, -look_.px(8));
}

QRectF SheetView::room() const {
    return paper().adjusted(look_.px(kSheetPad), look_.px(kSheetHead), -look_.px(kSheetPad), -look_.px(kSheetPad / 2));
}

double SheetView::scaleOf(const Diagram& diagram) const {
    const QRectF frame = room();
    if (frame.isEmpty()) return 1;
    return std::min({frame.width() / diagram.width, frame.height() / diagram.height,
                     beside_ ? 1e9 : look_.px(kMostSheetPixelsPerMm)});
}

QPointF SheetView::cornerOf(const Diagram& diagram) const {
    return room().center() - QPointF(diagram.width, diagram.height) * scaleOf(diagram) / 2;
}

QPointF SheetView::fromSheet(Point mm) const {
    return cornerOf(sheet_->diagram) + QPointF(mm.x, mm.y) * scaleOf(sheet_->diagram);
}

Point SheetView::toSheet(QPointF at) const {
    const QPointF off = (at - cornerOf(sheet_->diagram)) / scaleOf(sheet_->diagram);
    return {off.x(), off.y()};
}

// --- painting ---

SheetPicture SheetView::seen() const {
    const Picture& board = view_.picture();
    SheetPicture picture;
    picture.sheet = sheet_;
    picture.snapshot = board.snapshot;
    picture.theme = look_.theme;
    picture.views = board.views;
    picture.views.readings = true;
    picture.fullScaleAmpere = fullScaleAmpere(board);
    picture.phaseMm = phaseMm_;
    picture.hoverNet = board.marks.hoverPart.empty() ? board.marks.hoverNet : -1;
    picture.hoverPart = board.marks.hoverPart;
    picture.paper = false;
    return picture;
}

void SheetView::paintFold(QPainter& painter) {
    const Theme& theme = *look_.theme;
    const QRectF sheet = paper();
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setPen(QPen(theme.cardEdge, 1));
    if (!beside_) {
        const double inset = look_.px(kSheetInset);
        QLinearGradient shade(0, 0, 0, sheet.top());
        shade.setColorAt(0, theme.flat ? theme.card : blend(theme.card, theme.benchBottom, 0.75));
        shade.setColorAt(1, theme.flat ? theme.card : blend(theme.card, theme.benchBottom, 0.25));
        painter.setBrush(shade);
        painter.drawPolygon(
            QPolygonF{{inset, 0.5}, {width() - inset, 0.5}, {width() - 0.5, sheet.top()}, {0.5, sheet.top()}});
    }
    painter.setBrush(theme.card);
    painter.drawRect(sheet.adjusted(0.5, 0, -0.5, 0));
    words_.begin();
    words_.draw(painter, sheet.adjusted(look_.px(kSheetInset), look_.px(14), -look_.px(kSheetInset), 0),
                QStringLiteral("Circuit diagram"),
                {look_.font(text::kBody), theme.dimText, Qt::AlignLeft | Qt::AlignTop, false});
}

void SheetView::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    paintFold(painter);
    if (!sheet_) return;
    SheetPicture picture = seen();
    if (before_ && gliding_.elapsed() < kSheetGlideMs) {
        const double share = easedShare(static_cast<double>(gliding_.elapsed()) / kSheetGlideMs);
        SheetBetween between = betweenSheets(*before_, *sheet_, share);
        picture.sheet = std::move(between.sheet);
        picture.newWires = std::move(between.isNew);
        picture.settled = share;
    }
    const double scale = scaleOf(picture.sheet->diagram);
    painter.translate(cornerOf(picture.sheet->diagram));
    painter.scale(scale, scale);
    paintSheet(painter, picture);
}

// --- pointing ---

void SheetView::mouseMoveEvent(QMouseEvent* event) {
    if (!sheet_) return;
    const UnderSheet under = underSheet(*sheet_, toSheet(event->position()));
    const Picture& board = view_.picture();
    if (under.part >= 0 && sheet_->layout == board.layout) {
        const Part& part = board.bench().parts[static_cast<std::size_t>(under.part)];
        const Pose& pose = board.table->parts[static_cast<std::size_t>(under.part)].pose;
        view_.marks().setHover(-1, board.table->seen(pose.centre), part.id);
    } else if (under.net >= 0 && sheet_->layout == board.layout) {
        view_.marks().setHover(under.net, placeOnBoard(board, under.net), {});
    } else {
        view_.marks().clearHover();
    }
    setCursor(under.part >= 0 ? Qt::PointingHandCursor : Qt::ArrowCursor);
}

void SheetView::leaveEvent(QEvent*) { view_.marks().clearHover(); }

void SheetView::mousePressEvent(QMouseEvent* event) {
    if (!sheet_ || event->button() != Qt::LeftButton) return;
    const int part = underSheet(*sheet_, toSheet(event->position())).part;
    if (part < 0 || sheet_->layout->bench != document_.bench()) return;
    const Part& each = document_.bench()->parts[static_cast<std::size_t>(part)];
    if (each.kind->hasCap) {
        pressed_ = each.id;
        live_.setHeld(each.id, true);
    } else {
        throwSwitch(part);
    }
    view_.setSelection({QString::fromStdString(each.id)});
}

void SheetView::mouseReleaseEvent(QMouseEvent*) {
    if (pressed_.empty()) return;
    live_.setHeld(pressed_, false);
    pressed_.clear();
}

/// Brings a switch that stays where it is put to its next position: an edit, as on the board.
void SheetView::throwSwitch(int part) {
    const Bench& bench = *document_.bench();
    for (const Throw& each : throwsOf(bench)) {
        const Part& thrown = bench.parts[static_cast<std::size_t>(part)];
        if (each.part != part || each.isCap() || thrown.kind->isSupply || thrown.kind->family == "Meter") continue;
        const double now = thrown.stateValue(each.state);
        const int next = (static_cast<int>(now) + 1) % each.values;
        const std::string state = thrown.kind->state[static_cast<std::size_t>(each.state)].name;
        document_.push(setStateEdit(bench, thrown.id, state, next));
        return;
    }
}

void SheetView::resizeEvent(QResizeEvent*) { setLook(look_); }

void SheetView::showEvent(QShowEvent*) {
    sheet_ = nullptr;
    followBench();
}

void SheetView::hideEvent(QHideEvent*) { followMotion(); }

}  // namespace tiepoint::ui
