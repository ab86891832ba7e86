#include "core/meter/meter.h"

#include "core/base/display.h"
#include "core/base/quantity.h"
#include "core/circuit/compile.h"
#include "core/meter/drivers.h"
#include "core/snapshot/readings.h"
#include "core/words/words.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>

namespace tiepoint {
namespace {

constexpr double kNoNumber = std::numeric_limits<double>::quiet_NaN();
constexpr std::string_view kOverRange = "OL", kBlown = "FUSE", kNoDigits = "---";

constexpr std::array kOhmRanges = {MeterRange{"Ω", 1, 1},     MeterRange{"Ω", 1, 0},     MeterRange{"kΩ", 1e-3, 2},
                                   MeterRange{"kΩ", 1e-3, 1}, MeterRange{"MΩ", 1e-6, 3}, MeterRange{"MΩ", 1e-6, 2}};
constexpr std::span kContinuityRanges = std::span(kOhmRanges).first(2);

/// The element that the dial has put between the leads; null while off.
const ElementSpec* readingSpec(const Part& part) {
    const auto reads = [&](const ElementSpec& spec) { return !spec.reads.empty() && isPresent(part, spec, {}); };
    const auto found = std::ranges::find_if(part.kind->model, reads);
    return found == part.kind->model.end() ? nullptr : &*found;
}

ElementState stateOf(const Snapshot& snapshot, int part, const ElementSpec& spec) {
    const auto index = &spec - snapshot.layout->bench->parts[part].kind->model.data();
    const auto elements = snapshot.solution.elements();
    return *std::ranges::find_if(
        elements, [&](const ElementState& element) { return element.part == part && element.spec == index; });
}

double voltAcross(const ElementState& element) {
    return element.currentAmpere == 0 ? 0 : element.powerWatt / element.currentAmpere;
}

/// What lies outside of a test source, from its voltage and the current that it gives; without limit where next to none flows.
double ohmOutside(const ElementState& source) {
    constexpr double kLeastAmpere = 1e-11;
    const double givenAmpere = -source.currentAmpere;
    if (givenAmpere < kLeastAmpere) return std::numeric_limits<double>::infinity();
    return std::max(0.0, voltAcross(source) / givenAmpere);
}

/// One measurement under way.
struct Measurement {
    const Snapshot& snapshot;
    int part;
    ElementState element;

    const Part& meter() const { return snapshot.layout->bench->parts[part]; }
};

void show(MeterReading& reading, std::span<const MeterRange> ranges, double figure, double displayed) {
    const auto shown = meterDigits(ranges, displayed);
    reading.value = shown ? figure : kNoNumber;
    reading.digits = shown ? shown->digits : kOverRange;
    reading.unit = shown ? shown->unit : "";
}
void show(MeterReading& reading, std::span<const MeterRange> ranges, double figure) {
    show(reading, ranges, figure, figure);
}
/// What the bench shows of the same quantity, unless that is rougher than the display: two figures of one thing are one figure.
void show(MeterReading& reading, std::span<const MeterRange> ranges, double figure, const Figure& shown) {
    const auto digit = lastDigit(ranges, figure);
    const bool rougher = !shown.isKnown() || !digit || shown.scale().stepExponent > *digit;
    show(reading, ranges, figure, rougher ? figure : shown.printed());
}

void refuse(MeterReading& reading, std::string_view digits, std::string why) {
    reading.value = kNoNumber;
    reading.digits = digits;
    reading.why = std::move(why);
}

/// From the element's first lead to its second.
Figure shownAcross(const Measurement& at) {
    const PartKind& kind = *at.meter().kind;
    const ElementSpec& spec = kind.model[at.element.spec];
    const auto volt = [&](const std::string& lead) {
        return at.snapshot.shown().leadVolt(at.snapshot.layout->leadIndex(at.part, kind.leadIndex(lead)));
    };
    return volt(spec.from()) - volt(spec.to());
}

/// What the meter's electronics make of something that alternates; nothing where it doesn't.
std::optional<double> averageOf(const Measurement& at, MeterReading& reading) {
    for (const MeterAverage& average : at.snapshot.traces.meters) {
        if (average.part != at.part || average.spec != at.element.spec || !average.alternates) continue;
        const int choice = at.meter().kind->valueIndex("average");
        const bool effective = choice >= 0 && at.meter().value(choice) == 1;
        reading.average = effective ? "rms" : "mean";
        return effective ? average.effective : average.mean;
    }
    return std::nullopt;
}

void readVoltage(const Measurement& at, MeterReading& reading) {
    if (const auto average = averageOf(at, reading)) return show(reading, kVoltRanges, *average);
    show(reading, kVoltRanges, voltAcross(at.element), shownAcross(at));
}

void readCurrent(const Measurement& at, MeterReading& reading) {
    for (const RatingShare& share : ratingShares(at.snapshot, at.part)) {
        if (share.rating->name != "fuse" || share.share() <= 1) continue;
        const Figure figure = shownFigure(at.snapshot, at.part, *share.rating);
        return refuse(reading, kBlown,
                      say("meter.fuse", {{"current", figure.text()}, {"limit", besideFigure(figure, share.limit)}}));
    }
    if (const auto average = averageOf(at, reading)) return show(reading, kAmpereRanges, *average);
    const PartKind& kind = *at.meter().kind;
    const int lead = kind.leadIndex(kind.model[at.element.spec].from());
    show(reading, kAmpereRanges, at.element.currentAmpere,
         at.snapshot.shown().leadCurrent(at.snapshot.layout->leadIndex(at.part, lead)));
}

/// Another source makes every figure of a test source wrong; true if there is one, and then it is said.
bool isDisturbed(const Measurement& at, MeterReading& reading) {
    const int other = otherSourceAt(at.snapshot, at.part);
    if (other < 0) return false;
    refuse(reading, kNoDigits,
           say(reading.quantity == "continuity" ? "meter.disturbed.continuity" : "meter.disturbed.ohms",
               {{"source", at.snapshot.layout->bench->parts[other].id}}));
    return true;
}

void readResistance(const Measurement& at, MeterReading& reading) {
    if (!isDisturbed(at, reading)) show(reading, kOhmRanges, ohmOutside(at.element));
}

/// A figure of the dial's present position; 0 where it has none.
double beepsBelowOhm(const Part& meter) {
    for (std::size_t s = 0; s < meter.kind->state.size(); ++s) {
        const ValueSpec& dial = meter.kind->state[s];
        if (dial.type != ValueType::Choice) continue;
        const auto& constants = dial.choices[static_cast<std::size_t>(meter.stateValue(static_cast<int>(s)))].constants;
        if (const auto found = constants.find("beepBelow"); found != constants.end()) return found->second;
    }
    return 0;
}

void readContinuity(const Measurement& at, MeterReading& reading) {
    if (isDisturbed(at, reading)) return;
    const double ohm = ohmOutside(at.element);
    show(reading, kContinuityRanges, ohm);
    reading.beeps = ohm < beepsBelowOhm(at.meter());
}

struct Quantity {
    std::string_view name;
    void (*read)(const Measurement&, MeterReading&);
};
constexpr std::array kQuantities = {
    Quantity{"voltage", readVoltage},       Quantity{"current", readCurrent}, Quantity{"resistance", readResistance},
    Quantity{"continuity", readContinuity}, Quantity{"trace", readVoltage},
};

}  // namespace

std::string MeterReading::text() const {
    if (!on) return "off";
    return unit.empty() ? digits : fmt::format("{} {}", digits, unit);
}

bool isMeter(const PartKind& kind) {
    return std::ranges::any_of(kind.model, [](const ElementSpec& spec) { return !spec.reads.empty(); });
}

std::string_view quantityRead(const Part& part) {
    const ElementSpec* spec = readingSpec(part);
    return spec == nullptr ? std::string_view() : spec->reads;
}

bool looksOn(const Part& part) { return isMeter(*part.kind) && quantityRead(part) != "current"; }

bool testsWithOwnSource(const Part& part) {
    const std::string_view quantity = quantityRead(part);
    return quantity == "resistance" || quantity == "continuity";
}

std::string dialLabel(const Part& part) {
    const auto reads = [](const ElementSpec& spec) { return !spec.reads.empty(); };
    const auto found = std::ranges::find_if(part.kind->model, reads);
    const int dial = found == part.kind->model.end() ? -1 : part.kind->stateIndex(found->whenState);
    return dial < 0 ? std::string()
                    : part.kind->state[dial].choices[static_cast<std::size_t>(part.stateValue(dial))].label;
}

std::optional<MeterReading> meterReading(const Snapshot& snapshot, int part) {
    const Part& meter = snapshot.layout->bench->parts[part];
    if (!isMeter(*meter.kind)) return std::nullopt;
    MeterReading reading;
    const ElementSpec* spec = readingSpec(meter);
    reading.on = spec != nullptr;
    if (!reading.on) return reading;
    reading.quantity = spec->reads;
    if (snapshot.status() == Status::None) {
        refuse(reading, kNoDigits, say("meter.noSolution"));
        return reading;
    }
    const auto quantity = std::ranges::find(kQuantities, std::string_view(spec->reads), &Quantity::name);
    if (quantity != kQuantities.end()) quantity->read({snapshot, part, stateOf(snapshot, part, *spec)}, reading);
    return reading;
}

std::optional<Edit> turnDialEdit(const Bench& bench, const Part& meter, std::string_view quantity) {
    const auto wanted = std::ranges::find(meter.kind->model, quantity, &ElementSpec::reads);
    const int dial = wanted == meter.kind->model.end() ? -1 : meter.kind->stateIndex(wanted->whenState);
    if (dial < 0) return std::nullopt;
    const auto& positions = meter.kind->state[dial].choices;
    const auto position = std::ranges::find(positions, wanted->whenChoice, &Choice::name);
    return setStateEdit(bench, meter.id, wanted->whenState, static_cast<double>(position - positions.begin()));
}

std::vector<std::string_view> readingNames() {
    std::vector<std::string_view> names;
    names.reserve(kQuantities.size());
    for (const Quantity& quantity : kQuantities) names.push_back(quantity.name);
    return names;
}

}  // namespace tiepoint
