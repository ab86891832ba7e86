#include "core/sheet/expected.h"

#include "core/base/stopping.h"
#include "core/bench/resolve.h"
#include "core/snapshot/readings.h"

#include <algorithm>
#include <cmath>
#include <functional>
#include <optional>
#include <utility>

namespace tiepoint {
namespace {

constexpr double kSupplyShare = 0.01, kUsbShare = 0.05, kCellShare = 0.05;
constexpr double kForwardVolt = 0.2;

/// A bench in one position, and where on it the nets are found again.
class RangeFinder {
public:
    RangeFinder(const std::shared_ptr<const Layout>& layout, const std::vector<Throw>& controls, const Digits& position,
                const std::vector<int>& nets)
        : layout_(layout) {
        bench_ = *layout->bench;
        for (std::size_t c = 0; c < controls.size(); ++c) {
            Part& part = bench_.parts[static_cast<std::size_t>(controls[c].part)];
            if (!controls[c].isCap())
                part.state[static_cast<std::size_t>(controls[c].state)] =
                    controls[c].stateAt(position[c], part.stateValue(controls[c].state));
            else if (position[c] != 0)
                inputs_.held.insert(part.id);
        }
        for (const int net : nets) leads_.push_back(leadOn(net));
    }

    std::vector<VoltRange> run() {
        nominal_ = evaluate(std::make_shared<const Bench>(bench_), inputs_);
        const std::vector<double> nominal = voltsOf(bench_);
        std::vector<VoltRange> ranges;
        for (const double volt : nominal) ranges.push_back({volt, volt, volt});
        for (std::size_t part = 0; part < bench_.parts.size(); ++part) {
            stopIfAsked();
            const auto vary = variationOf(bench_.parts[part], part, carries(part));
            if (vary) widen(ranges, *vary);
        }
        return ranges;
    }

private:
    using Vary = std::function<void(Bench&, double sign)>;

    int leadOn(int net) const {
        const auto found = std::ranges::find(layout_->netOfLead, net);
        return found == layout_->netOfLead.end() ? -1 : static_cast<int>(found - layout_->netOfLead.begin());
    }

    std::vector<double> voltsOf(const Bench& bench) const {
        const auto snapshot = evaluate(std::make_shared<const Bench>(bench), inputs_);
        std::vector<double> volts;
        for (const int lead : leads_)
            volts.push_back(lead < 0 || snapshot->status() != Status::Solved ? std::nan("")
                                                                             : snapshot->leadVoltage(lead));
        return volts;
    }

    void widen(std::vector<VoltRange>& ranges, const Vary& vary) const {
        std::vector<double> up(ranges.size(), 0), down(ranges.size(), 0);
        for (const double sign : {-1.0, 1.0}) {
            Bench varied = bench_;
            vary(varied, sign);
            const std::vector<double> volts = voltsOf(varied);
            for (std::size_t i = 0; i < ranges.size(); ++i) {
                const double by = volts[i] - ranges[i].volt;
                if (std::isnan(by)) continue;
                up[i] = std::max(up[i], by);
                down[i] = std::min(down[i], by);
            }
        }
        for (std::size_t i = 0; i < ranges.size(); ++i) {
            ranges[i].greatest += up[i];
            ranges[i].least += down[i];
        }
    }

    /// Whether current passes through a part as it is reckoned: a dark LED's forward voltage shows nowhere.
    bool carries(std::size_t part) const {
        return nominal_->status() == Status::Solved &&
               currentThrough(*nominal_, static_cast<int>(part)).inAmpere > kNoCurrentAmpere;
    }

    static std::optional<Vary> variationOf(const Part& part, std::size_t index, bool carries) {
        const int resistance = resistanceValue(*part.kind), tolerance = part.kind->valueIndex("tolerance");
        if (resistance >= 0 && tolerance >= 0) {
            const double share = part.value(tolerance);
            return [index, resistance, share](Bench& bench, double sign) {
                Part& varied = bench.parts[index];
                varied.values[static_cast<std::size_t>(resistance)] = varied.value(resistance) * (1 + sign * share);
            };
        }
        const int voltage = part.kind->valueIndex("voltage");
        if (part.kind->isSupply && voltage >= 0) {
            const bool hasSockets = std::ranges::any_of(part.kind->leads, &LeadSpec::socket);
            const double share = hasSockets ? kUsbShare : kSupplyShare;
            return [index, voltage, share](Bench& bench, double sign) {
                Part& varied = bench.parts[index];
                varied.values[static_cast<std::size_t>(voltage)] = varied.value(voltage) * (1 + sign * share);
            };
        }
        if (part.kind->isSupply && part.leads[0]) return inSeries(index, 0, kCellShare * emfOf(part));
        if (part.kind->emitsLight && part.kind->needsResistor && part.leads[1] && carries)
            return inSeries(index, 1, kForwardVolt);
        return std::nullopt;
    }

    /// About what cells give without load, by what their ratings are reckoned with.
    static double emfOf(const Part& part) {
        for (const ElementSpec& spec : part.kind->model)
            for (const auto& [name, parameter] : spec.parameters)
                if (name == "voltage") return resolve(parameter, part);
        return 0;
    }

    /// A source of a few tenths of a volt between a lead and its hole: the lead moves to a board of no use for hands.
    static Vary inSeries(std::size_t index, int lead, double volt) {
        return [index, lead, volt](Bench& bench, double sign) {
            constexpr double kFar = 5000;
            Board beside;
            beside.id = "Zz0";
            beside.kind = findBoardKind("mini");
            beside.atY = kFar;
            bench.boards.push_back(beside);
            Part source = makePart(usualSupply(), "Zz1");
            const bool isPositive = (sign > 0) == (lead == 0);
            source.values[static_cast<std::size_t>(source.kind->valueIndex("voltage"))] = volt;
            source.values[static_cast<std::size_t>(source.kind->valueIndex("currentLimit"))] = 30;
            source.values[static_cast<std::size_t>(source.kind->valueIndex("seriesResistance"))] = 0;
            Part& varied = bench.parts[index];
            const auto place = static_cast<std::size_t>(lead);
            const std::optional<Hole> hole = varied.leads[place];
            source.leads[isPositive ? 0 : 1] = hole;
            source.leads[isPositive ? 1 : 0] = Hole{beside.id, Line::A, 1};
            varied.leads[place] = Hole{beside.id, Line::B, 1};
            bench.parts.push_back(std::move(source));
        };
    }

    std::shared_ptr<const Layout> layout_;
    Bench bench_;
    Inputs inputs_;
    std::shared_ptr<const Snapshot> nominal_;
    std::vector<int> leads_;  ///< by net asked about: a lead of the bench that is on it
};

}  // namespace

std::vector<VoltRange> voltRanges(const std::shared_ptr<const Layout>& layout, const std::vector<Throw>& controls,
                                  const Digits& position, const std::vector<int>& nets) {
    return RangeFinder(layout, controls, position, nets).run();
}

}  // namespace tiepoint
