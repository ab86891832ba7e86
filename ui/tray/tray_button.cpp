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
constexpr double kNarrowPad = 6, kWordBelow = 26;  ///< where the word stands below, or nowhere

}  // namespace

TrayButton::TrayButton(const TrayItem& item, const QString& word, Shape shape, QWidget* parent)
    : QAbstractButton(parent),
      item_(item),
      shape_(shape),
      look_{&theme(ThemeName::Day), 1} {
    setText(word);
    setAccessibleName(word);
    sayHow();
    setFocusPolicy(Qt::TabFocus);
    setAttribute(Qt::WA_Hover);
}

void TrayButton::sayHow() {
    const QString how = QStringLiteral("Drag it to the holes, or click it and then a hole");
    setToolTip(word_ == Word::None ? QStringLiteral("%1. %2").arg(text(), how) : how);
}

void TrayButton::setWordAt(Word place) {
    if (word_ == place) return;
    word_ = place;
    if (!pale_) sayHow();
    picture_ = {};
    update();
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

double TrayButton::wantedWidth() const {
    const double word = QFontMetricsF(look_.font(text::kLabel)).horizontalAdvance(text());
    if (shape_ == Shape::DrawerItem) return std::max(look_.px(112), word + look_.px(16));
    if (word_ == Word::Below) {
        const double small = QFontMetricsF(look_.font(text::kSmall + 1)).horizontalAdvance(text());
        return std::max(compartmentPicture().width(), small) + 2 * look_.px(kNarrowPad);
    }
    if (word_ == Word::None) return compartmentPicture().width() + 2 * look_.px(kNarrowPad);
    return look_.px(kPictureLeft) + pictureBox().width() + look_.px(kWordGap) + word + look_.px(kRightPad);
}

QRectF TrayButton::pictureBox() const {
    if (shape_ == Shape::DrawerItem)
        return QRectF(rect()).adjusted(look_.px(6), look_.px(6), -look_.px(6), -look_.px(34));
    const QRectF box = compartmentPicture();
    return word_ == Word::Beside ? box : box.translated((width() - box.width()) / 2 - box.left(), 0);
}

/// Of a compartment, at its left.
QRectF TrayButton::compartmentPicture() const {
    const bool below = word_ == Word::Below;
    const double height = look_.px(below ? 42 : 68);
    const QRectF extent = itemExtentMm(*look_.theme, item_);
    const double scale =
        extent.isEmpty()
            ? 1
            : std::min({look_.px(kPicturePixelsPerMm), height / extent.height(), look_.px(94) / extent.width()});
    const double top = below ? look_.px(kNarrowPad) : (this->height() - height) / 2.0;
    return {look_.px(kPictureLeft), top, extent.width() * scale, height};
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
    if (word_ == Word::None) return;
    if (word_ == Word::Below) {
        sheet_.draw(painter, QRectF(0, height() - look_.px(kWordBelow), width(), look_.px(kWordBelow)), text(),
                    {look_.font(text::kSmall + 1), ink, Qt::AlignCenter});
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
