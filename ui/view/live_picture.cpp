#include "ui/view/live_picture.h"

namespace tiepoint::ui {

LivePicture::LivePicture(Picture& picture, BenchDocument& document, LiveBench& live)
    : picture_(picture),
      document_(document),
      live_(live) {
    connect(&before_, &Before::faded, this, [this] {
        picture_.changes = nullptr;
        tags_.arrange(picture_);
        Q_EMIT changed();
    });
    connect(&document, &BenchDocument::benchReplaced, this, [this] { before_.forget(); });  // nothing to compare with
    connect(&document, &BenchDocument::benchChanged, this, &LivePicture::benchChanged);
    connect(&live, &LiveBench::snapshotReady, this, &LivePicture::followLive);
}

void LivePicture::followBench(std::shared_ptr<const Layout> layout) {
    picture_.layout = std::move(layout);
    picture_.arrangeTable();
    picture_.snapshot = nullptr;
    picture_.pinned = nullptr;
    picture_.netTags = nullptr;
}

void LivePicture::followLive() {
    const auto snapshot = live_.snapshot();
    if (snapshot && snapshot->revision == document_.revision()) {
        // One truth: the snapshot's layout and ours are of the same bench, and its indices hold for both.
        picture_.snapshot = snapshot;
        if (before_.follow(snapshot)) picture_.changes = before_.changes();
        tags_.arrange(picture_);
        Q_EMIT answered();
    }
    Q_EMIT changed();
}

void LivePicture::setTheme(const Theme& theme) {
    picture_.theme = &theme;
    Q_EMIT restyled();
}

void LivePicture::setViews(const Views& views) {
    const bool turns = views.turned != picture_.views.turned;
    picture_.views = views;
    if (turns) {
        picture_.arrangeTable();
        Q_EMIT restyled();
    }
    tags_.arrange(picture_);
    Q_EMIT changed();
}

void LivePicture::followSelection() {
    tags_.arrange(picture_);
    Q_EMIT changed();
}

void LivePicture::setScale(double pixelsPerMm, const WordSizes& sizes, const QRectF& seenMm) {
    picture_.pixelsPerMm = pixelsPerMm;
    picture_.seenMm = seenMm;
    if (sizes == picture_.sizes) return;
    picture_.sizes = sizes;
    if (picture_.snapshot) tags_.arrange(picture_);
    Q_EMIT restyled();  // words on supplies stand as large
}

}  // namespace tiepoint::ui
