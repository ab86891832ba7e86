#include "core/solve/operating_point.h"

#include "core/solve/bench_circuit.h"

#include <algorithm>
#include <map>

namespace tiepoint {

struct OperatingPoint::Body {
    /// Where the tangents of laws touched, by part and place in the model.
    using Warmth = std::map<std::pair<std::string, int>, std::vector<double>>;

    BenchCircuit bench;
    CircuitSolver solver;
    bool hasLayout = false;

    Warmth warmth() {
        Warmth kept;
        eachLaw(solver.circuit().laws, [&](const auto& branches) {
            for (const auto& b : branches) {
                const auto touch = touchOf(b);
                kept[nameOf(b.element)].assign(touch.begin(), touch.end());
            }
        });
        return kept;
    }

    template <class Law>
    std::span<double> touchOf(const LawBranch<Law>& branch) {
        return solver.touchVolts().subspan(branch.touch, Law::kPorts);
    }

    Warmth::key_type nameOf(int element) const {
        const CompiledElement& e = bench.elements()[element];
        return {bench.layout().bench->parts[e.part].id, e.spec};
    }

    void setLayout(std::shared_ptr<const Layout> next) {
        const Warmth kept = hasLayout ? warmth() : Warmth{};
        solver = CircuitSolver(bench.setLayout(std::move(next)));
        hasLayout = true;
        warm(kept);
    }

    void warm(const Warmth& kept) {
        eachLaw(solver.circuit().laws, [&]<class Law>(const LawBranches<Law>& branches) {
            if constexpr (Law::kPorts > 0) {
                for (const LawBranch<Law>& b : branches) {
                    const auto found = kept.find(nameOf(b.element));
                    if (found == kept.end() || found->second.size() != Law::kPorts) continue;
                    typename Law::Volts before{};
                    std::copy(found->second.begin(), found->second.end(), before.begin());
                    const typename Law::Volts resumed = b.law.resumed(before);
                    std::copy(resumed.begin(), resumed.end(), touchOf(b).begin());
                }
            }
        });
    }

    const Solution& solve(const Inputs& inputs, const State& state) {
        const bool driven = bench.setInputs(inputs);
        solver.setSurroundings(bench.surroundings());
        bench.clear();
        if (!driven && !bench.hasStored(state))
            bench.writeOff();
        else
            bench.write(solver.solve(bench.present(), bench.reference(solver.circuit())));
        return bench.solution();
    }
};

OperatingPoint::OperatingPoint() : body_(std::make_unique<Body>()) {}
OperatingPoint::~OperatingPoint() = default;
OperatingPoint::OperatingPoint(OperatingPoint&&) noexcept = default;
OperatingPoint& OperatingPoint::operator=(OperatingPoint&&) noexcept = default;

void OperatingPoint::setLayout(std::shared_ptr<const Layout> layout) { body_->setLayout(std::move(layout)); }
const Solution& OperatingPoint::solve(const Inputs& inputs, const State& state) { return body_->solve(inputs, state); }

}  // namespace tiepoint
