#include "support/doctor_plants.h"

#include "core/doctor/observation_words.h"
#include "core/doctor/question_words.h"
#include "core/snapshot/lit.h"

#include <fmt/format.h>

#include <algorithm>
#include <chrono>
#include <cmath>

namespace tiepoint::test {
namespace {

int throwsPart(const std::vector<Throw>& throws, std::size_t t) { return throws[t].part; }

/// The built bench with resistors off by chance within their tolerance.
std::shared_ptr<const Bench> loosened(Bench bench, examiner::Chance& chance) {
    for (Part& part : bench.parts) {
        const int tolerance = part.kind->valueIndex("tolerance"), ohms = part.kind->valueIndex("resistance");
        if (tolerance < 0 || ohms < 0) continue;
        const double share = part.value(tolerance);
        part.values[static_cast<std::size_t>(ohms)] = part.value(ohms) * (1 + chance.between(-share, share));
    }
    return std::make_shared<const Bench>(std::move(bench));
}

double seconds() { return std::chrono::duration<double>(std::chrono::steady_clock::now().time_since_epoch()).count(); }

}  // namespace

RealBoard::RealBoard(const Doctor& doctor, const Suspect& truth, examiner::Chance& chance)
    : plan_(doctor.plan()),
      truth_(truth),
      chance_(chance),
      hidden_(!truth.slips.empty() &&
              doctor.suspects().slips()[static_cast<std::size_t>(truth.slips.front())].kind->hidden),
      bench_(loosened(doctor.suspects().built(truth), chance)),
      layout_(buildLayout(bench_)),
      throws_(throwsOf(*bench_)),
      solver_(std::make_unique<PositionSolver>(layout_)),
      probe_(std::make_unique<MeterProbe>(layout_, throws_)) {}

int RealBoard::netAt(const Hole& hole) const {
    const int index = layout_->holeIndex(hole);
    return layout_->netOfHole(index);
}

int RealBoard::blackNet() const {
    const auto minus = minusOfFirstSupply(plan_);
    return layout_->netOfLead[static_cast<std::size_t>(layout_->leadIndex(minus->part, minus->lead))];
}

bool RealBoard::solves(const Digits& digits) { return solver_->solve(digits)->status() != Status::None; }

Shine RealBoard::shine(const Digits& digits, int part) {
    const auto snapshot = solver_->solve(digits);
    const double brightness = snapshot->brightness(part);
    if (brightness < kVisibleBrightness) return Shine::Dark;
    return brightness < 0.45 ? Shine::Dim : Shine::Lit;
}

double RealBoard::volts(const Digits& digits, const Hole& red) {
    return probe_->volts(digits, netAt(red), blackNet()).value;
}

std::vector<Observation> RealBoard::look(const Question& question) const {
    std::vector<Observation> seen;
    const auto add = [&](auto what) { seen.push_back({question.digits, std::move(what), {}}); };
    const auto differs = [&](const Hole& a, const Hole& b) {
        return layout_->stripOfHole[static_cast<std::size_t>(layout_->holeIndex(a))] !=
               layout_->stripOfHole[static_cast<std::size_t>(layout_->holeIndex(b))];
    };
    bool moved = false;
    if (const Part* part = bench_->findPart(question.id)) {
        const Part& planned = *plan_.findPart(question.id);
        for (std::size_t lead = 0; lead < part->leads.size(); ++lead) {
            if (part->leads[lead] && planned.leads[lead])
                moved = moved || differs(*part->leads[lead], *planned.leads[lead]);
        }
        for (std::size_t lead = 0; moved && lead < part->leads.size(); ++lead) {
            if (part->leads[lead]) add(SawTip{part->id, static_cast<int>(lead), *part->leads[lead]});
        }
        for (std::size_t state = 0; !hidden_ && state < part->state.size(); ++state) {
            const auto index = static_cast<int>(state);
            if (part->stateValue(index) != planned.stateValue(index))
                add(SawSetting{part->id, true, index, part->stateValue(index)});
        }
        for (std::size_t value = 0; !hidden_ && value < part->values.size(); ++value) {
            const auto index = static_cast<int>(value);
            // Bands say what a resistor was made as, whatever its tolerance.
            const auto printed = truth_.settings.find({part->id, false, index});
            if (printed != truth_.settings.end() && printed->second != planned.value(index))
                add(SawSetting{part->id, false, index, printed->second});
        }
    } else if (const Jumper* jumper = bench_->findJumper(question.id)) {
        const Jumper& planned = *plan_.findJumper(question.id);
        for (const std::size_t end : {0u, 1u}) {
            const Hole *is = std::get_if<Hole>(&jumper->ends[end]), *was = std::get_if<Hole>(&planned.ends[end]);
            moved = moved || (is && was ? differs(*is, *was) : jumper->ends[end] != planned.ends[end]);
        }
        for (const std::size_t end : {0u, 1u}) {
            const Hole* is = std::get_if<Hole>(&jumper->ends[end]);
            if (moved && is) add(SawTip{jumper->id, static_cast<int>(end), *is});
        }
        if (moved && seen.empty()) add(SawBuilt{question.id, false});
    } else {
        add(SawMissing{question.id});
    }
    if (seen.empty()) add(SawBuilt{question.id, true});
    return seen;
}

/// Puts a meter on continuity beside the bench, its leads wired to the strips, with every supply off.
bool RealBoard::beeps(const Question& question) const {
    auto bench = std::make_shared<Bench>(*bench_);
    for (std::size_t t = 0; t < throws_.size(); ++t) {
        if (!throws_[t].isCap())
            bench->parts[static_cast<std::size_t>(throws_[t].part)].state[static_cast<std::size_t>(throws_[t].state)] =
                question.digits[t];
    }
    for (Part& part : bench->parts) {
        if (part.kind->isSupply && part.kind->stateIndex("on") >= 0)
            part.state[static_cast<std::size_t>(part.kind->stateIndex("on"))] = 0;
    }
    Board table;
    table.id = "Table";
    table.kind = findBoardKind("mini");
    table.atX = 500;
    bench->boards.push_back(table);
    const PartKind& kind = *findKind("multimeter");
    Part meter = makePart(kind, "Tester");
    meter.state[static_cast<std::size_t>(kind.stateIndex("dial"))] = 4;  // continuity
    meter.leads = {Hole{"Table", Line::A, 1}, Hole{"Table", Line::A, 2}};
    bench->parts.push_back(meter);
    int column = 1;
    for (const Hole& to : {question.one, question.other}) {
        Jumper wire;
        wire.id = fmt::format("Lead{}", column);
        wire.ends = {to, Hole{"Table", Line::B, column++}};
        bench->jumpers.push_back(wire);
    }
    Inputs inputs;
    for (std::size_t t = 0; t < throws_.size(); ++t) {
        if (throws_[t].isCap() && question.digits[t] != 0)
            inputs.held.insert(bench->parts[static_cast<std::size_t>(throwsPart(throws_, t))].id);
    }
    const int tester = static_cast<int>(bench->parts.size()) - 1;
    return meterReading(*evaluate(bench, inputs), tester)->beeps;
}

std::vector<Observation> RealBoard::answer(const Question& question) {
    const auto one = [&](auto what) { return std::vector{Observation{question.digits, std::move(what), {}}}; };
    switch (question.asking) {
        case Asking::Built:
            return one(SawBuilt{question.id, true});
        case Asking::Light:
            return one(SawLight{question.id, shine(question.digits, plan_.partIndex(question.id)), false});
        case Asking::Look:
            return look(question);
        case Asking::Extra: {
            const auto strip = [&](const JumperEnd& end) {
                const Hole* hole = std::get_if<Hole>(&end);
                return hole ? layout_->stripOfHole[static_cast<std::size_t>(layout_->holeIndex(*hole))] : -1;
            };
            const bool there = std::ranges::any_of(bench_->jumpers, [&](const Jumper& jumper) {
                if (plan_.findJumper(jumper.id)) return false;
                const int a = strip(jumper.ends[0]), b = strip(jumper.ends[1]);
                const int from = strip(question.one), to = strip(question.other);
                return (a == from && b == to) || (a == to && b == from);
            });
            return one(SawExtra{question.one, question.other, there});
        }
        case Asking::Volts: {
            const double exact = volts(question.digits, question.one);
            if (std::isnan(exact)) return {};
            const double error = chance_.between(-0.03, 0.03) * exact + chance_.between(-0.05, 0.05);
            constexpr double kHundredths = 100;  // as the display shows it
            return one(SawVolts{question.one, std::round((exact + 0.9 * error) * kHundredths) / kHundredths});
        }
        case Asking::Glow:
            return {};
        case Asking::Beep:
            return one(HeardBeep{question.one, question.other, beeps(question)});
    }
    return {};
}

const Suspect& drawTruth(const Doctor& doctor, examiner::Chance& chance) {
    const auto& all = doctor.suspects().all();
    std::vector<double> weights;
    for (const Suspect& suspect : all) weights.push_back(suspect.slips.empty() ? 0 : suspect.weight);
    return all[static_cast<std::size_t>(chance.weighted(weights))];
}

namespace {

/// Whether a look or a reading somewhere differs by more than any allowance.
bool canBeToldApart(Doctor& doctor, RealBoard& real, const Suspect& truth, const Suspect& other, bool eye) {
    if (eye && truth.looks != other.looks) return true;
    examiner::Chance exact(1);
    Doctor& same = doctor;
    RealBoard supposed(same, other, exact);
    RealBoard planned(same, truth, exact);
    for (const Digits& digits : positionsToLookAt(doctor.suspects().ground().layout(), 8)) {
        if (!supposed.solves(digits) || !real.solves(digits)) return false;
        for (const int light : doctor.foresight().lights()) {
            const double one = doctor.foresight().brightness(truth, digits, light);
            const double two = doctor.foresight().brightness(other, digits, light);
            if (std::abs(one - two) > 0.15 && shineOf(one) != shineOf(two)) return true;
        }
        std::vector<int> seen;
        for (const Tip& tip : doctor.suspects().ground().tips()) {
            if (std::ranges::find(seen, tip.strip) != seen.end()) continue;
            seen.push_back(tip.strip);
            const Hole hole = doctor.suspects().ground().holeAt(tip.hole);
            const double one = planned.volts(digits, hole), two = supposed.volts(digits, hole);
            if (!std::isnan(one) && !std::isnan(two) && std::abs(one - two) > 3 * meterAllowance(one, two)) return true;
        }
    }
    return false;
}

}  // namespace

PlantOutcome runPlant(Doctor& doctor, const Suspect& truth, examiner::Chance& chance, const PlantRules& rules) {
    PlantOutcome outcome;
    RealBoard real(doctor, truth, chance);
    const Layout& layout = doctor.suspects().ground().layout();
    RealBoard plan(doctor, doctor.suspects().all().front(), chance);
    std::vector<Observation> seen;
    for (const Digits& digits : positionsToLookAt(layout, 8)) {
        for (const int light : doctor.foresight().lights()) {
            if (!seen.empty() || real.shine(digits, light) == plan.shine(digits, light)) continue;
            const Part& part = doctor.plan().parts[static_cast<std::size_t>(light)];
            seen.push_back({digits, SawLight{part.id, real.shine(digits, light), false}, {}});
            outcome.noticed = true;
        }
    }
    if (seen.empty()) seen.push_back({restOf(doctor.plan()), SawBuilt{doctor.plan().boards.front().id, true}, {}});
    outcome.story = doctor.slipsInWords(truth) + "\n  seen: " + observationInWords(doctor.plan(), seen.front());
    for (;;) {
        const double start = seconds();
        const Diagnosis diagnosis = doctor.diagnose(seen);
        const double took = seconds() - start;
        outcome.slowest = std::max(outcome.slowest, took);
        outcome.seconds += took;
        outcome.tied = diagnosis.fits.size();
        outcome.survived = std::ranges::find(diagnosis.fits, &truth, &Weighed::suspect) != diagnosis.fits.end();
        outcome.story += fmt::format(" -> {} fit{}", diagnosis.fits.size(), outcome.survived ? "" : ", TRUTH LOST");
        if (!outcome.survived) return outcome;
        auto next = diagnosis.next;
        if (!next) {
            outcome.finished = true;
            if (!rules.checkTies) return outcome;
            constexpr std::size_t kMostChecked = 4;
            std::size_t checked = 0;
            for (const Weighed& each : diagnosis.fits) {
                if (each.suspect == &truth || ++checked > kMostChecked) continue;
                if (canBeToldApart(doctor, real, truth, *each.suspect, rules.eye)) {
                    ++outcome.apart;
                    outcome.story += "\n  COULD BE TOLD APART: " + doctor.slipsInWords(*each.suspect);
                }
            }
            return outcome;
        }
        if (outcome.questions == rules.mostQuestions) return outcome;
        ++outcome.questions;
        outcome.story += "\n  " + questionInWords(doctor.plan(), next->question);
        const std::vector<Observation> more = real.answer(next->question);
        for (const Observation& each : more) outcome.story += " " + writeObservation(doctor.plan(), each);
        if (more.empty()) return outcome;
        seen.insert(seen.end(), more.begin(), more.end());
    }
}

}  // namespace tiepoint::test
