#include "ui/gesture/jumper_gesture.h"

#include "core/edit/clashes.h"
#include "core/edit/holes.h"
#include "core/edit/placement.h"
#include "ui/gesture/selecting.h"

#include <fmt/format.h>

#include <algorithm>

namespace tiepoint::ui {
namespace {

enum RailColour { kRed = 0, kBlack = 1, kFirstOther = 2 };

bool isSocketTaken(const Bench& bench, const Socket& socket) {
    const JumperEnd wanted = socket;
    return std::any_of(bench.jumpers.begin(), bench.jumpers.end(),
                       [&](const Jumper& j) { return j.ends[0] == wanted || j.ends[1] == wanted; });
}

std::string socketName(const Bench& bench, const Socket& socket) {
    return socket.part + "." + bench.findPart(socket.part)->kind->leads[static_cast<std::size_t>(socket.lead)].name;
}

/// A socket, or a free one that the part joins to it inside.
JumperAim aimSocket(const Bench& bench, const Socket& socket) {
    if (!isSocketTaken(bench, socket)) return {socket, {}};
    const std::string taken = socketName(bench, socket);
    for (const auto& group : bench.findPart(socket.part)->kind->joined) {
        if (std::find(group.begin(), group.end(), socket.lead) == group.end()) continue;
        for (const int lead : group) {
            const Socket other{socket.part, lead};
            if (!isSocketTaken(bench, other))
                return {other, fmt::format("{} is taken; {} is the same metal", taken, socketName(bench, other))};
        }
    }
    return {std::nullopt, fmt::format("{} is taken", taken)};
}

JumperAim aimHole(const Bench& bench, const Hole& hole) {
    const Occupancy around(bench);
    const auto why = whyNotFree(around, hole);
    if (!why) return {hole, {}};
    if (const auto free = nearestFreeInStrip(around, hole))
        return {*free, fmt::format("{}; {} is the same metal", *why, holeName(bench, *free))};
    return {std::nullopt, fmt::format("{}, and no other hole of its metal is free", *why)};
}

const Hole* plusOrMinus(const JumperEnd& end, Line first, Line second) {
    const Hole* hole = std::get_if<Hole>(&end);
    return hole && (hole->line == first || hole->line == second) ? hole : nullptr;
}

int nextColour(const Bench& bench) {
    const auto others = std::count_if(bench.jumpers.begin(), bench.jumpers.end(),
                                      [](const Jumper& j) { return j.colour >= kFirstOther; });
    const int choices = static_cast<int>(jumperColours().size()) - kFirstOther;
    return kFirstOther + static_cast<int>(others) % choices;
}

}  // namespace

JumperAim aimJumper(const Picture& picture, const Under& under) {
    const Bench& bench = picture.bench();
    if (under.socket) return aimSocket(bench, *under.socket);
    if (under.lead) {
        const Part& part = *bench.findPart(under.lead->id);
        const auto lead = static_cast<std::size_t>(under.lead->index);
        if (part.leads[lead]) return aimHole(bench, *part.leads[lead]);
        return {std::nullopt, fmt::format("{} of {} is in no hole yet", part.kind->leads[lead].name, part.id)};
    }
    if (under.hole) return aimHole(bench, *under.hole);
    return {std::nullopt, "let go over a hole"};
}

int jumperColourFor(const Hand& hand, const JumperEnd& a, const JumperEnd& b) {
    for (const JumperEnd* end : {&a, &b}) {
        if (plusOrMinus(*end, Line::TopPlus, Line::BottomPlus)) return kRed;
        if (plusOrMinus(*end, Line::TopMinus, Line::BottomMinus)) return kBlack;
    }
    return hand.chosenJumperColour().value_or(nextColour(hand.picture().bench()));
}

JumperGesture::JumperGesture(Hand& hand, const Under& under) : Gesture(hand), under_(under) {}

JumperGesture::JumperGesture(Hand& hand, int colour) : Gesture(hand), colour_(colour), fromTray_(true) {}

void JumperGesture::begin(const JumperAim& aim) {
    start_ = aim.end;
    startWords_ = aim.words;
}

void JumperGesture::press(const Pointer& pointer) {
    if (fromTray_) return show(pointer);
    begin(aimJumper(hand().picture(), under_));
}

void JumperGesture::move(const Pointer& pointer) { show(pointer); }

void JumperGesture::say(const std::string& words, const Pointer& pointer, bool refused) {
    Marks& marks = hand().marks();
    marks.say = words;
    marks.sayAt = pointer.at;
    marks.refused = refused;
    hand().showMarks();
}

Jumper JumperGesture::jumperTo(const JumperEnd& end) const {
    Jumper jumper;
    jumper.id = freeId(bench(), "W");
    jumper.ends = {*start_, end};
    jumper.colour = colour_.value_or(jumperColourFor(hand(), *start_, end));
    return jumper;
}

void JumperGesture::show(const Pointer& pointer) {
    const Picture& picture = hand().picture();
    const JumperAim aim = aimJumper(picture, hand().under(pointer.at));
    Marks& marks = hand().marks();
    marks.targets.clear();
    marks.drawn.reset();
    marks.drawnFree.reset();
    hand().setAtPointer(std::nullopt, fromTray_ && !start_ ? colour_ : std::nullopt);
    if (start_) {
        if (const Hole* hole = std::get_if<Hole>(&*start_)) marks.targets.push_back(*hole);
    }
    if (aim.end) {
        if (const Hole* hole = std::get_if<Hole>(&*aim.end)) marks.targets.push_back(*hole);
    }
    hand().lightNets(netsOf(picture, marks.targets));
    if (!start_) {
        if (!fromTray_) return say(startWords_, pointer, true);
        return say(aim.end && aim.words.empty() ? "the first end goes here" : aim.words, pointer,
                   !aim.end && under_.hole);
    }

    const Point from = endMm(bench(), *picture.table, *start_);
    std::string words = startWords_;
    bool refused = !aim.end;
    Point to = pointer.at;
    if (aim.end) {
        to = endMm(bench(), *picture.table, *aim.end);
        marks.drawn = jumperTo(*aim.end);
        if (const auto why = refusal(bench(), *marks.drawn)) {
            refused = true;
            words = *why;
        } else if (!aim.words.empty()) {
            words = aim.words;
        }
    } else {
        words = aim.words;
        marks.drawnFree = {from, pointer.at};
        marks.drawnColour = colour_.value_or(jumperColourFor(hand(), *start_, *start_));
    }
    const std::string length = fmt::format("{:.0f} mm", jumperLengthMm(from, to));
    say(words.empty() ? length : length + " \u2013 " + words, pointer, refused);
}

void JumperGesture::connectTo(const Pointer& pointer) {
    const JumperAim aim = aimJumper(hand().picture(), hand().under(pointer.at));
    hand().clearMarks();
    finish();
    if (!aim.end) return hand().flash(aim.words, pointer.at);
    const Jumper jumper = jumperTo(*aim.end);
    if (const auto why = refusal(bench(), jumper)) return hand().flash(*why, pointer.at);
    if (const auto why = hand().document().push({"Jumper " + jumper.id, {AddJumper{jumper}}}))
        hand().flash(why->toStdString(), pointer.at);
}

void JumperGesture::release(const Pointer& pointer) {
    if (!fromTray_ && !pointer.dragged) {
        // No drag: a click on whatever is plugged in there.
        std::string id = under_.thing();
        if (id.empty() && under_.hole) {
            if (const auto occupant = occupantOf(bench(), *under_.hole)) id = occupant->id;
        }
        hand().clearMarks();
        selectByClick(hand(), id, pointer.modifiers);
        return finish();
    }
    if (start_) return connectTo(pointer);
    if (!fromTray_) {
        hand().clearMarks();
        hand().flash(startWords_, pointer.at);
        return finish();
    }
    const JumperAim aim = aimJumper(hand().picture(), hand().under(pointer.at));
    if (aim.end) begin(aim);  // the second end comes by a click, or by the end of a second drag
    if (aim.end) show(pointer);
}

void JumperGesture::cancel() {
    hand().clearMarks();
    hand().setAtPointer(std::nullopt, std::nullopt);
}

}  // namespace tiepoint::ui
