#pragma once
// One variant as ports of a base, and their solution (see variant_solver.h). Kept from variant to variant for its storage only.
// Thread rule: one thread at a time.

#include "core/variants/ports.h"
#include "core/variants/variant.h"

#include <vector>

namespace tiepoint {

class Reduction {
public:
    Reduction(const StripCircuit& strips, BaseSystem& base);

    /// False where it can't go this way, or found no answer that can be relied on.
    bool solve(const Variant& variant);

    bool anySupplyOn() const { return suppliesOn_ > 0; }
    double ampere(int part, int spec) const;
    double volt(int part, int lead) const;

private:
    /// An element of a part that the variant touches, in own_.
    struct OwnElement {
        int part, spec, element;  ///< element: -1 where it isn't there
    };
    /// A branch or edge of the base that goes.
    struct Gone {
        int from, to;  ///< nodes
        BaseSystem::Place place;
    };
    using MetalPair = std::pair<int, int>;

    // from the variant to what goes and comes
    void map(const Variant& variant);
    void takePartOut(int part);
    void takeJointsOut(int part);
    void putPartIn(const Variant& variant, int part, const Part& as);
    bool keepsJoints(int part, const Part& as) const;
    int metalOf(int part, int lead, const Part& as);
    int metalOf(const Variant& variant, const JumperEnd& end);
    int newMetal();
    MetalPoint pointOf(int metal);
    // to ports
    void findJoins();
    bool addPorts();
    bool addOwnBranches();
    void keepHanging();
    void addGone(const Gone& gone);
    int comingTo(int node) const;
    // and to their answer
    bool settle();
    bool settleCurves();
    double largestAmpere() const;
    bool addNear();
    bool addDarkNear();
    void soften();
    bool changeOneLimit(bool& changed);
    int portOf(int ownElement) const;
    bool isTied(const MetalPoint& point) const;
    void countTied() const;

    const StripCircuit& strips_;
    BaseSystem& base_;
    PortSystem ports_;
    std::vector<int> edgeOfJumper_,
        chordOfJumper_;  ///< by jumper: -1 or its place in the tree or among the
                         ///< chords
    std::vector<std::vector<int>> edgesOfPart_, chordsOfPart_;
    struct Neighbour {
        int node, curve;  ///< curve: -1 of any other branch
    };
    std::vector<std::vector<Neighbour>> neighbours_;  ///< by node of the base
    std::vector<double> restAcross_;                  ///< by curve, at the base's rest

    const Variant* variant_ = nullptr;
    Circuit own_;
    std::vector<int> metalOfOwnNode_;
    std::vector<OwnElement> ownElements_;
    std::vector<Gone> gone_, allGone_;  ///< the second with those that stay since
                                        ///< nothing else holds a node
    mutable std::vector<char> tied_;    ///< by node, then by part; empty: not counted
    std::vector<int> cuts_;             ///< edges of the tree that go
    std::vector<char> isTouched_, chordGone_;
    std::vector<int> touched_;               ///< parts
    std::vector<MetalPair> coming_, joins_;  ///< metal
    std::vector<int> fresh_;                 ///< metal that the base doesn't have
    std::vector<Curve> ownCurves_;
    int nextMetal_ = 0, suppliesOn_ = 0;

    std::vector<char> isOut_;  ///< by curve: gone, or a port
    std::vector<int> outCurves_, nearPort_;
    std::vector<double> across_, zeroAcross_, soft_, defect_, rest_, intoNode_;
    std::vector<int> far_;
    bool isSoft_ = false;
};

}  // namespace tiepoint
