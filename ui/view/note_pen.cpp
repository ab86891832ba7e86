#include "ui/view/note_pen.h"

#include "core/edit/placement.h"
#include "ui/paint/note_painter.h"

#include <algorithm>

namespace tiepoint::ui {
namespace {

constexpr double kWholeBenchMm = 1e6;

std::optional<Hole> firstHoleOf(const Part& part) {
    const auto lead = std::find_if(part.leads.begin(), part.leads.end(), [](const auto& l) { return l.has_value(); });
    return lead == part.leads.end() ? std::nullopt : *lead;
}

}  // namespace

std::optional<Hole> NotePen::holeMeant(QPointF pointer) const {
    if (picture_.marks.cursor) return picture_.marks.cursor;
    const auto& selected = picture_.marks.selected;
    const Part* part = selected.size() == 1 ? picture_.bench().findPart(selected.front()) : nullptr;
    if (auto hole = part ? firstHoleOf(*part) : std::nullopt) return hole;
    return nearestHole(picture_.bench(), picture_.table->seen(camera_.toMm(pointer)), kWholeBenchMm);
}

/// The selected note while the hand is where it was; the one in the cursor's hole or under the pointer; or none.
std::string NotePen::noteMeant(QPointF pointer, const Under& under) const {
    const auto& selected = picture_.marks.selected;
    const auto& cursor = picture_.marks.cursor;
    const bool isNote = selected.size() == 1 && picture_.bench().findNote(selected.front());
    if (isNote && cursor == cursorThen_ && pointer == pointerThen_) return selected.front();
    if (cursor) {
        const auto& notes = picture_.bench().notes;
        const auto here =
            std::find_if(notes.begin(), notes.end(), [&](const Note& note) { return note.at == *cursor; });
        return here == notes.end() ? std::string() : here->id;
    }
    const bool aside = under.note.empty() && !under.hole;
    return isNote && aside ? selected.front() : under.note;
}

void NotePen::followSelection(QPointF pointer) {
    cursorThen_ = picture_.marks.cursor;
    pointerThen_ = pointer;
}

void NotePen::begin(QPointF pointer, const Under& under) {
    if (const std::string note = noteMeant(pointer, under); !note.empty()) return edit(note);
    if (const auto hole = holeMeant(pointer)) box_.beginNew(*hole, camera_.fromMm(picture_.seenAt(*hole)).toPoint());
}

void NotePen::edit(const std::string& id) {
    if (const Note* note = picture_.bench().findNote(id))
        box_.beginEdit(
            id,
            camera_
                .fromMm(fromQt(noteFrame(picture_, static_cast<int>(note - picture_.bench().notes.data())).topLeft()))
                .toPoint());
}

}  // namespace tiepoint::ui
