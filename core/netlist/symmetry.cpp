#include "core/netlist/symmetry.h"

#include <algorithm>
#include <array>

namespace tiepoint {
namespace {

/// Elements whose law is odd; a test asks the solver. Whatever isn't named here keeps its direction.
constexpr std::array<std::string_view, 10> kEitherWay = {
    "resistance", "contact", "filament",         "capacitance",        "inductance",
    "spark",      "sounder", "photo-resistance", "thermal-resistance", "rotor"};

/// Whether any name in a parameter fulfils the condition.
template <class Condition>
bool anyName(const Parameter& parameter, const Condition& holds) {
    if (const auto* name = std::get_if<std::string>(&parameter.source)) return holds(*name);
    const auto* derived = std::get_if<Parameter::Derived>(&parameter.source);
    return derived && std::ranges::any_of(derived->arguments,
                                          [&](const auto& argument) { return anyName(argument.parameter, holds); });
}

template <class Condition>
bool anyNameOfModel(const PartKind& kind, const Condition& holds) {
    return std::ranges::any_of(kind.model, [&](const ElementSpec& spec) {
        return std::ranges::any_of(spec.parameters, [&](const auto& each) { return anyName(each.second, holds); });
    });
}

bool isConstantOf(std::string_view name, const ValueSpec& spec) {
    return std::ranges::any_of(spec.choices, [&](const Choice& choice) { return choice.constants.contains(name); });
}

/// resolve() looks among values first, then states, then constants of values, then those of states.
bool isOfState(std::string_view name, const PartKind& kind) {
    if (kind.valueIndex(name) >= 0) return false;
    if (kind.stateIndex(name) >= 0) return true;
    const auto holdsConstant = [&](const ValueSpec& spec) { return isConstantOf(name, spec); };
    return std::ranges::none_of(kind.values, holdsConstant) && std::ranges::any_of(kind.state, holdsConstant);
}

}  // namespace

bool worksEitherWay(std::string_view element) { return std::ranges::find(kEitherWay, element) != kEitherWay.end(); }

bool mayBeExchanged(const ElementSpec& spec, const PartKind& kind) {
    const bool minds =
        std::ranges::any_of(kind.ratings, [](const Rating& r) { return r.quantity == "reverseVoltage"; });
    return !minds && spec.reads.empty() && worksEitherWay(spec.element);
}

bool isOddTwoPole(const PartKind& kind) {
    const auto isInside = [&](const std::string& node) { return kind.leadIndex(node) < 0; };
    const auto all = [&](const ElementSpec& spec) { return mayBeExchanged(spec, kind); };
    return kind.leads.size() == 2 && std::ranges::all_of(kind.model, all) &&
           std::ranges::any_of(kind.model,
                               [&](const ElementSpec& spec) { return std::ranges::any_of(spec.between, isInside); });
}

bool followsState(const Parameter& parameter, const PartKind& kind) {
    return anyName(parameter, [&](const std::string& name) { return isOfState(name, kind); });
}

bool isReckonedWith(std::string_view value, const PartKind& kind) {
    const auto isIt = [&](const std::string& name) { return name == value; };
    return anyNameOfModel(kind, isIt) || (kind.emitsLight && anyName(kind.ratedCurrent, isIt));
}

bool valueCounts(const ValueSpec& spec, const PartKind& kind, const Likeness& likeness) {
    if (likeness.values == ValuesCounted::None) return false;
    if (likeness.values == ValuesCounted::All) return true;
    // What no eye tells apart counts where current does.
    const auto decides = [&](const ElementSpec& element) { return element.ofValue == spec.name; };
    if (spec.lookAlike && std::ranges::none_of(kind.model, decides)) return false;
    if (spec.type != ValueType::Number) return true;
    return isReckonedWith(spec.name, kind);
}

bool showsInModel(const ValueSpec& state, const PartKind& kind) {
    if (std::ranges::any_of(kind.model, [&](const ElementSpec& spec) { return spec.whenState == state.name; }))
        return true;
    return anyNameOfModel(kind, [&](const std::string& name) {
        return isOfState(name, kind) && (name == state.name || isConstantOf(name, state));
    });
}

}  // namespace tiepoint
