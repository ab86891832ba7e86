#pragma once
// What learners get back: a page each that says where to look and never the solution. Needs a QGuiApplication, but no display.

#include "core/compare/class_comparison.h"
#include "ui/sheet/pages.h"

#include <string>
#include <vector>

namespace tiepoint::ui {

/// A page for each row.
std::vector<std::vector<Block>> feedbackPages(const std::vector<LearnerRow>& rows, Paper paper);

/// Writes a PDF, or nothing. Returns why it failed, or nothing.
std::optional<QString> saveFeedback(const std::vector<LearnerRow>& rows, const std::string& title, Paper paper,
                                    const QString& path);

}  // namespace tiepoint::ui
