#include "support/slips.h"

#include "core/edit/holes.h"
#include "core/edit/placement.h"
#include "core/findings/trial.h"
#include "core/snapshot/readings.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace tiepoint::test {
namespace {

constexpr double kSeenAmpere = 1e-4;  ///< an LED is seen
constexpr double kSameAmpere = 1e-6;  ///< a switch that changes less changes nothing
constexpr double kSameShare = 0.01;
constexpr double kShortAmpere = 1;  ///< no circuit of the corpus takes nearly as much
constexpr double kOverShare = 1.005;

/// Holes that a hand takes for another: the next columns, the other side of the gap, the rail beside, the row beside a rail.
std::vector<Hole> neighbours(const Bench& bench, const Hole& hole) {
    std::vector<Hole> all;
    const auto add = [&](Line line, int number) {
        const Hole other{hole.board, line, number};
        if (holeExists(bench, other) && !sameStrip(bench, hole, other)) all.push_back(other);
    };
    if (isRail(hole.line)) {
        const bool plus = hole.line == Line::TopPlus || hole.line == Line::BottomPlus;
        const bool top = hole.line == Line::TopPlus || hole.line == Line::TopMinus;
        add(top ? (plus ? Line::TopMinus : Line::TopPlus) : (plus ? Line::BottomMinus : Line::BottomPlus), hole.number);
        return all;
    }
    add(hole.line, hole.number - 1);
    add(hole.line, hole.number + 1);
    add(hole.line <= Line::E ? Line::F : Line::E, hole.number);
    return all;
}

class SlipMaker {
public:
    explicit SlipMaker(const Bench& sound) : sound_(sound) {}

    std::vector<Slip> make() {
        for (const Part& part : sound_.parts) breakPart(part);
        for (const Jumper& jumper : sound_.jumpers) breakJumper(jumper);
        for (const Board& board : sound_.boards) {
            if (board.rails == Rails::Split || !board.kind->hasRails()) continue;
            Board halved = board;
            halved.rails = Rails::Split;
            add({kHalves, "rails of " + board.id, board.id, {}, {"Split", {ReplaceBoard{halved}}}});
        }
        return std::move(slips_);
    }

private:
    void add(Slip slip) {
        if (apply(sound_, slip.edit)) slips_.push_back(std::move(slip));
    }

    void breakPart(const Part& part) {
        const bool polar = part.kind->isSupply || (part.kind->leads.size() == 2 && part.kind->leads[0].name == "anode");
        if (polar && !part.kind->leads[0].socket)
            add({kReversed, part.id, part.id, holesOf(part), exchangeLeads(part)});
        if (part.kind->package->reach == Reach::Rigid) {
            shiftRigid(part);
        } else {
            for (std::size_t lead = 0; lead < part.leads.size(); ++lead) moveLead(part, lead);
        }
        for (std::size_t value = 0; value < part.values.size(); ++value) scale(part, value);
    }

    void moveLead(const Part& part, std::size_t lead) {
        if (!part.leads[lead]) return;
        for (const Hole& to : neighbours(sound_, *part.leads[lead])) {
            Part moved = part;
            moved.leads[lead] = to;
            add({kOneHoleOff,
                 fmt::format("{} of {} into {}", part.kind->leads[lead].name, part.id, toString(to)),
                 part.id,
                 {*part.leads[lead], to},
                 {"Move", {ReplacePart{moved}}}});
        }
    }

    void shiftRigid(const Part& part) {
        for (const int columns : {-1, 1}) {
            if (const auto moved = shifted(sound_, part, columns, 0)) {
                add({kOneHoleOff,
                     fmt::format("{} by {}", part.id, columns),
                     part.id,
                     holesOf(part),
                     {"Move", {ReplacePart{*moved}}}});
            }
        }
        if (!isSwitch(*part.kind)) return;
        if (const auto round = turnedInPlace(part)) {
            add({kTurned, part.id + " by a quarter", part.id, holesOf(part), {"Turn", {ReplacePart{*round}}}});
        }
        add({kTurned, part.id + " by a half", part.id, holesOf(part), exchangeLeads(part)});
    }

    /// Turned by a quarter about its middle, or as near to that as the holes allow.
    std::optional<Part> turnedInPlace(const Part& part) const {
        constexpr int kFarthest = 3;
        std::optional<Part> nearest;
        double least = 0;
        const Point from = *holeMm(sound_, *part.leads.front()), to = *holeMm(sound_, *part.leads.back());
        for (int columns = -kFarthest; columns <= kFarthest; ++columns) {
            for (int rows = -kFarthest; rows <= kFarthest; ++rows) {
                const auto aside = shifted(sound_, turned(sound_, part, 1), columns, rows);
                if (!aside || refusal(sound_, *aside)) continue;
                const Point a = *holeMm(sound_, *aside->leads.front()), b = *holeMm(sound_, *aside->leads.back());
                const double away = std::hypot(a.x + b.x - from.x - to.x, a.y + b.y - from.y - to.y);
                if (nearest && away >= least) continue;
                nearest = aside;
                least = away;
            }
        }
        return nearest;
    }

    void scale(const Part& part, std::size_t value) {
        const ValueSpec& spec = part.kind->values[value];
        if (spec.unit != "ohm" || spec.series.empty()) return;
        constexpr double kTen = 10;
        for (const double by : {kTen, 1 / kTen, kTen * kTen}) {
            const double ohm = part.value(static_cast<int>(value)) * by;
            add({kTimesTen, fmt::format("{} times {}", part.id, by), part.id, holesOf(part),
                 setValueEdit(sound_, part.id, spec.name, ohm)});
        }
    }

    void breakJumper(const Jumper& jumper) {
        std::vector<Hole> ends;
        for (const JumperEnd& end : jumper.ends) {
            if (const Hole* hole = std::get_if<Hole>(&end)) ends.push_back(*hole);
        }
        add({kMissing, jumper.id, jumper.id, ends, removeEdit(sound_, {jumper.id})});
        for (std::size_t end = 0; end < jumper.ends.size(); ++end) {
            const Hole* from = std::get_if<Hole>(&jumper.ends[end]);
            if (from == nullptr) continue;
            for (const Hole& to : neighbours(sound_, *from)) {
                Jumper moved = jumper;
                moved.ends[end] = to;
                add({kOneHoleOff,
                     fmt::format("{} into {}", jumper.id, toString(to)),
                     jumper.id,
                     {*from, to},
                     {"Move", {ReplaceJumper{moved}}}});
            }
        }
    }

    const Bench& sound_;
    std::vector<Slip> slips_;
};

std::vector<Digits> allPositions(const std::vector<Throw>& throws) {
    std::vector<Digits> all{Digits(throws.size(), 0)};
    for (std::size_t t = 0; t < throws.size(); ++t) {
        for (std::size_t i = 0, count = all.size(); i < count; ++i) {
            for (int digit = 1; digit < throws[t].values; ++digit) {
                all.push_back(all[i]);
                all.back()[t] = digit;
            }
        }
    }
    return all;
}

bool isOverdrawn(const Snapshot& snapshot) {
    const auto& parts = snapshot.layout->bench->parts;
    return std::ranges::any_of(snapshot.solution.elements(), [&](const ElementState& element) {
        return parts[element.part].kind->isSupply &&
               (element.limiting || std::abs(element.currentAmpere) > kShortAmpere);
    });
}

bool near(double a, double b) {
    return std::abs(a - b) <= kSameAmpere + kSameShare * std::max(std::abs(a), std::abs(b));
}

/// Whether two holes are one metal on a bench.
bool oneMetal(const Layout& layout, const Hole& a, const Hole& b) {
    const int from = layout.holeIndex(a), to = layout.holeIndex(b);
    return from >= 0 && to >= 0 && layout.netOfHole(from) == layout.netOfHole(to);
}

bool isIn(const std::vector<std::string>& ids, const std::string& id) {
    return std::ranges::find(ids, id) != ids.end();
}

}  // namespace

std::vector<Slip> slipsOf(const Bench& sound) { return SlipMaker(sound).make(); }

SeenDoing::SeenDoing(std::shared_ptr<const Bench> bench) {
    PositionSolver solver(buildLayout(bench));
    const auto& throws = solver.throws();
    for (const Digits& digits : allPositions(throws)) {
        const auto snapshot = solver.solve(digits);
        unsolved_ = unsolved_ || snapshot->status() == Status::None;
        shorted_ = shorted_ || isOverdrawn(*snapshot);
        addBurnt(*snapshot);
        auto& amperes = amperes_[digits];
        for (int part = 0; part < static_cast<int>(bench->parts.size()); ++part) {
            const std::string& id = bench->parts[part].id;
            amperes[id] = currentThrough(*snapshot, part).inAmpere;
            if (bench->parts[part].kind->emitsLight && amperes[id] > kSeenAmpere) lit_.insert(id);
        }
    }
    for (const Part& part : bench->parts) burnAtEnds(*bench, part);
    for (std::size_t t = 0; t < throws.size(); ++t) {
        const std::string& id = bench->parts[throws[t].part].id;
        bool changes = false;
        for (const auto& [digits, amperes] : amperes_) {
            Digits flipped = digits;
            flipped[t] = (digits[t] + 1) % throws[t].values;
            for (const auto& [part, ampere] : amperes_.at(flipped)) {
                changes = changes || (part != id && std::abs(ampere - amperes.at(part)) > kSameAmpere);
            }
        }
        if (!changes) dead_.insert(id);
    }
}

void SeenDoing::addBurnt(const Snapshot& snapshot) {
    const auto& parts = snapshot.layout->bench->parts;
    for (int part = 0; part < static_cast<int>(parts.size()); ++part) {
        for (const RatingShare& share : ratingShares(snapshot, part)) {
            if (!parts[part].kind->isSupply && share.rating->maximum && share.share() > kOverShare)
                burnt_.insert(parts[part].id);
        }
    }
}

/// A knob is turned by whoever comes along.
void SeenDoing::burnAtEnds(const Bench& bench, const Part& part) {
    for (const ValueSpec& travel : part.kind->state) {
        if (travel.type != ValueType::Number) continue;
        for (const double end : {travel.minimum, travel.maximum}) {
            auto turned = apply(bench, setStateEdit(bench, part.id, travel.name, end));
            addBurnt(*evaluate(std::make_shared<const Bench>(std::move(turned).value().bench)));
        }
    }
}

std::vector<std::string> SeenDoing::harmAgainst(const SeenDoing& sound) const {
    std::vector<std::string> harm;
    for (const std::string& id : sound.lit_) {
        if (!lit_.contains(id)) harm.push_back(id + " dark");
    }
    for (const std::string& id : burnt_) {
        if (!sound.burnt_.contains(id)) harm.push_back(id + " burns");
    }
    for (const std::string& id : dead_) {
        if (!sound.dead_.contains(id)) harm.push_back(id + " dead");
    }
    if (shorted_ && !sound.shorted_) harm.push_back("short");
    if (unsolved_ && !sound.unsolved_) harm.push_back("no solution");
    return harm;
}

bool SeenDoing::sameAs(const SeenDoing& other) const {
    return std::ranges::equal(amperes_, other.amperes_, [](const auto& a, const auto& b) {
        return a.first == b.first && std::ranges::all_of(a.second, [&](const auto& each) {
                   const auto match = b.second.find(each.first);
                   return match == b.second.end() || near(each.second, match->second);
               });
    });
}

bool tellsCause(const Finding& finding, const Slip& slip, const Bench& broken, const SeenDoing& sound) {
    if (isIn(finding.parts, slip.id)) return true;
    const bool placeCounts = slip.kind == kMissing || slip.kind == kHalves;
    const auto layout = buildLayout(std::make_shared<const Bench>(broken));
    for (const Hole& hole : finding.holes) {
        if (!placeCounts) break;
        // A jumper that isn't there can't be named: its two ends can.
        if (std::ranges::any_of(slip.holes, [&](const Hole& place) { return oneMetal(*layout, hole, place); }))
            return true;
    }
    if (slip.kind == kHalves && finding.rule == "rail-halves") return true;
    if (!finding.mend) return false;
    const auto mended = apply(broken, finding.mend->edit);
    return mended && SeenDoing(std::make_shared<const Bench>(mended->bench)).sameAs(sound);
}

}  // namespace tiepoint::test
