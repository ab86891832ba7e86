#include "examiner/behaviour.h"

#include "core/behaviour/position_solver.h"
#include "core/meter/meter.h"
#include "core/snapshot/lit.h"
#include "core/snapshot/readings.h"
#include "examiner/chance.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace tiepoint::examiner {
namespace {

constexpr int kMostPositions = 64;
constexpr double kTolerance = 0.1;      // of brightness and readings
constexpr double kFaint = 0.01;         // brightness
constexpr double kLeastReading = 2e-3;  // V or A: no difference worth telling
constexpr double kRounding = 1e-6;
constexpr std::uint64_t kPositionSeed = 5;  // the same positions for every bench

std::string keyOf(const Bench& bench, const Throw& each) { return bench.parts[each.part].id; }

int knobState(const PartKind& kind) { return kind.stateIndex("turn"); }

bool hasKnobs(const Bench& bench) {
    return std::ranges::any_of(bench.parts, [](const Part& part) { return knobState(*part.kind) >= 0; });
}

Bench withKnobs(Bench bench, double to) {
    for (Part& part : bench.parts) {
        if (const int state = knobState(*part.kind); state >= 0 && to >= 0) part.state[state] = to;
    }
    return bench;
}

std::vector<Digits> combinations(const std::vector<Throw>& throws, const Digits& resting) {
    double all = 1;
    for (const Throw& each : throws) all *= each.values;
    std::vector<Digits> found{resting};
    const auto add = [&](const Digits& digits) {
        if (std::ranges::find(found, digits) == found.end()) found.push_back(digits);
    };
    if (all <= kMostPositions) {
        for (int number = 0; number < static_cast<int>(all); ++number) {
            Digits digits;
            int left = number;
            for (const Throw& each : throws) {
                digits.push_back(left % each.values);
                left /= each.values;
            }
            add(digits);
        }
        return found;
    }
    Digits other = resting;
    for (std::size_t i = 0; i < throws.size(); ++i) {
        Digits one = resting;
        one[i] = (one[i] + 1) % throws[i].values;
        other[i] = one[i];
        add(one);
    }
    add(other);
    Chance chance(kPositionSeed);
    while (std::ssize(found) < kMostPositions) {
        Digits digits;
        for (const Throw& each : throws) digits.push_back(chance.below(each.values));
        add(digits);
    }
    return found;
}

std::set<std::string> overLimit(const Snapshot& snapshot) {
    std::set<std::string> over;
    const Bench& bench = *snapshot.layout->bench;
    for (int part = 0; part < std::ssize(bench.parts); ++part) {
        for (const RatingShare& share : ratingShares(snapshot, part)) {
            if (share.rating->maximum && share.share() > 1 + kRounding) over.insert(bench.parts[part].id);
        }
    }
    for (const ElementState element : snapshot.solution.elements()) {
        if (element.limiting) over.insert(bench.parts[element.part].id);
    }
    return over;
}

Moment momentOf(const Snapshot& snapshot) {
    Moment moment;
    moment.solved = snapshot.status() != Status::None;
    const Bench& bench = *snapshot.layout->bench;
    const bool shines = snapshot.status() == Status::Solved;
    for (int part = 0; part < std::ssize(bench.parts); ++part) {
        const std::string& id = bench.parts[part].id;
        if (bench.parts[part].kind->emitsLight) {
            moment.lights[id] = shines ? snapshot.brightness(part) : 0;
            if (shines && isLit(snapshot, part)) moment.lit.insert(id);
        }
        if (isMeter(*bench.parts[part].kind)) {
            const auto reading = meterReading(snapshot, part);
            // What it reads counts too: milliamperes are no volts.
            const std::string name = id + (reading ? " " + reading->quantity : "");
            moment.readings[name] = reading ? reading->value : std::nan("");
        }
    }
    if (shines) moment.over = overLimit(snapshot);
    return moment;
}

/// Solves one bench in many positions; switches by id, so that benches with other parts understand the same positions.
class Stage {
public:
    explicit Stage(const Bench& bench) : bench_(bench) {}

    Moment at(const Position& position) {
        Solver& solver = solverFor(position.knobs);
        Digits digits = solver.resting;
        const auto& throws = solver.solver.throws();
        for (std::size_t i = 0; i < throws.size(); ++i) {
            const auto found = position.throws.find(keyOf(bench_, throws[i]));
            if (found != position.throws.end() && found->second < throws[i].values) digits[i] = found->second;
        }
        return momentOf(*solver.solver.solve(digits));
    }

private:
    struct Solver {
        explicit Solver(const std::shared_ptr<const Bench>& bench)
            : solver(buildLayout(bench)),
              resting(digitsOf(solver.throws(), *bench, {})) {}
        PositionSolver solver;
        Digits resting;
    };

    Solver& solverFor(double knobs) {
        auto& solver = solvers_[knobs];
        if (!solver) solver = std::make_unique<Solver>(std::make_shared<Bench>(withKnobs(bench_, knobs)));
        return *solver;
    }

    const Bench& bench_;
    std::map<double, std::unique_ptr<Solver>> solvers_;
};

/// What each net is joined to, and the rails that say something else.
std::set<std::string> misprintedRails(const Bench& bench) {
    const auto layout = buildLayout(std::make_shared<Bench>(bench));
    std::set<int> plus, minus;
    for (int part = 0; part < std::ssize(bench.parts); ++part) {
        const PartKind& kind = *bench.parts[part].kind;
        if (!kind.isSupply) continue;
        plus.insert(layout->netOfLead[layout->leadIndex(part, kind.leadIndex(kind.model[0].from()))]);
        minus.insert(layout->netOfLead[layout->leadIndex(part, kind.leadIndex(kind.model[0].to()))]);
    }
    std::set<std::string> found;
    for (int hole = 0; hole < layout->holeCount(); ++hole) {
        const Hole at = layout->holeAt(hole);
        if (!isRail(at.line) || layout->jointOfHole[hole] < 0) continue;
        const bool printedPlus = at.line == Line::TopPlus || at.line == Line::BottomPlus;
        const int net = layout->netOfHole(hole);
        const auto& right = printedPlus ? plus : minus;
        const auto& wrong = printedPlus ? minus : plus;
        if (wrong.contains(net) && !right.contains(net)) found.insert(at.board + "." + std::string(lineName(at.line)));
    }
    return found;
}

bool near(double value, double wanted, double least) {
    if (std::isnan(value) || std::isnan(wanted)) return std::isnan(value) == std::isnan(wanted);
    return std::abs(value - wanted) <= kTolerance * std::abs(wanted) + least;
}

bool lightAsWanted(const Moment& moment, const Moment& wanted, const std::string& light) {
    const auto found = moment.lights.find(light);
    return found != moment.lights.end() && near(found->second, wanted.lights.at(light), kFaint) &&
           moment.lit.contains(light) == wanted.lit.contains(light);
}

bool readingAsWanted(const Moment& moment, const Moment& wanted, const std::string& meter) {
    const auto found = moment.readings.find(meter);
    return found != moment.readings.end() && near(found->second, wanted.readings.at(meter), kLeastReading);
}

bool isSubset(const std::set<std::string>& of, const std::set<std::string>& all) {
    return std::ranges::includes(all, of);
}

}  // namespace

std::vector<Position> positionsOf(const Bench& bench) {
    const auto throws = throwsOf(bench);
    const auto digits = combinations(throws, digitsOf(throws, bench, {}));
    std::vector<double> knobs{-1};
    if (hasKnobs(bench)) knobs = {-1, 0, 1};
    std::vector<Position> positions;
    for (const double turn : knobs) {
        for (const Digits& each : digits) {
            Position position;
            position.knobs = turn;
            for (std::size_t i = 0; i < throws.size(); ++i) position.throws[keyOf(bench, throws[i])] = each[i];
            positions.push_back(std::move(position));
        }
    }
    return positions;
}

Behaviour behave(const Bench& bench, const std::vector<Position>& positions) {
    Behaviour behaviour;
    Stage stage(bench);
    for (const Position& position : positions) behaviour.moments.push_back(stage.at(position));
    behaviour.misprinted = misprintedRails(bench);
    return behaviour;
}

bool Behaviour::isSafe() const {
    return std::ranges::all_of(moments, [](const Moment& moment) { return moment.solved && moment.over.empty(); });
}

double Behaviour::brightest(const std::string& light) const {
    double most = 0;
    for (const Moment& moment : moments) most = std::max(most, moment.lights.at(light));
    return most;
}

bool asWanted(const Moment& moment, const Moment& wanted) {
    return moment.solved == wanted.solved && isSubset(moment.over, wanted.over) &&
           std::ranges::all_of(wanted.lights,
                               [&](const auto& each) { return lightAsWanted(moment, wanted, each.first); }) &&
           std::ranges::all_of(wanted.readings,
                               [&](const auto& each) { return readingAsWanted(moment, wanted, each.first); });
}

bool asWanted(const Behaviour& behaviour, const Behaviour& wanted) {
    for (std::size_t i = 0; i < wanted.moments.size(); ++i) {
        if (!asWanted(behaviour.moments[i], wanted.moments[i])) return false;
    }
    return isSubset(behaviour.misprinted, wanted.misprinted);
}

bool spoils(const Behaviour& before, const Behaviour& after, const Behaviour& wanted) {
    for (std::size_t i = 0; i < wanted.moments.size(); ++i) {
        const Moment &was = before.moments[i], &is = after.moments[i], &should = wanted.moments[i];
        if (was.solved && !is.solved) return true;
        if (!isSubset(is.over, was.over) && !isSubset(is.over, should.over)) return true;
        for (const auto& [light, brightness] : should.lights) {
            if (!should.lit.contains(light) || !was.lit.contains(light)) continue;
            if (!is.lit.contains(light) || (lightAsWanted(was, should, light) && !lightAsWanted(is, should, light)))
                return true;
        }
        for (const auto& [meter, value] : should.readings) {
            if (readingAsWanted(was, should, meter) && !readingAsWanted(is, should, meter)) return true;
        }
    }
    return !isSubset(after.misprinted, before.misprinted);
}

std::vector<std::string> idleSwitches(const Bench& bench, const std::set<std::string>& ignored) {
    const auto positions = positionsOf(bench);
    Stage stage(bench);
    std::vector<std::string> idle;
    for (const Throw& each : throwsOf(bench)) {
        const std::string key = keyOf(bench, each);
        if (ignored.contains(key)) continue;
        const bool matters = std::ranges::any_of(positions, [&](Position position) {
            const Moment here = stage.at(position);
            int& digit = position.throws[key];
            digit = (digit + 1) % each.values;
            return !asWanted(stage.at(position), here);
        });
        if (!matters) idle.push_back(key);
    }
    return idle;
}

}  // namespace tiepoint::examiner
