#include "core/time/contact_bounce.h"

#include "core/base/spread_hash.h"
#include "core/circuit/element.h"

#include <algorithm>
#include <limits>

namespace tiepoint {

namespace {

constexpr int kMeetings = 5;           ///< after the first
constexpr double kOpeningShare = 0.3;  ///< of the time that closing takes
constexpr double kBounceApart = 0.45, kJitter = 0.3;

int contactsOf(const PartKind& kind) {
    return static_cast<int>(std::ranges::count_if(
        kind.model, [](const ElementSpec& spec) { return findElement(spec.element) == &kContactElement; }));
}

}  // namespace

void ContactBounce::follow(const Bench& bench, const std::vector<CompiledElement>& elements,
                           const std::vector<char>& present, double second) {
    // A contact has come to rest after its last edge; until then the edges that are past say where it stands.
    const std::vector<Edge> all = edges_;
    std::erase_if(edges_, [&](const Edge& edge) {
        return std::ranges::none_of(
            all, [&](const Edge& other) { return other.element == edge.element && other.second > second; });
    });
    for (int e = 0; e < static_cast<int>(elements.size()); ++e) {
        const CompiledElement& element = elements[static_cast<std::size_t>(e)];
        const Part& part = bench.parts[static_cast<std::size_t>(element.part)];
        const ElementSpec& spec = part.kind->model[static_cast<std::size_t>(element.spec)];
        if (findElement(spec.element) != &kContactElement) continue;
        const double lasts = figuresOf(kContactElement, spec, part)[kContactBounce];
        if (!(lasts > 0)) continue;
        const bool closed = present[static_cast<std::size_t>(e)] != 0;
        const auto [at, isNew] = known_.try_emplace({part.id, element.spec}, Known{closed, 0});
        if (isNew || at->second.closed == closed) continue;
        at->second = {closed, at->second.moves + 1};
        std::erase_if(edges_, [e](const Edge& edge) { return edge.element == e; });
        bounce(part.id, e, at->second, lasts, contactsOf(*part.kind) == 1, second);
    }
    std::ranges::stable_sort(edges_, {}, &Edge::second);
}

/// Closing: it meets now, and parts and meets again in ever shorter turns. Opening, of a contact that has no other beside it: the same
/// the other way, for a shorter time.
void ContactBounce::bounce(const std::string& part, int element, const Known& known, double lastsSecond, bool alone,
                           double second) {
    if (!known.closed && !alone) return;
    const double whole = known.closed ? lastsSecond : kOpeningShare * lastsSecond;
    const auto place = [&](int k) {  // quadratic: the turns at the end are the shorter ones
        const double left = 1 - static_cast<double>(k) / kMeetings;
        return whole * (1 - left * left);
    };
    for (int k = 0; k < kMeetings; ++k) {
        const double turn = place(k + 1) - place(k);
        const double apart = turn * (kBounceApart + kJitter * spreadHash(part, 16 * known.moves + k) / 2);
        edges_.push_back({second + place(k + 1) - apart, element, !known.closed});
        edges_.push_back({second + place(k + 1), element, known.closed});
    }
}

void ContactBounce::apply(std::vector<char>& present, double second) const {
    // Before its first edge a contact stands as it is meant to; after each as that edge says.
    for (const Edge& edge : edges_)
        if (edge.second <= second) present[static_cast<std::size_t>(edge.element)] = edge.meets;
}

double ContactBounce::nextAfter(double second) const {
    const auto next = std::ranges::find_if(edges_, [second](const Edge& edge) { return edge.second > second; });
    return next == edges_.end() ? std::numeric_limits<double>::infinity() : next->second;
}

}  // namespace tiepoint
