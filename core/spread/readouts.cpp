#include "core/spread/readouts.h"

#include <algorithm>

namespace tiepoint {
namespace {

struct Emitting {
    std::vector<int> elements;
    double operator()(FiguredCircuit& circuit) const {
        double sum = 0;
        for (const int element : elements) sum += circuit.elementAmpere(element);
        return sum;
    }
};

SpreadReading readingOf(std::string name, std::string_view quantity, std::string_view unit) {
    SpreadReading reading;
    reading.name = std::move(name);
    reading.quantity = quantity;
    reading.unit = unit;
    return reading;
}

/// Makes a readout of what is pinned.
struct PinReadout {
    const Layout& layout;

    int netOf(const Hole& hole) const { return layout.netOfHole(layout.holeIndex(hole)); }
    static Readout volts(std::string name, std::function<double(FiguredCircuit&)> read) {
        return {readingOf(std::move(name), "voltage", "V"), std::move(read)};
    }

    Readout operator()(const VoltsAt& at) const {
        return volts(toString(at.hole), [net = netOf(at.hole)](FiguredCircuit& c) { return c.volt(net); });
    }
    Readout operator()(const VoltsBetween& between) const {
        const int first = netOf(between.first), second = netOf(between.second);
        return volts(toString(between.first) + "~" + toString(between.second),
                     [first, second](FiguredCircuit& c) { return c.volt(first) - c.volt(second); });
    }
    Readout operator()(const AmperesIn& in) const {
        Readout made{readingOf(in.id, "current", "A"), {}};
        const Bench& bench = *layout.bench;
        if (in.lead.empty()) {
            made.read = [jumper = bench.jumperIndex(in.id)](FiguredCircuit& c) { return c.jumperAmpere(jumper); };
        } else {
            const int part = bench.partIndex(in.id);
            const int lead =
                layout.leadIndex(part, bench.parts[static_cast<std::size_t>(part)].kind->leadIndex(in.lead));
            made.read = [lead](FiguredCircuit& c) { return c.leadAmpere(lead); };
        }
        return made;
    }
    Readout operator()(const WattsOf& of) const {
        const int part = layout.bench->partIndex(of.part);
        std::vector<std::pair<int, int>> leads;  // lead and net
        for (int lead = layout.firstLead[static_cast<std::size_t>(part)];
             lead < layout.firstLead[static_cast<std::size_t>(part) + 1]; ++lead)
            leads.emplace_back(lead, layout.netOfLead[static_cast<std::size_t>(lead)]);
        return {readingOf(of.part, "power", "W"), [leads](FiguredCircuit& c) {
                    double watt = 0;
                    for (const auto& each : leads) {
                        const double ampere = c.leadAmpere(each.first);
                        if (ampere != 0) watt += ampere * c.volt(each.second);
                    }
                    return watt;
                }};
    }
};

}  // namespace

std::vector<Readout> readoutsOf(const Snapshot& nominal, const FiguredCircuit& circuit) {
    const Layout& layout = *nominal.layout;
    std::vector<Readout> all;
    for (int part = 0; part < static_cast<int>(layout.bench->parts.size()); ++part) {
        const Part& light = layout.bench->parts[static_cast<std::size_t>(part)];
        if (!light.kind->emitsLight) continue;
        Emitting emitting;
        const Emitters& emitters = *nominal.emitters;
        for (int e = emitters.firstOfPart[static_cast<std::size_t>(part)];
             e < emitters.firstOfPart[static_cast<std::size_t>(part) + 1]; ++e) {
            const ElementPlace& place =
                (*nominal.solution.places)[static_cast<std::size_t>(emitters.all[static_cast<std::size_t>(e)].element)];
            emitting.elements.push_back(circuit.elementOf(place.part, place.spec));
        }
        all.push_back({readingOf(light.id, "current", "A"), emitting});
        all.back().about.light = part;
    }
    for (const PinnedReading& pinned : layout.bench->pinned) {
        Readout made = std::visit(PinReadout{layout}, pinned.of);
        const bool known =
            std::ranges::any_of(all, [&](const Readout& other) { return other.about.name == made.about.name; });
        if (!known) all.push_back(std::move(made));  // a light's current may be pinned too
    }
    return all;
}

std::vector<Readout> readoutsAt(const Layout& layout, const std::vector<Hole>& holes) {
    std::vector<Readout> all;
    for (const Hole& hole : holes) all.push_back(PinReadout{layout}(VoltsAt{hole}));
    return all;
}

}  // namespace tiepoint
