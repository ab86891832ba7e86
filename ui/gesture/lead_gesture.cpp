#include "ui/gesture/lead_gesture.h"

#include "core/edit/placement.h"
#include "ui/gesture/jumper_gesture.h"
#include "ui/gesture/selecting.h"

#include <fmt/format.h>

namespace tiepoint::ui {
namespace {

constexpr double kLeadReachMm = 2.0;
constexpr const char* kOutside = "no hole here: it goes back";

/// The place itself if the thing can be put so, else a free one of the same metal, or why there is none.
template <class Thing>
JumperAim placeOrNeighbour(const Picture& picture, const Thing& wanted, const JumperEnd& place) {
    if (!refusal(picture.bench(), wanted)) return {place, {}};
    Under there;
    if (const Hole* hole = std::get_if<Hole>(&place))
        there.hole = *hole;
    else
        there.socket = std::get<Socket>(place);
    return aimJumper(picture, there);
}

}  // namespace

void LeadGesture::showCable(const Part& part, Point to) {
    // The first lead of a supply or a meter is red and the other black, as in the shop.
    const auto lead = static_cast<std::size_t>(end_.index);
    const PartPlace& place = hand().picture().table->parts[static_cast<std::size_t>(bench().partIndex(part.id))];
    Marks& marks = hand().marks();
    marks.drawnFree = {place.exitsMm[lead], to};
    marks.drawnColour = lead == 0 ? 0 : 1;
}

LeadGesture::Aim LeadGesture::aimPart(const Pointer& pointer) {
    Marks& marks = hand().marks();
    Part part = *bench().findPart(end_.id);
    const bool cable = part.kind->package->reach == Reach::Flying;
    const auto hole = nearestHole(bench(), pointer.at, kLeadReachMm);
    if (!hole) {
        if (cable) showCable(part, pointer.at);
        return {std::nullopt, kOutside};
    }
    auto& lead = part.leads[static_cast<std::size_t>(end_.index)];
    lead = hole;
    const JumperAim free = cable ? placeOrNeighbour(hand().picture(), part, *hole) : JumperAim{*hole, {}};
    const Hole to = free.end ? std::get<Hole>(*free.end) : *hole;
    lead = to;
    marks.targets = {to};
    if (cable) {
        showCable(part, *holeMm(bench(), to));
    } else {
        marks.carried = part;
    }
    if (!free.end) return {std::nullopt, free.words};
    if (const auto why = refusal(bench(), part)) return {std::nullopt, *why};
    return {ReplacePart{part}, free.words};
}

LeadGesture::Aim LeadGesture::aimJumperEnd(const Pointer& pointer) {
    const Picture& picture = hand().picture();
    Marks& marks = hand().marks();
    Jumper jumper = *bench().findJumper(end_.id);
    const auto index = static_cast<std::size_t>(end_.index);
    const Under under = hand().under(pointer.at);
    const auto hole = nearestHole(bench(), pointer.at, kLeadReachMm);
    if (!under.socket && !hole) {
        marks.drawnFree = {endMm(bench(), *picture.table, jumper.ends[1 - index]), pointer.at};
        marks.drawnColour = jumper.colour;
        return {std::nullopt, kOutside};
    }
    const JumperEnd wanted = under.socket ? JumperEnd(*under.socket) : JumperEnd(*hole);
    jumper.ends[index] = wanted;
    const JumperAim free = placeOrNeighbour(picture, jumper, wanted);
    jumper.ends[index] = free.end.value_or(wanted);
    if (const Hole* to = std::get_if<Hole>(&jumper.ends[index])) marks.targets = {*to};
    marks.drawn = jumper;
    if (!free.end) return {std::nullopt, free.words};
    if (const auto why = refusal(bench(), jumper)) return {std::nullopt, *why};
    return {ReplaceJumper{jumper}, free.words};
}

void LeadGesture::move(const Pointer& pointer) {
    Marks& marks = hand().marks();
    hand().clearMarks();
    hand().setPale({end_.id});
    const Aim aimed = aim(pointer);
    marks.refused = !aimed.operation;
    marks.say = aimed.words;
    marks.sayAt = pointer.at;
    if (marks.drawn && aimed.operation) {
        const Picture& picture = hand().picture();
        const std::string instead = aimed.words.empty() ? std::string() : " \u2013 " + aimed.words;
        marks.say = fmt::format("{:.0f} mm", jumperLengthMm(endMm(bench(), *picture.table, marks.drawn->ends[0]),
                                                            endMm(bench(), *picture.table, marks.drawn->ends[1]))) +
                    instead;
    }
    hand().lightNets(netsOf(hand().picture(), marks.targets));
    hand().showMarks();
}

void LeadGesture::release(const Pointer& pointer) {
    finish();
    if (!pointer.dragged) {
        hand().clearMarks();
        return selectByClick(hand(), end_.id, pointer.modifiers);
    }
    const Aim aimed = aim(pointer);
    hand().clearMarks();
    if (!aimed.operation) return hand().flash(aimed.words, pointer.at);
    if (const auto why = hand().document().push({"Move an end of " + end_.id, {*aimed.operation}}))
        hand().flash(why->toStdString(), pointer.at);
}

}  // namespace tiepoint::ui
