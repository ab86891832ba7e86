#pragma once
// The words of the picture, over the arrows: letters of pressed caps, ids, flags, readings, changes, symbols of findings.
//
// Finding places for them is dear, so that they have an input: all that they say, as it is shown. While figures change below their last
// digit it stays the same, and so do the words.

#include "ui/paint/change_painter.h"
#include "ui/paint/finding_marks.h"
#include "ui/paint/label_places.h"
#include "ui/paint/overload.h"
#include "ui/paint/patch.h"
#include "ui/paint/picture.h"

namespace tiepoint::ui {

struct WordsInput {
    SharedValue<WordGround> ground;
    bool turned = false;  ///< a sign says so
    Patches capLetters;
    std::vector<IdWords> ids;
    std::vector<Overload> overloads;
    PinnedTags pinned;
    std::vector<NetTag> netTags;
    std::vector<ReadingWords> readings;  ///< of meters
    std::vector<ChangeSeen> changes;
    std::vector<FindingSeen> findings;
    friend bool operator==(const WordsInput&, const WordsInput&) = default;
};

/// `ground`: the picture's.
WordsInput wordsInput(const Picture& picture, std::shared_ptr<const WordGround> ground);
/// Tells where the symbols of findings stand. The clearance is that of the ground.
std::vector<FindingMark> addWords(Patches& patches, const WordsInput& input, Clearance clearance);

}  // namespace tiepoint::ui
