#pragma once
// An examination: one bench, solved in every position that hands can bring its switches into, and small questions that rules share.
//
// Of a bench that moves, positions show what lasts (core/time/settle.h), and passing instants how far figures go besides.
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

/// How the switches stand, or an instant that passes on the way there.
struct Position {
    std::string
        words;  ///< "while S2 is pressed"; empty for the position asked about. Of an instant, "20 µs after S2 is pressed"
    std::shared_ptr<const Snapshot> snapshot;
    bool passes = false;
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
    /// The positions, and after them the instants that show what is at its most only for a moment or by turns.
    const std::vector<Position>& allInstants() const { return instants_.empty() ? positions_ : instants_; }
    /// Whether the bench was followed in all positions until it was known what lasts: otherwise nothing is never.
    bool decided() const { return decided_; }
    /// Whether every combination of switches that feel each other was solved.
    bool complete() const { return complete_; }

    int partCount() const { return static_cast<int>(bench().parts.size()); }
    const Part& part(int index) const { return bench().parts[index]; }
    /// The largest current through a part in any position, be it only for a moment; 0 where nothing is solved.
    double mostAmpere(int part) const;
    Figure mostCurrent(int part) const;  ///< the same as the position shows it
    /// Whether a light can be seen in any position, be it only for a moment.
    bool isEverLit(int part) const;
    /// The position in which a light is seen for a moment and no longer, and after how many seconds; nothing if it is lit in any or can't
    /// be said to stay dark.
    std::optional<std::string> momentOfLight(int part) const;
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
    struct Way {
        std::string change;  ///< "S2 is pressed"; empty: power-up
        std::shared_ptr<const Snapshot> end;
    };
    void addInstants(const Way& way);

    ResistorDrawer drawer_;
    std::vector<Position> positions_, instants_;  ///< instants: none of a bench at rest
    std::vector<Way> ways_;                       ///< that a bench that moves was followed
    std::vector<int> darkLights_;
    Occupancy around_;
    std::vector<Clash> clashes_;
    std::vector<char> supplyNet_;  ///< by net
    bool complete_ = true, decided_ = true;
};

/// The holes that a part's leads are in.
std::vector<Hole> holesOf(const Part& part);

}  // namespace tiepoint
