#pragma once
// The proof of a finding in words: "current 59.0 mA, limit 30.0 mA". Pure; safe from any thread.

#include "core/findings/finding.h"

namespace tiepoint {

/// Its figures with their units; those that count things, and those that the sentence says better, are left out.
std::string figureWords(const Finding& finding);

}  // namespace tiepoint
