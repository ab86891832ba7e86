// Draws the labels that label_places has placed.

#include "ui/paint/label_painter.h"

#include "ui/paint/board_back.h"
#include "ui/paint/label_places.h"
#include "ui/paint/live_layers.h"
#include "ui/paint/shade.h"
#include "ui/paint/used_numbers.h"

namespace tiepoint::ui {
namespace {

constexpr double kTagRadiusMm = 0.5, kPatchRadiusMm = 0.35;
constexpr double kLabelPadMm = 0.8, kTagHeightShare = 1.5;

}  // namespace

void paintTag(QPainter& painter, const Theme& theme, const QRectF& frame, const QString& text,
              const Lettering& lettering, const QColor& edge) {
    if (!theme.flat) {
        painter.setPen(Qt::NoPen);
        painter.setBrush(faded(Qt::black, theme.dark ? 0.4 : 0.16));
        painter.drawPath(roundedBox(frame.translated(0.12, 0.26), kTagRadiusMm));
    }
    painter.setPen(outlinePen(edge, theme.outlineMm));
    painter.setBrush(theme.card);
    painter.drawPath(roundedBox(frame, kTagRadiusMm));
    drawText(painter, text, frame.center(), lettering, theme.text);
}

QRectF tagRoom(const QRectF& frame) { return frame.adjusted(-0.2, -0.2, 0.4, 0.5); }

QRectF tagBeside(QPointF at, const QString& text, const Lettering& lettering) {
    constexpr double kAwayMm = 2.2;
    const double height = lettering.sizeMm * kTagHeightShare;
    return {at.x() + kAwayMm, at.y() - kAwayMm - height, textWidthMm(text, lettering) + 2 * kLabelPadMm, height};
}

void addIds(Patches& patches, const Picture& picture, const std::vector<Label>& ids) {
    if (picture.table->turned) addTurnSign(patches, picture);
    if (picture.sizes.numberMm > 0) addUsedNumbers(patches, picture);
    const Theme& theme = *picture.theme;
    const QColor ground = faded(blend(theme.boardTop, theme.boardBottom, 0.5), 0.92);
    for (const Label& label : ids) {
        patches.push_back({label.frame, PatchLook() << label.text << label.dim,
                           [label, &theme, ground, lettering = idLettering(picture, label.dim)](QPainter& painter) {
                               painter.setPen(Qt::NoPen);
                               painter.setBrush(ground);
                               painter.drawPath(roundedBox(label.frame, kPatchRadiusMm));
                               drawText(painter, label.text, label.frame.center(), lettering,
                                        label.dim ? theme.label : theme.text);
                           }});
    }
}

void addReadings(Patches& patches, const Picture& picture, const std::vector<Label>& readings) {
    const Theme& theme = *picture.theme;
    const QColor edge =
        theme.flat ? theme.boardEdge : (theme.dark ? theme.metalEdge : blend(theme.cardEdge, theme.label, 0.55));
    for (const Label& label : readings) {
        patches.push_back({tagRoom(label.frame), PatchLook() << label.text,
                           [label, &theme, edge, lettering = readingLettering(picture)](QPainter& painter) {
                               paintTag(painter, theme, label.frame, label.text, lettering, edge);
                           }});
    }
}

}  // namespace tiepoint::ui
