#include "ui/cards/surroundings_card.h"

#include "core/base/quantity.h"
#include "ui/paint/shade.h"
#include "ui/theme/qs.h"

#include <QMouseEvent>
#include <QPainter>
#include <QPainterPath>

#include <algorithm>
#include <cmath>

namespace tiepoint::ui {
namespace {

constexpr double kLeastLux = 0.1;
constexpr int kStepsPerTenfold = 20;
constexpr double kHandleHalf = 15, kLineAt = 20, kWordsAt = 40, kSliderHeight = 58;  ///< layout pixels

/// A torch whose lamp points down at the scale.
void paintTorch(QPainter& painter, const Theme& theme, double half) {
    QPainterPath beam(QPointF(-half * 0.3, half * 0.25));
    beam.lineTo(half * 0.3, half * 0.25);
    beam.lineTo(half * 0.95, half);
    beam.lineTo(-half * 0.95, half);
    beam.closeSubpath();
    painter.setPen(Qt::NoPen);
    painter.setBrush(QColor(0xff, 0xd9, 0x5a, 0xc8));
    painter.drawPath(beam);
    painter.setPen(QPen(theme.text, half * 0.09));
    painter.setBrush(theme.furnishing.steelDark);
    painter.drawRect(QRectF(-half * 0.22, -half, half * 0.44, half * 0.85));
    QPainterPath head(QPointF(-half * 0.22, -half * 0.15));
    head.lineTo(half * 0.22, -half * 0.15);
    head.lineTo(half * 0.42, half * 0.28);
    head.lineTo(-half * 0.42, half * 0.28);
    head.closeSubpath();
    painter.drawPath(head);
}

/// The palm of a hand with its fingers up.
void paintHand(QPainter& painter, const Theme& theme, double half) {
    QPainterPath hand;
    hand.addRoundedRect(QRectF(-half * 0.5, -half * 0.05, half, half * 0.95), half * 0.3, half * 0.3);
    for (int finger = 0; finger < 4; ++finger) {
        const double x = -half * 0.5 + finger * half * 0.26, up = half * (finger == 0 || finger == 3 ? 0.7 : 0.9);
        hand = hand.united([&] {
            QPainterPath one;
            one.addRoundedRect(QRectF(x, -up, half * 0.22, up + half * 0.3), half * 0.11, half * 0.11);
            return one;
        }());
    }
    QPainterPath thumb;
    thumb.addRoundedRect(QRectF(half * 0.4, half * 0.05, half * 0.5, half * 0.24), half * 0.12, half * 0.12);
    painter.setPen(QPen(theme.text, half * 0.09));
    painter.setBrush(QColor(0xe8, 0xb4, 0x8c));
    painter.drawPath(hand.united(thumb));
}

}  // namespace

ScaleSlider::ScaleSlider(Handle handle, std::vector<Word> words, QWidget* parent)
    : QSlider(Qt::Horizontal, parent),
      handle_(handle),
      words_(std::move(words)) {
    setFocusPolicy(Qt::TabFocus);
    setCursor(Qt::OpenHandCursor);
}

void ScaleSlider::setLook(const Look& look) {
    look_ = look;
    update();
}

double ScaleSlider::placeOf(int value) const {
    const double edge = look_.px(kHandleHalf + 4);
    return edge + (width() - 2 * edge) * (value - minimum()) / std::max(1, maximum() - minimum());
}

void ScaleSlider::follow(double x) {
    const double from = placeOf(minimum()), to = placeOf(maximum());
    const double share = std::clamp((x - from) / std::max(1.0, to - from), 0.0, 1.0);
    setValue(minimum() + static_cast<int>(std::lround(share * (maximum() - minimum()))));
}

void ScaleSlider::mousePressEvent(QMouseEvent* event) {
    if (event->button() != Qt::LeftButton) return event->ignore();
    setSliderDown(true);
    setCursor(Qt::ClosedHandCursor);
    follow(event->position().x());
}

void ScaleSlider::mouseMoveEvent(QMouseEvent* event) {
    if (isSliderDown()) follow(event->position().x());
}

void ScaleSlider::mouseReleaseEvent(QMouseEvent*) {
    setSliderDown(false);
    setCursor(Qt::OpenHandCursor);
}

void ScaleSlider::paintEvent(QPaintEvent*) {
    if (look_.theme == nullptr) return;
    const Theme& theme = *look_.theme;
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    const double y = look_.px(kLineAt), here = placeOf(value());
    const auto line = [&](double from, double to, const QColor& colour) {
        painter.setPen(QPen(colour, look_.px(4), Qt::SolidLine, Qt::RoundCap));
        painter.drawLine(QPointF(from, y), QPointF(to, y));
    };
    line(placeOf(minimum()), placeOf(maximum()), theme.cardEdge);
    line(placeOf(minimum()), here, theme.accent);
    painter.setFont(look_.font(text::kSmall));
    sheet_.begin();
    double taken = -1e9;
    for (const Word& word : words_) {
        const double at = placeOf(word.value), wide = painter.fontMetrics().horizontalAdvance(word.text);
        const double left = std::clamp(at - wide / 2, 0.0, std::max(0.0, width() - wide));
        painter.setPen(QPen(theme.dimText, look_.px(1.4)));
        painter.drawLine(QPointF(at, y + look_.px(5)), QPointF(at, y + look_.px(10)));
        if (left < taken) continue;  // no room beside the word before
        taken = left + wide + look_.px(10);
        const double high = painter.fontMetrics().height();
        sheet_.draw(painter, QRectF(left, look_.px(kWordsAt) - high / 2, wide + 1, high), word.text,
                    {look_.font(text::kSmall), theme.dimText, Qt::AlignLeft | Qt::AlignVCenter});
    }
    painter.translate(here, y - look_.px(2));
    if (hasFocus()) {
        painter.setPen(QPen(theme.accent, look_.px(2)));
        painter.setBrush(Qt::NoBrush);
        painter.drawEllipse(QPointF(0, 0), look_.px(kHandleHalf + 3), look_.px(kHandleHalf + 3));
    }
    if (handle_ == Handle::Torch)
        paintTorch(painter, theme, look_.px(kHandleHalf));
    else
        paintHand(painter, theme, look_.px(kHandleHalf));
}

double SurroundingsCard::luxOf(int step) {
    if (step <= 0) return 0;
    const double lux = kLeastLux * std::pow(10, static_cast<double>(step - 1) / kStepsPerTenfold);
    const double unit = std::pow(10, std::floor(std::log10(lux) + 1e-9) - 1);
    return std::min(std::round(lux / unit) * unit, kMostLightLux);
}

int SurroundingsCard::stepOf(double lux) {
    if (!(lux >= kLeastLux)) return 0;
    return 1 + static_cast<int>(std::lround(kStepsPerTenfold * std::log10(std::min(lux, kMostLightLux) / kLeastLux)));
}

SurroundingsCard::SurroundingsCard(QWidget* parent)
    : AsideCard(parent),
      light_(new ScaleSlider(ScaleSlider::Handle::Torch,
                             {{0, tr("dark")},
                              {stepOf(1), tr("street at night")},
                              {stepOf(10), tr("dusk")},
                              {stepOf(300), tr("room")},
                              {stepOf(10e3), tr("clouds")},
                              {stepOf(100e3), tr("full sun")}},
                             this)),
      warmth_(new ScaleSlider(ScaleSlider::Handle::Hand,
                              {{-20, tr("frost")}, {0, tr("ice")}, {25, tr("room")}, {36, tr("hand")}, {70, tr("hot")}},
                              this)) {
    setAccessibleName(tr("Light and warmth"));
    light_->setRange(0, stepOf(kMostLightLux));
    warmth_->setRange(static_cast<int>(kColdestCelsius), static_cast<int>(kWarmestCelsius));
    light_->setAccessibleName(tr("Light on the bench"));
    warmth_->setAccessibleName(tr("Temperature of the bench"));
    for (ScaleSlider* slider : {light_, warmth_}) {
        connect(slider, &QSlider::valueChanged, this, &SurroundingsCard::choose);
        connect(slider, &QSlider::sliderPressed, this, [this] { begins_ = true; });
    }
    showSurroundings({});
}

void SurroundingsCard::showSurroundings(const Surroundings& surroundings) {
    surroundings_ = surroundings;
    showing_ = true;
    light_->setValue(stepOf(surroundings.lightLux));
    warmth_->setValue(static_cast<int>(std::lround(surroundings.temperatureCelsius)));
    showing_ = false;
    update();
}

void SurroundingsCard::choose() {
    if (showing_) return;
    // Only what was moved: the other keeps its figure to the last digit.
    if (sender() == light_)
        surroundings_.lightLux = luxOf(light_->value());
    else
        surroundings_.temperatureCelsius = warmth_->value();
    update();
    const bool dragged = light_->isSliderDown() || warmth_->isSliderDown();
    Q_EMIT chosen(surroundings_, !dragged || begins_);
    begins_ = !dragged;
}

QRectF SurroundingsCard::rowBox(int row) const {
    const QRectF box = body();
    const double title = look().px(text::kBody * 1.6), high = look().px(text::kBody * 1.5 + kSliderHeight);
    return {box.left(), box.top() + title + row * high, box.width(), high};
}

void SurroundingsCard::arrangeCard() {
    AsideCard::arrangeCard();
    int row = 0;
    for (ScaleSlider* slider : {light_, warmth_}) {
        slider->setLook(look());
        const QRectF box = rowBox(row++);
        slider->setGeometry(
            QRectF(box.left(), box.bottom() - look().px(kSliderHeight), box.width(), look().px(kSliderHeight))
                .toRect());
    }
}

void SurroundingsCard::paintBody(QPainter& painter) {
    const Theme& theme = *look().theme;
    const QRectF box = body();
    drawLine(painter, QRectF(box.left(), box.top(), widthBesideButton(), 0), tr("Light and warmth"),
             look().font(text::kBody, QFont::DemiBold), theme.text);
    const QString lux = qs(formatQuantity(surroundings_.lightLux, "lx"));
    const QString celsius = qs(formatQuantity(surroundings_.temperatureCelsius, "\u00b0C"));
    int row = 0;
    for (const auto& [name, figure] : {std::pair(tr("Light"), lux), std::pair(tr("Temperature"), celsius)}) {
        const QRectF line = rowBox(row++);
        drawLine(painter, QRectF(line.left(), line.top(), line.width() / 2, 0), name, look().font(text::kSmall),
                 theme.dimText);
        drawLine(painter, QRectF(line.left() + line.width() / 2, line.top(), line.width() / 2, 0), figure,
                 look().font(text::kBody, QFont::DemiBold), theme.text, Qt::AlignRight);
    }
}

}  // namespace tiepoint::ui
