// Pinned readings: a tag with a pin in it, and a short leader to what it measures. A reading between two holes has a red and a black end,
// which bear a plus and a minus, so that colour doesn't say it alone.

#include "ui/paint/label_painter.h"
#include "ui/paint/label_places.h"
#include "ui/paint/live_layers.h"
#include "ui/paint/pinned_places.h"
#include "ui/paint/shade.h"

namespace tiepoint::ui {
namespace {

constexpr double kLeaderMm = 0.24, kCasingMm = 0.62;
constexpr double kRingMm = 0.85, kRingBreadthMm = 0.3;
constexpr double kSignDiscMm = 1.05, kPinSignHalfMm = 0.52, kPinSignBreadthMm = 0.3;
constexpr double kPinHeadEm = 0.24, kPinInsetEm = 0.62;
constexpr std::size_t kRed = 0, kBlack = 1;  ///< of the theme's jumpers, the colours of test leads
constexpr double kBrightGround = 60;         ///< L* above which signs are dark

void paintLeader(QPainter& painter, const Theme& theme, QPointF from, QPointF to) {
    painter.setPen(outlinePen(theme.arrowCasing, kCasingMm));
    painter.drawLine(from, to);
    painter.setPen(outlinePen(theme.text, kLeaderMm));
    painter.drawLine(from, to);
}

void paintRing(QPainter& painter, const Theme& theme, QPointF at) {
    painter.setBrush(Qt::NoBrush);
    painter.strokePath(disc(at, kRingMm), outlinePen(theme.arrowCasing, kRingBreadthMm + 0.4));
    painter.strokePath(disc(at, kRingMm), outlinePen(theme.accent, kRingBreadthMm));
}

void paintPinSign(QPainter& painter, const Theme& theme, QPointF at, bool plus) {
    const QColor ground = theme.jumpers[plus ? kRed : kBlack];
    painter.setPen(outlinePen(theme.arrowCasing, kRingBreadthMm));
    painter.setBrush(ground);
    painter.drawPath(disc(at, kSignDiscMm));
    painter.setPen(
        outlinePen(lightnessOf(ground) > kBrightGround ? QColor(Qt::black) : QColor(Qt::white), kPinSignBreadthMm));
    painter.drawLine(at - QPointF(kPinSignHalfMm, 0), at + QPointF(kPinSignHalfMm, 0));
    if (plus) painter.drawLine(at - QPointF(0, kPinSignHalfMm), at + QPointF(0, kPinSignHalfMm));
}

void paintTagEnd(QPainter& painter, const Theme& theme, const TagEnd& end) {
    if (end.sign == TagEnd::Sign::None) return paintRing(painter, theme, end.at);
    paintPinSign(painter, theme, end.at, end.sign == TagEnd::Sign::Plus);
}

void paintPinned(QPainter& painter, const Theme& theme, const PinnedTag& tag, const Lettering& lettering) {
    for (const TagEnd& end : tag.ends) paintLeader(painter, theme, nearestOf(tag.frame, end.at), end.at);
    for (const TagEnd& end : tag.ends) paintTagEnd(painter, theme, end);
    paintTag(painter, theme, tag.frame, {}, lettering, theme.dimText);
    const double em = lettering.sizeMm;
    painter.setPen(Qt::NoPen);
    painter.setBrush(theme.accent);
    painter.drawPath(disc({tag.frame.left() + kPinInsetEm * em, tag.frame.center().y()}, kPinHeadEm * em));
    drawText(painter, tag.text, {tag.frame.center().x() + kPinRoomEm / 2 * em, tag.frame.center().y()}, lettering,
             theme.text);
}

struct PinnedMark {
    PinnedTag tag;
    Lettering lettering;
    void paint(QPainter& painter, const Theme& theme) const { paintPinned(painter, theme, tag, lettering); }
    friend bool operator==(const PinnedMark&, const PinnedMark&) = default;
};

struct ProbeMark {
    Point first, second;
    void paint(QPainter& painter, const Theme& theme) const {
        paintLeader(painter, theme, toQt(first), toQt(second));
        paintPinSign(painter, theme, toQt(first), true);
        paintPinSign(painter, theme, toQt(second), false);
    }
    friend bool operator==(const ProbeMark&, const ProbeMark&) = default;
};

}  // namespace

QRectF tagBounds(const PinnedTag& tag) {
    QRectF around = tagRoom(tag.frame);
    for (const TagEnd& end : tag.ends) around |= disc(end.at, kSignDiscMm + kRingBreadthMm).boundingRect();
    return around.adjusted(-kCasingMm, -kCasingMm, kCasingMm, kCasingMm);
}

void addPinnedTag(Patches& patches, const PinnedTag& tag, const WordSizes& sizes) {
    patches.push_back(fixedPatch(tagBounds(tag), PinnedMark{tag, readingLettering(sizes)}));
}

void addPinned(Patches& patches, const PinnedTags& pinned, const WordSizes& sizes) {
    for (const PinnedTag& tag : pinned) addPinnedTag(patches, tag, sizes);
}

void addProbe(Patches& patches, const Picture& picture) {
    if (!picture.marks.probe) return;
    const auto [first, second] = *picture.marks.probe;
    constexpr double kRoomMm = kSignDiscMm + kCasingMm;
    const QRectF around = QRectF(toQt(first), toQt(second)).normalized();
    patches.push_back(fixedPatch(around.adjusted(-kRoomMm, -kRoomMm, kRoomMm, kRoomMm), ProbeMark{first, second}));
}

}  // namespace tiepoint::ui
