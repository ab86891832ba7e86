#pragma once
// What tags with leaders find on a bench: the bands outside of its boards, what stands in their way, and for each net the holes on which a
// leader of its own may end. Depends on the bench on its table and on the sizes of words; not on what flows.

#include "ui/paint/lettering.h"
#include "ui/paint/tag_places.h"
#include "ui/paint/word_ground.h"

#include <memory>
#include <vector>

namespace tiepoint::ui {

// Of a tag, in ems of its words.
inline constexpr double kTagHeightEm = 2.95 / 2.1, kTagPadEm = 0.36, kTagAwayEm = 0.45;
inline constexpr double kCasingOfLeader = 7 / 2.4;
/// Of the ring in which a leader ends.
inline constexpr double kTagRingMm = 1.0;

struct TagGround {
    std::shared_ptr<const WordGround> words;
    TagRoom room;
    std::vector<std::vector<TagFoot>> feet;  ///< by net; none where its volts are worth no tag
};

std::shared_ptr<const TagGround> tagGround(const Picture& picture);

/// From the boards to the outer edge of a band, for words of that em.
inline double tagBandMm(double emMm) { return (kTagAwayEm + kTagHeightEm + kTagAwayEm / 2) * emMm; }

/// The metal of one net or another that is in sight over the boards: a ring on it would name it.
class SeenMetal {
public:
    explicit SeenMetal(const Picture& picture);
    /// Whether a ring there touches metal of another net.
    bool isForeignAt(Point ring, int net) const;
    /// Whether metal of the net's own passes there.
    bool isOwnAt(Point ring, int net) const;

private:
    struct Piece {
        Point at;
        double reach = 0;  ///< from its middle to that of a ring which touches it
        int net = -1;
    };
    template <class Suits>
    bool any(Point ring, Suits suits) const;
    void add(const std::vector<Point>& line, double reach, int net);

    Rect area_;
    std::size_t cellAt(int column, int row) const {
        return static_cast<std::size_t>(row) * static_cast<std::size_t>(columns_) + static_cast<std::size_t>(column);
    }
    int columns_ = 0, rows_ = 0;
    std::vector<std::vector<Piece>> cells_;
};

}  // namespace tiepoint::ui
