#pragma once
// Where a slip is, as far as findings can mean it: its things and holes, and the metal next to them. The nets of supplies reach everywhere;
// naming one of those says nothing about a slip.

#include "core/findings/finding.h"
#include "core/nets/layout.h"
#include "examiner/slip.h"

#include <set>

namespace tiepoint::examiner {

class SlipPlace {
public:
    /// `layout`: of the bench as it is after all slips. It must outlive the place.
    SlipPlace(const Layout& layout, const Slip& slip);

    /// Whether the finding names a thing or a hole of the slip, or metal next to it.
    bool isNamedBy(const Finding& finding) const;
    /// The same, or a part that stands on such metal.
    bool isToldBy(const Finding& finding) const;
    /// Whether an edit changes a thing of the slip, or adds something to its metal.
    bool isTouchedBy(const Edit& edit) const;

private:
    bool meets(const Hole& hole) const;
    bool standsOn(const std::string& id) const;

    const Layout& layout_;
    std::set<std::string> things_;
    std::set<Hole> holes_;
    std::set<int> nets_, strips_;
};

}  // namespace tiepoint::examiner
