#pragma once
// How far readings may lie from what is reckoned, when every part is off by its tolerance and all of them against the reading. One part at a
// time is changed both ways and the bench solved again; the changes of all parts are added up. Pure.
//
// Tolerances: a resistor's own, as its last band says; a supply's set voltage 1 %, a USB supply's 5 % (USB 2.0, 7.2.2: 4.75 to 5.25 V);
// cells and blocks 5 %, and an LED's forward voltage 0.2 V (common practice: suppliers state typical and largest figures that far apart).

#include "core/nets/layout.h"
#include "core/snapshot/throws.h"

#include <memory>
#include <vector>

namespace tiepoint {

struct VoltRange {
    double volt = 0, least = 0, greatest = 0;  ///< NaN where floating
};

/// At nets of the bench, in one position of its switches.
std::vector<VoltRange> voltRanges(const std::shared_ptr<const Layout>& layout, const std::vector<Throw>& controls,
                                  const Digits& position, const std::vector<int>& nets);

}  // namespace tiepoint
