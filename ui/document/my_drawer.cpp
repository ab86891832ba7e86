#include "ui/document/my_drawer.h"

#include <QSettings>

#include <utility>

namespace tiepoint::ui {
namespace {

const QString kKey = QStringLiteral("drawer/resistors"), kKitKey = QStringLiteral("drawer/kit");

}  // namespace

MyDrawer::MyDrawer(QObject* parent) : QObject(parent) {
    const QSettings settings;
    if (auto known = readDrawer(settings.value(kKey).toString().toStdString())) drawer_ = std::move(known).value();
    const std::string text = settings.value(kKitKey).toString().toStdString();
    if (text.empty()) return;
    if (auto kit = readKit(text)) {
        kit_ = std::move(kit.value().kit);
        drawer_ = drawerOf(*kit_);
    }
}

void MyDrawer::set(ResistorDrawer drawer) {
    if (drawer == drawer_) return;
    drawer_ = std::move(drawer);
    if (kit_) kit_ = withResistors(*std::move(kit_), drawer_);
    keep();
}

void MyDrawer::useKit(std::optional<Kit> kit) {
    kit_ = std::move(kit);
    drawer_ = kit_ ? drawerOf(*kit_) : ResistorDrawer();
    keep();
}

void MyDrawer::keep() {
    QSettings settings;
    settings.setValue(kKey, QString::fromStdString(writeDrawer(drawer_)));
    settings.setValue(kKitKey, kit_ ? QString::fromStdString(writeKit(*kit_)) : QString());
    Q_EMIT changed();
}

}  // namespace tiepoint::ui
