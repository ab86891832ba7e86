#include "ui/view/note_pen.h"

#include "core/edit/placement.h"

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
    if (const auto hole = part ? firstHoleOf(*part) : std::nullopt) return hole;
    return nearestHole(picture_.bench(), picture_.table->seen(camera_.toMm(pointer)), kWholeBenchMm);
}

void NotePen::begin(QPointF pointer) {
    const auto& selected = picture_.marks.selected;
    if (selected.size() == 1 && picture_.bench().findNote(selected.front())) return edit(selected.front());
    if (const auto hole = holeMeant(pointer)) box_.beginNew(*hole, camera_.fromMm(picture_.seenAt(*hole)).toPoint());
}

void NotePen::edit(const std::string& id) {
    if (const Note* note = picture_.bench().findNote(id))
        box_.beginEdit(id, camera_.fromMm(picture_.seenAt(note->at)).toPoint());
}

}  // namespace tiepoint::ui
