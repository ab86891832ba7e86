#pragma once
// What a hand does to put a slip of the first build right: one edit that the laws of placing allow, and the leg that matters, where it is and
// where the edit brings it. The guide marks both places and shows the metal there before and after. Nothing where no place was
// found. Pure; safe from any thread.

#include "core/edit/edit.h"
#include "core/nets/layout.h"

#include <functional>
#include <optional>
#include <string>

namespace tiepoint {

struct FirstMend {
    Edit edit;
    std::optional<Hole> is, belongs;  ///< of the leg that matters; nothing where no leg moves
};
using MaybeMend = std::optional<FirstMend>;

/// Looks for mends on one bench. Keeps a reference to the layout.
class FirstMends {
public:
    explicit FirstMends(const Layout& layout) : layout_(layout), bench_(*layout.bench) {}

    /// The part as it is said to lie; `lead` is the leg that matters.
    MaybeMend moved(const Part& to, int lead) const;
    /// The part with one lead in the strip of a hole, the other beside it where nothing else is.
    MaybeMend withLeadIn(const Part& part, int lead, const Hole& strip) const;
    /// One leg of a part of two legs in a column where nothing is, the other where it was.
    MaybeMend oneLegElsewhere(const Part& part) const;
    /// The part with each leg in the column of the other one.
    MaybeMend turnedAbout(const Part& part) const;
    /// The same by the fewest presses of keys, tried before they are told.
    struct ByKeys {
        Part part;
        std::string keys;
    };
    std::optional<ByKeys> turnedByKeys(const Part& part) const;
    /// An end of a jumper in the strip of a hole.
    MaybeMend endIn(const Jumper& jumper, int end, const Hole& strip) const;
    /// A lead of a box in a rail of plus, or of minus.
    MaybeMend leadInRail(const Part& box, int lead, bool isPlus) const;
    /// Without the first jumper, or else the first part, that `suits` takes for enough once it is gone. With the supply off where `off` names one.
    MaybeMend without(const std::function<bool(const Layout&)>& suits, const Part* off) const;

private:
    bool isEmptyBut(const Hole& hole, const Part& part) const;
    MaybeMend tryLeads(const Part& part, int lead, const Hole& first, const Hole& second) const;

    const Layout& layout_;
    const Bench& bench_;
};

}  // namespace tiepoint
