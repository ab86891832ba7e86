// A meter whose dial doesn't suit what its leads are in. In the line of a light, set to anything but amperes, it lets next to no current
// through; set to ohms or continuity while a supply is on, it can't tell its own current from the supply's.

#include "core/findings/figure_words.h"
#include "core/findings/rules.h"
#include "core/meter/drivers.h"
#include "core/meter/meter.h"
#include "core/words/words.h"

namespace tiepoint {
namespace {

/// In the line, for all that is known: turned to amperes it lights what is dark. inspect() tries that before it is said.
std::optional<Suspicion> inLine(const Examination& examination, int index) {
    const Part& meter = examination.part(index);
    if (!looksOn(meter) || examination.darkLights().empty()) return std::nullopt;
    const auto turned = turnDialEdit(examination.bench(), meter, "current");
    const auto bench = turned ? examination.after(*turned) : nullptr;
    if (!bench) return std::nullopt;
    const auto then = evaluate(bench, *examination.now().inputs);
    Suspicion found;
    for (const int light : examination.darkLights()) {
        if (isLit(*then, light)) found.darkens.push_back(examination.part(light).id);
    }
    if (found.darkens.empty()) return std::nullopt;
    found.finding.parts = {meter.id, found.darkens.front()};
    found.finding.holes = holesOf(meter);
    const std::string lights = sayList(found.darkens, "list.and");
    found.finding.text =
        quantityRead(meter).empty()
            ? say("finding.dial.off", {{"meter", meter.id}, {"lights", lights}})
            : say("finding.dial.set", {{"meter", meter.id}, {"dial", dialLabel(meter)}, {"lights", lights}});
    addFigure(found.finding, "current", examination.mostCurrent(index));
    found.proposals.push_back({say("mend.dialToAmperes", {{"meter", meter.id}}), *turned});
    return found;
}

std::optional<Suspicion> underPower(const Examination& examination, int index) {
    const Part& meter = examination.part(index);
    if (!testsWithOwnSource(meter)) return std::nullopt;
    const int other = otherSourceAt(examination.now(), index);
    if (other < 0) return std::nullopt;
    const Part& supply = examination.part(other);
    Suspicion found;
    found.finding.severity = Severity::Risk;
    found.finding.parts = {meter.id, supply.id};
    found.finding.holes = holesOf(meter);
    found.finding.text =
        say("finding.dial.power", {{"meter", meter.id}, {"dial", dialLabel(meter)}, {"supply", supply.id}});
    addFigure(found.finding, "current", examination.mostCurrent(index));
    if (supply.kind->stateIndex("on") >= 0) {
        found.proposals.push_back(
            {say("mend.switchOff", {{"supply", supply.id}}), setStateEdit(examination.bench(), supply.id, "on", 0)});
    }
    return found;
}

}  // namespace

Suspicions findWrongDials(const Examination& examination) {
    Suspicions found;
    for (int index = 0; index < examination.partCount(); ++index) {
        if (!isMeter(*examination.part(index).kind)) continue;
        if (auto wrong = inLine(examination, index)) found.push_back(*std::move(wrong));
        if (auto wrong = underPower(examination, index)) found.push_back(*std::move(wrong));
    }
    return found;
}

}  // namespace tiepoint
