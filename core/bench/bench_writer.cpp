// An ordered writer of our own: members always stand in the same order and each board, part, jumper, note and pinned
// reading on its own line, so that two versions of a bench can be compared line by line.

#include "core/base/json_text.h"
#include "core/bench/bench_file.h"
#include "core/bench/jumper_ends.h"
#include "core/bench/read_objects.h"
#include "core/bench/seal.h"

namespace tiepoint {
namespace {

/// Writes one object on one line: {"id": "R1", "kind": "resistor"}.
class LineWriter {
public:
    explicit LineWriter(std::string& out) : out_(out) { out_ += '{'; }

    void member(std::string_view name, std::string_view json) {
        if (!empty_) out_ += ", ";
        empty_ = false;
        out_ += jsonString(name);
        out_ += ": ";
        out_ += json;
    }
    void extras(const Extras& extras) {
        for (const auto& [name, json] : extras) member(name, json);
    }
    void close() { out_ += '}'; }
    bool empty() const { return empty_; }

private:
    std::string& out_;
    bool empty_ = true;
};

std::string pair(std::string_view first, std::string_view second) {
    return '[' + std::string(first) + ", " + std::string(second) + ']';
}

void write(const Board& board, std::string& out) {
    LineWriter line(out);
    line.member("id", jsonString(board.id));
    line.member("kind", jsonString(board.kind->name));
    line.member("at", pair(jsonNumber(board.atX), jsonNumber(board.atY)));
    if (board.rails == Rails::Split) line.member("rails", jsonString("split"));
    if (board.labels == Labels::ABottom) line.member("labels", jsonString("a-bottom"));
    line.extras(board.extras);
    line.close();
}

std::string settingText(const ValueSpec& spec, double value) {
    if (spec.type == ValueType::Choice) return jsonString(spec.choices[static_cast<std::size_t>(value)].name);
    if (spec.type == ValueType::Switch) return value != 0 ? "true" : "false";
    return jsonNumber(value);
}

/// Only what was set; an object without members is left out.
void writeSettings(LineWriter& line, std::string_view name, const std::vector<ValueSpec>& specs,
                   const std::vector<Setting>& settings) {
    std::string json;
    LineWriter object(json);
    for (std::size_t i = 0; i < specs.size(); ++i) {
        if (settings[i]) object.member(specs[i].name, settingText(specs[i], *settings[i]));
    }
    object.close();
    if (!object.empty()) line.member(name, json);
}

void writeLeads(LineWriter& line, const Part& part) {
    std::string json;
    LineWriter object(json);
    for (std::size_t i = 0; i < part.leads.size(); ++i) {
        if (part.leads[i]) object.member(part.kind->leads[i].name, jsonString(toString(*part.leads[i])));
    }
    object.close();
    if (!object.empty()) line.member("leads", json);
}

void writeCondition(LineWriter& line, Condition condition) {
    if (condition != Condition::Sound)
        line.member("condition", jsonString(kConditionNames[static_cast<std::size_t>(condition)]));
}

void write(const Part& part, std::string& out) {
    LineWriter line(out);
    line.member("id", jsonString(part.id));
    line.member("kind", jsonString(part.kind->name));
    if (part.at) line.member("at", pair(jsonNumber(part.at->x), jsonNumber(part.at->y)));
    writeLeads(line, part);
    writeSettings(line, "values", part.kind->values, part.values);
    writeSettings(line, "state", part.kind->state, part.state);
    if (!part.cap.empty()) line.member("cap", jsonString(part.cap));
    writeCondition(line, part.condition);
    line.extras(part.extras);
    line.close();
}

void write(const Jumper& jumper, const PartKinds& kinds, std::string& out) {
    LineWriter line(out);
    line.member("id", jsonString(jumper.id));
    line.member("ends", pair(endText(jumper.ends[0], kinds), endText(jumper.ends[1], kinds)));
    line.member("colour", jsonString(jumperColours()[jumper.colour].name));
    if (jumper.flat) line.member("flat", "true");
    writeCondition(line, jumper.condition);
    line.extras(jumper.extras);
    line.close();
}

void write(const Note& note, std::string& out) {
    LineWriter line(out);
    line.member("id", jsonString(note.id));
    line.member("at", jsonString(toString(note.at)));
    line.member("text", jsonString(note.text));
    line.extras(note.extras);
    line.close();
}

/// The value of the member that names what is measured.
struct MeasurandText {
    std::string operator()(const VoltsAt& at) const { return jsonString(toString(at.hole)); }
    std::string operator()(const VoltsBetween& between) const {
        return pair(jsonString(toString(between.first)), jsonString(toString(between.second)));
    }
    std::string operator()(const AmperesIn& in) const {
        return jsonString(in.lead.empty() ? in.id : in.id + '.' + in.lead);
    }
    std::string operator()(const WattsOf& of) const { return jsonString(of.part); }
};

void write(const PinnedReading& reading, std::string& out) {
    LineWriter line(out);
    line.member("id", jsonString(reading.id));
    line.member(quantityOf(reading.of), std::visit(MeasurandText{}, reading.of));
    line.extras(reading.extras);
    line.close();
}

void write(const SavedViews& views, std::string& out) {
    const auto yesNo = [](bool yes) { return yes ? "true" : "false"; };
    LineWriter line(out);
    line.member("arrows", jsonString(kArrowsNames[static_cast<std::size_t>(views.shown.arrows)]));
    line.member("voltage", yesNo(views.shown.voltage));
    line.member("strips", yesNo(views.shown.strips));
    line.member("readings", yesNo(views.shown.readings));
    line.member("turned", yesNo(views.shown.turned));
    if (views.shown.lockedFullScaleAmpere) line.member("fullScale", jsonNumber(*views.shown.lockedFullScaleAmpere));
    line.extras(views.extras);
    line.close();
}

void write(const Disclosure& disclosure, std::string& out) {
    LineWriter line(out);
    line.member("level", jsonNumber(static_cast<int>(disclosure.level)));
    if (!disclosure.lock.empty()) line.member("lock", jsonString(disclosure.lock));
    line.extras(disclosure.extras);
    line.close();
}

void write(const SaidSurroundings& surroundings, std::string& out) {
    LineWriter line(out);
    line.member("light", jsonNumber(surroundings.lightLux));
    line.member("temperature", jsonNumber(surroundings.temperatureCelsius));
    const auto held = [&](std::string_view name, const std::optional<HeldOver>& over, std::string_view figure) {
        if (!over) return;
        std::string text;
        LineWriter object(text);
        object.member("at", pair(jsonNumber(over->at.x), jsonNumber(over->at.y)));
        object.member(figure, jsonNumber(over->there));
        object.close();
        line.member(name, text);
    };
    held("torch", surroundings.torch, "light");
    held("hand", surroundings.hand, "temperature");
    line.extras(surroundings.extras);
    line.close();
}

template <class Item, class Write>
void writeList(std::string_view name, const std::vector<Item>& items, Write writeItem, std::string& out) {
    out += ",\n  " + jsonString(name) + ": [";
    std::string_view separator = "\n    ";
    for (const Item& item : items) {
        out += separator;
        writeItem(item);
        separator = ",\n    ";
    }
    out += items.empty() ? "]" : "\n  ]";
}

}  // namespace

std::string writeBench(const Bench& whole) {
    const std::optional<Bench> hiding = asInFile(whole);
    const Bench& bench = hiding ? *hiding : whole;
    const PartKinds kinds = kindsOf(bench);
    std::string out =
        "{\n  \"format\": \"tiepoint-bench\",\n  \"version\": 1,\n  \"title\": " + jsonString(bench.title);
    if (bench.disclosure) {
        out += ",\n  \"reveal\": ";
        write(*bench.disclosure, out);
    }
    if (bench.surroundings) {
        out += ",\n  \"surroundings\": ";
        write(*bench.surroundings, out);
    }
    writeList(
        "boards", bench.boards, [&](const Board& board) { write(board, out); }, out);
    writeList(
        "parts", bench.parts, [&](const Part& part) { write(part, out); }, out);
    writeList(
        "jumpers", bench.jumpers, [&](const Jumper& jumper) { write(jumper, kinds, out); }, out);
    if (!bench.notes.empty()) {
        writeList(
            "notes", bench.notes, [&](const Note& note) { write(note, out); }, out);
    }
    if (!bench.pinned.empty()) {
        writeList(
            "pinned", bench.pinned, [&](const PinnedReading& reading) { write(reading, out); }, out);
    }
    if (bench.views) {
        out += ",\n  \"views\": ";
        write(*bench.views, out);
    }
    for (const auto& [name, json] : bench.extras) out += ",\n  " + jsonString(name) + ": " + json;
    return out += "\n}\n";
}

std::string boardLine(const Board& board) {
    std::string out;
    write(board, out);
    return out;
}

std::string partLine(const Part& part) {
    std::string out;
    write(part, out);
    return out;
}

std::string jumperLine(const Jumper& jumper, const PartKinds& kinds) {
    std::string out;
    write(jumper, kinds, out);
    return out;
}

std::string noteLine(const Note& note) {
    std::string out;
    write(note, out);
    return out;
}

std::string pinnedLine(const PinnedReading& reading) {
    std::string out;
    write(reading, out);
    return out;
}

std::string disclosureLine(const Disclosure& disclosure) {
    std::string out;
    write(disclosure, out);
    return out;
}

std::string surroundingsLine(const SaidSurroundings& surroundings) {
    std::string out;
    write(surroundings, out);
    return out;
}

}  // namespace tiepoint
