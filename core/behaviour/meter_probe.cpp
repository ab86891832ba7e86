#include "core/behaviour/meter_probe.h"

#include "core/parts/part_kind.h"

#include <algorithm>
#include <cassert>
#include <string>

namespace tiepoint {
namespace {

constexpr std::string_view kVolts = "voltage";
/// Places whose circuits are kept.
constexpr std::size_t kMostTipPlaces = 16;

/// The element of a kind that measures volts; null if it doesn't.
const ElementSpec* voltsElement(const PartKind& kind) {
    const auto found = std::ranges::find(kind.model, kVolts, &ElementSpec::reads);
    return found == kind.model.end() ? nullptr : &*found;
}

/// A meter of the catalogue, its dial at volts.
Part voltmeter(const Bench& bench) {
    const auto& kinds = catalogue();
    const auto kind = std::ranges::find_if(kinds, [](const PartKind& each) { return voltsElement(each) != nullptr; });
    assert(kind != kinds.end() && "the catalogue has a meter");
    std::string id = "Probe";
    while (bench.partIndex(id) >= 0) id += "x";
    Part meter = makePart(*kind, std::move(id));
    const ElementSpec& element = *voltsElement(*kind);
    if (const int dial = kind->stateIndex(element.whenState); dial >= 0) {
        const auto& positions = kind->state[dial].choices;
        const auto position = std::ranges::find(positions, element.whenChoice, &Choice::name);
        meter.state[dial] = static_cast<double>(position - positions.begin());
    }
    return meter;
}

}  // namespace

MeterProbe::MeterProbe(std::shared_ptr<const Layout> layout, std::vector<Throw> controls)
    : layout_(std::move(layout)),
      controls_(std::move(controls)) {}

MeterReading MeterProbe::volts(const Digits& digits, int redNet, int blackNet) {
    const auto snapshot = solverFor(redNet, blackNet).solve(digits);
    return *meterReading(*snapshot, static_cast<int>(snapshot->layout->bench->parts.size()) - 1);
}

PositionSolver& MeterProbe::solverFor(int redNet, int blackNet) {
    const std::pair place(redNet, blackNet);
    if (solvers_.size() >= kMostTipPlaces && !solvers_.contains(place)) solvers_.clear();
    auto& solver = solvers_[place];
    if (!solver) solver = std::make_unique<PositionSolver>(withMeter(redNet, blackNet), controls_);
    return *solver;
}

/// The tips touch joints that are there; where a net has none, nothing is plugged in, and a joint of its own stands for the tip.
std::shared_ptr<const Layout> MeterProbe::withMeter(int redNet, int blackNet) const {
    auto bench = std::make_shared<Bench>(*layout_->bench);
    bench->parts.push_back(voltmeter(*bench));
    const PartKind& kind = *bench->parts.back().kind;
    auto layout = std::make_shared<Layout>(*layout_);
    layout->bench = std::move(bench);
    const ElementSpec& element = *voltsElement(kind);
    for (const LeadSpec& lead : kind.leads) {
        const int net = lead.name == element.to() ? blackNet : redNet;
        auto joint = std::ranges::find(layout->joints, net, &Joint::net);
        if (joint == layout->joints.end()) {
            layout->joints.push_back({.lead = layout->leadCount(), .net = net});
            joint = layout->joints.end() - 1;
        }
        layout->jointOfLead.push_back(static_cast<int>(joint - layout->joints.begin()));
        layout->holeOfLead.push_back(-1);
        layout->hubOfLead.push_back(-1);
        layout->pieceOfLead.push_back(-1);
        layout->netOfLead.push_back(net);
        layout->netUsed[net] = 1;
    }
    layout->firstLead.push_back(layout->leadCount());
    return layout;
}

}  // namespace tiepoint
