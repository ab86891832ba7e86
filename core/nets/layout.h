#pragma once
// Layout: everything about one revision of a bench that no instant changes. Holes and strips by dense number, the nets found by
// union-find, and the metal that currents run in. Built at each edit, then immutable and shared between threads.
//
// Index spaces (all dense, int):
//   board, part, jumper   order of the lists of the bench
//   hole                  boards in order, inside a board as BoardKind::holeIndex
//   strip                 boards in order, inside a board as BoardKind::stripIndex
//   lead                  parts in order, inside a part as the kind's leads (sockets too)
//   net                   over all strips, hanging leads and sockets: ordered by the smallest member, compact
//   joint                 places where metal meets: occupied holes, sockets, hanging leads, hubs inside parts with joined leads, and the
//                         parted ends of broken jumpers. A lead that doesn't touch its hole's clip (core/bench/condition.h) has a joint
//                         and a net of its own, as one that hangs; its hole has a joint too
//   piece                 the metal between two joints

#include "core/bench/bench.h"

#include <memory>
#include <string>
#include <vector>

namespace tiepoint {

enum class PieceKind : std::uint8_t {
    Strip,   ///< between two neighbouring occupied holes of one strip
    Jumper,  ///< from a jumper's first end to its second; of a broken one, what still hangs on one of them
    Bridge,  ///< inside a part, from a joined lead to the hub of its group
};

struct Piece {
    PieceKind kind;
    int from, to;  ///< joints; current is positive from `from` to `to`
    double ohm;    ///< weight in the flow: metal and contacts
    int owner;     ///< strip, jumper or lead
};

struct Joint {
    int hole = -1;  ///< hole index, or -1 (socket, hanging lead, hub or the parted end of a jumper)
    int lead =
        -1;  ///< the lead in it or the socket; for a hub the group's first lead; -1 where a jumper ends or nothing touches
    bool hub = false;
    int net = -1;
};

struct Layout {
    std::shared_ptr<const Bench> bench;

    std::vector<int> boardFirstHole, boardFirstStrip;  ///< by board, with one entry more at the end
    std::vector<int> stripOfHole;                      ///< by hole
    std::vector<int> firstLead;                        ///< by part, with one entry more at the end
    std::vector<int> holeOfLead;                       ///< by lead: hole, or -1 for sockets and hanging leads
    std::vector<int> jointOfLead;                      ///< by lead: the joint at its tip
    std::vector<int> hubOfLead;                        ///< by lead: the hub of its joined group, or -1
    std::vector<std::array<int, 2>> jumperJoints;      ///< by jumper
    std::vector<int> pieceOfJumper, pieceOfLead;       ///< pieceOfLead: the bridge of a joined lead, or -1
    std::vector<int> jointOfHole;                      ///< by hole: joint, or -1 where nothing is plugged in

    int netCount = 0;
    std::vector<int> netOfStrip;  ///< by strip
    std::vector<int> netOfLead;   ///< by lead
    std::vector<char> netUsed;    ///< by net: something is plugged into it

    std::vector<Joint> joints;
    std::vector<Piece> pieces;

    int holeCount() const { return static_cast<int>(stripOfHole.size()); }
    int leadCount() const { return static_cast<int>(holeOfLead.size()); }
    /// Dense number of a hole, or -1 if the bench has no such hole.
    int holeIndex(const Hole& hole) const;
    /// The address of a dense hole number.
    Hole holeAt(int index) const;
    int netOfHole(int hole) const { return netOfStrip[stripOfHole[hole]]; }
    int leadIndex(int part, int lead) const { return firstLead[part] + lead; }
    /// The joint at which the elements of a lead draw current: the hub of its joined group, or its tip.
    int drawJointOf(int lead) const { return hubOfLead[lead] >= 0 ? hubOfLead[lead] : jointOfLead[lead]; }
    /// The part to which a lead belongs.
    int partOfLead(int lead) const;
};

/// Builds the layout of a valid bench.
std::shared_ptr<const Layout> buildLayout(std::shared_ptr<const Bench> bench);

}  // namespace tiepoint
