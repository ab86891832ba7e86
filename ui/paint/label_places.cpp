#include "ui/paint/label_places.h"

#include "core/meter/meter.h"
#include "ui/paint/bench_painter.h"
#include "ui/paint/curve.h"
#include "ui/paint/net_marks.h"
#include "ui/paint/part_scenes.h"
#include "ui/paint/pinned_places.h"
#include "ui/paint/projecting.h"
#include "ui/paint/shade.h"
#include "ui/paint/used_numbers.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <set>

namespace tiepoint::ui {
namespace {

// Costs: what a label may least of all hide counts most. Areas in mm2, points one each.
constexpr double kOffStage = 20, kOverBody = 6, kOverLight = 18, kOverLabel = 12, kOverPoint = 0.8;
constexpr double kCellMm = 0.5, kAroundMm = 20;  ///< of the count of points
constexpr double kPointStepMm = 0.8;
constexpr double kRoomMm = 0.25;
constexpr double kLightRoomMm = 1.9;  ///< ink rays stand beside a light
constexpr double kIdGapMm = 0.35;
constexpr double kIdHeight = 1.95 / 1.7, kReadingHeight = 2.95 / 2.1;  ///< of a patch and a tag, in ems
constexpr double kIdPadMm = 0.35, kReadingPadMm = 0.75;

/// Of what two rectangles share. Asked some hundred thousand times for a bench, so it is spelt out.
double sharedArea(const QRectF& a, const QRectF& b) {
    const double width = std::min(a.right(), b.right()) - std::max(a.left(), b.left());
    if (width <= 0) return 0;
    return width * std::max(0.0, std::min(a.bottom(), b.bottom()) - std::max(a.top(), b.top()));
}

QRectF centred(QPointF at, QSizeF size) {
    return {at.x() - size.width() / 2, at.y() - size.height() / 2, size.width(), size.height()};
}

std::vector<Candidate> aroundBody(const PartScene& scene, QSizeF size, bool preferLeft) {
    const PackagePainter& look = *findPackagePainter(scene.part.kind->package->name);
    const double room = kIdGapMm + (scene.part.kind->emitsLight ? kLightRoomMm : 0.15);
    const QRectF body = look.body(scene).boundingRect().adjusted(-room, -room, room, room);
    const QPointF c = body.center();
    const double up = body.height() / 2 + size.height() / 2, side = body.width() / 2 + size.width() / 2;
    const bool standsUp = std::abs(std::sin(scene.place.pose.angle)) > std::numbers::sqrt2 / 2;
    const double along = 1.5, across = 0;
    const bool sideFirst = standsUp || preferLeft;
    return {{c + QPointF(0, -up), sideFirst ? along : across},
            {c + QPointF(0, up), sideFirst ? along + 0.5 : across + 0.5},
            {c + QPointF(-side, 0), sideFirst ? across : along},
            {c + QPointF(side, 0), sideFirst ? across + 0.4 : along + 0.4},
            {c + QPointF(-side, -up), along + 1.2},
            {c + QPointF(side, -up), along + 1.2},
            {c + QPointF(-side, up), along + 1.4},
            {c + QPointF(side, up), along + 1.4}};
}

Label placePartId(const Picture& picture, int part, Clearance& clearance) {
    const PartScene scene = sceneOf(picture, part);
    const PackagePainter& look = *findPackagePainter(scene.part.kind->package->name);
    QString text = QString::fromStdString(scene.part.id);
    QString beside = valueLabel(scene.part);
    if (showsInside(picture, part) && *look.contactWord(scene)) beside = QString::fromLatin1(look.contactWord(scene));
    if (!beside.isEmpty()) text += QStringLiteral("  ") + beside;
    const QSizeF size(textWidthMm(text, idLettering(picture, false)) + 2 * kIdPadMm, kIdHeight * picture.sizes.idMm);
    return settle(aroundBody(scene, size, scene.part.kind->hasCap), text, size, clearance);
}

Label placeJumperId(const Picture& picture, int jumper, Clearance& clearance) {
    const QString text = QString::fromStdString(picture.bench().jumpers[static_cast<std::size_t>(jumper)].id);
    const QSizeF size(textWidthMm(text, idLettering(picture, true)) + 2 * kIdPadMm, kIdHeight * picture.sizes.idMm);
    const Polyline line = Polyline::of(jumperLine(picture, jumper));
    std::vector<Candidate> candidates;
    for (const double share : {0.5, 0.62, 0.38, 0.75, 0.25}) {
        const Place place = line.at(share * line.lengthMm());
        const QPointF across(std::sin(place.angle), -std::cos(place.angle));
        const double away = 1.05 + std::abs(across.x()) * size.width() / 2 + std::abs(across.y()) * size.height() / 2;
        candidates.push_back({place.at + across * away, std::abs(share - 0.5) * 4});
        candidates.push_back({place.at - across * away, std::abs(share - 0.5) * 4 + 0.2});
    }
    Label label = settle(candidates, text, size, clearance);
    label.dim = true;
    return label;
}

/// Nets whose volts are worth a label: at least two things plugged in, one of them a part's lead.
bool isOfInterest(const Layout& layout, int net) {
    int things = 0;
    bool lead = false;
    for (const Joint& joint : layout.joints) {
        if (joint.net != net || joint.hub) continue;
        ++things;
        lead = lead || joint.lead >= 0;
    }
    return lead && things >= 2;
}

/// Nets that a closed contact makes one stand at one voltage: a label for the first of them is enough.
std::vector<int> firstOfJoined(const Snapshot& snapshot) {
    const Layout& layout = *snapshot.layout;
    std::vector<int> first(static_cast<std::size_t>(layout.netCount));
    for (int net = 0; net < layout.netCount; ++net) first[static_cast<std::size_t>(net)] = net;
    for (const ElementState& element : snapshot.solution.elements) {
        const Part& part = layout.bench->parts[static_cast<std::size_t>(element.part)];
        const ElementSpec& spec = part.kind->model[static_cast<std::size_t>(element.spec)];
        const bool contact = spec.reads.empty() && (spec.whenHeld || !spec.whenState.empty());
        const int from = part.kind->leadIndex(spec.from), to = part.kind->leadIndex(spec.to);
        if (!contact || part.kind->isSupply || !element.closed || from < 0 || to < 0) continue;
        const int a = first[static_cast<std::size_t>(
            layout.netOfLead[static_cast<std::size_t>(layout.leadIndex(element.part, from))])];
        const int b = first[static_cast<std::size_t>(
            layout.netOfLead[static_cast<std::size_t>(layout.leadIndex(element.part, to))])];
        std::replace(first.begin(), first.end(), std::max(a, b), std::min(a, b));
    }
    return first;
}

/// In a room tags are so large that beside their columns there often is no place, but on the free end of the metal there is.
void addOn(const StripSpan& span, QSizeF size, std::vector<Candidate>& candidates) {
    constexpr double kOnDislike = 1.6, kPerRow = 0.12, kFromNumberMm = 1;
    const double first = span.first.y() - kFromNumberMm + size.height() / 2,
                 last = span.last.y() + kFromNumberMm - size.height() / 2;
    for (int row = 0; row < kRowCount / 2; ++row) {
        const double y = std::min(first + row * kPitchMm, last);
        candidates.push_back({{span.first.x(), y}, kOnDislike + row * kPerRow});
        for (const double side : {1.0, -1.0})
            candidates.push_back({{span.first.x() + side * (1.35 + size.width() / 2), y}, kOnDislike + row * kPerRow});
    }
}

/// Along a rail, best towards its right; beside a column at each of its rows.
void addBeside(const StripSpan& span, QSizeF size, std::vector<Candidate>& candidates) {
    if (span.rail) {
        constexpr double kBestShare = 0.8, kStepMm = kPitchMm, kPerMm = 0.03;
        const double best = span.first.x() + (span.last.x() - span.first.x()) * kBestShare;
        for (double x = span.first.x() + size.width() / 2; x < span.last.x(); x += kStepMm) {
            candidates.push_back({{x, span.first.y()}, std::abs(x - best) * kPerMm});
        }
        return;
    }
    constexpr double kColumnDislike = 1, kPerRow = 0.12, kNumberRoomMm = 0.4;
    const double side = 1.35 + size.width() / 2;
    for (int row = 0; row < kRowCount / 2; ++row) {
        // The end rows give way to the column numbers beside them.
        const double y = span.first.y() + row * kPitchMm +
                         (row == 0                   ? kNumberRoomMm
                          : row == kRowCount / 2 - 1 ? -kNumberRoomMm
                                                     : 0);
        candidates.push_back({{span.first.x() + side, y}, kColumnDislike + row * kPerRow});
        candidates.push_back({{span.first.x() - side, y}, kColumnDislike + row * kPerRow + 0.1});
    }
}

/// Beside a rail at the edge of the boards there is place too, outside of it, where nothing runs.
void addOutside(const Rect& boards, const StripSpan& span, QSizeF size, std::vector<Candidate>& candidates) {
    constexpr double kOutsideDislike = 1.6, kPerMm = 0.02, kFromHolesMm = 1.35, kEdgeMm = 2 * kPitchMm;
    const double rail = span.first.y();
    const bool top = rail - boards.top < kEdgeMm, bottom = boards.top + boards.height - rail < kEdgeMm;
    if (!top && !bottom) return;  // another rail or row is between
    const double y = rail + (top ? -1 : 1) * (kFromHolesMm + size.height() / 2);
    for (double x = span.first.x() + size.width() / 2; x < span.last.x(); x += kPitchMm)
        candidates.push_back({{x, y}, kOutsideDislike + (span.last.x() - x) * kPerMm});
}

void addPlaces(const Picture& picture, const StripSpan& span, QSizeF size, std::vector<Candidate>& candidates) {
    addBeside(span, size, candidates);
    if (picture.sizes.numberMm == 0) return;
    if (span.rail)
        addOutside(picture.table->boardsMm, span, size, candidates);
    else
        addOn(span, size, candidates);
}

/// Where words have to be larger than the figures on a meter's own display, its reading stands beside it as well.
void placeMeterReadings(const Picture& picture, const Snapshot& live, Clearance& clearance,
                        std::vector<Label>& labels) {
    for (int part = 0; part < static_cast<int>(picture.bench().parts.size()); ++part) {
        const auto reading = meterReading(live, part);
        if (!reading || !reading->on) continue;
        const PackagePainter* look =
            findPackagePainter(picture.bench().parts[static_cast<std::size_t>(part)].kind->package->name);
        if (look == nullptr || look->figuresEmMm() >= picture.sizes.readingMm) continue;
        const QString text = QString::fromStdString(reading->text());
        const QSizeF size(textWidthMm(text, readingLettering(picture)) + 2 * kReadingPadMm,
                          kReadingHeight * picture.sizes.readingMm);
        labels.push_back(placeBesidePart(picture, part, text, size, clearance));
    }
}

}  // namespace

Clearance::PointCount::PointCount(const QRectF& area, const std::vector<QPointF>& points)
    : corner_(area.topLeft()),
      columns_(static_cast<int>(area.width() / kCellMm) + 1),
      rows_(static_cast<int>(area.height() / kCellMm) + 1),
      sums_(static_cast<std::size_t>((columns_ + 1) * (rows_ + 1)), 0) {
    const auto cell = [&](int column, int row) -> int& {
        return sums_[static_cast<std::size_t>(row * (columns_ + 1) + column)];
    };
    for (const QPointF& point : points) {
        const int column = static_cast<int>((point.x() - corner_.x()) / kCellMm);
        const int row = static_cast<int>((point.y() - corner_.y()) / kCellMm);
        if (column >= 0 && column < columns_ && row >= 0 && row < rows_) ++cell(column + 1, row + 1);
    }
    for (int row = 1; row <= rows_; ++row) {
        for (int column = 1; column <= columns_; ++column) {
            cell(column, row) += cell(column - 1, row) + cell(column, row - 1) - cell(column - 1, row - 1);
        }
    }
}

double Clearance::PointCount::upTo(double x, double y) const {
    const int column = std::clamp(static_cast<int>(std::lround((x - corner_.x()) / kCellMm)), 0, columns_);
    const int row = std::clamp(static_cast<int>(std::lround((y - corner_.y()) / kCellMm)), 0, rows_);
    return sums_[static_cast<std::size_t>(row * (columns_ + 1) + column)];
}

double Clearance::PointCount::within(const QRectF& f) const {
    return upTo(f.right(), f.bottom()) - upTo(f.left(), f.bottom()) - upTo(f.right(), f.top()) +
           upTo(f.left(), f.top());
}

Clearance::Clearance(const Picture& picture) {
    if (picture.sizes.numberMm > 0) {
        stage_ = circuitArea(picture);
        for (const UsedNumber& number : placeUsedNumbers(picture)) take(number.frame);
    }
    std::vector<QPointF> points;
    const auto addLine = [&](const QPainterPath& path) {
        const Polyline line = Polyline::of(path);
        for (double gone = 0; gone < line.lengthMm(); gone += kPointStepMm) points.push_back(line.at(gone).at);
    };
    for (int part = 0; part < static_cast<int>(picture.bench().parts.size()); ++part) {
        const PartScene scene = sceneOf(picture, part);
        const PackagePainter* look = findPackagePainter(scene.part.kind->package->name);
        if (!look) continue;
        bodies_.push_back({look->body(scene).boundingRect().adjusted(-kRoomMm, -kRoomMm, kRoomMm, kRoomMm),
                           scene.part.kind->emitsLight ? kOverLight : kOverBody});
        for (const PartPath& path : look->paths(scene)) addLine(path.line);
    }
    for (int jumper = 0; jumper < static_cast<int>(picture.bench().jumpers.size()); ++jumper)
        addLine(jumperLine(picture, jumper));
    const Layout& layout = *picture.layout;
    for (const Piece& piece : layout.pieces) {
        if (piece.kind != PieceKind::Strip) continue;
        const auto centre = [&](int joint) {
            return toQt(picture.seenAt(layout.holeAt(layout.joints[static_cast<std::size_t>(joint)].hole)));
        };
        QPainterPath line(centre(piece.from));
        line.lineTo(centre(piece.to));
        addLine(line);
    }
    const Rect all = picture.table->allMm;
    points_ =
        std::make_shared<const PointCount>(toQt(all).adjusted(-kAroundMm, -kAroundMm, kAroundMm, kAroundMm), points);
}

double Clearance::cost(const QRectF& frame) const {
    double cost = stage_.isNull() ? 0 : kOffStage * (frame.width() * frame.height() - sharedArea(stage_, frame));
    for (const Body& body : bodies_) cost += body.cost * sharedArea(body.frame, frame);
    for (const QRectF& label : labels_) cost += kOverLabel * sharedArea(label, frame);
    const QRectF roomy = frame.adjusted(-kRoomMm, -kRoomMm, kRoomMm, kRoomMm);
    cost += kOverPoint * points_->within(roomy);
    return cost;
}

Label settle(const std::vector<Candidate>& candidates, const QString& text, QSizeF size, Clearance& clearance) {
    QRectF best;
    double least = 1e30;
    for (const Candidate& candidate : candidates) {
        const QRectF frame = centred(candidate.centre, size);
        const double cost = candidate.dislike + clearance.cost(frame);
        if (cost < least) least = cost, best = frame;
    }
    clearance.take(best);
    return {best, text};
}

std::vector<Candidate> aroundBody(const Picture& picture, int part, QSizeF size) {
    return aroundBody(sceneOf(picture, part), size, false);
}

Label placeBesidePart(const Picture& picture, int part, const QString& text, QSizeF size, Clearance& clearance) {
    return settle(aroundBody(picture, part, size), text, size, clearance);
}

Label placeInNet(const Picture& picture, int net, const QString& text, QSizeF size, Clearance& clearance) {
    std::vector<Candidate> candidates;
    const auto spans = stripSpans(picture);
    for (std::size_t strip = 0; strip < spans.size(); ++strip) {
        if (picture.layout->netOfStrip[strip] == net) addPlaces(picture, spans[strip], size, candidates);
    }
    return candidates.empty() ? Label{} : settle(candidates, text, size, clearance);
}

void takePinned(const Picture& picture, Clearance& clearance) {
    if (!picture.pinned) return;
    for (const PinnedTag& tag : *picture.pinned) clearance.take(tag.frame);
}

void takePinnedEnds(const Picture& picture, Clearance& clearance) {
    if (!picture.pinned) return;
    for (const PinnedTag& tag : *picture.pinned)
        for (const TagEnd& end : tag.ends) clearance.take(endFrame(end));
}

std::vector<Label> placeIds(const Picture& picture, Clearance& clearance) {
    std::vector<Label> labels;
    for (int part = 0; part < static_cast<int>(picture.bench().parts.size()); ++part) {
        const PartKind& kind = *picture.bench().parts[static_cast<std::size_t>(part)].kind;
        if (kind.package->reach != Reach::Flying && findPackagePainter(kind.package->name))
            labels.push_back(placePartId(picture, part, clearance));
    }
    for (int jumper = 0; jumper < static_cast<int>(picture.bench().jumpers.size()); ++jumper)
        labels.push_back(placeJumperId(picture, jumper, clearance));
    return labels;
}

std::vector<Label> placeReadings(const Picture& picture, Clearance& clearance) {
    std::vector<Label> labels;
    const Snapshot* live = picture.live();
    if (!live) return labels;
    const Layout& layout = *picture.layout;
    const auto first = firstOfJoined(*live);
    const auto spans = stripSpans(picture);
    std::set<int> labelled;
    for (int net = 0; net < layout.netCount; ++net) {
        if (!isOfInterest(layout, net) || !labelled.insert(first[static_cast<std::size_t>(net)]).second) continue;
        const Figure volt = live->shown().volt(net);
        if (!volt.isKnown() && !picture.views.voltage) continue;
        const QString text = volt.isKnown() ? QString::fromStdString(volt.text()) : QStringLiteral("floating");
        const QSizeF size(textWidthMm(text, readingLettering(picture)) + 2 * kReadingPadMm,
                          kReadingHeight * picture.sizes.readingMm);
        std::vector<Candidate> candidates;
        for (std::size_t strip = 0; strip < spans.size(); ++strip) {
            if (first[static_cast<std::size_t>(layout.netOfStrip[strip])] == first[static_cast<std::size_t>(net)])
                addPlaces(picture, spans[strip], size, candidates);
        }
        if (!candidates.empty()) labels.push_back(settle(candidates, text, size, clearance));
    }
    placeMeterReadings(picture, *live, clearance, labels);
    return labels;
}

}  // namespace tiepoint::ui
