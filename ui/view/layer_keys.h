#pragma once
// What each layer of the canvas depends on, as bytes to compare: while they are the same the layer's patches needn't be gathered again.

#include "ui/paint/picture.h"
#include "ui/view/frame.h"

#include <QByteArray>

#include <vector>

namespace tiepoint::ui {

QByteArray boardsKey(const Picture& picture);
QByteArray underKey(const Picture& picture, const std::vector<int>& litNets);
QByteArray arrowsKey(const Picture& picture, const Frame& frame);
QByteArray partsKey(const Picture& picture);
QByteArray idsKey(const Picture& picture);
QByteArray wordsKey(const Picture& picture);
/// Of what the hand points at, but for what it carries.
QByteArray marksKey(const Picture& picture);

}  // namespace tiepoint::ui
