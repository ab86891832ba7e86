#pragma once
// Parts that a step brings glide into their holes: for less than half a second the table as it was lies over the view, and what is new comes
// down onto it; what was elsewhere comes from there. The document stands at the step from the first frame on. Window's thread only.

#include "ui/view/bench_view.h"

#include <QElapsedTimer>
#include <QPixmap>
#include <QTimer>
#include <QWidget>

#include <functional>
#include <memory>
#include <vector>

namespace tiepoint::ui {

class Glide : public QWidget {
    Q_OBJECT
public:
    explicit Glide(BenchView& view, QWidget* parent);

    /// Keeps what the view shows now.
    void keepBefore();
    /// Glides to what it shows since; not at all where nothing moved or came.
    void begin();
    bool isGliding() const { return ticking_.isActive(); }
    int thingCount() const { return static_cast<int>(things_.size()); }

protected:
    void paintEvent(QPaintEvent* event) override;

private:
    struct Thing {
        QPixmap picture;
        QPointF to;    ///< top left, where it comes to lie
        QPointF away;  ///< from where it comes
    };
    void end();
    void addThing(const QRectF& mm, const std::function<void(QPainter&)>& paint, QPointF awayMm);

    BenchView& view_;
    QPixmap before_;
    std::shared_ptr<const Bench> beforeBench_;
    QTransform beforeSight_;
    std::vector<Thing> things_;
    QTimer ticking_;
    QElapsedTimer since_;
};

}  // namespace tiepoint::ui
