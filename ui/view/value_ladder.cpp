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
// In the 1080-line layout.
constexpr double kRungWidth = 132, kRungHeight = 69, kRungPad = 6;
constexpr double kRungAway = 9;
constexpr double kRungText = 21;
constexpr double kRungPictureHeight = 26;
constexpr double kRungPixelsPerMm = 6;
constexpr double kRungNotch = 120;
constexpr qint64 kRunPauseMs = 1500;  ///< steps closer than this are one undo entry

/// Whether the part's picture tells its value: resistors wear it.
bool picturesTell(const Part& part) { return part.kind->valueIndex("tolerance") >= 0; }

}  // namespace

ValueLadder::ValueLadder(BenchDocument& document, QWidget* parent)
    : QWidget(parent),
      document_(document),
      look_{&theme(ThemeName::Day), 1} {
    setFocusPolicy(Qt::TabFocus);
    setMouseTracking(true);
    setCursor(Qt::PointingHandCursor);
    hide();
}

void ValueLadder::setTheme(const Theme& theme) {
    look_.theme = &theme;
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
    look_ = lookFor(*look_.theme, window()->size());
    const int pad = look_.ipx(kRungPad);
    const QSize size(2 * pad + static_cast<int>(rungs_.size()) * look_.ipx(kRungWidth),
                     2 * pad + look_.ipx(kRungHeight));
    const QRect room = parentWidget()->rect();
    QPoint at(around.center().x() - size.width() / 2, around.bottom() + look_.ipx(kRungAway));
    const int below = room.bottom() - around.bottom(), above = around.top() - room.top();
    const int wanted = size.height() + look_.ipx(kRungAway);
    // Where neither side has room for it, it hides as little of the boards as can be.
    if (below < wanted && above > below) at.setY(around.top() - look_.ipx(kRungAway) - size.height());
    at.setX(std::clamp(at.x(), room.left(), std::max(room.left(), room.right() - size.width())));
    at.setY(std::clamp(at.y(), room.top(), std::max(room.top(), room.bottom() - size.height())));
    QRect frame(at, size);
    if (frame.intersects(covered_)) {
        frame.moveTop(covered_.bottom() + look_.ipx(kRungAway));
        if (frame.bottom() > room.bottom()) frame.moveBottom(covered_.top() - look_.ipx(kRungAway));
    }
    setGeometry(frame);
    show();
    raise();
    update();
}

QRect ValueLadder::rungRect(std::size_t rung) const {
    const int pad = look_.ipx(kRungPad), width = look_.ipx(kRungWidth);
    return {pad + static_cast<int>(rung) * width, pad, width, look_.ipx(kRungHeight)};
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
    const Theme& theme = *look_.theme;
    const QRectF box(rungRect(rung));
    const Part* shown = part();
    const bool now = rungs_[rung] == shown->value(value_);
    if (now || static_cast<int>(rung) == hovered_) {
        const double inset = look_.px(3), corner = look_.px(7);
        painter.setPen(now ? QPen(theme.accent, look_.px(hasFocus() ? 4.5 : 3)) : QPen(theme.cardEdge, look_.px(1.5)));
        painter.setBrush(now ? blend(theme.card, theme.accent, 0.12) : QBrush(Qt::NoBrush));
        painter.drawRoundedRect(box.adjusted(inset, inset, -inset, -inset), corner, corner);
    }
    constexpr double kNotAtHand = 0.4;
    painter.setOpacity(isAtHand(rungs_[rung]) ? 1 : kNotAtHand);
    const bool picture = picturesTell(*shown);
    if (picture) {
        Part other = *shown;
        other.values[static_cast<std::size_t>(value_)] = rungs_[rung];
        painter.save();
        painter.translate(box.center().x(), box.top() + look_.px(7 + kRungPictureHeight / 2));
        painter.scale(look_.px(kRungPixelsPerMm), look_.px(kRungPixelsPerMm));
        paintSample(painter, theme, other);
        painter.restore();
    }
    const double side = look_.px(5);
    const QRectF words =
        box.adjusted(side, look_.px(picture ? 9 + kRungPictureHeight : 0), -side, -look_.px(picture ? 5 : 0));
    sheet_.draw(painter, words, QString::fromStdString(formatSetting(rungs_[rung], spec().unit)),
                {look_.font(kRungText, now ? QFont::DemiBold : QFont::Normal), theme.text, Qt::AlignCenter});
    painter.setOpacity(1);
}

void ValueLadder::paintEvent(QPaintEvent*) {
    if (!part()) return;
    const Theme& theme = *look_.theme;
    sheet_.begin();
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    const double corner = look_.px(10);
    painter.setPen(QPen(hasFocus() ? theme.accent : theme.cardEdge, look_.px(hasFocus() ? 3 : 1.5)));
    painter.setBrush(theme.card);
    painter.drawRoundedRect(QRectF(rect()).adjusted(1, 1, -1, -1), corner, corner);
    for (std::size_t rung = 0; rung < rungs_.size(); ++rung) paintRung(painter, rung);
}

}  // namespace tiepoint::ui
