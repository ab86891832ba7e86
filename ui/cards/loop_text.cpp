#include "ui/cards/loop_text.h"

#include "core/snapshot/readings.h"
#include "ui/theme/qs.h"

#include <QStringList>

#include <algorithm>
#include <cmath>

namespace tiepoint::ui {
namespace {

// The law of the arrows: under this share of full scale a current is drawn as a dotted thread.
constexpr double kThreadShare = 0.02;
constexpr std::size_t kMostBranches = 4;  // as many as the card can show side by side

// --- once round the loop ---

LoopText textOf(const Picture& picture, const Loop& loop) {
    LoopText text;
    text.title = QStringLiteral("Voltage around the loop");
    double top = 0;
    for (const Drop& drop : loop.drops) top = std::max(top, std::abs(drop.fromVolt));
    for (const Drop& drop : loop.drops)
        text.drops.push_back({picture.bench().parts[drop.part].id, qs(drop.shown().text()),
                              drop.volt() / loop.supplyVolt, drop.fromVolt / top, drop.toVolt / top,
                              qs(drop.fromShown.text()), qs(drop.toShown.text())});
    text.note = QStringLiteral("The drops add up to the supply's %1.").arg(qs(loop.supplyShown.text()));
    return text;
}

// --- where the current divides ---

QString metalName(const Hole& hole) {
    switch (hole.line) {
        case Line::TopPlus:
        case Line::BottomPlus:
            return QStringLiteral("the plus rail");
        case Line::TopMinus:
        case Line::BottomMinus:
            return QStringLiteral("the minus rail");
        default:
            return QStringLiteral("column %1").arg(hole.number);
    }
}

/// The id of the part or jumper through which a branch leaves the strip; empty for the strip itself.
std::string ownerOf(const Picture& picture, const Branch& branch) {
    const Layout& layout = *picture.layout;
    if (branch.lead >= 0) return picture.bench().parts[layout.partOfLead(branch.lead)].id;
    const Piece& piece = layout.pieces[branch.piece];
    if (piece.kind == PieceKind::Jumper) return picture.bench().jumpers[piece.owner].id;
    if (piece.kind == PieceKind::Bridge) return picture.bench().parts[layout.partOfLead(piece.owner)].id;
    return {};
}

BranchText branchText(const Picture& picture, const Branch& branch, const Hole& hole) {
    const std::string owner = ownerOf(picture, branch);
    const QString metal = isRail(hole.line) ? QStringLiteral("rail") : QStringLiteral("strip");
    const QString where =
        owner.empty() ? metal + (branch.ampere > 0 ? QStringLiteral(" before") : QStringLiteral(" after")) : qs(owner);
    return {qs(branch.shown.magnitude().text()), where, std::abs(branch.ampere)};
}

LoopText textOf(const Picture& picture, const BranchPoint& point) {
    const Hole hole = picture.layout->holeAt(picture.layout->joints[point.joint].hole);
    LoopText text;
    text.title = QStringLiteral("Where the current divides");
    for (const Branch& branch : point.branches) {
        (branch.ampere > 0 ? text.in : text.out).push_back(branchText(picture, branch, hole));
        const std::string owner = ownerOf(picture, branch);
        if (owner.empty()) continue;
        const bool leaves = branch.ampere < 0;
        text.title = QStringLiteral("Where %1 %2 %3")
                         .arg(qs(owner), leaves ? QStringLiteral("leaves") : QStringLiteral("joins"), metalName(hole));
    }
    text.note = QStringLiteral("What comes in goes out, at every branch point.");
    return text;
}

/// Branch points that the card can show: in a hole, and with few enough branches.
std::vector<BranchPoint> showable(const Picture& picture, std::vector<BranchPoint> all) {
    std::erase_if(all, [&](const BranchPoint& point) {
        return picture.layout->joints[point.joint].hole < 0 || point.branches.size() > kMostBranches;
    });
    return all;
}

const BranchPoint* branchPointOf(const Picture& picture, const std::vector<BranchPoint>& all, const std::string& id) {
    const auto touches = [&](const BranchPoint& point) {
        return std::ranges::any_of(point.branches, [&](const Branch& b) { return ownerOf(picture, b) == id; });
    };
    const auto found = std::ranges::find_if(all, touches);
    return found == all.end() ? nullptr : &*found;
}

bool divides(const BranchPoint& point) {
    return std::ranges::count_if(point.branches, [](const Branch& b) { return b.ampere > 0; }) == 1;
}

/// The branch point to show: the one of the part pointed at, else the only one at which the current divides.
const BranchPoint* chosenBranchPoint(const Picture& picture, const std::vector<BranchPoint>& all,
                                     const std::string& id) {
    if (const BranchPoint* pointedAt = id.empty() ? nullptr : branchPointOf(picture, all, id)) return pointedAt;
    const auto first = std::ranges::find_if(all, divides);
    const bool only = first != all.end() && std::find_if(first + 1, all.end(), divides) == all.end();
    return only ? &*first : nullptr;
}

// --- what the supplies give ---

/// Says which parts are drawn as threads, since a thread's breadth says nothing.
QString threadWords(const Picture& picture) {
    const Snapshot& snapshot = *picture.snapshot;
    const double limit = kThreadShare * fullScaleAmpere(picture);
    QStringList ids;
    Figure largest = snapshot.shown().ampere(0);
    for (int part = 0; part < static_cast<int>(picture.bench().parts.size()); ++part) {
        const double ampere = currentThrough(snapshot, part).inAmpere;
        if (ampere <= kNoCurrentAmpere || ampere >= limit) continue;
        ids << qs(picture.bench().parts[part].id);
        const Figure in = snapshot.shown().through(part).in;
        if (in.steps() > largest.steps()) largest = in;
    }
    if (ids.isEmpty() || ids.size() > 3) return {};
    return QStringLiteral("%1 %2 %3. That is under 2 % of full scale, so it is drawn as a dotted thread.")
        .arg(ids.join(QStringLiteral(" and ")), ids.size() == 1 ? QStringLiteral("carries") : QStringLiteral("carry"),
             qs(largest.text()));
}

/// "PS1 9.37 mA at 5.00 V"; without the volts where nothing ties them to the reference.
QString giverWords(const Picture& picture, const Giver& supply) {
    const QString words = qs(picture.bench().parts[supply.part].id + ' ' + supply.current.text());
    return supply.volt.isKnown() ? QStringLiteral("%1 at %2").arg(words, qs(supply.volt.text())) : words;
}

/// Of one supply its current; of several their watts, since currents at different voltages don't add up to anything.
LoopText textOf(const Picture& picture, const Delivery& given) {
    LoopText text;
    if (given.supplies.size() == 1) {
        const Giver& supply = given.supplies.front();
        text.title = QStringLiteral("The supply gives");
        text.big = qs(supply.current.text());
        text.note = threadWords(picture);
        if (text.note.isEmpty() && supply.volt.isKnown() && supply.volt.isZero())
            text.note = QStringLiteral("At %1: next to nothing lies between its plus and its minus.")
                            .arg(qs(supply.volt.text()));
        if (text.note.isEmpty()) text.note = qs(given.power.text()) + QStringLiteral(" in all.");
        return text;
    }
    text.title = QStringLiteral("The supplies give");
    text.big = qs(given.power.text());
    constexpr std::size_t kMostNamed = 3;
    QStringList each;
    for (std::size_t i = 0; i < std::min(kMostNamed, given.supplies.size()); ++i)
        each << giverWords(picture, given.supplies[i]);
    if (given.supplies.size() > kMostNamed) each << QStringLiteral("%1 more").arg(given.supplies.size() - kMostNamed);
    text.note = each.join(QStringLiteral(", ")) + QLatin1Char('.');
    return text;
}

LoopText resting(const QString& title, const QString& note) {
    LoopText text;
    text.title = title;
    text.note = note;
    return text;
}

}  // namespace

LoopText loopText(const Picture& picture, const std::string& id) {
    if (!picture.snapshot) return resting(QStringLiteral("Working it out"), {});
    const Snapshot& snapshot = *picture.snapshot;
    if (snapshot.status() == Status::None) return resting(QStringLiteral("No answer"), qs(snapshot.solution.reason));
    if (snapshot.status() == Status::Off)
        return resting(
            QStringLiteral("Nothing flows"),
            QStringLiteral("No supply is switched on. Flip the lever of the supply, at the left of the board."));
    if (const auto loop = simpleLoop(snapshot)) return textOf(picture, *loop);
    const auto all = showable(picture, branchPoints(snapshot));
    if (const BranchPoint* point = chosenBranchPoint(picture, all, id)) return textOf(picture, *point);
    const Delivery given = delivery(snapshot);
    if (!given.supplies.empty()) return textOf(picture, given);
    if (snapshot.largestCurrentAmpere > kNoCurrentAmpere)
        return resting(
            QStringLiteral("A meter's own current"),
            QStringLiteral("No supply drives this circuit: a meter sends a small current through it, to test it."));
    if (const Figure most = snapshot.shown().largestCurrent(); !most.isZero())
        return resting(QStringLiteral("Next to nothing flows"),
                       QStringLiteral("At most %1, too little for an arrow.").arg(qs(most.text())));
    return resting(QStringLiteral("Nothing flows yet"),
                   QStringLiteral("Current needs a complete path from plus through the parts back to minus."));
}

}  // namespace tiepoint::ui
