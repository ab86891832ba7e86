#include "examiner/placer.h"

#include "core/board/board_kind.h"
#include "core/edit/boards.h"
#include "core/edit/edit.h"
#include "core/edit/placement.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace tiepoint::examiner {
namespace {

constexpr int kTries = 90;     // places looked at for a part
constexpr int kRefusals = 14;  // of those so many are tried, the best first
constexpr double kOwnStrip = 9, kFreshStrip = 4, kCrowded = 4, kNoise = 4, kPerColumnAway = 0.35, kPerPitchOff = 0.5;

Line lineAt(int index) { return static_cast<Line>(index); }

}  // namespace

Placer::Placer(Chance& chance, const Netlist& netlist) : chance_(chance), netlist_(netlist) {
    layBoards();
    layout_ = buildLayout(std::make_shared<Bench>(bench_));
    const auto strips = layout_->netOfStrip.size();
    nodeOfStrip_.assign(strips, -1);
    isRailStrip_.assign(strips, false);
    used_.assign(strips, false);
    holesOf_.resize(strips);
    metal_ = DisjointSets(strips);
    for (int hole = 0; hole < layout_->holeCount(); ++hole) {
        const int strip = layout_->stripOfHole[hole];
        holesOf_[strip].push_back(hole);
        if (isRail(layout_->holeAt(hole).line)) isRailStrip_[strip] = true;
    }
    giveRails();
}

void Placer::layBoards() {
    const auto parts = netlist_.members.size();
    std::vector<const char*> kinds{"half"};
    if (parts <= 5 && chance_.happens(0.3)) kinds = {"mini"};
    if (parts <= 10 && chance_.happens(0.1)) kinds = {"mini", "mini"};
    if (parts > 10 || chance_.happens(0.25)) kinds = {"full"};
    if (parts > 10 && parts < 24 && chance_.happens(0.3)) kinds = {"half", "half"};
    if (parts <= 10 && chance_.happens(0.08)) kinds = {"half", "mini"};
    if (parts > 30) kinds = {"full", "full"};
    if (parts > 55) kinds.push_back("full");
    const Rails rails = chance_.happens(0.3) ? Rails::Split : Rails::Through;
    const Labels labels = chance_.happens(0.3) ? Labels::ABottom : Labels::ATop;
    for (const char* name : kinds) {
        auto docked = apply(bench_, dockBoardEdit(bench_, *findBoardKind(name)));
        bench_ = std::move(docked.value().bench);
        bench_.boards.back().rails = bench_.boards.back().kind->hasRails() ? rails : Rails::Through;
        bench_.boards.back().labels = labels;
    }
}

void Placer::giveRails() {
    if (chance_.happens(0.06)) return;  // everything by jumpers
    const auto& sources = netlist_.sources;
    const int way = chance_.below(3);
    for (std::size_t i = 0; i < bench_.boards.size(); ++i) {
        const Board& board = bench_.boards[i];
        if (!board.kind->hasRails()) continue;
        if (sources.size() == 1) {
            giveRailsOf(board, sources[0], way != 1, way != 2);
        } else if (bench_.boards.size() == 1) {
            giveRailsOf(board, sources[0], true, false);
            giveRailsOf(board, sources[1], false, true);
        } else {
            giveRailsOf(board, sources[i % sources.size()], true, true);
        }
    }
}

void Placer::giveRailsOf(const Board& board, const Source& source, bool top, bool bottom) {
    const auto give = [&](Line line, int node) {
        for (int number = 1; number <= board.kind->railHoles; ++number)
            nodeOfStrip_[stripOf({board.id, line, number})] = node;
    };
    if (top) {
        give(Line::TopPlus, source.plus);
        give(Line::TopMinus, source.minus);
    }
    if (bottom) {
        give(Line::BottomPlus, source.plus);
        give(Line::BottomMinus, source.minus);
    }
}

std::optional<Bench> Placer::place() {
    std::vector<const Member*> flying;
    for (const Member& member : netlist_.members) {
        const bool flies = member.part.kind->package->reach == Reach::Flying;
        if (flies) flying.push_back(&member);
        if (!flies && !placeMember(member)) return {};
        ++placed_;
    }
    for (const Member* member : flying) {
        if (!placeFlying(*member)) return {};
    }
    if (!joinNodes()) return {};
    for (int i = 0; i < netlist_.idleJumpers; ++i) {
        if (!layIdleJumper()) return {};
    }
    return std::move(bench_);
}

int Placer::freeIn(int strip) const {
    return static_cast<int>(
        std::ranges::count_if(holesOf_[strip], [this](int hole) { return !taken_.contains(hole); }));
}

void Placer::take(const Hole& hole, int node) {
    taken_.insert(layout_->holeIndex(hole));
    nodeOfStrip_[stripOf(hole)] = node;
    used_[stripOf(hole)] = true;
}

Hole Placer::freshHole() {
    const Board& board = bench_.boards[board_];
    const int column = std::clamp(column_ + chance_.within(-4, 5), 1, board.kind->columns);
    return {board.id, lineAt(chance_.below(kRowCount)), column};
}

Hole Placer::anchorFor(int node) {
    std::vector<int> holes;
    for (std::size_t strip = 0; strip < nodeOfStrip_.size(); ++strip) {
        if (nodeOfStrip_[strip] != node || (!used_[strip] && !isRailStrip_[strip])) continue;
        for (const int hole : holesOf_[strip]) {
            if (!taken_.contains(hole)) holes.push_back(hole);
        }
    }
    if (holes.empty() || chance_.happens(0.3)) return freshHole();
    return layout_->holeAt(chance_.oneOf(holes));
}

std::optional<double> Placer::worthOf(const Member& member, const Part& part) const {
    double worth = 0;
    std::map<int, int> nodeOf;  // strips that this part takes
    for (std::size_t lead = 0; lead < part.leads.size(); ++lead) {
        const auto& hole = part.leads[lead];
        if (!hole || layout_->holeIndex(*hole) < 0 || !isFree(*hole)) return {};
        const int strip = stripOf(*hole), node = member.nodes[lead];
        if (nodeOfStrip_[strip] >= 0 ? nodeOfStrip_[strip] != node : isRailStrip_[strip]) return {};
        if (!nodeOf.try_emplace(strip, node).second && nodeOf[strip] != node) return {};
        worth += nodeOfStrip_[strip] == node ? kOwnStrip : kFreshStrip;
        if (freeIn(strip) < 3) worth -= kCrowded;
        if (!isRail(hole->line)) worth -= kPerColumnAway * std::abs(hole->number - column_);
    }
    return worth;
}

std::optional<Placer::Candidate> Placer::bendingCandidate(const Member& member) {
    const Package& package = *member.part.kind->package;
    const int first = chance_.below(2);
    Part part = member.part;
    part.leads[first] = anchorFor(member.nodes[first]);
    const Board& board = *bench_.findBoard(part.leads[first]->board);
    const bool toRail = board.kind->hasRails() && chance_.happens(0.2);
    const Line line = toRail
                          ? lineAt(kRowCount + chance_.below(kRailCount))
                          : (isRail(part.leads[first]->line) || chance_.happens(0.3) ? lineAt(chance_.below(kRowCount))
                                                                                     : part.leads[first]->line);
    const int reach = package.defaultSpan + 3;
    part.leads[1 - first] = Hole{board.id, line, part.leads[first]->number + chance_.within(-reach, reach)};
    const auto worth = worthOf(member, part);
    if (!worth) return {};
    const double span = distance(*holeMm(bench_, *part.leads[0]), *holeMm(bench_, *part.leads[1])) / kPitchMm;
    return Candidate{std::move(part),
                     *worth - kPerPitchOff * std::abs(span - package.defaultSpan) + kNoise * chance_.share()};
}

std::optional<Placer::Candidate> Placer::rigidCandidate(const Member& member) {
    Hole anchor = anchorFor(member.nodes[0]);
    if (isRail(anchor.line)) anchor = freshHole();
    const bool button = member.part.kind->name == "push-button";
    if (button && chance_.happens(0.6)) anchor.line = Line::E;
    Part part = placedAt(bench_, member.part, anchor, button ? 2 * chance_.below(2) : chance_.below(4));
    const auto worth = worthOf(member, part);
    if (!worth) return {};
    return Candidate{std::move(part), *worth + kNoise * chance_.share()};
}

std::vector<Placer::Candidate> Placer::candidatesFor(const Member& member) {
    const bool bending = member.part.kind->package->reach == Reach::Bending;
    std::vector<Candidate> candidates;
    for (int i = 0; i < kTries; ++i) {
        auto candidate = bending ? bendingCandidate(member) : rigidCandidate(member);
        if (candidate) candidates.push_back(std::move(*candidate));
    }
    std::ranges::stable_sort(candidates, std::greater{}, &Candidate::worth);
    if (candidates.size() > kRefusals) candidates.resize(kRefusals);
    return candidates;
}

bool Placer::placeMember(const Member& member) {
    // Fresh strips are looked for farther along the boards as parts go on them.
    for (int round = 0; round < 3; ++round) {
        const double along = (placed_ + 0.5) / static_cast<double>(netlist_.members.size() + 1) *
                             static_cast<double>(bench_.boards.size());
        board_ = std::min(static_cast<int>(along), static_cast<int>(bench_.boards.size()) - 1);
        const int columns = bench_.boards[board_].kind->columns;
        column_ = round == 0 ? 2 + static_cast<int>((along - board_) * (columns - 3)) : chance_.within(1, columns);
        for (Candidate& candidate : candidatesFor(member)) {
            if (refusal(bench_, candidate.part)) continue;
            settle(member, std::move(candidate.part));
            return true;
        }
    }
    return false;
}

void Placer::settle(const Member& member, Part part) {
    for (std::size_t lead = 0; lead < part.leads.size(); ++lead) {
        if (part.leads[lead]) take(*part.leads[lead], member.nodes[lead]);
    }
    for (const auto& group : part.kind->joined) {
        for (const int lead : group) metal_.join(stripOf(*part.leads[group[0]]), stripOf(*part.leads[lead]));
    }
    bench_.parts.push_back(std::move(part));
}

bool Placer::placeFlying(const Member& member) {
    Part part = member.part;
    for (std::size_t lead = 0; lead < part.leads.size(); ++lead) {
        const int node = member.nodes[lead];
        if (part.kind->leads[lead].socket) {
            // Of two sockets that are one piece of metal one is enough.
            auto& plugs = sockets_[node];
            const bool has = !plugs.empty() && std::get<Socket>(plugs.back()).part == part.id;
            if (!has) plugs.push_back(Socket{part.id, static_cast<int>(lead)});
            continue;
        }
        for (int i = 0; i < kTries; ++i) {
            const Hole hole = anchorFor(node);
            const int strip = stripOf(hole);
            if (!isFree(hole) || (nodeOfStrip_[strip] >= 0 ? nodeOfStrip_[strip] != node : isRailStrip_[strip]))
                continue;
            Part tried = part;
            tried.leads[lead] = hole;
            if (refusal(bench_, tried)) continue;
            part = std::move(tried);
            take(hole, node);
            break;
        }
        if (!part.leads[lead]) return false;
    }
    bench_.parts.push_back(std::move(part));
    return true;
}

}  // namespace tiepoint::examiner
