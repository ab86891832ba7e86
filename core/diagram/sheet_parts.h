#pragma once
// What is done to a sheet once its circuits are laid out.

#include "core/diagram/diagram.h"

namespace tiepoint {

/// Adds all that another sheet holds, moved. Parts without a place there stay as they are.
void addMoved(Diagram& diagram, const Diagram& other, Point by);
/// Joins wires that go on straight, finds dots, crossings and the places of tags.
void finishSheet(Diagram& diagram);

}  // namespace tiepoint
