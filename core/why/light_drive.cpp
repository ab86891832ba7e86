#include "core/why/light_drive.h"

#include "core/circuit/compile.h"
#include "core/circuit/element.h"
#include "core/findings/put_resistor.h"
#include "core/snapshot/solved_loop.h"
#include "core/solve/loops.h"
#include "core/why/remedies.h"

#include <algorithm>
#include <cmath>
#include <set>
#include <string_view>

namespace tiepoint {
namespace {

constexpr int kMostSolves = 100;

double constantOf(const ElementState& element, std::string_view name) {
    const auto found = std::ranges::find(element.constants, name, &std::pair<std::string, double>::first);
    return found == element.constants.end() ? 0 : found->second;
}

/// The bench with every supply switched on, and as it was pressed.
std::shared_ptr<const Snapshot> withSuppliesOn(const Snapshot& snapshot) {
    auto bench = std::make_shared<Bench>(*snapshot.layout->bench);
    for (Part& part : bench->parts) {
        const int on = part.kind->isSupply ? part.kind->stateIndex("on") : -1;
        if (on >= 0) part.state[on] = 1;
    }
    return evaluate(std::move(bench), *snapshot.inputs);
}

/// A position in which a supply drives current through the part, the nearest one; null if none was found.
std::shared_ptr<const Snapshot> drivenPosition(const Snapshot& snapshot, int part) {
    const Wish driven = [part](const Snapshot& then) { return loopThrough(then, part).has_value(); };
    auto on = withSuppliesOn(snapshot);
    if (driven(*on)) return on;
    PositionSolver solver(on->layout);
    const Digits now = digitsOf(solver.throws(), *on->layout->bench, *on->inputs);
    auto nearest = nearestPositions(solver, now, driven, kMostSolves);
    return nearest.found.empty() ? nullptr : std::move(nearest.found.front().snapshot);
}

bool hasJunction(const PartKind& kind) {
    return std::ranges::any_of(kind.model,
                               [](const ElementSpec& spec) { return findElement(spec.element) == &kJunctionElement; });
}

/// What the rest of a loop does to the light in it.
class LoopReader {
public:
    LoopReader(const Snapshot& snapshot, int part, ResistorQuestion& question)
        : snapshot_(snapshot),
          part_(part),
          replaced_(resistorOf(*snapshot.layout, part)),
          question_(question) {}

    void read(const SolvedLoop& loop) {
        question_.supplyVolt = question_.seriesOhm = 0;
        question_.lights = 1;
        question_.inSeries.clear();
        const int light = lightOf(loop);
        if (light >= 0) question_.light = partAt(light);
        for (const LoopPart& each : loop.parts) {
            if (each.part == light || each.part == replaced_) continue;
            if (hasJunction(*partAt(each.part).kind))
                question_.inSeries.push_back(partAt(each.part));
            else if (!addSource(each))
                question_.seriesOhm += std::abs(voltOver(each)) / each.ampere;
        }
    }

private:
    const Part& partAt(int part) const { return snapshot_.layout->bench->parts[part]; }

    /// The part itself, or the first light after the resistor that is asked about.
    int lightOf(const SolvedLoop& loop) const {
        if (partAt(part_).kind->needsResistor) return part_;
        const auto found = std::ranges::find_if(
            loop.parts, [this](const LoopPart& each) { return partAt(each.part).kind->needsResistor; });
        return found == loop.parts.end() ? -1 : found->part;
    }

    double voltOver(const LoopPart& each) const {
        const auto& volts = snapshot_.solution.netVoltage;
        const double volt = volts[each.fromNet] - volts[each.toNet];
        if (!std::isnan(volt)) return volt;
        return snapshot_.partPower[each.part] / each.ampere;  // floating, and nothing else runs through it
    }

    /// Adds what a source lifts, or takes off what one that is driven backwards takes.
    bool addSource(const LoopPart& each) {
        for (const ElementState element : snapshot_.solution.elements()) {
            const ElementSpec& spec = partAt(each.part).kind->model[element.spec];
            if (element.part != each.part || !element.closed || findElement(spec.element) != &kSupplyElement) continue;
            question_.supplyVolt += (element.currentAmpere < 0 ? 1 : -1) * constantOf(element, "voltage");
            question_.seriesOhm += constantOf(element, "seriesResistance");
            return true;
        }
        return false;
    }

    const Snapshot& snapshot_;
    int part_, replaced_;
    ResistorQuestion& question_;
};

/// Where no loop can be solved (an LED the wrong way round, one not plugged in yet): a supply that stands in a loop with the part while
/// every contact is closed, else the first that is on, else the first.
void askOfSomeSupply(const Snapshot& snapshot, int part, ResistorQuestion& question) {
    const CompiledCircuit compiled = compile(*snapshot.layout);
    const std::vector<int> blocks = loopBlocks(compiled.circuit, std::vector<char>(compiled.elements.size(), 1));
    std::set<int> own;
    for (std::size_t e = 0; e < compiled.elements.size(); ++e)
        if (compiled.elements[e].part == part && blocks[e] >= 0) own.insert(blocks[e]);
    int best = -1, bestRank = -1;
    for (const SupplyBranch& supply : compiled.circuit.supplies) {
        const CompiledElement& element = compiled.elements[supply.element];
        const Part& owner = snapshot.layout->bench->parts[element.part];
        if (!owner.kind->isSupply) continue;
        const int rank = 2 * own.contains(blocks[supply.element]) +
                         isPresent(owner, owner.kind->model[element.spec], *snapshot.inputs);
        if (rank <= bestRank) continue;
        best = static_cast<int>(&supply - compiled.circuit.supplies.data());
        bestRank = rank;
    }
    if (best < 0) return;
    question.supplyVolt = compiled.circuit.supplies[best].emfVolt;
    question.seriesOhm = compiled.circuit.supplies[best].seriesOhm;
    question.lights = 1;
    question.inSeries.clear();
}

}  // namespace

ResistorQuestion questionAbout(const Snapshot& snapshot, int part, const ResistorQuestion& usual) {
    ResistorQuestion question = usual;
    if (part >= 0 && snapshot.layout->bench->parts[part].kind->needsResistor)
        question.light = snapshot.layout->bench->parts[part];
    const auto driven = part >= 0 ? drivenPosition(snapshot, part) : nullptr;
    const auto loop = driven ? loopThrough(*driven, part) : std::nullopt;
    if (loop)
        LoopReader(*driven, part, question).read(*loop);
    else
        askOfSomeSupply(snapshot, part, question);
    return question;
}

}  // namespace tiepoint
