#include "app/moments.h"

#include "core/snapshot/pinned_value.h"

#include <fmt/format.h>

#include <algorithm>
#include <charconv>
#include <cmath>

namespace tiepoint::app {
namespace {

std::optional<double> wholeNumber(std::string_view text) {
    double value = 0;
    const auto [end, failed] = std::from_chars(text.data(), text.data() + text.size(), value);
    if (failed != std::errc() || end != text.data() + text.size() || !std::isfinite(value)) return std::nullopt;
    return value;
}

Error wrongMoment(std::string message, const std::string& file) {
    return {ErrorKind::Reference, std::move(message), {}, file};
}

}  // namespace

Result<Press> readPress(std::string_view text, const Bench& bench, const std::string& file) {
    const auto wrong = [&](std::string_view why) {
        return wrongMoment(fmt::format("--press {}: {}", text, why), file);
    };
    const std::size_t at = text.find('@');
    const std::size_t dash = at == std::string_view::npos ? at : text.find('-', at);
    if (dash == std::string_view::npos) return wrong("this is written as S1@0.5-0.8, in seconds");
    const auto from = wholeNumber(text.substr(at + 1, dash - at - 1)), until = wholeNumber(text.substr(dash + 1));
    if (!from || !until || *from < 0 || !(*until > *from)) return wrong("these are no times, one after the other");
    Press press{std::string(text.substr(0, at)), *from, *until};
    const Part* part = bench.findPart(press.part);
    if (!part) return wrong("the bench has no part of that id");
    if (std::ranges::none_of(part->kind->model, &ElementSpec::whenHeld))
        return wrong(fmt::format("a {} can't be pressed", part->kind->label));
    return press;
}

Result<PinnedReading> readTraced(std::string_view name, const Bench& bench, const std::string& file) {
    PinnedReading reading;
    reading.id = name;
    const std::string id(name);
    if (const int part = bench.partIndex(id); part >= 0) {
        reading.of = AmperesIn{id, bench.parts[part].kind->leads.front().name};
        return reading;
    }
    if (bench.jumperIndex(id) >= 0) {
        reading.of = AmperesIn{id, ""};
        return reading;
    }
    const auto hole = parseHole(id);
    if (!hole || !holeMm(bench, *hole))
        return wrongMoment(fmt::format("--read {}: the bench has no hole, part or jumper of that name", name), file);
    reading.of = VoltsAt{*hole};
    return reading;
}

Trace follow(const std::shared_ptr<const Bench>& bench, const Inputs& inputs, const std::vector<PinnedReading>& things,
             double untilSecond, double everySecond) {
    const auto runner = makeRunner();
    runner->setInputs(inputs);
    runner->setBench(1, bench);
    Trace trace;
    constexpr double kRounding = 1e-9;
    const auto rows = static_cast<long long>(std::floor(untilSecond / everySecond + kRounding));
    const bool endsBetween = static_cast<double>(rows) * everySecond < untilSecond * (1 - kRounding);
    for (long long row = 0; row <= rows + (endsBetween ? 1 : 0); ++row) {
        const double second = row > rows ? untilSecond : static_cast<double>(row) * everySecond;
        runner->advanceTo(second);
        const auto snapshot = runner->snapshot();
        if (snapshot->status() == Status::None) {
            trace.stopped = snapshot->solution.reason;
            break;
        }
        TraceRow& read = trace.rows.emplace_back();
        read.second = second;
        for (const PinnedReading& thing : things) read.figures.push_back(pinnedValue(*snapshot, thing).value);
    }
    return trace;
}

std::shared_ptr<const Snapshot> momentOf(const std::shared_ptr<const Bench>& bench, const Inputs& inputs,
                                         double second) {
    const auto runner = makeRunner();
    runner->setInputs(inputs);
    runner->setBench(1, bench);
    runner->advanceTo(second);
    return runner->snapshot();
}

}  // namespace tiepoint::app
