#include "ui/view/value_ladder.h"

#include "core/base/quantity.h"
#include "core/bench/describe.h"
#include "core/parts/ladder.h"
#include "ui/paint/bench_painter.h"
#include "ui/paint/shade.h"
#include "ui/view/value_box.h"

#include <QKeyEvent>
#include <QMouseEvent>
#include <QPainter>

#include <algorithm>
#include <cmath>
#include <iterator>

namespace tiepoint::ui {
namespace {

constexpr int kEachSide = 2;
constexpr int kRungWidth = 88, kRungHeight = 46, kRungPad = 4;
constexpr int kAway = 6;
constexpr double kRungTextPixels = 14;
constexpr double kRungPictureHeight = 17;
constexpr double kRungPixelsPerMm = 4;
constexpr double kRungNotch = 120;
constexpr qint64 kRunPauseMs = 1500;  ///< steps closer than this are one undo entry

/// Whether the part's picture tells its value: resistors wear it.
bool picturesTell(const Part& part) { return part.kind->valueIndex("tolerance") >= 0; }

}  // namespace

ValueLadder::ValueLadder(BenchDocument& document, QWidget* parent)
    : QWidget(parent),
      document_(document),
      theme_(&theme(ThemeName::Day)) {
    setFocusPolicy(Qt::TabFocus);
    setMouseTracking(true);
    setCursor(Qt::PointingHandCursor);
    hide();
}

void ValueLadder::setTheme(const Theme& theme) {
    theme_ = &theme;
    update();
}

void ValueLadder::setDrawer(const ResistorDrawer& drawer) {
    drawer_ = drawer;
    update();
}

bool ValueLadder::isAtHand(double value) const {
    const bool counts = !drawer_.isEverything() && resistanceValue(*part()->kind) == value_;
    return !counts || drawer_.holds(value);
}

/// Among those in the drawer, if it counts, stays with the last in that direction.
double ValueLadder::stepFrom(double value, int steps) const {
    if (drawer_.isEverything() || resistanceValue(*part()->kind) != value_) return ladderStep(spec(), value, steps);
    constexpr double kRounding = 1e-9;
    for (; steps != 0; steps += steps > 0 ? -1 : 1) {
        const auto& held = drawer_.ohms();
        const auto above = std::ranges::find_if(held, [&](double ohm) { return ohm > value * (1 + kRounding); });
        const auto from = std::ranges::find_if(held, [&](double ohm) { return ohm >= value * (1 - kRounding); });
        if (steps > 0 ? above == held.end() : from == held.begin()) return value;
        value = steps > 0 ? *above : *std::prev(from);
    }
    return value;
}

const Part* ValueLadder::part() const { return partId_.empty() ? nullptr : document_.bench()->findPart(partId_); }

const ValueSpec& ValueLadder::spec() const { return part()->kind->values[static_cast<std::size_t>(value_)]; }

void ValueLadder::follow(const std::string& partId, QRect around) {
    if (partId != partId_) gesture_ = -1;
    partId_ = partId;
    const Part* shown = part();
    value_ = shown ? typedValueOf(*shown) : -1;
    if (value_ < 0) {
        partId_.clear();
        return hide();
    }
    const double value = shown->value(value_);
    rungs_ = ladderAbout(spec(), value, kEachSide);
    setAccessibleName(QStringLiteral("%1 %2, %3")
                          .arg(QString::fromStdString(partId_), QString::fromStdString(spec().label).toLower(),
                               QString::fromStdString(describeSetting(spec(), value))));
    const QSize size(2 * kRungPad + static_cast<int>(rungs_.size()) * kRungWidth, 2 * kRungPad + kRungHeight);
    const QRect room = parentWidget()->rect();
    QPoint at(around.center().x() - size.width() / 2, around.bottom() + kAway);
    if (at.y() + size.height() > room.bottom()) at.setY(around.top() - kAway - size.height());
    at.setX(std::clamp(at.x(), room.left(), std::max(room.left(), room.right() - size.width())));
    at.setY(std::clamp(at.y(), room.top(), std::max(room.top(), room.bottom() - size.height())));
    setGeometry(QRect(at, size));
    show();
    raise();
    update();
}

QRect ValueLadder::rungRect(std::size_t rung) const {
    return {kRungPad + static_cast<int>(rung) * kRungWidth, kRungPad, kRungWidth, kRungHeight};
}

int ValueLadder::rungAt(QPoint at) const {
    for (std::size_t i = 0; i < rungs_.size(); ++i)
        if (rungRect(i).contains(at)) return static_cast<int>(i);
    return -1;
}

bool ValueLadder::step(int steps) {
    if (!part()) return false;
    set(stepFrom(part()->value(value_), steps));
    return true;
}

void ValueLadder::set(double value) {
    if (!part() || part()->value(value_) == value) return;
    if (gesture_ < 0 || !sinceStep_.isValid() || sinceStep_.elapsed() > kRunPauseMs) gesture_ = document_.newGesture();
    sinceStep_.start();
    if (const auto why = document_.push(setValueEdit(*document_.bench(), partId_, spec().name, value), gesture_))
        Q_EMIT document_.refused(*why);
}

bool ValueLadder::event(QEvent* event) {
    // Up and down are the ladder's while it has the keyboard; so is Escape, which gives it back.
    if (event->type() == QEvent::ShortcutOverride) {
        const int key = static_cast<QKeyEvent*>(event)->key();
        if (key == Qt::Key_Up || key == Qt::Key_Down || key == Qt::Key_Escape) event->accept();
    }
    return QWidget::event(event);
}

void ValueLadder::keyPressEvent(QKeyEvent* event) {
    switch (event->key()) {
        case Qt::Key_Up:
        case Qt::Key_Right:
            step(1);
            return;
        case Qt::Key_Down:
        case Qt::Key_Left:
            step(-1);
            return;
        case Qt::Key_Escape:
        case Qt::Key_Return:
        case Qt::Key_Enter:
            Q_EMIT done();
            return;
        default:
            QWidget::keyPressEvent(event);
    }
}

void ValueLadder::mousePressEvent(QMouseEvent* event) {
    const int rung = rungAt(event->position().toPoint());
    if (event->button() == Qt::LeftButton && rung >= 0) set(rungs_[static_cast<std::size_t>(rung)]);
}

void ValueLadder::mouseMoveEvent(QMouseEvent* event) {
    const int rung = rungAt(event->position().toPoint());
    if (rung == hovered_) return;
    hovered_ = rung;
    update();
}

void ValueLadder::leaveEvent(QEvent*) {
    hovered_ = -1;
    update();
}

void ValueLadder::wheelEvent(QWheelEvent* event) {
    turnWheel(event->angleDelta().y() / kRungNotch);
    event->accept();
}

void ValueLadder::turnWheel(double notches) {
    wheelNotches_ += notches;
    const double whole = std::trunc(wheelNotches_);
    wheelNotches_ -= whole;
    if (whole != 0) step(static_cast<int>(whole));
}

void ValueLadder::paintRung(QPainter& painter, std::size_t rung) const {
    const QRectF box(rungRect(rung));
    const Part* shown = part();
    const bool now = rungs_[rung] == shown->value(value_);
    if (now || static_cast<int>(rung) == hovered_) {
        painter.setPen(now ? QPen(theme_->accent, hasFocus() ? 3 : 2) : QPen(theme_->cardEdge, 1));
        painter.setBrush(now ? blend(theme_->card, theme_->accent, 0.12) : QBrush(Qt::NoBrush));
        painter.drawRoundedRect(box.adjusted(2, 2, -2, -2), 5, 5);
    }
    constexpr double kNotAtHand = 0.4;
    painter.setOpacity(isAtHand(rungs_[rung]) ? 1 : kNotAtHand);
    const bool picture = picturesTell(*shown);
    if (picture) {
        Part other = *shown;
        other.values[static_cast<std::size_t>(value_)] = rungs_[rung];
        painter.save();
        painter.translate(box.center().x(), box.top() + 5 + kRungPictureHeight / 2);
        painter.scale(kRungPixelsPerMm, kRungPixelsPerMm);
        paintSample(painter, *theme_, other);
        painter.restore();
    }
    painter.setFont(uiFont(kRungTextPixels, now ? QFont::DemiBold : QFont::Normal));
    painter.setPen(theme_->text);
    const QRectF words = picture ? QRectF(box.left(), box.top() + 6 + kRungPictureHeight, box.width(),
                                          box.height() - 9 - kRungPictureHeight)
                                 : box;
    painter.drawText(words, Qt::AlignCenter, QString::fromStdString(formatSetting(rungs_[rung], spec().unit)));
    painter.setOpacity(1);
}

void ValueLadder::paintEvent(QPaintEvent*) {
    if (!part()) return;
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setPen(QPen(hasFocus() ? theme_->accent : theme_->cardEdge, hasFocus() ? 2 : 1));
    painter.setBrush(theme_->card);
    painter.drawRoundedRect(QRectF(rect()).adjusted(1, 1, -1, -1), 7, 7);
    for (std::size_t rung = 0; rung < rungs_.size(); ++rung) paintRung(painter, rung);
}

}  // namespace tiepoint::ui
