// tiepoint spread FILE: between which limits the readings lie with real parts, and how long a battery lasts.

#include "core/spread/spread.h"

#include "app/bench_input.h"
#include "app/commands.h"
#include "app/finding_report.h"
#include "app/json_writer.h"
#include "app/output.h"
#include "core/base/printable.h"
#include "core/base/quantity.h"
#include "core/spread/battery.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace tiepoint::app {
namespace {

struct SpreadOptions {
    BenchInput input;
    std::string battery;
    int cells = 0;
    bool json = false;
};

void writeSpreadReading(JsonWriter& json, const SpreadReading& reading) {
    json.key(reading.name).beginObject(JsonWriter::Form::Row).field("quantity", reading.quantity);
    json.field("nominal", reading.nominal).field("least", reading.least).field("greatest", reading.greatest);
    json.field("mean", reading.mean).field("deviation", reading.deviation).key("most");
    if (reading.most.empty())
        json.null();
    else
        json.value(reading.most);
    json.key("histogram").beginArray(JsonWriter::Form::Row);
    for (const int draws : reading.histogram) json.value(draws);
    json.endArray().endObject();
}

void writeBattery(JsonWriter& json, const BatteryLife& life) {
    json.key("battery").beginObject(JsonWriter::Form::Row).field("part", life.part).field("kind", life.kind);
    json.key("hours");
    if (life.why.empty() && std::isfinite(life.hours))
        json.value(life.hours);
    else
        json.null();
    if (!life.darkFirst.empty()) json.field("dark", life.darkFirst).field("darkHours", life.darkHours);
    json.endObject();
}

std::string spreadAsJson(const Bench& bench, const Spread& spread, const std::optional<BatteryLife>& life) {
    JsonWriter json;
    json.beginObject().field("title", bench.title).field("draws", spread.draws).field("unsolved", spread.unsolved);
    json.key("readings").beginObject();
    for (const SpreadReading& reading : spread.readings) writeSpreadReading(json, reading);
    json.endObject();
    if (life) writeBattery(json, *life);
    json.endObject();
    return json.take();
}

std::string readingLine(const SpreadReading& reading, std::size_t nameWidth) {
    const auto figure = [&](double value) { return formatQuantity(value, reading.unit); };
    std::string line = fmt::format("  {:<{}}  ", reading.name, nameWidth);
    if (std::isnan(reading.nominal)) return line + "joined to nothing\n";
    line += fmt::format("{}", figure(reading.nominal));
    if (reading.most.empty()) return line + ", whatever the tolerances\n";
    line += fmt::format(", from {} to {}; mean {}, standard deviation {}", figure(reading.least),
                        figure(reading.greatest), figure(reading.mean), figure(reading.deviation));
    return line + fmt::format("; {} matters most\n", reading.most);
}

std::string lifeLines(const BatteryLife& life) {
    if (!life.why.empty()) return life.why + '\n';
    if (life.moments.empty()) return fmt::format("{} ({}) is empty.\n", life.part, life.kind);
    std::string text =
        fmt::format("{}: {} last {}, from {} down to {}.\n", life.part, life.kind, lifeInWords(life.hours),
                    formatQuantity(life.moments.front().volt, "V"), formatQuantity(life.moments.back().volt, "V"));
    if (!life.darkFirst.empty())
        text += fmt::format("{} goes dark after {}.\n", life.darkFirst, lifeInWords(life.darkHours));
    return text;
}

std::string spreadAsText(const Bench& bench, const Spread& spread, const std::optional<BatteryLife>& life) {
    std::string text = printable(bench.title) + '\n';
    if (!spread.why.empty()) text += "  " + spread.why + '\n';
    std::size_t width = 0;
    for (const SpreadReading& reading : spread.readings) width = std::max(width, reading.name.size());
    for (const SpreadReading& reading : spread.readings) text += readingLine(reading, width);
    if (life) text += lifeLines(*life);
    return text;
}

/// The battery that is asked for, or why there is none of that name.
Result<BatteryChoice> chosenBattery(const SpreadOptions& options) {
    if (options.battery.empty()) return BatteryChoice{};
    const PartKind* kind = findKind(options.battery);
    if (kind && isBattery(*kind)) return BatteryChoice{kind, options.cells};
    std::string names;
    for (const PartKind* each : batteryKinds()) names += (names.empty() ? "" : " or ") + each->name;
    return Error{ErrorKind::Reference,
                 fmt::format("--battery {}: no battery of that name; say {}", options.battery, names),
                 {},
                 {}};
}

int runSpread(const SpreadOptions& options) {
    const auto bench = options.input.read();
    if (!bench) return complain(bench.error());
    if (const auto held = heldBackByHunt(**bench, options.input.file)) return complain(*held);
    const auto inputs = options.input.inputsFor(**bench);
    if (!inputs) return complain(inputs.error());
    const auto battery = chosenBattery(options);
    if (!battery) return complain(battery.error());
    const auto snapshot = evaluate(*bench, *inputs);
    const Spread spread = spreadOf(snapshot);
    const auto life = batteryLife(snapshot, *battery);
    print(options.json ? spreadAsJson(**bench, spread, life) : spreadAsText(**bench, spread, life));
    return snapshot->status() == Status::None ? kExitBad : kExitGood;
}

}  // namespace

Action declareSpread(CLI::App& parser) {
    constexpr int kMostCells = 8;
    auto options = std::make_shared<SpreadOptions>();
    options->input.declareFile(parser);
    options->input.declareHold(parser);
    CLI::Option* battery = parser.add_option("--battery", options->battery,
                                             "The battery to take in place of the first supply: cells or block-9v");
    parser.add_option("--cells", options->cells, "How many cells its holder takes")
        ->check(CLI::Range(1, kMostCells))
        ->needs(battery);
    parser.add_flag("--json", options->json, "Write JSON");
    return [options] { return runSpread(*options); };
}

}  // namespace tiepoint::app
