// A jumper whose ends are in one net already: it works, and does nothing. Of several that do the same, the last placed is named.

#include "core/findings/rules.h"

#include <fmt/format.h>

namespace tiepoint {
namespace {

/// Joins strips, sockets and hanging leads as the layout does, jumper by jumper, so that the one that adds nothing shows.
class Joiner {
public:
    explicit Joiner(int count) : parent_(count) {
        for (int i = 0; i < count; ++i) parent_[i] = i;
    }
    /// Whether that joined two things that were apart.
    bool join(int a, int b) {
        a = root(a);
        b = root(b);
        parent_[b] = a;
        return a != b;
    }

private:
    int root(int i) {
        while (parent_[i] != i) i = parent_[i] = parent_[parent_[i]];
        return i;
    }
    std::vector<int> parent_;
};

}  // namespace

Suspicions findIdleJumpers(const Examination& examination) {
    const Layout& layout = examination.layout();
    const Bench& bench = examination.bench();
    Joiner joiner(static_cast<int>(layout.joints.size()));
    for (const Piece& piece : layout.pieces) {
        if (piece.kind != PieceKind::Jumper) joiner.join(piece.from, piece.to);
    }
    Suspicions all;
    for (std::size_t j = 0; j < bench.jumpers.size(); ++j) {
        if (joiner.join(layout.jumperJoints[j][0], layout.jumperJoints[j][1])) continue;
        const std::string& id = bench.jumpers[j].id;
        Suspicion found;
        found.finding.severity = Severity::Remark;
        found.finding.parts = {id};
        for (const JumperEnd& end : bench.jumpers[j].ends) {
            if (const Hole* hole = std::get_if<Hole>(&end)) found.finding.holes.push_back(*hole);
        }
        found.finding.text = fmt::format("{} changes nothing: its two ends are joined already without it.", id);
        found.finding.figures = {{"resistance without it", 0}};
        found.proposals.push_back({fmt::format("Take {} away", id), removeEdit(bench, {id})});
        all.push_back(std::move(found));
    }
    return all;
}

}  // namespace tiepoint
