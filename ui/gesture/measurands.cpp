#include "ui/gesture/measurands.h"

#include "core/edit/placement.h"

namespace tiepoint::ui {
namespace {

AmperesIn leadOf(const Bench& bench, const std::string& part, int lead) {
    return {part, bench.findPart(part)->kind->leads[static_cast<std::size_t>(lead)].name};
}

void addHole(const Bench& bench, const Hole& hole, std::vector<Measurand>& all) {
    all.emplace_back(VoltsAt{hole});
    const auto occupant = occupantOf(bench, hole);
    if (!occupant) return;
    if (occupant->jumper) {
        all.emplace_back(AmperesIn{occupant->id, {}});
        return;
    }
    all.emplace_back(leadOf(bench, occupant->id, occupant->lead));
}

/// The reading that is pinned as that id, a part, or a jumper.
void addThing(const Bench& bench, const std::string& id, std::vector<Measurand>& all) {
    if (const PinnedReading* reading = bench.findPinned(id)) all.emplace_back(reading->of);
    if (bench.findJumper(id)) all.emplace_back(AmperesIn{id, {}});
    if (bench.findPart(id)) all.emplace_back(WattsOf{id});
}

}  // namespace

std::vector<Measurand> measurandsOf(const Picture& picture, const Under& under) {
    const Bench& bench = picture.bench();
    std::vector<Measurand> all;
    if (!under.pinned.empty())
        addThing(bench, under.pinned, all);
    else if (!under.wire.empty())
        addThing(bench, under.wire, all);
    else if (under.socket)
        all.emplace_back(leadOf(bench, under.socket->part, under.socket->lead));
    else if (!under.body.empty())
        addThing(bench, under.body, all);
    else if (under.hole)
        addHole(bench, *under.hole, all);
    else if (under.lead)
        all.emplace_back(leadOf(bench, under.lead->id, under.lead->index));
    return all;
}

std::vector<Measurand> measurandsOf(const Picture& picture, const std::optional<Hole>& cursor) {
    std::vector<Measurand> all;
    const auto& selected = picture.marks.selected;
    if (selected.size() == 1) addThing(picture.bench(), selected.front(), all);
    if (cursor) addHole(picture.bench(), *cursor, all);
    return all;
}

}  // namespace tiepoint::ui
