#include "core/variants/variant_solver.h"

#include "core/variants/reduction.h"

#include <limits>

namespace tiepoint {

struct VariantSolver::Body {
    StripCircuit strips;
    std::unique_ptr<BaseSystem> base;
    std::unique_ptr<Reduction> reduction;  ///< null: nothing of this base can be reduced
    FullVariant full;
    Status status = Status::None;
    bool reduced = false;

    Body(std::shared_ptr<const Layout> layout, const Inputs& inputs) : strips(layout, inputs) {
        CompiledCircuit nets = compile(*layout);
        CircuitSolver solver(std::move(nets.circuit));
        if (!solver.solve(strips.present(), nets.reference).solved()) return;
        base =
            std::make_unique<BaseSystem>(strips, settledTouches(solver), rolesOf(solver), referenceNode(nets, solver));
        if (base->isGood()) reduction = std::make_unique<Reduction>(strips, *base);
    }

    /// Where the tangents touch; what carries nothing at all lies at 0 V.
    std::vector<double> settledTouches(CircuitSolver& solver) const {
        std::vector<double> touches(solver.touchVolts().begin(), solver.touchVolts().end());
        eachLaw(solver.circuit().laws, [&]<class Law>(const LawBranches<Law>& branches) {
            for (const LawBranch<Law>& b : branches) {
                if (strips.present()[b.element] && solver.solution().elementAmpere[b.element] != 0) continue;
                for (int port = 0; port < Law::kPorts; ++port) touches[b.touch + port] = 0;
            }
        });
        return touches;
    }

    static std::vector<signed char> rolesOf(const CircuitSolver& solver) {
        std::vector<signed char> roles;
        for (std::size_t k = 0; k < solver.circuit().supplies.size(); ++k) {
            const double ampere = solver.solution().elementAmpere[solver.circuit().supplies[k].element];
            roles.push_back(static_cast<signed char>(!solver.solution().limiting[k] ? 0 : ampere < 0 ? -1 : 1));
        }
        return roles;
    }

    /// The strips' node for the nets' reference: the minus of the same supply.
    int referenceNode(const CompiledCircuit& nets, const CircuitSolver& solver) const {
        for (const SupplyBranch& s : solver.circuit().supplies)
            if (s.to == nets.reference) return strips.circuit().nodesOf(s.element).back();
        return -1;
    }
};

VariantSolver::VariantSolver(std::shared_ptr<const Layout> base, const Inputs& inputs)
    : body_(std::make_unique<Body>(std::move(base), inputs)) {}
VariantSolver::~VariantSolver() = default;
VariantSolver::VariantSolver(VariantSolver&&) noexcept = default;
VariantSolver& VariantSolver::operator=(VariantSolver&&) noexcept = default;

Status VariantSolver::solve(const Variant& variant) {
    if (!body_->reduction || !body_->reduction->solve(variant)) return solveInFull(variant);
    body_->reduced = true;
    return body_->status = body_->reduction->anySupplyOn() ? Status::Solved : Status::Off;
}

Status VariantSolver::solveInFull(const Variant& variant) {
    body_->reduced = false;
    return body_->status = body_->full.solve(*body_->strips.layout().bench, variant, body_->strips.inputs());
}

double VariantSolver::ampere(int part, int spec) const {
    if (!body_->reduced) return body_->full.ampere(part, spec);
    return body_->status == Status::Off ? 0 : body_->reduction->ampere(part, spec);
}

double VariantSolver::volt(int part, int lead) const {
    if (!body_->reduced) return body_->full.volt(part, lead);
    return body_->status == Status::Off ? std::numeric_limits<double>::quiet_NaN() : body_->reduction->volt(part, lead);
}

bool VariantSolver::wasReduced() const { return body_->reduced; }

}  // namespace tiepoint
