#include "ui/window/view_memory.h"

#include <QSettings>

#include <algorithm>

namespace tiepoint::ui {
namespace {

const QString kArrows = QStringLiteral("views/arrows"), kVoltage = QStringLiteral("views/voltage"),
              kStrips = QStringLiteral("views/strips"), kReadings = QStringLiteral("views/readings");
constexpr int kMostArrows = static_cast<int>(Arrows::Electrons);

void keepUsual(const Views& views) {
    QSettings settings;
    settings.setValue(kArrows, static_cast<int>(views.arrows));
    settings.setValue(kVoltage, views.voltage);
    settings.setValue(kStrips, views.strips);
    settings.setValue(kReadings, views.readings);
}

}  // namespace

Views usualViews() {
    const QSettings settings;
    Views views;
    views.arrows = static_cast<Arrows>(
        std::clamp(settings.value(kArrows, static_cast<int>(views.arrows)).toInt(), 0, kMostArrows));
    views.voltage = settings.value(kVoltage, views.voltage).toBool();
    views.strips = settings.value(kStrips, views.strips).toBool();
    views.readings = settings.value(kReadings, views.readings).toBool();
    return views;
}

ViewMemory::ViewMemory(BenchDocument& document, BenchView& view, QObject* parent)
    : QObject(parent),
      document_(document),
      view_(view) {
    connect(&view_, &BenchView::viewsChanged, this, &ViewMemory::remember);
}

void ViewMemory::recall() {
    const auto& saved = document_.bench()->views;
    recalling_ = true;
    view_.setViews(saved ? saved->shown : usualViews());
    recalling_ = false;
}

void ViewMemory::remember() {
    if (recalling_ || resting_) return;
    keep();
    keepUsual(view_.views());
}

}  // namespace tiepoint::ui
