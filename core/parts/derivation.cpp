#include "core/parts/derivation.h"

#include "core/base/constants.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cassert>
#include <cmath>
#include <span>

namespace tiepoint {
namespace {

using Figures = std::span<const double>;

struct Derivation {
    std::string_view name;
    std::array<std::string_view, 4> arguments;  ///< names in the order of the figures; empty ones at the end are unused
    double (*compute)(Figures);
};

/// Saturation current of a junction that drops the stated voltage at its test current, series resistance
/// included.
double saturationFromForward(Figures figures) {
    const double forwardVolt = figures[0], testAmpere = figures[1], ideality = figures[2], seriesOhm = figures[3];
    const double junctionVolt = forwardVolt - testAmpere * seriesOhm;
    return testAmpere / std::expm1(junctionVolt / (ideality * kThermalVoltage));
}

/// Resistance of a track from its start to the wiper. The wiper never quite reaches an end: `endResistance`
/// is the least.
double trackFromStart(Figures figures) {
    const double trackOhm = figures[0], turn = figures[1], endOhm = figures[2];
    return std::max(trackOhm * turn, endOhm);
}

/// The same from the wiper to the end of the track.
double trackToEnd(Figures figures) { return trackFromStart(std::array{figures[0], 1 - figures[1], figures[2]}); }

/// What stands in series with a junction that drops the stated voltage at its rated current; never less than a milliohm.
double seriesFromForward(Figures figures) {
    const double forwardVolt = figures[0], ampere = figures[1], saturationAmpere = figures[2], ideality = figures[3];
    const double junctionVolt = ideality * kThermalVoltage * std::log1p(ampere / saturationAmpere);
    return std::max((forwardVolt - junctionVolt) / ampere, 1e-3);
}

/// Equal things in a row, such as cells.
double product(Figures figures) { return figures[0] * figures[1]; }

/// Of what some write as negative, as the threshold of a P-channel.
double magnitude(Figures figures) { return std::abs(figures[0]); }

constexpr std::array kDerivations = {
    Derivation{"saturationFromForward",
               {"forwardVoltage", "testCurrent", "ideality", "seriesResistance"},
               saturationFromForward},
    Derivation{
        "seriesFromForward", {"forwardVoltage", "testCurrent", "saturationCurrent", "ideality"}, seriesFromForward},
    Derivation{"trackFromStart", {"resistance", "turn", "endResistance"}, trackFromStart},
    Derivation{"trackToEnd", {"resistance", "turn", "endResistance"}, trackToEnd},
    Derivation{"product", {"a", "b"}, product},
    Derivation{"magnitude", {"a"}, magnitude},
};

const Derivation* findDerivation(std::string_view name) {
    const auto found = std::find_if(kDerivations.begin(), kDerivations.end(),
                                    [&](const Derivation& derivation) { return derivation.name == name; });
    return found == kDerivations.end() ? nullptr : &*found;
}

std::size_t argumentCount(const Derivation& derivation) {
    return static_cast<std::size_t>(std::count_if(derivation.arguments.begin(), derivation.arguments.end(),
                                                  [](std::string_view name) { return !name.empty(); }));
}

const Parameter* findArgument(const Parameter::Derived& derived, std::string_view name) {
    const auto found = std::ranges::find(derived.arguments, name, &Parameter::Argument::name);
    return found == derived.arguments.end() ? nullptr : &found->parameter;
}

bool everyChoiceHas(const ValueSpec& spec, std::string_view name) {
    return spec.type == ValueType::Choice &&
           std::all_of(spec.choices.begin(), spec.choices.end(),
                       [&](const Choice& choice) { return choice.constants.contains(name); });
}

std::optional<std::string> unresolvedName(std::string_view name, const PartKind& kind) {
    if (kind.valueIndex(name) >= 0 || kind.stateIndex(name) >= 0) return std::nullopt;
    for (const auto* specs : {&kind.values, &kind.state}) {
        if (std::any_of(specs->begin(), specs->end(),
                        [&](const ValueSpec& spec) { return everyChoiceHas(spec, name); }))
            return std::nullopt;
    }
    return fmt::format("\"{}\" is no value, no state and no constant of every choice", name);
}

std::optional<std::string> unresolvedDerived(const Parameter::Derived& derived, const PartKind& kind) {
    const Derivation* derivation = findDerivation(derived.name);
    if (!derivation) return fmt::format("there is no derivation \"{}\"", derived.name);
    const std::size_t count = argumentCount(*derivation);
    if (derived.arguments.size() != count) return fmt::format("{} takes {} arguments", derived.name, count);
    for (std::size_t i = 0; i < count; ++i) {
        const Parameter* argument = findArgument(derived, derivation->arguments[i]);
        if (!argument) return fmt::format("{} needs \"{}\"", derived.name, derivation->arguments[i]);
        if (auto reason = unresolved(*argument, kind)) return reason;
    }
    return std::nullopt;
}

}  // namespace

double derive(const Parameter::Derived& derived, const std::function<double(const Parameter&)>& figureOf) {
    const Derivation* derivation = findDerivation(derived.name);
    assert(derivation);
    const std::size_t count = argumentCount(*derivation);
    std::array<double, 4> figures{};
    for (std::size_t i = 0; i < count; ++i) {
        const Parameter* argument = findArgument(derived, derivation->arguments[i]);
        assert(argument);
        figures[i] = figureOf(*argument);
    }
    return derivation->compute(Figures(figures).first(count));
}

std::optional<std::string> unresolved(const Parameter& parameter, const PartKind& kind) {
    if (std::holds_alternative<double>(parameter.source)) return std::nullopt;
    if (const auto* name = std::get_if<std::string>(&parameter.source)) return unresolvedName(*name, kind);
    return unresolvedDerived(std::get<Parameter::Derived>(parameter.source), kind);
}

std::vector<std::string_view> derivationNames() {
    std::vector<std::string_view> names;
    names.reserve(kDerivations.size());
    for (const Derivation& derivation : kDerivations) names.push_back(derivation.name);
    return names;
}

}  // namespace tiepoint
