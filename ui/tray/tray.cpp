#include "ui/tray/tray.h"

#include "ui/theme/panels.h"

#include <QCursor>
#include <QPainter>

namespace tiepoint::ui {
namespace {

constexpr double kInset = 5;
constexpr double kGap = 5;

}  // namespace

Tray::Tray(QWidget* stage, QWidget* parent)
    : QWidget(parent), families_(trayFamilies()), drawer_(new Drawer(stage)), look_{&theme(ThemeName::Day), 1} {
    setAccessibleName(QStringLiteral("Tray"));
    for (const TrayFamily& family : families_) addCompartment(family);
    connect(drawer_, &Drawer::dragged, this, &Tray::take);
    connect(drawer_, &Drawer::clicked, this, [this](const TrayItem& item) { take(item, QCursor::pos()); });
    connect(drawer_, &Drawer::closed, this, [this] {
        for (TrayKey* key : compartments_) key->setActive(false);
    });
}

void Tray::addCompartment(const TrayFamily& family) {
    auto* key = new TrayKey(family.items.front(), family.name, TrayKey::Shape::Compartment, this);
    const std::size_t index = compartments_.size();
    connect(key, &TrayKey::dragged, this, &Tray::take);
    connect(key, &QAbstractButton::clicked, this, [this, index] { toggleDrawer(index); });
    compartments_.push_back(key);
}

void Tray::toggleDrawer(std::size_t index) {
    const bool open = drawer_->isVisible() && drawer_->family() == families_[index].name;
    closeDrawer();
    if (open) return;
    if (families_[index].items.size() == 1) return take(families_[index].items.front(), QCursor::pos());
    const QRect frame = compartments_[index]->geometry();
    const QPoint above = mapTo(drawer_->parentWidget(), QPoint(frame.center().x(), 0));
    drawer_->openFor(families_[index], above);
    compartments_[index]->setActive(true);
}

void Tray::take(const TrayItem& item, QPoint globalPos) {
    closeDrawer();
    Q_EMIT taken(item.kind, item.preset, globalPos);
}

void Tray::setLook(const Look& look) {
    if (look_ == look) return;
    look_ = look;
    drawer_->setLook(look);
    for (TrayKey* key : compartments_) key->setLook(look);
    arrange();
    update();
}

void Tray::arrange() {
    if (compartments_.empty()) return;
    const double margin = look_.px(kCardMargin), inset = look_.px(kInset), gap = look_.px(kGap);
    const QRectF inside = QRectF(rect()).adjusted(margin + inset, margin + inset, -margin - inset, -margin - inset);
    double wanted = 0;
    for (const TrayKey* key : compartments_) wanted += key->wantedWidth();
    const double spare = (inside.width() - wanted - gap * static_cast<double>(compartments_.size() - 1)) / static_cast<double>(compartments_.size());
    double left = inside.left();
    for (TrayKey* key : compartments_) {
        const double width = key->wantedWidth() + spare;
        key->setGeometry(QRectF(left, inside.top(), width, inside.height()).toRect());
        left += width + gap;
    }
}

void Tray::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    const double margin = look_.px(kCardMargin);
    paintCard(painter, look_, QRectF(rect()).adjusted(margin, margin, -margin, -margin));
    if (!look_.theme->flat) return;
    painter.setPen(QPen(look_.theme->cardEdge, look_.px(2)));
    for (std::size_t i = 1; i < compartments_.size(); ++i) {  // flat: a line between compartments in place of tubs
        const double x = compartments_[i]->x() - look_.px(kGap / 2);
        painter.drawLine(QPointF(x, height() * 0.2), QPointF(x, height() * 0.8));
    }
}

void Tray::resizeEvent(QResizeEvent* event) {
    QWidget::resizeEvent(event);
    drawer_->hide();
    arrange();
}

}  // namespace tiepoint::ui
