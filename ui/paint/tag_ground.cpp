#include "ui/paint/tag_ground.h"

#include "core/parts/package.h"
#include "ui/paint/label_places.h"
#include "ui/paint/note_painter.h"

#include <algorithm>
#include <cmath>

namespace tiepoint::ui {
namespace {

constexpr double kOverBodyPerMm = 0.25, kOverIdPerMm = 0.4, kOverNumberPerMm = 0.1, kAlongWirePerMm = 0.15;
constexpr double kTakenDislike = 0.5, kOwnMetalDislike = 0.3;
constexpr double kOffMiddlePerMm = 0.002;  ///< along a rail
constexpr double kCoveredMm = 0.8;         ///< a ring may reach so far over the edge of a body
constexpr double kBandSideEm = 6;          ///< how far tags may reach beyond the boards
constexpr double kCableRoomMm = 1.15;
constexpr double kNarrowWireMm = 2.2;

Rect grownBy(const Rect& rect, double by) {
    return {rect.left - by, rect.top - by, rect.width + 2 * by, rect.height + 2 * by};
}

bool overlaps(const Rect& a, const Rect& b) {
    return a.left < b.right() && b.left < a.right() && a.top < b.bottom() && b.top < a.bottom();
}

/// Nets whose volts are worth a tag: at least two things plugged in, one of them a part's lead.
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

/// Finds the holes on which leaders may end.
class FootFinder {
public:
    FootFinder(const Picture& picture, const WordGround& words, const std::vector<Label>& ids)
        : picture_(picture),
          metal_(picture) {
        for (const Rect& body : words.bodies) covered_.push_back(grownBy(body, kTagRingMm - kCoveredMm));
        for (const Label& id : ids) covered_.push_back(grownBy(fromQt(id.frame), kTagRingMm));
        for (const Note& note : picture.bench().notes)
            covered_.push_back(grownBy({picture.seenAt(note.at).x, picture.seenAt(note.at).y, 0, 0}, kPitchMm / 2));
    }

    std::vector<std::vector<TagFoot>> feet() const {
        const Layout& layout = *picture_.layout;
        std::vector<std::vector<TagFoot>> onRails(static_cast<std::size_t>(layout.netCount)), all = onRails;
        const auto wanted = netsOfInterest(layout);
        for (int hole = 0; hole < layout.holeCount(); ++hole) {
            const auto net = static_cast<std::size_t>(layout.netOfHole(hole));
            if (!wanted[net]) continue;
            if (const auto foot = footAt(hole)) {
                const bool rail = isRail(layout.holeAt(hole).line);
                (rail ? onRails : all)[net].push_back(*foot);
            }
        }
        for (std::size_t net = 0; net < all.size(); ++net) {
            if (!onRails[net].empty()) all[net] = std::move(onRails[net]);
        }
        return all;
    }

private:
    std::optional<TagFoot> footAt(int index) const {
        const Layout& layout = *picture_.layout;
        const Hole hole = layout.holeAt(index);
        const Point at = picture_.seenAt(hole);
        const int net = layout.netOfHole(index);
        if (std::any_of(covered_.begin(), covered_.end(), [at](const Rect& rect) { return rect.contains(at); }))
            return std::nullopt;
        if (metal_.isForeignAt(at, net)) return std::nullopt;
        TagFoot foot{{at}, 0};
        if (layout.jointOfHole[static_cast<std::size_t>(index)] >= 0)
            foot.dislike += kTakenDislike;
        else if (metal_.isOwnAt(at, net))
            foot.dislike += kOwnMetalDislike;
        const Rect& boards = picture_.table->boardsMm;
        if (isRail(hole.line)) foot.dislike += kOffMiddlePerMm * std::abs(at.x - (boards.left + boards.width / 2));
        return foot;
    }

    const Picture& picture_;
    SeenMetal metal_;
    std::vector<Rect> covered_;
};

/// Bodies and cables that stand in a band.
void takeStretches(TagBand& band, const Picture& picture, const WordGround& words) {
    for (const Rect& body : words.bodies) {
        if (overlaps(body, band.room)) band.taken.push_back({body.left, body.right()});
    }
    constexpr int kSteps = 60;
    for (const PartPlace& place : picture.table->parts) {
        for (const WireCurve& cable : place.cablesMm) {
            for (int i = 0; i <= kSteps; ++i) {
                const Point at = cable.at(static_cast<double>(i) / kSteps);
                if (grownBy(band.room, kCableRoomMm).contains(at))
                    band.taken.push_back({at.x - kCableRoomMm, at.x + kCableRoomMm});
            }
        }
    }
}

std::vector<TagBand> bandsOf(const Picture& picture, const WordGround& words) {
    const Rect& boards = words.boardsMm;
    const double em = words.sizes.readingMm, height = kTagHeightEm * em, away = kTagAwayEm * em;
    double left = boards.left - kBandSideEm * em, right = boards.right() + kBandSideEm * em;
    if (words.isProjected()) {
        left = std::max(left, words.stage.left);
        right = std::min(right, words.stage.right());
    }
    std::vector<TagBand> bands{{{left, boards.top - away - height, right - left, height}, true},
                               {{left, boards.bottom() + away, right - left, height}, false}};
    for (TagBand& band : bands) takeStretches(band, picture, words);
    return bands;
}

std::vector<TagHindrance> hindrancesOf(const WordGround& words, const std::vector<Label>& ids) {
    std::vector<TagHindrance> hindrances;
    for (const Rect& body : words.bodies) hindrances.push_back({body, kOverBodyPerMm});
    for (const Label& id : ids) hindrances.push_back({fromQt(id.frame), kOverIdPerMm});
    for (const UsedNumber& number : words.numbers) hindrances.push_back({fromQt(number.frame), kOverNumberPerMm});
    for (const CurveSeen& jumper : words.jumpers) {
        const QRectF around = jumper.cubic().path().boundingRect();
        if (around.width() < kNarrowWireMm) hindrances.push_back({fromQt(around), kAlongWirePerMm});
    }
    return hindrances;
}

}  // namespace

std::shared_ptr<const TagGround> tagGround(const Picture& whole) {
    Picture picture = whole;  // what is pointed at and what flows moves no tag
    picture.marks = {};
    picture.snapshot = nullptr;
    const auto ground = std::make_shared<TagGround>();
    ground->words = wordGround(picture);
    Clearance clearance(ground->words);
    const std::vector<Label> ids = placeIds(picture, clearance);
    const WordSizes& sizes = picture.sizes;
    ground->room = {bandsOf(picture, *ground->words),
                    hindrancesOf(*ground->words, ids),
                    kTagRingMm,
                    kCasingOfLeader * sizes.leaderMm,
                    0.25 * sizes.readingMm,
                    0.3 * sizes.readingMm};
    ground->feet = FootFinder(picture, *ground->words, ids).feet();
    return ground;
}

}  // namespace tiepoint::ui
