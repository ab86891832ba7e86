#include "ui/cards/scope_card.h"

#include "ui/paint/lettering.h"
#include "ui/theme/qs.h"

#include <algorithm>

namespace tiepoint::ui {
namespace {

constexpr double kScreenAspect = 52 / 42.4;
constexpr double kScopeButton = 30, kScopeWords = 20, kScopeMeasures = 21, kBesideScreen = 22;

QString heading(const ScopeTrace& trace) { return QStringLiteral("Oscilloscope %1").arg(qs(trace.part)); }

QString scaleWords(const ScopeTrace& trace) {
    return QStringLiteral("%1 a square").arg(secondsOfSquare(trace.settings));
}

}  // namespace

ScopeCard::ScopeCard(QWidget* parent)
    : AsideCard(parent),
      picture_(new QToolButton(this)),
      table_(new QToolButton(this)) {
    setAccessibleName(QStringLiteral("Oscilloscope"));
    picture_->setText(QStringLiteral("Save a picture…"));
    table_->setText(QStringLiteral("Save a table…"));
    connect(picture_, &QToolButton::clicked, this, &ScopeCard::pictureAsked);
    connect(table_, &QToolButton::clicked, this, &ScopeCard::tableAsked);
}

void ScopeCard::showTrace(const ScopeTrace& trace, double nowSecond) {
    trace_ = trace;
    screen_ = screenOf(trace, nowSecond);
    has_ = true;
    for (QToolButton* button : {table_, picture_}) button->show();
    QStringList said{heading(trace)};
    for (const int channel : {0, 1})
        if (const QString words = channelWords(channel); !words.isEmpty()) said << words;
    setAccessibleDescription(said.join(QStringLiteral(". ")));
    update();
}

void ScopeCard::showNone() {
    has_ = false;
    for (QToolButton* button : {table_, picture_}) button->hide();
    update();
}

QString ScopeCard::channelWords(int channel) const {
    const auto c = static_cast<std::size_t>(channel);
    if (!has_ || !trace_.settings.plugged[c]) return {};
    const QString words = measuresInWords(trace_.channels[c].measures);
    return words.isEmpty() ? words : QStringLiteral("%1: %2").arg(channel + 1).arg(words);
}

double ScopeCard::roomHeight(double most) const { return most; }

QRectF ScopeCard::screenPlace() const {
    const QRectF box = body();
    const double wide = std::min(kScreenAspect * box.height(), box.width() * 0.62);
    return {box.left(), box.top(), wide, wide / kScreenAspect};
}

double ScopeCard::letterShare() const { return look().px(kScopeWords) / screenPlace().width(); }

void ScopeCard::arrangeCard() {
    AsideCard::arrangeCard();
    const QRectF box = body();
    double right = box.right();
    for (QToolButton* button : {table_, picture_}) {
        button->setStyleSheet(wordButtonStyle(look()));
        button->setFont(look().font(kScopeWords));
        const double wide = button->sizeHint().width();
        button->setGeometry(
            QRectF(right - wide, box.bottom() - look().px(kScopeButton), wide, look().px(kScopeButton)).toRect());
        right -= wide + look().px(4);
    }
}

void ScopeCard::paintBody(QPainter& painter) {
    const QRectF box = body(), screen = screenPlace();
    const double left = screen.right() + look().px(kBesideScreen), width = box.right() - left;
    if (!has_) {
        drawHeading(painter, {box.left(), box.top(), widthBesideButton(), 0}, {QStringLiteral("Oscilloscope")});
        drawBlock(painter, box.adjusted(0, look().px(40), 0, 0),
                  QStringLiteral("There is no oscilloscope on this bench. Take one from the tray, under Meter."),
                  look().font(text::kLabel), look().theme->text);
        return;
    }
    paintScopeScreen(painter, *look().theme, screen, screen_, letterShare());
    const double button = box.width() - widthBesideButton();
    drawHeading(painter, {left, box.top() - look().px(8), width - button, 0}, {heading(trace_), qs(trace_.part)});
    drawLine(painter, {left, box.top() + look().px(20), width, 0}, scaleWords(trace_), look().font(kScopeMeasures),
             look().theme->dimText);
    double top = box.top() + look().px(48);
    const double bottom = picture_->y() - look().px(4), high = (bottom - top) / 2;
    for (const int channel : {0, 1}) {
        const auto c = static_cast<std::size_t>(channel);
        if (!trace_.settings.plugged[c]) continue;
        const QStringList read = measureList(trace_.channels[c].measures);
        const QString first =
            QStringLiteral("%1   %2 a square").arg(channel + 1).arg(voltsOfSquare(trace_.settings, channel));
        drawLine(painter, {left, top, width, 0}, first, look().font(kScopeMeasures, QFont::DemiBold),
                 look().theme->text);
        // Where there is little room, what can be seen on the screen is left out first.
        QStringList forms{read.isEmpty() ? QStringLiteral("nothing swept yet") : read.join(QStringLiteral(", "))};
        if (read.size() > 3) forms << QStringList(read.mid(0, 2) + read.mid(3)).join(QStringLiteral(", "));
        if (read.size() > 3) forms << read.mid(3).join(QStringLiteral(", "));
        drawBlock(painter, {left, top + look().px(27), width, high - look().px(27)}, forms, look().font(kScopeMeasures),
                  look().theme->text);
        top += high;
    }
}

QImage ScopeCard::picture() const {
    constexpr double kWide = 1560, kMargin = 40, kLine = 44, kSize = 30;
    const double high = kWide / kScreenAspect;
    QImage image(static_cast<int>(kWide + 2 * kMargin), static_cast<int>(high + 3 * kMargin + 4 * kLine),
                 QImage::Format_RGB32);
    const Theme& theme = *look().theme;
    image.fill(theme.card);
    QPainter painter(&image);
    painter.setRenderHint(QPainter::Antialiasing);
    paintScopeScreen(painter, theme, {kMargin, kMargin, kWide, high}, screen_, kSize / kWide);
    QStringList lines{heading(trace_) + QStringLiteral(", ") + scaleWords(trace_)};
    for (const int channel : {0, 1}) {
        if (!trace_.settings.plugged[static_cast<std::size_t>(channel)]) continue;
        lines << QStringLiteral("%1: %2 a square, %3")
                     .arg(channel + 1)
                     .arg(voltsOfSquare(trace_.settings, channel),
                          measuresInWords(trace_.channels[static_cast<std::size_t>(channel)].measures));
    }
    double y = 2 * kMargin + high + kLine / 2;
    for (const QString& line : lines) {
        drawText(painter, line, {kMargin, y}, {kSize, QFont::Normal}, theme.text, Qt::AlignLeft);
        y += kLine;
    }
    return image;
}

}  // namespace tiepoint::ui
