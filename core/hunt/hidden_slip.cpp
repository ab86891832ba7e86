#include "core/hunt/hidden_slip.h"

#include "core/base/json_scan.h"
#include "core/base/json_text.h"
#include "core/bench/seal.h"
#include "core/edit/edit_file.h"

#include <algorithm>

namespace tiepoint {
namespace {

std::string listOf(const std::vector<std::string>& lines) {
    std::string text = "[";
    for (const std::string& line : lines) text += (text.size() > 1 ? ", " : "") + line;
    return text + ']';
}

std::vector<std::string> quoted(const std::vector<std::string>& texts) {
    std::vector<std::string> all;
    for (const std::string& text : texts) all.push_back(jsonString(text));
    return all;
}

/// Reads members of a sealed text.
class SealReader {
public:
    SealReader(std::string_view text, const JsonValue& json, const Bench& bench)
        : text_(text),
          json_(json),
          bench_(bench) {}

    std::string words(std::string_view name) {
        const JsonValue* member = find(name, JsonType::String);
        return member ? member->text : std::string();
    }
    double number(std::string_view name) {
        const JsonValue* member = find(name, JsonType::Number);
        return member ? member->number : 0;
    }
    std::vector<std::string> list(std::string_view name) {
        std::vector<std::string> all;
        if (const JsonValue* member = find(name, JsonType::List))
            for (const JsonValue& item : member->items) all.push_back(item.text);
        return all;
    }
    Edit edit(std::string_view name) {
        const JsonValue* member = find(name, JsonType::List);
        if (!member) return {};
        auto read = readOperations(text_, member->begin, member->end, {}, bench_);
        if (read) return std::move(read).value().edit;
        good_ = false;
        return {};
    }
    bool good() const { return good_; }

private:
    const JsonValue* find(std::string_view name, JsonType type) {
        const JsonValue* member = json_.member(name);
        if (member && member->type == type) return member;
        good_ = false;
        return nullptr;
    }

    std::string_view text_;
    const JsonValue& json_;
    const Bench& bench_;
    bool good_ = true;
};

/// Whether anything that is otherwise on the right thing is on this one as on the wrong one.
template <class List>
bool anyAsWrong(const List& now, const List& wrong, const List& right) {
    for (std::size_t i = 0; i < now.size() && i < wrong.size() && i < right.size(); ++i)
        if (wrong[i] != right[i] && now[i] == wrong[i]) return true;
    return false;
}
bool isAsWrong(const Part& now, const Part& wrong, const Part& right) {
    return anyAsWrong(now.leads, wrong.leads, right.leads) || anyAsWrong(now.values, wrong.values, right.values) ||
           anyAsWrong(now.state, wrong.state, right.state) ||
           (wrong.condition != right.condition && now.condition == wrong.condition);
}
bool isAsWrong(const Jumper& now, const Jumper& wrong, const Jumper& right) {
    for (std::size_t end = 0; end < now.ends.size(); ++end)
        if (wrong.ends[end] != right.ends[end] && now.ends[end] == wrong.ends[end]) return true;
    return wrong.condition != right.condition && now.condition == wrong.condition;
}

/// The thing as an edit puts it; null where it doesn't.
template <class Replace>
const Replace* putBy(const Edit& edit, const std::string& id) {
    for (const Operation& operation : edit.operations) {
        const auto* replace = std::get_if<Replace>(&operation);
        if constexpr (std::is_same_v<Replace, ReplacePart>) {
            if (replace && replace->part.id == id) return replace;
        } else {
            if (replace && replace->jumper.id == id) return replace;
        }
    }
    return nullptr;
}

}  // namespace

std::optional<HiddenSlip> hiddenSlipOf(const Bench& bench) {
    const auto sealed = sealedSlipOf(bench);
    if (!sealed) return std::nullopt;
    const auto json = parseJson(sealed->slip);
    if (!json) return std::nullopt;
    SealReader reader(sealed->slip, *json, bench);
    HiddenSlip slip;
    slip.seen = sealed->seen;
    slip.kind = reader.words("kind");
    slip.fault = findFault(reader.words("fault"));
    slip.things = reader.list("things");
    slip.told = reader.words("told");
    slip.mendWords = reader.words("mendWords");
    slip.hidden = reader.number("hidden") != 0;
    slip.readings = static_cast<int>(reader.number("readings"));
    slip.mend = reader.edit("mend");
    slip.wrong = reader.edit("wrong");
    if (!reader.good() || !slip.fault || slip.things.empty()) return std::nullopt;
    return slip;
}

void hideSlip(Bench& bench, const HiddenSlip& slip) {
    std::string text = "{\"kind\": " + jsonString(slip.kind) + ", \"fault\": " + jsonString(slip.fault->name);
    text += ", \"things\": " + listOf(quoted(slip.things)) + ", \"told\": " + jsonString(slip.told);
    text += ", \"mendWords\": " + jsonString(slip.mendWords) + ", \"hidden\": " + (slip.hidden ? "1" : "0");
    text += ", \"readings\": " + jsonNumber(slip.readings);
    text += ", \"mend\": " + listOf(operationLines(slip.mend, bench));
    text += ", \"wrong\": " + listOf(operationLines(slip.wrong, bench)) + "}";
    sealSlip(bench, {slip.seen, text});
}

bool isStillThere(const Bench& bench, const HiddenSlip& slip) {
    for (const Operation& operation : slip.wrong.operations) {
        if (const auto* part = std::get_if<ReplacePart>(&operation)) {
            const Part* now = bench.findPart(part->part.id);
            const auto* right = putBy<ReplacePart>(slip.mend, part->part.id);
            if (!now || (right && isAsWrong(*now, part->part, right->part))) return true;
        } else if (const auto* jumper = std::get_if<ReplaceJumper>(&operation)) {
            const Jumper* now = bench.findJumper(jumper->jumper.id);
            const auto* right = putBy<ReplaceJumper>(slip.mend, jumper->jumper.id);
            if (!now || (right && isAsWrong(*now, jumper->jumper, right->jumper))) return true;
        }
    }
    return false;
}

bool isHunting(const Bench& bench) {
    const auto slip = hiddenSlipOf(bench);
    return slip && isStillThere(bench, *slip);
}

std::optional<Bench> mended(const Bench& bench, const HiddenSlip& slip) {
    auto applied = apply(bench, slip.mend);
    if (!applied) return std::nullopt;
    return std::move(applied).value().bench;
}

}  // namespace tiepoint
