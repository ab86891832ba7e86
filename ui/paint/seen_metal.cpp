// Wires, leads and cables as points in cells of a pitch.

#include "ui/paint/bench_painter.h"
#include "ui/paint/curve.h"
#include "ui/paint/tag_ground.h"

#include <algorithm>

namespace tiepoint::ui {
namespace {

constexpr double kMetalStepMm = 0.7, kMetalCellMm = kPitchMm, kMetalAroundMm = 5;
constexpr double kJumperReachMm = 1.5, kLegReachMm = 1.15, kCableReachMm = 1.9;
constexpr int kCableSteps = 80;

std::vector<Point> alongPath(const QPainterPath& path) {
    std::vector<Point> points;
    const Polyline line = Polyline::of(path);
    for (double gone = 0; gone < line.lengthMm(); gone += kMetalStepMm) points.push_back(fromQt(line.at(gone).at));
    return points;
}

std::vector<Point> straightPoints(Point from, Point to) {
    QPainterPath path(toQt(from));
    path.lineTo(toQt(to));
    return alongPath(path);
}

}  // namespace

SeenMetal::SeenMetal(const Picture& picture) : area_(picture.table->boardsMm) {
    area_ = {area_.left - kMetalAroundMm, area_.top - kMetalAroundMm, area_.width + 2 * kMetalAroundMm,
             area_.height + 2 * kMetalAroundMm};
    columns_ = static_cast<int>(area_.width / kMetalCellMm) + 1;
    rows_ = static_cast<int>(area_.height / kMetalCellMm) + 1;
    cells_.resize(cellAt(0, rows_));
    const Layout& layout = *picture.layout;
    for (int jumper = 0; jumper < static_cast<int>(picture.bench().jumpers.size()); ++jumper) {
        const int joint = layout.jumperJoints[static_cast<std::size_t>(jumper)][0];
        add(alongPath(jumperLine(picture, jumper)), kJumperReachMm, layout.joints[static_cast<std::size_t>(joint)].net);
    }
    for (int part = 0; part < static_cast<int>(picture.bench().parts.size()); ++part) {
        const PartPlace& place = picture.table->parts[static_cast<std::size_t>(part)];
        for (std::size_t lead = 0; lead < place.leadsMm.size(); ++lead) {
            const int net = layout.netOfLead[static_cast<std::size_t>(layout.leadIndex(part, static_cast<int>(lead)))];
            if (lead < place.cablesMm.size()) {
                std::vector<Point> cable;
                for (int i = 0; i <= kCableSteps; ++i)
                    cable.push_back(place.cablesMm[lead].at(static_cast<double>(i) / kCableSteps));
                add(cable, kCableReachMm, net);
            } else {
                add(straightPoints(place.leadsMm[lead], place.exitsMm[lead]), kLegReachMm, net);
            }
        }
    }
}

void SeenMetal::add(const std::vector<Point>& line, double reach, int net) {
    for (const Point at : line) {
        if (!area_.contains(at)) continue;
        const int column = static_cast<int>((at.x - area_.left) / kMetalCellMm);
        const int row = static_cast<int>((at.y - area_.top) / kMetalCellMm);
        cells_[cellAt(column, row)].push_back({at, reach, net});
    }
}

template <class Suits>
bool SeenMetal::any(Point ring, Suits suits) const {
    const int column = static_cast<int>((ring.x - area_.left) / kMetalCellMm);
    const int row = static_cast<int>((ring.y - area_.top) / kMetalCellMm);
    for (int y = std::max(0, row - 1); y <= std::min(rows_ - 1, row + 1); ++y) {
        for (int x = std::max(0, column - 1); x <= std::min(columns_ - 1, column + 1); ++x) {
            const auto& cell = cells_[cellAt(x, y)];
            if (std::any_of(cell.begin(), cell.end(),
                            [&](const Piece& piece) { return suits(piece) && distance(piece.at, ring) < piece.reach; }))
                return true;
        }
    }
    return false;
}

bool SeenMetal::isForeignAt(Point ring, int net) const {
    return any(ring, [net](const Piece& piece) { return piece.net != net; });
}

bool SeenMetal::isOwnAt(Point ring, int net) const {
    return any(ring, [net](const Piece& piece) { return piece.net == net; });
}

}  // namespace tiepoint::ui
