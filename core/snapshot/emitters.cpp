#include "core/snapshot/emitters.h"

#include "core/bench/resolve.h"
#include "core/circuit/compile.h"
#include "core/light/lightness.h"

#include <cmath>
#include <string_view>

namespace tiepoint {
namespace {

// The figure of an element that says how much of its light an eye sees; absent: all of it.
constexpr std::string_view kVisible = "visible";

double shareSeen(const Part& part) {
    for (std::size_t v = 0; v < part.kind->values.size(); ++v) {
        const ValueSpec& spec = part.kind->values[v];
        if (spec.type != ValueType::Choice) continue;
        const auto& constants = spec.choices[static_cast<std::size_t>(part.value(static_cast<int>(v)))].constants;
        if (const auto found = constants.find(kVisible); found != constants.end()) return found->second;
    }
    return 1;
}

}  // namespace

double Emitter::lightAt(double ampere) const {
    return relativeLight(visibleShare * (bothWays ? std::abs(ampere) : ampere), ratedAmpere, exponent);
}

Emitters::Emitters(const Bench& bench, const ElementPlaces& places) : firstOfPart(bench.parts.size() + 1, 0) {
    for (int e = 0; e < static_cast<int>(places.size()); ++e) {
        const Part& part = bench.parts[places[e].part];
        if (!part.kind->emitsLight || !isOf(part, part.kind->model[places[e].spec])) continue;
        // A junction lights one way only; a filament doesn't mind which way its current runs.
        all.push_back({places[e].part, e, ratedCurrentAmpere(part), part.kind->lightExponent, shareSeen(part),
                       !part.kind->needsResistor});
        ++firstOfPart[places[e].part + 1];
    }
    for (std::size_t part = 1; part < firstOfPart.size(); ++part) firstOfPart[part] += firstOfPart[part - 1];
}

}  // namespace tiepoint
