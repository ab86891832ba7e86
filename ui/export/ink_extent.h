#pragma once
// How far a picture's ink reaches: bodies, leads that hang, wires, notes, tags, flags, light and shadow. Needs a QGuiApplication, since
// words are measured; any thread that may paint.

#include "ui/paint/picture.h"

#include <QRectF>

namespace tiepoint::ui {

/// Around all that paintBench draws of the picture, mm; empty where it draws nothing.
QRectF inkExtent(const Picture& picture);

}  // namespace tiepoint::ui
