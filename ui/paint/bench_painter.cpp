// The order of the layers, from the table top up.

#include "ui/paint/bench_painter.h"

#include "ui/paint/change_painter.h"
#include "ui/paint/live_layers.h"
#include "ui/paint/note_painter.h"

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
void paintLayer(QPainter& painter, Add add) {
    Patches patches;
    add(patches);
    paintPatches(painter, patches);
}

}  // namespace

void addBoards(Patches& patches, const Picture& picture) {
    for (int board = 0; board < static_cast<int>(picture.bench().boards.size()); ++board)
        addBoard(patches, picture, board);
}

void addUnderParts(Patches& patches, const Picture& picture, const FlowPaths& paths, const std::vector<int>& litNets) {
    addMetal(patches, picture);
    addLitNet(patches, picture, picture.marks.hoverNet);
    for (const int net : litNets) addLitNet(patches, picture, net);
    addBeds(patches, picture, paths);
    addHalos(patches, picture);
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

std::vector<FindingMark> addWords(Patches& patches, const Picture& picture, const Clearance& ground,
                                  const std::vector<Label>& ids) {
    addFindingPlaces(patches, picture);
    addCapLetters(patches, picture);
    addIds(patches, picture, ids);
    // Flags keep off ids, notes and pinned readings, readings off flags; symbols of findings and changes give way to everything.
    Clearance clearance = ground;
    for (const Label& id : ids) clearance.take(id.frame);
    for (int note = 0; note < static_cast<int>(picture.bench().notes.size()); ++note)
        clearance.take(noteFrame(picture, note));
    takePinned(picture, clearance);
    takePinnedEnds(picture, clearance);
    addOverloads(patches, picture, clearance);
    addPinned(patches, picture);
    if (picture.live() && (picture.views.readings || picture.views.voltage))
        addReadings(patches, picture, placeReadings(picture, clearance));
    const std::vector<FindingMark> marks = placeFindings(picture, clearance);
    if (picture.live()) addChanges(patches, picture, clearance);
    addFindingMarks(patches, picture, marks);
    return marks;
}

void paintBench(QPainter& painter, const Picture& picture) {
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    FlowPaths paths(picture);
    const Clearance ground(picture);
    Clearance clearance = ground;
    takePinned(picture, clearance);
    const std::vector<Label> ids = placeIds(picture, clearance);
    paintLayer(painter, [&](Patches& patches) {
        addBoards(patches, picture);
        addUnderParts(patches, picture, paths, {});
    });
    paintArrows(painter, picture, paths, Layer::UnderParts);
    for (int part = 0; part < static_cast<int>(picture.bench().parts.size()); ++part) paintPart(painter, picture, part);
    for (int jumper = 0; jumper < static_cast<int>(picture.bench().jumpers.size()); ++jumper)
        paintJumper(painter, picture, jumper);
    paintLayer(painter, [&](Patches& patches) { addOnParts(patches, picture, paths); });
    paintArrows(painter, picture, paths, Layer::OverParts);
    paintLayer(painter, [&](Patches& patches) {
        addWords(patches, picture, ground, ids);
        addHandMarks(patches, picture);
    });
    painter.restore();
}

}  // namespace tiepoint::ui
