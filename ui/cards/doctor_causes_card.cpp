#include "ui/cards/doctor_causes_card.h"

#include "ui/theme/panels.h"
#include "ui/theme/qs.h"

#include <QPainter>

#include <algorithm>

namespace tiepoint::ui {
namespace {

constexpr double kCausesHead = 42, kShareHigh = 12, kShareGap = 14, kCausesFigure = 34;
constexpr double kFitShare = 0.64;         ///< of the breadth; the rest is for what was ruled out
constexpr std::size_t kMostSentences = 3;  ///< so many slips are told whole
constexpr int kThingColumns = 3;
constexpr double kThingTile = 96, kThingWord = 30, kOutLine = 27;
constexpr std::size_t kMostSegments = 16;

}  // namespace

DoctorCausesCard::DoctorCausesCard(QWidget* parent) : AsideCard(parent) { setAccessibleName(tr("Still possible")); }

void DoctorCausesCard::showAnswer(std::shared_ptr<const DoctorAnswer> answer, const QStringList& seen) {
    answer_ = std::move(answer);
    seen_ = seen;
    QStringList said;
    if (answer_)
        for (const DoctorAnswer::Cause& cause : answer_->fits) said << qs(cause.text);
    setAccessibleDescription(said.join(QLatin1Char(' ')));
    update();
}

void DoctorCausesCard::setPictures(std::map<std::string, QImage> pictures) {
    pictures_ = std::move(pictures);
    update();
}

void DoctorCausesCard::paintPicture(QPainter& painter, const QRectF& room, const std::string& id) {
    const auto found = pictures_.find(id);
    painter.setPen(QPen(look().theme->cardEdge, look().px(1)));
    painter.setBrush(look().theme->flat ? look().theme->card : mix(look().theme->card, look().theme->cardEdge, 0.3));
    painter.drawRoundedRect(room, look().px(4), look().px(4));
    if (found == pictures_.end() || found->second.isNull()) return;
    const double edge = look().px(3);
    const QRectF box = room.adjusted(edge, edge, -edge, -edge);
    const QSizeF size = QSizeF(found->second.deviceIndependentSize()).scaled(box.size(), Qt::KeepAspectRatio);
    painter.setRenderHint(QPainter::SmoothPixmapTransform);
    painter.drawImage(QRectF(box.center() - QPointF(size.width() / 2, size.height() / 2), size), found->second);
}

/// One dash for each that is left where they can be counted, else a bar.
void DoctorCausesCard::paintShare(QPainter& painter, const QRectF& bar) {
    const Theme& theme = *look().theme;
    const std::size_t all = std::max<std::size_t>(1, answer_->allCount), left = std::min(answer_->fitCount, all);
    painter.setPen(QPen(theme.dimText, look().px(1)));
    const auto dash = [&](const QRectF& box, bool full) {
        painter.setBrush(full ? theme.text : theme.card);
        painter.drawRoundedRect(box, look().px(3), look().px(3));
    };
    if (all > kMostSegments) {
        dash(bar, false);
        const double share = static_cast<double>(left) / static_cast<double>(all);
        if (left > 0)
            dash(QRectF(bar.topLeft(), QSizeF(std::max(look().px(8), share * bar.width()), bar.height())), true);
        return;
    }
    const double gap = look().px(6), wide = (bar.width() + gap) / static_cast<double>(all) - gap;
    for (std::size_t i = 0; i < all; ++i)
        dash(QRectF(bar.left() + static_cast<double>(i) * (wide + gap), bar.top(), wide, bar.height()), i < left);
}

void DoctorCausesCard::paintThings(QPainter& painter, const QRectF& room) {
    const auto fits =
        std::ranges::count_if(answer_->things, [](const DoctorAnswer::Thing& each) { return each.fits > 0; });
    const int columns = fits > kMostPictured ? 5 : kThingColumns;
    const int rows = std::max(1, (static_cast<int>(fits) + columns - 1) / columns);
    const double gap = look().px(8), wide = (room.width() + gap) / columns - gap;
    const double most = look().px(fits > kMostPictured ? kThingWord + 6 : kThingTile + 20);
    const double high = std::min(most, (room.height() + gap) / rows - gap);
    int place = 0;
    for (const DoctorAnswer::Thing& thing : answer_->things) {
        if (thing.fits == 0) continue;
        const QRectF tile(room.left() + (place % columns) * (wide + gap), room.top() + (place / columns) * (high + gap),
                          wide, high);
        ++place;
        const double word = std::min(high, look().px(kThingWord));
        if (fits <= kMostPictured) paintPicture(painter, QRectF(tile.topLeft(), QSizeF(wide, high - word)), thing.id);
        const QFont font = look().font(text::kSmall + 1, QFont::DemiBold);
        drawLine(painter, QRectF(tile.left(), tile.bottom() - word + look().px(2), wide, 0), qs(thing.id), font,
                 look().theme->text, Qt::AlignHCenter);
    }
}

void DoctorCausesCard::paintSlips(QPainter& painter, const QRectF& room) {
    const std::size_t count = std::min(kMostSentences, answer_->fits.size());
    const double gap = look().px(10);
    const double high =
        std::min(look().px(kThingTile), room.height() / static_cast<double>(std::max<std::size_t>(1, count)) - gap);
    for (std::size_t i = 0; i < count; ++i) {
        const DoctorAnswer::Cause& cause = answer_->fits[i];
        const QRectF row(room.left(), room.top() + static_cast<double>(i) * (high + gap), room.width(), high);
        double left = row.left();
        if (!cause.ids.empty()) {
            const double wide = std::min(1.25 * high, 0.34 * row.width());
            paintPicture(painter, QRectF(row.topLeft(), QSizeF(wide, high)), cause.ids.front());
            left += wide + look().px(14);
        }
        drawBlock(painter, QRectF(left, row.top(), row.right() - left, high), qs(cause.text),
                  look().font(text::kSmall + 2, QFont::DemiBold), look().theme->text, Qt::AlignLeft | Qt::AlignVCenter);
    }
}

void DoctorCausesCard::paintRuledOut(QPainter& painter, const QRectF& room) {
    const Theme& theme = *look().theme;
    QFont struck = look().font(text::kSmall);
    struck.setStrikeOut(true);
    const QFont heading = look().font(text::kSmall);
    double y = room.top();
    // What ruled out last stands first: it is what is talked about.
    for (int by = static_cast<int>(seen_.size()) - 1; by >= 0; --by) {
        QStringList ids;
        for (const DoctorAnswer::Thing& thing : answer_->things)
            if (thing.fits == 0 && thing.out == static_cast<std::size_t>(by)) ids << qs(thing.id);
        if (ids.isEmpty() || y + 2 * look().px(kOutLine) > room.bottom() + look().px(4)) continue;
        const QRectF head = drawBlock(painter, QRectF(room.left(), y, room.width(), 2 * look().px(kOutLine)), seen_[by],
                                      heading, theme.dimText);
        y += std::max(look().px(kOutLine - 4), head.height()) + look().px(2);
        double x = room.left();
        for (const QString& id : ids) {
            const double wide = QFontMetricsF(struck).horizontalAdvance(id) + look().px(2);
            if (x > room.left() && x + wide > room.right()) x = room.left(), y += look().px(kOutLine);
            drawLine(painter, QRectF(x, y, std::min(wide, room.width()), 0), id, struck, theme.dimText);
            x += wide + look().px(12);
        }
        y += look().px(kOutLine + 8);
    }
}

void DoctorCausesCard::paintBody(QPainter& painter) {
    const QRectF box = body();
    const Theme& theme = *look().theme;
    const double right = box.left() + widthBesideButton();
    if (!answer_)
        return drawHeading(painter, QRectF(box.left(), box.top(), right - box.left(), 0), {tr("Still possible")});
    const QString counted = tr("%1 of %2").arg(answer_->fitCount).arg(answer_->allCount);
    const QString figure = answer_->pairs ? QString::number(answer_->fitCount) : counted;
    const double figureWide = figureWidth(figure, kCausesFigure) + look().px(6);
    drawFigure(painter, QRectF(right - figureWide - look().px(8), box.top() - look().px(6), figureWide, 0), figure,
               kCausesFigure, theme.text, Qt::AlignRight);
    drawHeading(
        painter, QRectF(box.left(), box.top(), right - figureWide - look().px(20) - box.left(), 0),
        answer_->pairs ? QStringList{tr("Two slips at once"), tr("Two slips")} : QStringList{tr("Still possible")});
    const double top = box.top() + look().px(kCausesHead);
    if (!answer_->pairs) paintShare(painter, QRectF(box.left(), top, box.width(), look().px(kShareHigh)));
    const double under = top + look().px(kShareHigh + kShareGap);
    const double fitWide = kFitShare * box.width();
    const QRectF fits(box.left(), under, fitWide - look().px(16), box.bottom() - under);
    if (answer_->switchOff)
        drawBlock(painter, fits, tr("First switch off. What it was can wait."), look().font(text::kSmall + 2),
                  theme.text);
    else if (answer_->fits.empty())
        drawBlock(painter, fits, tr("Nothing fits all of it."), look().font(text::kSmall + 2), theme.text);
    else if (answer_->fitCount <= kMostSentences)
        paintSlips(painter, fits);
    else
        paintThings(painter, fits);
    painter.setPen(QPen(theme.cardEdge, look().px(1)));
    painter.drawLine(QPointF(box.left() + fitWide, under), QPointF(box.left() + fitWide, box.bottom()));
    const QRectF out(box.left() + fitWide + look().px(14), under, box.right() - box.left() - fitWide - look().px(14),
                     box.bottom() - under);
    const bool any =
        std::ranges::any_of(answer_->things, [](const DoctorAnswer::Thing& each) { return each.fits == 0; });
    if (any)
        paintRuledOut(painter, out);
    else
        drawBlock(painter, out, tr("Ruled out: nothing yet."), look().font(text::kSmall), theme.dimText);
}

}  // namespace tiepoint::ui
