#include "core/diagram/symbol.h"

#include "core/base/embedded.h"
#include "core/circuit/compile.h"
#include "core/parts/strict_json.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <map>
#include <optional>

namespace tiepoint {
namespace {

using nlohmann::json;

constexpr std::string_view kMember = "symbol";

struct SideName {
    std::string_view name;
    SymbolSide side;
};
constexpr std::array<SideName, 4> kSides = {
    {{"start", SymbolSide::Start}, {"end", SymbolSide::End}, {"low", SymbolSide::Low}, {"high", SymbolSide::High}}};

struct ShapeName {
    std::string_view name;
    SymbolShape::Kind kind;
    bool lit;
};
constexpr std::array<ShapeName, 9> kShapes = {{{"line", SymbolShape::Kind::Line, false},
                                               {"filled", SymbolShape::Kind::Filled, false},
                                               {"outline", SymbolShape::Kind::Outline, false},
                                               {"lit", SymbolShape::Kind::Outline, true},
                                               {"circle", SymbolShape::Kind::Circle, false},
                                               {"lit circle", SymbolShape::Kind::Circle, true},
                                               {"arrow", SymbolShape::Kind::Arrow, false},
                                               {"dotted", SymbolShape::Kind::Dotted, false},
                                               {"text", SymbolShape::Kind::Text, false}}};

[[noreturn]] void wrongSymbol(const std::string& pointer, const std::string& message) {
    throw StrictJsonError(pointer, message);
}

double numberIn(const json& array, std::size_t index, const std::string& pointer) {
    if (index >= array.size() || !array[index].is_number()) wrongSymbol(pointer, "a number is missing");
    return array[index].get<double>();
}

SymbolWhen readWhen(const json& source, const std::string& pointer, const PartKind& kind) {
    StrictObject object(source, pointer);
    SymbolWhen when;
    if (object.has("state")) {
        when.kind = SymbolWhen::Kind::State;
        when.index = kind.stateIndex(object.text("state"));
        if (when.index < 0) object.fail("state", "no such state exists");
        const ValueSpec& state = kind.state[when.index];
        const std::string choice = object.text("is");
        const auto found = std::ranges::find(state.choices, choice, &Choice::name);
        if (found == state.choices.end()) object.fail("is", "this is none of the choices");
        when.is = static_cast<double>(found - state.choices.begin());
    } else {
        const bool closed = object.has("closed");
        when.kind = closed ? SymbolWhen::Kind::Closed : SymbolWhen::Kind::Open;
        when.index = static_cast<int>(object.number(closed ? "closed" : "open"));
        if (when.index < 0 || when.index >= std::ssize(kind.model))
            wrongSymbol(pointer, "the model has no such element");
    }
    object.done();
    return when;
}

SymbolShape readShape(const json& source, const std::string& pointer, const PartKind& kind) {
    if (!source.is_array() || source.empty() || !source[0].is_string())
        wrongSymbol(pointer, "a shape begins with its name");
    const auto named = std::ranges::find(kShapes, source[0].get<std::string>(), &ShapeName::name);
    if (named == kShapes.end()) wrongSymbol(pointer, "no such shape is known");
    SymbolShape shape;
    shape.kind = named->kind;
    shape.lit = named->lit;
    std::size_t end = source.size();
    if (source.back().is_object()) shape.when = readWhen(source.back(), pointer, kind), --end;
    if (shape.kind == SymbolShape::Kind::Text) {
        if (!source[--end].is_string()) wrongSymbol(pointer, "a text ends in its words");
        shape.text = source[end].get<std::string>();
    } else if (shape.kind == SymbolShape::Kind::Circle) {
        shape.radius = numberIn(source, --end, pointer);
    }
    for (std::size_t i = 1; i + 1 < end; i += 2)
        shape.points.push_back({numberIn(source, i, pointer), numberIn(source, i + 1, pointer)});
    const bool single = shape.kind == SymbolShape::Kind::Text || shape.kind == SymbolShape::Kind::Circle;
    if (end % 2 == 0 || shape.points.empty() || (shape.points.size() == 1) != single)
        wrongSymbol(pointer, "this shape takes another number of figures");
    return shape;
}

std::vector<SymbolShape> readShapes(StrictObject& object, std::string_view name, const PartKind& kind) {
    std::vector<SymbolShape> shapes;
    for (const json& entry : object.list(name))
        shapes.push_back(readShape(entry, fmt::format("{}/{}", object.pointerTo(name), shapes.size()), kind));
    return shapes;
}

std::vector<SymbolLead> readLeads(StrictObject object, const PartKind& kind) {
    std::vector<SymbolLead> leads;
    const std::vector<int> first = firstOfTerminal(kind);
    for (int lead = 0; lead < std::ssize(kind.leads); ++lead) {
        if (first[lead] != lead) continue;
        const std::string& name = kind.leads[lead].name;
        const json& place = object.list(name);
        const std::string pointer = object.pointerTo(name);
        const std::string side = place.size() == 3 && place[2].is_string() ? place[2].get<std::string>() : "";
        const auto named = std::ranges::find(kSides, side, &SideName::name);
        if (named == kSides.end()) wrongSymbol(pointer, "a lead takes x, y and the side to which it leaves");
        leads.push_back({lead, {numberIn(place, 0, pointer), numberIn(place, 1, pointer)}, named->side});
    }
    object.done();
    return leads;
}

Rect boundsOfShapes(const std::vector<SymbolShape>& shapes) {
    constexpr double kHalfLetter = 1.6;
    double left = 0, right = 0, top = 0, bottom = 0;
    for (const SymbolShape& shape : shapes) {
        const double reach = shape.kind == SymbolShape::Kind::Text ? kHalfLetter : shape.radius;
        for (const Point& at : shape.points) {
            left = std::min(left, at.x - reach);
            right = std::max(right, at.x + reach);
            top = std::min(top, at.y - reach);
            bottom = std::max(bottom, at.y + reach);
        }
    }
    return {left, top, right - left, bottom - top};
}

std::optional<Symbol> parseSymbol(const json& document, const PartKind& kind, SymbolStyle style) {
    if (!document.contains(kMember)) return std::nullopt;
    StrictObject root(document, "");
    StrictObject object = root.object(kMember);
    Symbol symbol;
    symbol.leads = readLeads(object.object("leads"), kind);
    symbol.shapes = readShapes(object, "iec", kind);
    if (object.has("ieee")) {
        std::vector<SymbolShape> other = readShapes(object, "ieee", kind);
        if (style == SymbolStyle::Ieee) symbol.shapes = std::move(other);
    }
    object.done();
    symbol.bounds = boundsOfShapes(symbol.shapes);
    return symbol;
}

using SymbolTable = std::map<const PartKind*, Symbol>;

SymbolTable readTable(SymbolStyle style) {
    SymbolTable table;
    for (const EmbeddedFile& file : embeddedFiles()) {
        if (!file.name.starts_with("parts/")) continue;
        const json document = json::parse(file.text);
        const PartKind* kind = findKind(document.value("kind", ""));
        if (!kind) continue;
        if (auto symbol = parseSymbol(document, *kind, style)) table.emplace(kind, std::move(*symbol));
    }
    return table;
}

}  // namespace

Result<Symbol> readSymbol(std::string_view kindText, const PartKind& kind, SymbolStyle style) {
    try {
        auto symbol = parseSymbol(json::parse(kindText), kind, style);
        if (!symbol) return Error{ErrorKind::Format, "the kind has no symbol", {"/symbol"}, kind.name};
        return std::move(*symbol);
    } catch (const StrictJsonError& error) {
        return Error{ErrorKind::Format, error.what(), {error.pointer()}, kind.name};
    } catch (const json::exception& error) {
        return Error{ErrorKind::Syntax, error.what(), {""}, kind.name};
    }
}

const Symbol* symbolOf(const PartKind& kind, SymbolStyle style) {
    static const SymbolTable kIec = readTable(SymbolStyle::Iec), kIeee = readTable(SymbolStyle::Ieee);
    const SymbolTable& table = style == SymbolStyle::Iec ? kIec : kIeee;
    const auto found = table.find(&kind);
    return found == table.end() ? nullptr : &found->second;
}

bool isDrawn(const SymbolWhen& when, const Part& part, const Inputs& inputs) {
    switch (when.kind) {
        case SymbolWhen::Kind::Always:
            return true;
        case SymbolWhen::Kind::State:
            return part.stateValue(when.index) == when.is;
        case SymbolWhen::Kind::Closed:
            return isPresent(part, part.kind->model[when.index], inputs);
        case SymbolWhen::Kind::Open:
            return !isPresent(part, part.kind->model[when.index], inputs);
    }
    return true;
}

std::vector<int> firstOfTerminal(const PartKind& kind) {
    std::vector<int> first(kind.leads.size());
    for (std::size_t lead = 0; lead < first.size(); ++lead) {
        first[lead] = static_cast<int>(lead);
        for (const std::vector<int>& group : kind.joined) {
            if (std::ranges::find(group, static_cast<int>(lead)) != group.end()) first[lead] = std::ranges::min(group);
        }
    }
    return first;
}

}  // namespace tiepoint
