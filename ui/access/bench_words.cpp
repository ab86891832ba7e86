#include "ui/access/bench_words.h"

#include "core/bench/describe.h"
#include "core/edit/boards.h"
#include "core/edit/holes.h"
#include "core/edit/placement.h"
#include "core/hunt/hidden_slip.h"
#include "core/meter/meter.h"
#include "core/snapshot/pinned_value.h"
#include "core/snapshot/readings.h"
#include "ui/cards/reading_text.h"
#include "ui/theme/plain_text.h"
#include "ui/theme/qs.h"

#include <QStringList>

namespace tiepoint::ui {
namespace {

constexpr int kMostOfNet = 12;  ///< things of a net that are named; nobody listens to fifty

QString endWords(const Picture& picture, const JumperEnd& end) {
    if (const Hole* hole = std::get_if<Hole>(&end)) return qs(holeName(picture.bench(), *hole));
    const Socket& socket = std::get<Socket>(end);
    const Part& part = *picture.bench().findPart(socket.part);
    return QStringLiteral("socket %1 of %2")
        .arg(qs(part.kind->leads[static_cast<std::size_t>(socket.lead)].name), qs(part.id));
}

QString leadName(const Part& part, int lead) {
    const bool clips = part.kind->isSupply || isMeter(*part.kind);  // a part has legs, these have leads
    return QStringLiteral("%1 %2 %3")
        .arg(qs(part.id), clips ? QStringLiteral("lead") : QStringLiteral("leg"),
             qs(part.kind->leads[static_cast<std::size_t>(lead)].name));
}

QString occupantWords(const Bench& bench, const Hole& hole) {
    const auto occupant = occupantOf(bench, hole);
    if (!occupant) return QStringLiteral("free");
    if (occupant->jumper) return QStringLiteral("jumper %1").arg(qs(occupant->id));
    return leadName(*bench.findPart(occupant->id), occupant->lead);
}

/// ", to the right of board A" of a board that is docked so.
QString dockedWordsFor(const Bench& bench, const Board& board) {
    const std::string words = dockedWords(bench, board.id, {board.atX, board.atY});
    return words.empty() ? QString() : QStringLiteral(", ") + qs(words);
}

}  // namespace

QString benchWords(const Picture& picture) {
    const Snapshot* live = picture.live();
    const QString state = !live                                           ? QStringLiteral("no current can be told")
                          : live->largestCurrentAmpere > kNoCurrentAmpere ? QStringLiteral("current flows")
                                                                          : QStringLiteral("no current flows");
    return QStringLiteral("%1, %2").arg(plainText(picture.bench().title), state);
}

QString saidWords(const Picture& picture) {
    const QString said = qs(picture.marks.say);
    return said.isEmpty() ? benchWords(picture) : QStringLiteral("%1. %2").arg(said, benchWords(picture));
}

QString boardWordsFor(const Picture& picture, int board) {
    const Board& which = picture.bench().boards[static_cast<std::size_t>(board)];
    return QStringLiteral("Board %1, %2%3%4")
        .arg(qs(which.id), qs(describeBoard(which)).toLower(),
             which.rails == Rails::Split && which.kind->hasRails() ? QStringLiteral(", its rails broken in the middle")
                                                                   : QString(),
             dockedWordsFor(picture.bench(), which));
}

QString voltsWords(const Picture& picture, int net) {
    const Snapshot* live = picture.live();
    if (!live || net < 0 || isHunting(picture.bench())) return {};
    const Figure volt = live->shown().volt(net);
    return volt.isKnown() ? qs(volt.text()) : QStringLiteral("joined to nothing");
}

QString holeWords(const Picture& picture, const Hole& hole) {
    QStringList words{qs(holeName(picture.bench(), hole)), occupantWords(picture.bench(), hole)};
    const int index = picture.layout->holeIndex(hole);
    const int net = picture.layout->netOfHole(index);
    if (picture.layout->netUsed[static_cast<std::size_t>(net)]) words << voltsWords(picture, net);
    words.removeAll(QString());
    return words.join(QStringLiteral(", "));
}

QString partWords(const Picture& picture, int part) {
    return qs(describePart(picture.bench().parts[static_cast<std::size_t>(part)]));
}

QString leadsWords(const Picture& picture, int part) {
    const Part& which = picture.bench().parts[static_cast<std::size_t>(part)];
    QStringList words;
    for (std::size_t lead = 0; lead < which.leads.size(); ++lead) {
        if (which.kind->leads[lead].socket) continue;
        const QString where = which.leads[lead]
                                  ? QStringLiteral("in %1").arg(qs(holeName(picture.bench(), *which.leads[lead])))
                                  : QStringLiteral("in no hole");
        words << QStringLiteral("%1 %2").arg(qs(which.kind->leads[lead].name), where);
    }
    return words.join(QStringLiteral(", "));
}

QString jumperWords(const Picture& picture, int jumper) {
    const Jumper& which = picture.bench().jumpers[static_cast<std::size_t>(jumper)];
    const std::string_view colour = jumperColours()[static_cast<std::size_t>(which.colour)].name;
    return QStringLiteral("%1, %2 jumper from %3 to %4")
        .arg(qs(which.id), qs(std::string(colour)), endWords(picture, which.ends[0]), endWords(picture, which.ends[1]));
}

QString netWords(const Picture& picture, int net) {
    const Layout& layout = *picture.layout;
    QStringList words;
    for (const Joint& joint : layout.joints) {
        if (joint.net != net || joint.hub) continue;
        if (joint.hole >= 0) {
            words << qs(holeName(picture.bench(), layout.holeAt(joint.hole)));
        } else if (joint.lead >= 0) {
            const int part = layout.partOfLead(joint.lead);
            words << leadName(picture.bench().parts[static_cast<std::size_t>(part)],
                              joint.lead - layout.firstLead[static_cast<std::size_t>(part)]);
        }
    }
    const auto more = words.size() - kMostOfNet;
    if (more > 0) words = words.mid(0, kMostOfNet) << QStringLiteral("%1 more").arg(more);
    return QStringLiteral("Net of %1").arg(words.join(QStringLiteral(", ")));
}

QString noteWords(const Picture& picture, int note) {
    const Note& which = picture.bench().notes[static_cast<std::size_t>(note)];
    return QStringLiteral("Note at %1: %2").arg(qs(holeName(picture.bench(), which.at)), plainLines(which.text));
}

QString pinnedWords(const Picture& picture, const std::string& id) {
    return QStringLiteral("Pinned reading, %1")
        .arg(qs(measurandInWords(picture.bench(), picture.bench().findPinned(id)->of)));
}

QString pinnedFigure(const Picture& picture, const std::string& id) {
    return picture.snapshot ? qs(pinnedText(*picture.snapshot, *picture.bench().findPinned(id))) : QString();
}

QString readingWords(const Picture& picture, const std::string& id) {
    // A meter shows something without a solution too.
    const Part* part = picture.bench().findPart(id);
    if (!picture.live() && !(picture.snapshot && part && isMeter(*part->kind))) return {};
    const ReadingText text = readingText(picture, id);
    QStringList words{text.big, text.note};
    words.removeAll(QString());
    return words.join(QStringLiteral(", "));
}

}  // namespace tiepoint::ui
