#include "core/parts/kind_file.h"

#include "core/base/json_scan.h"
#include "core/base/unit.h"
#include "core/parts/derivation.h"
#include "core/parts/kind_model.h"
#include "core/parts/rated_quantity.h"
#include "core/parts/strict_json.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>

namespace tiepoint {
namespace {

using nlohmann::json;

constexpr std::array<std::string_view, 12> kFamilies = {"Supply",    "Resistor", "LED",        "Switch",
                                                        "Capacitor", "Diode",    "Transistor", "Sensor",
                                                        "Lamp",      "Chip",     "Actuator",   "Meter"};
constexpr std::array<std::string_view, 3> kStatuses = {"published", "common practice", "from memory"};

LeadSpec readLeadSpec(StrictObject& object) {
    LeadSpec lead;
    lead.name = object.text("name");
    lead.description = object.text("description");
    lead.socket = object.flag("socket");
    lead.insulated = object.flag("insulated");
    return lead;
}

std::vector<std::vector<int>> readJoined(StrictObject& root, const PartKind& kind) {
    std::vector<std::vector<int>> groups;
    if (!root.has("joined")) return groups;
    for (const json& group : root.list("joined")) {
        std::vector<int> leads;
        for (const json& name : group) {
            const int lead = name.is_string() ? kind.leadIndex(name.get<std::string>()) : -1;
            if (lead < 0) root.fail("joined", "a group holds something that is no lead");
            leads.push_back(lead);
        }
        if (leads.size() < 2) root.fail("joined", "a group needs two leads");
        groups.push_back(std::move(leads));
    }
    return groups;
}

Choice readChoice(StrictObject& object) {
    Choice choice;
    choice.name = object.text("name");
    choice.label = object.text("label");
    if (object.has("constants")) {
        StrictObject constants = object.object("constants");
        for (const auto& item : constants.json().items()) choice.constants[item.key()] = constants.number(item.key());
    }
    return choice;
}

void readNumber(StrictObject& object, ValueSpec& spec) {
    const json& unit = object.at("unit");
    if (!unit.is_string() || std::ranges::find(units(), unit.get<std::string>(), &Unit::name) == units().end())
        object.fail("unit", "no such unit is known");
    spec.unit = unit.get<std::string>();
    spec.minimum = object.number("minimum");
    spec.maximum = object.number("maximum");
    spec.fallback = object.number("default");
    spec.integer = object.flag("integer");
    spec.sought = object.flag("sought");
    spec.remembered = object.flag("remembered");
    if (object.has("series")) spec.series = object.text("series");
    const auto inRange = [&](double x) { return x >= spec.minimum && x <= spec.maximum; };
    if (!inRange(spec.fallback)) object.fail("default", "this lies outside the range");
    if (!object.has("allowed")) return;
    for (const json& number : object.list("allowed")) {
        if (!number.is_number() || !inRange(number.get<double>())) object.fail("allowed", "a number is out of range");
        spec.allowed.push_back(number.get<double>());
    }
}

void readChoices(StrictObject& object, ValueSpec& spec) {
    spec.choices = readList(object, "choices", readChoice);
    const std::string chosen = object.text("default");
    const auto found = std::find_if(spec.choices.begin(), spec.choices.end(),
                                    [&](const Choice& choice) { return choice.name == chosen; });
    if (found == spec.choices.end()) object.fail("default", "this is none of the choices");
    spec.fallback = static_cast<double>(found - spec.choices.begin());
    spec.maximum = static_cast<double>(spec.choices.size() - 1);
    spec.integer = true;
}

ValueSpec readValue(StrictObject& object) {
    ValueSpec spec;
    spec.name = object.text("name");
    spec.label = object.text("label");
    const std::string type = object.text("type");
    if (type == "number") {
        readNumber(object, spec);
    } else if (type == "choice") {
        spec.type = ValueType::Choice;
        spec.lookAlike = object.flag("lookAlike");
        readChoices(object, spec);
    } else if (type == "switch") {
        spec.type = ValueType::Switch;
        object.at("default");
        spec.fallback = object.flag("default") ? 1 : 0;
        spec.maximum = 1;
        spec.integer = true;
    } else {
        object.fail("type", "this is neither number, choice nor switch");
    }
    return spec;
}

/// None where the rating names none; else as many as its quantity is measured at.
std::vector<int> readRatedLeads(StrictObject& object, const PartKind& kind, const RatedQuantity& quantity) {
    std::vector<int> leads;
    if (!object.has("leads")) {
        if (quantity.needsTwo && kind.leads.size() < 2) object.fail("quantity", "the part has no two leads");
        return leads;
    }
    for (const json& name : object.list("leads")) {
        const int lead = name.is_string() ? kind.leadIndex(name.get<std::string>()) : -1;
        if (lead < 0) object.fail("leads", "this names something that is no lead");
        if (std::ranges::find(leads, lead) != leads.end()) object.fail("leads", "a lead stands twice");
        leads.push_back(lead);
    }
    if (std::ssize(leads) != quantity.leads || leads.empty()) {
        object.fail("leads", quantity.leads == 0 ? "this quantity is the whole part's"
                                                 : fmt::format("this quantity takes {} of them", quantity.leads));
    }
    return leads;
}

Rating readRating(StrictObject& object, const PartKind& kind) {
    Rating rating;
    rating.name = object.text("name");
    rating.quantity = object.text("quantity");
    const RatedQuantity* quantity = findRatedQuantity(rating.quantity);
    if (!quantity) object.fail("quantity", "no such quantity is known");
    rating.leads = readRatedLeads(object, kind, *quantity);
    rating.label = object.text("label");
    rating.limit = readCheckedParameter(object, "limit", kind);
    rating.maximum = !object.has("maximum") || object.flag("maximum");
    return rating;
}

Help readHelp(StrictObject object) {
    Help help;
    help.what = object.text("what");
    help.leads = object.text("leads");
    help.ratings = object.text("ratings");
    help.caution = object.text("caution");
    object.done();
    return help;
}

SourceNote readSource(StrictObject& object) {
    SourceNote note;
    note.figure = object.text("figure");
    note.source = object.text("source");
    note.status = object.text("status");
    if (!isOneOf(kStatuses, note.status)) object.fail("status", "no such status is known");
    return note;
}

void readNames(StrictObject& root, PartKind& kind) {
    kind.name = root.text("kind");
    kind.label = root.text("label");
    kind.family = root.text("family");
    if (!isOneOf(kFamilies, kind.family)) root.fail("family", "the tray has no such compartment");
    kind.order = static_cast<int>(root.number("order"));
    kind.prefix = root.text("prefix");
    for (const json& word : root.list("search")) kind.searchWords.push_back(word.get<std::string>());
    kind.help = readHelp(root.object("help"));
    kind.sources = readList(root, "sources", readSource);
}

/// The figure of that name at the kind's usual values: of a number, or a constant of a choice.
std::optional<double> usualFigure(const PartKind& kind, const std::string& name) {
    for (const ValueSpec& spec : kind.values) {
        if (spec.type == ValueType::Number && spec.name == name) return spec.fallback;
        if (spec.type != ValueType::Choice) continue;
        const auto& constants = spec.choices[static_cast<std::size_t>(spec.fallback)].constants;
        if (const auto found = constants.find(name); found != constants.end()) return found->second;
    }
    return std::nullopt;
}

/// A number for every part of the kind, or, where the family allows it, the name of a number of the part.
Parameter readFamilyNumber(StrictObject& object, const FamilyNumber& number, const PartKind& kind) {
    if (number.fallback && !object.has(number.name)) return {*number.fallback};
    Parameter figure = readParameter(object.at(number.name), object.pointerTo(number.name));
    if (const auto* value = std::get_if<double>(&figure.source)) {
        const bool suits = !number.suits || number.suits(*value);
        if (!(*value >= number.least && *value <= number.most) || !suits) {
            object.fail(number.name, fmt::format("this is {} to {}{}{}", number.least, number.most,
                                                 number.rule.empty() ? "" : ", ", number.rule));
        }
        return figure;
    }
    const auto* name = std::get_if<std::string>(&figure.source);
    if (!number.ofPart || !name || !usualFigure(kind, *name)) {
        object.fail(number.name,
                    number.ofPart ? "this is neither a number nor one of the part's numbers" : "this isn't a number");
    }
    return figure;
}

void readSizes(StrictObject object, PartKind& kind) {
    auto sizes = std::make_shared<PackageSizes>();
    sizes->family = findPackageFamily(object.text("family"));
    if (!sizes->family) object.fail("family", "no such family of packages exists");
    std::vector<double> figures;
    for (const FamilyNumber& number : sizes->family->numbers) {
        sizes->figures.push_back(readFamilyNumber(object, number, kind));
        const auto* value = std::get_if<std::string>(&sizes->figures.back().source);
        figures.push_back(value ? *usualFigure(kind, *value) : std::get<double>(sizes->figures.back().source));
    }
    object.done();
    sizes->packages = sizes->family->sizes(figures);
    kind.package = &sizes->packages[sizes->family->choose ? sizes->family->choose(figures) : 0];
    kind.sizes = std::move(sizes);
}

void readPackage(StrictObject& root, PartKind& kind) {
    if (root.at("package").is_object()) {
        readSizes(root.object("package"), kind);
    } else {
        kind.package = findPackage(root.text("package"));
        if (!kind.package) root.fail("package", "no such package exists");
    }
    const bool suits = kind.package->reach == Reach::Bending ? kind.leads.size() == 2
                                                             : kind.leads.size() == kind.package->footprint.size();
    if (!suits) root.fail("leads", "the package has another number of leads");
}

SoundSpec readSound(StrictObject object, const PartKind& kind) {
    SoundSpec sound;
    sound.follows = object.flag("follows");
    if (!sound.follows) {
        sound.pitch = readCheckedParameter(object, "pitch", kind);
        sound.fromVoltage = readCheckedParameter(object, "fromVoltage", kind);
    }
    object.done();
    return sound;
}

void readWorking(StrictObject& root, PartKind& kind) {
    kind.leads = readList(root, "leads", readLeadSpec);
    kind.joined = readJoined(root, kind);
    kind.values = readList(root, "values", readValue);
    if (root.has("state")) kind.state = readList(root, "state", readValue);
    readPackage(root, kind);
    kind.model = readModel(root, kind);
    kind.ratings = readList(root, "ratings", [&](StrictObject& object) { return readRating(object, kind); });
    kind.emitsLight = root.flag("emitsLight");
    if (kind.emitsLight) {
        kind.ratedCurrent = readCheckedParameter(root, "ratedCurrent", kind);
        if (root.has("lightExponent")) kind.lightExponent = root.number("lightExponent");
        kind.needsResistor =
            std::ranges::any_of(kind.model, [](const ElementSpec& spec) { return spec.element == "junction"; });
    }
    if (root.has("sound")) kind.sound = readSound(root.object("sound"), kind);
    kind.hasCap = root.flag("cap");
    kind.isSupply = root.flag("supply");
    if (root.has("symbol")) root.object("symbol");  // read where diagrams are drawn: core/diagram/symbol.h
}

}  // namespace

Result<PartKind> readPartKind(std::string_view name, std::string_view text) {
    const auto failed = [&](ErrorKind kind, std::string message, std::string pointer) {
        return Error{kind, std::move(message), {std::move(pointer)}, std::string(name)};
    };
    // The bench's own scanner first: it knows duplicate names, and the line of what is wrong.
    if (const auto scanned = parseJson(text); !scanned.ok()) {
        Error error = scanned.error();
        error.file = name;
        return error;
    }
    try {
        const json document = json::parse(text);
        StrictObject root(document, "");
        PartKind kind;
        readNames(root, kind);
        readWorking(root, kind);
        root.done();
        return kind;
    } catch (const StrictJsonError& error) {
        return failed(ErrorKind::Format, error.what(), error.pointer());
    } catch (const json::exception& error) {
        return failed(ErrorKind::Syntax, error.what(), "");
    }
}

std::span<const std::string_view> trayFamilies() { return kFamilies; }

}  // namespace tiepoint
