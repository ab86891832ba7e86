// The order of the layers, from the table top up.

#include "ui/paint/bench_painter.h"

#include "ui/paint/live_layers.h"

namespace tiepoint::ui {
namespace {

bool isElectrons(const Picture& picture) {
    return picture.views.arrows == Arrows::Electrons;
}

void paintArrows(QPainter& painter, const Picture& picture, FlowPaths& paths, Layer layer) {
    const Snapshot* live = picture.live();
    if (!live) return;
    std::vector<ArrowMark> marks;
    paths.marks(*live, picture.views.arrows, fullScaleAmpere(picture), picture.phaseMm, layer, marks);
    drawMarks(painter, *picture.theme, marks, isElectrons(picture));
}

void paintUnder(QPainter& painter, const Picture& picture, FlowPaths& paths) {
    paintMetalUnder(painter, picture);
    paintHoveredNet(painter, picture);
    paintBeds(painter, picture, paths);
    paintHalos(painter, picture);
    paintArrows(painter, picture, paths, Layer::UnderParts);
}

void paintOver(QPainter& painter, const Picture& picture, FlowPaths& paths) {
    paintLitDomes(painter, picture);
    paintInsides(painter, picture);
    paintPressed(painter, picture);
    paintDisplays(painter, picture);
    paintInnerBeds(painter, picture, paths);
    paintVoltCores(painter, picture);
    paintLightRays(painter, picture);
    paintArrows(painter, picture, paths, Layer::OverParts);
    paintCapLetters(painter, picture);
    paintIds(painter, picture);
    paintOverloads(painter, picture);
    paintReadings(painter, picture);
    paintHandMarks(painter, picture);
}

/// Paints with antialiasing and leaves the painter as it was.
template <class Paint>
void smoothly(QPainter& painter, Paint paint) {
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    paint();
    painter.restore();
}

}  // namespace

void paintUnderParts(QPainter& painter, const Picture& picture) {
    smoothly(painter, [&] {
        FlowPaths paths(picture);
        paintUnder(painter, picture, paths);
    });
}

void paintOverParts(QPainter& painter, const Picture& picture) {
    smoothly(painter, [&] {
        FlowPaths paths(picture);
        paintOver(painter, picture, paths);
    });
}

void paintBench(QPainter& painter, const Picture& picture) {
    smoothly(painter, [&] {
        FlowPaths paths(picture);
        for (int board = 0; board < static_cast<int>(picture.bench().boards.size()); ++board)
            paintBoard(painter, picture, board);
        paintUnder(painter, picture, paths);
        for (int part = 0; part < static_cast<int>(picture.bench().parts.size()); ++part)
            paintPart(painter, picture, part);
        for (int jumper = 0; jumper < static_cast<int>(picture.bench().jumpers.size()); ++jumper)
            paintJumper(painter, picture, jumper);
        paintOver(painter, picture, paths);
    });
}

}  // namespace tiepoint::ui
