#include "ui/cards/view_button.h"

#include "core/base/quantity.h"
#include "ui/cards/legend_samples.h"
#include "ui/theme/panels.h"

#include <QPainter>
#include <QPainterPath>

#include <array>

namespace tiepoint::ui {
namespace {

constexpr double kTickLeft = 22;
constexpr double kWordLeft = 40;
constexpr double kSampleAway = 14, kSampleGap = 8;  ///< of a sample from the edge and from the word
constexpr double kButtonWordSize = 24;
constexpr double kKeyWordsSize = 13, kKeyWordsBelow = 12;  ///< of the key that works it, below the tick
constexpr std::array kSampleDivisors{10, 2, 1};            ///< of the full scale

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
        const double lock = isCheckable() ? look_.px(24) : 0;
        return QSizeF(metrics.horizontalAdvance(text()) + look_.px(4) + lock, metrics.height()).toSize();
    }

protected:
    void paintEvent(QPaintEvent*) override {
        QPainter painter(this);
        painter.setRenderHint(QPainter::Antialiasing);
        QFont font = look_.font(size_);
        font.setUnderline(underMouse() || hasFocus());
        painter.setFont(font);
        painter.setPen(colour_);
        painter.drawText(rect(), Qt::AlignLeft | Qt::AlignVCenter, text());
        if (isCheckable() && (isChecked() || underMouse() || hasFocus())) paintPadlock(painter);
    }

private:
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

double ViewButton::neededWidth() const {
    const double word = QFontMetricsF(look_.font(kButtonWordSize, QFont::Medium)).horizontalAdvance(text());
    return look_.px(kWordLeft + 4) + word +
           look_.px(sampleWidth_ > 0 ? kSampleGap + sampleWidth_ + kSampleAway : kSampleAway);
}

void ViewButton::setKeyWords(const QString& words) {
    keyWords_ = words;
    update();
}

void ViewButton::setRange(const QString& low, const QString& high) {
    if (low_ == low && high_ == high) return;
    low_ = low;
    high_ = high;
    update();
}

void ViewButton::enterEvent(QEnterEvent* event) {
    QAbstractButton::enterEvent(event);
    update();
}

void ViewButton::leaveEvent(QEvent* event) {
    QAbstractButton::leaveEvent(event);
    update();
}

void ViewButton::paintFace(QPainter& painter) const {
    const double margin = look_.px(4);
    const QRectF frame = QRectF(rect()).adjusted(margin, margin, -margin, -margin);
    paintKey(painter, look_, frame, {isChecked(), underMouse(), isDown(), hasFocus()});
    const QPointF tick(look_.px(kTickLeft + 4), height() / 2.0);
    paintTick(painter, look_, tick, isChecked());
    painter.setFont(look_.font(kKeyWordsSize));
    painter.setPen(look_.theme->dimText);
    const double top = tick.y() + look_.px(kKeyWordsBelow);
    painter.drawText(QRectF(0, top, 2 * tick.x(), frame.bottom() - top), Qt::AlignHCenter | Qt::AlignTop, keyWords_);
}

void ViewButton::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    paintFace(painter);
    const double middle = height() / 2.0;
    painter.setFont(look_.font(kButtonWordSize, QFont::Medium));
    painter.setPen(look_.theme->text);
    painter.drawText(QRectF(look_.px(kWordLeft + 4), 0, width(), height()), Qt::AlignLeft | Qt::AlignVCenter, text());

    const bool ranged = isChecked() && !low_.isEmpty();
    const double sampleHeight = look_.px(ranged ? 14 : 34);
    const QRectF box(width() - look_.px(sampleWidth_ + kSampleAway),
                     middle - (ranged ? look_.px(22) : sampleHeight / 2), look_.px(sampleWidth_), sampleHeight);
    sample_(painter, look_, box);
    if (!ranged) return;
    painter.setFont(look_.font(text::kSmall - 1));
    painter.setPen(look_.theme->text);
    const QRectF words = box.translated(0, box.height() + look_.px(1)).adjusted(0, 0, 0, look_.px(10));
    painter.drawText(words, Qt::AlignLeft | Qt::AlignTop, low_);
    painter.drawText(words, Qt::AlignRight | Qt::AlignTop, high_);
}

ArrowsButton::ArrowsButton(QWidget* parent)
    : ViewButton(QStringLiteral("Arrows"), 0, nullptr, parent),
      direction_(new WordButton(this)),
      lock_(new WordButton(this)) {
    direction_->setToolTip(
        QStringLiteral("Turn the arrows round: the way of the current (plus to minus) or of the electrons"));
    lock_->setToolTip(
        QStringLiteral("Keep this full scale, so that arrows can be compared from one change to the next"));
    lock_->setCheckable(true);
}

QRectF ArrowsButton::sampleBox(int index) const {
    const double first = look().px(172);
    const double step = (width() - first - look().px(8)) / kSampleDivisors.size();
    return {first + step * index, look().px(20), look().px(126), look().px(30)};
}

void ArrowsButton::showScale(const Views& views, double fullScaleAmpere) {
    views_ = views;
    fullScaleAmpere_ = fullScaleAmpere;
    setChecked(views.arrows != Arrows::Off);
    direction_->setText(views.arrows == Arrows::Electrons ? QStringLiteral("electrons") : QStringLiteral("current"));
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
    lock_->setGeometry(QRect(QPoint(static_cast<int>(last.left()), look().ipx(56)), lock_->sizeHint()));
}

void ArrowsButton::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    paintFace(painter);
    painter.setFont(look().font(kButtonWordSize, QFont::Medium));
    painter.setPen(look().theme->text);
    painter.drawText(QRectF(look().px(kWordLeft + 4), look().px(14), width(), look().px(36)),
                     Qt::AlignLeft | Qt::AlignVCenter, text());
    const Arrows arrows = views_.arrows == Arrows::Off ? Arrows::Conventional : views_.arrows;
    painter.setFont(look().font(text::kSmall));
    for (int i = 0; i < static_cast<int>(kSampleDivisors.size()); ++i) {
        const int divisor = kSampleDivisors[static_cast<std::size_t>(i)];
        const QRectF box = sampleBox(i);
        paintArrowSample(painter, look(), box, 1.0 / divisor, arrows, SampleBed::Jumper);
        if (divisor == 1) continue;  // the lock's own words stand under the last
        painter.setPen(look().theme->text);
        painter.drawText(QRectF(box.left(), look().px(56), box.width() + look().px(40), look().px(26)),
                         Qt::AlignLeft | Qt::AlignVCenter, ampereWords(fullScaleAmpere_ / divisor));
    }
}

}  // namespace tiepoint::ui
