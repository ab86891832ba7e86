#pragma once
// How a real board was built otherwise than the bench on the table, its plan: an empty dashed outline where a thing stands, and one arrow that
// hops from each wrong hole to the right one; a cross on what is there too many, and words where a value is another or a thing is missing.
// In millimetres of the bench.

#include "ui/paint/bench_seen.h"
#include "ui/paint/patch.h"

namespace tiepoint::ui {

struct BuiltInput {
    BenchSeen plan, built;
    friend bool operator==(const BuiltInput&, const BuiltInput&) = default;
};
/// That of the picture's marks, if there is one.
BuiltInput builtInput(const Picture& picture);
void addBuilt(Patches& patches, const BuiltInput& input);

}  // namespace tiepoint::ui
