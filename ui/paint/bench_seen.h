#pragma once
// A bench at rest as it would be seen beside the one on the table, for what is shown before it is done.

#include "ui/paint/picture.h"
#include "ui/paint/shared_value.h"

namespace tiepoint::ui {

struct BenchSeen {
    SharedValue<Bench> bench;  ///< null: none
    const Theme* theme = nullptr;
    bool turned = false;
    WordSizes sizes;
    friend bool operator==(const BenchSeen&, const BenchSeen&) = default;

    /// Another bench, or none, as a picture shows its own.
    static BenchSeen of(const Picture& picture, std::shared_ptr<const Bench> bench);
    /// Finds out where everything lies. Requires a bench.
    Picture picture() const;
};

}  // namespace tiepoint::ui
