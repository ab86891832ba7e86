#pragma once
// What paint engines of our own share: every shape that a painter draws comes as one path, and the state that it is drawn with is at hand.
// Use from the thread that paints.

#include <QPaintEngine>
#include <QPainterPath>
#include <QPen>
#include <QTransform>

#include <vector>

namespace tiepoint::ui {

class PathEngine : public QPaintEngine {
public:
    PathEngine() : QPaintEngine(AllFeatures) {}

    Type type() const override { return User; }
    /// Engines that keep more of the state call this one first.
    void updateState(const QPaintEngineState& now) override;

    void drawPath(const QPainterPath& path) final { draw(path, true); }
    void drawPolygon(const QPointF* points, int count, PolygonDrawMode mode) final;
    void drawLines(const QLineF* lines, int count) final;
    void drawRects(const QRectF* rects, int count) final;
    void drawEllipse(const QRectF& rect) final;
    using QPaintEngine::drawEllipse;
    using QPaintEngine::drawLines;
    using QPaintEngine::drawPolygon;
    using QPaintEngine::drawRects;

protected:
    /// A shape in the painter's own units. It is stroked with the pen, over the brush that fills it unless it is but a line.
    virtual void draw(const QPainterPath& path, bool isFilled) = 0;

    const QTransform& toDevice() const { return toDevice_; }
    double deviceUnitsPerUnit() const { return scale_; }  ///< lengths scale alike in both directions
    const QPen& pen() const { return pen_; }
    const QBrush& brush() const { return brush_; }
    double opacity() const { return opacity_; }

    /// Follows the clip, for engines that ask for it; call it from updateState.
    void updateClip(const QPaintEngineState& now);
    /// The paths in device units that what is drawn must lie in, all of them; empty: it may lie anywhere.
    const std::vector<QPainterPath>& clip() const;

private:
    QTransform toDevice_;
    double scale_ = 1, opacity_ = 1;
    QPen pen_;
    QBrush brush_;
    std::vector<QPainterPath> clip_;
    bool isClipping_ = false;
};

/// A brush of the painter's units in those of the device.
QBrush mappedBrush(QBrush brush, const QTransform& toDevice);

}  // namespace tiepoint::ui
