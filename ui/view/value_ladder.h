#pragma once
// The value ladder: the neighbouring preferred values of the selected part in a short row beside it, each with its picture (a resistor
// with its bands). A click takes a rung; the wheel over it, and up and down while it has the keyboard, step through them, and the bench
// runs along. A run of steps is one undo entry. Of resistors those that the person has count, see ui/document/my_drawer.h. It grows with the
// window.

#include "core/parts/drawer.h"
#include "ui/document/bench_document.h"
#include "ui/theme/look.h"
#include "ui/theme/words.h"

#include <QElapsedTimer>
#include <QWidget>

#include <vector>

namespace tiepoint::ui {

class ValueLadder : public QWidget {
    Q_OBJECT
public:
    ValueLadder(BenchDocument& document, QWidget* parent);

    void setTheme(const Theme& theme);
    /// Resistors that lie in the person's drawer: steps go from one to the next of them, and rungs that don't lie there are dim.
    void setDrawer(const ResistorDrawer& drawer);
    /// Shows the rungs of a part near a place of the parent; hides if there is no such part, or nothing to step through.
    void follow(const std::string& partId, QRect around);
    /// Of the parent, where something lies over it: the rungs keep off.
    void setCovered(const QRect& covered) { covered_ = covered; }
    /// Steps up or down; true if the part has a ladder.
    bool step(int steps);
    /// Steps by notches of a wheel; parts of a notch add up.
    void turnWheel(double notches);

    const std::vector<double>& rungs() const { return rungs_; }
    QRect rungRect(std::size_t rung) const;

Q_SIGNALS:
    void done();  ///< the keyboard may go back to the bench

protected:
    bool event(QEvent* event) override;
    void paintEvent(QPaintEvent* event) override;
    void mousePressEvent(QMouseEvent* event) override;
    void mouseMoveEvent(QMouseEvent* event) override;
    void leaveEvent(QEvent* event) override;
    void wheelEvent(QWheelEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;

private:
    const Part* part() const;
    const ValueSpec& spec() const;
    void set(double value);
    bool isAtHand(double value) const;
    double stepFrom(double value, int steps) const;
    int rungAt(QPoint at) const;
    void paintRung(QPainter& painter, std::size_t rung) const;

    BenchDocument& document_;
    Look look_;  ///< as large as the window's other words
    mutable WordSheet sheet_{this};
    QRect covered_;
    std::string partId_;
    int value_ = -1;
    std::vector<double> rungs_;
    ResistorDrawer drawer_;
    int hovered_ = -1;
    int gesture_ = -1;
    double wheelNotches_ = 0;
    QElapsedTimer sinceStep_;
};

}  // namespace tiepoint::ui
