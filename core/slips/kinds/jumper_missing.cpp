// A jumper that was forgotten. Forwards each may be the one; backwards it is looked for among strips that nothing joins.

#include "core/slips/kinds/kinds.h"
#include "core/slips/missing_links.h"
#include "core/slips/search.h"
#include "core/slips/slip_words.h"
#include "core/words/words.h"

namespace tiepoint {
namespace {

/// By open ends: what hangs by itself misses something, what meets others on both sides hardly does.
constexpr double kOpenShares[] = {0.2, 0.6, 1};

void findJumpers(SlipSearch& search) {
    search.eachJumper([&](int index, int away) {
        BenchChange change;
        change.removed.push_back(search.ground().jumper(index));
        search.offer(std::move(change), away);
    });
}

void findLinks(SlipSearch& search) {
    const CircuitDigest& circuit = search.ground().circuit();
    const auto wanted = [&](int net, int other) { return search.isWanted(circuit.afterJoining(net, other)); };
    for (const MissingLink& link : missingLinks(search.ground(), search.scope(), wanted)) {
        std::vector<BenchChange> ways;
        for (const auto& places : link.ways) ways.push_back(search.ground().joining({places}));
        search.offer(std::move(ways), link.away, kOpenShares[link.openEnds]);
    }
}

void searchJumperMissing(SlipSearch& search) { search.backwards() ? findLinks(search) : findJumpers(search); }

std::string toldJumperMissing(const Bench& bench, const Slip& slip) {
    return say("slip.jumper-missing", {{"run", runOf(bench, slip.right.added.front())}});
}
std::string mendJumperMissing(const Bench& bench, const Slip& slip) {
    const Jumper& jumper = slip.right.added.front();
    return say("slip.jumper-missing.mend",
               {{"one", placeName(bench, jumper.ends[0])}, {"other", placeName(bench, jumper.ends[1])}});
}

}  // namespace

const SlipKind kJumperMissing{
    "jumper-missing", 8, "slip.jumper-missing.seen", false, searchJumperMissing, toldJumperMissing, mendJumperMissing};

}  // namespace tiepoint
