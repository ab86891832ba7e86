// A leg or an end that is in its hole and doesn't touch the clip: bent aside, too thin, or the clip is worn. By the law of core/bench/condition.h
// it is the first lead that is in a hole.

#include "core/slips/kinds/kinds.h"
#include "core/slips/search.h"
#include "core/slips/slip_words.h"
#include "core/words/words.h"

namespace tiepoint {
namespace {

template <class Thing>
void offerContact(SlipSearch& search, const Thing& thing, int away) {
    const bool isDry = thing.condition == Condition::DryContact;
    if (isDry != search.backwards() || !hasElements(thing.condition)) return;
    BenchChange change;
    change.conditions.push_back({thing.id, isDry ? Condition::Sound : Condition::DryContact});
    search.offer(std::move(change), away);
}

void searchDryContact(SlipSearch& search) {
    search.eachPart([&](int index, int away) { offerContact(search, search.ground().part(index), away); });
    search.eachJumper([&](int index, int away) { offerContact(search, search.ground().jumper(index), away); });
}

/// The tip that doesn't touch, and where it is.
std::pair<std::string, std::string> untouchedTip(const Bench& bench, const Slip& slip) {
    const std::string& id = slip.wrong.conditions.front().id;
    if (const Part* part = bench.findPart(id)) {
        Part dry = *part;
        dry.condition = Condition::DryContact;
        const int lead = untouchedLead(dry);
        return {tipInWords(bench, PlacedLead{id, lead, std::nullopt}),
                placeName(bench, *part->leads[static_cast<std::size_t>(lead)])};
    }
    return {say("slip.tip.untouched", {{"jumper", id}}), placeName(bench, bench.findJumper(id)->ends[0])};
}

std::string toldDryContact(const Bench& bench, const Slip& slip) {
    const auto [tip, place] = untouchedTip(bench, slip);
    return say("slip.dry-contact", {{"place", place}, {"tip", tip}});
}
std::string mendDryContact(const Bench& bench, const Slip& slip) {
    const auto [tip, place] = untouchedTip(bench, slip);
    return say("slip.dry-contact.mend", {{"tip", tip}, {"place", place}});
}

}  // namespace

const SlipKind kDryContact{"dry-contact",  3,   "slip.dry-contact.seen", false, searchDryContact, toldDryContact,
                           mendDryContact, true};

}  // namespace tiepoint
