// The jumpers of a placed netlist: strips of one node become one net, over the rails where the node has rails.
#include "core/bench/table.h"
#include "core/edit/placement.h"
#include "examiner/placer.h"

#include <algorithm>
#include <array>

namespace tiepoint::examiner {
namespace {

constexpr int kJumperTries = 14;

}  // namespace

std::vector<JumperEnd> Placer::freeEnds(int strip) {
    std::vector<JumperEnd> ends;
    for (const int hole : holesOf_[strip]) {
        if (!taken_.contains(hole)) ends.push_back(layout_->holeAt(hole));
    }
    chance_.shuffle(ends);
    return ends;
}

int Placer::colourFor(int node) {
    for (const Source& source : netlist_.sources) {
        if (node == source.plus) return 0;
        if (node == source.minus) return 1;
    }
    return chance_.within(2, static_cast<int>(jumperColours().size()) - 1);
}

bool Placer::layJumper(const std::vector<JumperEnd>& from, const std::vector<JumperEnd>& to, int node) {
    if (from.empty() || to.empty()) return false;
    const Table table = placeThings(bench_);
    // Of each few pairs the shortest: people don't lay a jumper farther than they must.
    for (int i = 0; i < kJumperTries; ++i) {
        Jumper best;
        best.id = freeId(bench_, "W");
        best.ends = {chance_.oneOf(from), chance_.oneOf(to)};
        best.colour = colourFor(node);
        const auto span = [&](const Jumper& jumper) {
            return distance(endMm(bench_, table, jumper.ends[0]), endMm(bench_, table, jumper.ends[1]));
        };
        for (int j = 0; j < 3; ++j) {
            Jumper other = best;
            other.ends = {chance_.oneOf(from), chance_.oneOf(to)};
            if (span(other) < span(best)) best = std::move(other);
        }
        if (best.ends[0] == best.ends[1] || refusal(bench_, best)) continue;
        for (const JumperEnd& end : best.ends) {
            if (const Hole* hole = std::get_if<Hole>(&end)) take(*hole, node);
        }
        bench_.jumpers.push_back(std::move(best));
        return true;
    }
    return false;
}

bool Placer::joinNodes() {
    for (int node = 0; node < netlist_.nodeCount(); ++node) {
        if (!joinNode(node)) return false;
    }
    return true;
}

std::vector<int> Placer::columnsOf(int node) {
    std::map<int, int> best;  // by piece of metal
    for (int strip = 0; strip < std::ssize(nodeOfStrip_); ++strip) {
        if (nodeOfStrip_[strip] != node || isRailStrip_[strip] || !used_[strip]) continue;
        const auto [found, isNew] = best.try_emplace(metal_.root(strip), strip);
        if (!isNew && freeIn(strip) > freeIn(found->second)) found->second = strip;
    }
    std::vector<int> strips;
    for (const auto& [metal, strip] : best) strips.push_back(strip);
    std::ranges::sort(strips);
    return strips;
}

bool Placer::joinNode(int node) {
    bool hasRails = false;
    const std::vector<int> strips = columnsOf(node);
    for (int strip = 0; strip < std::ssize(nodeOfStrip_); ++strip) {
        if (nodeOfStrip_[strip] == node && isRailStrip_[strip]) hasRails = true;
    }
    const std::vector<JumperEnd> sockets = sockets_[node];
    if (hasRails) {
        return std::ranges::all_of(sockets, [&](const JumperEnd& each) { return joinRail({each}, node); }) &&
               std::ranges::all_of(strips, [&](int strip) { return joinRail(freeEnds(strip), node); }) &&
               joinRails(node);
    }
    // Without rails in a row, each strip from the one before or from the first that has room.
    if (strips.empty()) return sockets.empty();
    for (const JumperEnd& each : sockets) {
        if (!layJumper({each}, freeEnds(chance_.oneOf(strips)), node)) return false;
    }
    for (std::size_t i = 1; i < strips.size(); ++i) {
        if (!layJumper(freeEnds(strips[i]), freeEnds(strips[i - 1]), node) &&
            !layJumper(freeEnds(strips[i]), freeEnds(strips[0]), node))
            return false;
    }
    return true;
}

bool Placer::joinRail(const std::vector<JumperEnd>& from, int node) {
    if (from.empty()) return false;
    const auto rail = railFor(from[0], node);
    return rail && layJumper(from, freeEnds(*rail), node);
}

std::optional<int> Placer::railFor(const JumperEnd& end, int node) {
    const Table table = placeThings(bench_);
    const Point at = endMm(bench_, table, end);
    std::optional<int> best;
    double least = 0;
    const bool anyUsed = [&] {
        for (std::size_t strip = 0; strip < used_.size(); ++strip) {
            if (used_[strip] && isRailStrip_[strip] && nodeOfStrip_[strip] == node) return true;
        }
        return false;
    }();
    const bool onlyUsed = anyUsed && !chance_.happens(0.5);
    for (int strip = 0; strip < std::ssize(nodeOfStrip_); ++strip) {
        if (nodeOfStrip_[strip] != node || !isRailStrip_[strip] || (onlyUsed && !used_[strip])) continue;
        for (const int hole : holesOf_[strip]) {
            if (taken_.contains(hole)) continue;
            const double away = distance(at, *holeMm(bench_, layout_->holeAt(hole)));
            if (best && away >= least) continue;
            best = strip;
            least = away;
        }
    }
    return best;
}

bool Placer::joinRails(int node) {
    int before = -1;
    for (int strip = 0; strip < std::ssize(nodeOfStrip_); ++strip) {
        if (nodeOfStrip_[strip] != node || !isRailStrip_[strip] || !used_[strip]) continue;
        if (before >= 0 && !layJumper(freeEnds(before), freeEnds(strip), node)) return false;
        before = strip;
    }
    return true;
}

bool Placer::layIdleJumper() {
    std::vector<int> fresh, twice;
    for (int strip = 0; strip < std::ssize(nodeOfStrip_); ++strip) {
        if (isRailStrip_[strip]) continue;
        if (nodeOfStrip_[strip] < 0) fresh.push_back(strip);
        if (used_[strip] && freeIn(strip) > 1) twice.push_back(strip);
    }
    // Either from a strip with something in it to nowhere, or between two empty ones, or within one strip.
    const int way = chance_.below(3);
    if (fresh.size() < 2 || twice.empty()) return true;
    const int one = way == 0 ? chance_.oneOf(twice) : chance_.oneOf(fresh);
    const int other = way == 2 ? one : chance_.oneOf(fresh);
    return layJumper(freeEnds(one), freeEnds(other), way == 0 ? nodeOfStrip_[one] : -1);
}

}  // namespace tiepoint::examiner
