#include "ui/cards/truth_rows.h"

#include "ui/cards/part_tint.h"
#include "ui/theme/panels.h"
#include "ui/theme/qs.h"

#include <QKeyEvent>
#include <QMouseEvent>
#include <QPainter>
#include <QScrollBar>

#include <algorithm>
#include <cmath>

namespace tiepoint::ui {
namespace {

constexpr double kRowHeight = 29, kHeaderHeight = 31;
constexpr double kLetterSize = 20;
constexpr double kColumnPad = 14;
constexpr double kEdgePad = 6;  // before the first column
constexpr double kDisc = 16, kBesideDisc = 6;
constexpr double kSwitchShare = 0.6;  // of the viewport that switches may hold while lamps scroll
constexpr float kLampLightness = 0.52F;

}  // namespace

TruthRows::TruthRows(QWidget* parent) : QAbstractScrollArea(parent), look_{&theme(ThemeName::Day), 1} {
    setAccessibleName(QStringLiteral("Rows of the truth table"));
    setFrameShape(QFrame::NoFrame);
    setFocusPolicy(Qt::StrongFocus);
    viewport()->setAutoFillBackground(false);
    viewport()->setMouseTracking(true);
}

void TruthRows::setLook(const Look& look) {
    look_ = look;
    setStyleSheet(scrollBarStyle(look) + QStringLiteral("QAbstractScrollArea { background: transparent; }"));
    arrange();
}

void TruthRows::showTable(std::shared_ptr<const TableAnswer> answer) {
    answer_ = std::move(answer);
    stale_ = false;
    arrange();
}

void TruthRows::setStale(bool stale) {
    stale_ = stale;
    viewport()->update();
}

void TruthRows::showPresent(int row) {
    present_ = row;
    viewport()->update();
    if (row < 0 || row >= rowCount()) return;
    QScrollBar& bar = *verticalScrollBar();
    const double above = row * rowHeight(), below = above + rowHeight() - (viewport()->height() - headerHeight());
    if (above < bar.value()) bar.setValue(static_cast<int>(std::floor(above)));
    if (below > bar.value()) bar.setValue(static_cast<int>(std::ceil(below)));
}

// --- measures ---

double TruthRows::headerHeight() const { return look_.px(kHeaderHeight); }

double TruthRows::rowHeight() const { return look_.px(kRowHeight); }

double TruthRows::letterPixels() const { return look_.px(kLetterSize); }

QString TruthRows::columnName(std::size_t column) const {
    const std::size_t switches = table()->switches.size();
    if (column < switches) return qs(table()->switches[column].name);
    return qs(answer_->bench->parts[table()->lamps[column - switches]].id);
}

void TruthRows::arrange() {
    edges_.clear();
    if (table()) {
        const QFontMetricsF metrics(look_.font(kLetterSize, QFont::DemiBold));
        const double lamp = look_.px(kDisc + kBesideDisc) + metrics.horizontalAdvance(QStringLiteral("100 %"));
        edges_.push_back(look_.px(kEdgePad));
        const std::size_t switches = table()->switches.size(), count = switches + table()->lamps.size();
        for (std::size_t column = 0; column < count; ++column) {
            const double name = metrics.horizontalAdvance(columnName(column));
            edges_.push_back(edges_.back() + look_.px(kColumnPad) + (column < switches ? name : std::max(name, lamp)));
        }
    }
    const auto range = [](QScrollBar* bar, double whole, double shown, double step) {
        bar->setRange(0, std::max(0, static_cast<int>(std::ceil(whole - shown))));
        bar->setPageStep(std::max(1, static_cast<int>(shown)));
        bar->setSingleStep(std::max(1, static_cast<int>(step)));
    };
    const double wide = edges_.empty() ? 0 : edges_.back();
    range(verticalScrollBar(), rowCount() * rowHeight(), viewport()->height() - headerHeight(), rowHeight());
    range(horizontalScrollBar(), wide, viewport()->width(), look_.px(2 * kRowHeight));
    viewport()->update();
}

QSizeF TruthRows::wantedSize() const {
    const double bar = look_.px(12);
    return {(edges_.empty() ? 0 : edges_.back()) + bar, headerHeight() + rowCount() * rowHeight()};
}

int TruthRows::wholeRows() const {
    return std::max(1, static_cast<int>((viewport()->height() - headerHeight()) / rowHeight()));
}

bool TruthRows::holdsSwitches() const { return edges_[table()->switches.size()] <= kSwitchShare * viewport()->width(); }

double TruthRows::columnX(std::size_t column) const {
    const bool held = column < table()->switches.size() && holdsSwitches();
    return edges_[column] - (held ? 0 : horizontalScrollBar()->value());
}

double TruthRows::rowTop(int row) const { return headerHeight() + row * rowHeight() - verticalScrollBar()->value(); }

QRectF TruthRows::rowBox(int row) const {
    if (!table() || row < 0 || row >= rowCount()) return {};
    constexpr double kRounding = 1;
    const double right = std::min<double>(edges_.back() - horizontalScrollBar()->value(), viewport()->width());
    const QRectF box(0, rowTop(row), right, rowHeight());
    const bool inSight = box.top() >= headerHeight() - kRounding && box.bottom() <= viewport()->height() + kRounding;
    return inSight ? box : QRectF();
}

int TruthRows::rowAt(QPointF at) const {
    if (!table() || at.y() < headerHeight() || at.x() > edges_.back()) return -1;
    const int row = static_cast<int>((at.y() - rowTop(0)) / rowHeight());
    return row < rowCount() ? row : -1;
}

// --- painting ---

void TruthRows::paintEvent(QPaintEvent*) {
    if (!table()) return;
    sheet_.begin();
    QPainter painter(viewport());
    painter.setRenderHint(QPainter::Antialiasing);
    const QRectF below(0, headerHeight(), viewport()->width(), viewport()->height() - headerHeight());
    painter.save();
    painter.setClipRect(below);
    const int first = static_cast<int>(verticalScrollBar()->value() / rowHeight());
    for (int row = first; row < std::min(rowCount(), first + wholeRows() + 2); ++row) paintRow(painter, row);
    painter.restore();
    paintHeader(painter);
    if (!hasFocus()) return;
    painter.setBrush(Qt::NoBrush);
    painter.setPen(QPen(look_.theme->accent, look_.px(1.5)));
    painter.drawRoundedRect(QRectF(viewport()->rect()).adjusted(1, 1, -1, -1), look_.px(4), look_.px(4));
}

void TruthRows::drawWord(QPainter& painter, const QRectF& cell, const QString& word, const QFont& font,
                         const QColor& colour) const {
    sheet_.draw(painter, cell, word, {font, colour, Qt::AlignLeft | Qt::AlignVCenter});
}

void TruthRows::paintHeader(QPainter& painter) const {
    const std::size_t switches = table()->switches.size();
    const QFont font = look_.font(kLetterSize, QFont::DemiBold);
    const double lampsFrom = holdsSwitches() ? edges_[switches] - look_.px(kColumnPad / 2) : 0;
    for (std::size_t column = 0; column + 1 < edges_.size(); ++column) {
        painter.save();
        if (column >= switches) painter.setClipRect(QRectF(lampsFrom, 0, viewport()->width(), headerHeight()));
        drawWord(painter, QRectF(columnX(column), 0, edges_[column + 1] - edges_[column], headerHeight()),
                 columnName(column), font, look_.theme->text);
        painter.restore();
    }
    painter.setPen(QPen(look_.theme->cardEdge, look_.px(2)));
    const double right = std::min<double>(edges_.back() - horizontalScrollBar()->value(), viewport()->width());
    painter.drawLine(QPointF(edges_.front(), headerHeight() - 1), QPointF(right, headerHeight() - 1));
    if (switches == 0 || table()->lamps.empty()) return;
    const double between = (holdsSwitches() ? edges_[switches] : columnX(switches)) - look_.px(kColumnPad / 2);
    painter.drawLine(QPointF(between, 0), QPointF(between, std::min<double>(rowTop(rowCount()), viewport()->height())));
}

void TruthRows::paintRow(QPainter& painter, int index) const {
    const TruthRow& row = table()->rows[index];
    const double right = std::min<double>(edges_.back() - horizontalScrollBar()->value(), viewport()->width());
    const QRectF box(0, rowTop(index), right, rowHeight());
    if (index == present_ || index == hovered_) {
        const QColor& accent = look_.theme->accent;
        painter.setPen(index == present_ ? QPen(accent, look_.px(2)) : QPen(Qt::NoPen));
        painter.setBrush(withAlpha(accent, index == hovered_ ? 0.14 : 0.07));
        painter.drawRoundedRect(box.adjusted(1, look_.px(1), -1, -look_.px(1)), look_.px(5), look_.px(5));
    }
    const std::size_t switches = table()->switches.size();
    paintSwitches(painter, index);
    painter.save();
    if (holdsSwitches()) {
        const double from = edges_[switches] - look_.px(kColumnPad / 2);
        painter.setClipRect(QRectF(from, box.top(), viewport()->width() - from, box.height()), Qt::IntersectClip);
    }
    for (std::size_t lamp = 0; lamp < table()->lamps.size(); ++lamp) {
        const std::size_t column = switches + lamp;
        const double width = edges_[column + 1] - edges_[column];
        paintLamp(painter, QRectF(columnX(column), box.top(), width, box.height()), row, lamp);
    }
    painter.restore();
}

void TruthRows::paintSwitches(QPainter& painter, int index) const {
    const TruthRow& row = table()->rows[index];
    for (std::size_t column = 0; column < table()->switches.size(); ++column) {
        const int digit = row.digits[column];
        drawWord(painter, QRectF(columnX(column), rowTop(index), edges_[column + 1] - edges_[column], rowHeight()),
                 QString::number(digit), look_.font(kLetterSize, digit != 0 ? QFont::DemiBold : QFont::Normal),
                 digit != 0 ? look_.theme->text : look_.theme->dimText);
    }
}

QString TruthRows::lampWords(const TruthRow& row, std::size_t lamp) const {
    if (row.status == Status::None) return QStringLiteral("none");
    const LampState& state = row.lamps[lamp];
    if (state.glow == Glow::Blinks) return QStringLiteral("blinks");
    if (state.glow == Glow::Open) return QStringLiteral("changes");
    return state.lit ? QStringLiteral("%1 %").arg(std::round(100 * state.brightness)) : QStringLiteral("dark");
}

void TruthRows::paintLamp(QPainter& painter, const QRectF& box, const TruthRow& row, std::size_t lamp) const {
    if (stale_) return;
    const Theme& theme = *look_.theme;
    const LampState& state = row.lamps[lamp];
    const QColor tint = partTint(theme, answer_->bench->parts[table()->lamps[lamp]]);
    const QColor light = QColor::fromHslF(std::max(0.0F, tint.hslHueF()), tint.hslSaturationF(), kLampLightness);
    const double radius = look_.px(kDisc) / 2;
    const QPointF centre(box.left() + radius + look_.px(1), box.center().y());
    if (state.lit && !theme.flat) {  // a halo that grows with the light, as on the bench
        painter.setPen(Qt::NoPen);
        painter.setBrush(withAlpha(light, 0.35 * state.brightness));
        painter.drawEllipse(centre, radius * (1.1 + 0.5 * state.brightness), radius * (1.1 + 0.5 * state.brightness));
    }
    painter.setPen(QPen(theme.flat || !state.lit ? theme.dimText : mix(light, theme.text, 0.35), look_.px(1.8)));
    painter.setBrush(state.lit ? mix(theme.card, light, 0.25 + 0.75 * state.brightness) : QBrush(Qt::NoBrush));
    painter.drawEllipse(centre, radius, radius);
    const double left = centre.x() + radius + look_.px(kBesideDisc - 1);
    drawWord(painter, QRectF(left, box.top(), box.right() - left, box.height()), lampWords(row, lamp),
             look_.font(kLetterSize), state.lit ? theme.text : theme.dimText);
}

// --- hands ---

void TruthRows::hover(int row) {
    if (hovered_ == row) return;
    hovered_ = row;
    viewport()->setCursor(row >= 0 ? Qt::PointingHandCursor : Qt::ArrowCursor);
    viewport()->update();
}

void TruthRows::choose(int row) {
    if (row >= 0 && row < rowCount() && !stale_) Q_EMIT rowChosen(row);
}

void TruthRows::resizeEvent(QResizeEvent* event) {
    QAbstractScrollArea::resizeEvent(event);
    arrange();
    showPresent(present_);
}

void TruthRows::mousePressEvent(QMouseEvent* event) { choose(rowAt(event->position())); }

void TruthRows::mouseMoveEvent(QMouseEvent* event) { hover(rowAt(event->position())); }

bool TruthRows::viewportEvent(QEvent* event) {
    if (event->type() == QEvent::Leave) hover(-1);
    return QAbstractScrollArea::viewportEvent(event);
}

void TruthRows::scrollColumns(int by) {
    QScrollBar& bar = *horizontalScrollBar();
    bar.setValue(bar.value() + by * bar.singleStep());
}

void TruthRows::keyPressEvent(QKeyEvent* event) {
    const int last = rowCount() - 1;
    if (last < 0) return event->ignore();
    switch (event->key()) {
        case Qt::Key_Down:
            return choose(std::min(present_ + 1, last));
        case Qt::Key_Up:
            return choose(std::max(present_ - 1, 0));
        case Qt::Key_PageDown:
            return choose(std::min(present_ + wholeRows(), last));
        case Qt::Key_PageUp:
            return choose(std::max(present_ - wholeRows(), 0));
        case Qt::Key_Home:
            return choose(0);
        case Qt::Key_End:
            return choose(last);
        case Qt::Key_Left:
            return scrollColumns(-1);
        case Qt::Key_Right:
            return scrollColumns(1);
        default:
            event->ignore();  // Escape closes the card
    }
}

}  // namespace tiepoint::ui
