#pragma once
// The resistors at hand: the values that a kit holds. Mends and the resistor helper propose only those. A plain value.

#include "core/base/result.h"

#include <string>
#include <string_view>
#include <vector>

namespace tiepoint {

class ResistorDrawer {
public:
    /// Every preferred number of E12, the series that most kits hold (common practice).
    ResistorDrawer() = default;
    /// These resistances, in ohm, positive; none means every number of E12.
    explicit ResistorDrawer(std::vector<double> ohms);

    bool isEverything() const { return ohms_.empty(); }
    const std::vector<double>& ohms() const {
        return ohms_;
    }  ///< ascending, each once; empty where it holds everything
    bool holds(double ohm) const;
    /// At most so many resistances from a least one on, ascending (within 1e-9 of relative rounding).
    std::vector<double> from(double leastOhm, int most) const;
    friend bool operator==(const ResistorDrawer&, const ResistorDrawer&) = default;

private:
    std::vector<double> ohms_;
};

/// Reads a list as people write it: "220, 330 1k 4k7"; the parts stand apart by blanks, commas or semicolons. Nothing, or "all", is every
/// number of E12. The error names the first that is no resistance between 0.01 ohm and 1 Gohm.
Result<ResistorDrawer> readDrawer(std::string_view text);
/// The list in letter codes: "220R 330R 1k 4k7"; "all" for everything.
std::string writeDrawer(const ResistorDrawer& drawer);

}  // namespace tiepoint
