#include "ui/tray/tray_button.h"

#include "ui/theme/panels.h"
#include "ui/tray/sample.h"

#include <QApplication>
#include <QKeyEvent>
#include <QMouseEvent>
#include <QPainter>

namespace tiepoint::ui {
namespace {

constexpr double kPicturePixelsPerMm = 10;
constexpr double kPictureLeft = 14;
constexpr double kWordGap = 16;
constexpr double kRightPad = 22;
constexpr double kStackedWord = 27;  ///< height of a word under its picture

}  // namespace

TrayButton::TrayButton(const TrayItem& item, const QString& word, Shape shape, QWidget* parent)
    : QAbstractButton(parent),
      item_(item),
      shape_(shape),
      look_{&theme(ThemeName::Day), 1} {
    setText(word);
    setAccessibleName(word);
    setToolTip(QStringLiteral("Drag it to the holes, or click it and then a hole"));
    setFocusPolicy(Qt::TabFocus);
    setAttribute(Qt::WA_Hover);
}

void TrayButton::setLook(const Look& look) {
    look_ = look;
    picture_ = {};
    update();
}

void TrayButton::setItem(const TrayItem& item) {
    item_ = item;
    picture_ = {};
    update();
}

void TrayButton::setPale(const QString& why) {
    pale_ = true;
    setToolTip(why);
    setAccessibleDescription(why);
    update();
}

void TrayButton::setActive(bool active) {
    if (active_ == active) return;
    active_ = active;
    update();
}

void TrayButton::setStacked(bool stacked) {
    if (stacked_ == stacked) return;
    stacked_ = stacked;
    picture_ = {};
    update();
}

double TrayButton::wantedWidth() const {
    const double word = QFontMetricsF(look_.font(text::kLabel)).horizontalAdvance(text());
    if (shape_ == Shape::DrawerItem) return std::max(look_.px(112), word + look_.px(16));
    return look_.px(kPictureLeft) + pictureBox().width() + look_.px(kWordGap) + word + look_.px(kRightPad);
}

QRectF TrayButton::pictureBox() const {
    if (shape_ == Shape::DrawerItem)
        return QRectF(rect()).adjusted(look_.px(6), look_.px(6), -look_.px(6), -look_.px(34));
    if (stacked_) return QRectF(rect()).adjusted(look_.px(8), look_.px(5), -look_.px(8), -look_.px(kStackedWord));
    const double height = look_.px(68);
    const QRectF extent = itemExtentMm(*look_.theme, item_);
    const double scale =
        extent.isEmpty()
            ? 1
            : std::min({look_.px(kPicturePixelsPerMm), height / extent.height(), look_.px(94) / extent.width()});
    return {look_.px(kPictureLeft), (this->height() - height) / 2.0, extent.width() * scale, height};
}

const QPixmap& TrayButton::picture() {
    const double ratio = devicePixelRatioF();
    const QSize pixels = (QSizeF(size()) * ratio).toSize();
    if (picture_.size() == pixels) return picture_;
    picture_ = QPixmap(pixels);
    picture_.setDevicePixelRatio(ratio);
    picture_.fill(Qt::transparent);
    QPainter painter(&picture_);
    painter.setRenderHint(QPainter::Antialiasing);
    paintItem(painter, *look_.theme, item_, pictureBox(), look_.px(kPicturePixelsPerMm));
    return picture_;
}

void TrayButton::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    paintTub(painter, look_, QRectF(rect()), {active_, underMouse(), isDown(), hasFocus()});
    painter.setOpacity(pale_ ? 0.45 : 1);
    painter.drawPixmap(0, 0, picture());
    painter.setOpacity(1);
    const QColor& ink = pale_ ? look_.theme->dimText : look_.theme->text;
    sheet_.begin();
    if (shape_ == Shape::DrawerItem) {
        const double side = look_.px(4);
        sheet_.draw(painter, QRectF(side, height() - look_.px(34), width() - 2 * side, look_.px(28)), text(),
                    {look_.font(text::kSmall + 1), ink, Qt::AlignCenter});
        return;
    }
    if (stacked_) {
        const double side = look_.px(3);
        sheet_.draw(painter,
                    QRectF(side, height() - look_.px(kStackedWord), width() - 2 * side, look_.px(kStackedWord - 3)),
                    text(), {look_.font(text::kSmall), ink, Qt::AlignCenter});
        return;
    }
    const double left = pictureBox().right() + look_.px(kWordGap);
    sheet_.draw(painter, QRectF(left, 0, width() - look_.px(4) - left, height()), text(),
                {look_.font(text::kLabel), ink, Qt::AlignLeft | Qt::AlignVCenter});
}

void TrayButton::mousePressEvent(QMouseEvent* event) {
    pressedAt_ = event->position().toPoint();
    QAbstractButton::mousePressEvent(event);
}

void TrayButton::mouseMoveEvent(QMouseEvent* event) {
    const bool far = (event->position().toPoint() - pressedAt_).manhattanLength() >= QApplication::startDragDistance();
    if (isDown() && (event->buttons() & Qt::LeftButton) && far) {
        setDown(false);  // the release belongs to the bench now, and is no click
        Q_EMIT dragged(item_, event->globalPosition().toPoint());
        return;
    }
    QAbstractButton::mouseMoveEvent(event);
}

void TrayButton::keyPressEvent(QKeyEvent* event) {
    if (event->key() == Qt::Key_Return || event->key() == Qt::Key_Enter)
        click();
    else
        QAbstractButton::keyPressEvent(event);
}

}  // namespace tiepoint::ui
