#include "core/bench/resolve.h"

#include "core/parts/derivation.h"

#include <cassert>

namespace tiepoint {
namespace {

/// The constant of that name in the choice in force, if the value is a choice that has it.
std::optional<double> chosenConstant(const ValueSpec& spec, double chosen, std::string_view name) {
    if (spec.type != ValueType::Choice) return std::nullopt;
    const auto& constants = spec.choices[static_cast<std::size_t>(chosen)].constants;
    const auto found = constants.find(name);
    return found == constants.end() ? std::nullopt : std::optional(found->second);
}

double resolveName(std::string_view name, const Part& part) {
    if (const int index = part.kind->valueIndex(name); index >= 0) return part.value(index);
    if (const int index = part.kind->stateIndex(name); index >= 0) return part.stateValue(index);
    for (int i = 0; i < static_cast<int>(part.kind->values.size()); ++i) {
        if (const auto constant = chosenConstant(part.kind->values[i], part.value(i), name)) return *constant;
    }
    for (int i = 0; i < static_cast<int>(part.kind->state.size()); ++i) {
        if (const auto constant = chosenConstant(part.kind->state[i], part.stateValue(i), name)) return *constant;
    }
    assert(false && "the loader has checked every name");
    return 0;
}

/// Whether each choice is one that there is; a bench that isn't validated yet may say another.
bool areChosen(const Part& part) {
    for (std::size_t i = 0; i < part.kind->values.size(); ++i) {
        const ValueSpec& spec = part.kind->values[i];
        const double value = part.value(static_cast<int>(i));
        if (spec.type == ValueType::Choice && !(value >= 0 && value < static_cast<double>(spec.choices.size())))
            return false;
    }
    return true;
}

}  // namespace

double resolve(const Parameter& parameter, const Part& part) {
    if (const auto* number = std::get_if<double>(&parameter.source)) return *number;
    if (const auto* name = std::get_if<std::string>(&parameter.source)) return resolveName(*name, part);
    return derive(std::get<Parameter::Derived>(parameter.source),
                  [&](const Parameter& argument) { return resolve(argument, part); });
}

const Package& packageOf(const Part& part) {
    const auto& sizes = part.kind->sizes;
    if (!sizes || !sizes->family->choose || !areChosen(part)) return *part.kind->package;
    std::vector<double> figures;
    for (const Parameter& figure : sizes->figures) figures.push_back(resolve(figure, part));
    return sizes->packages[sizes->family->choose(figures)];
}

double ratedCurrentAmpere(const Part& part) {
    return part.kind->emitsLight ? resolve(part.kind->ratedCurrent, part) : 0;
}

}  // namespace tiepoint
