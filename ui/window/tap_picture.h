#pragma once
// The picture of the tap and the pipe: a closed ring of water with a pump, a tap, a narrow place and a wheel, each named beside what it
// stands for; and beside it where the picture fails. Drawn in a widget's pixels.

#include "ui/theme/look.h"
#include "ui/theme/words.h"

#include <QPainter>

namespace tiepoint::ui {

void paintTapPicture(QPainter& painter, WordSheet& sheet, const Look& look, const QRectF& box);

}  // namespace tiepoint::ui
