#include "ui/gesture/turning.h"

#include "core/edit/placement.h"
#include "core/edit/told.h"

namespace tiepoint::ui {

Point besideSelection(const Picture& picture) {
    for (const std::string& id : picture.marks.selected) {
        if (const int part = picture.bench().partIndex(id); part >= 0)
            return picture.table->parts[static_cast<std::size_t>(part)].pose.centre;
        if (const Jumper* jumper = picture.bench().findJumper(id))
            return endMm(picture.bench(), *picture.table, jumper->ends[0]);
    }
    return {};
}

void turnSelection(Hand& hand, int direction) {
    const auto bench = hand.document().bench();
    const Point at = besideSelection(hand.picture());
    Edit edit{"Turn", {}};
    std::vector<std::string> ids;
    for (const QString& name : hand.selection()) {
        const Part* part = bench->findPart(name.toStdString());
        if (!part) continue;
        const bool alone = hand.selection().size() == 1;
        Turned now = turnedRound(*bench, *part, direction);
        if (!now.part) return hand.flash(alone ? now.why : part->id + ": " + now.why, at);
        ids.push_back(part->id);
        edit.operations.emplace_back(ReplacePart{*std::move(now.part)});
    }
    if (ids.empty()) return hand.flash("only parts can be turned", at);
    edit.name = ids.size() == 1 ? "Turn " + ids.front() : "Turn parts";
    const auto after = apply(*bench, edit);
    if (!after) return hand.flash(after.error().message, at);
    if (const auto why = refusalOfChange(*bench, after->bench)) return hand.flash(*why, at);
    if (const auto why = hand.document().push(edit)) return hand.flash(why->toStdString(), at);
    hand.tell(toldOf(*hand.document().bench(), ids, "turned"));
}

}  // namespace tiepoint::ui
