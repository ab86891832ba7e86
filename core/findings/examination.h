#pragma once
// An examination: one bench, solved in every position that hands can bring its switches into, and small questions that rules share.
//
// The first position is the one that was asked about. Switches that feel each other are solved in every combination; with many of them,
// those that are one throw away and the one with every throw changed, so that the cost stays bounded.
// Immutable once made; safe from any thread. Keeps a reference to the snapshot it was made from.

#include "core/edit/clashes.h"
#include "core/edit/edit.h"
#include "core/parts/drawer.h"
#include "core/snapshot/lit.h"
#include "core/snapshot/snapshot.h"
#include "core/snapshot/throws.h"

#include <memory>
#include <optional>
#include <string>
#include <vector>

namespace tiepoint {

/// How the switches stand.
struct Position {
    std::string words;  ///< "while S2 is pressed"; empty for the position asked about
    std::shared_ptr<const Snapshot> snapshot;
};

class Examination {
public:
    explicit Examination(const Snapshot& now, ResistorDrawer drawer = {});

    const Snapshot& now() const { return *positions_.front().snapshot; }
    const Layout& layout() const { return *now().layout; }
    const Bench& bench() const { return *layout().bench; }
    /// The resistors that mends may take.
    const ResistorDrawer& drawer() const { return drawer_; }
    const std::vector<Position>& positions() const { return positions_; }
    /// Whether every combination of switches that feel each other was solved.
    bool complete() const { return complete_; }

    int partCount() const { return static_cast<int>(bench().parts.size()); }
    const Part& part(int index) const { return bench().parts[index]; }
    /// The largest current through a part in any position; 0 where nothing is solved.
    double mostAmpere(int part) const;
    Figure mostCurrent(int part) const;  ///< the same as the position shows it
    /// Whether a light can be seen in any position.
    bool isEverLit(int part) const;
    /// Lights that stay dark in every position although a supply is on.
    const std::vector<int>& darkLights() const { return darkLights_; }
    /// The dark lights that hang together with a part, without going through a supply; ids.
    std::vector<std::string> darkLightsNear(int part) const;
    /// Whether a net holds a lead of a part other than this one, meters that only look on left out.
    bool meetsOthers(int net, int part) const;
    /// By net: whether it hangs together with the part through other parts that pass current, not counting the nets of supplies.
    std::vector<char> netsNear(int part) const;

    /// Everything on the boards, for asking what is free.
    const Occupancy& around() const { return around_; }
    /// What can't be on the boards together: of each two things the plainest.
    const std::vector<Clash>& clashes() const { return clashes_; }
    /// The bench after an edit, if hands can do it: valid, and every moved lead and body in a place that is free.
    std::shared_ptr<const Bench> after(const Edit& edit) const;

private:
    ResistorDrawer drawer_;
    std::vector<Position> positions_;
    std::vector<int> darkLights_;
    Occupancy around_;
    std::vector<Clash> clashes_;
    std::vector<char> supplyNet_;  ///< by net
    bool complete_ = true;
};

/// The holes that a part's leads are in.
std::vector<Hole> holesOf(const Part& part);

}  // namespace tiepoint
