#pragma once
// A class's comparison as one page of HTML: a row a learner, with a picture on which the places are marked that differ. Nothing outside
// of the file is loaded.

#include "core/compare/class_comparison.h"

#include <string>

namespace tiepoint::app {

/// Draws the pictures by all processors; needs a QGuiApplication.
std::string classAsHtml(const std::vector<LearnerRow>& rows, const ComparisonTarget& target);

}  // namespace tiepoint::app
