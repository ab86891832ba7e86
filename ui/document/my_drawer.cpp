#include "ui/document/my_drawer.h"

#include <QSettings>

#include <utility>

namespace tiepoint::ui {
namespace {

const QString kKey = QStringLiteral("drawer/resistors");

}  // namespace

MyDrawer::MyDrawer(QObject* parent) : QObject(parent) {
    if (auto known = readDrawer(QSettings().value(kKey).toString().toStdString())) drawer_ = std::move(known).value();
}

void MyDrawer::set(ResistorDrawer drawer) {
    if (drawer == drawer_) return;
    drawer_ = std::move(drawer);
    QSettings().setValue(kKey, QString::fromStdString(writeDrawer(drawer_)));
    Q_EMIT changed();
}

}  // namespace tiepoint::ui
