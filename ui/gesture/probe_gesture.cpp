#include "ui/gesture/probe_gesture.h"

#include "core/bench/describe.h"
#include "core/edit/placement.h"
#include "core/snapshot/pinned_value.h"
#include "ui/gesture/selecting.h"

namespace tiepoint::ui {

std::optional<Hole> ProbeGesture::second(const Pointer& pointer) const {
    auto hole = nearestHole(bench(), hand().picture().table->seen(pointer.at));
    return hole && *hole != first_ ? hole : std::nullopt;
}

void ProbeGesture::move(const Pointer& pointer) {
    const Picture& picture = hand().picture();
    const auto other = second(pointer);
    Marks& marks = hand().marks();
    marks.probe = {picture.seenAt(first_), other ? picture.seenAt(*other) : pointer.at};
    marks.say = "to which hole?";
    marks.sayAt = pointer.at;
    if (other) {
        const PinnedReading reading{{}, VoltsBetween{first_, *other}, {}};
        marks.say = measurandInWords(bench(), reading.of);
        if (picture.snapshot) marks.say += ": " + pinnedText(*picture.snapshot, reading);
    }
    hand().lightNets(netsOf(picture, other ? std::vector<Hole>{first_, *other} : std::vector<Hole>{first_}));
    hand().showMarks();
}

void ProbeGesture::release(const Pointer& pointer) {
    const auto other = second(pointer);
    if (!other) return;  // not yet: it goes on until there is a second hole, or Escape
    finish();
    hand().clearMarks();
    if (const auto why = hand().document().push(pinEdit(bench(), VoltsBetween{first_, *other})))
        hand().flash(why->toStdString(), pointer.at);
}

}  // namespace tiepoint::ui
