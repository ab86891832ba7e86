#include "ui/window/arrow_scale.h"

#include "core/base/quantity.h"
#include "ui/paint/legend_painter.h"
#include "ui/theme/panels.h"
#include "ui/theme/qs.h"

#include <QPainter>

#include <algorithm>

namespace tiepoint::ui {
namespace {

constexpr double kKeyLines = 39, kSampleMm = 12, kKeyPad = 0.011;

}  // namespace

ArrowScale::ArrowScale(const BenchView& view, QWidget* parent)
    : QWidget(parent),
      view_(view),
      look_{&theme(ThemeName::Day), 1} {
    setAttribute(Qt::WA_TransparentForMouseEvents);
    hide();
}

void ArrowScale::setLook(const Look& look) {
    look_ = look;
    update();
}

QString ArrowScale::words() const { return qs(formatSetting(fullScaleAmpere(view_.picture()), "A")); }

void ArrowScale::place(bool wanted) {
    const Picture& picture = view_.picture();
    const bool shown = wanted && picture.layout && picture.views.arrows != Arrows::Off && !picture.views.turned;
    setVisible(shown);
    if (!shown) return;
    const double high = window()->height(), pad = kKeyPad * high;
    const QFont font = uiFont(high / kKeyLines, QFont::DemiBold);
    const double letters = wordsSize(words(), font, 1e4, false).width();
    const QSizeF size(kSampleMm * view_.pixelsPerMm() + letters + 3.4 * pad, high / kKeyLines + 2 * pad);
    const Rect boards = picture.table->boardsMm;
    const QPointF corner = view_.fromMm({boards.left + boards.width, boards.top + boards.height});
    const QPointF at = QPointF(view_.pos()) +
                       QPointF(std::min(corner.x(), view_.width() - 0.5 * pad) - size.width(), corner.y() + 0.8 * pad);
    const double lowest = view_.y() + view_.height() - size.height() - 2;
    setGeometry(QRectF(QPointF(at.x(), std::min(at.y(), lowest)), size).toRect());
    setAccessibleName(QStringLiteral("Two arrows as broad as these are %1").arg(words()));
    raise();
    update();
}

void ArrowScale::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    sheet_.begin();
    const Theme& theme = *look_.theme;
    const double high = window()->height(), pad = kKeyPad * high;
    painter.setPen(QPen(theme.cardEdge, high / 720));
    painter.setBrush(theme.card);
    painter.drawRoundedRect(QRectF(rect()).adjusted(1, 1, -1, -1), high / 216, high / 216);
    painter.save();
    painter.translate(pad, height() / 2.0);
    painter.scale(view_.pixelsPerMm(), view_.pixelsPerMm());
    paintStripArrowSample(painter, theme, kSampleMm, 1, view_.picture().views.arrows == Arrows::Electrons);
    painter.restore();
    const double left = kSampleMm * view_.pixelsPerMm() + 2 * pad;
    sheet_.draw(painter, QRectF(left, 0, width() - left - pad / 2, height()), words(),
                {uiFont(high / kKeyLines, QFont::DemiBold), theme.text, Qt::AlignLeft | Qt::AlignVCenter});
}

}  // namespace tiepoint::ui
