#include "ui/cards/open_card.h"

#include "ui/paint/guide_marks.h"
#include "ui/theme/panels.h"
#include "ui/theme/qs.h"

#include <QPainter>
#include <QPainterPath>

#include <algorithm>

namespace tiepoint::ui {
namespace {

constexpr int kOpenColumns = 2, kOpenRows = 2;
constexpr double kOpenTop = 36, kOpenRow = 52, kOpenRing = 18, kOpenFoot = 36, kOpenWordSize = 21;
const char* const kNotWrong = "Not wrong, only not done yet.";

}  // namespace

OpenCard::OpenCard(QWidget* parent) : AsideCard(parent), ask_(new QToolButton(this)) {
    ask_->setText(QStringLiteral("What is wrong?"));
    ask_->setToolTip(QStringLiteral("Tell all that is found, finished or not"));
    ask_->setFocusPolicy(Qt::TabFocus);
    setAccessibleName(QStringLiteral("Still open"));
    connect(ask_, &QToolButton::clicked, this, &OpenCard::asked);
}

void OpenCard::showOpen(std::vector<OpenEnd> open, bool withPlaces) {
    if (open == open_ && withPlaces == withPlaces_) return;
    open_ = std::move(open);
    withPlaces_ = withPlaces;
    QString words = QString::fromLatin1(kNotWrong);
    for (const OpenEnd& end : open_)
        if (withPlaces_) words += QStringLiteral(" %1: %2.").arg(qs(end.what), qs(end.place));
    setAccessibleDescription(words);
    update();
}

void OpenCard::paintSurface(QPainter& painter) {
    QPen pen(look().theme->dimTextOnBench, std::max(1.0, look().px(1.6)));
    pen.setDashPattern({5, 4});
    painter.setPen(pen);
    QLinearGradient bench(0, 0, 0, height());
    bench.setColorAt(0, look().theme->benchTop);
    bench.setColorAt(1, look().theme->benchBottom);
    painter.setBrush(bench);
    painter.drawRoundedRect(frame(), look().px(10), look().px(10));
}

void OpenCard::paintBody(QPainter& painter) {
    const Theme& theme = *look().theme;
    const QRectF box = body();
    drawLine(painter, QRectF(box.left(), box.top(), widthBesideButton(), 0), accessibleName(), look().font(text::kBody),
             theme.dimTextOnBench);
    if (withPlaces_) {
        const bool more = open_.size() > kOpenColumns * kOpenRows;
        const std::size_t shown = more ? kOpenColumns * kOpenRows - 1 : open_.size();
        const double breadth = box.width() / kOpenColumns;
        const auto cell = [&](std::size_t i) {
            return QRectF(box.left() + static_cast<double>(i % kOpenColumns) * breadth,
                          box.top() + look().px(kOpenTop + static_cast<double>(i / kOpenColumns) * kOpenRow),
                          breadth - look().px(12), look().px(kOpenRow));
        };
        for (std::size_t i = 0; i < shown; ++i) paintEnd(painter, cell(i), open_[i]);
        if (more) paintEnd(painter, cell(shown), {{}, {}, "and " + std::to_string(open_.size() - shown) + " more", ""});
    }
    const double line = box.bottom() - look().px(kOpenFoot);
    painter.setPen(QPen(withAlpha(theme.dimTextOnBench, 0.4), std::max(1.0, look().px(1.2))));
    painter.drawLine(QPointF(box.left(), line), QPointF(box.right(), line));
    drawLine(painter, QRectF(box.left(), line + look().px(8), ask_->x() - box.left(), 0),
             QString::fromLatin1(kNotWrong), look().font(kOpenWordSize), theme.dimTextOnBench);
}

void OpenCard::paintEnd(QPainter& painter, const QRectF& cell, const OpenEnd& end) const {
    const Theme& theme = *look().theme;
    const double r = look().px(kOpenRing / 2), left = cell.left() + look().px(kOpenRing + 14);
    painter.save();
    painter.setBrush(Qt::NoBrush);
    painter.setPen(QPen(theme.text, std::max(1.2, look().px(2.2)), Qt::SolidLine, Qt::FlatCap));
    painter.drawPath(brokenRing({cell.left() + r + look().px(2), cell.top() + look().px(14)}, r));
    painter.restore();
    const QRectF words(left, cell.top(), cell.right() - left, 0);
    drawLine(painter, words, qs(end.what), look().font(kOpenWordSize, QFont::Medium), theme.text);
    drawLine(painter, words.translated(0, look().px(26)), qs(end.place), look().font(text::kSmall - 1),
             theme.dimTextOnBench);
}

void OpenCard::arrangeCard() {
    AsideCard::arrangeCard();
    ask_->setFont(look().font(text::kSmall + 1));
    ask_->setStyleSheet(wordButtonStyle(look()));
    const QRectF box = body();
    const QSize size = ask_->sizeHint();
    const double line = box.bottom() - look().px(kOpenFoot);
    ask_->setGeometry(
        QRectF(box.right() - size.width(), line + look().px(4), size.width(), look().px(kOpenFoot)).toRect());
}

}  // namespace tiepoint::ui
