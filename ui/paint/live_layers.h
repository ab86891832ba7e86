#pragma once
// The live layers as patches, one function for each kind of mark. Order: everything of `under` before the parts,
// everything of `over` after them. The picture must outlive the patches.

#include "ui/paint/finding_marks.h"
#include "ui/paint/flow_paths.h"
#include "ui/paint/label_places.h"
#include "ui/paint/patch.h"
#include "ui/paint/picture.h"

namespace tiepoint::ui {

// Under the parts.
void addMetal(Patches& patches, const Picture& picture);  ///< strips seen through or in the colour of their volts
void addLitNet(Patches& patches, const Picture& picture, int net);  ///< hovered, or to be joined
void addBeds(Patches& patches, const Picture& picture, const FlowPaths& paths);
void addHalos(Patches& patches, const Picture& picture);

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
/// Collars and flags; takes their frames from `clearance`.
void addOverloads(Patches& patches, const Picture& picture, Clearance& clearance);
/// Ids and readings, placed clear of what `clearance` knows and of each other.
void addIds(Patches& patches, const Picture& picture, const std::vector<Label>& ids);
void addReadings(Patches& patches, const Picture& picture, const std::vector<Label>& readings);
QRectF tagBounds(const PinnedTag& tag);  ///< everything that is drawn of one
void addPinnedTag(Patches& patches, const Picture& picture, const PinnedTag& tag);
void addPinned(Patches& patches, const Picture& picture);     ///< tags of pinned readings
void addProbe(Patches& patches, const Picture& picture);      ///< while the second hole of a reading is looked for
void addHandMarks(Patches& patches, const Picture& picture);  ///< selection, targets, what is carried, words

// The layers between which arrows run, in order: boards, under the parts, on the parts, and the words over all.
void addBoards(Patches& patches, const Picture& picture);
void addUnderParts(Patches& patches, const Picture& picture, const FlowPaths& paths, const std::vector<int>& litNets);
void addOnParts(Patches& patches, const Picture& picture, const FlowPaths& paths);
/// `ground`: bodies and wires of the bench; `ids`: placed on it. Tells where the symbols of findings stand.
std::vector<FindingMark> addWords(Patches& patches, const Picture& picture, const Clearance& ground,
                                  const std::vector<Label>& ids);

/// The bed's colour: the arrow's own, thin.
QColor bedColour(const Theme& theme);

}  // namespace tiepoint::ui
