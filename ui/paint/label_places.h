#pragma once
// Where ids and readings of parts stand: a small search over places beside a thing, that avoids bodies, wires, taken
// holes and other labels. Volts of nets stand outside of the boards, see tag_keeper.h. Depends on the bench and the snapshot only, never on the pointer.

#include "ui/paint/lettering.h"
#include "ui/paint/picture.h"
#include "ui/paint/shared_value.h"
#include "ui/paint/word_ground.h"

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
    explicit Clearance(std::shared_ptr<const WordGround> ground);
    explicit Clearance(const Picture& picture) : Clearance(wordGround(picture)) {}
    const WordGround& ground() const { return *ground_; }
    void take(const QRectF& frame) { labels_.push_back(frame); }
    /// How much a frame would hide; 0 for a free place.
    double cost(const QRectF& frame) const;
    /// What it would hide of bodies and other labels alone, mm².
    double hiddenMm2(const QRectF& frame) const;

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
        double cost = 0;  ///< of hiding it, for each mm²: a light is what everyone looks at
    };
    /// What copies share: they differ in labels only.
    struct Taken {
        std::vector<Body> bodies;
        PointCount points;
    };
    static std::shared_ptr<const Taken> takenOf(const WordGround& ground);

    std::shared_ptr<const WordGround> ground_;
    std::shared_ptr<const Taken> taken_;
    std::vector<QRectF> labels_;
};

inline Lettering idLettering(const WordSizes& sizes, bool dim) {
    return {sizes.idMm, dim ? QFont::Normal : QFont::DemiBold};
}
inline Lettering readingLettering(const WordSizes& sizes) { return {sizes.readingMm, QFont::DemiBold}; }

/// The least costly of several places, which the clearance then knows as taken.
Label settle(const std::vector<Candidate>& candidates, const QString& text, QSizeF size, Clearance& clearance);
/// Above, below, left and right of a body, those across its leads first.
std::vector<Candidate> aroundBody(const WordGround& ground, int part, QSizeF size);

/// Beside a part, above it first.
Label placeBesidePart(int part, const QString& text, QSizeF size, Clearance& clearance);

/// Tags of pinned readings are taken places, and so is what they point at.
using PinnedTags = std::vector<PinnedTag>;
void takePinned(const PinnedTags& pinned, Clearance& clearance);
void takePinnedEnds(const PinnedTags& pinned, Clearance& clearance);
inline void takePinned(const Picture& picture, Clearance& clearance) {
    if (picture.pinned) takePinned(*picture.pinned, clearance);
}
inline void takePinnedEnds(const Picture& picture, Clearance& clearance) {
    if (picture.pinned) takePinnedEnds(*picture.pinned, clearance);
}

/// What stands at a part or a jumper.
struct IdWords {
    bool jumper = false;
    int index = 0;
    QString text;
    /// Without what stands beside the id.
    QString id() const { return text.section(QStringLiteral("  "), 0, 0); }
    friend bool operator==(const IdWords&, const IdWords&) = default;
};
/// The reading of a meter that a room couldn't read on its own display.
struct ReadingWords {
    QString text;
    int part = -1;
    friend bool operator==(const ReadingWords&, const ReadingWords&) = default;
};
std::vector<IdWords> idWords(const Picture& picture);
std::vector<ReadingWords> meterWords(const Picture& picture);
/// A jumper's is left out where any place would hide something. Where words are larger than usual, as for a room, those that crowd each other
/// give way: first the values beside the ids, then the ids.
std::vector<Label> placeIds(const std::vector<IdWords>& words, Clearance& clearance);
/// `clearance` already knows the ids.
std::vector<Label> placeReadings(const std::vector<ReadingWords>& words, Clearance& clearance);

inline std::vector<Label> placeIds(const Picture& picture, Clearance& clearance) {
    return placeIds(idWords(picture), clearance);
}
inline std::vector<Label> placeReadings(const Picture& picture, Clearance& clearance) {
    return placeReadings(meterWords(picture), clearance);
}

}  // namespace tiepoint::ui
