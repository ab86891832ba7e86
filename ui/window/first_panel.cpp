#include "ui/window/first_panel.h"

#include "core/lesson/first_build.h"
#include "ui/theme/panels.h"

#include <QPainter>
#include <QPainterPath>

#include <algorithm>

namespace tiepoint::ui {
namespace {

constexpr double kPanelSide = 14, kBeginHeight = 54, kPanelPictureShape = 1.5, kMostOfPanel = 0.45;

/// The first build with its first step done, and where the second goes.
Miniature firstStepPicture() {
    Bench bench = makeNewBench();
    Part resistor = makePart(usualResistor(), "R1");
    const auto holes = firstBuildAdvice(*evaluate(std::make_shared<const Bench>(bench)), 0).holes;
    resistor.leads = {holes.at(0), holes.at(1)};
    bench.parts.push_back(resistor);
    Miniature picture;
    picture.bench = std::make_shared<const Bench>(std::move(bench));
    picture.frameMm = boardsFrameMm(*picture.bench);
    picture.pointed = firstBuildAdvice(*evaluate(picture.bench), 0).holes;
    return picture;
}

}  // namespace

FirstPanel::FirstPanel(PicturesBeside& pictures, QWidget* parent)
    : QWidget(parent),
      pictures_(pictures),
      look_{&theme(ThemeName::Day), 1},
      begin_(new WordButton(QStringLiteral("Begin"), WordButton::Shape::Filled, this)) {
    begin_->setAccessibleName(QStringLiteral("Begin: light a first LED"));
}

void FirstPanel::setLook(const Look& look) {
    look_ = look;
    begin_->setLook(look);
    picture_ = {};
    draw();
    update();
}

QRectF FirstPanel::frame() const {
    const double margin = look_.px(4);
    return QRectF(rect()).adjusted(margin, margin, -margin, -margin);
}

QRectF FirstPanel::pictureBox() const {
    const double side = look_.px(kPanelSide);
    const double breadth = frame().width() - 2 * side;
    return {frame().left() + side, frame().top() + side, breadth,
            std::min(breadth / kPanelPictureShape, kMostOfPanel * frame().height())};
}

void FirstPanel::draw() {
    const QSize size = pictureBox().size().toSize();
    if (size.isEmpty()) return;
    pictures_.order(
        [size, theme = look_.theme, ratio = devicePixelRatioF()] {
            Miniature picture = firstStepPicture();
            picture.size = size;
            picture.theme = theme;
            picture.ratio = ratio;
            return picture;
        },
        [this, theme = look_.theme](const QImage& image) {
            if (theme != look_.theme) return;
            picture_ = QPixmap::fromImage(image);
            update();
        });
}

void FirstPanel::resizeEvent(QResizeEvent* event) {
    QWidget::resizeEvent(event);
    const double side = look_.px(kPanelSide), high = look_.px(kBeginHeight);
    begin_->setGeometry(
        QRectF(frame().left() + side, frame().bottom() - high - side, frame().width() - 2 * side, high).toRect());
    draw();
}

void FirstPanel::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setRenderHint(QPainter::SmoothPixmapTransform);
    const Theme& theme = *look_.theme;
    painter.setPen(QPen(theme.accent, look_.px(2.4)));
    painter.setBrush(mix(theme.card, theme.accent, theme.dark ? 0.14 : 0.09));
    painter.drawRoundedRect(frame(), look_.px(10), look_.px(10));
    const QRectF box = pictureBox();
    QPainterPath corner;
    corner.addRoundedRect(box, look_.px(5), look_.px(5));
    painter.save();
    painter.setClipPath(corner);
    painter.fillPath(corner, theme.benchTop);
    if (!picture_.isNull()) painter.drawPixmap(box, picture_, QRectF(picture_.rect()));
    painter.restore();
    sheet_.begin();
    QRectF words(box.left(), box.bottom() + look_.px(8), box.width(), look_.px(44));
    sheet_.draw(painter, words, QStringLiteral("First build"),
                {look_.font(text::kTitle, QFont::DemiBold), theme.text, Qt::AlignLeft | Qt::AlignVCenter});
    words = {words.left(), words.bottom() + look_.px(4), words.width(), begin_->y() - words.bottom() - look_.px(8)};
    sheet_.draw(painter, words, QStringLiteral("Light a first LED. Each step lights the holes that come next."),
                {look_.font(text::kBody - 2), theme.text, Qt::AlignLeft | Qt::AlignTop, true});
}

}  // namespace tiepoint::ui
