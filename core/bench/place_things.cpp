// Where everything lies. Parts in holes lie where their leads are; the rest is laid out on the table in the
// order of the bench, so that the same bench always looks the same.

#include "core/bench/cable_routes.h"
#include "core/bench/frame_grid.h"
#include "core/bench/resolve.h"
#include "core/bench/table.h"

#include <algorithm>
#include <cmath>

namespace tiepoint {
namespace {

constexpr double kSupplyGapMm = 23;      ///< from a supply's right edge to the boards: room for its leads to bow
constexpr double kSupplySpacingMm = 10;  ///< between supplies, and between instruments
constexpr double kInstrumentGapMm = 18;  ///< from the boards to an instrument at their right
constexpr double kLoosePartsGapMm = 12;  ///< from the boards down to parts that are in no hole
constexpr double kLooseSpacingMm = 6;
constexpr double kLeastRowMm = 80;        ///< loose parts stand at least so far abreast
constexpr double kHangingLeadMm = 12;     ///< how far a loose lead of a box reaches out ...
constexpr double kBelowInstrumentMm = 4;  ///< room under an instrument, into which its test leads may sag
constexpr double kHangingDropMm = 6;      ///< ... and down

Rect united(const Rect& a, const Rect& b) {
    const double left = std::min(a.left, b.left), top = std::min(a.top, b.top);
    return {left, top, std::max(a.right(), b.right()) - left, std::max(a.bottom(), b.bottom()) - top};
}

Rect united(const Rect& a, Point p) { return united(a, Rect{p.x, p.y, 0, 0}); }

Point turnedBy(Point p, double angle) {
    const double c = std::cos(angle), s = std::sin(angle);
    return {c * p.x - s * p.y, s * p.x + c * p.y};
}

Rect boundsOf(const Outline& body) {
    if (body.shape == BodyShape::Round) {
        const double r = body.halfLength;
        return {body.centre.x - r, body.centre.y - r, 2 * r, 2 * r};
    }
    const double c = std::abs(std::cos(body.angle)), s = std::abs(std::sin(body.angle));
    const Point half{c * body.halfLength + s * body.halfWidth, s * body.halfLength + c * body.halfWidth};
    return {body.centre.x - half.x, body.centre.y - half.y, 2 * half.x, 2 * half.y};
}

/// The point of a body that is nearest to a lead's tip: there the lead comes out.
Point exitTowards(const Outline& body, Point tip) {
    const Point offset = tip - body.centre;
    if (body.shape == BodyShape::Round) {
        const double away = length(offset);
        return away <= body.halfLength ? tip : body.centre + offset * (body.halfLength / away);
    }
    const Point local = turnedBy(offset, -body.angle);
    const Point inside{std::clamp(local.x, -body.halfLength, body.halfLength),
                       std::clamp(local.y, -body.halfWidth, body.halfWidth)};
    return body.centre + turnedBy(inside, body.angle);
}

Rect boundsOf(const PartPlace& place) {
    Rect bounds = boundsOf(place.pose.body);
    for (const Point lead : place.leadsMm) bounds = united(bounds, lead);
    return bounds;
}

/// Tips of the leads of a part as it comes from the tray, around its body's middle.
std::vector<Point> restingLeads(const Package& package) {
    if (package.reach == Reach::Bending) {
        const double half = package.defaultSpan * kPitchMm / 2;
        return {{-half, 0}, {half, 0}};
    }
    std::vector<std::optional<Point>> places;
    for (const Point leg : package.footprint) places.emplace_back(leg * kPitchMm);
    const auto pose = poseOf(package, places);
    std::vector<Point> tips;
    tips.reserve(places.size());
    for (const auto& place : places) tips.push_back(*place - pose->centre);
    return tips;
}

void findExits(PartPlace& place) {
    place.exitsMm.clear();
    for (const Point tip : place.leadsMm) place.exitsMm.push_back(exitTowards(place.pose.body, tip));
}

/// A part with at least one lead in a hole; leads that hang lie where the body's pose puts them.
PartPlace placeInHoles(const Package& package, const std::vector<std::optional<Point>>& holes) {
    PartPlace place;
    place.pose = *poseOf(package, holes);
    std::vector<Point> resting = restingLeads(package);
    for (std::size_t i = 0; i < holes.size(); ++i) {
        place.leadsMm.push_back(holes[i] ? *holes[i] : place.pose.centre + turnedBy(resting[i], place.pose.angle));
    }
    findExits(place);
    return place;
}

/// A part that lies on the table, its body's middle at 0,0.
PartPlace placeLoose(const Package& package) {
    PartPlace place;
    place.pose.body = {package.shape, {}, 0, package.bodyLengthMm / 2, package.bodyWidthMm / 2};
    place.leadsMm = restingLeads(package);
    findExits(place);
    return place;
}

void moveBy(PartPlace& place, Point by) {
    place.pose.centre = place.pose.centre + by;
    place.pose.body.centre = place.pose.body.centre + by;
    for (Point& lead : place.leadsMm) lead = lead + by;
    for (Point& exit : place.exitsMm) exit = exit + by;
}

/// Lays out one table.
class Arranger {
public:
    explicit Arranger(const Bench& bench) : bench_(bench) {
        table_.parts.resize(bench.parts.size());
        findBoards();
        placePartsInHoles();
        findBoxesPutByHand();
        placeSupplies();
        placeInstruments();
        placeLooseParts();
        shortenHangingLeads();
        table_.allMm = table_.boardsMm;
        for (const PartPlace& place : table_.parts) table_.allMm = united(table_.allMm, boundsOf(place));
        for (const int part : instruments_) {
            const Outline& body = table_.parts[part].pose.body;
            table_.allMm = united(table_.allMm, body.centre + Point{0, body.halfWidth + kBelowInstrumentMm});
        }
    }

    Table take() { return std::move(table_); }

private:
    const Package& packageOf(int part) const { return tiepoint::packageOf(bench_.parts[part]); }

    void findBoards() {
        if (bench_.boards.empty()) return;
        table_.boardsMm = bench_.boards[0].frameMm();
        for (const Board& board : bench_.boards) table_.boardsMm = united(table_.boardsMm, board.frameMm());
    }

    void placePartsInHoles() {
        for (int i = 0; i < static_cast<int>(bench_.parts.size()); ++i) {
            const auto holes = leadHolesMm(bench_, bench_.parts[i]);
            const bool inHole = std::any_of(holes.begin(), holes.end(), [](const auto& hole) { return hole; });
            if (bench_.parts[i].at && standsOnTable(bench_.parts[i])) {
                const Rect box = boxMm(bench_.parts[i]);
                standAt(i, {box.left, box.top});
            } else if (packageOf(i).reach == Reach::Flying) {
                (packageOf(i).rightOfBoards ? instruments_ : supplies_).push_back(i);
            } else if (inHole) {
                table_.parts[i] = placeInHoles(packageOf(i), holes);
            } else {
                loose_.push_back(i);
            }
        }
    }

    /// A box stands there with its top left corner, its sockets towards the boards; its leads run to their holes.
    void standAt(int index, Point corner) {
        const Part& part = bench_.parts[index];
        const Package& package = packageOf(index);
        const Point half{package.bodyLengthMm / 2, package.bodyWidthMm / 2};
        const auto holes = leadHolesMm(bench_, part);
        PartPlace& place = table_.parts[index];
        place.pose.centre = corner + half;
        place.pose.body = {package.shape, place.pose.centre, 0, half.x, half.y};
        const bool atRight = place.pose.centre.x > table_.boardsMm.left + table_.boardsMm.width / 2;
        place.mirrored = atRight != package.rightOfBoards;
        const double out = outwardOf(package, place);
        for (std::size_t i = 0; i < holes.size(); ++i) {
            const Point inBox = package.footprint[i];
            const Point exit = corner + Point{place.mirrored ? package.bodyLengthMm - inBox.x : inBox.x, inBox.y};
            const Point hanging{place.pose.centre.x + out * (half.x + kHangingLeadMm), exit.y + kHangingDropMm};
            const bool socket = part.kind->leads[i].socket;
            place.exitsMm.push_back(exit);
            place.leadsMm.push_back(socket ? exit : holes[i].value_or(hanging));
        }
    }

    void findBoxesPutByHand() {
        for (const Part& part : bench_.parts) {
            if (!part.at || !standsOnTable(part)) continue;
            const Rect box = boxMm(part);
            byHand_.add(box.left, box.right(), box);
        }
        byHand_.sort();
    }

    /// A box put by hand that a frame comes too near to, or null.
    const Rect* inWayOf(const Rect& frame, double roomMm) const {
        const Rect wide{frame.left - roomMm, frame.top - roomMm, frame.width + 2 * roomMm, frame.height + 2 * roomMm};
        const Rect* found = nullptr;
        byHand_.within(wide.left, wide.right(), [&](const Rect& box) {
            if (!found && overlap(wide, box)) found = &box;
        });
        return found;
    }

    /// What stands in one column, and how much room it takes.
    struct Column {
        std::vector<int> parts;
        double width = 0, height = 0;
    };

    /// Columns as high as the boards, but never without a part.
    std::vector<Column> columnsOf(const std::vector<int>& parts) const {
        std::vector<Column> columns;
        for (const int part : parts) {
            const Package& package = packageOf(part);
            const bool fits = !columns.empty() &&
                              columns.back().height + kSupplySpacingMm + package.bodyWidthMm <= table_.boardsMm.height;
            if (!fits) columns.emplace_back();
            Column& column = columns.back();
            column.height += (fits ? kSupplySpacingMm : 0) + package.bodyWidthMm;
            column.width = std::max(column.width, package.bodyLengthMm);
            column.parts.push_back(part);
        }
        return columns;
    }

    /// From right to left.
    void placeSupplies() {
        double right = table_.boardsMm.left - kSupplyGapMm;
        for (const Column& column : columnsOf(supplies_)) {
            while (const Rect* box = inWayOf({right - column.width, topOf(column), column.width, column.height}, 0))
                right = box->left - kSupplySpacingMm;
            placeColumn(column, [&](const Package& package) { return right - package.bodyLengthMm; });
            right -= column.width + kSupplySpacingMm;
        }
    }

    /// From left to right.
    void placeInstruments() {
        double left = table_.boardsMm.right() + kInstrumentGapMm;
        for (const Column& column : columnsOf(instruments_)) {
            while (const Rect* box = inWayOf({left, topOf(column), column.width, column.height}, 0))
                left = box->right() + kSupplySpacingMm;
            placeColumn(column, [&](const Package&) { return left; });
            left += column.width + kSupplySpacingMm;
        }
    }

    /// Centred on the boards.
    double topOf(const Column& column) const {
        return table_.boardsMm.top + (table_.boardsMm.height - column.height) / 2;
    }

    template <class Left>
    void placeColumn(const Column& column, Left left) {
        double top = topOf(column);
        for (const int part : column.parts) {
            standAt(part, {left(packageOf(part)), top});
            top += packageOf(part).bodyWidthMm + kSupplySpacingMm;
        }
    }

    /// A loose lead that would end on another box ends just beside its own.
    void shortenHangingLeads() {
        constexpr std::size_t kMostBoxesLooked = 60;
        std::vector<int> boxes;
        for (int i = 0; i < std::ssize(bench_.parts); ++i) {
            if (standsOnTable(bench_.parts[i])) boxes.push_back(i);
        }
        if (boxes.size() > kMostBoxesLooked) return;
        for (const int part : boxes) {
            PartPlace& place = table_.parts[part];
            const double out = outwardOf(packageOf(part), place);
            for (std::size_t i = 0; i < place.leadsMm.size(); ++i) {
                const bool hangs = !bench_.parts[part].leads[i] && !bench_.parts[part].kind->leads[i].socket;
                if (hangs && isOnAnother(boxes, part, place.leadsMm[i]))
                    place.leadsMm[i].x -= out * (kHangingLeadMm - kSupplySpacingMm / 2);
            }
        }
    }

    bool isOnAnother(const std::vector<int>& boxes, int part, Point at) const {
        return std::any_of(boxes.begin(), boxes.end(),
                           [&](int other) { return other != part && frameOf(table_.parts[other]).contains(at); });
    }

    void placeLooseParts() {
        const double left = table_.boardsMm.left;
        const double rightmost = left + std::max(table_.boardsMm.width, kLeastRowMm);
        double x = left, top = table_.boardsMm.bottom() + kLoosePartsGapMm, rowHeight = 0;
        for (const int part : loose_) {
            PartPlace place = placeLoose(packageOf(part));
            const Rect bounds = boundsOf(place);
            while (const Rect* box = inWayOf({x, top, bounds.width, bounds.height}, kLooseSpacingMm)) {
                x = box->right() + 2 * kLooseSpacingMm;
                rowHeight = std::max(rowHeight, bounds.height);
                if (x + bounds.width <= rightmost) continue;
                x = left;
                top += rowHeight + kLooseSpacingMm;
                rowHeight = 0;
            }
            if (x > left && x + bounds.width > rightmost) {
                x = left;
                top += rowHeight + kLooseSpacingMm;
                rowHeight = 0;
            }
            moveBy(place, {x - bounds.left, top - bounds.top});
            x += bounds.width + kLooseSpacingMm;
            rowHeight = std::max(rowHeight, bounds.height);
            table_.parts[part] = std::move(place);
        }
    }

    const Bench& bench_;
    Table table_;
    std::vector<int> supplies_, instruments_, loose_;
    InOrder<Rect> byHand_;
};

}  // namespace

Table placeThings(const Bench& bench) { return Arranger(bench).take(); }

}  // namespace tiepoint
