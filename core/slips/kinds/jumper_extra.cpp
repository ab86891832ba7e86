// A jumper too many. Forwards it bypasses a part, a supply too; backwards each jumper may be the one.

#include "core/slips/exchangeable.h"
#include "core/slips/kinds/kinds.h"
#include "core/slips/search.h"
#include "core/slips/slip_words.h"
#include "core/words/words.h"

namespace tiepoint {
namespace {

constexpr std::size_t kHolesOfBypass = 2;

void offerAcross(SlipSearch& search, const Hole& from, const Hole& to, int away) {
    const Ground& ground = search.ground();
    std::vector<BenchChange> ways;
    for (const Hole& a : ground.freeIn(from, kHolesOfBypass)) {
        for (const Hole& b : ground.freeIn(to, kHolesOfBypass)) ways.push_back(ground.joining({{a, b}}));
    }
    search.offer(std::move(ways), away);
}

void searchJumperExtra(SlipSearch& search) {
    const Ground& ground = search.ground();
    if (search.backwards()) {
        search.eachJumper([&](int index, int away) {
            BenchChange change;
            change.removed.push_back(ground.jumper(index));
            search.offer(std::move(change), away);
        });
        return;
    }
    search.eachPart([&](int index, int away) {
        const Part& part = ground.part(index);
        const auto ends = twoEndsOf(*part.kind);
        if (!ends) return;
        const auto &from = part.leads[static_cast<std::size_t>(ends->first)],
                   &to = part.leads[static_cast<std::size_t>(ends->second)];
        if (from && to) offerAcross(search, *from, *to, away);
    });
}

std::string toldJumperExtra(const Bench& bench, const Slip& slip) {
    const Jumper& jumper = slip.wrong.added.front();
    return say("slip.jumper-extra", {{"jumper", jumper.id}, {"run", runOf(bench, jumper)}});
}
std::string mendJumperExtra(const Bench&, const Slip& slip) {
    return say("slip.jumper-extra.mend", {{"jumper", slip.wrong.added.front().id}});
}

}  // namespace

const SlipKind kJumperExtra{"jumper-extra", 1, "slip.jumper-extra.seen", false, searchJumperExtra, toldJumperExtra,
                            mendJumperExtra};

}  // namespace tiepoint
