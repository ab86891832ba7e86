#pragma once
// Lays a netlist on boards the way hands do: parts one after another, legs in strips of their own node where there is room, what is left
// is joined by jumpers. Knows strips and the laws of bodies, nothing of what current does.

#include "core/base/disjoint_sets.h"
#include "core/nets/layout.h"
#include "examiner/chance.h"
#include "examiner/netlist.h"

#include <map>
#include <optional>
#include <set>

namespace tiepoint::examiner {

class Placer {
public:
    Placer(Chance& chance, const Netlist& netlist);

    /// The bench; nothing where no place was found for something.
    std::optional<Bench> place();

private:
    /// A way in which a part could lie, and how well it suits.
    struct Candidate {
        Part part;
        double worth = 0;
    };

    void layBoards();
    void giveRails();
    void giveRailsOf(const Board& board, const Source& source, bool top, bool bottom);

    bool placeMember(const Member& member);
    bool placeFlying(const Member& member);
    std::vector<Candidate> candidatesFor(const Member& member);
    std::optional<Candidate> bendingCandidate(const Member& member);
    std::optional<Candidate> rigidCandidate(const Member& member);
    /// How well the part's leads suit the strips under them; nothing where a strip belongs to another node.
    std::optional<double> worthOf(const Member& member, const Part& part) const;
    void settle(const Member& member, Part part);

    Hole anchorFor(int node);
    Hole freshHole();
    int freeIn(int strip) const;
    bool isFree(const Hole& hole) const { return !taken_.contains(layout_->holeIndex(hole)); }
    int stripOf(const Hole& hole) const { return layout_->stripOfHole[layout_->holeIndex(hole)]; }
    void take(const Hole& hole, int node);

    bool joinNodes();
    bool joinNode(int node);
    /// The column strips of a node in use; of those that a part's legs join the roomiest.
    std::vector<int> columnsOf(int node);
    bool joinRail(const std::vector<JumperEnd>& from, int node);
    /// The nearest rail strip of the node with a free hole.
    std::optional<int> railFor(const JumperEnd& end, int node);
    bool joinRails(int node);
    bool layJumper(const std::vector<JumperEnd>& from, const std::vector<JumperEnd>& to, int node);
    std::vector<JumperEnd> freeEnds(int strip);
    bool layIdleJumper();
    int colourFor(int node);

    Chance& chance_;
    const Netlist& netlist_;
    Bench bench_;
    std::shared_ptr<const Layout> layout_;           ///< of the empty boards: holes and strips
    std::vector<int> nodeOfStrip_;                   ///< by strip: the node that it is given to, or -1
    std::vector<std::vector<int>> holesOf_;          ///< by strip
    std::vector<bool> isRailStrip_, used_;           ///< by strip
    DisjointSets metal_{0};                          ///< strips that legs of one piece of metal join
    std::set<int> taken_;                            ///< holes
    std::map<int, std::vector<JumperEnd>> sockets_;  ///< by node
    int placed_ = 0;                                 ///< parts that lie on the boards by now
    int board_ = 0, column_ = 1;                     ///< about where the next fresh strip is looked for
};

}  // namespace tiepoint::examiner
