// The order of the layers, from the table top up.

#include "ui/paint/bench_painter.h"

#include "ui/paint/live_layers.h"
#include "ui/paint/note_painter.h"
#include "ui/paint/rest_patch.h"

namespace tiepoint::ui {
namespace {

bool isElectrons(const Picture& picture) { return picture.views.arrows == Arrows::Electrons; }

void paintArrows(QPainter& painter, const Picture& picture, FlowPaths& paths, Layer layer) {
    const Snapshot* live = picture.live();
    if (!live) return;
    std::vector<ArrowMark> marks;
    paths.marks(*live, picture.views.arrows, fullScaleAmpere(picture), picture.phaseMm, layer, marks);
    drawMarks(painter, *picture.theme, marks, isElectrons(picture));
}

template <class Add>
void paintLayer(QPainter& painter, const Picture& picture, Add add) {
    Patches patches;
    add(patches);
    paintPatches(painter, *picture.theme, patches);
}

void addResting(Patches& patches, const Picture& picture) {
    for (int part = 0; part < static_cast<int>(picture.bench().parts.size()); ++part)
        patches.push_back(restPatch(picture, part));
    for (int jumper = 0; jumper < static_cast<int>(picture.bench().jumpers.size()); ++jumper)
        patches.push_back(restPatchOfJumper(picture, jumper));
}

}  // namespace

void addUnderParts(Patches& patches, const Picture& picture, const FlowPaths& paths, const std::vector<int>& litNets) {
    addMetal(patches, picture);
    addLitNet(patches, picture, picture.marks.hoverNet);
    for (const int net : litNets) addLitNet(patches, picture, net);
    addBeds(patches, picture, paths);
    addHalos(patches, picture);
    addThreads(patches, picture);
    addLeaders(patches, picture);
}

void addOnParts(Patches& patches, const Picture& picture, const FlowPaths& paths) {
    addLitDomes(patches, picture);
    addInsides(patches, picture);
    addPressed(patches, picture);
    addDisplays(patches, picture);
    addInnerBeds(patches, picture, paths);
    addVoltCores(patches, picture);
    addLightRays(patches, picture);
}

void paintBench(QPainter& painter, const Picture& picture) {
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    FlowPaths paths(picture);
    const auto ground = wordGround(picture);
    paintLayer(painter, picture, [&](Patches& patches) {
        for (int board = 0; board < static_cast<int>(picture.bench().boards.size()); ++board)
            addBoard(patches, boardSeen(picture, board));
        addUnderParts(patches, picture, paths, {});
    });
    paintArrows(painter, picture, paths, Layer::UnderParts);
    paintLayer(painter, picture, [&](Patches& patches) {
        addResting(patches, picture);
        addOnParts(patches, picture, paths);
    });
    paintArrows(painter, picture, paths, Layer::OverParts);
    paintLayer(painter, picture, [&](Patches& patches) {
        addWords(patches, wordsInput(picture, ground), Clearance(ground));
        addHandMarks(patches, picture);
    });
    painter.restore();
}

}  // namespace tiepoint::ui
