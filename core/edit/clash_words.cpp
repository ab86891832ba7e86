// Clashes in words for whoever holds one of the two things in hand.

#include "core/edit/clashes.h"
#include "core/edit/holes.h"
#include "core/edit/placement.h"

#include <fmt/format.h>

namespace tiepoint {
namespace {

std::string holeOfLead(const Bench& bench, const std::string& part, int lead) {
    return holeName(bench, *bench.findPart(part)->leads[lead]);
}

/// "a4", or the socket "US1.5V".
std::string endName(const Bench& bench, const JumperEnd& end) {
    if (const Hole* hole = std::get_if<Hole>(&end)) return holeName(bench, *hole);
    const Socket& socket = std::get<Socket>(end);
    return socket.part + "." + bench.findPart(socket.part)->kind->leads[socket.lead].name;
}

/// "from a4 to a12", of a jumper; "to c5", of a lead that comes from the table.
std::string wayOf(const Bench& bench, const Clash& clash) {
    if (const Jumper* jumper = bench.findJumper(clash.one))
        return fmt::format("from {} to {}", endName(bench, jumper->ends[0]), endName(bench, jumper->ends[1]));
    return "to " + holeOfLead(bench, clash.one, clash.oneLead);
}

/// The wire that finds no way: "W1", or "the + lead of PS1".
std::string wireName(const Bench& bench, const Clash& clash) {
    const Part* part = bench.findPart(clash.one);
    return part ? fmt::format("the {} lead of {}", part->kind->leads[clash.oneLead].name, part->id) : clash.one;
}

/// "; b9 is the same metal".
std::string instead(const Bench& bench, const Hole& hole) {
    const auto other = nearestFreeInStrip(bench, hole);
    return other ? fmt::format("; {} is the same metal", holeName(bench, *other))
                 : "; no other hole of its strip is free";
}

/// As `one` is told.
std::string saidToOne(const Bench& bench, const Clash& clash) {
    switch (clash.kind) {
        case ClashKind::Bodies:
            return fmt::format("its body would overlap {}", clash.other);
        case ClashKind::Covered:
        case ClashKind::LegOnPin:
            return liesUnder(bench, clash) + instead(bench, *clash.hole);
        case ClashKind::LegThrough:
            return fmt::format("its leg in {} would run through {}", holeName(bench, *clash.hole), clash.other);
        case ClashKind::FlatThrough:
            return fmt::format("lying flat {} it would run through {}", wayOf(bench, clash), clash.other);
        case ClashKind::FlatOnPin:
            return fmt::format("lying flat it would cover {}, where {} is plugged in", holeName(bench, *clash.hole),
                               clash.other);
        case ClashKind::NoWay:
            return fmt::format("{} stands in the way {}, and there is no way round it", clash.other,
                               wayOf(bench, clash));
        case ClashKind::LegsTouch:
            return fmt::format("its bare leg in {} would touch that of {} in {}, which is another piece of metal",
                               holeName(bench, *clash.hole), clash.other,
                               holeOfLead(bench, clash.other, clash.otherLead));
    }
    return {};
}

/// As `other` is told.
std::string saidToOther(const Bench& bench, const Clash& clash) {
    switch (clash.kind) {
        case ClashKind::Bodies:
            return fmt::format("its body would overlap {}", clash.one);
        case ClashKind::Covered:
            return fmt::format("its body would cover {}, where {} is plugged in", holeName(bench, *clash.hole),
                               clash.one);
        case ClashKind::LegThrough:
            return fmt::format("the leg of {} in {} would run through it", clash.one, holeName(bench, *clash.hole));
        case ClashKind::FlatThrough:
            return fmt::format("{} lies flat there, {}", clash.one, wayOf(bench, clash));
        case ClashKind::FlatOnPin:
            return liesUnder(bench, clash) + instead(bench, *clash.hole);
        case ClashKind::NoWay:
            return fmt::format("{} would find no way round it {}", wireName(bench, clash), wayOf(bench, clash));
        case ClashKind::LegsTouch:
            return fmt::format("its bare leg in {} would touch that of {} in {}, which is another piece of metal",
                               holeOfLead(bench, clash.other, clash.otherLead), clash.one,
                               holeName(bench, *clash.hole));
        case ClashKind::LegOnPin:
            return fmt::format("its bare leg in {} would touch {} in {}, which is another piece of metal",
                               holeOfLead(bench, clash.other, clash.otherLead), clash.one,
                               holeName(bench, *clash.hole));
    }
    return {};
}

}  // namespace

std::string liesUnder(const Bench& bench, const Clash& clash) {
    const std::string hole = holeName(bench, *clash.hole);
    if (clash.kind == ClashKind::LegOnPin) return fmt::format("{} lies under a bare leg of {}", hole, clash.other);
    if (clash.kind == ClashKind::FlatOnPin) return fmt::format("{} lies under {}", hole, clash.one);
    return fmt::format("{} lies under {}", hole, clash.other);
}

std::string saidToHand(const Bench& bench, const Clash& clash, const std::string& mover) {
    return clash.one == mover ? saidToOne(bench, clash) : saidToOther(bench, clash);
}

}  // namespace tiepoint
