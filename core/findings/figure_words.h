#pragma once
// The proof of a finding in words: "current 59.0 mA, limit 30.0 mA". Pure; safe from any thread.

#include "core/base/figure.h"
#include "core/findings/finding.h"

#include <string>

namespace tiepoint {

/// Adds a figure of a snapshot to the proof, full and as it is shown; and beside it the limit that it is compared with.
void addFigure(Finding& finding, const std::string& name, const Figure& figure);
void addFigure(Finding& finding, const std::string& name, const Figure& figure, double limit);

/// Its figures with their units; those that count things, and those that the sentence says better, are left out.
std::string figureWords(const Finding& finding);

}  // namespace tiepoint
