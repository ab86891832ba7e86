#pragma once
// The live layers, one function for each kind of mark, so that a view can put its sprites and caches in place
// of the slow ones. Order: everything of `under` before the parts, everything of `over` after them.

#include "ui/paint/flow_paths.h"
#include "ui/paint/picture.h"

#include <QPainter>

namespace tiepoint::ui {

// Under the parts. Change with the snapshot only, unless said otherwise.
void paintMetalUnder(QPainter& painter,
                     const Picture& picture);  ///< strips seen through or in the colour of their volts
void paintHoveredNet(QPainter& painter, const Picture& picture);  ///< changes with the pointer
void paintBeds(QPainter& painter, const Picture& picture, const FlowPaths& paths);
void paintHalos(QPainter& painter, const Picture& picture);  ///< slow: views draw sprites

// Over the parts.
void paintLitDomes(QPainter& painter, const Picture& picture);  ///< slow: views draw sprites
void paintInsides(QPainter& painter,
                  const Picture& picture);  ///< inner metal in the strips view and under the pointer
void paintPressed(QPainter& painter, const Picture& picture);   ///< pressed caps
void paintDisplays(QPainter& painter, const Picture& picture);  ///< figures of supplies
void paintInnerBeds(QPainter& painter, const Picture& picture, const FlowPaths& paths);
void paintVoltCores(QPainter& painter,
                    const Picture& picture);  ///< the stripe in jumpers in the voltage view
void paintCapLetters(QPainter& painter, const Picture& picture);  ///< over the ghost arrows of pressed caps
void paintLightRays(QPainter& painter, const Picture& picture);
void paintOverloads(QPainter& painter, const Picture& picture);  ///< collars and flags
void paintIds(QPainter& painter, const Picture& picture);
void paintReadings(QPainter& painter, const Picture& picture);
void paintHandMarks(QPainter& painter,
                    const Picture& picture);  ///< selection, targets, what is carried, words

/// The bed's colour: the arrow's own, thin.
QColor bedColour(const Theme& theme);

}  // namespace tiepoint::ui
