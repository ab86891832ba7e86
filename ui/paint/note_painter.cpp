#include "ui/paint/note_painter.h"

#include "ui/paint/curve.h"
#include "ui/paint/lettering.h"
#include "ui/paint/part_seen.h"
#include "ui/paint/shade.h"

namespace tiepoint::ui {
namespace {

constexpr double kCutCornerEm = 1.05, kEyeletRadiusEm = 0.5, kRuleEm = 0.06;
constexpr double kKnotMm = 0.85, kKnotLineMm = 0.5;
constexpr double kThreadOfLeader = 3 / 2.4;
constexpr double kShadowShare = 0.45;
constexpr double kSag = 0.1;  ///< of a thread, as a share of its way

/// A paper whose corners at the eyelet are cut straight.
QPainterPath paperShape(const QRectF& frame, double em) {
    const double cut = std::min(kCutCornerEm * em, frame.height() / 2);
    QPainterPath path(frame.topLeft() + QPointF(cut, 0));
    path.lineTo(frame.topRight());
    path.lineTo(frame.bottomRight());
    path.lineTo(frame.bottomLeft() + QPointF(cut, 0));
    path.lineTo(frame.bottomLeft() + QPointF(0, -cut));
    path.lineTo(frame.topLeft() + QPointF(0, cut));
    path.closeSubpath();
    return path;
}

struct PaperMark {
    Rect paper;
    Point eyelet;
    QStringList lines;
    double sizeMm, em;
    void paint(QPainter& painter, const Theme& theme) const {
        const QRectF frame = toQt(paper);
        if (!theme.flat) {
            painter.setPen(Qt::NoPen);
            painter.setBrush(faded(theme.furnishing.shadow, kShadowShare * theme.furnishing.shadow.alphaF()));
            for (const double away : {0.3, 0.55, 0.8})
                painter.drawPath(paperShape(frame.translated(0.7 * away, away), em));
        }
        painter.setPen(outlinePen(theme.furnishing.paperEdge, theme.outlineMm));
        painter.setBrush(theme.furnishing.paper);
        painter.drawPath(paperShape(frame, em));
        painter.setPen(outlinePen(faded(theme.furnishing.paperEdge, 0.6), kRuleEm * em));
        const double rule = frame.left() + kNoteRuleEm * em, pad = 0.6 * em;
        painter.drawLine(QPointF(rule, frame.top() + pad), QPointF(rule, frame.bottom() - pad));
        painter.setPen(outlinePen(theme.furnishing.twineEdge, theme.outlineMm));
        painter.setBrush(theme.furnishing.twine);
        painter.drawPath(disc(toQt(eyelet), kEyeletRadiusEm * em));
        painter.setBrush(theme.furnishing.twineEdge);
        painter.drawPath(disc(toQt(eyelet), 0.45 * kEyeletRadiusEm * em));
        const double line = kNoteLineEm * sizeMm;
        double y = frame.center().y() - line * static_cast<double>(lines.size() - 1) / 2;
        for (const QString& words : lines) {
            drawText(painter, words, {frame.left() + kNoteTextEm * em, y}, noteLettering(sizeMm), theme.text,
                     Qt::AlignLeft);
            y += line;
        }
    }
    friend bool operator==(const PaperMark&, const PaperMark&) = default;
};

struct ThreadMark {
    CurveSeen line;
    double breadth;
    void paint(QPainter& painter, const Theme& theme) const {
        const QPainterPath path = line.cubic().path();
        painter.strokePath(path, outlinePen(theme.furnishing.twineEdge, breadth));
        painter.strokePath(path, outlinePen(theme.furnishing.twine, 0.55 * breadth));
    }
    friend bool operator==(const ThreadMark&, const ThreadMark&) = default;
};

/// The ring of thread about the hole.
struct KnotMark {
    void paint(QPainter& painter, const Theme& theme) const {
        painter.setBrush(Qt::NoBrush);
        painter.strokePath(disc({0, 0}, kKnotMm), outlinePen(theme.furnishing.twineEdge, kKnotLineMm));
        painter.strokePath(disc({0, 0}, kKnotMm), outlinePen(theme.furnishing.twine, 0.5 * kKnotLineMm));
    }
    friend bool operator==(const KnotMark&, const KnotMark&) = default;
};

Cubic threadOf(const NotePlace& note) {
    const QPointF way = note.knot - note.eyelet;
    const QPointF sag(-kSag * std::abs(way.y()), kSag * std::abs(way.x()));
    return {note.eyelet, note.eyelet + way * 0.35 + sag, note.eyelet + way * 0.7 + sag, note.knot};
}

Patch paperPatch(const NotePlace& note, double em) {
    constexpr double kShadowMm = 2;
    return fixedPatch(note.paper.adjusted(-kShadowMm, -kShadowMm, kShadowMm, kShadowMm),
                      PaperMark{fromQt(note.paper), fromQt(note.eyelet), note.lines, note.sizeMm, em});
}

}  // namespace

QRectF noteFrame(const Picture& picture, int note) { return placeNotes(picture)[static_cast<std::size_t>(note)].paper; }

QRectF noteBounds(const Picture& picture, int note) {
    constexpr double kRoomMm = 2;
    const NotePlace place = placeNotes(picture)[static_cast<std::size_t>(note)];
    return place.paper.united(threadOf(place).path().boundingRect()).adjusted(-kRoomMm, -kRoomMm, kRoomMm, kRoomMm);
}

void addThreads(Patches& patches, const Picture& picture) {
    const double breadth = kThreadOfLeader * picture.sizes.leaderMm;
    for (const NotePlace& note : placeNotes(picture)) {
        const Cubic thread = threadOf(note);
        const QRectF room = thread.path().boundingRect().adjusted(-breadth, -breadth, breadth, breadth);
        patches.push_back(fixedPatch(room, ThreadMark{CurveSeen::of(thread), breadth}));
    }
}

void addNotes(Patches& patches, const Picture& picture) {
    constexpr double kRoomMm = kKnotMm + kKnotLineMm;
    for (const NotePlace& note : placeNotes(picture)) {
        patches.push_back(movablePatch(fromQt(note.knot), {-kRoomMm, -kRoomMm, 2 * kRoomMm, 2 * kRoomMm}, KnotMark{}));
        patches.push_back(paperPatch(note, picture.sizes.noteMm));
    }
}

void addUnfoldedNote(Patches& patches, const Picture& picture, int note) {
    if (placeNotes(picture)[static_cast<std::size_t>(note)].isCutOff)
        patches.push_back(paperPatch(unfolded(picture, note), picture.sizes.noteMm));
}

}  // namespace tiepoint::ui
