#include "ui/cards/walk_card.h"

#include "ui/cards/part_tint.h"
#include "ui/cards/reading_text.h"
#include "ui/theme/panels.h"

#include <QKeyEvent>
#include <QMouseEvent>
#include <QPainterPath>

#include <algorithm>
#include <cmath>

namespace tiepoint::ui {
namespace {

constexpr double kTitleRoom = 44, kNoteRoom = 36, kLabelRoom = 46, kAxisRoom = 66;
constexpr double kPartUnits = 3;  ///< breadth of a part beside that of a piece of metal
constexpr double kLabelSize = 18;
constexpr double kLineBreadth = 3, kDotRadius = 3.2, kTickLine = 1, kTickLength = 6;
constexpr double kWash = 0.22, kMarkedWash = 0.5;

double unitsOf(const WalkMove& move) { return move.isPart ? kPartUnits : 1; }

}  // namespace

WalkCard::WalkCard(QWidget* parent) : AsideCard(parent) {
    setAccessibleName(QStringLiteral("Voltage around the loop"));
    setFocusPolicy(Qt::StrongFocus);
    setMouseTracking(true);
}

void WalkCard::showPicture(const Picture& picture, const std::string& id) {
    WalkText text = walkText(picture, id);
    if (text == text_) return;
    text_ = std::move(text);
    parts_.clear();
    for (const WalkMove& move : text_.moves)
        if (move.isPart) parts_[move.thing] = *picture.bench().findPart(move.thing);
    if (!text_.volts.empty())
        ticks_ = ticksFor(*std::ranges::min_element(text_.volts), *std::ranges::max_element(text_.volts));
    setAccessibleDescription(text_.spoken);
    update();
}

void WalkCard::mark(const std::string& thing) {
    const bool here = std::ranges::any_of(text_.moves, [&](const WalkMove& move) { return move.thing == thing; });
    const std::string wanted = here ? thing : std::string();
    if (wanted == marked_) return;
    marked_ = wanted;
    update();
}

QRectF WalkCard::plot() const {
    const QRectF box = body();
    return box.adjusted(look().px(kAxisRoom), look().px(kTitleRoom), 0,
                        -look().px(kLabelRoom + (text_.note.isEmpty() ? 0 : kNoteRoom)));
}

double WalkCard::y(const QRectF& plot, double volt) const {
    return plot.bottom() - (volt - ticks_.low) / (ticks_.high - ticks_.low) * plot.height();
}

QRectF WalkCard::column(int move) const {
    double before = 0, all = 0;
    for (int i = 0; i < static_cast<int>(text_.moves.size()); ++i) {
        const double units = unitsOf(text_.moves[static_cast<std::size_t>(i)]);
        if (i < move) before += units;
        all += units;
    }
    const QRectF whole = plot();
    const double unit = all > 0 ? whole.width() / all : 0;
    return {whole.left() + before * unit, whole.top(), unitsOf(text_.moves[static_cast<std::size_t>(move)]) * unit,
            whole.height() + look().px(kLabelRoom)};
}

void WalkCard::paintBody(QPainter& painter) {
    const Theme& theme = *look().theme;
    const QRectF box = body();
    drawLine(painter, QRectF(box.left(), box.top(), widthBesideButton(), 0), text_.title, look().font(text::kBody),
             theme.dimText);
    const double noteTop = text_.moves.empty() ? box.top() + look().px(kTitleRoom + kNoteRoom)
                                               : box.bottom() - look().px(kNoteRoom) + look().px(4);
    const double noteHigh = text_.moves.empty() ? box.bottom() - noteTop : look().px(kNoteRoom);
    const QStringList forms = QStringList(text_.note) + text_.briefer;
    drawBlock(painter, QRectF(box.left(), noteTop, box.width(), noteHigh), forms, look().font(text::kSmall),
              theme.dimText);
    if (text_.moves.empty()) return;
    const QRectF area = plot();
    paintColumns(painter, area);
    paintAxis(painter, area);
    paintLine(painter, area);
    paintLabels(painter);
    if (hasFocus()) {
        painter.setBrush(Qt::NoBrush);
        painter.setPen(QPen(theme.accent, look().px(2)));
        painter.drawRoundedRect(frame().adjusted(2, 2, -2, -2), look().px(8), look().px(8));
    }
}

void WalkCard::paintColumns(QPainter& painter, const QRectF& area) const {
    const Theme& theme = *look().theme;
    for (int i = 0; i < static_cast<int>(text_.moves.size()); ++i) {
        const WalkMove& move = text_.moves[static_cast<std::size_t>(i)];
        const bool marked = !move.thing.empty() && move.thing == marked_;
        if (!move.isPart && !marked) continue;
        const QRectF band(column(i).left(), area.top(), column(i).width(), area.height());
        const QColor tint = move.isPart ? partTint(theme, parts_.at(move.thing)) : theme.hover;
        painter.fillRect(band, withAlpha(tint, marked ? kMarkedWash : kWash));
        if (!marked) continue;
        painter.setBrush(Qt::NoBrush);
        painter.setPen(QPen(theme.hover, look().px(2)));
        painter.drawRect(band);
    }
}

void WalkCard::paintAxis(QPainter& painter, const QRectF& area) const {
    const Theme& theme = *look().theme;
    const QFont font = look().font(kLabelSize);
    const double height = QFontMetricsF(font).height();
    double last = area.bottom() + 2 * height;
    for (int i = 0; i < ticks_.count(); ++i) {
        const double volt = ticks_.low + i * ticks_.step;
        const double at = y(area, volt);
        painter.setPen(QPen(withAlpha(theme.dimText, 0.35), look().px(kTickLine)));
        painter.drawLine(QPointF(area.left() - look().px(kTickLength), at), QPointF(area.right(), at));
        if (last - at < height) continue;  // the plot is low: every other tick bears its figure
        last = at;
        drawLine(painter, QRectF(body().left(), at - height / 2, look().px(kAxisRoom - kTickLength - 4), 0),
                 voltScaleWords(volt), font, theme.text, Qt::AlignRight);
    }
}

void WalkCard::paintLine(QPainter& painter, const QRectF& area) const {
    const Theme& theme = *look().theme;
    QPainterPath line(QPointF(area.left(), y(area, text_.volts.front())));
    std::vector<QPointF> places{line.currentPosition()};
    for (int i = 0; i < static_cast<int>(text_.moves.size()); ++i) {
        line.lineTo(column(i).right(), y(area, text_.volts[static_cast<std::size_t>(i) + 1]));
        places.push_back(line.currentPosition());
    }
    painter.setBrush(Qt::NoBrush);
    painter.setPen(QPen(theme.text, look().px(kLineBreadth), Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin));
    painter.drawPath(line);
    painter.setPen(QPen(theme.text, look().px(kLineBreadth / 2)));
    painter.setBrush(theme.card);
    for (const QPointF& place : places) painter.drawEllipse(place, look().px(kDotRadius), look().px(kDotRadius));
}

/// Ids and figures under their steps. Where there is no room, only those of the marked one.
void WalkCard::paintLabels(QPainter& painter) const {
    const Theme& theme = *look().theme;
    const QFont font = look().font(kLabelSize);
    const QFontMetricsF metrics(font);
    double free = body().left();
    for (int i = 0; i < static_cast<int>(text_.moves.size()); ++i) {
        const WalkMove& move = text_.moves[static_cast<std::size_t>(i)];
        const bool marked = !move.thing.empty() && move.thing == marked_;
        if (!move.isPart && !marked) continue;
        const QString id = QString::fromStdString(move.thing);
        const double width =
            std::max(metrics.horizontalAdvance(id), figureWidth(move.figure, kLabelSize)) + look().px(6);
        const QRectF step = column(i);
        const double left =
            std::clamp(step.center().x() - width / 2, body().left(), std::max(body().left(), body().right() - width));
        if (left < free && !marked) continue;
        const QRectF box(left, step.bottom() - look().px(kLabelRoom), width, look().px(kLabelRoom));
        if (left < free) painter.fillRect(box, theme.card);
        free = left + width;
        drawLine(painter, box, id, font, theme.dimText, Qt::AlignHCenter);
        drawFigure(painter, box.translated(0, metrics.height() * 0.92), move.figure, kLabelSize, theme.text,
                   Qt::AlignHCenter);
    }
}

void WalkCard::point(const std::string& thing) {
    if (thing == marked_) return;
    mark(thing);
    Q_EMIT pointed(marked_);
}

void WalkCard::mouseMoveEvent(QMouseEvent* event) {
    for (int i = 0; i < static_cast<int>(text_.moves.size()); ++i) {
        if (column(i).contains(event->position())) return point(text_.moves[static_cast<std::size_t>(i)].thing);
    }
    point({});
}

void WalkCard::leaveEvent(QEvent* event) {
    AsideCard::leaveEvent(event);
    point({});
}

void WalkCard::focusOutEvent(QFocusEvent* event) {
    AsideCard::focusOutEvent(event);
    point({});
}

/// Left and right go from step to step, and round.
void WalkCard::keyPressEvent(QKeyEvent* event) {
    const int way = event->key() == Qt::Key_Left ? -1 : event->key() == Qt::Key_Right ? 1 : 0;
    std::vector<std::string> things;
    for (const WalkMove& move : text_.moves)
        if (!move.thing.empty()) things.push_back(move.thing);
    if (way == 0 || things.empty()) return AsideCard::keyPressEvent(event);
    const int count = static_cast<int>(things.size());
    const auto found = std::ranges::find(things, marked_);
    const int now = found == things.end() ? (way > 0 ? -1 : count) : static_cast<int>(found - things.begin());
    point(things[static_cast<std::size_t>((now + way + count) % count)]);
}

}  // namespace tiepoint::ui
