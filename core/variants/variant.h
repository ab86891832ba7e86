#pragma once
// A variant of a bench: what of it is otherwise. Everything else is as in the base. Plain values; indices are the base's.

#include "core/bench/bench.h"

#include <memory>
#include <optional>
#include <vector>

namespace tiepoint {

struct Variant {
    /// A part as it is in the variant: leads elsewhere or turned round, other values, another state. Its kind stays. Nothing: it
    /// isn't there.
    struct PartAs {
        int part;
        std::optional<Part> as;
    };
    /// A jumper whose ends lie elsewhere, or that isn't there.
    struct JumperAs {
        int jumper;
        std::optional<Jumper> as;
    };
    /// A resistance in series with every element of a part, such as of a contact that is dry.
    struct Dry {
        int part;
        double ohm;
    };

    std::vector<PartAs> parts;
    std::vector<JumperAs> jumpers;
    std::vector<Jumper> added;
    std::vector<int> open;  ///< parts inside which nothing conducts; legs of one
                            ///< piece of metal stay joined
    std::vector<Dry> dry;
};

/// The bench of a variant, but for what no bench can say (open, dry). A part that isn't there stays with every lead hanging, so
/// that indices of parts are the base's.
std::shared_ptr<const Bench> benchOf(const Bench& base, const Variant& variant);

/// The part as it is in the variant.
const Part* partIn(const Variant& variant, int part, const Part& base);

}  // namespace tiepoint
