#pragma once
// A variant solved from scratch: its own layout, circuit and search. Slow, and right wherever the solver is; what confirms the
// short way, and what is done where that can't go.
// Thread rule: one thread at a time.

#include "core/circuit/compile.h"
#include "core/instant/inputs.h"
#include "core/solve/circuit_solver.h"
#include "core/solve/operating_point.h"
#include "core/variants/variant.h"

namespace tiepoint {

class FullVariant {
public:
    Status solve(const Bench& base, const Variant& variant, const Inputs& inputs);

    double ampere(int part, int spec) const;
    /// Above the minus of the first supply that is plugged in; NaN where floating.
    double volt(int part, int lead) const;

private:
    void dryOut(const Variant& variant);

    std::shared_ptr<const Layout> layout_;
    CompiledCircuit compiled_;
    CircuitSolver solver_;
    CircuitSolution solution_;
    std::vector<char> present_;
    std::vector<int> firstElement_;
    Status status_ = Status::None;
};

}  // namespace tiepoint
