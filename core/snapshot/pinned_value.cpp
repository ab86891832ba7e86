#include "core/snapshot/pinned_value.h"

#include "core/base/json_scan.h"

#include <algorithm>
#include <limits>

namespace tiepoint {
namespace {

/// Asks a solved snapshot.
struct PinReader {
    const Snapshot& snapshot;

    const Layout& layout() const { return *snapshot.layout; }
    double volt(const Hole& hole) const {
        return snapshot.solution.netVoltage[layout().netOfHole(layout().holeIndex(hole))];
    }

    PinnedValue operator()(const VoltsAt& at) const { return {volt(at.hole), "V"}; }
    PinnedValue operator()(const VoltsBetween& between) const {
        return {volt(between.first) - volt(between.second), "V"};
    }
    PinnedValue operator()(const AmperesIn& in) const {
        const Bench& bench = *layout().bench;
        if (in.lead.empty()) return {snapshot.jumperCurrent(bench.jumperIndex(in.id)), "A"};
        const int part = bench.partIndex(in.id);
        return {snapshot.leadCurrent[layout().leadIndex(part, bench.parts[part].kind->leadIndex(in.lead))], "A"};
    }
    PinnedValue operator()(const WattsOf& of) const {
        return {snapshot.partPower[layout().bench->partIndex(of.part)], "W"};
    }
};

/// The same as it is shown.
struct ShownReader {
    const Snapshot& snapshot;

    const Layout& layout() const { return *snapshot.layout; }
    Figure volt(const Hole& hole) const { return snapshot.shown().volt(layout().netOfHole(layout().holeIndex(hole))); }

    Figure operator()(const VoltsAt& at) const { return volt(at.hole); }
    Figure operator()(const VoltsBetween& between) const { return volt(between.first) - volt(between.second); }
    Figure operator()(const AmperesIn& in) const {
        const Bench& bench = *layout().bench;
        if (in.lead.empty()) return snapshot.shown().jumperCurrent(bench.jumperIndex(in.id));
        const int part = bench.partIndex(in.id);
        return snapshot.shown().leadCurrent(layout().leadIndex(part, bench.parts[part].kind->leadIndex(in.lead)));
    }
    Figure operator()(const WattsOf& of) const { return snapshot.shown().power(layout().bench->partIndex(of.part)); }
};

struct PinUnit {
    std::string_view operator()(const VoltsAt&) const { return "V"; }
    std::string_view operator()(const VoltsBetween&) const { return "V"; }
    std::string_view operator()(const AmperesIn&) const { return "A"; }
    std::string_view operator()(const WattsOf&) const { return "W"; }
};

}  // namespace

PinnedValue pinnedValue(const Snapshot& snapshot, const PinnedReading& reading) {
    if (snapshot.status() == Status::Solved) return std::visit(PinReader{snapshot}, reading.of);
    return {std::numeric_limits<double>::quiet_NaN(), std::visit(PinUnit{}, reading.of)};
}

std::optional<std::string> frozenText(const PinnedReading& reading) {
    const auto member = std::ranges::find(reading.extras, kFrozenMember, &Extras::value_type::first);
    if (member == reading.extras.end()) return std::nullopt;
    const auto json = parseJson(member->second);
    if (!json || json->type != JsonType::String) return std::nullopt;
    return json->text;
}

std::string pinnedText(const Snapshot& snapshot, const PinnedReading& reading) {
    if (const auto frozen = frozenText(reading)) return *frozen;
    if (snapshot.status() == Status::Off) return "off";
    if (snapshot.status() == Status::None) return "no answer";
    const Figure read = std::visit(ShownReader{snapshot}, reading.of);
    if (!read.isKnown()) return "floating";
    if (std::holds_alternative<AmperesIn>(reading.of)) return read.magnitude().text();
    if (std::holds_alternative<WattsOf>(reading.of) && read.steps() < 0) return "gives " + (-read).text();
    return read.text();
}

}  // namespace tiepoint
