// A walk by rings: what is reached in fewer steps comes first, and inside a ring parts and jumpers in the order of the bench.

#include "core/slips/scope.h"

#include "core/base/stopping.h"
#include "core/slips/reach.h"

#include <algorithm>
#include <cstdlib>
#include <set>
#include <unordered_set>

namespace tiepoint {
namespace {

constexpr int kStep = 1;        ///< through metal that two things share
constexpr int kBeside = 2;      ///< to a strip that a hand may have meant instead
constexpr int kSupplyAway = 2;  ///< whatever is dark, its supply is soon asked about
constexpr std::size_t kMostInOneStrip = 32;
constexpr int kFewSupplies = 8;  ///< so many are asked about wherever they are plugged in

}  // namespace

class Scope::Spread {
public:
    Spread(const Ground& ground, std::size_t most)
        : ground_(ground),
          most_(most),
          seenPart_(ground.bench().parts.size(), 0),
          seenJumper_(ground.bench().jumpers.size(), 0) {
        markHubs();
        listPartsInOneStrip();
    }

    void start(int part) { reach(false, part, 0); }
    void addWhatFeeds() {
        const Bench& bench = ground_.bench();
        const auto supplies = std::ranges::count_if(bench.parts, [](const Part& part) { return part.kind->isSupply; });
        for (int part = 0; supplies <= kFewSupplies && part < static_cast<int>(bench.parts.size()); ++part) {
            if (bench.parts[part].kind->isSupply) reach(false, part, kSupplyAway);
        }
    }

    std::vector<Thing> spread() {
        std::vector<Thing> things;
        for (std::size_t ring = 0; ring < rings_.size() && things.size() < most_; ++ring) {
            for (std::size_t i = 0; i < rings_[ring].size() && things.size() < most_; ++i) {
                stopIfAsked();
                const Thing thing = rings_[ring][i];
                char& seen = thing.jumper ? seenJumper_[thing.index] : seenPart_[thing.index];
                if (seen != 0) continue;
                seen = 1;
                things.push_back(thing);
                if (thing.jumper) reachSockets(ground_.jumper(thing.index), thing.away);
                for (const int tip : thing.jumper ? ground_.tipsOfJumper(thing.index) : ground_.tipsOfPart(thing.index))
                    goOnFrom(ground_.tips()[tip], thing.away);
            }
        }
        return things;
    }

private:
    void markHubs() {
        const Layout& layout = ground_.layout();
        hub_.assign(layout.netOfStrip.size(), 0);
        for (const Tip& tip : ground_.tips()) {
            const bool supply = !tip.jumper && ground_.part(tip.thing).kind->isSupply;
            if (supply || isRail(ground_.holeAt(tip.hole).line)) hub_[tip.strip] = 1;
        }
    }

    /// Whether each end is in a rail, or alone in its strip.
    bool hangsOnHubs(const std::vector<int>& tips) const {
        bool onHub = false;
        const bool all = std::ranges::all_of(tips, [&](int index) {
            const Tip& tip = ground_.tips()[index];
            onHub = onHub || hub_[tip.strip] != 0;
            return hub_[tip.strip] != 0 || ground_.tipsIn(tip.strip).size() == 1;
        });
        return onHub && all;
    }

    void reach(bool jumper, int index, int away) {
        if ((jumper ? seenJumper_[index] : seenPart_[index]) != 0) return;
        if (rings_.size() <= static_cast<std::size_t>(away)) rings_.resize(static_cast<std::size_t>(away) + 1);
        rings_[static_cast<std::size_t>(away)].push_back({jumper, index, away});
    }

    void reachStrip(int strip, int away) {
        if (hub_[strip] != 0) return;
        for (const int index : ground_.tipsIn(strip)) {
            const Tip& tip = ground_.tips()[index];
            ground_.count(1);
            reach(tip.jumper, tip.thing, away);
        }
    }

    void reachHole(int hole, int away) {
        for (const int index : ground_.tipsIn(ground_.stripOf(hole))) {
            const Tip& tip = ground_.tips()[index];
            ground_.count(1);
            if (tip.hole == hole) reach(tip.jumper, tip.thing, away);
        }
    }

    /// Parts with both legs in one strip, of which one should be in another: as far away as the part is long.
    void listPartsInOneStrip() {
        for (int part = 0; part < static_cast<int>(ground_.bench().parts.size()); ++part) {
            const auto& tips = ground_.tipsOfPart(part);
            if (tips.size() != 2 || ground_.part(part).kind->package->reach != Reach::Bending) continue;
            if (ground_.tips()[tips[0]].strip == ground_.tips()[tips[1]].strip) inOneStrip_.push_back(part);
            if (inOneStrip_.size() == kMostInOneStrip) return;
        }
    }
    bool reachesOver(int part, const Hole& hole) const {
        const Hole at = ground_.holeAt(ground_.tips()[ground_.tipsOfPart(part)[0]].hole);
        return at.board == hole.board && std::abs(at.number - hole.number) <= ground_.part(part).kind->package->maxSpan;
    }

    void reachSockets(const Jumper& jumper, int away) {
        for (const JumperEnd& end : jumper.ends) {
            if (const auto* socket = std::get_if<Socket>(&end))
                reach(false, ground_.bench().partIndex(socket->part), away + kStep);
        }
    }

    /// Of what is in a rail or at a supply only what feeds it, or ties it to another.
    void reachFeeds(int strip, int away) {
        for (const int index : ground_.tipsIn(strip)) {
            const Tip& tip = ground_.tips()[index];
            ground_.count(1);
            const bool supply = !tip.jumper && ground_.part(tip.thing).kind->isSupply;
            if (supply || (tip.jumper && hangsOnHubs(ground_.tipsOfJumper(tip.thing))))
                reach(tip.jumper, tip.thing, away);
        }
    }

    void goOnFrom(const Tip& tip, int away) {
        if (!gone_.insert(tip.strip).second) return;
        if (hub_[tip.strip] != 0) return reachFeeds(tip.strip, away + kStep);
        reachStrip(tip.strip, away + kStep);
        Hole outermost = ground_.holeAt(tip.hole);  // any leg of the column may have missed the rail beside it
        outermost.line = outermost.line <= Line::E ? Line::A : Line::J;
        for (const Hole& beside : holesInReach(ground_, outermost)) {
            const int hole = ground_.holeIndex(beside);
            if (isRail(beside.line))
                reachHole(hole, away + kBeside);
            else
                reachStrip(ground_.stripOf(hole), away + kBeside);
        }
        for (const int part : inOneStrip_) {
            if (reachesOver(part, outermost)) reach(false, part, away + kBeside);
        }
    }

    const Ground& ground_;
    std::size_t most_;
    std::vector<char> seenPart_, seenJumper_, hub_;
    std::vector<std::vector<Thing>> rings_;
    std::unordered_set<int> gone_;
    std::vector<int> inOneStrip_;
};

Scope::Scope(const Ground& ground) : whole_(true) {
    for (int part = 0; part < static_cast<int>(ground.bench().parts.size()); ++part)
        things_.push_back({false, part, 0});
    for (int jumper = 0; jumper < static_cast<int>(ground.bench().jumpers.size()); ++jumper)
        things_.push_back({true, jumper, 0});
    for (int board = 0; board < static_cast<int>(ground.bench().boards.size()); ++board) boards_.push_back(board);
}

Scope::Scope(const Ground& ground, const std::vector<std::string>& around, std::size_t most) {
    Spread spread(ground, most);
    for (const std::string& id : around) {
        const int part = ground.bench().partIndex(id);
        if (part >= 0) spread.start(part);
    }
    spread.addWhatFeeds();
    things_ = spread.spread();
    std::set<int> boards;
    for (const Thing& thing : things_) {
        for (const int tip : thing.jumper ? ground.tipsOfJumper(thing.index) : ground.tipsOfPart(thing.index))
            boards.insert(ground.boardIndexOf(ground.tips()[tip].hole));
    }
    boards_.assign(boards.begin(), boards.end());
}

}  // namespace tiepoint
