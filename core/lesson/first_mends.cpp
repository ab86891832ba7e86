#include "core/lesson/first_mends.h"

#include "core/edit/holes.h"
#include "core/edit/placement.h"

#include <algorithm>
#include <array>
#include <cstdlib>

namespace tiepoint {
namespace {

constexpr int kFarthestLeg = 6;  ///< columns from the other leg

Edit replacing(const Part& part) { return {"Move " + part.id, {ReplacePart{part}}}; }

/// The holes of the strip of a hole, the nearest first.
std::vector<Hole> holesOfStrip(const Bench& bench, const Hole& hole) {
    std::vector<Hole> holes;
    nearestWhere(bench, hole, [&](const Hole& each) {
        holes.push_back(each);
        return false;  // all of them
    });
    std::ranges::stable_sort(holes, {}, [&](const Hole& each) {
        return std::abs(each.number - hole.number) +
               std::abs(static_cast<int>(each.line) - static_cast<int>(hole.line));
    });
    return holes;
}

}  // namespace

bool FirstMends::isEmptyBut(const Hole& hole, const Part& part) const {
    const int strip = layout_.stripOfHole[static_cast<std::size_t>(layout_.holeIndex(hole))];
    return std::ranges::none_of(holesOfStrip(bench_, hole), [&](const Hole& each) {
        const auto occupant = occupantOf(bench_, each);
        return occupant && occupant->id != part.id &&
               layout_.stripOfHole[static_cast<std::size_t>(layout_.holeIndex(each))] == strip;
    });
}

MaybeMend FirstMends::moved(const Part& to, int lead) const {
    const Part* from = bench_.findPart(to.id);
    const auto index = static_cast<std::size_t>(lead);
    return FirstMend{replacing(to), from->leads[index], to.leads[index]};
}

MaybeMend FirstMends::tryLeads(const Part& part, int lead, const Hole& first, const Hole& second) const {
    if (!holeExists(bench_, first) || !holeExists(bench_, second)) return std::nullopt;
    Part to = part;
    to.leads[static_cast<std::size_t>(lead)] = first;
    to.leads[static_cast<std::size_t>(1 - lead)] = second;
    if (refusal(bench_, to)) return std::nullopt;
    return moved(to, lead);
}

MaybeMend FirstMends::withLeadIn(const Part& part, int lead, const Hole& strip) const {
    if (part.leads.size() != 2) return std::nullopt;
    const auto &one = part.leads[static_cast<std::size_t>(lead)],
               &other = part.leads[static_cast<std::size_t>(1 - lead)];
    const int usual = one && other && one->number != other->number ? other->number - one->number : 1;
    for (const int away : {usual, -usual, 1, -1, 2, -2, 3, -3}) {
        for (const Hole& hole : holesOfStrip(bench_, strip)) {
            const Hole second{hole.board, hole.line, hole.number + away};
            if (!holeExists(bench_, second) || !isEmptyBut(second, part)) continue;
            if (auto mend = tryLeads(part, lead, hole, second)) return mend;
        }
    }
    return std::nullopt;
}

MaybeMend FirstMends::oneLegElsewhere(const Part& part) const {
    if (part.leads.size() != 2) return std::nullopt;
    for (int away = 1; away <= kFarthestLeg; ++away) {
        for (const int lead : {1, 0}) {
            const auto& stays = part.leads[static_cast<std::size_t>(1 - lead)];
            if (!stays) continue;
            for (const int sign : {1, -1}) {
                const Hole to{stays->board, isRail(stays->line) ? Line::C : stays->line, stays->number + sign * away};
                if (!holeExists(bench_, to) || !isEmptyBut(to, part)) continue;
                if (auto mend = tryLeads(part, lead, to, *stays)) return mend;
            }
        }
    }
    return std::nullopt;
}

MaybeMend FirstMends::turnedAbout(const Part& part) const {
    if (part.leads.size() != 2 || !part.leads[0] || !part.leads[1]) return std::nullopt;
    for (const Hole& first : holesOfStrip(bench_, *part.leads[1])) {
        for (const Hole& second : holesOfStrip(bench_, *part.leads[0])) {
            if (auto mend = tryLeads(part, 0, first, second)) return mend;
        }
    }
    return std::nullopt;
}

std::optional<FirstMends::ByKeys> FirstMends::turnedByKeys(const Part& part) const {
    constexpr int kMostPresses = 3;
    std::vector<ByKeys> ways{{part, ""}};
    for (int presses = 0; presses < kMostPresses; ++presses) {
        std::vector<ByKeys> longer;
        for (const ByKeys& way : ways) {
            const auto add = [&](const std::optional<Part>& now, const char* key) {
                if (now && !refusal(bench_, *now))
                    longer.push_back({*now, way.keys + (way.keys.empty() ? "" : " ") + key});
            };
            add(turnedRound(bench_, way.part, 1).part, "]");
            add(shifted(bench_, way.part, -1, 0), "←");
            add(shifted(bench_, way.part, 1, 0), "→");
        }
        for (const ByKeys& way : longer) {
            if (!way.part.leads[0] || !way.part.leads[1]) continue;
            if (sameStrip(bench_, *way.part.leads[0], *part.leads[1]) &&
                sameStrip(bench_, *way.part.leads[1], *part.leads[0]))
                return way;
        }
        ways = std::move(longer);
    }
    return std::nullopt;
}

MaybeMend FirstMends::endIn(const Jumper& jumper, int end, const Hole& strip) const {
    const auto index = static_cast<std::size_t>(end);
    const Hole* is = std::get_if<Hole>(&jumper.ends[index]);
    for (const Hole& hole : holesOfStrip(bench_, strip)) {
        if (occupantOf(bench_, hole)) continue;
        Jumper to = jumper;
        to.ends[index] = hole;
        if (refusal(bench_, to)) continue;
        FirstMend mend{{"Move " + jumper.id, {ReplaceJumper{to}}}, std::nullopt, hole};
        if (is) mend.is = *is;
        return mend;
    }
    return std::nullopt;
}

MaybeMend FirstMends::leadInRail(const Part& box, int lead, bool isPlus) const {
    const std::array<Line, 2> rails =
        isPlus ? std::array{Line::TopPlus, Line::BottomPlus} : std::array{Line::BottomMinus, Line::TopMinus};
    for (const Board& board : bench_.boards) {
        for (const Line rail : rails) {
            for (int number = 1; board.kind->has(rail, number); ++number) {
                const Hole hole{board.id, rail, number};
                Part to = box;
                to.leads[static_cast<std::size_t>(lead)] = hole;
                if (occupantOf(bench_, hole) || refusal(bench_, to)) continue;
                return FirstMend{replacing(to), std::nullopt, hole};
            }
        }
    }
    return std::nullopt;
}

MaybeMend FirstMends::without(const std::function<bool(const Layout&)>& suits, const Part* off) const {
    const auto tried = [&](const std::string& id) -> MaybeMend {
        FirstMend mend{removeEdit(bench_, {id}), std::nullopt, std::nullopt};
        if (off != nullptr) {
            Part dead = *off;
            dead.state[static_cast<std::size_t>(dead.kind->stateIndex("on"))] = 0;
            mend.edit.operations.insert(mend.edit.operations.begin(), ReplacePart{dead});
        }
        auto applied = apply(bench_, mend.edit);
        if (!applied || !suits(*buildLayout(std::make_shared<const Bench>(std::move(applied->bench)))))
            return std::nullopt;
        return mend;
    };
    for (const Jumper& jumper : bench_.jumpers)
        if (auto mend = tried(jumper.id)) return mend;
    for (const Part& part : bench_.parts)
        if (auto mend = part.kind->isSupply ? std::nullopt : tried(part.id)) return mend;
    return std::nullopt;
}

}  // namespace tiepoint
