#pragma once
// The part kinds that a reader of files knows: those that are shipped, and others beside them. Immutable once made; safe from any thread.

#include "core/parts/part_kind.h"

#include <string_view>
#include <vector>

namespace tiepoint {

class Catalogue {
public:
    /// The shipped kinds, and these, whose names none of the shipped ones has. What is read with it points into it: it must live as long.
    explicit Catalogue(std::vector<PartKind> more) : more_(std::move(more)) {}
    Catalogue(const Catalogue&) = delete;
    Catalogue& operator=(const Catalogue&) = delete;

    /// The shipped kinds alone.
    static const Catalogue& shipped();
    /// The kind of that name, or null.
    const PartKind* find(std::string_view name) const;

private:
    std::vector<PartKind> more_;
};

}  // namespace tiepoint
