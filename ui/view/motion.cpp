#include "ui/view/motion.h"

#include "ui/paint/arrow_marks.h"

#include <algorithm>

namespace tiepoint::ui {
namespace {

constexpr int kTickMs = 16;
constexpr double kLongestStepSecond = 0.1;  ///< after a pause the arrows go on where they were

}  // namespace

Motion::Motion(QObject* parent) : QObject(parent) {
    timer_.setInterval(kTickMs);
    timer_.setTimerType(Qt::PreciseTimer);
    connect(&timer_, &QTimer::timeout, this, &Motion::tick);
}

void Motion::setMoving(bool moving) {
    if (moving == isMoving()) return;
    if (!moving) return timer_.stop();
    since_.start();
    timer_.start();
}

void Motion::tick() {
    const double second = std::min(kLongestStepSecond, static_cast<double>(since_.nsecsElapsed()) * 1e-9);
    since_.restart();
    phaseMm_ += kArrowSpeedMmPerSecond * second;
    Q_EMIT ticked();
}

}  // namespace tiepoint::ui
