#include "ui/cards/time_lever.h"

#include "ui/theme/panels.h"

#include <QKeyEvent>
#include <QMouseEvent>
#include <QPainter>
#include <QPainterPath>
#include <QWheelEvent>

#include <algorithm>
#include <cmath>
#include <numbers>

namespace tiepoint::ui {
namespace {

// Heights in the 1080-line layout, from the widget's top.
constexpr double kSlotMiddle = 38, kSlotHalf = 9, kSlotEnd = 24;
constexpr double kTickTop = 53, kTickBottom = 60, kDetentTop = 62, kBracketTop = 88, kBracketDeep = 11;
constexpr double kDetentWords = 19, kBracketWords = 18;
constexpr double kBatMm = 30, kBatThick = 7, kBatThin = 3.6, kNut = 13;

const char* const kDetents[] = {"still", "1000 ×", "100 ×", "10 ×", "as in life", "10 ×", "100 ×"};
const char* const kDetentWordsWhole[] = {"Still",      "1000 times slower", "100 times slower", "Ten times slower",
                                         "As in life", "Ten times faster",  "100 times faster"};

}  // namespace

int detentOf(double rate) {
    int nearest = kStillDetent;
    if (!(rate > 0)) return nearest;
    nearest = 1;
    for (int i = 2; i < static_cast<int>(kTimeRates.size()); ++i) {
        const auto away = [rate](int detent) {
            return std::abs(std::log(kTimeRates[static_cast<std::size_t>(detent)] / rate));
        };
        if (away(i) < away(nearest)) nearest = i;
    }
    return nearest;
}

QString detentWords(int detent) { return QString::fromUtf8(kDetentWordsWhole[detent]); }

TimeLever::TimeLever(QWidget* parent) : QAbstractSlider(parent) {
    setAccessibleName(QStringLiteral("Rate of time"));
    setOrientation(Qt::Horizontal);
    setRange(0, static_cast<int>(kTimeRates.size()) - 1);
    setPageStep(1);
    setValue(kLifeDetent);
    setFocusPolicy(Qt::StrongFocus);
    setMouseTracking(false);
    connect(this, &QAbstractSlider::valueChanged, this, [this](int detent) {
        setAccessibleDescription(detentWords(detent));
        update();
    });
    setAccessibleDescription(detentWords(value()));
}

void TimeLever::setLook(const Look& look) {
    look_ = look;
    update();
}

QPointF TimeLever::detentPlace(int detent) const {
    // The words of the outermost detents have as much room as those between.
    const double step = width() / static_cast<double>(kTimeRates.size());
    return {(detent + 0.5) * step, look_.px(kSlotMiddle)};
}

void TimeLever::follow(QPointF at) {
    const double step = width() / static_cast<double>(kTimeRates.size());
    setSliderPosition(std::clamp(static_cast<int>(std::floor(at.x() / step)), minimum(), maximum()));
}

void TimeLever::mousePressEvent(QMouseEvent* event) {
    if (event->button() != Qt::LeftButton) return event->ignore();
    follow(event->position());
}

void TimeLever::mouseMoveEvent(QMouseEvent* event) {
    if (event->buttons() & Qt::LeftButton) follow(event->position());
}

void TimeLever::keyPressEvent(QKeyEvent* event) {
    if (event->key() == Qt::Key_Up || event->key() == Qt::Key_Down || event->key() == Qt::Key_PageUp ||
        event->key() == Qt::Key_PageDown)
        return event->ignore();  // others' keys: the lever goes left and right
    QAbstractSlider::keyPressEvent(event);
}

void TimeLever::wheelEvent(QWheelEvent* event) {
    const int turned = event->angleDelta().y() != 0 ? event->angleDelta().y() : event->angleDelta().x();
    setValue(value() + (turned > 0 ? 1 : turned < 0 ? -1 : 0));
    event->accept();
}

void TimeLever::paintSlot(QPainter& painter) const {
    const Theme& theme = *look_.theme;
    const double half = look_.px(kSlotHalf), end = look_.px(kSlotEnd), y = look_.px(kSlotMiddle);
    const QRectF plate(detentPlace(0).x() - end, y - half - look_.px(3),
                       detentPlace(maximum()).x() - detentPlace(0).x() + 2 * end, 2 * half + look_.px(6));
    painter.setPen(QPen(mix(theme.cardEdge, theme.text, 0.25), look_.px(1)));
    painter.setBrush(mix(theme.card, theme.cardEdge, theme.dark ? 0.9 : 0.7));
    painter.drawRoundedRect(plate, plate.height() / 2, plate.height() / 2);
    const QRectF gap = plate.adjusted(look_.px(5), look_.px(5), -look_.px(5), -look_.px(5));
    painter.setBrush(theme.dark ? QColor(0x0f, 0x11, 0x15) : mix(theme.text, theme.card, 0.25));
    painter.drawRoundedRect(gap, gap.height() / 2, gap.height() / 2);
}

/// The lever seen from the front: a nut in the slot, the bat upright.
void TimeLever::paintBat(QPainter& painter) const {
    const Furnishing& f = look_.theme->furnishing;
    const QPointF at = detentPlace(value());
    const double px = look_.scale;
    QPainterPath nut;
    for (int i = 0; i < 6; ++i) {
        const double a = (60 * i + 30) * std::numbers::pi / 180;
        const QPointF corner = at + QPointF(std::cos(a), std::sin(a)) * kNut * px;
        i == 0 ? nut.moveTo(corner) : nut.lineTo(corner);
    }
    nut.closeSubpath();
    const bool focused = hasFocus();
    painter.setPen(QPen(focused ? look_.theme->accent : f.steelEdge, (focused ? 2.4 : 1.2) * px));
    painter.setBrush(mix(f.steelLight, f.steelDark, 0.5));
    painter.drawPath(nut);
    QPainterPath bat(at + QPointF(-kBatThin, 2) * px);
    bat.lineTo(at + QPointF(-kBatThick, -kBatMm + kBatThick) * px);
    bat.cubicTo(at + QPointF(-kBatThick, -kBatMm - 3) * px, at + QPointF(kBatThick, -kBatMm - 3) * px,
                at + QPointF(kBatThick, -kBatMm + kBatThick) * px);
    bat.lineTo(at + QPointF(kBatThin, 2) * px);
    bat.closeSubpath();
    if (look_.theme->flat) {
        painter.setBrush(f.steelLight);
    } else {
        QLinearGradient shine(at.x() - kBatThick * px, 0, at.x() + kBatThick * px, 0);
        shine.setColorAt(0, f.steelLight);
        shine.setColorAt(1, f.steelDark);
        painter.setBrush(shine);
    }
    painter.setPen(QPen(focused ? look_.theme->accent : mix(f.steelEdge, Qt::black, 0.3), (focused ? 2 : 1.2) * px));
    painter.drawPath(bat);
}

void TimeLever::paintBracket(QPainter& painter, int from, int to, const QString& word) const {
    const QFont font = look_.font(kBracketWords);
    const double left = detentPlace(from).x() - look_.px(20), right = detentPlace(to).x() + look_.px(20);
    const double top = look_.px(kBracketTop), y = top + look_.px(kBracketDeep);
    const double half = QFontMetricsF(font).horizontalAdvance(word) / 2 + look_.px(8), middle = (left + right) / 2;
    painter.setPen(QPen(look_.theme->dimText, look_.px(1.4)));
    QPainterPath path;
    path.moveTo(left, top);
    path.lineTo(left, y);
    path.lineTo(middle - half, y);
    path.moveTo(middle + half, y);
    path.lineTo(right, y);
    path.lineTo(right, top);
    painter.setBrush(Qt::NoBrush);
    painter.drawPath(path);
    const double high = QFontMetricsF(font).height();
    sheet_.draw(painter, {middle - half, y - high / 2, 2 * half, high}, word,
                {font, look_.theme->dimText, Qt::AlignHCenter | Qt::AlignVCenter});
}

void TimeLever::paintEvent(QPaintEvent*) {
    if (!look_.theme) return;
    sheet_.begin();
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    paintSlot(painter);
    const double step = width() / static_cast<double>(kTimeRates.size());
    for (int i = 0; i <= maximum(); ++i) {
        const bool chosen = i == value();
        const double x = detentPlace(i).x();
        painter.setPen(QPen(look_.theme->text, look_.px(chosen ? 2.6 : 1.4)));
        painter.drawLine(QPointF(x, look_.px(kTickTop)), QPointF(x, look_.px(kTickBottom)));
        const QFont font = look_.font(kDetentWords, chosen ? QFont::Bold : QFont::Normal);
        sheet_.draw(painter, {x - step / 2, look_.px(kDetentTop), step, QFontMetricsF(font).height()},
                    QString::fromUtf8(kDetents[i]),
                    {font, chosen ? look_.theme->text : look_.theme->dimText, Qt::AlignHCenter | Qt::AlignVCenter});
    }
    paintBracket(painter, 1, 3, QStringLiteral("slower"));
    paintBracket(painter, 5, 6, QStringLiteral("faster"));
    paintBat(painter);
}

}  // namespace tiepoint::ui
