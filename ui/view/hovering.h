#pragma once
// What lies under the pointer while nothing is carried: lights it, and shows by the pointer's shape what the hand can do there.

#include "ui/gesture/hand.h"
#include "ui/view/bench_marks.h"
#include "ui/view/camera.h"

#include <QWidget>

#include <functional>

namespace tiepoint::ui {

class Hovering {
public:
    /// The symbol of a finding at a place of the bench: its number, or -1.
    using FindingAt = std::function<int(QPointF mm)>;
    /// All must outlive it.
    Hovering(QWidget& viewport, const Hand& hand, BenchMarks& marks, const Camera& camera, FindingAt findingAt)
        : viewport_(viewport),
          hand_(hand),
          marks_(marks),
          camera_(camera),
          findingAt_(std::move(findingAt)) {}

    /// The pointer has come to a place of the viewport.
    void follow(QPointF inView);
    int findingAt(QPointF inView) const;
    Under under(QPointF inView) const { return hand_.under(camera_.toMm(inView)); }

private:
    QWidget& viewport_;
    const Hand& hand_;
    BenchMarks& marks_;
    const Camera& camera_;
    FindingAt findingAt_;
};

}  // namespace tiepoint::ui
