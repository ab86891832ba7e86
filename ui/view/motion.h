#pragma once
// The clock of moving arrows: ticks only while there is something to move, and integrates how far full-scale arrows have come.

#include <QElapsedTimer>
#include <QObject>
#include <QTimer>

namespace tiepoint::ui {

class Motion : public QObject {
    Q_OBJECT
public:
    explicit Motion(QObject* parent = nullptr);

    void setMoving(bool moving);
    bool isMoving() const { return timer_.isActive(); }
    double phaseMm() const { return phaseMm_; }

Q_SIGNALS:
    void ticked();

private:
    void tick();

    QTimer timer_;
    QElapsedTimer since_;
    double phaseMm_ = 0;
};

}  // namespace tiepoint::ui
