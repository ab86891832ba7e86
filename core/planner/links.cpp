#include "core/planner/search.h"

#include <algorithm>
#include <limits>

namespace tiepoint {
namespace {

/// Prim's algorithm over the pieces of metal that a net has.
std::vector<PlanLink> linkPieces(const PlanGround& ground, int net, const std::vector<int>& strips,
                                 const std::vector<int>& piece) {
    std::vector<PlanLink> links;
    if (strips.empty()) return links;
    std::vector<double> least(strips.size(), std::numeric_limits<double>::max());
    std::vector<int> from(strips.size(), -1);
    std::vector<char> in(strips.size());
    const auto addPiece = [&](int number) {
        for (std::size_t i = 0; i < strips.size(); ++i) {
            if (piece[i] != number || in[i]) continue;
            in[i] = 1;
            for (std::size_t k = 0; k < strips.size(); ++k) {
                const double apart = ground.apart(strips[i], strips[k]);
                if (!in[k] && apart < least[k]) least[k] = apart, from[k] = strips[i];
            }
        }
    };
    addPiece(piece[0]);
    for (;;) {
        std::size_t next = strips.size();
        for (std::size_t i = 0; i < strips.size(); ++i) {
            if (!in[i] && (next == strips.size() || least[i] < least[next])) next = i;
        }
        if (next == strips.size()) return links;
        links.push_back({net, from[next], strips[next]});
        addPiece(piece[next]);
    }
}

}  // namespace

std::vector<PlanLink> linksOfThings(const PlanGround& ground, const PlanTask& task,
                                    const std::vector<PlanPlace>& places, const std::vector<int>& things,
                                    const std::vector<char>* placed, int net) {
    std::vector<int> strips, piece;
    const auto join = [&](int a, int b) {
        for (int& each : piece) each = each == a ? b : each;
    };
    const auto indexOf = [&](int strip) {
        const auto found = std::ranges::find(strips, strip);
        if (found != strips.end()) return static_cast<int>(found - strips.begin());
        strips.push_back(strip);
        piece.push_back(static_cast<int>(piece.size()));
        return static_cast<int>(piece.size()) - 1;
    };
    for (const int thing : things) {
        if (placed && !(*placed)[thing]) continue;
        const PlanThing& each = task.things[thing];
        for (std::size_t i = 0; i < each.leads.size(); ++i) {
            if (each.nets[i] != net) continue;
            const int strip = indexOf(ground.spot(places[thing].holes[i]).strip);
            for (std::size_t k = 0; k < i; ++k) {
                if (each.metal[k] == each.metal[i] && each.nets[k] == net)
                    join(piece[strip], piece[indexOf(ground.spot(places[thing].holes[k]).strip)]);
            }
        }
    }
    return linkPieces(ground, net, strips, piece);
}

std::vector<PlanLink> linksOf(const PlanGround& ground, const PlanTask& task, const std::vector<PlanPlace>& places,
                              int net) {
    std::vector<int> all(task.things.size());
    for (std::size_t i = 0; i < all.size(); ++i) all[i] = static_cast<int>(i);
    return linksOfThings(ground, task, places, all, nullptr, net);
}

}  // namespace tiepoint
