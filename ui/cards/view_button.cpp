#include "ui/cards/view_button.h"

#include "core/base/quantity.h"
#include "ui/cards/legend_samples.h"
#include "ui/theme/panels.h"

#include <QPainter>
#include <QPainterPath>

#include <algorithm>
#include <array>
#include <cmath>

namespace tiepoint::ui {
namespace {

constexpr double kTickLeft = 22;
constexpr double kWordLeft = 40;
constexpr double kSampleAway = 14, kSampleGap = 8;      ///< of a sample from the edge and from the word
constexpr double kUpperLine = 0.35, kLowerLine = 0.70;  ///< middles of the two lines, as shares of the height
constexpr double kLineHeight = 28;
constexpr double kRangeSize = 17, kRangeGap = 5;
constexpr double kBareAway = 8;  ///< of a word from the edge, without a sample
constexpr double kButtonWordSize = 24;
constexpr double kKeyWordsSize = 16, kKeyWordsTop = 75;  ///< of the key that works it
constexpr std::array kSampleDivisors{10, 2, 1};          ///< of the full scale

/// Of a full scale or a share of it, whose decimals division blurs.
QString ampereWords(double ampere) {
    constexpr int kDigits = 9;
    return QString::fromStdString(formatSetting(QString::number(ampere, 'g', kDigits).toDouble(), "A"));
}

/// A word that can be clicked, on another button: underlined under the pointer.
class WordButton : public QAbstractButton {
public:
    explicit WordButton(QWidget* parent) : QAbstractButton(parent) {
        setAttribute(Qt::WA_Hover);
        setCursor(Qt::PointingHandCursor);
        setFocusPolicy(Qt::TabFocus);
    }
    void setLook(const Look& look, const QColor& colour, double size) {
        look_ = look;
        colour_ = colour;
        size_ = size;
        update();
    }
    QSize sizeHint() const override {
        const QFontMetricsF metrics(look_.font(size_));
        const double lock = isCheckable() ? lockRoom() : 0;
        return {static_cast<int>(std::ceil(metrics.horizontalAdvance(text()) + look_.px(4) + lock)),
                static_cast<int>(std::ceil(metrics.height()))};
    }

protected:
    void paintEvent(QPaintEvent*) override {
        QPainter painter(this);
        painter.setRenderHint(QPainter::Antialiasing);
        QFont font = look_.font(size_);
        font.setUnderline(underMouse() || hasFocus());
        sheet_.begin();
        sheet_.draw(painter, QRectF(rect()).adjusted(0, 0, isCheckable() ? -lockRoom() : 0, 0), text(),
                    {font, colour_, Qt::AlignLeft | Qt::AlignVCenter});
        if (isCheckable() && (isChecked() || underMouse() || hasFocus())) paintPadlock(painter);
    }

private:
    double lockRoom() const { return look_.px(24); }
    void paintPadlock(QPainter& painter) const {
        const QRectF body(width() - look_.px(17), height() / 2.0 - look_.px(1), look_.px(14), look_.px(10));
        painter.setPen(QPen(isChecked() ? look_.theme->accent : look_.theme->dimText, look_.px(2)));
        const double lift = isChecked() ? 0 : look_.px(3);
        painter.setBrush(Qt::NoBrush);
        painter.drawArc(QRectF(body.left() + look_.px(2.5), body.top() - look_.px(6) - lift, look_.px(9), look_.px(11)),
                        0, 180 * 16);
        painter.setBrush(isChecked() ? look_.theme->accent : look_.theme->card);
        painter.drawRoundedRect(body, look_.px(2), look_.px(2));
    }

    Look look_{&theme(ThemeName::Day), 1};
    QColor colour_;
    double size_ = text::kSmall;
    WordSheet sheet_{this};
};

}  // namespace

ViewButton::ViewButton(const QString& word, double sampleWidth, Sample sample, QWidget* parent)
    : QAbstractButton(parent),
      look_{&theme(ThemeName::Day), 1},
      sampleWidth_(sampleWidth),
      sample_(sample) {
    setText(word);
    setCheckable(true);
    setFocusPolicy(Qt::TabFocus);
    setAttribute(Qt::WA_Hover);
    setAccessibleName(word);
}

void ViewButton::setLook(const Look& look) {
    look_ = look;
    update();
}

QFont ViewButton::smallFont() const { return uiFont(std::max(kSmallestLetters, look_.px(kKeyWordsSize))); }

/// What the scale's two ends take beside it.
double ViewButton::rangeWidth() const {
    if (low_.isEmpty()) return 0;
    const QFontMetricsF metrics(look_.font(kRangeSize));
    return metrics.horizontalAdvance(low_) + metrics.horizontalAdvance(high_) + look_.px(2 * kRangeGap);
}

double ViewButton::neededWidth() const {
    const double word = QFontMetricsF(look_.font(kButtonWordSize, QFont::Medium)).horizontalAdvance(text());
    const double above = look_.px(kWordLeft + 4 + kBareAway) + word;
    if (!showsSample()) return above;
    const double key = QFontMetricsF(smallFont()).horizontalAdvance(keyWords_);
    return std::max(above, look_.px(2 * kSampleAway + kSampleGap + sampleWidth_) + key + rangeWidth());
}

void ViewButton::setBare(bool bare) {
    if (bare_ == bare) return;
    bare_ = bare;
    update();
}

void ViewButton::setKeyWords(const QString& words) {
    keyWords_ = words;
    update();
}

bool ViewButton::setRange(const QString& low, const QString& high) {
    if (low_ == low && high_ == high) return false;
    low_ = low;
    high_ = high;
    update();
    return true;
}

void ViewButton::enterEvent(QEnterEvent* event) {
    QAbstractButton::enterEvent(event);
    update();
}

void ViewButton::leaveEvent(QEvent* event) {
    QAbstractButton::leaveEvent(event);
    update();
}

void ViewButton::paintFace(QPainter& painter, double tickY) {
    sheet_.begin();
    const double margin = look_.px(4);
    const QRectF frame = QRectF(rect()).adjusted(margin, margin, -margin, -margin);
    paintButton(painter, look_, frame, {isChecked(), underMouse(), isDown(), hasFocus()});
    paintTick(painter, look_, {look_.px(kTickLeft + 4), tickY}, isChecked());
}

void ViewButton::paintKeyWords(QPainter& painter, const QRectF& room, Qt::Alignment side) {
    sheet_.draw(painter, room, keyWords_, {smallFont(), look_.theme->dimText, side});
}

/// Tick and word above; below them the key, and the sample at the right.
void ViewButton::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    const double upper = kUpperLine * height(), lower = kLowerLine * height();
    paintFace(painter, upper);
    const double left = look_.px(kWordLeft + 4), high = look_.px(kLineHeight);
    sheet_.draw(painter, QRectF(left, upper - high / 2, width() - look_.px(kBareAway) - left, high), text(),
                {look_.font(kButtonWordSize, QFont::Medium), look_.theme->text, Qt::AlignLeft | Qt::AlignVCenter});
    const double from = look_.px(kSampleAway), to = width() - look_.px(kSampleAway);
    const double sampleFrom = showsSample() ? to - look_.px(sampleWidth_) - rangeWidth() : to;
    paintKeyWords(painter, QRectF(from, lower - high / 2, std::max(1.0, sampleFrom - from), high),
                  Qt::AlignLeft | Qt::AlignVCenter);
    if (showsSample()) paintScale(painter, QRectF(sampleFrom, lower - high / 2, to - sampleFrom, high));
}

/// The sample, between the words of its two ends where it has some.
void ViewButton::paintScale(QPainter& painter, const QRectF& room) {
    const WordStyle style{look_.font(kRangeSize), look_.theme->text, Qt::AlignLeft | Qt::AlignVCenter};
    const QFontMetricsF metrics(style.font);
    const double gap = low_.isEmpty() ? 0 : look_.px(kRangeGap);
    const double low = metrics.horizontalAdvance(low_), high = metrics.horizontalAdvance(high_);
    sheet_.draw(painter, QRectF(room.left(), room.top(), low, room.height()), low_, style);
    sheet_.draw(painter, QRectF(room.right() - high, room.top(), high, room.height()), high_, style);
    sample_(painter, look_, room.adjusted(low + gap, look_.px(2), -high - gap, -look_.px(2)));
}

ArrowsButton::ArrowsButton(QWidget* parent)
    : ViewButton(QStringLiteral("Arrows"), 0, nullptr, parent),
      direction_(new WordButton(this)),
      lock_(new WordButton(this)) {
    direction_->setToolTip(QStringLiteral("Turn the arrows: current (plus to minus) or electron flow (minus to plus)"));
    lock_->setToolTip(
        QStringLiteral("Keep this full scale, so that arrows can be compared from one change to the next"));
    lock_->setCheckable(true);
}

QRectF ArrowsButton::sampleBox(int index) const {
    const double first = look().px(172);
    const double step = (width() - first - look().px(8)) / kSampleDivisors.size();
    return {first + step * index, look().px(20), look().px(126), look().px(30)};
}

void ArrowsButton::showScale(const Views& views, double fullScaleAmpere, bool mean) {
    views_ = views;
    fullScaleAmpere_ = fullScaleAmpere;
    setChecked(views.arrows != Arrows::Off);
    const bool electrons = views.arrows == Arrows::Electrons;
    direction_->setText(mean ? (electrons ? QStringLiteral("mean electron flow") : QStringLiteral("mean current"))
                             : (electrons ? QStringLiteral("electron flow") : QStringLiteral("current")));
    lock_->setText(ampereWords(fullScaleAmpere) + QStringLiteral(" full scale"));
    lock_->setChecked(views.lockedFullScaleAmpere.has_value());
    resizeEvent(nullptr);
    update();
}

void ArrowsButton::resizeEvent(QResizeEvent*) {
    static_cast<WordButton*>(direction_)->setLook(look(), look().theme->dimText, text::kSmall);
    static_cast<WordButton*>(lock_)->setLook(look(), look().theme->text, text::kSmall);
    direction_->setGeometry(QRect(QPoint(look().ipx(kWordLeft + 4), look().ipx(50)), direction_->sizeHint()));
    const QRectF last = sampleBox(static_cast<int>(kSampleDivisors.size()) - 1);
    const QSize lock = lock_->sizeHint();
    const int room = width() - look().ipx(6) - static_cast<int>(last.left());
    lock_->setGeometry(QRect(QPoint(static_cast<int>(last.left()), look().ipx(56)),
                             QSize(std::min(lock.width(), room), lock.height())));
}

void ArrowsButton::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    paintFace(painter, height() / 2.0);
    // Below the small button that tells which way the arrows point.
    const double below = look().px(kKeyWordsTop);
    paintKeyWords(painter, QRectF(look().px(kTickLeft - 8), below, look().px(120), height() - look().px(5) - below),
                  Qt::AlignLeft | Qt::AlignTop);
    const double wordLeft = look().px(kWordLeft + 4);
    sheet().draw(painter, QRectF(wordLeft, look().px(14), sampleBox(0).left() - look().px(8) - wordLeft, look().px(36)),
                 text(),
                 {look().font(kButtonWordSize, QFont::Medium), look().theme->text, Qt::AlignLeft | Qt::AlignVCenter});
    const Arrows arrows = views_.arrows == Arrows::Off ? Arrows::Conventional : views_.arrows;
    for (int i = 0; i < static_cast<int>(kSampleDivisors.size()); ++i) {
        const int divisor = kSampleDivisors[static_cast<std::size_t>(i)];
        const QRectF box = sampleBox(i);
        paintArrowSample(painter, look(), box, 1.0 / divisor, arrows, SampleBed::Jumper);
        if (divisor == 1) continue;  // the lock's own words stand under the last
        const double right = sampleBox(i + 1).left() - look().px(6);
        sheet().draw(painter, QRectF(box.left(), look().px(56), right - box.left(), look().px(26)),
                     ampereWords(fullScaleAmpere_ / divisor),
                     {look().font(text::kSmall), look().theme->text, Qt::AlignLeft | Qt::AlignVCenter});
    }
}

}  // namespace tiepoint::ui
