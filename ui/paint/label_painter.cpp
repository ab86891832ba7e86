// Draws the labels that label_places has placed.

#include "ui/paint/label_painter.h"

#include "ui/paint/label_places.h"
#include "ui/paint/shade.h"

namespace tiepoint::ui {
namespace {

constexpr double kTagRadiusMm = 0.5, kPlateRadiusMm = 0.35;
constexpr double kLabelPadMm = 0.8, kTagHeightShare = 1.5;

QColor edgeColour(const Theme& theme, TagEdge edge) {
    switch (edge) {
        case TagEdge::Reading:
            return theme.flat   ? theme.boardEdge
                   : theme.dark ? theme.metalEdge
                                : blend(theme.cardEdge, theme.label, 0.55);
        case TagEdge::Accent:
            return theme.accent;
        case TagEdge::Hover:
        case TagEdge::PointedFloating:
            return theme.hover;
        case TagEdge::Overload:
            return theme.overload;
        case TagEdge::Dim:
        case TagEdge::Floating:
            break;
    }
    return theme.dimText;
}

struct TagMark {
    Rect frame;
    QString text;
    Lettering lettering;
    TagEdge edge;
    void paint(QPainter& painter, const Theme& theme) const {
        paintTag(painter, theme, toQt(frame), text, lettering, edgeColour(theme, edge),
                 edge == TagEdge::Floating || edge == TagEdge::PointedFloating ? theme.dimText : theme.text);
    }
    friend bool operator==(const TagMark&, const TagMark&) = default;
};

struct PlateMark {
    Rect frame;
    QString text;
    bool dim;
    double sizeMm;
    void paint(QPainter& painter, const Theme& theme) const {
        painter.setPen(Qt::NoPen);
        painter.setBrush(faded(blend(theme.boardTop, theme.boardBottom, 0.5), 0.92));
        painter.drawPath(roundedBox(toQt(frame), kPlateRadiusMm));
        drawText(painter, text, toQt(frame).center(), {sizeMm, dim ? QFont::Normal : QFont::DemiBold},
                 dim ? theme.label : theme.text);
    }
    friend bool operator==(const PlateMark&, const PlateMark&) = default;
};

}  // namespace

void paintTag(QPainter& painter, const Theme& theme, const QRectF& frame, const QString& text,
              const Lettering& lettering, const QColor& edge, const QColor& ink) {
    if (!theme.flat) {
        painter.setPen(Qt::NoPen);
        painter.setBrush(faded(Qt::black, theme.dark ? 0.4 : 0.16));
        painter.drawPath(roundedBox(frame.translated(0.12, 0.26), kTagRadiusMm));
    }
    painter.setPen(outlinePen(edge, theme.outlineMm));
    painter.setBrush(theme.card);
    painter.drawPath(roundedBox(frame, kTagRadiusMm));
    drawText(painter, text, frame.center(), lettering, ink);
}

QRectF tagRoom(const QRectF& frame) { return frame.adjusted(-0.2, -0.2, 0.4, 0.5); }

QRectF tagBeside(QPointF at, const QString& text, const Lettering& lettering) {
    constexpr double kAwayMm = 2.2;
    const double height = lettering.sizeMm * kTagHeightShare;
    return {at.x() + kAwayMm, at.y() - kAwayMm - height, textWidthMm(text, lettering) + 2 * kLabelPadMm, height};
}

Patch tagPatch(const QRectF& frame, const QString& text, const Lettering& lettering, TagEdge edge) {
    return fixedPatch(tagRoom(frame), TagMark{fromQt(frame), text, lettering, edge});
}

Patch platePatch(const QRectF& frame, const QString& text, double sizeMm, bool dim) {
    return fixedPatch(frame, PlateMark{fromQt(frame), text, dim, sizeMm});
}

void addIds(Patches& patches, const std::vector<Label>& ids, const WordSizes& sizes) {
    for (const Label& label : ids) patches.push_back(platePatch(label.frame, label.text, sizes.idMm, label.dim));
}

void addReadings(Patches& patches, const std::vector<Label>& readings, const WordSizes& sizes) {
    for (const Label& label : readings)
        patches.push_back(tagPatch(label.frame, label.text, readingLettering(sizes), TagEdge::Reading));
}

}  // namespace tiepoint::ui
