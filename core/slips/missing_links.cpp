#include "core/slips/missing_links.h"

#include "core/base/stopping.h"
#include "core/slips/reach.h"

#include <algorithm>
#include <map>
#include <set>
#include <utility>

namespace tiepoint {
namespace {

constexpr std::size_t kMostEnds = 48;      ///< strips around a symptom; farther ones can wait
constexpr std::size_t kNearestNets = 24;   ///< along the board, for each end
constexpr std::size_t kNearestFeeds = 16;  ///< rails and supplies, for each end
constexpr std::size_t kMostSockets = 8;    ///< of the bench
constexpr std::size_t kMostWays = 40;      ///< for one pair of nets
constexpr std::size_t kHolesOfLink = 5;    ///< of a strip
constexpr std::size_t kNextFeeds = 12;
constexpr int kFeedAway = 2;  ///< rails reach everywhere

/// A strip in use, by one of its tips, or a free socket.
struct LinkEnd {
    int net = -1;
    int strip = -1;  ///< of a socket -1
    bool feed = false;
    JumperEnd place;
};

class Links {
public:
    Links(const Ground& ground, const Scope& scope, const std::function<bool(int, int)>& wanted)
        : ground_(ground),
          scope_(scope),
          wanted_(wanted) {
        countLeads();
        listStrips();
        listSockets();
    }

    std::vector<MissingLink> find() {
        std::set<int> strips;
        for (const Scope::Thing& thing : scope_.things()) {
            stopIfAsked();
            if (!scope_.isWhole() && strips.size() >= kMostEnds) break;
            for (const int index : thing.jumper ? ground_.tipsOfJumper(thing.index) : ground_.tipsOfPart(thing.index)) {
                const LinkEnd end = endAt(index);
                if (!end.feed && strips.insert(end.strip).second) linkFrom(end, thing.away);
            }
        }
        linkFeeds();
        return std::move(links_);
    }

private:
    LinkEnd endAt(int index) const {
        const Tip& tip = ground_.tips()[static_cast<std::size_t>(index)];
        const Hole hole = ground_.holeAt(tip.hole);
        const bool supply = !tip.jumper && ground_.part(tip.thing).kind->isSupply;
        return {ground_.netOfStrip(tip.strip), tip.strip, supply || isRail(hole.line), hole};
    }

    void countLeads() {
        leadsOfNet_.assign(static_cast<std::size_t>(ground_.layout().netCount), 0);
        for (const int net : ground_.layout().netOfLead) ++leadsOfNet_[static_cast<std::size_t>(net)];
    }

    /// One end for each strip in use. Strips are numbered along the board, so their numbers stand for their places.
    void listStrips() {
        std::set<int> seen;
        for (int tip = 0; tip < static_cast<int>(ground_.tips().size()); ++tip) {
            LinkEnd end = endAt(tip);
            if (!seen.insert(end.strip).second) continue;
            (end.feed ? feeds_ : columns_).push_back(std::move(end));
        }
        std::ranges::sort(columns_, {}, &LinkEnd::strip);
        std::ranges::sort(feeds_, {}, &LinkEnd::strip);
    }

    void listSockets() {
        std::set<Socket> taken;
        for (const Jumper& jumper : ground_.bench().jumpers) {
            for (const JumperEnd& end : jumper.ends) {
                if (const auto* socket = std::get_if<Socket>(&end)) taken.insert(*socket);
            }
        }
        for (int part = 0; part < static_cast<int>(ground_.bench().parts.size()); ++part) {
            const PartKind& kind = *ground_.part(part).kind;
            for (int lead = 0; lead < static_cast<int>(kind.leads.size()); ++lead) {
                const Socket socket{ground_.part(part).id, lead};
                if (!kind.leads[static_cast<std::size_t>(lead)].socket || taken.contains(socket)) continue;
                if (sockets_.size() == kMostSockets) return;
                const int index = ground_.layout().leadIndex(part, lead);
                sockets_.push_back({ground_.layout().netOfLead[static_cast<std::size_t>(index)], -1, true, socket});
            }
        }
    }

    void linkFrom(const LinkEnd& end, int away) {
        linkNearest(columns_, end, away, kNearestNets);
        linkNearest(feeds_, end, away, kNearestFeeds);
        for (const LinkEnd& socket : sockets_) add(end, socket, away);
    }

    /// Links to the ends of a list that are nearest along the boards, each net once.
    void linkNearest(const std::vector<LinkEnd>& ends, const LinkEnd& from, int away, std::size_t most) {
        auto right = std::ranges::lower_bound(ends, from.strip, {}, &LinkEnd::strip), left = right;
        std::set<int> nets{from.net};
        const std::size_t enough = most + 1;  // its own net is no link
        while (nets.size() < enough && (right != ends.end() || left != ends.begin())) {
            ground_.count(1);
            const bool goesRight = left == ends.begin() ||
                                   (right != ends.end() && right->strip - from.strip <= from.strip - (left - 1)->strip);
            const LinkEnd& to = goesRight ? *right++ : *--left;
            if (nets.insert(to.net).second) add(from, to, away);
        }
    }

    /// Metal that supplies reach and that may have to be joined to other such metal.
    void linkFeeds() {
        const std::set<int> boards(scope_.boards().begin(), scope_.boards().end());
        for (std::size_t a = 0; a < feeds_.size(); ++a) {
            stopIfAsked();
            const Hole& hole = std::get<Hole>(feeds_[a].place);
            if (!boards.contains(ground_.boardIndexOf(ground_.holeIndex(hole)))) continue;
            for (std::size_t b = a + 1; b < std::min(feeds_.size(), a + 1 + kNextFeeds); ++b)
                add(feeds_[a], feeds_[b], kFeedAway);
            for (const LinkEnd& socket : sockets_) add(feeds_[a], socket, kFeedAway);
        }
    }

    /// Free places of an end: of a rail first those that stand over the hole at the jumper's other end.
    std::vector<JumperEnd> placesOf(const LinkEnd& end, const LinkEnd& other) const {
        const Hole* hole = std::get_if<Hole>(&end.place);
        if (hole == nullptr) return {end.place};
        Hole near = *hole;
        const Hole* opposite = std::get_if<Hole>(&other.place);
        if (isRail(near.line) && opposite != nullptr && opposite->board == near.board) {
            Hole over = near;
            over.number = isRail(opposite->line) ? opposite->number
                                                 : railNumberNear(*ground_.boardOf(near).kind, opposite->number);
            const int index = ground_.holeIndex(over);
            if (index >= 0 && ground_.stripOf(index) == end.strip) near = over;
        }
        std::vector<JumperEnd> places;
        for (Hole& free : ground_.freeIn(near, kHolesOfLink)) places.emplace_back(std::move(free));
        return places;
    }

    void add(const LinkEnd& from, const LinkEnd& to, int away) {
        ground_.count(1);
        if (from.net == to.net || !wanted_(from.net, to.net)) return;
        const auto [at, isNew] = linkOf_.try_emplace(std::minmax(from.net, to.net), links_.size());
        if (isNew) {
            const auto isOpen = [&](int net) { return leadsOfNet_[static_cast<std::size_t>(net)] <= 1; };
            links_.push_back({{}, away, isOpen(from.net) + isOpen(to.net)});
        }
        MissingLink& link = links_[at->second];
        if (link.ways.size() >= kMostWays) return;
        const std::vector<JumperEnd> ends = placesOf(to, from);
        for (const JumperEnd& one : placesOf(from, to)) {
            for (const JumperEnd& other : ends) link.ways.push_back({one, other});
        }
    }

    const Ground& ground_;
    const Scope& scope_;
    const std::function<bool(int, int)>& wanted_;
    std::vector<int> leadsOfNet_;
    std::vector<LinkEnd> columns_, feeds_, sockets_;
    std::map<std::pair<int, int>, std::size_t> linkOf_;
    std::vector<MissingLink> links_;
};

}  // namespace

std::vector<MissingLink> missingLinks(const Ground& ground, const Scope& scope,
                                      const std::function<bool(int net, int other)>& wanted) {
    return Links(ground, scope, wanted).find();
}

}  // namespace tiepoint
