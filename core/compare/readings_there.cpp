#include "core/compare/readings_there.h"

#include "core/base/quantity.h"
#include "core/bench/describe.h"
#include "core/snapshot/pinned_value.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace tiepoint {
namespace {

/// A jumper's current has no counterpart: jumpers lie as everybody likes.
bool isOfJumper(const Measurand& of) {
    const auto* in = std::get_if<AmperesIn>(&of);
    return in != nullptr && in->lead.empty();
}

/// The circuit's number of a net of the layout; nothing where it joins nothing.
std::optional<int> netOfLayout(const ComparedSide& side, int layoutNet) {
    for (std::size_t part = 0; part < side.circuit->leads.size(); ++part) {
        for (std::size_t lead = 0; lead < side.circuit->leads[part].size(); ++lead) {
            const auto dense =
                static_cast<std::size_t>(side.layout->leadIndex(static_cast<int>(part), static_cast<int>(lead)));
            if (side.layout->netOfLead[dense] == layoutNet && side.circuit->leads[part][lead] >= 0)
                return side.circuit->leads[part][lead];
        }
    }
    return std::nullopt;
}

}  // namespace

std::vector<ReadingApart> ReadingsThere::apartIn(const Snapshot& there, const Snapshot& here) const {
    std::vector<ReadingApart> apart;
    if (there.status() != Status::Solved || here.status() != Status::Solved) return apart;
    for (const PinnedReading& reading : target_.bench().pinned) {
        if (isOfJumper(reading.of)) continue;
        const std::optional<double> read = readOnBench(reading.of, there, here);
        const PinnedValue wanted = pinnedValue(there, reading);
        if (!read && (partners_.equal || std::isnan(wanted.value))) continue;  // there needn't be such a place
        if (read && likeReadings(*read, wanted.value, wanted.unit)) continue;
        const auto words = [&](double value) {
            return std::isnan(value) ? std::string("floating") : formatQuantity(value, wanted.unit);
        };
        apart.push_back({&reading, fmt::format("{} of the target: {} there, {} here.",
                                               measurandInWords(target_.bench(), reading.of), words(wanted.value),
                                               read ? words(*read) : "no such place")});
    }
    return apart;
}

/// A current counts by its amount, since a resistor may lie either way round.
bool ReadingsThere::likeReadings(double a, double b, std::string_view unit) const {
    if (std::isnan(a) || std::isnan(b)) return std::isnan(a) == std::isnan(b);
    if (unit == "A") return likeReadings(std::abs(a), std::abs(b), "of amperes");
    const double least = unit == "V"   ? bounds_.smallestVolt
                         : unit == "W" ? bounds_.smallestWatt
                                       : bounds_.smallestAmpere;
    return std::abs(a - b) <= std::max(least, bounds_.tolerance * std::max(std::abs(a), std::abs(b)));
}

/// The net of the bench that does the work of one of the target's, as a net of the layout; nothing where there is none.
std::optional<int> ReadingsThere::netOnBench(int targetNet) const {
    const auto in = netOfLayout(target_, targetNet);
    if (!in) return std::nullopt;
    const auto found = std::ranges::find(partners_.netOf, *in);
    if (found == partners_.netOf.end()) return std::nullopt;
    const int net = static_cast<int>(found - partners_.netOf.begin());
    const ComparedSide& side = mine_;
    for (std::size_t part = 0; part < side.circuit->leads.size(); ++part) {
        const auto& leads = side.circuit->leads[part];
        const auto lead = std::ranges::find(leads, net);
        if (lead != leads.end())
            return side.layout->netOfLead[static_cast<std::size_t>(
                side.layout->leadIndex(static_cast<int>(part), static_cast<int>(lead - leads.begin())))];
    }
    return std::nullopt;
}

std::optional<double> ReadingsThere::voltAt(const Hole& hole, const Snapshot& here) const {
    const Layout& layout = *target_.layout;
    const auto net = netOnBench(layout.netOfHole(layout.holeIndex(hole)));
    if (!net) return std::nullopt;
    return here.solution.netVoltage[static_cast<std::size_t>(*net)];
}
/// What on the bench has 0 V on the target.
double ReadingsThere::referenceVolt(const Snapshot& there, const Snapshot& here) const {
    const auto& volts = there.solution.netVoltage;
    for (int net = 0; net < std::ssize(volts); ++net) {
        if (volts[static_cast<std::size_t>(net)] != 0) continue;
        if (const auto own = netOnBench(net)) return here.solution.netVoltage[static_cast<std::size_t>(*own)];
    }
    return 0;
}

std::optional<double> ReadingsThere::readOnBench(const Measurand& of, const Snapshot& there,
                                                 const Snapshot& here) const {
    if (const auto* at = std::get_if<VoltsAt>(&of)) {
        const auto volt = voltAt(at->hole, here);
        return volt ? std::optional(*volt - referenceVolt(there, here)) : std::nullopt;
    }
    if (const auto* between = std::get_if<VoltsBetween>(&of)) {
        const auto first = voltAt(between->first, here), second = voltAt(between->second, here);
        return first && second ? std::optional(*first - *second) : std::nullopt;
    }
    if (const auto* in = std::get_if<AmperesIn>(&of)) return amperesOnBench(*in, here);
    const int part = partnerOf(target_.bench().partIndex(std::get<WattsOf>(of).part));
    return part < 0 ? std::nullopt : std::optional(here.partPower[static_cast<std::size_t>(part)]);
}

int ReadingsThere::partnerOf(int targetPart) const {
    const auto found = std::ranges::find(partners_.partOf, targetPart);
    return targetPart < 0 || found == partners_.partOf.end() ? -1 : static_cast<int>(found - partners_.partOf.begin());
}

std::optional<double> ReadingsThere::amperesOnBench(const AmperesIn& in, const Snapshot& here) const {
    const int part = partnerOf(target_.bench().partIndex(in.id));
    if (part < 0) return std::nullopt;
    const PartKind& kind = *mine_.part(part).kind;
    const int lead = here.layout->leadIndex(part, kind.leadIndex(in.lead));
    return here.leadCurrent[static_cast<std::size_t>(lead)];
}

}  // namespace tiepoint
