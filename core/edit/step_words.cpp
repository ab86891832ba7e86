#include "core/edit/step_words.h"

#include "core/base/quantity.h"
#include "core/edit/holes.h"

#include <fmt/format.h>

#include <algorithm>
#include <optional>

namespace tiepoint {
namespace {

constexpr int kMostWords = 3;

/// What an operation did to one thing: "R1" and "in".
struct Deed {
    std::string thing, verb;
    std::string whole;  ///< words that say it better where nothing else was done; may be empty
};

/// What a jumper's end leads to: "plus" or "minus" of a supply, or a part in the same piece of metal; nothing where that is empty.
std::string reachedBy(const Bench& bench, const JumperEnd& end) {
    const Hole* hole = std::get_if<Hole>(&end);
    std::string reached;
    for (const Part& part : bench.parts) {
        for (std::size_t lead = 0; lead < part.leads.size(); ++lead) {
            const bool socket = !hole && std::get<Socket>(end) == Socket{part.id, static_cast<int>(lead)};
            const bool here = hole && part.leads[lead] && sameStrip(bench, *hole, *part.leads[lead]);
            if (!socket && !here) continue;
            if (part.kind->isSupply)
                return part.kind->leads[lead].description.find("red") != std::string::npos ? "plus" : "minus";
            if (reached.empty()) reached = part.id;
        }
    }
    return reached;
}

std::string joiningWords(const Bench& bench, const Jumper& jumper) {
    std::string from = reachedBy(bench, jumper.ends[0]), to = reachedBy(bench, jumper.ends[1]);
    const auto isSupply = [](const std::string& name) { return name == "plus" || name == "minus"; };
    if (isSupply(from)) std::swap(from, to);
    if (isSupply(to)) return from.empty() ? "joined to " + to : from + " to " + to;
    return from.empty() || to.empty() || from == to ? std::string() : from + " to " + to;
}

/// "green to red", "R1 220 ohm", "PS1 off": the first setting that differs; nothing if none does.
std::optional<std::string> settingWords(const Part& part, const std::vector<ValueSpec>& specs,
                                        const std::vector<Setting>& before, const std::vector<Setting>& now) {
    for (std::size_t i = 0; i < specs.size(); ++i) {
        if (before[i] == now[i]) continue;
        const ValueSpec& spec = specs[i];
        const double was = before[i].value_or(spec.fallback), is = now[i].value_or(spec.fallback);
        if (spec.type == ValueType::Choice)
            return fmt::format("{} to {}", spec.choices[static_cast<std::size_t>(was)].label,
                               spec.choices[static_cast<std::size_t>(is)].label);
        if (spec.type == ValueType::Switch)
            return fmt::format("{} {}", part.id,
                               spec.name == "on" ? (is != 0 ? "on" : "off") : (is != 0 ? "closed" : "open"));
        if (spec.unit.empty()) return part.id + " set";
        return fmt::format("{} {}", part.id, formatQuantity(is, spec.unit));
    }
    return std::nullopt;
}

bool sameHoles(std::vector<std::optional<Hole>> a, std::vector<std::optional<Hole>> b) {
    std::ranges::sort(a);
    std::ranges::sort(b);
    return a == b;
}

class Teller {
public:
    Teller(const Bench& before, const Bench& after) : before_(before), after_(after) {}

    Deed operator()(const AddBoard& add) const { return {add.board.id, "in", "board " + add.board.id + " in"}; }
    Deed operator()(const AddPart& add) const { return {add.part.id, "in", {}}; }
    Deed operator()(const AddJumper& add) const { return {add.jumper.id, "in", joiningWords(after_, add.jumper)}; }
    Deed operator()(const AddNote& add) const { return {add.note.id, "in", "a note"}; }
    Deed operator()(const AddPinned& add) const { return {add.reading.id, "in", "reading pinned"}; }
    Deed operator()(const Remove& remove) const {
        if (before_.findNote(remove.id)) return {remove.id, "out", "note away"};
        if (before_.findPinned(remove.id)) return {remove.id, "out", "reading away"};
        return {remove.id, "out", {}};
    }
    Deed operator()(const ReplaceBoard& replace) const { return {replace.board.id, "moved", {}}; }
    Deed operator()(const ReplaceNote& replace) const { return {replace.note.id, "changed", "note changed"}; }
    Deed operator()(const SetTitle&) const { return {{}, "renamed", "renamed"}; }
    Deed operator()(const SetDisclosure&) const { return {{}, "changed", "what is revealed"}; }
    Deed operator()(const SetSurroundings&) const { return {{}, "changed", "light and warmth"}; }
    Deed operator()(const ReplacePart& replace) const {
        const Part& now = replace.part;
        const Part* was = before_.findPart(now.id);
        if (!was) return {now.id, "changed", {}};
        if (was->leads != now.leads) return {now.id, sameHoles(was->leads, now.leads) ? "turned" : "moved", {}};
        if (const auto words = settingWords(now, now.kind->values, was->values, now.values))
            return {now.id, "set", *words};
        if (const auto words = settingWords(now, now.kind->state, was->state, now.state))
            return {now.id, "set", *words};
        return {now.id, "changed", was->cap == now.cap ? std::string() : fmt::format("{}: key {}", now.id, now.cap)};
    }
    Deed operator()(const ReplaceJumper& replace) const {
        const Jumper& now = replace.jumper;
        const Jumper* was = before_.findJumper(now.id);
        if (!was || was->ends != now.ends) return {now.id, "moved", {}};
        if (was->flat != now.flat) return {now.id, now.flat ? "flat" : "arched", {}};
        return {now.id, "coloured",
                fmt::format("{} {}", now.id, jumperColours()[static_cast<std::size_t>(now.colour)].name)};
    }

private:
    const Bench& before_;
    const Bench& after_;
};

std::string firstWords(const std::string& name) {
    std::size_t end = 0;
    for (int word = 0; word < kMostWords && end != std::string::npos; ++word)
        end = name.find(' ', end + (word > 0 ? 1 : 0));
    return name.substr(0, end);
}

}  // namespace

StepNote stepNote(const Bench& before, const Edit& edit, const Bench& after) {
    StepNote note;
    std::vector<Deed> deeds;
    for (const Operation& operation : edit.operations) {
        deeds.push_back(std::visit(Teller(before, after), operation));
        const std::string& thing = deeds.back().thing;
        if (!thing.empty() && std::ranges::find(note.things, thing) == note.things.end()) note.things.push_back(thing);
    }
    const bool alike =
        !deeds.empty() && std::ranges::all_of(deeds, [&](const Deed& deed) { return deed.verb == deeds.front().verb; });
    if (!alike)
        note.words = firstWords(edit.name);
    else if (deeds.size() == 1 && !deeds.front().whole.empty())
        note.words = deeds.front().whole;
    else if (note.things.size() <= 2)
        note.words = fmt::format("{} {}", fmt::join(note.things, ", "), deeds.front().verb);
    else
        note.words = fmt::format("{} things {}", note.things.size(), deeds.front().verb);
    return note;
}

}  // namespace tiepoint
