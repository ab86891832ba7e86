#pragma once
// Where the ids of parts like to stand: beside their bodies. Painters settle it to the tenth of a millimetre; wires only keep off.

#include "core/bench/bodies.h"

namespace tiepoint {

/// For each body the first of four places round it that lies on no other body: across its leads first, as painters choose.
InOrder<Rect> idPlaces(const Bench& bench, const InOrder<Body>& bodies, const Table& table);

}  // namespace tiepoint
