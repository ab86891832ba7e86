#include "core/snapshot/pinned_value.h"

#include "core/base/quantity.h"

#include <fmt/format.h>

#include <cmath>
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

struct Unit {
    std::string_view operator()(const VoltsAt&) const { return "V"; }
    std::string_view operator()(const VoltsBetween&) const { return "V"; }
    std::string_view operator()(const AmperesIn&) const { return "A"; }
    std::string_view operator()(const WattsOf&) const { return "W"; }
};

}  // namespace

PinnedValue pinnedValue(const Snapshot& snapshot, const PinnedReading& reading) {
    if (snapshot.status() == Status::Solved) return std::visit(PinReader{snapshot}, reading.of);
    return {std::numeric_limits<double>::quiet_NaN(), std::visit(Unit{}, reading.of)};
}

std::string pinnedText(const Snapshot& snapshot, const PinnedReading& reading) {
    if (snapshot.status() == Status::Off) return "off";
    if (snapshot.status() == Status::None) return "no answer";
    const PinnedValue read = pinnedValue(snapshot, reading);
    if (std::isnan(read.value)) return "floating";
    if (read.unit == "A") return formatQuantity(std::abs(read.value), "A");
    if (read.unit == "W" && read.value < 0) return "gives " + formatQuantity(-read.value, "W");
    return formatQuantity(read.value, read.unit);
}

}  // namespace tiepoint
