// Contrast, measured on rendered pictures in every theme and view: text at least 4.5 : 1 and marks at least 3 : 1 against what
// lies under them (WCAG 2.2, success criteria 1.4.3 and 1.4.11).

#include "contrast_pictures.h"
#include "picture_measure.h"
#include "support/build_bench.h"
#include "ui/paint/flow_paths.h"
#include "ui/paint/pinned_places.h"

#include <gtest/gtest.h>

#include <functional>

namespace tiepoint::ui {
namespace {

/// Where it is crowded an id and a volt label may meet; what a person pinned, wrote or is warned by lies under nothing.
TEST(Words, TagsNotesAndFlagsLieUnderNoOthers) {
    for (const ViewCase& each : kViews) {
        SCOPED_TRACE(each.name);
        const auto words = placedWords(contrastPicture(ThemeName::Day, each.views));
        for (std::size_t i = 0; i < words.size(); ++i)
            for (std::size_t j = 0; j < i; ++j) {
                if (words[j].what.starts_with("id ")) continue;
                EXPECT_FALSE(words[i].frame.intersects(words[j].frame)) << words[i].what << " over " << words[j].what;
            }
    }
}

TEST(Contrast, WordsOnTheBench) {
    for (const ThemeName name : kContrastThemes) {
        for (const ViewCase& each : kViews) {
            const Picture picture = contrastPicture(name, each.views);
            const QImage image = drawnPicture(picture);
            const QString title = QString::fromLatin1(kThemeWords[static_cast<std::size_t>(name)]) + QLatin1Char('-') +
                                  QLatin1String(each.name);
            SCOPED_TRACE(title.toStdString());
            keep(image, title);
            for (const auto& [what, frame] : allWords(picture))
                EXPECT_GE(inkContrast(image, contrastPixels(picture, frame), kTextShare), kTextContrast) << what;
        }
    }
}

TEST(Contrast, WhatIsPrintedOnABoard) {
    for (const ThemeName name : kContrastThemes) {
        SCOPED_TRACE(kThemeWords[static_cast<std::size_t>(name)]);
        Picture picture = contrastPicture(name, {Arrows::Off, false, false, false, false, {}});
        const auto bare = std::make_shared<const Bench>(test::BenchBuilder().board("A", "half").build());
        picture.snapshot = evaluate(bare);
        picture.layout = picture.snapshot->layout;
        picture.arrangeTable();
        picture.arrangeTags();
        const QImage image = drawnPicture(picture);
        // Where letters and numbers stand: 1.8 mm from the short edges, 1.8 above row a and 1.65 below row j; every fifth column.
        constexpr double kLetterMm = 1.8, kAboveMm = 1.81, kBelowMm = 1.65, kHalfMm = 0.9;
        const Board& board = picture.bench().boards[0];
        const auto check = [&](double x, double y, const std::string& what) {
            EXPECT_GE(inkContrast(image, contrastPixels(picture, {x - kHalfMm, y - kHalfMm, 2 * kHalfMm, 2 * kHalfMm}),
                                  kTextShare),
                      kTextContrast)
                << what;
        };
        for (const Line row : {Line::A, Line::E, Line::F, Line::J})
            for (const double x : {kLetterMm, board.kind->widthMm - kLetterMm})
                check(x, board.kind->holeMm(row, 1).y, std::string(lineName(row)));
        for (const int column : {5, 15, 30}) {
            check(board.kind->holeMm(Line::A, column).x, board.kind->holeMm(Line::A, column).y - kAboveMm,
                  std::to_string(column));
            check(board.kind->holeMm(Line::J, column).x, board.kind->holeMm(Line::J, column).y + kBelowMm,
                  std::to_string(column));
        }
        // Marks: holes and rail lines against the board.
        const auto mark = [&](const QRectF& box, const char* what) {
            EXPECT_GE(inkContrast(image, contrastPixels(picture, box), 0.03), kMarkContrast) << what;
        };
        const Point hole = board.kind->holeMm(Line::C, 10), plus = board.kind->holeMm(Line::TopPlus, 10),
                    minus = board.kind->holeMm(Line::BottomMinus, 10);
        mark({hole.x - 1.2, hole.y - 1.2, 2.4, 2.4}, "hole");
        mark({plus.x - 2, plus.y - 2.4, 4, 1.2}, "plus line");
        mark({minus.x - 2, minus.y + 1.2, 4, 1.2}, "minus line");
    }
}

TEST(Contrast, EachArrow) {
    constexpr double kCoreShare = 0.04, kAboutBreadth = 1.1;
    for (const ThemeName name : kContrastThemes) {
        for (const ViewCase& each : kViews) {
            const Picture picture = contrastPicture(name, each.views);
            const QImage image = drawnPicture(picture);
            FlowPaths paths(picture);
            std::vector<ArrowMark> marks;
            for (const Layer layer : {Layer::UnderParts, Layer::OverParts})
                paths.marks(*picture.live(), picture.views.arrows, fullScaleAmpere(picture), 0, layer, marks);
            EXPECT_GT(marks.size(), 20u);
            auto words = placedWords(picture);
            if (picture.netTags)  // a ring lies over the arrow that runs through its hole
                for (const NetTag& tag : *picture.netTags) words.push_back({"ring", endFrame({toQt(tag.ring)})});
            for (const PinnedTag& tag : *picture.pinned)
                for (const TagEnd& end : tag.ends) words.push_back({"ring", endFrame(end)});
            for (const ArrowMark& mark : marks) {
                const double reach = kAboutBreadth * mark.breadthMm;
                const QRectF box(mark.at.x - reach, mark.at.y - reach, 2 * reach, 2 * reach);
                const bool hidden = std::ranges::any_of(words, [&](const Words& w) { return w.frame.intersects(box); });
                // Ghosts under a pressed cap are meant to be half seen.
                if (hidden || mark.look == MarkLook::Ghost || mark.look == MarkLook::Dot) continue;
                EXPECT_GE(inkContrast(image, contrastPixels(picture, box), kCoreShare), kMarkContrast)
                    << kThemeWords[static_cast<std::size_t>(name)] << ' ' << each.name << " at " << mark.at.x << ", "
                    << mark.at.y;
            }
        }
    }
}

struct MarkCase {
    const char* name;
    std::function<void(Picture&)> add;
};

const MarkCase kMarks[] = {
    {"arrows", [](Picture& p) { p.views.arrows = Arrows::Conventional; }},
    {"electrons", [](Picture& p) { p.views.arrows = Arrows::Electrons; }},
    {"selected part", [](Picture& p) { p.marks.selected = {"R1"}; }},
    {"selected jumper", [](Picture& p) { p.marks.selected = {"W3"}; }},
    {"lit part", [](Picture& p) { p.marks.lit = "R1"; }},
    {"lit jumper", [](Picture& p) { p.marks.lit = "W1"; }},
    {"target", [](Picture& p) { p.marks.targets = {test::holeAt("A.b27")}; }},
    {"refused target", [](Picture& p) { p.marks.targets = {test::holeAt("A.b27")}, p.marks.refused = true; }},
    {"cursor", [](Picture& p) { p.marks.cursor = test::holeAt("A.b27"); }},
    {"guide", [](Picture& p) { p.marks.guide = {test::holeAt("A.b27")}; }},
    {"hovered net",
     [](Picture& p) {
         p.marks.hoverNet = p.layout->netOfHole(p.layout->holeIndex(test::holeAt("A.b27"))),
         p.marks.hoverAt = {1e4, 1e4};
     }},
    {"probe",
     [](Picture& p) {
         p.marks.probe = {p.seenAt(test::holeAt("A.b27")), p.seenAt(test::holeAt("A.b29"))};
     }},
};

TEST(Contrast, MarksOnTheBench) {
    for (const ThemeName name : kContrastThemes) {
        for (const bool voltage : {false, true}) {
            const Picture bare = contrastPicture(name, {Arrows::Off, voltage, false, false, false, {}});
            const QImage without = drawnPicture(bare);
            for (const MarkCase& mark : kMarks) {
                Picture picture = bare;
                mark.add(picture);
                EXPECT_GE(markContrast(drawnPicture(picture), without, kMarkShare), kMarkContrast)
                    << mark.name << " in " << kThemeWords[static_cast<std::size_t>(name)]
                    << (voltage ? ", voltage" : "");
            }
        }
    }
}

}  // namespace
}  // namespace tiepoint::ui
