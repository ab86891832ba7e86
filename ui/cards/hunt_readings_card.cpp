#include "ui/cards/hunt_readings_card.h"

#include "ui/paint/lettering.h"
#include "ui/theme/panels.h"

#include <QPainter>

#include <algorithm>

namespace tiepoint::ui {
namespace {

constexpr double kHuntRowHigh = 44, kHuntHead = 40, kHuntFootHigh = 62;
constexpr double kHuntNumber = 26;

}  // namespace

void paintHuntNumber(QPainter& painter, const Look& look, const QRectF& box, int number, bool accent) {
    painter.setPen(Qt::NoPen);
    painter.setBrush(accent ? look.theme->accent : look.theme->text);
    painter.drawRoundedRect(box, look.px(4), look.px(4));
    drawText(painter, QString::number(number), box.center(), {look.px(18), QFont::DemiBold}, look.theme->card);
}

HuntReadingsCard::HuntReadingsCard(QWidget* parent) : Card(parent) {
    setAccessibleName(QStringLiteral("Measured so far"));
}

void HuntReadingsCard::showReadings(std::vector<HuntRow> rows, const QString& foot) {
    rows_ = std::move(rows);
    foot_ = foot;
    QStringList said;
    for (const HuntRow& row : rows_)
        said << QStringLiteral("%1: %2 %3 %4").arg(row.number).arg(row.place, row.shown, row.when);
    setAccessibleDescription(said.join(QStringLiteral(". ")));
    update();
}

void HuntReadingsCard::paintBody(QPainter& painter) {
    const QRectF box = body();
    const Theme& theme = *look().theme;
    drawHeading(painter, box, {QStringLiteral("Measured so far")});
    const double high = look().px(kHuntRowHigh), top = box.top() + look().px(kHuntHead);
    const int room = std::max(1, static_cast<int>((box.bottom() - look().px(kHuntFootHigh) - top) / high));
    const int first = std::max(0, static_cast<int>(rows_.size()) - room);
    for (int i = first; i < static_cast<int>(rows_.size()); ++i) {
        const HuntRow& row = rows_[static_cast<std::size_t>(i)];
        const QRectF line(box.left(), top + (i - first) * high, box.width(), high);
        const bool newest = i + 1 == static_cast<int>(rows_.size());
        if (newest) {
            painter.setPen(QPen(theme.accent, look().px(2)));
            painter.setBrush(mix(theme.card, theme.accent, 0.12));
            painter.drawRoundedRect(line.adjusted(-look().px(8), look().px(2), look().px(8), -look().px(2)),
                                    look().px(5), look().px(5));
        }
        const double number = look().px(kHuntNumber), middle = line.center().y();
        paintHuntNumber(painter, look(), QRectF(line.left(), middle - number / 2, number, number), row.number, newest);
        const QRectF text(line.left() + look().px(40), middle - look().px(15), line.width(), 0);
        drawLine(painter, QRectF(text.left(), text.top(), 0.34 * line.width(), 0),
                 row.when.isEmpty() ? row.place : row.place + QStringLiteral(", ") + row.when,
                 look().font(text::kSmall + 2), theme.text);
        const QRectF trough(line.left() + 0.5 * line.width(), middle - look().px(6), 0.24 * line.width(),
                            look().px(12));
        painter.setPen(QPen(theme.dimText, look().px(1)));
        painter.setBrush(theme.card);
        painter.drawRoundedRect(trough, look().px(6), look().px(6));
        if (row.share > 0.01) {
            painter.setPen(Qt::NoPen);
            painter.setBrush(theme.text);
            painter.drawRoundedRect(QRectF(trough.topLeft(), QSizeF(row.share * trough.width(), trough.height())),
                                    look().px(6), look().px(6));
        }
        drawFigure(painter, QRectF(line.left(), middle - look().px(17), line.width(), look().px(30)), row.shown,
                   text::kLabel, theme.text, Qt::AlignRight);
    }
    const double foot = box.bottom() - look().px(kHuntFootHigh) + look().px(8);
    drawLine(painter, QRectF(box.left(), foot, box.width(), 0), foot_, look().font(text::kSmall), theme.dimText);
    drawLine(painter, QRectF(box.left(), foot + look().px(26), box.width(), 0),
             QStringLiteral("Move the red tip to read on."), look().font(text::kSmall, QFont::DemiBold), theme.accent);
}

}  // namespace tiepoint::ui
