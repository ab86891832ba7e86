#pragma once
// Where ids and readings stand: a small search over places beside a thing, that avoids bodies, wires, taken
// holes and other labels. Depends on the bench and the snapshot only, never on the pointer.

#include "ui/paint/lettering.h"
#include "ui/paint/picture.h"

#include <QRectF>

#include <memory>
#include <vector>

namespace tiepoint::ui {

struct Label {
    QRectF frame;
    QString text;
    bool dim = false;  ///< of a jumper
};

/// A place for a label, and how much it is disliked for itself.
struct Candidate {
    QPointF centre;
    double dislike = 0;
};

/// What labels keep clear of. Copies are cheap; one with bodies and wires alone serves as long as its bench.
class Clearance {
public:
    explicit Clearance(const Picture& picture);
    void take(const QRectF& frame) { labels_.push_back(frame); }
    /// How much a frame would hide; 0 for a free place.
    double cost(const QRectF& frame) const;

private:
    /// Points along wires, leads and strips in use, counted in cells so that a frame is one look-up of four
    /// corners.
    class PointCount {
    public:
        PointCount() = default;
        PointCount(const QRectF& area, const std::vector<QPointF>& points);
        double within(const QRectF& frame) const;

    private:
        double upTo(double x, double y) const;
        QPointF corner_;
        int columns_ = 0, rows_ = 0;
        std::vector<int> sums_;
    };

    struct Body {
        QRectF frame;
        double cost;  ///< of hiding it, for each mm²: a light is what everyone looks at
    };
    std::vector<Body> bodies_;
    std::vector<QRectF> labels_;
    QRectF stage_;                              ///< labels stay inside while projecting; null: anywhere
    std::shared_ptr<const PointCount> points_;  ///< shared by copies: they differ in labels only
};

inline Lettering idLettering(const Picture& picture, bool dim) {
    return {picture.sizes.idMm, dim ? QFont::Normal : QFont::DemiBold};
}
inline Lettering readingLettering(const Picture& picture) { return {picture.sizes.readingMm, QFont::DemiBold}; }

/// The least costly of several places, which the clearance then knows as taken.
Label settle(const std::vector<Candidate>& candidates, const QString& text, QSizeF size, Clearance& clearance);
/// Above, below, left and right of a body, those across its leads first.
std::vector<Candidate> aroundBody(const Picture& picture, int part, QSizeF size);

/// Beside a part, above it first; in or beside the strips of a net (an empty frame where it has none).
Label placeBesidePart(const Picture& picture, int part, const QString& text, QSizeF size, Clearance& clearance);
Label placeInNet(const Picture& picture, int net, const QString& text, QSizeF size, Clearance& clearance);

/// Tags of pinned readings are taken places, and so is what they point at.
void takePinned(const Picture& picture, Clearance& clearance);
void takePinnedEnds(const Picture& picture, Clearance& clearance);

std::vector<Label> placeIds(const Picture& picture, Clearance& clearance);
/// One for each net of interest. `clearance` already knows the ids.
std::vector<Label> placeReadings(const Picture& picture, Clearance& clearance);

}  // namespace tiepoint::ui
