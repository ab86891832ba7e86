#pragma once
// An image to paint on in millimetres, several times faster than on the image itself.
//
// The raster engine flattens curves in the units of the path, and where a curve is shorter than one such unit (as corners, discs and
// letters are in millimetres) it splits it into pieces of a tenth of a pixel. This device maps each path to pixels first, so that curves
// become pieces that are straight to a quarter of a pixel. Lengths scale alike in both directions. Use from the thread that paints.

#include "ui/paint/relay_device.h"

#include <QImage>

namespace tiepoint::ui {

class PixelSheet : public RelayDevice {
public:
    /// The image must outlive the sheet and the painter on it; its own device pixel ratio must be 1 until that ends.
    explicit PixelSheet(QImage& image);

private:
    class Engine;
};

}  // namespace tiepoint::ui
