#include "ui/window/metal_closeups.h"

#include "core/bench/resolve.h"
#include "ui/theme/panels.h"
#include "ui/theme/qs.h"

#include <QPainter>
#include <QPainterPath>

#include <algorithm>

namespace tiepoint::ui {
namespace {

constexpr double kCloseupTitle = 40, kCloseupWords = 42, kCloseupGap = 18;
constexpr double kColumnsAbout = 3.2, kRowsAboveMm = 3.2, kRowsBelowMm = 1.8;  ///< what is seen round both columns
constexpr double kCloseupCorner = 6;

/// About the holes of two columns of a board, or a rail's holes near them, in the shape of a box.
Rect frameAbout(const Bench& bench, const Hop& hop, double shape) {
    double left = 1e9, right = -1e9, top = 1e9, bottom = -1e9;
    const auto add = [&](const Hole& hole) {
        const auto at = holeMm(bench, hole);
        if (!at) return;
        left = std::min(left, at->x), right = std::max(right, at->x);
        top = std::min(top, at->y), bottom = std::max(bottom, at->y);
    };
    for (const Hole& hole : {hop.is, hop.belongs}) {
        if (isRail(hole.line)) {
            add(hole);
            continue;
        }
        const bool upper = hole.line <= Line::E;
        add({hole.board, upper ? Line::A : Line::F, hole.number});
        add({hole.board, upper ? Line::E : Line::J, hole.number});
    }
    left -= kColumnsAbout * kPitchMm, right += kColumnsAbout * kPitchMm;
    top -= kRowsAboveMm, bottom += kRowsBelowMm;
    double width = right - left, height = bottom - top;
    if (width < shape * height) {
        left -= (shape * height - width) / 2;
        width = shape * height;
    } else {
        top -= (width / shape - height) / 2;
        height = width / shape;
    }
    return {left, top, width, height};
}

}  // namespace

MetalCloseups::MetalCloseups(QWidget* parent) : QWidget(parent), look_{&theme(ThemeName::Day), 1} { hide(); }

void MetalCloseups::setLook(const Look& look) {
    look_ = look;
    draw();
}

void MetalCloseups::show(std::shared_ptr<const Bench> bench, const FirstMend& mend, const std::string& now,
                         const std::string& then) {
    const bool known = benches_[0] == bench && isVisible();
    setVisible(mend.is.has_value() && mend.belongs.has_value());
    if (isHidden() || known) return;
    auto applied = apply(*bench, mend.edit);
    if (!applied) return hide();
    benches_ = {std::move(bench), std::make_shared<const Bench>(std::move(applied->bench))};
    words_ = {QStringLiteral("now: ") + qs(now), qs(then)};
    hop_ = {*mend.is, *mend.belongs};
    setAccessibleName(QStringLiteral("The metal: %1; %2").arg(words_[0], words_[1]));
    draw();
}

QRectF MetalCloseups::box(int which) const {
    const double gap = look_.px(kCloseupGap), breadth = (width() - gap) / 2;
    const double top = look_.px(kCloseupTitle);
    return {which * (breadth + gap), top, breadth, height() - top - look_.px(kCloseupWords)};
}

void MetalCloseups::draw() {
    pictures_ = {};
    update();
    if (!benches_[0] || isHidden()) return;
    const int drawing = ++drawing_;
    for (const int which : {0, 1}) {
        const QRectF frame = box(which);
        if (frame.width() < 1 || frame.height() < 1) return;
        Miniature picture;
        picture.bench = benches_[static_cast<std::size_t>(which)];
        picture.theme = look_.theme;
        picture.size = frame.size().toSize();
        picture.ratio = devicePixelRatioF();
        picture.views.strips = true;
        picture.live = false;
        picture.frameMm = frameAbout(*picture.bench, hop_, frame.width() / frame.height());
        picture.hop = hop_;
        picture.hop->isDone = which == 1;
        picture.hop->hasArrow = false;
        beside_.order([picture] { return picture; },
                      [this, which, drawing](const QImage& image) {
                          if (drawing != drawing_) return;
                          pictures_[static_cast<std::size_t>(which)] = QPixmap::fromImage(image);
                          update();
                      });
    }
}

void MetalCloseups::resizeEvent(QResizeEvent* event) {
    QWidget::resizeEvent(event);
    draw();
}

void MetalCloseups::paintEvent(QPaintEvent*) {
    sheet_.begin();
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    const Theme& theme = *look_.theme;
    sheet_.draw(painter, QRectF(0, 0, width(), look_.px(kCloseupTitle)), QStringLiteral("The metal under these holes"),
                {look_.font(text::kBody - 1), theme.dimText, Qt::AlignLeft | Qt::AlignVCenter});
    for (const int which : {0, 1}) {
        const QRectF frame = box(which);
        const QPixmap& picture = pictures_[static_cast<std::size_t>(which)];
        QPainterPath corner;
        corner.addRoundedRect(frame, look_.px(kCloseupCorner), look_.px(kCloseupCorner));
        painter.save();
        painter.setClipPath(corner);
        painter.fillPath(corner, theme.boardTop);
        if (!picture.isNull()) painter.drawPixmap(frame, picture, QRectF(picture.rect()));
        painter.restore();
        painter.setBrush(Qt::NoBrush);
        painter.setPen(QPen(which == 0 ? theme.cardEdge : theme.accent, look_.px(which == 0 ? 1.4 : 2.4)));
        painter.drawPath(corner);
        sheet_.draw(painter, QRectF(frame.left(), frame.bottom(), frame.width(), look_.px(kCloseupWords)),
                    words_[static_cast<std::size_t>(which)],
                    {look_.font(text::kBody - 2, QFont::DemiBold), which == 0 ? theme.text : theme.accent,
                     Qt::AlignHCenter | Qt::AlignVCenter});
    }
}

}  // namespace tiepoint::ui
