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

// Figures as they are drawn: rounded to what can be told apart, so that noise below it changes nothing.
int brightnessStep(double brightness);  ///< of 255; 0 only without any light
double brightnessOfStep(int step);
int colourStep(double share);  ///< of a scale of colours
double colourShare(int step);
double drawnBreadth(double mm);  ///< of a bed
/// Everything that the painter of its package draws.
QRectF partBounds(const PartScene& scene);

}  // namespace tiepoint::ui
