#pragma once
// The linearised circuit of a solved base, factored once: every curve is its tangent where the base rests. What a variant does to
// it is told by responses: of all voltages and currents to 1 A into a node, or to 1 V in the equation of a stiff branch. A response
// costs one pass through the factors when it is first asked for, and is kept.
//
// Unknowns are voltages of nodes, then currents of stiff branches: supplies, metal edges, and conductors under an ohm, as in
// island.h. Each part that hangs together has one node at 0 V (its ground), the reference first; what hangs together with nothing
// has its own.
// Thread rule: one thread at a time.

#include "core/solve/island.h"
#include "core/variants/curve.h"
#include "core/variants/strip_circuit.h"

#include <initializer_list>
#include <memory>
#include <span>
#include <vector>

namespace tiepoint {

class BaseSystem {
public:
    /// A branch whose current is an unknown: v(from) - v(to) - ohm i = emf, or i = role * limit.
    struct Stiff {
        int from, to, element;  ///< element: -1 of a metal edge
        double emfVolt, ohm, limitAmpere;
        int role;
    };
    struct Soft {
        int from, to, element;
        double siemens;
    };
    /// What answers an excitation of 1.
    struct Response {
        std::vector<double> unknown;  ///< by unknown
        std::vector<double> across;   ///< by curve
    };

    /// touches: by touch of the circuit; roles: by supply. The strips must outlive this.
    BaseSystem(const StripCircuit& strips, std::span<const double> touches, std::span<const signed char> roles,
               int reference);

    bool isGood() const { return good_; }
    int nodeCount() const { return nodeCount_; }
    double volt(int node) const { return rest_[node]; }
    double ampere(int stiff) const { return rest_[nodeCount_ + stiff]; }
    const std::vector<double>& rest() const { return rest_; }
    int componentOf(int node) const { return component_[node]; }
    int componentCount() const { return componentCount_; }
    int reference() const { return reference_; }
    int mainComponent() const { return mainComponent_; }  ///< of the reference; -1 without one

    const std::vector<Stiff>& stiffs() const { return stiffs_; }
    const std::vector<Soft>& softs() const { return softs_; }
    const std::vector<Curve>& curves() const { return curves_; }
    double touch(int curve) const { return touches_[curve]; }
    /// The line that stands for a curve: its tangent, or where that is flat, one less flat through the same point.
    const Curve::Tangent& tangent(int curve) const { return tangents_[curve]; }
    /// What an element is here: its index among the stiff, soft or curves, else -1.
    struct Place {
        int stiff = -1, soft = -1, curve = -1;
    };
    const Place& placeOf(int element) const { return placeOf_[element]; }
    int stiffOfEdge(int edge) const { return firstEdge_ + edge; }
    /// What stands across a curve for 1 A into it, its own line beside.
    double ohmAcross(int curve);
    int degreeOf(int node) const { return degree_[node]; }  ///< ends of branches there

    const Response& ofNode(int node);
    const Response& ofStiff(int stiff);
    /// To 1 A out of a soft branch's or a curve's `from` and into its `to`. Not the difference of two nodes' responses: where both
    /// are held by leaks alone, rounding of those would be larger than what is between them.
    const Response& ofSoft(int soft);
    const Response& ofCurve(int curve);
    /// Lets go of kept responses once they are many. What was given out before is gone.
    void forgetIfMany();
    /// Adds what answers to these currents into nodes to `unknown`; a pass through the factors.
    void addResponse(std::span<const double> intoNode, std::vector<double>& unknown);

private:
    void collectBranches(std::span<const double> touches, std::span<const signed char> roles);
    void findGrounds(int reference);
    void compile();
    void settle();
    void straighten();
    void load();
    struct Excitation {
        int unknown;
        double size;
    };
    const Response& response(std::unique_ptr<Response>& kept, std::initializer_list<Excitation> excitations);

    const StripCircuit& strips_;
    int nodeCount_ = 0, firstEdge_ = 0, componentCount_ = 0, mainComponent_ = -1, reference_ = -1;
    bool good_ = true;
    std::vector<Stiff> stiffs_;
    std::vector<Soft> softs_;
    std::vector<Curve> curves_;
    std::vector<double> touches_;
    std::vector<Curve::Tangent> tangents_;
    std::vector<Place> placeOf_;
    std::vector<int> component_, degree_;
    std::vector<char> grounded_;
    std::vector<int> rowOf_,
        columnOf_;  ///< by unknown: in the program; -1 of grounds
    LinearProgram program_;
    std::vector<LinearProgram::Entry> entries_;
    std::size_t firstCurveEntry_ = 0;
    std::vector<double> entryValues_, factors_, right_;
    std::vector<double> rest_;
    std::vector<double> ohmAcross_;  ///< by curve; negative: not known yet
    std::vector<std::unique_ptr<Response>> ofUnknown_, ofSoft_, ofCurve_;
    std::size_t kept_ = 0;
};

}  // namespace tiepoint
