#include "ui/paint/label_places.h"

#include "core/meter/meter.h"
#include "ui/paint/curve.h"
#include "ui/paint/grid_index.h"
#include "ui/paint/net_marks.h"
#include "ui/paint/part_scenes.h"
#include "ui/paint/pinned_places.h"
#include "ui/paint/shade.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <numbers>
#include <utility>

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

std::vector<Candidate> aroundPart(const WordGround& ground, int part, QSizeF size, bool preferLeft) {
    const PartSeen& seen = ground.parts[static_cast<std::size_t>(part)];
    const double room = kIdGapMm + (seen.part.kind->emitsLight ? kLightRoomMm : 0.15);
    const QRectF body = toQt(ground.bodies[static_cast<std::size_t>(part)]).adjusted(-room, -room, room, room);
    const QPointF c = body.center();
    const double up = body.height() / 2 + size.height() / 2, side = body.width() / 2 + size.width() / 2;
    const bool standsUp = std::abs(std::sin(seen.place.pose.angle)) > std::numbers::sqrt2 / 2;
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

QString idOfPart(const Picture& picture, int part) {
    const PartScene scene = sceneOf(picture, part);
    const PackagePainter& look = *findPackagePainter(scene.part.kind->package->name);
    const QString text = QString::fromStdString(scene.part.id);
    QString beside = valueLabel(scene.part);
    if (showsInside(picture, part) && *look.contactWord(scene)) beside = QString::fromLatin1(look.contactWord(scene));
    return beside.isEmpty() ? text : text + QStringLiteral("  ") + beside;
}

QSizeF idSize(const QString& text, const WordSizes& sizes, bool dim) {
    return {textWidthMm(text, idLettering(sizes, dim)) + 2 * kIdPadMm, kIdHeight * sizes.idMm};
}

Label placePartId(const IdWords& words, Clearance& clearance) {
    const WordGround& ground = clearance.ground();
    const QSizeF size = idSize(words.text, ground.sizes, false);
    const bool hasCap = ground.parts[static_cast<std::size_t>(words.index)].part.kind->hasCap;
    return settle(aroundPart(ground, words.index, size, hasCap), words.text, size, clearance);
}

Label placeJumperId(const IdWords& words, Clearance& clearance) {
    const WordGround& ground = clearance.ground();
    const QSizeF size = idSize(words.text, ground.sizes, true);
    const Polyline line = Polyline::of(ground.jumpers[static_cast<std::size_t>(words.index)].cubic().path());
    std::vector<Candidate> candidates;
    for (const double share : {0.5, 0.62, 0.38, 0.75, 0.25}) {
        const Place place = line.at(share * line.lengthMm());
        const QPointF across(std::sin(place.angle), -std::cos(place.angle));
        const double away = 1.05 + std::abs(across.x()) * size.width() / 2 + std::abs(across.y()) * size.height() / 2;
        candidates.push_back({place.at + across * away, std::abs(share - 0.5) * 4});
        candidates.push_back({place.at - across * away, std::abs(share - 0.5) * 4 + 0.2});
    }
    Label label = settle(candidates, words.text, size, clearance);
    label.dim = true;
    return label;
}

/// Nets whose volts are worth a label: at least two things plugged in, one of them a part's lead.
std::vector<char> netsOfInterest(const Layout& layout) {
    std::vector<int> things(static_cast<std::size_t>(layout.netCount), 0);
    std::vector<char> lead(things.size(), 0);
    for (const Joint& joint : layout.joints) {
        if (joint.net < 0 || joint.hub) continue;
        const auto net = static_cast<std::size_t>(joint.net);
        ++things[net];
        if (joint.lead >= 0) lead[net] = 1;
    }
    for (std::size_t net = 0; net < lead.size(); ++net) lead[net] = lead[net] && things[net] >= 2;
    return lead;
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
void addOn(const StripPlace& span, QSizeF size, std::vector<Candidate>& candidates) {
    constexpr double kOnDislike = 1.6, kPerRow = 0.12, kFromNumberMm = 1;
    const double first = span.first.y - kFromNumberMm + size.height() / 2,
                 last = span.last.y + kFromNumberMm - size.height() / 2;
    for (int row = 0; row < kRowCount / 2; ++row) {
        const double y = std::min(first + row * kPitchMm, last);
        candidates.push_back({{span.first.x, y}, kOnDislike + row * kPerRow});
        for (const double side : {1.0, -1.0})
            candidates.push_back({{span.first.x + side * (1.35 + size.width() / 2), y}, kOnDislike + row * kPerRow});
    }
}

/// Along a rail, best towards its right; beside a column at each of its rows.
void addBeside(const StripPlace& span, QSizeF size, std::vector<Candidate>& candidates) {
    if (span.rail) {
        constexpr double kBestShare = 0.8, kStepMm = kPitchMm, kPerMm = 0.03;
        const double best = span.first.x + (span.last.x - span.first.x) * kBestShare;
        for (double x = span.first.x + size.width() / 2; x < span.last.x; x += kStepMm) {
            candidates.push_back({{x, span.first.y}, std::abs(x - best) * kPerMm});
        }
        return;
    }
    constexpr double kColumnDislike = 1, kPerRow = 0.12, kNumberRoomMm = 0.4;
    const double side = 1.35 + size.width() / 2;
    for (int row = 0; row < kRowCount / 2; ++row) {
        // The end rows give way to the column numbers beside them.
        const double y = span.first.y + row * kPitchMm +
                         (row == 0                   ? kNumberRoomMm
                          : row == kRowCount / 2 - 1 ? -kNumberRoomMm
                                                     : 0);
        candidates.push_back({{span.first.x + side, y}, kColumnDislike + row * kPerRow});
        candidates.push_back({{span.first.x - side, y}, kColumnDislike + row * kPerRow + 0.1});
    }
}

/// Beside a rail at the edge of the boards there is place too, outside of it, where nothing runs.
void addOutside(const Rect& boards, const StripPlace& span, QSizeF size, std::vector<Candidate>& candidates) {
    constexpr double kOutsideDislike = 1.6, kPerMm = 0.02, kFromHolesMm = 1.35, kEdgeMm = 2 * kPitchMm;
    const double rail = span.first.y;
    const bool top = rail - boards.top < kEdgeMm, bottom = boards.top + boards.height - rail < kEdgeMm;
    if (!top && !bottom) return;  // another rail or row is between
    const double y = rail + (top ? -1 : 1) * (kFromHolesMm + size.height() / 2);
    for (double x = span.first.x + size.width() / 2; x < span.last.x; x += kPitchMm)
        candidates.push_back({{x, y}, kOutsideDislike + (span.last.x - x) * kPerMm});
}

void addPlaces(const WordGround& ground, const StripPlace& span, QSizeF size, std::vector<Candidate>& candidates) {
    addBeside(span, size, candidates);
    if (!ground.isProjected()) return;
    if (span.rail)
        addOutside(ground.boardsMm, span, size, candidates);
    else
        addOn(span, size, candidates);
}

/// Where words have to be larger than the figures on a meter's own display, its reading stands beside it as well.
void addMeterReadings(const Picture& picture, const Snapshot& live, std::vector<ReadingWords>& words) {
    for (int part = 0; part < static_cast<int>(picture.bench().parts.size()); ++part) {
        const auto reading = meterReading(live, part);
        if (!reading || !reading->on) continue;
        const PackagePainter* look =
            findPackagePainter(picture.bench().parts[static_cast<std::size_t>(part)].kind->package->name);
        if (look == nullptr || look->figuresEmMm() >= picture.sizes.readingMm) continue;
        words.push_back({QString::fromStdString(reading->text()), {}, part});
    }
}

}  // namespace

Clearance::PointCount::PointCount(const QRectF& area, const std::vector<QPointF>& points)
    : corner_(area.topLeft()),
      columns_(static_cast<int>(area.width() / kCellMm) + 1),
      rows_(static_cast<int>(area.height() / kCellMm) + 1),
      sums_(gridSize(columns_ + 1, rows_ + 1), 0) {
    const auto cell = [&](int column, int row) -> int& { return sums_[gridIndex(column, row, columns_ + 1)]; };
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
    return sums_[gridIndex(column, row, columns_ + 1)];
}

double Clearance::PointCount::within(const QRectF& f) const {
    return upTo(f.right(), f.bottom()) - upTo(f.left(), f.bottom()) - upTo(f.right(), f.top()) +
           upTo(f.left(), f.top());
}

std::shared_ptr<const Clearance::Taken> Clearance::takenOf(const WordGround& ground) {
    auto taken = std::make_shared<Taken>();
    std::vector<QPointF> points;
    const auto addLine = [&](const QPainterPath& path) {
        const Polyline line = Polyline::of(path);
        for (double gone = 0; gone < line.lengthMm(); gone += kPointStepMm) points.push_back(line.at(gone).at);
    };
    for (std::size_t part = 0; part < ground.parts.size(); ++part) {
        const PartSeen& seen = ground.parts[part];
        taken->bodies.push_back({toQt(ground.bodies[part]).adjusted(-kRoomMm, -kRoomMm, kRoomMm, kRoomMm),
                                 seen.part.kind->emitsLight ? kOverLight : kOverBody});
        for (const PartPath& path : seen.painter().paths(seen.scene(theme(ThemeName::Day)))) addLine(path.line);
    }
    for (const CurveSeen& jumper : ground.jumpers) addLine(jumper.cubic().path());
    for (const StripPlace& piece : ground.metal) {
        QPainterPath line(toQt(piece.first));
        line.lineTo(toQt(piece.last));
        addLine(line);
    }
    taken->points = PointCount(toQt(ground.allMm).adjusted(-kAroundMm, -kAroundMm, kAroundMm, kAroundMm), points);
    return taken;
}

Clearance::Clearance(std::shared_ptr<const WordGround> ground) : ground_(std::move(ground)), taken_(takenOf(*ground_)) {
    for (const UsedNumber& number : ground_->numbers) take(number.frame);
}

double Clearance::cost(const QRectF& frame) const {
    double cost = ground_->isProjected()
                      ? kOffStage * (frame.width() * frame.height() - sharedArea(toQt(ground_->stage), frame))
                      : 0;
    for (const Body& body : taken_->bodies) cost += body.cost * sharedArea(body.frame, frame);
    for (const QRectF& label : labels_) cost += kOverLabel * sharedArea(label, frame);
    const QRectF roomy = frame.adjusted(-kRoomMm, -kRoomMm, kRoomMm, kRoomMm);
    cost += kOverPoint * taken_->points.within(roomy);
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

std::vector<Candidate> aroundBody(const WordGround& ground, int part, QSizeF size) {
    return aroundPart(ground, part, size, false);
}

Label placeBesidePart(int part, const QString& text, QSizeF size, Clearance& clearance) {
    return settle(aroundBody(clearance.ground(), part, size), text, size, clearance);
}

Label placeInStrips(const std::vector<int>& strips, const QString& text, QSizeF size, Clearance& clearance) {
    const WordGround& ground = clearance.ground();
    std::vector<Candidate> candidates;
    for (const int strip : strips) addPlaces(ground, ground.strips[static_cast<std::size_t>(strip)], size, candidates);
    return candidates.empty() ? Label{} : settle(candidates, text, size, clearance);
}

void takePinned(const PinnedTags& pinned, Clearance& clearance) {
    for (const PinnedTag& tag : pinned) clearance.take(tag.frame);
}

void takePinnedEnds(const PinnedTags& pinned, Clearance& clearance) {
    for (const PinnedTag& tag : pinned)
        for (const TagEnd& end : tag.ends) clearance.take(endFrame(end));
}

std::vector<IdWords> idWords(const Picture& picture) {
    std::vector<IdWords> words;
    for (int part = 0; part < static_cast<int>(picture.bench().parts.size()); ++part) {
        const PartKind& kind = *picture.bench().parts[static_cast<std::size_t>(part)].kind;
        if (kind.package->reach != Reach::Flying) words.push_back({false, part, idOfPart(picture, part)});
    }
    for (int jumper = 0; jumper < static_cast<int>(picture.bench().jumpers.size()); ++jumper) {
        const std::string& id = picture.bench().jumpers[static_cast<std::size_t>(jumper)].id;
        words.push_back({true, jumper, QString::fromStdString(id)});
    }
    return words;
}

std::vector<Label> placeIds(const std::vector<IdWords>& words, Clearance& clearance) {
    std::vector<Label> labels;
    labels.reserve(words.size());
    for (const IdWords& each : words)
        labels.push_back(each.jumper ? placeJumperId(each, clearance) : placePartId(each, clearance));
    return labels;
}

std::vector<ReadingWords> readingWords(const Picture& picture) {
    std::vector<ReadingWords> words;
    const Snapshot* live = picture.live();
    if (!live) return words;
    const Layout& layout = *picture.layout;
    const auto first = firstOfJoined(*live);
    const auto ofInterest = netsOfInterest(layout);
    std::map<int, std::size_t> labelled;  // by the first of joined nets
    for (int net = 0; net < layout.netCount; ++net) {
        const int joined = first[static_cast<std::size_t>(net)];
        if (!ofInterest[static_cast<std::size_t>(net)] || labelled.contains(joined)) continue;
        const Figure volt = live->shown().volt(net);
        if (!volt.isKnown() && !picture.views.voltage) continue;
        labelled.emplace(joined, words.size());
        words.push_back({volt.isKnown() ? QString::fromStdString(volt.text()) : QStringLiteral("floating"), {}});
    }
    for (std::size_t strip = 0; strip < layout.netOfStrip.size(); ++strip) {
        const auto label = labelled.find(first[static_cast<std::size_t>(layout.netOfStrip[strip])]);
        if (label != labelled.end()) words[label->second].strips.push_back(static_cast<int>(strip));
    }
    addMeterReadings(picture, *live, words);
    return words;
}

std::vector<Label> placeReadings(const std::vector<ReadingWords>& words, Clearance& clearance) {
    const WordSizes& sizes = clearance.ground().sizes;
    std::vector<Label> labels;
    for (const ReadingWords& each : words) {
        const QSizeF size(textWidthMm(each.text, readingLettering(sizes)) + 2 * kReadingPadMm,
                          kReadingHeight * sizes.readingMm);
        const Label label = each.part >= 0 ? placeBesidePart(each.part, each.text, size, clearance)
                                           : placeInStrips(each.strips, each.text, size, clearance);
        if (!label.frame.isEmpty()) labels.push_back(label);
    }
    return labels;
}

}  // namespace tiepoint::ui
