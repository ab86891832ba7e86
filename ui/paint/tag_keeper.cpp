#include "ui/paint/tag_keeper.h"

#include "core/hunt/hidden_slip.h"
#include "core/snapshot/pinned_value.h"
#include "ui/paint/change_painter.h"
#include "ui/paint/pinned_places.h"
#include "ui/paint/tag_sight.h"

#include <algorithm>
#include <set>

namespace tiepoint::ui {
namespace {

enum TagRank { kPinnedRank, kSelectedRank, kUsualRank, kFloatingRank };

/// A width that most readings share, so that a tag doesn't change its size with its figure.
const QString kUsualVolts = QStringLiteral("8.88 V");
const QString kFloatingWords = QStringLiteral("joined to nothing");

double tagWidth(const QString& text, const WordSizes& sizes) {
    const Lettering lettering{sizes.readingMm, QFont::DemiBold};
    return std::max(textWidthMm(text, lettering), textWidthMm(kUsualVolts, lettering)) +
           2 * kTagPadEm * sizes.readingMm;
}

/// Nets of everything that is selected.
std::set<int> selectedNets(const Picture& picture) {
    std::set<int> nets;
    const Layout& layout = *picture.layout;
    for (const std::string& id : picture.marks.selected) {
        if (const int part = picture.bench().partIndex(id); part >= 0) {
            for (int lead = layout.firstLead[static_cast<std::size_t>(part)];
                 lead < layout.firstLead[static_cast<std::size_t>(part) + 1]; ++lead)
                nets.insert(layout.netOfLead[static_cast<std::size_t>(lead)]);
        } else if (const int jumper = picture.bench().jumperIndex(id); jumper >= 0) {
            const int joint = layout.jumperJoints[static_cast<std::size_t>(jumper)][0];
            nets.insert(layout.joints[static_cast<std::size_t>(joint)].net);
        }
    }
    return nets;
}

/// Nets whose volts a pinned reading shows already.
std::set<int> pinnedNets(const Picture& picture) {
    std::set<int> nets;
    for (const PinnedReading& reading : picture.bench().pinned) {
        if (const auto* volts = std::get_if<VoltsAt>(&reading.of))
            nets.insert(picture.layout->netOfHole(picture.layout->holeIndex(volts->hole)));
    }
    return nets;
}

/// What an edit or a press has changed, in words, by net.
std::vector<std::pair<int, QString>> changedNets(const Picture& picture) {
    std::vector<std::pair<int, QString>> nets;
    if (!picture.changes || !picture.live()) return nets;
    for (const Change& change : *picture.changes) {
        const int part = picture.bench().partIndex(change.part);
        if (change.kind != ReadingKind::Voltage || part < 0) continue;
        const int lead = picture.layout->leadIndex(part, change.lead);
        nets.emplace_back(picture.layout->netOfLead[static_cast<std::size_t>(lead)], changeWords(change));
    }
    return nets;
}

/// Lets tags that say more than usual spread to both sides, as far as nobody else has to move.
void spread(std::vector<NetTag>& tags, const std::vector<std::pair<int, QString>>& changed,
            const std::vector<PinnedTag>& pinned, const TagRoom& room, const WordSizes& sizes) {
    for (NetTag& tag : tags) {
        const auto words =
            std::find_if(changed.begin(), changed.end(), [&](const auto& one) { return one.first == tag.net; });
        if (words == changed.end()) continue;
        tag.isChanged = true;
        const double more = tagWidth(words->second, sizes) - tag.frame.width;
        if (more <= 0) continue;
        double left = room.bands.front().room.left, right = room.bands.front().room.right();
        const auto keepOff = [&](double from, double to) {
            if (to <= tag.frame.left) left = std::max(left, to + room.gapMm);
            if (from >= tag.frame.right()) right = std::min(right, from - room.gapMm);
        };
        for (const TagBand& band : room.bands) {
            if (band.room.top != tag.frame.top) continue;
            for (const TakenStretch& taken : band.taken) keepOff(taken.from, taken.to);
        }
        for (const NetTag& other : tags)
            if (other.frame.top == tag.frame.top && &other != &tag) keepOff(other.frame.left, other.frame.right());
        for (const PinnedTag& other : pinned)
            if (other.frame.top() == tag.frame.top) keepOff(other.frame.left(), other.frame.right());
        const double atLeft = tag.frame.left - left, atRight = right - tag.frame.right();
        if (atLeft + atRight < more) continue;
        const double toLeft = std::clamp(more / 2, std::max(0.0, more - atRight), std::max(0.0, atLeft));
        tag.text = words->second;
        tag.frame.left -= toLeft;
        tag.frame.width += more;
    }
}

template <class Tag>
std::shared_ptr<const std::vector<Tag>> sharedTags(std::vector<Tag> tags,
                                                   const std::shared_ptr<const std::vector<Tag>>& so_far) {
    if (tags.empty()) return nullptr;
    if (so_far && *so_far == tags) return so_far;
    return std::make_shared<const std::vector<Tag>>(std::move(tags));
}

}  // namespace

void TagKeeper::followGround(const Picture& picture) {
    if (ground_ && layout_ == picture.layout && table_ == picture.table && sizes_ == picture.sizes) return;
    layout_ = picture.layout;
    table_ = picture.table;
    sizes_ = picture.sizes;
    ground_ = tagGround(picture);
    asked_.clear();
    places_.clear();
}

std::optional<TagPlace> TagKeeper::before(const std::vector<TagFoot>& feet) const {
    for (const TagPlace& place : stood_) {
        if (std::any_of(feet.begin(), feet.end(), [&](const TagFoot& foot) { return foot.ends == place.ends; }))
            return place;
    }
    return std::nullopt;
}

void TagKeeper::addHung(Wishes& all, const Picture& picture) const {
    for (const HungTag& hung : picture.hung) {
        if (!holeMm(picture.bench(), hung.at)) continue;
        PinnedTag tag;
        tag.text = hung.text;
        tag.isNext = hung.isNext;
        const Point at = picture.seenAt(hung.at);
        tag.ends = {{toQt(at)}};
        TagWish wish{pinnedWidth(tag, sizes_), hung.isNext ? kPinnedRank : kSelectedRank, {{{at}}}};
        wish.before = before(wish.feet);
        all.pinned.push_back(std::move(tag));
        all.wishes.push_back(std::move(wish));
    }
}

void TagKeeper::addPinned(Wishes& all, const Picture& picture) const {
    const bool onlyTaken = isHunting(picture.bench());  // while a slip is hidden, what was read with a meter
    for (const PinnedReading& reading : picture.bench().pinned) {
        if (onlyTaken && !frozenText(reading)) continue;
        PinnedTag tag = pinnedTag(picture, reading);
        TagWish wish{pinnedWidth(tag, sizes_), kPinnedRank, pinnedFeet(picture, reading)};
        wish.before = before(wish.feet);
        all.pinned.push_back(std::move(tag));
        all.wishes.push_back(std::move(wish));
    }
}

void TagKeeper::addNets(Wishes& all, const Picture& picture) const {
    const Snapshot* live = isHunting(picture.bench()) ? nullptr : picture.live();
    const auto changed = changedNets(picture);
    const bool isShown = picture.views.readings || picture.views.voltage;
    if (!live || (!isShown && changed.empty())) return;
    const auto selected = selectedNets(picture), pinned = pinnedNets(picture);
    for (int net = 0; net < picture.layout->netCount; ++net) {
        const auto& feet = ground_->feet[static_cast<std::size_t>(net)];
        const bool isChanged =
            std::any_of(changed.begin(), changed.end(), [net](const auto& one) { return one.first == net; });
        if (feet.empty() || pinned.contains(net) || !(isShown || isChanged)) continue;
        const Figure volt = live->shown().volt(net);
        NetTag tag;
        tag.net = net;
        tag.isFloating = !volt.isKnown();
        tag.text = tag.isFloating ? kFloatingWords : QString::fromStdString(volt.text());
        const int rank = selected.contains(net) ? kSelectedRank : tag.isFloating ? kFloatingRank : kUsualRank;
        all.wishes.push_back({tagWidth(tag.text, sizes_), rank, feet, before(feet)});
        all.nets.push_back(std::move(tag));
    }
}

TagKeeper::Wishes TagKeeper::wishesOf(const Picture& picture) const {
    Wishes all;
    if (!picture.hung.empty()) {
        addHung(all, picture);
        return all;
    }
    addPinned(all, picture);
    addNets(all, picture);
    return all;
}

/// Finds places, unless the same was asked before.
void TagKeeper::follow(Wishes& all) {
    std::vector<std::pair<double, int>> asked;
    for (const TagWish& wish : all.wishes) asked.emplace_back(wish.width, wish.rank);
    if (asked == asked_ && places_.size() == all.wishes.size()) return;
    places_ = placeTags(ground_->room, all.wishes);
    asked_ = std::move(asked);
    if (all.wishes.empty()) return;  // what comes again stands where it stood
    stood_.clear();
    for (const auto& place : places_)
        if (place) stood_.push_back(*place);
}

void TagKeeper::arrange(Picture& picture) {
    const bool isShown = picture.views.readings || picture.views.voltage;
    const bool isPlan = !picture.snapshot;  // pinned readings have nothing to say
    if (picture.hung.empty() && (isPlan || picture.bench().pinned.empty()) &&
        !(picture.live() && (isShown || picture.changes))) {
        picture.pinned = nullptr;
        picture.netTags = nullptr;
        return;
    }
    followGround(picture);
    Wishes all = wishesOf(picture);
    follow(all);
    std::size_t wish = 0;
    for (PinnedTag& tag : all.pinned) {
        if (const auto& place = places_[wish++]) stand(tag, place->frame, place->ends);
    }
    placeOthersBeside(picture, *ground_, all.pinned);
    std::vector<NetTag> nets;
    for (NetTag& tag : all.nets) {
        const auto& place = places_[wish++];
        if (!place) continue;
        tag.frame = place->frame;
        tag.ring = place->ends.front();
        nets.push_back(std::move(tag));
    }
    spread(nets, changedNets(picture), all.pinned, ground_->room, sizes_);
    if (!picture.seenMm.isEmpty()) keepInSight(all.pinned, nets, picture.seenMm, sizes_);
    picture.pinned = sharedTags(std::move(all.pinned), picture.pinned);
    picture.netTags = sharedTags(std::move(nets), picture.netTags);
}

}  // namespace tiepoint::ui
