// tiepoint truth FILE: every combination of the switches, which lights are lit, and the shortest expression for each.

#include "app/bench_input.h"
#include "app/commands.h"
#include "app/json_writer.h"
#include "app/output.h"
#include "app/solve_report.h"
#include "core/base/printable.h"
#include "core/base/quantity.h"
#include "core/snapshot/lit.h"
#include "core/truth/truth_table.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace tiepoint::app {
namespace {

struct TruthOptions {
    BenchInput input;
    bool json = false;
};

const std::string& lampName(const Bench& bench, const TruthTable& table, std::size_t lamp) {
    return bench.parts[table.lamps[lamp]].id;
}

void writeSwitches(JsonWriter& json, const Bench& bench, const TruthTable& table) {
    json.key("switches").beginArray();
    for (const TruthSwitch& column : table.switches) {
        json.beginObject(JsonWriter::Form::Row)
            .field("name", column.name)
            .field("part", bench.parts[column.thrown.part].id);
        json.texts("positions", column.positions).endObject();
    }
    json.endArray();
}

void writeRow(JsonWriter& json, const Bench& bench, const TruthTable& table, const TruthRow& row) {
    json.beginObject(JsonWriter::Form::Row).key("switches").beginObject(JsonWriter::Form::Row);
    for (std::size_t s = 0; s < table.switches.size(); ++s) json.field(table.switches[s].name, row.digits[s]);
    json.endObject().field("status", statusName(row.status)).field("supplyLimiting", row.limiting);
    json.key("lamps").beginObject(JsonWriter::Form::Row);
    for (std::size_t lamp = 0; lamp < table.lamps.size(); ++lamp) {
        json.key(lampName(bench, table, lamp));
        if (row.status == Status::None) {
            json.null();
            continue;
        }
        const LampState& state = row.lamps[lamp];
        json.beginObject(JsonWriter::Form::Row).field("lit", state.lit).field("brightness", state.brightness);
        json.field("current", state.currentAmpere);
        if (state.glow == Glow::Blinks) json.field("blinksEvery", row.periodSecond);
        if (state.glow == Glow::Open) json.field("undecided", true);
        json.endObject();
    }
    json.endObject().endObject();
}

void writeLogic(JsonWriter& json, const Bench& bench, const TruthTable& table) {
    const auto names = table.switchNames();
    json.key("expressions").beginObject();
    for (std::size_t lamp = 0; lamp < table.lamps.size(); ++lamp) {
        json.key(lampName(bench, table, lamp));
        const auto& logic = table.logic[lamp];
        if (!logic)
            json.null();
        else {
            json.beginObject(JsonWriter::Form::Row)
                .field("text", logic->expression.inWords(names))
                .field("exact", logic->exact);
            json.endObject();
        }
    }
    json.endObject();
}

std::vector<std::string> idleNames(const TruthTable& table) {
    std::vector<std::string> names;
    for (const int index : table.idle) names.push_back(table.switches[index].name);
    return names;
}

std::string truthAsJson(const Bench& bench, const TruthTable& table) {
    JsonWriter json;
    json.beginObject().field("title", bench.title).field("litFromBrightness", kVisibleBrightness);
    writeSwitches(json, bench, table);
    json.key("rows").beginArray();
    for (const TruthRow& row : table.rows) writeRow(json, bench, table, row);
    json.endArray();
    writeLogic(json, bench, table);
    json.texts("idle", idleNames(table)).endObject();
    return json.take();
}

/// To three digits.
double rounded(double value) {
    const double step = std::pow(10, std::floor(std::log10(value)) - 2);
    return std::round(value / step) * step;
}

std::string cellText(const TruthRow& row, std::size_t lamp) {
    if (row.status == Status::None) return "no answer";
    const LampState& state = row.lamps[lamp];
    if (state.glow == Glow::Open) return "still changing";
    if (state.glow == Glow::Blinks) return fmt::format("blinks, {}", formatQuantity(rounded(row.periodSecond), "s"));
    return state.lit ? fmt::format("lit {:.0f} %", 100 * state.brightness) : "dark";
}

std::string headText(const Bench& bench, const TruthTable& table) {
    const auto counted = [](std::size_t count, std::string_view one, std::string_view several) {
        return fmt::format("{} {}", count, count == 1 ? one : several);
    };
    std::string text =
        fmt::format("{}: {}, {}\n", printable(bench.title), counted(table.switches.size(), "switch", "switches"),
                    counted(table.lamps.size(), "lamp", "lamps"));
    for (const TruthSwitch& column : table.switches) {
        text += fmt::format("  {}:", column.name);
        for (std::size_t digit = 0; digit < column.positions.size(); ++digit) {
            text += fmt::format("{} {} {}", digit == 0 ? "" : ",", digit, column.positions[digit]);
        }
        text += '\n';
    }
    return text;
}

std::size_t widestCell(const TruthTable& table) {
    std::size_t width = 11;
    for (const TruthRow& row : table.rows)
        for (std::size_t lamp = 0; lamp < table.lamps.size(); ++lamp)
            width = std::max(width, cellText(row, lamp).size());
    return width;
}

std::string rowsText(const Bench& bench, const TruthTable& table) {
    const std::size_t width = widestCell(table);
    std::string text = "\n ";
    for (const TruthSwitch& column : table.switches) text += ' ' + column.name;
    text += " |";
    for (std::size_t lamp = 0; lamp < table.lamps.size(); ++lamp)
        text += fmt::format(" {:<{}}", lampName(bench, table, lamp), width);
    while (text.ends_with(' ')) text.pop_back();
    for (const TruthRow& row : table.rows) {
        text += "\n ";
        for (std::size_t s = 0; s < row.digits.size(); ++s)
            text += fmt::format(" {:>{}}", row.digits[s], table.switches[s].name.size());
        text += " |";
        for (std::size_t lamp = 0; lamp < table.lamps.size(); ++lamp)
            text += fmt::format(" {:<{}}", cellText(row, lamp), width);
        if (row.limiting) text += " (a supply is at its current limit)";
        while (text.ends_with(' ')) text.pop_back();
    }
    return text + '\n';
}

std::string logicText(const Bench& bench, const TruthTable& table) {
    const auto names = table.switchNames();
    std::string text = "\n";
    for (std::size_t lamp = 0; lamp < table.lamps.size(); ++lamp) {
        if (const auto& logic = table.logic[lamp]) {
            const bool constant = logic->expression.isConstant();
            const std::string words = logic->expression.inWords(names);
            text += fmt::format(fmt::runtime(constant ? "{} is {} lit\n" : "{} is lit when {}\n"),
                                lampName(bench, table, lamp), words);
        }
    }
    for (const std::string& name : idleNames(table))
        text += fmt::format("{} changes nothing: every current stays the same.\n", name);
    return text;
}

std::string truthAsText(const Bench& bench, const TruthTable& table) {
    return headText(bench, table) + rowsText(bench, table) + logicText(bench, table);
}

int runTruth(const TruthOptions& options) {
    const auto bench = options.input.read();
    if (!bench) return complain(bench.error());
    auto table = makeTruthTable(*bench);
    if (!table) {
        Error error = table.error();
        error.file = options.input.file;
        return complain(error);
    }
    print(options.json ? truthAsJson(**bench, *table) : truthAsText(**bench, *table));
    const bool allSolved =
        std::ranges::none_of(table->rows, [](const TruthRow& row) { return row.status == Status::None; });
    return allSolved ? kExitGood : kExitBad;
}

}  // namespace

Action declareTruth(CLI::App& parser) {
    auto options = std::make_shared<TruthOptions>();
    options->input.declareFile(parser);
    parser.add_flag("--json", options->json, "Write JSON");
    return [options] { return runTruth(*options); };
}

}  // namespace tiepoint::app
