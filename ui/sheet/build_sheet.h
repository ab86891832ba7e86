#pragma once
// A build sheet on paper: the board in true size with a rule, cautions to tick, parts, jumpers, the steps by hand and where to measure. Made of a
// BuildPlan; nothing here is reckoned. Needs a QGuiApplication, but no display.

#include "core/base/result.h"
#include "core/sheet/build_plan.h"
#include "ui/sheet/pages.h"

namespace tiepoint::ui {

/// How much help the steps give.
enum class Support { Pictures, Holes, Diagram };
/// Whom it is for.
enum class SheetFor {
    Learner,  ///< empty fields for what is predicted and what is measured
    Teacher,  ///< what is expected, with its range, stands in them
    Planner,  ///< an empty board and the parts alone: places are the learner's own
};

struct SheetWish {
    Paper paper = Paper::A4;
    Support support = Support::Pictures;
    SheetFor reader = SheetFor::Learner;
    int copies = 1;  ///< more than one, or any reserve: what to buy stands on a page of its own
    double sparePercent = 0;
};

/// The pages, ready to be painted.
std::vector<std::vector<Block>> buildSheetPages(const BuildPlan& plan, const SheetWish& wish);
PageHead buildSheetHead(const BuildPlan& plan, const SheetWish& wish);

/// Writes a PDF, or nothing. Returns why it failed, or nothing.
std::optional<QString> saveBuildSheet(const BuildPlan& plan, const SheetWish& wish, const QString& path);

/// Writes bytes in one step; why it failed, or nothing.
std::optional<QString> savePages(const std::optional<QByteArray>& bytes, const QString& path);

}  // namespace tiepoint::ui
