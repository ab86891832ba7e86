#include "ui/view/live_picture.h"

#include "core/hunt/hidden_slip.h"

namespace tiepoint::ui {
namespace {

constexpr int kSightMs = 120;        ///< after a pan or zoom, tags come back into sight
constexpr int kPictureRestMs = 500;  ///< words wait no longer for the first answer

}  // namespace

LivePicture::LivePicture(Picture& picture, BenchDocument& document, LiveBench& live)
    : picture_(picture),
      document_(document),
      live_(live) {
    sighting_.setSingleShot(true);
    sighting_.setInterval(kSightMs);
    connect(&sighting_, &QTimer::timeout, this, [this] {
        if (!picture_.snapshot && !plan_) return;
        const auto pinned = picture_.pinned;
        const auto nets = picture_.netTags;
        arrangeTags();
        if (pinned != picture_.pinned || nets != picture_.netTags) Q_EMIT changed();
    });
    connect(&before_, &Before::faded, this, [this] {
        picture_.changes = nullptr;
        arrangeTags();
        Q_EMIT changed();
    });
    wording_.setSingleShot(true);
    connect(&wording_, &QTimer::timeout, this, &LivePicture::addWords);
    connect(&document, &BenchDocument::benchReplaced, this, [this] {
        before_.forget();  // nothing to compare with
        picture_.wordsToCome = true;
        wording_.start(kPictureRestMs);
    });
    connect(&document, &BenchDocument::benchChanged, this, &LivePicture::benchChanged);
    connect(&live, &LiveBench::snapshotReady, this, &LivePicture::followLive);
}

void LivePicture::followBench(std::shared_ptr<const Layout> layout) {
    picture_.layout = std::move(layout);
    picture_.views = allowed(picture_.views);
    picture_.arrangeTable();
    picture_.snapshot = nullptr;
    picture_.hands = nullptr;
    picture_.hung.clear();  // of the bench before
    picture_.pinned = nullptr;
    picture_.netTags = nullptr;
}

void LivePicture::followLive() {
    const auto snapshot = live_.snapshot();
    if (snapshot && snapshot->revision == document_.revision() && isStill()) {
        followHands();
        if (plan_) arrangeTags();
        Q_EMIT answered();
    } else if (snapshot && snapshot->revision == document_.revision()) {
        // One truth: the snapshot's layout and ours are of the same bench, and its indices hold for both.
        picture_.snapshot = snapshot;
        if (before_.follow(snapshot)) picture_.changes = before_.changes();
        arrangeTags();
        // Behind the frame that is asked for now. Started once: where time runs, answers come so often that it would never end.
        if (picture_.wordsToCome && !(wording_.isActive() && wording_.interval() == 0)) wording_.start(0);
        Q_EMIT answered();
    }
    Q_EMIT changed();
}

void LivePicture::setFindings(std::shared_ptr<const std::vector<Finding>> findings) {
    findings_ = std::move(findings);
    picture_.findings = isStill() ? nullptr : findings_;
}

void LivePicture::setVeiled(bool veiled) {
    if (veiled == veiled_) return;
    const bool before = isStill();
    veiled_ = veiled;
    followStill(before);
}

void LivePicture::setPlan(std::optional<std::vector<HungTag>> tags) {
    const bool before = isStill();
    if (!plan_ && !tags) return;
    plan_ = tags.has_value();
    picture_.hung = std::move(tags).value_or(std::vector<HungTag>());
    followStill(before);
    if (before && plan_) {
        arrangeTags();
        Q_EMIT changed();
    }
}

/// Takes away what is live, or brings it back.
void LivePicture::followStill(bool before) {
    if (before == isStill()) return;
    picture_.findings = before ? findings_ : nullptr;
    if (before) {
        picture_.hands = nullptr;
        return followLive();
    }
    picture_.snapshot = nullptr;
    picture_.changes = nullptr;
    picture_.pinned = nullptr;
    picture_.netTags = nullptr;
    before_.forget();
    followHands();
    arrangeTags();
    Q_EMIT changed();
}

void LivePicture::forgetBefore() {
    before_.forget();
    picture_.changes = nullptr;
}

/// What is held is seen, though not what it does.
void LivePicture::followHands() {
    picture_.wordsToCome = false;
    const auto snapshot = live_.snapshot();
    picture_.hands = snapshot && snapshot->revision == document_.revision() ? snapshot->inputs : nullptr;
}

/// While the bench hides a slip, no view tells what flows and which volts there are.
Views LivePicture::allowed(Views views) const {
    if (!picture_.layout || !isHunting(picture_.bench())) return views;
    views.arrows = Arrows::Off;
    views.voltage = views.readings = false;
    return views;
}

void LivePicture::setTheme(const Theme& theme) {
    picture_.theme = &theme;
    Q_EMIT restyled();
}

void LivePicture::setViews(const Views& views) {
    const bool turns = views.turned != picture_.views.turned;
    picture_.views = allowed(views);
    if (turns) {
        picture_.arrangeTable();
        Q_EMIT restyled();
    }
    arrangeTags();
    Q_EMIT changed();
}

void LivePicture::followSelection() {
    arrangeTags();
    Q_EMIT changed();
}

void LivePicture::setScale(double pixelsPerMm, const WordSizes& sizes, const QRectF& seenMm) {
    picture_.pixelsPerMm = pixelsPerMm;
    if (seenMm != picture_.seenMm) sighting_.start();
    picture_.seenMm = seenMm;
    if (sizes == picture_.sizes) return;
    picture_.sizes = sizes;
    if (picture_.snapshot || plan_) arrangeTags();
    Q_EMIT restyled();  // words on supplies stand as large
}

void LivePicture::arrangeTags() {
    if (!picture_.wordsToCome && (plan_ || !veiled_)) tags_.arrange(picture_);
}

void LivePicture::addWords() {
    picture_.wordsToCome = false;
    arrangeTags();
    Q_EMIT changed();
}

Picture LivePicture::whole() const {
    Picture picture = picture_;
    picture.seenMm = {};
    picture.wordsToCome = false;
    if (picture.snapshot) TagKeeper(tags_).arrange(picture);
    return picture;
}

}  // namespace tiepoint::ui
