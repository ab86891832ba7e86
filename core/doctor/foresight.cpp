// The instruments stand on a small board of their own that touches nothing; their tips are jumpers from there to where they are held.

#include "core/doctor/foresight.h"

#include "core/base/stopping.h"
#include "core/bench/resolve.h"
#include "core/doctor/observation_words.h"
#include "core/light/lightness.h"
#include "core/snapshot/emitters.h"
#include "core/variants/variant_solver.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cassert>
#include <cmath>
#include <limits>

namespace tiepoint {
namespace {

constexpr double kUnsolved = std::numeric_limits<double>::quiet_NaN();
constexpr double kProbeOhm = 1000;
constexpr std::string_view kTolerance = "tolerance", kOhms = "resistance", kDialVolts = "voltage",
                           kDialBeeps = "continuity";

const PartKind& kindWhere(bool (*suits)(const PartKind&)) {
    const auto& kinds = catalogue();
    const auto found = std::ranges::find_if(kinds, suits);
    assert(found != kinds.end() && "the catalogue has it");
    return *found;
}

int elementThatReads(const PartKind& kind, std::string_view quantity) {
    const auto found = std::ranges::find(kind.model, quantity, &ElementSpec::reads);
    return found == kind.model.end() ? -1 : static_cast<int>(found - kind.model.begin());
}

/// Turns a meter's dial to where that element is between the leads.
void turnDial(Part& meter, int element) {
    const ElementSpec& spec = meter.kind->model[static_cast<std::size_t>(element)];
    const int dial = meter.kind->stateIndex(spec.whenState);
    const auto& positions = meter.kind->state[static_cast<std::size_t>(dial)].choices;
    const auto position = std::ranges::find(positions, spec.whenChoice, &Choice::name);
    meter.state[static_cast<std::size_t>(dial)] = static_cast<double>(position - positions.begin());
}

std::string freeIdOf(const Bench& bench, std::string id) {
    while (bench.findBoard(id) || bench.findPart(id) || bench.findJumper(id)) id += "x";
    return id;
}

}  // namespace

/// Where the instruments stand, and the plan with them.
struct Foresight::Probes {
    std::string board;
    int meter = 0, light = 0, resistor = 0;          ///< parts
    int voltsElement = 0, beepElement = 0;           ///< of the meter's model
    int meterPlus = 0, meterCom = 0;                 ///< leads
    std::vector<int> suppliesOn;                     ///< parts with a switch of their own
    std::vector<std::shared_ptr<const Bench>> kept;  ///< benches that layouts share
    std::shared_ptr<Bench> bench;
    std::vector<Emitter> emitters;  ///< of the plan's parts and the probe light

    Hole hole(Line row, int column) const { return {board, row, column}; }
};

/// One position, ready to be solved for suspects.
struct Foresight::Desk {
    std::unique_ptr<VariantSolver> solver;
    Variant variant;  ///< what was solved last; the solver's answers refer to it
    Status status = Status::None;
};

Foresight::~Foresight() = default;

Foresight::Foresight(const SuspectList& suspects) : suspects_(suspects), probes_(std::make_unique<Probes>()) {
    const Bench& plan = suspects.plan();
    Probes& probes = *probes_;
    probes.bench = std::make_shared<Bench>(plan);
    Bench& bench = *probes.bench;
    bench.notes.clear(), bench.pinned.clear();
    Board board;
    board.id = probes.board = freeIdOf(bench, "Probes");
    const auto boards = boardKinds();
    board.kind = &*std::ranges::min_element(boards, {}, &BoardKind::tiePoints);
    board.atX = kFarthestPitches / 2;
    bench.boards.push_back(board);

    const auto add = [&](const PartKind& kind, const char* id) {
        bench.parts.push_back(makePart(kind, freeIdOf(bench, id)));
        return static_cast<int>(bench.parts.size()) - 1;
    };
    const auto part = [&](int index) -> Part& { return bench.parts[static_cast<std::size_t>(index)]; };
    probes.meter = add(kindWhere([](const PartKind& kind) {
                           return elementThatReads(kind, kDialVolts) >= 0 && elementThatReads(kind, kDialBeeps) >= 0;
                       }),
                       "Meter");
    const PartKind& meter = *part(probes.meter).kind;
    probes.voltsElement = elementThatReads(meter, kDialVolts);
    probes.beepElement = elementThatReads(meter, kDialBeeps);
    const ElementSpec& volts = meter.model[static_cast<std::size_t>(probes.voltsElement)];
    probes.meterPlus = meter.leadIndex(volts.from()), probes.meterCom = meter.leadIndex(volts.to());
    turnDial(part(probes.meter), probes.voltsElement);
    part(probes.meter).leads[static_cast<std::size_t>(probes.meterPlus)] = probes.hole(Line::A, 1);
    part(probes.meter).leads[static_cast<std::size_t>(probes.meterCom)] = probes.hole(Line::A, 2);
    probes.light = add(kindWhere([](const PartKind& kind) { return kind.emitsLight && kind.needsResistor; }), "Light");
    part(probes.light).leads = {probes.hole(Line::A, 4), probes.hole(Line::A, 5)};
    probes.resistor = add(
        kindWhere([](const PartKind& kind) { return kind.valueIndex(kTolerance) >= 0 && kind.valueIndex(kOhms) >= 0; }),
        "Resistor");
    part(probes.resistor).leads = {probes.hole(Line::B, 5), probes.hole(Line::A, 6)};
    part(probes.resistor).values[static_cast<std::size_t>(part(probes.resistor).kind->valueIndex(kOhms))] = kProbeOhm;

    ElementPlaces places;
    for (int p = 0; p < static_cast<int>(bench.parts.size()); ++p) {
        const PartKind& kind = *part(p).kind;
        for (int spec = 0; spec < static_cast<int>(kind.model.size()); ++spec) places.push_back({p, spec, {}});
        const bool ofPlan = p < static_cast<int>(plan.parts.size());
        if (ofPlan && kind.isSupply && kind.stateIndex("on") >= 0) probes.suppliesOn.push_back(p);
        const int tolerance = kind.valueIndex(kTolerance);
        const auto sought = std::ranges::find(kind.values, true, &ValueSpec::sought);
        if (ofPlan && tolerance >= 0 && sought != kind.values.end() && part(p).value(tolerance) > 0)
            loose_.push_back({p, static_cast<int>(sought - kind.values.begin()), part(p).value(tolerance)});
    }
    probes.emitters = Emitters(bench, places).all;
    for (Emitter& emitter : probes.emitters) {  // by the place in its own part's model
        emitter.element = places[static_cast<std::size_t>(emitter.element)].spec;
        if (emitter.part < static_cast<int>(plan.parts.size()) && emitter.visibleShare > 0 &&
            (lights_.empty() || lights_.back() != emitter.part))
            lights_.push_back(emitter.part);
    }
}

Foresight::Desk& Foresight::deskOf(const Suspect& suspect, const Digits& digits) {
    std::string key;
    for (const std::string& board : suspect.splitRails) key += board + '/';
    for (const int digit : digits) key += fmt::format(",{}", digit);
    auto& desk = desks_[key];
    if (desk) return *desk;
    desk = std::make_unique<Desk>();
    auto bench = std::make_shared<Bench>(*probes_->bench);
    for (Board& board : bench->boards) {
        if (suspect.splitRails.contains(board.id)) board.rails = Rails::Split;
    }
    Inputs inputs;
    const std::vector<Throw> throws = throwsOf(suspects_.plan());
    for (std::size_t t = 0; t < throws.size(); ++t) {
        Part& part = bench->parts[static_cast<std::size_t>(throws[t].part)];
        if (!throws[t].isCap())
            part.state[static_cast<std::size_t>(throws[t].state)] = digits[t];
        else if (digits[t] != 0)
            inputs.held.insert(part.id);
    }
    if (const auto& said = suspects_.plan().surroundings) inputs.surroundings = *said;
    desk->solver = std::make_unique<VariantSolver>(buildLayout(std::move(bench)), inputs);
    return *desk;
}

Part& Foresight::changed(Variant& variant, int part) const {
    const auto found = std::ranges::find(variant.parts, part, &Variant::PartAs::part);
    if (found != variant.parts.end()) return *found->as;
    return *variant.parts.emplace_back(Variant::PartAs{part, probes_->bench->parts[static_cast<std::size_t>(part)]}).as;
}

void Foresight::switchSuppliesOff(Variant& variant) const {
    for (const int supply : probes_->suppliesOn) {
        Part& part = changed(variant, supply);
        part.state[static_cast<std::size_t>(part.kind->stateIndex("on"))] = 0;
    }
}

void Foresight::addTips(Variant& variant, Tool tool, const JumperEnd& red, const JumperEnd& black) const {
    if (tool == Tool::Eye) return;
    const bool light = tool == Tool::ProbeLight;
    Jumper tip;
    tip.id = "Red";
    tip.ends = {red, probes_->hole(Line::C, light ? 4 : 1)};
    variant.added.push_back(tip);
    tip.id = "Black";
    tip.ends = {black, probes_->hole(Line::C, light ? 6 : 2)};
    variant.added.push_back(tip);
}

Foresight::Desk& Foresight::solve(const Suspect& suspect, const Digits& digits, Tool tool, const JumperEnd& red,
                                  const JumperEnd& black, int loose) {
    stopIfAsked();
    ++solved_;
    Desk& desk = deskOf(suspect, digits);
    Variant& variant = desk.variant = suspect.variant;
    // A switch that the suspect changes stands as the hand has put it.
    const std::vector<Throw> throws = throwsOf(suspects_.plan());
    for (Variant::PartAs& each : variant.parts) {
        for (std::size_t t = 0; t < throws.size(); ++t) {
            if (throws[t].part == each.part && !throws[t].isCap())
                each.as->state[static_cast<std::size_t>(throws[t].state)] = digits[t];
        }
    }
    if (loose >= 0) {
        const LooseFigure& figure = loose_[static_cast<std::size_t>(loose)];
        Part& part = changed(variant, figure.part);
        part.values[static_cast<std::size_t>(figure.value)] = part.value(figure.value) * (1 + figure.share);
    }
    if (tool == Tool::Beeper) {
        switchSuppliesOff(variant);
        turnDial(changed(variant, probes_->meter), probes_->beepElement);
    }
    addTips(variant, tool, red, black);
    desk.status = desk.solver->solve(variant);
    return desk;
}

double Foresight::brightnessOf(const Desk& desk, int part) const {
    if (desk.status == Status::None) return kUnsolved;
    double brightest = 0;
    for (const Emitter& emitter : probes_->emitters) {
        if (emitter.part != part) continue;
        brightest = std::max(brightest, brightnessOfLight(emitter.lightAt(desk.solver->ampere(part, emitter.element))));
    }
    return brightest;
}

double Foresight::brightness(const Suspect& suspect, const Digits& digits, int part, int loose) {
    if (loose >= 0) return brightnessOf(solve(suspect, digits, Tool::Eye, {}, {}, loose), part);
    std::vector<double>& shining = shining_[&suspect][digits];
    if (shining.empty()) {
        const Desk& desk = solve(suspect, digits, Tool::Eye, {}, {}, -1);
        shining.resize(suspects_.plan().parts.size(), 0);
        for (const int light : lights_) shining[static_cast<std::size_t>(light)] = brightnessOf(desk, light);
    }
    return shining[static_cast<std::size_t>(part)];
}

JumperEnd Foresight::blackEnd(const std::optional<Hole>& black) const {
    if (black) return *black;
    const auto minus = minusOfFirstSupply(suspects_.plan());
    assert(minus && "who asks for volts has somewhere to hold the black tip");
    return Socket{suspects_.plan().parts[static_cast<std::size_t>(minus->part)].id, minus->lead};
}

std::uint64_t Foresight::keyOf(const Digits& digits, Tool tool, const JumperEnd& red, const JumperEnd& black) const {
    std::uint64_t key = static_cast<std::uint64_t>(tool);
    const auto mix = [&](std::uint64_t number) { key = (key ^ number) * 0x9e3779b97f4a7c15 + (key >> 29); };
    for (const int digit : digits) mix(static_cast<std::uint64_t>(digit) + 1);
    for (const JumperEnd* end : {&red, &black}) {
        const Hole* hole = std::get_if<Hole>(end);
        mix(hole ? static_cast<std::uint64_t>(suspects_.ground().stripOf(suspects_.ground().holeIndex(*hole))) + 7 : 3);
    }
    return key;
}

double Foresight::meterFigure(int element, std::string_view name) const {
    const Part& meter = probes_->bench->parts[static_cast<std::size_t>(probes_->meter)];
    for (const auto& [figure, parameter] : meter.kind->model[static_cast<std::size_t>(element)].parameters) {
        if (figure == name) return resolve(parameter, meter);
    }
    return 0;
}

double Foresight::metered(const Desk& desk) const {
    if (desk.status == Status::None) return kUnsolved;
    const Probes& probes = *probes_;
    const double volt =
        desk.solver->volt(probes.meter, probes.meterPlus) - desk.solver->volt(probes.meter, probes.meterCom);
    if (!std::isnan(volt)) return volt;
    // What hangs together with nothing else has no potential of its own; the meter's current tells all the same.
    return desk.solver->ampere(probes.meter, probes.voltsElement) * meterFigure(probes.voltsElement, kOhms);
}

double Foresight::volts(const Suspect& suspect, const Digits& digits, const Hole& red, const std::optional<Hole>& black,
                        int loose) {
    const JumperEnd other = blackEnd(black);
    if (loose >= 0) return metered(solve(suspect, digits, Tool::Meter, red, other, loose));
    const auto [known, isNew] = known_[&suspect].try_emplace(keyOf(digits, Tool::Meter, red, other), 0);
    if (isNew) known->second = metered(solve(suspect, digits, Tool::Meter, red, other, -1));
    return known->second;
}

double Foresight::glow(const Suspect& suspect, const Digits& digits, const Hole& red,
                       const std::optional<Hole>& black) {
    const JumperEnd other = blackEnd(black);
    const auto [known, isNew] = known_[&suspect].try_emplace(keyOf(digits, Tool::ProbeLight, red, other), 0);
    if (isNew) {
        const Desk& desk = solve(suspect, digits, Tool::ProbeLight, red, other, -1);
        known->second = brightnessOf(desk, probes_->light);
    }
    return known->second;
}

double Foresight::ohms(const Suspect& suspect, const Digits& digits, const Hole& one, const Hole& other) {
    const auto [known, isNew] = known_[&suspect].try_emplace(keyOf(digits, Tool::Beeper, one, other), 0);
    if (!isNew) return known->second;
    constexpr double kLeastAmpere = 1e-9;
    const Desk& desk = solve(suspect, digits, Tool::Beeper, one, other, -1);
    const double ampere = std::abs(desk.solver->ampere(probes_->meter, probes_->beepElement));
    const double volt =
        meterFigure(probes_->beepElement, "voltage") - ampere * meterFigure(probes_->beepElement, "seriesResistance");
    const double ohm = ampere < kLeastAmpere ? std::numeric_limits<double>::infinity() : std::max(0.0, volt / ampere);
    return known->second = desk.status == Status::None ? kUnsolved : ohm;
}

}  // namespace tiepoint
