#pragma once
// What can't be on the boards together: two bodies in one place, a leg or a wire through a body, a hole that is covered while something
// is in it, a wire with no way round, and bare metal that touches other metal. By hand it is refused, in a file it is a finding.
//
// The laws stand in core/bench/bodies.h. Pure; safe from any thread.

#include "core/bench/bodies.h"
#include "core/nets/layout.h"

#include <memory>
#include <optional>
#include <string>
#include <vector>

namespace tiepoint {

enum class ClashKind {
    Bodies,       ///< the body of one over that of the other
    Covered,      ///< one is in a hole that the other's body covers
    LegThrough,   ///< a leg of one runs through the other's body
    FlatThrough,  ///< one is a jumper that lies flat and runs through the other's body
    FlatOnPin,    ///< one is a jumper that lies flat over a hole that the other is in
    NoWay,        ///< one is a wire that finds no way round the other
    LegsTouch,    ///< bare legs of other metal
    LegOnPin,     ///< a bare leg of the other touches what one has in a hole, which is another piece of metal
};

struct Clash {
    ClashKind kind;
    std::string one, other;            ///< ids
    int oneLead = -1, otherLead = -1;  ///< of a part its lead, of a jumper its end, where it is about one
    std::optional<Hole> hole;          ///< where
    friend bool operator==(const Clash&, const Clash&) = default;
};

/// Of each two things the first clash in the list.
std::vector<Clash> firstOfEachPair(std::vector<Clash> clashes);

/// Everything on the boards of one bench. Keeps a reference to it.
class Occupancy {
public:
    /// `ignoring`: ids that count as taken away. Without a layout one is built when it is first needed; the bench must then be valid.
    explicit Occupancy(const Bench& bench, const std::vector<std::string>& ignoring = {},
                       const Layout* layout = nullptr);

    const Bench& bench() const { return bench_; }
    /// What a part or a jumper of the bench can't be together with, the plainest first.
    std::vector<Clash> clashesOf(const Part& part) const;
    std::vector<Clash> clashesOf(const Jumper& jumper) const;
    /// All of the bench; each once.
    std::vector<Clash> all() const;

    /// Why nothing can go into a hole although nothing is in it: the body, bare leg or flat wire over it. A leg of its own strip may touch.
    std::optional<Clash> over(const Hole& hole) const;

private:
    /// What is in a hole.
    struct Pin {
        int part = -1, jumper = -1;
        int lead = -1;  ///< or the jumper's end
        Hole hole;
        Point at;
    };
    struct Flat {
        int jumper = -1;
        Point first, second;
    };
    /// A wire that rises: an arched jumper, or the lead of something on the table.
    struct Wire {
        int jumper = -1;
        int part = -1, lead = -1;
        Point first, second;
    };
    using Clashes = std::vector<Clash>;

    void addParts(const std::vector<std::string>& ignoring);
    void addJumpers(const std::vector<std::string>& ignoring);
    const std::string& idOf(const Pin& pin) const;
    const std::string& idOf(const Wire& wire) const;
    static bool sameThing(const Pin& a, const Pin& b) { return a.part == b.part && a.jumper == b.jumper; }

    void addBodyClashes(int part, const Body& body, Clashes& found) const;
    void addLegClashes(const Leg& leg, Clashes& found) const;
    void addPinClashes(const Pin& pin, Clashes& found) const;
    void addFlatClashes(const Flat& flat, Clashes& found) const;
    void addWireClashes(const Wire& wire, Clashes& found) const;
    void addWiresPast(const Body& body, Clashes& found) const;
    bool getsThrough(const Wire& wire, const InOrder<Body>& bodies) const;
    std::vector<Body> inWayOf(const Wire& wire) const;

    int netOf(const Pin& pin) const;
    int netOf(const Leg& leg) const;
    const Layout& layout() const;

    const Bench& bench_;
    mutable const Layout* layout_;
    mutable std::shared_ptr<const Layout> ownLayout_;
    Table table_;
    InOrder<Body> bodies_;
    InOrder<Leg> legs_;
    InOrder<Pin> pins_;
    InOrder<Flat> flats_;
    InOrder<Wire> wires_;
};

/// The nearest free hole of the same strip as in core/edit/placement.h, for many questions about one bench: its occupancy is dear.
std::optional<Hole> nearestFreeInStrip(const Occupancy& around, const Hole& hole);
/// Why nothing can go into a hole, as there.
std::optional<std::string> whyNotFree(const Occupancy& around, const Hole& hole);

/// "c9 lies under R1", of what is over a hole.
std::string liesUnder(const Bench& bench, const Clash& clash);
/// A clash as the hand that holds `mover` is told: "c9 lies under R1; b9 is the same metal".
std::string saidToHand(const Bench& bench, const Clash& clash, const std::string& mover);

}  // namespace tiepoint
