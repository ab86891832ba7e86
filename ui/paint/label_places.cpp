#include "ui/paint/label_places.h"

#include "core/meter/meter.h"
#include "ui/paint/curve.h"
#include "ui/paint/grid_index.h"
#include "ui/paint/part_scenes.h"
#include "ui/paint/pinned_places.h"
#include "ui/paint/shade.h"

#include <algorithm>
#include <cmath>
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
constexpr double kFarIdDislike = 4;                                    ///< with room for another label between
constexpr double kTouchMm2 = 0.15;                                     ///< hidden so little, nobody misses it
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
            {c + QPointF(side, up), along + 1.4},
            {c + QPointF(-side, -up / 2), along + 1.3},
            {c + QPointF(side, -up / 2), along + 1.3},
            {c + QPointF(-side, up / 2), along + 1.5},
            {c + QPointF(side, up / 2), along + 1.5},
            {c + QPointF(0, -up - size.height()), kFarIdDislike},
            {c + QPointF(0, up + size.height()), kFarIdDislike + 0.5}};
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
    for (const double share : {0.5, 0.62, 0.38, 0.75, 0.25, 0.87, 0.13}) {
        const Place place = line.at(share * line.lengthMm());
        const QPointF across(std::sin(place.angle), -std::cos(place.angle));
        const double away = 1.05 + std::abs(across.x()) * size.width() / 2 + std::abs(across.y()) * size.height() / 2;
        candidates.push_back({place.at + across * away, std::abs(share - 0.5) * 4});
        candidates.push_back({place.at - across * away, std::abs(share - 0.5) * 4 + 0.2});
    }
    const bool isHiding = std::all_of(candidates.begin(), candidates.end(), [&](const Candidate& candidate) {
        return clearance.hiddenMm2(centred(candidate.centre, size)) > kTouchMm2;
    });
    if (isHiding) return {};
    Label label = settle(candidates, words.text, size, clearance);
    label.dim = true;
    return label;
}

/// By word; an empty frame for what is left out.
std::vector<Label> placeEach(const std::vector<IdWords>& words, Clearance& clearance) {
    std::vector<Label> labels;
    labels.reserve(words.size());
    for (const IdWords& each : words)
        labels.push_back(each.jumper ? placeJumperId(each, clearance) : placePartId(each, clearance));
    return labels;
}

/// Whether another label lies over or under a label, or it hides much of a body or a number of a column.
bool isCrowded(const std::vector<Label>& labels, std::size_t index, const Clearance& others) {
    constexpr double kMuch = 0.15;
    const QRectF& frame = labels[index].frame;
    if (others.hiddenMm2(frame) > kMuch * frame.width() * frame.height()) return true;
    for (std::size_t i = 0; i < labels.size(); ++i)
        if (i != index && sharedArea(labels[i].frame, frame) > kTouchMm2) return true;
    return false;
}

/// Values go from ids that crowd others, as long as that changes something; then the later of two ids that still do.
std::vector<Label> placeUncrowded(std::vector<IdWords> words, Clearance& clearance) {
    constexpr int kRounds = 3;
    const Clearance bare = clearance;
    std::vector<Label> labels;
    for (int round = 0; round < kRounds; ++round) {
        clearance = bare;
        labels = placeEach(words, clearance);
        bool shortened = false;
        for (std::size_t i = 0; i < words.size(); ++i) {
            if (words[i].jumper || words[i].text == words[i].id() || !isCrowded(labels, i, bare)) continue;
            words[i].text = words[i].id();
            shortened = true;
        }
        if (!shortened) break;
    }
    for (std::size_t i = labels.size(); i-- > 0;) {
        if (!labels[i].frame.isEmpty() && isCrowded(labels, i, bare)) labels[i] = {};
    }
    return labels;
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

double Clearance::hiddenMm2(const QRectF& frame) const {
    double hidden = 0;
    for (const Body& body : taken_->bodies) hidden += sharedArea(body.frame, frame);
    for (const QRectF& label : labels_) hidden += sharedArea(label, frame);
    return hidden;
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
    const WordSizes& sizes = clearance.ground().sizes;
    std::vector<Label> labels =
        sizes.idMm > WordSizes().idMm ? placeUncrowded(words, clearance) : placeEach(words, clearance);
    std::erase_if(labels, [](const Label& label) { return label.frame.isEmpty(); });
    return labels;
}

/// Where words have to be larger than the figures on a meter's own display, its reading stands beside it as well.
std::vector<ReadingWords> meterWords(const Picture& picture) {
    std::vector<ReadingWords> words;
    const Snapshot* live = picture.live();
    for (int part = 0; live && part < static_cast<int>(picture.bench().parts.size()); ++part) {
        const auto reading = meterReading(*live, part);
        if (!reading || !reading->on) continue;
        const PackagePainter* look =
            findPackagePainter(picture.bench().parts[static_cast<std::size_t>(part)].kind->package->name);
        if (look == nullptr || look->figuresEmMm() >= picture.sizes.readingMm) continue;
        words.push_back({QString::fromStdString(reading->text()), part});
    }
    return words;
}

std::vector<Label> placeReadings(const std::vector<ReadingWords>& words, Clearance& clearance) {
    const WordSizes& sizes = clearance.ground().sizes;
    std::vector<Label> labels;
    for (const ReadingWords& each : words) {
        const QSizeF size(textWidthMm(each.text, readingLettering(sizes)) + 2 * kReadingPadMm,
                          kReadingHeight * sizes.readingMm);
        labels.push_back(placeBesidePart(each.part, each.text, size, clearance));
    }
    return labels;
}

}  // namespace tiepoint::ui
