#include "core/spread/spread.h"

#include "core/base/stopping.h"
#include "core/bench/resolve.h"
#include "core/spread/figured_circuit.h"
#include "core/spread/readouts.h"
#include "core/spread/tolerance.h"

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <limits>

namespace tiepoint {
namespace {

constexpr int kPasses = 3;           ///< over the parts of a corner; more never helped
constexpr double kNoChange = 1e-12;  ///< a change of a reading under this share of it is none

/// Even numbers between -1 and 1, the same each time: splitmix64 (Steele, Lea and Flood, OOPSLA 2014).
class EvenDraws {
public:
    double next() {
        state_ += 0x9e3779b97f4a7c15;
        std::uint64_t z = state_;
        z = (z ^ (z >> 30)) * 0xbf58476d1ce4e5b9;
        z = (z ^ (z >> 27)) * 0x94d049bb133111eb;
        z ^= z >> 31;
        return std::ldexp(static_cast<double>(z >> 11), -52) - 1;
    }

private:
    std::uint64_t state_ = 20;
};

/// By uncertain thing: where it stands, -1 (least) to 1 (greatest).
using Corner = std::vector<double>;

class SpreadSearch {
public:
    /// Of the volts at holes; null: of the lights and of what is pinned.
    SpreadSearch(const std::shared_ptr<const Snapshot>& nominal, const std::vector<Hole>* holes)
        : bench_(*nominal->layout->bench),
          circuit_(nominal),
          uncertain_(uncertainOf(bench_)),
          readouts_(holes ? readoutsAt(*nominal->layout, *holes) : readoutsOf(*nominal, circuit_)),
          figures_(circuit_.printed()) {
        for (const Uncertain& thing : uncertain_) {
            Moving moving{ratedCurrentOf(thing), {}};
            for (const Uncertain::Figure& figure : thing.figures)
                moving.elements.push_back(static_cast<std::size_t>(circuit_.elementOf(thing.part, figure.spec)));
            moving_.push_back(std::move(moving));
        }
    }

    Spread run(int draws) {
        Spread spread;
        if (readouts_.empty()) {
            spread.why = "Nothing is read here: put in a light, or pin a reading.";
            return spread;
        }
        for (const Readout& readout : readouts_) spread.readings.push_back(readout.about);
        const Corner middle(uncertain_.size(), 0);
        const std::vector<double> printed = at(middle);
        for (std::size_t r = 0; r < readouts_.size(); ++r) {
            SpreadReading& reading = spread.readings[r];
            reading.nominal = reading.least = reading.greatest = printed[r];
        }
        searchCorners(spread);
        draw(spread, draws);
        return spread;
    }

private:
    /// What a thing moves, looked up once.
    struct Moving {
        double ratedAmpere = 0;
        std::vector<std::size_t> elements;  ///< by figure of the thing
    };

    double ratedCurrentOf(const Uncertain& thing) const {
        const Part& part = bench_.parts[static_cast<std::size_t>(thing.part)];
        return part.kind->emitsLight ? ratedCurrentAmpere(part) : 0;
    }

    /// All readings with the things standing so; NaN where there is no solution.
    std::vector<double> at(const Corner& corner) {
        stopIfAsked();
        for (std::size_t u = 0; u < uncertain_.size(); ++u) set(u, corner[u]);
        std::vector<double> read(readouts_.size(), std::numeric_limits<double>::quiet_NaN());
        if (!circuit_.solve(figures_)) return read;
        for (std::size_t r = 0; r < readouts_.size(); ++r) read[r] = readouts_[r].read(circuit_);
        return read;
    }

    void set(std::size_t index, double stand) {
        const Uncertain& thing = uncertain_[index];
        for (std::size_t f = 0; f < thing.figures.size(); ++f) {
            const std::size_t element = moving_[index].elements[f];
            const int figure = thing.figures[f].figure;
            figures_[element][static_cast<std::size_t>(figure)] =
                thing.moved(circuit_.printed()[element], figure, stand * thing.tolerance, moving_[index].ratedAmpere);
        }
    }

    void searchCorners(Spread& spread) {
        const std::size_t things = uncertain_.size();
        // By thing and reading: how the reading changes from one end of the thing's tolerance to the other.
        std::vector<std::vector<double>> change(things);
        for (std::size_t u = 0; u < things; ++u) {
            Corner alone(things, 0);
            alone[u] = 1;
            const std::vector<double> up = at(alone);
            alone[u] = -1;
            const std::vector<double> down = at(alone);
            for (std::size_t r = 0; r < readouts_.size(); ++r) change[u].push_back(up[r] - down[r]);
        }
        for (std::size_t r = 0; r < readouts_.size(); ++r) {
            SpreadReading& reading = spread.readings[r];
            if (std::isnan(reading.nominal)) continue;
            Corner towards(things, 0);
            for (std::size_t u = 0; u < things; ++u) towards[u] = change[u][r] < 0 ? -1 : 1;
            reading.greatest = std::max(reading.greatest, climb(towards, r, 1));
            for (double& stand : towards) stand = -stand;
            reading.least = std::min(reading.least, -climb(towards, r, -1));
            tellMost(reading, change, r);
        }
    }

    /// The greatest of sign times the reading that turning one thing after the other finds.
    double climb(Corner corner, std::size_t reading, double sign) {
        double best = known(sign * at(corner)[reading]);
        for (int pass = 0; pass < kPasses; ++pass) {
            bool better = false;
            for (double& stand : corner) {
                stand = -stand;
                const double turned = known(sign * at(corner)[reading]);
                if (turned > best * (1 + (best > 0 ? kNoChange : -kNoChange)) && turned > best) {
                    best = turned;
                    better = true;
                } else {
                    stand = -stand;
                }
            }
            if (!better) break;
        }
        return best;
    }
    static double known(double value) { return std::isnan(value) ? -std::numeric_limits<double>::infinity() : value; }

    void tellMost(SpreadReading& reading, const std::vector<std::vector<double>>& change, std::size_t r) const {
        double most = kNoChange * std::abs(reading.nominal);
        for (std::size_t u = 0; u < uncertain_.size(); ++u) {
            if (!(std::abs(change[u][r]) > most)) continue;
            most = std::abs(change[u][r]);
            reading.most = bench_.parts[static_cast<std::size_t>(uncertain_[u].part)].id;
            reading.mostShare = std::min(1.0, most / (reading.greatest - reading.least));
        }
    }

    void draw(Spread& spread, int draws) {
        EvenDraws even;
        std::vector<std::vector<double>> drawn(readouts_.size());
        Corner corner(uncertain_.size());
        spread.draws = draws;
        for (int n = 0; n < draws; ++n) {
            for (double& stand : corner) stand = even.next();
            const std::vector<double> read = at(corner);
            for (std::size_t r = 0; r < read.size(); ++r) {
                if (!std::isnan(read[r])) drawn[r].push_back(read[r]);
            }
            if (std::ranges::all_of(read, [](double each) { return std::isnan(each); })) ++spread.unsolved;
        }
        for (std::size_t r = 0; r < drawn.size(); ++r) sumUp(spread.readings[r], drawn[r]);
    }

    static void sumUp(SpreadReading& reading, const std::vector<double>& drawn) {
        if (drawn.empty()) return;
        double sum = 0;
        for (const double each : drawn) {
            sum += each;
            reading.least = std::min(reading.least, each);
            reading.greatest = std::max(reading.greatest, each);
        }
        const auto count = static_cast<double>(drawn.size());
        reading.mean = sum / count;
        double squares = 0;
        for (const double each : drawn) squares += (each - reading.mean) * (each - reading.mean);
        reading.deviation = std::sqrt(squares / count);
        const double breadth = reading.greatest - reading.least;
        if (!(breadth > kNoChange * std::abs(reading.mean))) return;
        reading.histogram.assign(kHistogramBars, 0);
        for (const double each : drawn) {
            const int bar = static_cast<int>(kHistogramBars * (each - reading.least) / breadth);
            ++reading.histogram[static_cast<std::size_t>(std::min(bar, kHistogramBars - 1))];
        }
    }

    const Bench& bench_;
    FiguredCircuit circuit_;
    std::vector<Uncertain> uncertain_;
    std::vector<Readout> readouts_;
    Figures figures_;
    std::vector<Moving> moving_;  ///< by uncertain thing
};

Spread searched(const std::shared_ptr<const Snapshot>& nominal, const std::vector<Hole>* holes, int draws) {
    if (nominal->status() == Status::Solved) return SpreadSearch(nominal, holes).run(draws);
    Spread spread;
    spread.why = nominal->status() == Status::Off ? "Nothing is read while every supply is off."
                                                  : "Nothing is read: " + nominal->solution.reason;
    return spread;
}

}  // namespace

Spread spreadOf(const std::shared_ptr<const Snapshot>& nominal, int draws) { return searched(nominal, nullptr, draws); }

Spread spreadAt(const std::shared_ptr<const Snapshot>& nominal, const std::vector<Hole>& holes) {
    return searched(nominal, &holes, 0);
}

}  // namespace tiepoint
