// Pinned readings: a tag with a pin in it, and a leader to what it measures (leader_painter.cpp). A reading between two holes has a red and a black end,
// which bear a plus and a minus, so that colour doesn't say it alone.

#include "ui/paint/label_painter.h"
#include "ui/paint/label_places.h"
#include "ui/paint/live_layers.h"
#include "ui/paint/pinned_places.h"
#include "ui/paint/probe_painter.h"
#include "ui/paint/shade.h"
#include "ui/paint/tag_ground.h"

namespace tiepoint::ui {
namespace {

constexpr double kLeaderMm = 0.24, kCasingMm = 0.62;
constexpr double kRingBreadthMm = 0.3;
constexpr double kSignDiscMm = 1.05, kPinSignHalfMm = 0.52, kPinSignBreadthMm = 0.3;
constexpr double kPinHeadEm = 0.24, kPinInsetEm = 0.62;
constexpr double kNextRadiusEm = 0.28;
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
    painter.strokePath(disc(at, kTagRingMm), outlinePen(theme.arrowCasing, kRingBreadthMm + 0.4));
    painter.strokePath(disc(at, kTagRingMm), outlinePen(theme.accent, kRingBreadthMm));
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

struct PinEndMark {
    TagEnd::Sign sign;
    void paint(QPainter& painter, const Theme& theme) const { paintTagEnd(painter, theme, {{0, 0}, sign}); }
    friend bool operator==(const PinEndMark&, const PinEndMark&) = default;
};

/// The red tip in the hole that is to be measured next; its lead hangs away to the right.
struct NextProbeMark {
    static constexpr QPointF kBegin{0.75 * kProbeLengthMm, -0.75 * kProbeLengthMm};
    void paint(QPainter& painter, const Theme& theme) const {
        const QColor colour = theme.jumpers[kRed];
        QPainterPath lead(kBegin);
        lead.cubicTo(kBegin + QPointF(1.6, -1.6), kBegin + QPointF(3.4, -1.4), kBegin + QPointF(4.6, 0.6));
        painter.setBrush(Qt::NoBrush);
        painter.strokePath(lead, outlinePen(blend(colour, Qt::black, theme.flat ? 0.8 : 0.6), 1.3));
        painter.strokePath(lead, outlinePen(colour, 0.9));
        paintProbe(painter, theme, kBegin, {}, colour);
    }
    friend bool operator==(const NextProbeMark&, const NextProbeMark&) = default;
};

struct PinnedMark {
    Rect frame;
    QString text;
    Lettering lettering;
    bool hung = false, next = false;
    void paint(QPainter& painter, const Theme& theme) const {
        const QRectF box = toQt(frame);
        const double em = lettering.sizeMm;
        if (next) {
            paintTag(painter, theme, box, {}, lettering, theme.accent, theme.text);
            painter.setPen(Qt::NoPen);
            painter.setBrush(theme.accent);
            painter.drawPath(roundedBox(box, kNextRadiusEm * em));
        }
        if (hung) {
            if (!next) paintTag(painter, theme, box, {}, lettering, theme.dimText, theme.text);
            return drawText(painter, text, box.center(), lettering, next ? theme.card : theme.text);
        }
        paintTag(painter, theme, box, {}, lettering, theme.dimText, theme.text);
        painter.setPen(Qt::NoPen);
        painter.setBrush(theme.accent);
        painter.drawPath(disc({box.left() + kPinInsetEm * em, box.center().y()}, kPinHeadEm * em));
        drawText(painter, text, {box.center().x() + kPinRoomEm / 2 * em, box.center().y()}, lettering, theme.text);
    }
    friend bool operator==(const PinnedMark&, const PinnedMark&) = default;
};

struct SparkMark {
    Rect frame;
    std::vector<SparkColumn> columns;
    void paint(QPainter& painter, const Theme& theme) const { paintSpark(painter, theme, toQt(frame), columns); }
    friend bool operator==(const SparkMark&, const SparkMark&) = default;
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
    return tagRoom(tag.frame).adjusted(-kCasingMm, -kCasingMm, kCasingMm, kCasingMm);
}

void addPinned(Patches& patches, const PinnedTags& pinned, const WordSizes& sizes) {
    constexpr double kRoomMm = kSignDiscMm + kRingBreadthMm + kCasingMm;
    for (const PinnedTag& tag : pinned) {
        for (const TagEnd& end : tag.ends)
            patches.push_back(
                movablePatch(fromQt(end.at), {-kRoomMm, -kRoomMm, 2 * kRoomMm, 2 * kRoomMm}, PinEndMark{end.sign}));
    }
    for (const PinnedTag& tag : pinned) {
        if (tag.isNext)
            patches.push_back(movablePatch(fromQt(tag.ends.front().at), {-2, -10, 16, 12}, NextProbeMark{}));
    }
    for (const PinnedTag& tag : pinned)
        patches.push_back(fixedPatch(tagBounds(tag), PinnedMark{fromQt(tag.frame), tag.text, readingLettering(sizes),
                                                                tag.isHung(), tag.isNext}));
    for (const PinnedTag& tag : pinned) {
        if (tag.spark.empty()) continue;
        const double towardY = tag.ends.empty() ? tag.frame.bottom() : tag.ends.front().at.y();
        const QRectF frame = sparkFrame(tag.frame, towardY, readingLettering(sizes).sizeMm);
        patches.push_back(fixedPatch(frame.adjusted(-0.3, -0.3, 0.3, 0.3), SparkMark{fromQt(frame), tag.spark}));
    }
}

void addProbe(Patches& patches, const Picture& picture) {
    if (!picture.marks.probe) return;
    const auto [first, second] = *picture.marks.probe;
    constexpr double kRoomMm = kSignDiscMm + kCasingMm;
    const QRectF around = QRectF(toQt(first), toQt(second)).normalized();
    patches.push_back(fixedPatch(around.adjusted(-kRoomMm, -kRoomMm, kRoomMm, kRoomMm), ProbeMark{first, second}));
}

}  // namespace tiepoint::ui
