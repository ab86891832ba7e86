#include "core/edit/boxes.h"

#include "core/bench/cable_routes.h"
#include "core/bench/frame_grid.h"

#include <fmt/format.h>

#include <cassert>
#include <cmath>

namespace tiepoint {
namespace {

constexpr double kStepsOfPitch = 2;

Error wouldStandOn(const std::string& id, const std::string& what) {
    return {ErrorKind::Placement, fmt::format("{} would stand on {}", id, what), {}, {}};
}

}  // namespace

Point boxLandsAt(Point cornerMm) {
    const auto step = [](double mm) { return std::round(mm / kPitchMm * kStepsOfPitch) / kStepsOfPitch; };
    return {step(cornerMm.x), step(cornerMm.y)};
}

Result<Edit> moveBoxEdit(const Bench& bench, const std::string& id, Point at) {
    const Part* part = bench.findPart(id);
    assert(part && standsOnTable(*part));
    Part moved = *part;
    moved.at = at;
    const Rect box = boxMm(moved);
    for (const Board& board : bench.boards) {
        if (overlap(box, board.frameMm())) return wouldStandOn(id, "board " + board.id);
    }
    const Table before = placeThings(bench);
    Bench after = bench;
    after.parts[bench.partIndex(id)] = moved;
    const Table then = placeThings(after);
    Edit edit{"Move " + id, {ReplacePart{moved}}};
    for (std::size_t i = 0; i < bench.parts.size(); ++i) {
        const Part& other = bench.parts[i];
        if (other.id == id || !standsOnTable(other)) continue;
        const Rect frame = frameOf(before.parts[i]);
        if (overlap(box, frame)) return wouldStandOn(id, other.id);
        if (other.at || frame == frameOf(then.parts[i])) continue;
        Part stays = other;
        stays.at = Point{frame.left / kPitchMm, frame.top / kPitchMm};
        edit.operations.emplace_back(ReplacePart{std::move(stays)});
    }
    return edit;
}

Edit boxHomeEdit(const Bench& bench, const std::string& id) {
    Part home = *bench.findPart(id);
    home.at.reset();
    return {"Put " + id + " beside the boards", {ReplacePart{std::move(home)}}};
}

}  // namespace tiepoint
