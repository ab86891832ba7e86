// A coil whose current is cut off with nowhere to run on: it pushes until a contact sparks or a transistor gives way. Found by letting
// hands do it: the bench is followed while its switches stand one way, then the other, and the highest voltage of the coil is read.

#include "core/base/quantity.h"
#include "core/base/stopping.h"
#include "core/circuit/element.h"
#include "core/findings/figure_words.h"
#include "core/findings/rules.h"
#include "core/time/bench_run.h"
#include "core/words/words.h"

#include <algorithm>
#include <cmath>

namespace tiepoint {
namespace {

constexpr double kHarmlessJoule = 10e-6,
                 kHarmlessVolt = 40;  ///< less is no danger to parts of this kind (common practice)
constexpr double kRunSecond = 0.05, kAfterSecond = 3e-3;
constexpr int kMostInstants = 4000, kMostChanges = 12;

/// The coil of a part: its element, and the two leads that its winding ends at.
struct Coil {
    int part, element;
    double henry;
    int leads[2];  ///< of the layout
};

std::vector<Coil> coilsOf(const Snapshot& snapshot) {
    std::vector<Coil> coils;
    const Layout& layout = *snapshot.layout;
    for (int e = 0; e < snapshot.solution.elementCount(); ++e) {
        const ElementState element = snapshot.solution.element(e);
        const PartKind& kind = *layout.bench->parts[static_cast<std::size_t>(element.part)].kind;
        if (findElement(kind.model[static_cast<std::size_t>(element.spec)].element) != &kElementOf<InductanceLaw>)
            continue;
        const auto henry = std::ranges::find(element.constants, "inductance", &Constant::first);
        // Its winding's own capacitance lies between its leads.
        const auto across = std::ranges::find_if(kind.model, [&](const ElementSpec& spec) {
            return findElement(spec.element) == &kElementOf<CapacitanceLaw> && kind.leadIndex(spec.from()) >= 0 &&
                   kind.leadIndex(spec.to()) >= 0;
        });
        if (henry == element.constants.end() || across == kind.model.end()) continue;
        coils.push_back({element.part,
                         e,
                         henry->second,
                         {layout.leadIndex(element.part, kind.leadIndex(across->from())),
                          layout.leadIndex(element.part, kind.leadIndex(across->to()))}});
    }
    return coils;
}

bool holdsMuch(const Coil& coil, const Snapshot& snapshot) {
    if (snapshot.status() != Status::Solved) return false;
    const double ampere = snapshot.solution.element(coil.element).currentAmpere;
    return coil.henry * ampere * ampere / 2 > kHarmlessJoule;
}

double voltAcrossCoil(const Coil& coil, const Layout& layout, const Solution& solution) {
    const auto volt = [&](int lead) {
        return solution.netVoltage[static_cast<std::size_t>(layout.netOfLead[static_cast<std::size_t>(lead)])];
    };
    const double across = std::abs(volt(coil.leads[0]) - volt(coil.leads[1]));
    return std::isnan(across) ? 0 : across;
}

/// What each coil comes to when the switches are thrown from one position to the other.
std::vector<double> mostVolts(const std::vector<Coil>& coils, const Snapshot& before, const Snapshot& after) {
    std::vector<double> most(coils.size(), 0);
    BenchRun run;
    run.setInputs(*before.inputs);
    run.setLayout(before.layout);
    if (!run.advanceTo(kRunSecond)) return most;
    if (after.layout != before.layout) run.setLayout(after.layout);
    run.setInputs(*after.inputs);
    const double end = run.second() + kAfterSecond;
    for (int instant = 0; instant < kMostInstants && run.second() < end; ++instant) {
        stopIfAsked();
        const Solution& solution = run.solution();
        if (solution.status != Status::Solved) break;
        for (std::size_t k = 0; k < coils.size(); ++k)
            most[k] = std::max(most[k], voltAcrossCoil(coils[k], *after.layout, solution));
        const double next = std::nextafter(std::max(run.smoothUntil(), run.second()), end);
        if (!run.advanceTo(std::min(end, next))) break;
    }
    return most;
}

}  // namespace

Suspicions findCoilSpikes(const Examination& examination) {
    const auto& positions = examination.positions();
    const std::vector<Coil> coils = coilsOf(examination.now());
    std::vector<double> most(coils.size(), 0);
    int changes = 0;
    for (const Position& before : positions) {
        if (std::ranges::none_of(coils, [&](const Coil& coil) { return holdsMuch(coil, *before.snapshot); })) continue;
        for (const Position& after : positions) {
            if (&before == &after || changes == kMostChanges) continue;
            ++changes;
            const std::vector<double> found = mostVolts(coils, *before.snapshot, *after.snapshot);
            for (std::size_t k = 0; k < coils.size(); ++k)
                if (holdsMuch(coils[k], *before.snapshot)) most[k] = std::max(most[k], found[k]);
        }
    }
    Suspicions all;
    for (std::size_t k = 0; k < coils.size(); ++k) {
        if (most[k] < kHarmlessVolt) continue;
        const Part& part = examination.part(coils[k].part);
        Suspicion found;
        found.finding.severity = Severity::Fault;
        found.finding.parts = {part.id};
        found.finding.holes = holesOf(part);
        found.finding.text = say("finding.spike", {{"part", part.id}, {"voltage", formatQuantity(most[k], "V", 2)}});
        found.finding.figures = {{"voltage", most[k]}, {"limit", kHarmlessVolt}};
        all.push_back(std::move(found));
    }
    return all;
}

}  // namespace tiepoint
