#pragma once
// The figures of a snapshot as they are shown, everywhere: on cards, tags and displays, in answers and findings, on the command line.
// Potentials are rounded once, each to the nearest step, and what is shown as a voltage is their difference. Currents are rounded
// together (whole_flows.h), so that at every hole, in every part and round every loop they add up exactly as printed; each is within
// one of its last digit. Powers likewise: what supplies give is what the parts take, circuit by circuit. One unit and one step for all
// figures of a quantity. JSON has full precision and nothing of this.
// Immutable once made; safe from any thread.

#include "core/base/figure.h"

#include <memory>
#include <mutex>
#include <vector>

namespace tiepoint {

struct Snapshot;

/// Current that enters a part through its leads, and current that leaves it.
struct ThroughFigures {
    Figure in, out;
    /// The larger of the two; for a part that is solved they are the same.
    const Figure& most() const { return out.steps() > in.steps() ? out : in; }
};

class ShownFigures {
public:
    explicit ShownFigures(const Snapshot& snapshot);

    /// Above the reference; unknown where floating, off or without a solution.
    Figure volt(int net) const { return volts_[net]; }
    Figure leadVolt(int lead) const;
    /// Into the part; of joined leads each leg's own share. Unknown without a solution, as all currents and powers.
    Figure leadCurrent(int lead) const;
    Figure pieceCurrent(int piece) const { return pieces_[piece]; }
    Figure jumperCurrent(int jumper) const;
    /// A part's joined leads count once, so that current which only passes along them doesn't appear.
    ThroughFigures through(int part) const;
    /// What a part, or all parts together (-1), take out of a net and give into it.
    ThroughFigures atNet(int part, int net) const;
    Figure power(int part) const { return powers_[part]; }  ///< positive when it takes energy

    /// The largest of any lead, jumper or piece; 0 A without a solution.
    Figure largestCurrent() const;

    /// A value that isn't one of the above (a share of a current, a sum) on the scale of its quantity.
    Figure ampere(double exact) const { return Figure::nearest(amperes_, exact); }
    Figure watt(double exact) const { return Figure::nearest(watts_, exact); }

private:
    ThroughFigures drawnBy(int firstLead, int endLead, int net) const;
    void roundVolts();
    void roundCurrents();
    void roundPowers();

    const Snapshot& snapshot_;
    FigureScale amperes_, watts_;
    std::vector<Figure> volts_;           ///< by net
    std::vector<Figure> pieces_, drawn_;  ///< by piece; by lead, what its elements draw
    std::vector<Figure> powers_;          ///< by part
};

/// Makes the shown figures of a snapshot at the first question, whichever thread asks it: most snapshots are never shown.
class ShownOnce {
public:
    ShownOnce() = default;
    ShownOnce(const ShownOnce&) {}  // a copy of a snapshot may be changed before it is asked
    ShownOnce& operator=(const ShownOnce&) = delete;

    const ShownFigures& of(const Snapshot& snapshot) const {
        std::call_once(once_, [&] { figures_ = std::make_unique<const ShownFigures>(snapshot); });
        return *figures_;
    }
    /// As if nobody had asked. Only while no other thread has the snapshot.
    void drop() {
        std::destroy_at(this);
        std::construct_at(this);
    }

private:
    mutable std::once_flag once_;
    mutable std::unique_ptr<const ShownFigures> figures_;
};

}  // namespace tiepoint
