#include "core/solve/operating_point.h"

#include "core/circuit/compile.h"
#include "core/solve/circuit_solver.h"
#include "core/solve/loops.h"
#include "core/words/words.h"

#include <algorithm>
#include <limits>
#include <map>

namespace tiepoint {

namespace {

constexpr double kUnknown = std::numeric_limits<double>::quiet_NaN();

/// What each trouble means to a person: the id of the words.
std::string_view reasonFor(Trouble trouble) {
    switch (trouble) {
        case Trouble::IdealLoop:
            return "solve.idealLoop";
        case Trouble::Unbalanced:
            return "solve.unbalanced";
        case Trouble::LimitsContend:
            return "solve.limits";
        case Trouble::ManyRests:
            return "solve.manyRests";
        case Trouble::NeverRests:
            return "solve.neverRests";
        case Trouble::NotConverged:
        case Trouble::None:
            break;
    }
    return "solve.notFound";
}

}  // namespace

struct OperatingPoint::Body {
    /// Where the tangents of laws touched, by part and place in the model.
    using Warmth = std::map<std::pair<std::string, int>, std::vector<double>>;

    std::shared_ptr<const Layout> layout;
    CompiledCircuit compiled;  ///< its circuit has moved into the solver
    CircuitSolver solver;
    std::vector<char> present;  ///< by element
    std::vector<int> placeOf;   ///< by element: its place in the solution
    std::vector<int> supplyOf;  ///< by element: index of the supply, or -1
    Solution solution;
    std::vector<char> referredTo;  ///< what was present when the reference was last looked for
    int foundReference = -1;

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
        const CompiledElement& e = compiled.elements[element];
        return {layout->bench->parts[e.part].id, e.spec};
    }

    void setLayout(std::shared_ptr<const Layout> next) {
        const Warmth kept = layout ? warmth() : Warmth{};
        layout = std::move(next);
        compiled = compile(*layout);
        solver = CircuitSolver(std::move(compiled.circuit));
        warm(kept);
        prepareSolution();
    }

    void warm(const Warmth& kept) {
        eachLaw(solver.circuit().laws, [&]<class Law>(const LawBranches<Law>& branches) {
            for (const LawBranch<Law>& b : branches) {
                const auto found = kept.find(nameOf(b.element));
                if (found == kept.end() || found->second.size() != Law::kPorts) continue;
                typename Law::Volts before{};
                std::copy(found->second.begin(), found->second.end(), before.begin());
                const typename Law::Volts resumed = b.law.resumed(before);
                std::copy(resumed.begin(), resumed.end(), touchOf(b).begin());
            }
        });
    }

    void prepareSolution() {
        const int count = static_cast<int>(compiled.elements.size());
        std::vector<int> order(count);
        for (int e = 0; e < count; ++e) order[e] = e;
        const auto place = [&](int e) { return std::pair(compiled.elements[e].part, compiled.elements[e].spec); };
        std::sort(order.begin(), order.end(), [&](int a, int b) { return place(a) < place(b); });
        placeOf.resize(count);
        solution = {};
        auto places = std::make_shared<ElementPlaces>();
        for (int e : order) {
            CompiledElement& element = compiled.elements[e];
            placeOf[e] = static_cast<int>(places->size());
            places->push_back({element.part, element.spec, std::move(element.constants)});
        }
        solution.places = std::move(places);
        solution.elementAmpere.resize(count);
        solution.elementWatt.resize(count);
        solution.elementClosed.resize(count);
        solution.elementLimiting.resize(count);
        supplyOf.assign(count, -1);
        for (std::size_t k = 0; k < solver.circuit().supplies.size(); ++k) {
            supplyOf[solver.circuit().supplies[k].element] = static_cast<int>(k);
        }
        present.resize(count);
        referredTo.clear();
        foundReference = compiled.reference;
        solution.netVoltage.resize(layout->netCount);
        solution.leadInjection.resize(layout->leadCount());
    }

    const Solution& solve(const Inputs& inputs, const State& state) {
        bool driven = false;
        for (std::size_t e = 0; e < compiled.elements.size(); ++e) {
            const Part& part = layout->bench->parts[compiled.elements[e].part];
            present[e] = isPresent(part, part.kind->model[compiled.elements[e].spec], inputs);
            if (present[e] && supplyOf[e] >= 0) driven = true;
        }
        solution.reason.clear();
        solution.troubleParts.clear();
        solution.iterations = 0;
        solution.kirchhoffWorst = solution.powerBalance = 0;
        if (!driven && !hasStored(state)) {
            fillWith(Status::Off, 0);
            return solution;
        }
        const CircuitSolution& found = solver.solve(present, reference());
        if (found.solved())
            copy(found);
        else
            explain(found);
        return solution;
    }

    /// Whether some part of the bench has energy that can drive current.
    bool hasStored(const State& state) const {
        return std::ranges::any_of(state.values, [this](const auto& each) {
            const auto& [key, value] = each;
            return holdsEnergy(key.what) && value != 0 && layout->bench->partIndex(key.part) >= 0;
        });
    }

    /// Where 0 V is; looked for anew only where contacts or supplies stand otherwise than at the last question.
    int reference() {
        if (present != referredTo) {
            foundReference = findReference();
            referredTo = present;
        }
        return foundReference;
    }

    /// The minus of the first supply that is on and, with the contacts as they stand, in a loop with another element: what it drives is
    /// what people look at. Without one, that of the first supply plugged in.
    int findReference() const {
        const std::vector<int>& supplies = compiled.suppliesPluggedIn;
        if (supplies.size() < 2) return compiled.reference;
        const std::vector<int> blocks = loopBlocks(solver.circuit(), present);
        const auto drives = [&](int element) { return present[element] && blocks[element] >= 0; };
        const auto first = std::find_if(supplies.begin(), supplies.end(), drives);
        return first == supplies.end() ? compiled.reference : solver.circuit().nodesOf(*first).back();
    }

    void fillWith(Status status, double current) {
        solution.status = status;
        std::fill(solution.netVoltage.begin(), solution.netVoltage.end(), kUnknown);
        std::fill(solution.leadInjection.begin(), solution.leadInjection.end(), current);
        for (std::size_t e = 0; e < present.size(); ++e) {
            const int place = placeOf[e];
            solution.elementClosed[place] = present[e];
            solution.elementLimiting[place] = 0;
            solution.elementAmpere[place] = solution.elementWatt[place] = current;
        }
    }

    void copy(const CircuitSolution& found) {
        fillWith(Status::Solved, 0);
        for (std::size_t net = 0; net < solution.netVoltage.size(); ++net) {
            const int node = compiled.nodeOfNet[net];
            if (node >= 0 && !found.floating[node]) solution.netVoltage[net] = found.nodeVolt[node];
        }
        for (std::size_t e = 0; e < present.size(); ++e) {
            const int place = placeOf[e];
            const double ampere = found.elementAmpere[e];
            solution.elementAmpere[place] = ampere;
            solution.elementWatt[place] = found.elementWatt[e];
            solution.elementLimiting[place] = supplyOf[e] >= 0 && found.limiting[supplyOf[e]];
        }
        for (std::size_t t = 0; t < compiled.leadOfTerminal.size(); ++t) {
            const int lead = compiled.leadOfTerminal[t];
            if (lead >= 0) solution.leadInjection[lead] += found.terminalAmpere[t];
        }
        solution.iterations = found.iterations;
        solution.kirchhoffWorst = found.kirchhoffWorst;
        solution.powerBalance = found.powerBalance;
    }

    void explain(const CircuitSolution& found) {
        fillWith(Status::None, kUnknown);
        for (int e : found.troubleElements) solution.troubleParts.push_back(compiled.elements[e].part);
        std::sort(solution.troubleParts.begin(), solution.troubleParts.end());
        const auto end = std::unique(solution.troubleParts.begin(), solution.troubleParts.end());
        solution.troubleParts.erase(end, solution.troubleParts.end());
        std::vector<std::string> ids;
        for (int part : solution.troubleParts) ids.push_back(layout->bench->parts[part].id);
        solution.reason = say(reasonFor(found.trouble), {{"parts", sayList(ids, "list.comma")}});
    }
};

OperatingPoint::OperatingPoint() : body_(std::make_unique<Body>()) {}
OperatingPoint::~OperatingPoint() = default;
OperatingPoint::OperatingPoint(OperatingPoint&&) noexcept = default;
OperatingPoint& OperatingPoint::operator=(OperatingPoint&&) noexcept = default;

void OperatingPoint::setLayout(std::shared_ptr<const Layout> layout) { body_->setLayout(std::move(layout)); }
const Solution& OperatingPoint::solve(const Inputs& inputs, const State& state) { return body_->solve(inputs, state); }

}  // namespace tiepoint
