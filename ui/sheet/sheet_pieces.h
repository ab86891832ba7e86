#pragma once
// Pieces of a build sheet that its pages share. Internal to ui/sheet.

#include "ui/sheet/board_on_paper.h"
#include "ui/sheet/build_sheet.h"
#include "ui/theme/plain_text.h"

#include <memory>

namespace tiepoint::ui {

inline constexpr double kBesideMm = 6;  ///< between what stands side by side

inline QString paperWords(const std::string& text) { return plainText(text); }

/// Whether the sheet says where things go; else that is the learner's own work.
inline bool tellsPlaces(const SheetWish& wish) {
    return wish.reader != SheetFor::Planner && wish.support != Support::Diagram;
}

/// What is built up to and with a step.
std::vector<std::string> builtBy(const BuildPlan& plan, std::size_t step);
/// In true size; smaller where the boards are broader than the paper or too high for it.
BoardOnPaper boardFor(std::shared_ptr<const Bench> bench, double widthMm);

/// The build by hand: pictures of the steps, two by two or one below the other, or holes in words.
std::vector<Block> stepBlocks(const BuildPlan& plan, const SheetWish& wish);
/// Where to measure: fields for what is predicted and measured, or what is expected.
std::vector<Block> measuringBlocks(const BuildPlan& plan, const SheetWish& wish);

}  // namespace tiepoint::ui
