// How a picture is parted over sheets of paper.

#include "ui/export/sheet_marks.h"

#include <gtest/gtest.h>

namespace tiepoint::ui {
namespace {

TEST(PaperPlan, ASmallPictureLiesOnOneSheetAsItIsShaped) {
    const PaperPlan wide = planSheets({150, 70}, Paper::A4), high = planSheets({70, 150}, Paper::A4);
    EXPECT_TRUE(wide.isAcross);
    EXPECT_FALSE(high.isAcross);
    for (const PaperPlan& plan : {wide, high}) {
        EXPECT_FALSE(plan.isTiled());
        EXPECT_EQ(plan.overlapMm, 0);
        EXPECT_EQ(sheetName(plan, plan.sheets.front()), QString());
    }
    EXPECT_EQ(wide.paper, QSizeF(297, 210));
    EXPECT_EQ(planSheets({150, 70}, Paper::Letter).paper, QSizeF(279.4, 215.9));
}

TEST(PaperPlan, SheetsCoverThePictureWithOverlapAndStayOnThePaper) {
    for (const Paper paper : {Paper::A4, Paper::Letter}) {
        for (double width = 60; width < 1500; width += 37) {
            for (double height = 40; height < 900; height += 53) {
                const PaperPlan plan = planSheets({width, height}, paper);
                ASSERT_EQ(plan.sheets.size(), static_cast<std::size_t>(plan.rows * plan.columns));
                for (const PlannedSheet& sheet : plan.sheets) {
                    const QRectF on(sheet.at, sheet.part.size());
                    EXPECT_TRUE(printableRoom(plan).adjusted(-1e-6, -1e-6, 1e-6, 1e-6).contains(on));
                    const bool isLastColumn = sheet.column + 1 == plan.columns, isLastRow = sheet.row + 1 == plan.rows;
                    if (sheet.column == 0) {
                        EXPECT_NEAR(sheet.part.left(), 0, 1e-9);
                    }
                    if (sheet.row == 0) {
                        EXPECT_NEAR(sheet.part.top(), 0, 1e-9);
                    }
                    if (isLastColumn) {
                        EXPECT_NEAR(sheet.part.right(), width, 1e-9);
                    }
                    if (isLastRow) {
                        EXPECT_NEAR(sheet.part.bottom(), height, 1e-9);
                    }
                    if (isLastColumn) continue;
                    const PlannedSheet& next = plan.sheets[sheet.row * plan.columns + sheet.column + 1];
                    EXPECT_NEAR(sheet.part.right() - next.part.left(), plan.overlapMm, 1e-9);
                }
                // One sheet less in either direction would be too few.
                const QSizeF room = printableRoom(plan).size();
                if (plan.columns > 1) {
                    EXPECT_GT(width, (plan.columns - 1) * (room.width() - 10) + 10);
                }
                if (plan.rows > 1) {
                    EXPECT_GT(height, (plan.rows - 1) * (room.height() - 10) + 10);
                }
            }
        }
    }
}

TEST(PaperPlan, SheetsAreNamedByRowAndColumn) {
    const PaperPlan plan = planSheets({600, 300}, Paper::A4);
    ASSERT_EQ(plan.rows, 2);
    ASSERT_EQ(plan.columns, 3);
    EXPECT_EQ(sheetName(plan, plan.sheets[4]), QStringLiteral("Sheet 5 of 6: row 2, column 2"));
}

}  // namespace
}  // namespace tiepoint::ui
