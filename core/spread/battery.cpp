#include "core/spread/battery.h"

#include "core/base/stopping.h"
#include "core/light/lightness.h"
#include "core/snapshot/lit.h"
#include "core/spread/figured_circuit.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <span>

namespace tiepoint {
namespace {

struct CurvePoint {
    double at, value;
};
using BatteryCurve = std::span<const CurvePoint>;

/// Straight between the points, level outside.
double along(BatteryCurve curve, double at) {
    if (at <= curve.front().at) return curve.front().value;
    for (std::size_t i = 1; i < curve.size(); ++i) {
        if (at > curve[i].at) continue;
        const double share = (at - curve[i - 1].at) / (curve[i].at - curve[i - 1].at);
        return std::lerp(curve[i - 1].value, curve[i].value, share);
    }
    return curve.back().value;
}

// A round alkaline cell by the share of its charge that is used. Fresh, without load: 1.6 V is seen on test pages; then 1.5, 1.3, 1.2, 1.1
// and 0.9 V at 5, 25, 50, 75 and 95 % used, from memory.
constexpr CurvePoint kCellVolts[] = {{0, 1.6}, {0.05, 1.5}, {0.25, 1.3}, {0.5, 1.2}, {0.75, 1.1}, {0.95, 0.9}};
// Its resistance, ohm: 0.2 fresh (Energizer, "Battery Internal Resistance", version 1.1.0, 2005: 0.214 by pulses), 0.5 to 1 near the end
// (from memory).
constexpr CurvePoint kCellOhms[] = {{0, 0.2}, {0.25, 0.4}, {0.85, 1.0}, {0.95, 1.0}};
// What a cell of size AA holds, ampere hours, by the logarithm (to 10) of the current in ampere: 2.9 at 25 mA (a published test of an
// alkaline AA), then 2.20, 1.30, 0.83 and 0.54 at 0.1, 0.5, 1 and 2 A (PowerStream's AA tests).
constexpr CurvePoint kCellHours[] = {{-1.602, 2.9}, {-1, 2.20}, {-0.301, 1.30}, {0, 0.83}, {0.301, 0.54}};
// A block of six small cells: 0.55 Ah at 25 mA, 0.3 at 0.5 A; 2 ohm fresh (1.7 at 1 kHz: Duracell MN1604), 20 near the end. From memory
// but for that.
constexpr CurvePoint kBlockVolts[] = {{0, 9.4}, {0.05, 9.0}, {0.25, 7.8}, {0.5, 7.2}, {0.75, 6.6}, {0.95, 5.4}};
constexpr CurvePoint kBlockOhms[] = {{0, 2}, {0.25, 6}, {0.85, 20}, {0.95, 20}};
constexpr CurvePoint kBlockHours[] = {{-1.602, 0.55}, {-0.301, 0.3}};

constexpr double kEmpty = 0.95;  ///< share used at 0.9 V a cell
constexpr int kLifeSteps = 95;

/// A type of battery, by the constant of a kind's choices that is its voltage.
struct BatteryType {
    std::string_view voltConstant;
    BatteryCurve volts, ohms, ampereHours;
};
constexpr std::array kBatteryTypes = {
    BatteryType{"cellVoltage", kCellVolts, kCellOhms, kCellHours},
    BatteryType{"blockVoltage", kBlockVolts, kBlockOhms, kBlockHours},
};

/// The choice of a kind (its index among the values) that has the constant, or -1.
int choiceWith(const PartKind& kind, std::string_view constant) {
    for (int v = 0; v < static_cast<int>(kind.values.size()); ++v) {
        for (const Choice& choice : kind.values[static_cast<std::size_t>(v)].choices)
            if (choice.constants.contains(constant)) return v;
    }
    return -1;
}

const BatteryType* typeOf(const PartKind& kind) {
    if (!kind.isSupply) return nullptr;
    const auto found = std::ranges::find_if(
        kBatteryTypes, [&](const BatteryType& type) { return choiceWith(kind, type.voltConstant) >= 0; });
    return found == kBatteryTypes.end() ? nullptr : &*found;
}

/// The value that counts the cells in a row, or -1 where the kind has one body.
int countValue(const PartKind& kind) {
    const auto found = std::ranges::find_if(kind.values, &ValueSpec::integer);
    return found == kind.values.end() ? -1 : static_cast<int>(found - kind.values.begin());
}

/// One battery in its place on a bench.
struct Battery {
    int part = 0;  ///< the supply that gives way to it
    const PartKind* kind = nullptr;
    const BatteryType* type = nullptr;
    double count = 1;
    double used = 0;  ///< at the beginning
};

/// How much is used of a battery whose cells have that voltage without load.
double usedAt(const BatteryType& type, double volt) {
    double used = 0;
    while (used < kEmpty && along(type.volts, used) > volt) used += 0.001;
    return used;
}

Battery onBench(const Bench& bench, int part) {
    const Part& supply = bench.parts[static_cast<std::size_t>(part)];
    const BatteryType* type = typeOf(*supply.kind);
    const int choice = choiceWith(*supply.kind, type->voltConstant), count = countValue(*supply.kind);
    const auto chosen = static_cast<std::size_t>(supply.value(choice));
    const double volt = supply.kind->values[static_cast<std::size_t>(choice)]
                            .choices[chosen]
                            .constants.find(type->voltConstant)
                            ->second;
    return {part, supply.kind, type, count < 0 ? 1 : supply.value(count), usedAt(*type, volt)};
}

/// The first element of a part that is a supply, or -1.
int supplySpec(const PartKind& kind) {
    const auto found = std::ranges::find(kind.model, kSupplyElement.name, &ElementSpec::element);
    return found == kind.model.end() ? -1 : static_cast<int>(found - kind.model.begin());
}

bool isOn(const Snapshot& snapshot, int part) {
    for (const ElementState& element : snapshot.solution.elements())
        if (element.part == part && element.closed) return true;
    return false;
}

/// Runs a battery down.
class RunDown {
public:
    RunDown(const std::shared_ptr<const Snapshot>& nominal, const Battery& battery)
        : snapshot_(*nominal),
          circuit_(nominal),
          battery_(battery),
          figures_(circuit_.printed()) {
        const PartKind& kind = *partAt(battery.part).kind;
        element_ = circuit_.elementOf(battery.part, supplySpec(kind));
    }

    BatteryLife run() {
        life_.part = partAt(battery_.part).id;
        life_.kind =
            battery_.count > 1 ? fmt::format("{:.0f} {}", battery_.count, battery_.kind->label) : battery_.kind->label;
        for (int part = 0; part < static_cast<int>(snapshot_.layout->bench->parts.size()); ++part)
            if (partAt(part).kind->emitsLight) life_.lights.push_back(part);
        const double step = (kEmpty - battery_.used) / kLifeSteps;
        if (step <= 0) return life_;  // empty already
        double before = 0;            // hours that a whole charge would last, at the moment before
        for (int n = 0; n <= kLifeSteps; ++n) {
            stopIfAsked();
            const double used = battery_.used + n * step;
            if (!moment(used)) return life_;
            const double ampere = life_.moments.back().ampere;
            if (ampere < kLeast) {
                life_.hours = std::numeric_limits<double>::infinity();
                return life_;
            }
            const double lasts = along(battery_.type->ampereHours, std::log10(ampere)) / ampere;
            if (n > 0) life_.hours += step * (before + lasts) / 2;
            before = lasts;
            life_.moments.back().hours = life_.hours;
            noteDark();
        }
        return life_;
    }

private:
    static constexpr double kLeast = 1e-6;  ///< A: leakage of the solver's own

    const Part& partAt(int part) const { return snapshot_.layout->bench->parts[static_cast<std::size_t>(part)]; }

    bool moment(double used) {
        auto& figures = figures_[static_cast<std::size_t>(element_)];
        figures[0] = battery_.count * along(battery_.type->volts, used);
        figures[1] = battery_.count * along(battery_.type->ohms, used);
        figures[2] = std::numeric_limits<double>::infinity();
        if (!circuit_.solve(figures_)) {
            life_.why = "With this battery no voltages and currents were found that satisfy the circuit.";
            return false;
        }
        BatteryMoment moment{0, used, 0, -circuit_.elementAmpere(element_), {}};
        moment.volt = figures[0] - moment.ampere * figures[1];
        for (const int light : life_.lights) moment.brightness.push_back(brightnessOf(light));
        life_.moments.push_back(std::move(moment));
        return true;
    }

    double brightnessOf(int part) const {
        double most = 0;
        const Emitters& emitters = *snapshot_.emitters;
        for (int e = emitters.firstOfPart[static_cast<std::size_t>(part)];
             e < emitters.firstOfPart[static_cast<std::size_t>(part) + 1]; ++e) {
            const Emitter& emitter = emitters.all[static_cast<std::size_t>(e)];
            const ElementPlace& place = (*snapshot_.solution.places)[static_cast<std::size_t>(emitter.element)];
            const double ampere = circuit_.elementAmpere(circuit_.elementOf(place.part, place.spec));
            most = std::max(most, brightnessOfLight(emitter.lightAt(ampere)));
        }
        return most;
    }

    void noteDark() {
        if (!life_.darkFirst.empty()) return;
        for (std::size_t light = 0; light < life_.lights.size(); ++light) {
            if (life_.moments.front().brightness[light] < kVisibleBrightness ||
                life_.moments.back().brightness[light] >= kVisibleBrightness)
                continue;
            life_.darkFirst = partAt(life_.lights[light]).id;
            life_.darkHours = life_.hours;
            return;
        }
    }

    const Snapshot& snapshot_;
    FiguredCircuit circuit_;
    Battery battery_;
    Figures figures_;
    int element_ = 0;
    BatteryLife life_;
};

std::optional<BatteryLife> lifeOfChosen(const std::shared_ptr<const Snapshot>& nominal, const BatteryChoice& choice) {
    const Bench& bench = *nominal->layout->bench;
    for (int part = 0; part < static_cast<int>(bench.parts.size()); ++part) {
        const PartKind& kind = *bench.parts[static_cast<std::size_t>(part)].kind;
        if (!kind.isSupply || supplySpec(kind) < 0 || !isOn(*nominal, part)) continue;
        const int count = countValue(*choice.kind);
        const double usual = count < 0 ? 1 : choice.kind->values[static_cast<std::size_t>(count)].fallback;
        return RunDown(nominal, {part, choice.kind, typeOf(*choice.kind), choice.count > 0 ? choice.count : usual, 0})
            .run();
    }
    return std::nullopt;
}

}  // namespace

bool isBattery(const PartKind& kind) { return typeOf(kind) != nullptr; }

std::vector<const PartKind*> batteryKinds() {
    std::vector<const PartKind*> kinds;
    for (const PartKind& kind : catalogue())
        if (isBattery(kind)) kinds.push_back(&kind);
    return kinds;
}

std::optional<BatteryLife> batteryLife(const std::shared_ptr<const Snapshot>& nominal, const BatteryChoice& choice) {
    if (nominal->status() != Status::Solved) return std::nullopt;
    if (choice.kind) return lifeOfChosen(nominal, choice);
    const Bench& bench = *nominal->layout->bench;
    std::optional<BatteryLife> shortest;
    for (int part = 0; part < static_cast<int>(bench.parts.size()); ++part) {
        if (!isBattery(*bench.parts[static_cast<std::size_t>(part)].kind) || !isOn(*nominal, part)) continue;
        BatteryLife life = RunDown(nominal, onBench(bench, part)).run();
        if (!shortest || life.hours < shortest->hours) shortest = std::move(life);
    }
    return shortest;
}

std::string lifeInWords(double hours) {
    constexpr double kMinutesUnder = 2, kDaysFrom = 72, kMonthsFrom = 90 * 24;
    if (!std::isfinite(hours)) return "for as long as it can be stored";
    if (hours < kMinutesUnder) return fmt::format("{:.0f} minutes", std::max(1.0, 60 * hours));
    if (hours < kDaysFrom) return fmt::format("{:.0f} hours", hours);
    if (hours < kMonthsFrom) return fmt::format("{:.0f} days", hours / 24);
    return fmt::format("{:.0f} months", hours / (24 * 30.4));
}

}  // namespace tiepoint
