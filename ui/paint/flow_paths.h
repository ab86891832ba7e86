#pragma once
// The ways that current can take over a bench, as lines from socket to socket: strips, rails, jumpers, supply
// leads, bodies, contacts. Built once for a revision (and for the knob positions in it); an instant then only
// places marks on them.
//
// Phase: a mark stands wherever the way from the source is a multiple of the spacing, plus how far marks have
// moved. Where one line goes on into the next, the way goes on too, so that arrows run unbroken over joints;
// where lines meet, the one with the largest current leads. Each line moves at its own speed, integrated from
// one call to the next. Belongs to the thread that paints.

#include "ui/paint/arrow_marks.h"
#include "ui/paint/curve.h"
#include "ui/paint/picture.h"

#include <vector>

namespace tiepoint::ui {

class FlowPaths {
public:
    explicit FlowPaths(const Picture& picture);

    /// One line that current may take.
    struct Way {
        Polyline line;
        int from = 0, to = 0;    ///< places where lines join; dense
        int piece = -1;          ///< whose current runs here: of a piece of metal, or
        std::vector<int> leads;  ///< into the part by these leads together
        Layer layer = Layer::OverParts;
        MarkLook look = MarkLook::Cased;
        double lookFromMm = 0, lookToMm = 0;  ///< where `look` holds; cased outside
        bool inner = false;                   ///< metal inside a part, which gets a bed on its body
    };
    const std::vector<Way>& ways() const { return ways_; }
    /// The mean since the snapshot before, of a bench that moves.
    double currentOf(const Way& way, const Snapshot& snapshot) const;

    /// Appends the marks of one layer. `phaseMm`: how far full-scale marks have moved so far; call with the
    /// same value for both layers of a frame. `fullScale` in A.
    void marks(const Snapshot& snapshot, Arrows arrows, double fullScale, double phaseMm, Layer layer,
               std::vector<ArrowMark>& out);

private:
    void addPieces(const Picture& picture);
    void addParts(const Picture& picture);
    void advance(const Snapshot& snapshot, double fullScale, double phaseMm);
    void alignPhases(const Snapshot& snapshot, bool electrons);

    /// Whether a mark over the parts is seen through a turned board.
    bool isBehind(QPointF at) const;

    std::vector<Way> ways_;
    std::vector<QRectF> covers_;  ///< turned boards, which hide what runs on their other side
    int placeCount_ = 0;
    std::vector<signed char> directions_;  ///< of each way when phases were last aligned: -1, 0, 1
    std::vector<double> startMm_;          ///< by way: the way from the source to its upstream end
    std::vector<double> movedMm_;          ///< by way: how far its marks have moved
    double lastPhaseMm_ = 0;
};

}  // namespace tiepoint::ui
