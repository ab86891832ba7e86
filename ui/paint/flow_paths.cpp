#include "ui/paint/flow_paths.h"

#include "core/snapshot/readings.h"
#include "ui/paint/bench_painter.h"
#include "ui/paint/board_back.h"
#include "ui/paint/part_scenes.h"
#include "ui/paint/shade.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace tiepoint::ui {
namespace {

constexpr double kGhostOpacity = 0.62, kOnLightOpacity = 0.8;
constexpr double kOnLightHalfMm = 1.9,
                 kGhostHalfMm = 1.6;  ///< where a mark lies wholly on the dome, or on the cap

double opacityOf(MarkLook look) {
    switch (look) {
        case MarkLook::Ghost:
            return kGhostOpacity;
        case MarkLook::OnLight:
            return kOnLightOpacity;
        case MarkLook::Cased:
        case MarkLook::Dot:
            break;
    }
    return 1;
}

MarkLook markLook(PathLook look) {
    if (look == PathLook::OnLight) return MarkLook::OnLight;
    return look == PathLook::Ghost ? MarkLook::Ghost : MarkLook::Cased;
}

double wrapped(double value, double period) {
    const double rest = std::fmod(value, period);
    return rest < 0 ? rest + period : rest;
}

}  // namespace

FlowPaths::FlowPaths(const Picture& picture) : placeCount_(static_cast<int>(picture.layout->joints.size())) {
    addPieces(picture);
    addParts(picture);
    if (picture.table->turned) covers_ = hiddenAreas(picture);
    directions_.assign(ways_.size(), 0);
    startMm_.assign(ways_.size(), 0);
    movedMm_.assign(ways_.size(), 0);
}

void FlowPaths::addPieces(const Picture& picture) {
    const Layout& layout = *picture.layout;
    const auto centre = [&](int joint) {
        return toQt(picture.seenAt(layout.holeAt(layout.joints[static_cast<std::size_t>(joint)].hole)));
    };
    for (int i = 0; i < static_cast<int>(layout.pieces.size()); ++i) {
        const Piece& piece = layout.pieces[static_cast<std::size_t>(i)];
        if (piece.kind == PieceKind::Bridge) continue;  // drawn with the part that it is inside of
        Way way;
        way.from = piece.from;
        way.to = piece.to;
        way.piece = i;
        if (piece.kind == PieceKind::Strip) {
            way.line = Polyline({centre(piece.from), centre(piece.to)});
            way.layer = Layer::UnderParts;
        } else {
            way.line = Polyline::of(jumperLine(picture, piece.owner));
        }
        ways_.push_back(std::move(way));
    }
}

void FlowPaths::addParts(const Picture& picture) {
    const Layout& layout = *picture.layout;
    for (int part = 0; part < static_cast<int>(picture.bench().parts.size()); ++part) {
        const PartScene scene = sceneOf(picture, part);
        const PackagePainter* painter = findPackagePainter(scene.part.kind->package->name);
        if (!painter) continue;
        const int leadCount = static_cast<int>(scene.part.kind->leads.size());
        int inner = 0;
        const auto place = [&](int node) {
            if (node < leadCount) return layout.jointOfLead[static_cast<std::size_t>(layout.leadIndex(part, node))];
            inner = std::max(inner, node - leadCount + 1);
            return placeCount_ + node - leadCount;
        };
        for (const PartPath& path : painter->paths(scene)) {
            Way way;
            way.line = Polyline::of(path.line);
            way.from = place(path.fromNode);
            way.to = place(path.toNode);
            for (const int lead : path.leads) way.leads.push_back(layout.leadIndex(part, lead));
            way.look = markLook(path.look);
            way.inner = painter->hasInside();
            const double length = way.line.lengthMm();
            const double half = way.look == MarkLook::OnLight ? kOnLightHalfMm : kGhostHalfMm;
            way.lookFromMm = length / 2 - half;
            way.lookToMm = length / 2 + half;
            ways_.push_back(std::move(way));
        }
        placeCount_ += inner;
    }
}

bool FlowPaths::isBehind(QPointF at) const {
    return std::any_of(covers_.begin(), covers_.end(), [at](const QRectF& board) { return board.contains(at); });
}

double FlowPaths::currentOf(const Way& way, const Snapshot& snapshot) const {
    if (way.piece >= 0) return snapshot.flowOfPiece(static_cast<std::size_t>(way.piece));
    double sum = 0;
    for (const int lead : way.leads) sum += snapshot.flowOfLead(static_cast<std::size_t>(lead));
    return sum;
}

void FlowPaths::advance(const Snapshot& snapshot, double fullScale, double phaseMm) {
    const double step = phaseMm - lastPhaseMm_;
    lastPhaseMm_ = phaseMm;
    if (step == 0) return;
    for (std::size_t i = 0; i < ways_.size(); ++i) {
        const double share = std::min(1.0, std::abs(currentOf(ways_[i], snapshot)) / fullScale);
        movedMm_[i] = wrapped(movedMm_[i] + step * share, kArrowSpacingMm);
    }
}

void FlowPaths::alignPhases(const Snapshot& snapshot, bool electrons) {
    std::vector<signed char> now(ways_.size(), 0);
    std::vector<double> current(ways_.size(), 0);
    for (std::size_t i = 0; i < ways_.size(); ++i) {
        current[i] = currentOf(ways_[i], snapshot);
        if (std::abs(current[i]) < kNoCurrentAmpere) continue;
        now[i] = static_cast<signed char>((current[i] > 0) != electrons ? 1 : -1);
    }
    if (now == directions_) return;
    directions_ = now;

    // Places in the order of the flow; one whose inflows are all known hands its way on to its outflows.
    const auto upstream = [&](std::size_t i) { return directions_[i] > 0 ? ways_[i].from : ways_[i].to; };
    const auto downstream = [&](std::size_t i) { return directions_[i] > 0 ? ways_[i].to : ways_[i].from; };
    std::vector<int> awaited(static_cast<std::size_t>(placeCount_), 0);
    std::vector<std::vector<std::size_t>> leaving(static_cast<std::size_t>(placeCount_));
    for (std::size_t i = 0; i < ways_.size(); ++i) {
        if (directions_[i] == 0) continue;
        ++awaited[static_cast<std::size_t>(downstream(i))];
        leaving[static_cast<std::size_t>(upstream(i))].push_back(i);
    }
    std::vector<double> wayMm(static_cast<std::size_t>(placeCount_), 0),
        leader(static_cast<std::size_t>(placeCount_), 0);
    std::vector<char> done(static_cast<std::size_t>(placeCount_), 0);
    std::vector<int> ready;
    const auto settle = [&](int place) {
        done[static_cast<std::size_t>(place)] = 1;
        ready.push_back(place);
        while (!ready.empty()) {
            const auto here = static_cast<std::size_t>(ready.back());
            ready.pop_back();
            for (const std::size_t i : leaving[here]) {
                startMm_[i] = wayMm[here];
                const auto next = static_cast<std::size_t>(downstream(i));
                if (std::abs(current[i]) > leader[next]) {
                    leader[next] = std::abs(current[i]);
                    wayMm[next] = wayMm[here] + ways_[i].line.lengthMm();
                }
                if (--awaited[next] == 0 && !done[next]) {
                    done[next] = 1;
                    ready.push_back(static_cast<int>(next));
                }
            }
        }
    };
    for (int place = 0; place < placeCount_; ++place) {
        if (awaited[static_cast<std::size_t>(place)] == 0 && !done[static_cast<std::size_t>(place)]) settle(place);
    }
    // What runs in a ring has no source: it starts anywhere.
    for (int place = 0; place < placeCount_; ++place) {
        if (!done[static_cast<std::size_t>(place)]) settle(place);
    }
}

void FlowPaths::marks(const Snapshot& snapshot, Arrows arrows, double fullScale, double phaseMm, Layer layer,
                      std::vector<ArrowMark>& out) {
    if (arrows == Arrows::Off) return;
    advance(snapshot, fullScale, phaseMm);
    alignPhases(snapshot, arrows == Arrows::Electrons);
    for (std::size_t i = 0; i < ways_.size(); ++i) {
        const Way& way = ways_[i];
        if (way.layer != layer || directions_[i] == 0) continue;
        const double share = std::min(1.0, std::abs(currentOf(way, snapshot)) / fullScale);
        const bool thread = share < kThreadShare;
        const double spacing = thread ? kDotSpacingMm : kArrowSpacingMm, length = way.line.lengthMm();
        ArrowMark mark;
        mark.breadthMm = arrowBreadthMm(share);
        mark.level = thread ? 0 : arrowLevel(share);
        for (double gone = wrapped(movedMm_[i] - startMm_[i], spacing); gone < length; gone += spacing) {
            const double along = directions_[i] > 0 ? gone : length - gone;
            const Place place = way.line.at(along);
            mark.at = {place.at.x(), place.at.y()};
            mark.angle = directions_[i] > 0 ? place.angle : place.angle + std::numbers::pi;
            mark.look = thread ? MarkLook::Dot : MarkLook::Cased;
            if (!thread && along >= way.lookFromMm && along <= way.lookToMm) mark.look = way.look;
            if (!thread && layer == Layer::OverParts && isBehind(place.at)) mark.look = MarkLook::Ghost;
            mark.opacity = opacityOf(mark.look);
            out.push_back(mark);
        }
    }
}

}  // namespace tiepoint::ui
