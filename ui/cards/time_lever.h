#pragma once
// The lever of time: a bat lever in a slot with seven detents, from still to a hundred times faster than in life. A slider for keys and
// screen readers; its value is the detent.

#include "ui/theme/look.h"
#include "ui/theme/words.h"

#include <QAbstractSlider>

#include <array>

namespace tiepoint::ui {

/// Seconds of the bench for each on the wall, by detent; 0: its clock stands.
inline constexpr std::array kTimeRates{0.0, 1e-3, 1e-2, 0.1, 1.0, 10.0, 100.0};
inline constexpr int kStillDetent = 0, kLifeDetent = 4;
/// The detent at a rate, or the nearest.
int detentOf(double rate);
/// "Ten times slower".
QString detentWords(int detent);

class TimeLever : public QAbstractSlider {
    Q_OBJECT
public:
    explicit TimeLever(QWidget* parent);

    void setLook(const Look& look);
    /// Where a detent stands, in the widget.
    QPointF detentPlace(int detent) const;

protected:
    void paintEvent(QPaintEvent* event) override;
    void mousePressEvent(QMouseEvent* event) override;
    void mouseMoveEvent(QMouseEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;
    void wheelEvent(QWheelEvent* event) override;

private:
    void follow(QPointF at);
    void paintSlot(QPainter& painter) const;
    void paintBat(QPainter& painter) const;
    void paintBracket(QPainter& painter, int from, int to, const QString& word) const;

    Look look_;
    mutable WordSheet sheet_{this};
};

}  // namespace tiepoint::ui
