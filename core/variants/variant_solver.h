#pragma once
// Solves variants of one bench, a few leads, ends, values or jumpers otherwise each, without laying out, compiling or analysing
// anew.
//
// Method. The base is solved once, with a node for each piece of metal (strip_circuit.h), linearised where it rests and factored
// (base_system.h). A variant is mapped to ports (ports.h): a branch that goes or comes is a drive between two points, a jumper that
// goes opens its edge, one that comes makes two points one, unless metal joins them anyway; strips that the base doesn't use are
// parts of one point. The rest answers by its responses, so that only the ports and the curves among them are iterated. Then every
// other curve is looked at. One whose defect wouldn't shrink by itself becomes a port too; the defects of the others are put into
// the base as currents, one pass through the factors each time, until the currents show nothing of them. Supplies that pass their
// limit, or come back from it, change their equation as ports do. What can't go this way is solved from scratch (full_variant.h):
// circuits whose laws have more than two terminals, feed back or have bits; variants that move most curves far (a short); and those
// whose answer rounding would touch. Tried and rejected: solving a moved lead's island anew (with a supply of 0.01 ohm everything
// on plus is one island); one update of rank one after the other about the base (the tangent of a dark LED changes by decades);
// nodes by net (a jumper that leaves a rail moves all branches of half the rail); dark junctions by their tangent (what hangs on
// them answers with 1e12 V to an ampere); responses of pairs from those of single nodes (their difference is lost in rounding).
// Currents are those of FullVariant to 1e-7 of the largest; voltages to half a millivolt where a current holds them. What the leaks
// of dark junctions alone hold has a voltage that no meter would see, and that isn't promised.
// Thread rule: one thread at a time.

#include "core/variants/full_variant.h"
#include "core/variants/ports.h"

#include <memory>
#include <vector>

namespace tiepoint {

class VariantSolver {
public:
    /// Solves the base with these inputs.
    explicit VariantSolver(std::shared_ptr<const Layout> base, const Inputs& inputs = {});
    ~VariantSolver();
    VariantSolver(VariantSolver&&) noexcept;
    VariantSolver& operator=(VariantSolver&&) noexcept;

    /// What follows is valid until the next solve; the variant must live as long.
    Status solve(const Variant& variant);
    /// The same from scratch: the confirmation where it matters.
    Status solveInFull(const Variant& variant);

    /// Into the first terminal of an element of a part, A; 0 where it isn't there, NaN without a solution.
    double ampere(int part, int spec) const;
    /// Of the metal at a lead, above the node that the base has at 0 V: the minus of the first supply plugged in; NaN where
    /// floating.
    double volt(int part, int lead) const;
    /// Whether the last answer was found by ports.
    bool wasReduced() const;

private:
    struct Body;
    std::unique_ptr<Body> body_;
};

}  // namespace tiepoint
