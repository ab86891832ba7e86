#pragma once
// From a picture to the scene of one part, as package painters take it.

#include "ui/paint/packages/package_painter.h"
#include "ui/paint/picture.h"

namespace tiepoint::ui {

PartScene sceneOf(const Picture& picture, int part);
/// Counts beats of the moving picture, three a second.
int beatOf(const Picture& picture);
/// The y about which a bench's boards lie: wires bow away from it.
double middleYOf(const Picture& picture);
/// Whether the inside of a part is to be seen: in the strips view, or under the pointer.
bool showsInside(const Picture& picture, int part);
/// Between 0 and 1; 0 unless the picture is live.
double brightnessOf(const Picture& picture, int part);

// What of a figure can be told apart in a picture, for looks.
int seenLength(const Picture& picture, double mm);  ///< eighths of a pixel
int seenBrightness(double brightness);              ///< steps of the eight bits of a colour
/// Everything that the painter of its package draws.
QRectF partBounds(const PartScene& scene);
/// Everything within this of a part's middle: its dome, its rays, its collar.
QRectF aboutPart(const PartScene& scene, double mm);

}  // namespace tiepoint::ui
