#include "core/parts/kind_model.h"

#include "core/parts/derivation.h"

#include <map>

namespace tiepoint {
namespace {

using nlohmann::json;

constexpr std::array<std::string_view, 5> kReadings = {"voltage", "current", "resistance", "continuity", "trace"};

void readClosedWhen(StrictObject& object, ElementSpec& element, const PartKind& kind) {
    constexpr std::string_view kMember = "closedWhen";
    if (!object.has(kMember)) return;
    if (object.at(kMember).is_string()) {
        if (object.text(kMember) != "held") object.fail(kMember, "this is neither \"held\" nor a state");
        element.whenHeld = true;
        return;
    }
    StrictObject when = object.object(kMember);
    element.whenState = when.text("state");
    const int index = kind.stateIndex(element.whenState);
    if (index < 0) when.fail("state", "no such state exists");
    const ValueSpec& state = kind.state[index];
    if (state.type == ValueType::Choice) {
        element.whenChoice = when.text("is");
        if (std::none_of(state.choices.begin(), state.choices.end(),
                         [&](const Choice& choice) { return choice.name == element.whenChoice; }))
            when.fail("is", "this is none of the choices");
    } else if (state.type != ValueType::Switch) {
        when.fail("state", "only a choice or a switch closes a contact");
    }
    when.done();
}

void readOnlyWith(StrictObject& object, ElementSpec& element, const PartKind& kind) {
    if (!object.has("onlyWith")) return;
    StrictObject with = object.object("onlyWith");
    element.ofValue = with.text("value");
    const int index = kind.valueIndex(element.ofValue);
    if (index < 0) with.fail("value", "no such value exists");
    element.ofChoice = with.text("is");
    if (std::ranges::find(kind.values[index].choices, element.ofChoice, &Choice::name) ==
        kind.values[index].choices.end())
        with.fail("is", "this is none of the choices");
    with.done();
}

/// Two nodes by name, or any number in the order of the element's terminals.
void readNodes(StrictObject& object, ElementSpec& element) {
    constexpr std::string_view kBetween = "between";
    if (object.has(kBetween)) {
        for (const json& node : object.list(kBetween)) {
            if (!node.is_string()) object.fail(kBetween, "a node is a name");
            element.between.push_back(node.get<std::string>());
        }
        if (element.between.size() < 2) object.fail(kBetween, "an element needs two nodes");
    } else {
        element.between = {object.text("from"), object.text("to")};
    }
}

ElementSpec readElement(StrictObject& object, const PartKind& kind) {
    ElementSpec element;
    element.element = object.text("element");
    readNodes(object, element);
    readClosedWhen(object, element, kind);
    readOnlyWith(object, element, kind);
    if (object.has("wavelength")) element.wavelengthMetre = object.number("wavelength");
    if (object.has("reads")) element.reads = object.text("reads");
    if (!element.reads.empty() && !isOneOf(kReadings, element.reads)) object.fail("reads", "no such reading is known");
    for (const std::string& name : object.unasked())
        element.parameters.emplace_back(name, readCheckedParameter(object, name, kind));
    return element;
}

/// An inner node that only one element touches is a misspelt lead.
void checkNodes(const StrictObject& root, const PartKind& kind, const std::vector<ElementSpec>& model) {
    std::map<std::string, int> uses;
    for (const ElementSpec& element : model) {
        for (const std::string& node : element.between) ++uses[node];
    }
    for (const auto& [node, count] : uses) {
        if (count < 2 && kind.leadIndex(node) < 0)
            root.fail("model", fmt::format("\"{}\" is no lead and leads nowhere", node));
    }
}

}  // namespace

Parameter readParameter(const json& source, const std::string& pointer) {
    if (source.is_number()) return {source.get<double>()};
    if (source.is_string()) return {source.get<std::string>()};
    StrictObject object(source, pointer);
    Parameter::Derived derived;
    derived.name = object.text("derivation");
    StrictObject arguments = object.object("arguments");
    for (const auto& item : arguments.json().items())
        derived.arguments.push_back({item.key(), readParameter(item.value(), arguments.pointerTo(item.key()))});
    object.done();
    return {std::move(derived)};
}

Parameter readCheckedParameter(StrictObject& object, std::string_view name, const PartKind& kind) {
    Parameter parameter = readParameter(object.at(name), object.pointerTo(name));
    if (const auto reason = unresolved(parameter, kind)) object.fail(name, *reason);
    return parameter;
}

std::vector<ElementSpec> readModel(StrictObject& root, const PartKind& kind) {
    std::vector<ElementSpec> model =
        readList(root, "model", [&](StrictObject& object) { return readElement(object, kind); });
    checkNodes(root, kind, model);
    return model;
}

}  // namespace tiepoint
