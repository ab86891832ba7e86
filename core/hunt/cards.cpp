#include "core/hunt/cards.h"

#include "core/base/stopping.h"
#include "core/behaviour/position_solver.h"
#include "core/hunt/draws.h"
#include "core/hunt/plants.h"
#include "core/slips/kinds/kinds.h"
#include "core/slips/slip_words.h"
#include "core/snapshot/readings.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <map>

namespace tiepoint {
namespace {

constexpr std::size_t kMostCardSlips = 300;
constexpr double kMostOfLimit = 0.9;

/// What hands can do on a real board in a minute.
constexpr std::array kByHand = {&kOneHoleOff,    &kTwoHolesOff,   &kAcrossGap,  &kReversed,
                                &kJumperMissing, &kShifted,       &kSameColumn, &kValueTenfold,
                                &kLookAlikeBand, &kLegsExchanged, &kOuterPins};

bool isByHand(const SlipKind& kind) { return std::ranges::find(kByHand, &kind) != kByHand.end(); }

bool isInRail(const JumperEnd& end) {
    const auto* hole = std::get_if<Hole>(&end);
    return !hole || isRail(hole->line);  // a socket is a supply's
}

/// Whether the change leaves supplies, their leads and what newly gets into rails alone. A jumper may leave a rail.
bool sparesSupplies(const Bench& bench, const BenchChange& change) {
    const auto isSupply = [&](const std::string& id) {
        const Part* part = bench.findPart(id);
        return part && part->kind->isSupply;
    };
    if (!change.added.empty() || !change.rails.empty() || !change.conditions.empty()) return false;
    for (const PlacedLead& lead : change.leads)
        if (isSupply(lead.part) || (lead.to && isRail(lead.to->line))) return false;
    for (const PlacedEnd& end : change.ends)
        if (isInRail(end.to)) return false;
    return std::ranges::none_of(change.figures, [&](const SetFigure& figure) { return isSupply(figure.part); });
}

/// The largest share that each part gets of any of its limits, over all positions; and whether any supply is at its limit.
struct Strain {
    bool solved = true, limiting = false;
    std::vector<double> shares;  ///< by part
};

/// Every position of the switches, each with the knobs as they are and at both of their ends: whoever searches turns them too.
std::vector<Digits> everyStrain(const Bench& bench, const std::vector<Throw>& switches, const std::vector<Throw>& all) {
    const auto layout = buildLayout(std::make_shared<const Bench>(bench));
    const Digits rest = digitsOf(switches, bench, {}), now = digitsOf(all, bench, {});
    std::vector<Digits> positions{rest};
    for (Digits& each : planPositions(*layout, switches, rest).others) positions.push_back(std::move(each));
    std::vector<Digits> everything;
    for (const Digits& position : positions) {
        for (const int end : {-1, 0, 1}) {
            Digits digits = position;
            for (std::size_t knob = switches.size(); knob < all.size(); ++knob)
                digits.push_back(end < 0 ? now[knob] : end * (all[knob].values - 1));
            everything.push_back(std::move(digits));
        }
    }
    return everything;
}

Strain strainOf(const HuntGround& ground, const Bench& bench) {
    Strain strain;
    strain.shares.assign(bench.parts.size(), 0);
    std::vector<Throw> all = ground.controls();
    for (const Throw& knob : knobsOf(bench)) all.push_back(knob);
    PositionSolver solver(buildLayout(std::make_shared<const Bench>(bench)), all);
    for (const Digits& digits : everyStrain(bench, ground.controls(), all)) {
        const auto snapshot = solver.solve(digits);
        if (snapshot->status() != Status::Solved) strain.solved = false;
        strain.limiting |= std::ranges::any_of(snapshot->solution.elementLimiting, [](char each) { return each != 0; });
        for (int part = 0; part < static_cast<int>(bench.parts.size()); ++part) {
            for (const RatingShare& share : ratingShares(*snapshot, part)) {
                double& most = strain.shares[static_cast<std::size_t>(part)];
                if (share.rating->maximum) most = std::max(most, share.share());
            }
        }
    }
    return strain;
}

std::string joinedWords(const std::vector<std::string>& words) {
    std::string text;
    for (std::size_t i = 0; i < words.size(); ++i)
        text += (i == 0 ? "" : i + 1 == words.size() ? " and " : ", ") + words[i];
    return text;
}

/// What to do, as an order: "Move D1's anode from c14 to c15."
std::string orderOf(const Bench& bench, const Slip& slip) {
    const BenchChange& wrong = slip.wrong;
    if (!wrong.removed.empty())
        return fmt::format("Take out {}, which runs {}.", wrong.removed.front().id,
                           runOf(bench, wrong.removed.front()));
    if (!wrong.figures.empty()) {
        const WrongFigure figure = figureOf(bench, slip);
        return fmt::format("Put {} in place of {} ({}).", figure.wrong, figure.part, figure.right);
    }
    const bool turned = slip.kind == &kReversed && wrong.leads.size() == 2;
    std::vector<std::string> moves;
    for (const Misplaced& tip : misplacedBy(bench, slip)) {
        const std::string to = placeName(bench, tip.wrong), from = placeName(bench, tip.right);
        moves.push_back(turned ? fmt::format("{} into {}", tip.tip, to)
                               : fmt::format("{} from {} to {}", tip.tip, from, to));
    }
    if (turned) return fmt::format("Turn {} round: {}.", wrong.leads.front().part, joinedWords(moves));
    return fmt::format("Move {}.", joinedWords(moves));
}

std::vector<CardSlip> harmlessSlips(const HuntGround& ground) {
    std::vector<CardSlip> cards;
    const Bench& target = ground.target();
    const Signs sound = ground.looksOf(target);
    for (Slip& slip : allSlips(Ground(buildLayout(std::make_shared<const Bench>(target))), kMostCardSlips)) {
        stopIfAsked();
        if (!isByHand(*slip.kind) || !sparesSupplies(target, slip.wrong)) continue;
        const auto applied = apply(target, editOf(target, slip));
        if (!applied) continue;
        const Bench& slipped = applied.value().bench;
        const Signs signs = ground.looksOf(slipped);
        if (signs.looksLike(sound) || !isHarmless(ground, slipped)) continue;
        CardSlip card{std::move(slip), {}, seenInLights(ground, sound, signs), {}};
        card.doWords = orderOf(target, card.slip);
        card.undoWords = mendInWords(target, card.slip);
        cards.push_back(std::move(card));
    }
    return cards;
}

}  // namespace

bool isHarmless(const HuntGround& ground, const Bench& slipped) {
    const Strain before = strainOf(ground, ground.target()), after = strainOf(ground, slipped);
    if (!after.solved || after.limiting) return false;
    for (std::size_t part = 0; part < after.shares.size(); ++part) {
        const double borne = part < before.shares.size() ? std::max(kMostOfLimit, before.shares[part]) : kMostOfLimit;
        if (after.shares[part] > borne) return false;
    }
    return true;
}

Result<std::vector<CardSlip>> cardSlips(std::shared_ptr<const Bench> target, int count, std::uint64_t seed) {
    const HuntGround ground(std::move(target));
    const std::vector<CardSlip> all = harmlessSlips(ground);
    if (all.empty())
        return Error{
            ErrorKind::Range, "no slip on this bench is seen in its lights and harmless on a real board", {}, {}};
    SeededDraws draws(seed);
    std::vector<CardSlip> cards;
    while (static_cast<int>(cards.size()) < count) {
        std::vector<std::vector<std::size_t>> piles;
        for (const SlipKind* kind : kByHand) {
            std::vector<std::size_t> pile;
            for (std::size_t i = 0; i < all.size(); ++i)
                if (all[i].slip.kind == kind) pile.push_back(i);
            draws.shuffle(pile);
            if (!pile.empty()) piles.push_back(std::move(pile));
        }
        for (std::size_t left = all.size(); left > 0 && static_cast<int>(cards.size()) < count;) {
            draws.shuffle(piles);
            for (auto& pile : piles) {
                if (pile.empty() || static_cast<int>(cards.size()) == count) continue;
                cards.push_back(all[pile.back()]);
                pile.pop_back();
                --left;
            }
        }
    }
    return cards;
}

}  // namespace tiepoint
