#include "ui/theme/panels.h"

#include <QImage>
#include <QPainterPath>

#include <algorithm>
#include <cmath>
#include <map>
#include <tuple>

namespace tiepoint::ui {
namespace {

constexpr double kCardRadius = 8;
constexpr double kButtonRadius = 7;
constexpr int kShadowRings = 5;
constexpr double kShadowAlpha = 0.035;

QRectF crisp(const QRectF& frame, double pen) { return frame.adjusted(pen / 2, pen / 2, -pen / 2, -pen / 2); }

void paintShadowRings(QPainter& painter, const Look& look, const QRectF& frame, double radius) {
    painter.setPen(Qt::NoPen);
    painter.setBrush(withAlpha(QColor(Qt::black), look.theme->dark ? 2 * kShadowAlpha : kShadowAlpha));
    for (int ring = 0; ring < kShadowRings; ++ring) {  // rings add up to a soft fall-off without an effect
        const double out = look.px(ring * 0.7);
        QPainterPath rim;  // what the surface covers is left out
        rim.addRoundedRect(frame.adjusted(-out, 0, out, out + look.px(1)), radius + out, radius + out);
        rim.addRect(frame.adjusted(radius, radius, -radius, -radius));
        painter.drawPath(rim);
    }
}

/// The shadow of a small surface, from whose corners and sides that of each larger one is put together.
struct ShadowCut {
    QImage pixels;
    int corner = 0;  ///< logical pixels from the picture's edge to where the sides are straight
    int away = 0;    ///< from there to the surface's edge
};

const ShadowCut& shadowCut(const Look& look, double radius, double ratio) {
    using ShadowOf = std::tuple<bool, double, double, double>;
    static std::map<ShadowOf, ShadowCut> cuts;  // of a few looks; the window's thread paints all surfaces
    constexpr std::size_t kMostLooks = 16;
    if (cuts.size() > kMostLooks) cuts.clear();
    const auto [found, isNew] = cuts.try_emplace(ShadowOf(look.theme->dark, look.scale, radius, ratio));
    ShadowCut& cut = found->second;
    if (!isNew) return cut;
    cut.away = static_cast<int>(std::ceil(look.px(kShadowRings * 0.7 + 1))) + 1;
    cut.corner = cut.away + static_cast<int>(std::ceil(radius + look.px(kShadowRings))) + 1;
    const int side = 2 * cut.corner + 1;
    cut.pixels = QImage(QSize(side, side) * ratio, QImage::Format_ARGB32_Premultiplied);
    cut.pixels.setDevicePixelRatio(ratio);
    cut.pixels.fill(Qt::transparent);
    QPainter painter(&cut.pixels);
    painter.setRenderHint(QPainter::Antialiasing);
    paintShadowRings(painter, look, QRectF(cut.away, cut.away, side - 2 * cut.away, side - 2 * cut.away), radius);
    return cut;
}

void paintShadow(QPainter& painter, const Look& look, const QRectF& frame, double radius) {
    if (look.theme->flat) return;
    const double ratio = painter.device()->devicePixelRatioF();
    const ShadowCut& cut = shadowCut(look, radius, ratio);
    const QRect whole = frame.toRect();
    const bool isAligned =
        QRectF(whole) == frame && ratio == std::floor(ratio) && painter.transform().type() <= QTransform::TxTranslate;
    if (!isAligned || std::min(whole.width(), whole.height()) < 2 * (cut.corner - cut.away))
        return paintShadowRings(painter, look, frame, radius);
    const QRect all = whole.adjusted(-cut.away, -cut.away, cut.away, cut.away);
    const int places[] = {0, cut.corner, cut.corner + 1, 2 * cut.corner + 1};
    const int xs[] = {all.left(), all.left() + cut.corner, all.right() + 1 - cut.corner, all.right() + 1};
    const int ys[] = {all.top(), all.top() + cut.corner, all.bottom() + 1 - cut.corner, all.bottom() + 1};
    for (int row = 0; row < 3; ++row) {
        for (int column = 0; column < 3; ++column) {
            if (row == 1 && column == 1) continue;  // under the surface
            const auto piece = [&](const int(&x)[4], const int(&y)[4]) {
                return QRectF(QPointF(x[column], y[row]), QPointF(x[column + 1], y[row + 1]));
            };
            const QRectF from = piece(places, places);
            painter.drawImage(piece(xs, ys), cut.pixels, QRectF(from.topLeft() * ratio, from.size() * ratio));
        }
    }
}

double edgeWidth(const Look& look) { return look.px(look.theme->flat ? 2 : 1.2); }

QColor buttonFace(const Look& look, const ButtonState& state) {
    const Theme& theme = *look.theme;
    const QColor face = theme.dark ? mix(theme.card, QColor(Qt::white), 0.05) : theme.card;
    if (state.on) return mix(theme.card, theme.accent, theme.dark ? 0.14 : 0.09);
    return state.hovered || state.pressed ? mix(face, theme.accent, 0.06) : face;
}

}  // namespace

QColor mix(const QColor& a, const QColor& b, double shareOfB) {
    const auto blend = [&](int from, int to) { return qRound(from + (to - from) * shareOfB); };
    return {blend(a.red(), b.red()), blend(a.green(), b.green()), blend(a.blue(), b.blue())};
}

QColor withAlpha(QColor colour, double alpha) {
    colour.setAlphaF(static_cast<float>(alpha));
    return colour;
}

void paintCard(QPainter& painter, const Look& look, const QRectF& frame) {
    const double radius = look.px(kCardRadius);
    paintShadow(painter, look, frame, radius);
    painter.setPen(QPen(look.theme->cardEdge, edgeWidth(look)));
    painter.setBrush(look.theme->card);
    painter.drawRoundedRect(crisp(frame, edgeWidth(look)), radius, radius);
}

void paintButton(QPainter& painter, const Look& look, const QRectF& frame, const ButtonState& state) {
    const Theme& theme = *look.theme;
    const double radius = look.px(kButtonRadius);
    if (!state.on && !state.pressed) paintShadow(painter, look, frame, radius);
    const bool ringed = state.on || state.focused;
    const double width = look.px(theme.flat ? (ringed ? 3.5 : 2) : (ringed ? 2.2 : 1.2));
    painter.setPen(QPen(ringed ? theme.accent : theme.cardEdge, width));
    painter.setBrush(buttonFace(look, state));
    painter.drawRoundedRect(crisp(frame, width), radius, radius);
    if (state.focused && state.on) {  // a latched key is ringed already: the keyboard shows as a second ring
        painter.setBrush(Qt::NoBrush);
        painter.setPen(QPen(theme.text, look.px(1.2), Qt::DotLine));
        painter.drawRoundedRect(frame.adjusted(look.px(5), look.px(5), -look.px(5), -look.px(5)), radius / 2,
                                radius / 2);
    }
}

void paintTub(QPainter& painter, const Look& look, const QRectF& frame, const ButtonState& state) {
    const Theme& theme = *look.theme;
    const double radius = look.px(5);
    if (!theme.flat) {
        const QColor floor =
            theme.dark ? mix(theme.card, QColor(Qt::black), 0.35) : mix(theme.boardTop, theme.card, 0.25);
        const QColor lip = theme.dark ? QColor(Qt::black) : mix(theme.boardEdge, theme.boardBottom, 0.35);
        QLinearGradient depth(frame.topLeft(), frame.bottomLeft());
        depth.setColorAt(0, mix(floor, lip, state.pressed ? 0.35 : 0.22));
        depth.setColorAt(0.2, floor);
        depth.setColorAt(1, state.hovered || state.on ? mix(floor, theme.accent, 0.14) : mix(floor, theme.card, 0.2));
        painter.setBrush(depth);
        painter.setPen(QPen(mix(lip, floor, 0.35), look.px(1.2)));
        painter.drawRoundedRect(crisp(frame, look.px(1.2)), radius, radius);
    } else if (state.hovered || state.on || state.pressed) {
        painter.setPen(Qt::NoPen);
        painter.setBrush(mix(theme.card, theme.accent, 0.12));
        painter.drawRoundedRect(frame, radius, radius);
    }
    if (state.focused || state.on) {
        painter.setBrush(Qt::NoBrush);
        painter.setPen(QPen(theme.accent, look.px(2.2)));
        painter.drawRoundedRect(crisp(frame, look.px(2.2)), radius, radius);
    }
}

void paintTick(QPainter& painter, const Look& look, QPointF centre, bool on) {
    const Theme& theme = *look.theme;
    const double radius = look.px(7.5);
    painter.setPen(QPen(on ? theme.accent : theme.dimText, look.px(2)));
    painter.setBrush(on ? QBrush(theme.accent) : QBrush(Qt::NoBrush));
    painter.drawEllipse(centre, radius - look.px(1), radius - look.px(1));
    if (!on) return;
    QPainterPath tick(centre + QPointF(-0.45, 0.02) * radius);
    tick.lineTo(centre + QPointF(-0.1, 0.38) * radius);
    tick.lineTo(centre + QPointF(0.48, -0.34) * radius);
    painter.setBrush(Qt::NoBrush);
    painter.setPen(QPen(theme.card, look.px(2.2), Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin));
    painter.drawPath(tick);
}

void paintSmallBoard(QPainter& painter, const QRectF& frame, const QColor& fill, const QColor& line, double breadth) {
    painter.setPen(QPen(line, breadth));
    painter.setBrush(fill);
    painter.drawRoundedRect(frame, breadth * 1.6, breadth * 1.6);
    const QColor ink = fill.alpha() > 0 && fill.lightness() < 100 ? QColor(Qt::white) : line;
    painter.setPen(QPen(ink, breadth * 0.6));
    for (const double share : {0.3, 0.5, 0.7}) {
        const double y = frame.top() + share * frame.height();
        painter.drawLine(QPointF(frame.left() + 0.12 * frame.width(), y),
                         QPointF(frame.right() - 0.12 * frame.width(), y));
    }
}

QString scrollBarStyle(const Look& look) {
    return QStringLiteral(
               "QScrollBar { background: transparent; } QScrollBar:vertical { width: %2px; } "
               "QScrollBar:horizontal { height: %2px; }"
               "QScrollBar::handle { background: %1; border-radius: %3px; } QScrollBar::handle:hover { background: %4; "
               "}"
               "QScrollBar::handle:vertical { min-height: %5px; } QScrollBar::handle:horizontal { min-width: %5px; }"
               "QScrollBar::add-line, QScrollBar::sub-line { width: 0; height: 0; }"
               "QScrollBar::add-page, QScrollBar::sub-page { background: transparent; }")
        .arg(mix(look.theme->cardEdge, look.theme->dimText, 0.45).name())
        .arg(look.ipx(10))
        .arg(look.ipx(5))
        .arg(look.theme->accent.name())
        .arg(look.ipx(24));
}

QString wordButtonStyle(const Look& look) {
    return QStringLiteral(
               "QToolButton { color: %1; background: transparent; border: none; padding: 0 %2px; font-weight: 600; }"
               "QToolButton:hover, QToolButton:focus { text-decoration: underline; } QToolButton:disabled { color: %3; "
               "}")
        .arg(look.theme->accent.name())
        .arg(look.ipx(4))
        .arg(look.theme->dimText.name());
}

}  // namespace tiepoint::ui
