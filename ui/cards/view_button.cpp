#include "ui/cards/view_button.h"

#include "core/base/quantity.h"
#include "ui/cards/legend_samples.h"
#include "ui/theme/panels.h"

#include <QPainter>
#include <QPainterPath>

#include <array>
#include <cmath>

namespace tiepoint::ui {
namespace {

constexpr double kTickLeft = 22;
constexpr double kWordLeft = 40;
constexpr double kSampleAway = 14, kSampleGap = 8;  ///< of a sample from the edge and from the word
constexpr double kBareAway = 8;                     ///< of a word from the edge, without a sample
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

double ViewButton::neededWidth() const {
    const double word = QFontMetricsF(look_.font(kButtonWordSize, QFont::Medium)).horizontalAdvance(text());
    return look_.px(kWordLeft + 4) + word +
           look_.px(showsSample() ? kSampleGap + sampleWidth_ + kSampleAway : kBareAway);
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
    const double wordLeft = look_.px(kWordLeft + 4);
    const double wordRight = width() - look_.px(showsSample() ? sampleWidth_ + kSampleAway + kSampleGap : kBareAway);
    sheet_.begin();
    sheet_.draw(painter, QRectF(wordLeft, 0, wordRight - wordLeft, height()), text(),
                {look_.font(kButtonWordSize, QFont::Medium), look_.theme->text, Qt::AlignLeft | Qt::AlignVCenter});

    if (!showsSample()) return;
    const bool ranged = isChecked() && !low_.isEmpty();
    const double sampleHeight = look_.px(ranged ? 14 : 34);
    const QRectF box(width() - look_.px(sampleWidth_ + kSampleAway),
                     middle - (ranged ? look_.px(22) : sampleHeight / 2), look_.px(sampleWidth_), sampleHeight);
    sample_(painter, look_, box);
    if (!ranged) return;
    const QFont font = look_.font(text::kSmall - 1);
    const QRectF words(box.left(), box.bottom() + look_.px(1), box.width(), look_.px(24));
    const double low = std::ceil(QFontMetricsF(font).horizontalAdvance(low_)) + look_.px(4);
    sheet_.draw(painter, QRectF(words.left(), words.top(), low, words.height()), low_, {font, look_.theme->text});
    sheet_.draw(painter, words.adjusted(low, 0, 0, 0), high_, {font, look_.theme->text, Qt::AlignRight | Qt::AlignTop});
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

void ArrowsButton::showScale(const Views& views, double fullScaleAmpere) {
    views_ = views;
    fullScaleAmpere_ = fullScaleAmpere;
    setChecked(views.arrows != Arrows::Off);
    direction_->setText(views.arrows == Arrows::Electrons ? QStringLiteral("electron flow")
                                                          : QStringLiteral("current"));
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
    paintFace(painter);
    const double wordLeft = look().px(kWordLeft + 4);
    sheet().begin();
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
