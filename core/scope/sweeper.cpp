#include "core/scope/sweeper.h"

#include <algorithm>
#include <cmath>

namespace tiepoint {
namespace {

constexpr int kRing = 2 * Sweeper::kColumns;
constexpr float kNoColumn = std::numeric_limits<float>::quiet_NaN();
constexpr double kNoLevelHysteresis = 0.1;            ///< of a square
constexpr double kLeastIdle = 0.02, kMostIdle = 0.3;  ///< without a trigger it sweeps all the same after this
constexpr double kSlowSweep = 0.25;                   ///< on the wall: longer ones are watched as they go
constexpr double kScreensKept = 4;

std::size_t placeInRing(std::int64_t column) {
    const std::int64_t rest = column % kRing;
    return static_cast<std::size_t>(rest < 0 ? rest + kRing : rest);
}

}  // namespace

Sweeper::Sweeper(const ScopeSettings& settings)
    : settings_(settings),
      columnSecond_(settings.screenSecond() / kColumns),
      tag_(kRing, -1) {
    for (int c : {0, 1}) {
        least_[c].assign(kRing, kNoColumn);
        greatest_[c].assign(kRing, kNoColumn);
        whole_.least[c].assign(kColumns + 1, kNoColumn);
        whole_.greatest[c].assign(kColumns + 1, kNoColumn);
    }
    begin(0);
}

void Sweeper::begin(double second) {
    std::ranges::fill(tag_, -1);
    nowSecond_ = idleSince_ = second;
    sweepLeft_ = trigger_ = kUnknownMeasure;
    armed_ = false;
}

void Sweeper::arm() {
    stands_ = false;
    armed_ = false;
    idleSince_ = nowSecond_;
}

double Sweeper::hysteresisVolt() const { return kNoLevelHysteresis * settings_.voltsPerSquare[settings_.source]; }

double Sweeper::memorySecond() const {
    const bool looksForOne = settings_.sweep != ScopeSettings::Sweep::Free && !stands_;
    return looksForOne ? std::numeric_limits<double>::infinity() : kScreensKept * settings_.screenSecond() + kLeastIdle;
}

void Sweeper::put(std::int64_t column, int channel, double value) {
    const std::size_t at = placeInRing(column);
    if (tag_[at] != column) {
        tag_[at] = column;
        for (int c : {0, 1}) least_[c][at] = greatest_[c][at] = kNoColumn;
    }
    const auto v = static_cast<float>(value);
    float &least = least_[channel][at], &greatest = greatest_[channel][at];
    least = least <= v ? least : v;  // also where there is no number yet
    greatest = greatest >= v ? greatest : v;
}

void Sweeper::fill(const std::array<Piece3, 2>& channels, double from, double until) {
    const auto columnOf = [this](double second) {
        return static_cast<std::int64_t>(std::floor(second / columnSecond_));
    };
    const std::int64_t first = columnOf(from), last = columnOf(until);
    for (int c : {0, 1}) {
        const Piece3& piece = channels[c];
        double value = piece.at(from);
        for (std::int64_t column = first; column <= last; ++column) {
            put(column, c, value);
            value = piece.at(column == last ? until : static_cast<double>(column + 1) * columnSecond_);
            put(column, c, value);
        }
        for (int t = 0; t < piece.turnCount; ++t) {
            const double turn = piece.secondOf(piece.turns[t]);
            if (turn > from && turn < until) put(columnOf(turn), c, piece.atShare(piece.turns[t]));
        }
    }
}

/// When the source passes the level the right way; unknown if it doesn't.
double Sweeper::findTrigger(const Piece3& piece, double from, double until) {
    const double way = settings_.rising ? 1 : -1;
    double found = kUnknownMeasure;
    piece.eachStretch(from, until, [&](double a, double b) {
        if (found == found) return;
        const double va = way * (piece.at(a) - settings_.levelVolt), vb = way * (piece.at(b) - settings_.levelVolt);
        armed_ = armed_ || va < -hysteresisVolt();
        if (armed_ && va >= 0) {
            found = a;  // it jumped
        } else if (armed_ && vb >= 0) {
            found = piece.passes(settings_.levelVolt, a, b);
        } else {
            armed_ = armed_ || vb < -hysteresisVolt();
        }
    });
    if (found == found) armed_ = false;
    return found;
}

void Sweeper::beginSweep(double second, bool triggered) {
    trigger_ = triggered ? second : kUnknownMeasure;
    sweepLeft_ = second - ScopeSettings::kBeforeSquares * settings_.secondsPerSquare;
    for (int c : {0, 1}) {
        const bool known = knowsMiddle_ && swing_[c] > 0;
        const double hysteresis = known ? swing_[c] / 8 : hysteresisVolt();
        tally_[c] = Tally(known ? middle_[c] : settings_.levelVolt, hysteresis);
    }
}

void Sweeper::endSweep() {
    const double until = sweepLeft_ + settings_.screenSecond();
    whole_.left = sweepLeft_;
    whole_.trigger = trigger_;
    whole_.until = until;
    whole_.firstSecond =
        copyColumns(sweepLeft_, until, [this](int c) { return std::pair(&whole_.least[c], &whole_.greatest[c]); });
    for (int c : {0, 1}) {
        whole_.measures[c] = tally_[c].measures();
        middle_[c] = (tally_[c].least() + tally_[c].greatest()) / 2;
        swing_[c] = tally_[c].greatest() - tally_[c].least();
    }
    knowsMiddle_ = true;
    if (settings_.sweep == ScopeSettings::Sweep::Once) stands_ = true;
    sweepLeft_ = kUnknownMeasure;
    idleSince_ = until;
    armed_ = false;
}

void Sweeper::tally(const std::array<Piece3, 2>& channels, double from, double until) {
    for (int c : {0, 1}) tally_[c].take(channels[c], from, until);
}

void Sweeper::take(const std::array<Piece3, 2>& channels) {
    const double until = channels[0].untilSecond;
    double from = channels[0].fromSecond;
    if (!(until >= from)) return;
    const double chunk = settings_.screenSecond() / 2;
    for (double a = from; a <= until; a += chunk) {
        const double b = std::min(until, a + chunk);
        fill(channels, a, b);
        nowSecond_ = b;
        double t = a;
        while (t < b) {
            if (isSweeping()) {
                const double end = sweepLeft_ + settings_.screenSecond();
                tally(channels, t, std::min(end, b));
                if (end > b) break;
                endSweep();
                t = std::max(t, end);
                continue;
            }
            if (stands_) break;
            const double found = findTrigger(channels[settings_.source], t, b);
            const double due = settings_.sweep == ScopeSettings::Sweep::Free
                                   ? idleSince_ + std::clamp(settings_.screenSecond(), kLeastIdle, kMostIdle)
                                   : std::numeric_limits<double>::infinity();
            if (found == found && found <= due) {
                beginSweep(found, true);
                t = found;
            } else if (due < b) {
                t = std::max(t, due);
                beginSweep(t, false);
            } else {
                break;
            }
        }
        if (b == until) break;
    }
}

/// Copies the columns of a stretch of time to channel(c), a pair of pointers to least and greatest; returns when the first begins.
template <class Channel>
double Sweeper::copyColumns(double left, double until, Channel channel) const {
    const auto first = static_cast<std::int64_t>(std::floor(left / columnSecond_));
    for (int c : {0, 1}) {
        const auto [least, greatest] = channel(c);
        for (int i = 0; i <= kColumns; ++i) {
            const std::size_t at = placeInRing(first + i);
            const bool known = tag_[at] == first + i && static_cast<double>(first + i) * columnSecond_ <= until;
            (*least)[static_cast<std::size_t>(i)] = known ? least_[c][at] : kNoColumn;
            (*greatest)[static_cast<std::size_t>(i)] = known ? greatest_[c][at] : kNoColumn;
        }
    }
    return static_cast<double>(first) * columnSecond_;
}

void Sweeper::publish(ScopeTrace& out, double secondsSeen) const {
    const bool isSlow = settings_.screenSecond() * secondsSeen >= kSlowSweep;
    const bool hasWhole = whole_.left == whole_.left;
    out.settings = settings_;
    out.columnSecond = columnSecond_;
    out.stands = stands_;
    out.waits = !isSweeping() && !stands_ && settings_.sweep != ScopeSettings::Sweep::Free;
    out.sweeping = isSweeping() && (isSlow || !hasWhole);
    for (ScopeTrace::Channel& channel : out.channels) {
        channel.least.resize(kColumns + 1);
        channel.greatest.resize(kColumns + 1);
    }
    const auto into = [&out](int c) { return std::pair(&out.channels[c].least, &out.channels[c].greatest); };
    if (out.sweeping) {
        out.leftSecond = sweepLeft_;
        out.triggerSecond = trigger_;
        out.nowSecond = nowSecond_;
        out.firstSecond = copyColumns(sweepLeft_, nowSecond_, into);
        for (int c : {0, 1}) out.channels[c].measures = tally_[c].measures();
        return;
    }
    out.leftSecond = whole_.left;
    out.triggerSecond = whole_.trigger;
    out.nowSecond = whole_.until;
    out.firstSecond = whole_.firstSecond;
    for (int c : {0, 1}) {
        out.channels[c].least = whole_.least[c];
        out.channels[c].greatest = whole_.greatest[c];
        out.channels[c].measures = whole_.measures[c];
    }
}

}  // namespace tiepoint
