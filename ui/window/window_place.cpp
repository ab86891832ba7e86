#include "ui/window/window_place.h"

#include <QGuiApplication>
#include <QScreen>
#include <QSettings>

namespace tiepoint::ui {
namespace {

const QString kPlaceSetting = QStringLiteral("window/place");
constexpr double kFirstShare = 0.8;

}  // namespace

void restorePlace(QWidget& window) {
    if (window.restoreGeometry(QSettings().value(kPlaceSetting).toByteArray())) return;
    const QScreen* screen = QGuiApplication::primaryScreen();
    if (screen) window.resize(screen->availableSize() * kFirstShare);
}

void rememberPlace(const QWidget& window) { QSettings().setValue(kPlaceSetting, window.saveGeometry()); }

}  // namespace tiepoint::ui
