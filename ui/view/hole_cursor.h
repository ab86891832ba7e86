#pragma once
// The keyboard's cursor, which walks from hole to hole. While nothing is carried it lights what is in its hole. Hidden, it remembers its
// place. Belongs to the window's thread.

#include "ui/view/bench_marks.h"
#include "ui/view/camera.h"
#include "ui/view/gesture_run.h"

#include <QObject>

#include <optional>

namespace tiepoint::ui {

class HoleCursor : public QObject {
    Q_OBJECT
public:
    /// All must outlive it.
    HoleCursor(const Picture& picture, BenchMarks& marks, const GestureRun& gestures, Camera& camera)
        : picture_(picture),
          marks_(marks),
          gestures_(gestures),
          camera_(camera) {}

    const std::optional<Hole>& hole() const { return picture_.marks.cursor; }  ///< nothing while it is hidden
    /// In a hole of the bench, which is brought into sight.
    void show(const Hole& hole);
    void hide();
    /// Shows it where it was last, or in the middle of the view.
    void restore();
    /// By so many holes, as they lie on a board; shows it if it was hidden.
    void walk(int columns, int rows);
    /// Leaves a hole that the bench no longer has.
    void followBench();

Q_SIGNALS:
    void moved();

private:
    void bringIntoSight(Point at);

    const Picture& picture_;
    BenchMarks& marks_;
    const GestureRun& gestures_;
    Camera& camera_;
    std::optional<Hole> kept_;  ///< where it was when it was hidden
};

}  // namespace tiepoint::ui
