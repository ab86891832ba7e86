#pragma once
// What a bench would show if a wrong idea were so: a snapshot with the idea's own currents, which runs along the metal as true ones do, gives
// no light, and breaks a law where the idea does. Never mixed with a solution. Pure; safe from any thread.

#include "core/course/lesson.h"
#include "core/snapshot/snapshot.h"

#include <memory>

namespace tiepoint {

/// Requires that the idea's leads are on the bench.
std::shared_ptr<const Snapshot> ghostOf(const Situation& situation, const WrongIdea& idea);

}  // namespace tiepoint
