// A part taken for another that looks the same: a transistor of the other family of legs, a three-colour LED with the other common leg. Which
// choices can't be told apart is the kind's own statement.

#include "core/bench/resolve.h"
#include "core/slips/kinds/kinds.h"
#include "core/slips/search.h"
#include "core/slips/slip_words.h"
#include "core/words/words.h"

#include <algorithm>

namespace tiepoint {
namespace {

/// The same hands put the other part into the same holes leg by leg, so the leads change places where the legs do.
void offerTaken(SlipSearch& search, int index, int value, int choice, int away) {
    const Part& part = search.ground().part(index);
    Part taken = part;
    taken.values[static_cast<std::size_t>(value)] = choice;
    BenchChange change;
    change.figures.push_back({part.id, false, value, static_cast<double>(choice)});
    const Package &was = packageOf(part), &is = packageOf(taken);
    for (std::size_t lead = 0; lead < part.leads.size() && part.kind->package->reach == Reach::Rigid; ++lead) {
        const auto legOf = [&](const Package& package, std::size_t of) {
            const auto left = std::ranges::min(package.footprint, {}, &Point::x);
            return package.footprint[of] - Point{left.x, 0};
        };
        for (std::size_t other = 0; other < part.leads.size(); ++other) {
            if (other == lead || distance(legOf(is, lead), legOf(was, other)) > 0.1) continue;
            change.leads.push_back({part.id, static_cast<int>(lead), part.leads[other]});
        }
    }
    search.offer(std::move(change), away);
}

void searchLookAlikeType(SlipSearch& search) {
    search.eachPart([&](int index, int away) {
        const Part& part = search.ground().part(index);
        for (int value = 0; value < static_cast<int>(part.kind->values.size()); ++value) {
            const ValueSpec& spec = part.kind->values[static_cast<std::size_t>(value)];
            for (int choice = 0; spec.lookAlike && choice < static_cast<int>(spec.choices.size()); ++choice) {
                if (choice != static_cast<int>(part.value(value))) offerTaken(search, index, value, choice, away);
            }
        }
    });
}

std::string toldLookAlikeType(const Bench& bench, const Slip& slip) {
    const WrongFigure figure = figureOf(bench, slip);
    return say("slip.look-alike-type",
               {{"label", figure.label}, {"part", figure.part}, {"wrong", figure.wrong}, {"right", figure.right}});
}
std::string mendLookAlikeType(const Bench& bench, const Slip& slip) {
    const WrongFigure figure = figureOf(bench, slip);
    return say("slip.look-alike-type.mend", {{"label", figure.label}, {"part", figure.part}, {"right", figure.right}});
}

}  // namespace

const SlipKind kLookAlikeType{
    "look-alike-type", 3, "slip.look-alike-type.seen", true, searchLookAlikeType, toldLookAlikeType, mendLookAlikeType};

}  // namespace tiepoint
