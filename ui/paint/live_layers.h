#pragma once
// The live layers as patches, one function for each kind of mark. Order: everything of `under` before the parts,
// everything of `over` after them.

#include "ui/paint/board_layer.h"
#include "ui/paint/flow_paths.h"
#include "ui/paint/label_places.h"
#include "ui/paint/patch.h"
#include "ui/paint/picture.h"
#include "ui/paint/words_layer.h"

namespace tiepoint::ui {

// Under the parts.
void addMetal(Patches& patches, const Picture& picture);  ///< strips seen through or in the colour of their volts
void addLitNet(Patches& patches, const Picture& picture, int net);  ///< hovered, or to be joined
void addBeds(Patches& patches, const Picture& picture, const FlowPaths& paths);
void addHalos(Patches& patches, const Picture& picture);
void addLeaders(Patches& patches, const Picture& picture);  ///< of the tags of nets and of pinned readings

// Over the parts.
void addLitDomes(Patches& patches, const Picture& picture);
void addInsides(Patches& patches, const Picture& picture);   ///< inner metal in the strips view and under the pointer
void addPressed(Patches& patches, const Picture& picture);   ///< pressed caps
void addDisplays(Patches& patches, const Picture& picture);  ///< figures of supplies and meters
/// The beat while something sounds, else -1: the displays look otherwise at each.
int soundingBeat(const Picture& picture);
void addInnerBeds(Patches& patches, const Picture& picture, const FlowPaths& paths);
void addVoltCores(Patches& patches, const Picture& picture);  ///< the stripe in jumpers in the voltage view
void addLightRays(Patches& patches, const Picture& picture);

// Over the arrows.
void addCapLetters(Patches& patches, const Picture& picture);  ///< of pressed caps
void addIds(Patches& patches, const std::vector<Label>& ids, const WordSizes& sizes);
void addReadings(Patches& patches, const std::vector<Label>& readings, const WordSizes& sizes);
void addNetTags(Patches& patches, const std::vector<NetTag>& tags, const WordSizes& sizes);  ///< with their rings
QRectF tagBounds(const PinnedTag& tag);  ///< everything that is drawn of one
void addPinned(Patches& patches, const PinnedTags& pinned, const WordSizes& sizes);
void addProbe(Patches& patches, const Picture& picture);  ///< while the second hole of a reading is looked for
/// What stands at the pointer: the hole there, and the volts of its net.
QString hoverWords(const Picture& picture);
void addHandMarks(Patches& patches, const Picture& picture);  ///< selection, targets, what is carried, words
/// The same with what the mend and the group look like, see mend_painter.h and carried_group.h.
void addHandMarks(Patches& patches, const Picture& picture, const Patches& mended, const Patches& group);

// The layers between which arrows run, in order, with board_layer.h before and words_layer.h over them.
void addUnderParts(Patches& patches, const Picture& picture, const FlowPaths& paths, const std::vector<int>& litNets);
void addOnParts(Patches& patches, const Picture& picture, const FlowPaths& paths);

/// The bed's colour: the arrow's own, thin.
QColor bedColour(const Theme& theme);

}  // namespace tiepoint::ui
