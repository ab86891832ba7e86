#include "ui/paint/words_layer.h"

#include "ui/paint/board_back.h"
#include "ui/paint/live_layers.h"
#include "ui/paint/pinned_places.h"

namespace tiepoint::ui {

WordsInput wordsInput(const Picture& picture, std::shared_ptr<const WordGround> ground) {
    WordsInput input;
    input.ground = std::move(ground);
    input.turned = picture.table->turned;
    addCapLetters(input.capLetters, picture);
    if (!picture.wordsToCome) input.ids = idWords(picture);
    input.overloads = overloads(picture);
    if (picture.pinned) input.pinned = *picture.pinned;
    if (picture.netTags) input.netTags = *picture.netTags;
    if (picture.views.readings || picture.views.voltage) input.readings = meterWords(picture);
    input.changes = changesSeen(picture);
    input.findings = findingsSeen(picture);
    return input;
}

std::vector<FindingMark> addWords(Patches& patches, const WordsInput& input, Clearance clearance) {
    const WordGround& ground = *input.ground;
    addFindingPlaces(patches, input.findings, ground);
    patches.insert(patches.end(), input.capLetters.begin(), input.capLetters.end());
    if (input.turned) addTurnSign(patches, ground.boardsMm, ground.sizes);
    addUsedNumbers(patches, ground.numbers, ground.sizes.numberMm);
    {
        Clearance ofIds = clearance;
        takePinned(input.pinned, ofIds);
        const std::vector<Label> ids = placeIds(input.ids, ofIds);
        addIds(patches, ids, ground.sizes);
        for (const Label& id : ids) clearance.take(id.frame);
    }
    // Flags keep off ids, notes and pinned readings, readings off flags; symbols of findings and changes give way to everything.
    for (const Rect& note : ground.notes) clearance.take(toQt(note));
    takePinned(input.pinned, clearance);
    takePinnedEnds(input.pinned, clearance);
    for (const NetTag& tag : input.netTags) {
        clearance.take(toQt(tag.frame));
        clearance.take(endFrame({toQt(tag.ring)}));
    }
    addOverloads(patches, input.overloads, clearance);
    addPinned(patches, input.pinned, ground.sizes);
    addNetTags(patches, input.netTags, ground.sizes);
    addReadings(patches, placeReadings(input.readings, clearance), ground.sizes);
    std::vector<FindingMark> marks = placeFindings(input.findings, clearance);
    addChanges(patches, input.changes, clearance);
    addFindingMarks(patches, input.findings, marks);
    return marks;
}

}  // namespace tiepoint::ui
