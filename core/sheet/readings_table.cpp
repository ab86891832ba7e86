#include "core/sheet/readings_table.h"

#include "core/base/csv.h"
#include "core/base/json_text.h"
#include "core/bench/describe.h"
#include "core/snapshot/pinned_value.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>

namespace tiepoint {
namespace {

/// The same reading as it was: pinned under the same id, of the same thing.
const PinnedReading* sameReading(const Bench& bench, const PinnedReading& reading) {
    const PinnedReading* found = bench.findPinned(reading.id);
    return found && found->of == reading.of ? found : nullptr;
}

/// How many characters a text takes: code points, since all of them are one cell broad here.
std::size_t cellsOf(const std::string& text) {
    return static_cast<std::size_t>(std::ranges::count_if(text, [](char each) { return (each & 0xc0) != 0x80; }));
}

std::string paddedTo(const std::string& text, std::size_t cells) {
    return text + std::string(cells - std::min(cells, cellsOf(text)), ' ');
}

}  // namespace

std::vector<ReadingRow> readingsTable(const Snapshot* before, const Snapshot& now) {
    const Bench& bench = *now.layout->bench;
    std::vector<ReadingRow> rows;
    for (const PinnedReading& reading : bench.pinned) {
        ReadingRow row;
        row.what = measurandInWords(bench, reading.of);
        const PinnedValue value = pinnedValue(now, reading);
        row.now = pinnedText(now, reading);
        row.nowValue = value.value;
        row.unit = value.unit;
        row.beforeValue = std::nan("");
        if (const PinnedReading* was = before ? sameReading(*before->layout->bench, reading) : nullptr) {
            row.before = pinnedText(*before, *was);
            row.beforeValue = pinnedValue(*before, *was).value;
        }
        rows.push_back(std::move(row));
    }
    return rows;
}

std::string readingsAsText(const std::vector<ReadingRow>& rows) {
    std::vector<std::array<std::string, 3>> lines{{"Reading", "Before", "Now"}};
    for (const ReadingRow& row : rows) lines.push_back({row.what, row.before, row.now});
    std::array<std::size_t, 3> cells{};
    for (const auto& line : lines)
        for (std::size_t c = 0; c < line.size(); ++c) cells[c] = std::max(cells[c], cellsOf(line[c]));
    std::string text;
    for (const auto& line : lines) {
        std::string one = fmt::format("{}  {}  {}", paddedTo(line[0], cells[0]), paddedTo(line[1], cells[1]), line[2]);
        while (one.ends_with(' ')) one.pop_back();
        text += one + '\n';
    }
    return text;
}

std::string readingsAsCsv(const std::vector<ReadingRow>& rows) {
    std::string csv = csvLine({"reading", "unit", "before", "now"});
    const auto number = [](double value) { return std::isfinite(value) ? jsonNumber(value) : std::string(); };
    for (const ReadingRow& row : rows)
        csv += csvLine({csvText(row.what), row.unit, number(row.beforeValue), number(row.nowValue)});
    return csv;
}

}  // namespace tiepoint
