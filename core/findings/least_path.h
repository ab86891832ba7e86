#pragma once
// Paths of least resistance through what conducts like metal: strips, jumpers, joined leads, closed contacts, tiny resistances.

#include "core/snapshot/snapshot.h"

#include <limits>
#include <map>
#include <optional>
#include <string>
#include <utility>
#include <vector>

namespace tiepoint {

/// Under this a path counts as a short circuit. The contacts and wires of a solderless board add up to a few tenths of an ohm,
/// the smallest load that anyone means to drive from one is a few ohms (common practice).
inline constexpr double kNearZeroOhm = 1.0;

struct ConductingPath {
    double ohm = 0;  ///< of the parts on the path; metal of the nets counts 0, as in the solve
    double burdenOhm =
        0;  ///< of that, what ammeters add: they are made to stand in for a wire, so it doesn't make a load
    std::vector<std::string> parts;  ///< ids of the parts and jumpers that it runs through, in order
    std::vector<Hole> holes;         ///< occupied holes on the path, in order
};

/// What conducts like metal on one snapshot, made once and searched for each pair of ends. Keeps a reference to the snapshot's
/// layout; not thread-safe.
class NearZeroPaths {
public:
    explicit NearZeroPaths(const Snapshot& snapshot);

    /// The path of least resistance between the metal at two joints, if its resistance is at most kNearZeroOhm.
    std::optional<ConductingPath> between(int fromJoint, int toJoint);

private:
    struct Edge {
        int to = -1;
        double weightOhm = 0;  ///< of the search: metal too, so that of two metal paths the better one is shown
        double partOhm = 0;    ///< of a part; what isn't burden counts against kNearZeroOhm
        int part = -1;         ///< index of the part that it runs through
        int jumper = -1;
        bool burden = false;  ///< it is that of an ammeter
    };
    struct Step {
        double weightOhm = std::numeric_limits<double>::infinity();
        int from = -1;
        const Edge* by = nullptr;
    };

    void join(int a, int b, Edge edge);
    void addPiece(const Piece& piece);
    void addElement(const ElementState& element);
    int nodeOf(int part, const std::string& name);
    void search(int start, int goal);
    ConductingPath walk(int from) const;

    const Layout& layout_;
    std::vector<std::vector<Edge>> edges_;              ///< by node: the layout's joints, then inner nodes of parts
    std::map<std::pair<int, std::string>, int> inner_;  ///< nodes inside parts
    std::vector<Step> steps_;                           ///< by node, of the last search
    std::vector<int> touched_;                          ///< nodes whose step is set
};

}  // namespace tiepoint
