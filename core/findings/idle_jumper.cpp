// A jumper whose ends are in one net already: it works, and does nothing. Of several that do the same, the last placed is named.

#include "core/base/disjoint_sets.h"
#include "core/findings/rules.h"
#include "core/words/words.h"

namespace tiepoint {

Suspicions findIdleJumpers(const Examination& examination) {
    const Layout& layout = examination.layout();
    const Bench& bench = examination.bench();
    // Strips, sockets and hanging leads are joined as the layout joins them, jumper by jumper, so that the one that adds nothing shows.
    DisjointSets joined(layout.joints.size());
    for (const Piece& piece : layout.pieces) {
        if (piece.kind != PieceKind::Jumper) joined.join(piece.from, piece.to);
    }
    Suspicions all;
    for (std::size_t j = 0; j < bench.jumpers.size(); ++j) {
        if (bench.jumpers[j].condition != Condition::Sound) continue;
        if (joined.join(layout.jumperJoints[j][0], layout.jumperJoints[j][1])) continue;
        const std::string& id = bench.jumpers[j].id;
        Suspicion found;
        found.finding.severity = Severity::Remark;
        found.finding.parts = {id};
        for (const JumperEnd& end : bench.jumpers[j].ends) {
            if (const Hole* hole = std::get_if<Hole>(&end)) found.finding.holes.push_back(*hole);
        }
        found.finding.text = say("finding.idleJumper", {{"jumper", id}});
        found.finding.figures = {{"resistance without it", 0}};
        found.proposals.push_back({say("mend.takeAway", {{"thing", id}}), removeEdit(bench, {id})});
        all.push_back(std::move(found));
    }
    return all;
}

}  // namespace tiepoint
