// Nothing on a bench is told by colour alone to eyes with two kinds of cone, and its words are read by them.

#include "contrast_pictures.h"
#include "core/bench/describe.h"
#include "picture_measure.h"
#include "support/build_bench.h"
#include "ui/paint/finding_marks.h"
#include "ui/paint/light_painter.h"
#include "ui/paint/palette.h"
#include "ui/paint/pixel_sheet.h"
#include "ui/paint/shade.h"

#include <gtest/gtest.h>

namespace tiepoint::ui {
namespace {

TEST(Colour, GreysStayGrey) {
    for (const Eyes& eyes : kDichromats)
        for (const auto& row : eyes.matrix) EXPECT_NEAR(row[0] + row[1] + row[2], 1, 2e-6) << eyes.name;
}

TEST(Colour, WordsAreReadByAllEyes) {
    for (const ThemeName name : kContrastThemes) {
        const Picture picture = contrastPicture(name, {Arrows::Conventional, true, false, true, false, {}});
        const QImage image = drawnPicture(picture);
        for (const Eyes& eyes : kDichromats) {
            SCOPED_TRACE(eyes.name);
            const QImage seen = seenBy(eyes, image);
            keep(seen, QString::fromLatin1(kThemeWords[static_cast<std::size_t>(name)]) + QLatin1Char('-') +
                           QLatin1String(eyes.name));
            for (const auto& [what, frame] : allWords(picture))
                EXPECT_GE(inkContrast(seen, contrastPixels(picture, frame), kTextShare), kTextContrast) << what;
        }
    }
}

double lightnessBy(const Eyes& eyes, const QColor& colour) {
    return lightnessOf(QColor::fromRgb(seenBy(eyes, colour.rgb())));
}

TEST(Colour, VoltsGrowLighterForAllEyes) {
    constexpr double kLeastStep = 2, kLeastSpan = 50;  // of L*
    for (const Eyes& eyes : kDichromats) {
        for (int step = 1; step < kVoltSteps; ++step) {
            const double before = lightnessBy(eyes, voltColour(static_cast<double>(step - 1) / (kVoltSteps - 1)));
            EXPECT_GT(lightnessBy(eyes, voltColour(static_cast<double>(step) / (kVoltSteps - 1))), before + kLeastStep)
                << eyes.name << step;
        }
        EXPECT_GT(lightnessBy(eyes, voltColour(1)) - lightnessBy(eyes, voltColour(0)), kLeastSpan) << eyes.name;
    }
}

/// Mean lightness of an LED's dome, as drawnPicture.
double domeLightness(const Eyes& eyes, const LedColours& colours, double brightness) {
    constexpr double kSizeMm = 6;
    constexpr double kDomeMm = 2;
    QImage image(QSize(1, 1) * static_cast<int>(kSizeMm * kContrastPixelsPerMm), QImage::Format_RGB32);
    image.fill(theme(ThemeName::Day).boardTop);
    PixelSheet sheet(image);
    QPainter painter(&sheet);
    painter.setRenderHint(QPainter::Antialiasing);
    painter.translate(image.width() / 2.0, image.height() / 2.0);
    painter.scale(kContrastPixelsPerMm, kContrastPixelsPerMm);
    paintDome(painter, theme(ThemeName::Day), colours, brightness);
    painter.end();
    double sum = 0;
    int count = 0;
    for (int y = 0; y < image.height(); ++y)
        for (int x = 0; x < image.width(); ++x) {
            if (std::hypot(x - image.width() / 2.0, y - image.height() / 2.0) > kDomeMm * kContrastPixelsPerMm)
                continue;
            sum += lightnessBy(eyes, QColor::fromRgb(image.pixel(x, y)));
            ++count;
        }
    return sum / count;
}

TEST(Colour, LitIsLighterThanDarkForAllEyes) {
    constexpr double kLeast = 12;  // of L*; the rays beside a lit dome tell it too
    const PartKind& led = *findKind("led");
    for (const Choice& choice : led.values[static_cast<std::size_t>(led.valueIndex("colour"))].choices) {
        if (choice.name == "infrared") continue;  // no eye sees it
        const LedColours colours = ledColours(choice.name);
        for (const Eyes& eyes : kDichromats)
            EXPECT_GT(domeLightness(eyes, colours, 1) - domeLightness(eyes, colours, 0), kLeast)
                << choice.name << ' ' << eyes.name;
    }
}

TEST(Colour, EveryLedHasTheWordOfItsColour) {
    const PartKind& led = *findKind("led");
    const int value = led.valueIndex("colour");
    std::vector<std::string> words;
    for (std::size_t choice = 0; choice < led.values[static_cast<std::size_t>(value)].choices.size(); ++choice) {
        Part part = makePart(led, "D1");
        part.values[static_cast<std::size_t>(value)] = static_cast<double>(choice);
        words.push_back(describePart(part));
        EXPECT_NE(words.back().find(led.values[static_cast<std::size_t>(value)].choices[choice].label),
                  std::string::npos);
    }
    std::ranges::sort(words);
    EXPECT_TRUE(std::ranges::adjacent_find(words) == words.end());
}

/// Shapes as a greyscale print shows them: how many pixels of a box are dark in one picture and light in the other.
int shapesApart(const QImage& a, const QRect& boxA, const QImage& b, const QRect& boxB) {
    constexpr int kApart = 40;
    int apart = 0;
    for (int y = 0; y < std::min(boxA.height(), boxB.height()); ++y)
        for (int x = 0; x < std::min(boxA.width(), boxB.width()); ++x)
            apart += std::abs(qGray(a.pixel(boxA.left() + x, boxA.top() + y)) -
                              qGray(b.pixel(boxB.left() + x, boxB.top() + y))) > kApart;
    return apart;
}

TEST(Colour, PairsThatColourTellsApartHaveShapesToo) {
    constexpr int kLeastPixels = 40;
    for (const ThemeName name : kContrastThemes) {
        SCOPED_TRACE(kThemeWords[static_cast<std::size_t>(name)]);
        Picture picture = contrastPicture(name, {Arrows::Off, false, false, false, false, {}});
        const QImage plain = drawnPicture(picture);
        // Plus and minus at the ends of the rails: the upright stroke of the plus.
        const Board& board = picture.bench().boards[0];
        constexpr double kSignMm = 1.65, kHalfMm = 1.2;
        const auto sign = [&](Line rail, double aside) {
            const double y = board.kind->holeMm(rail, 1).y + aside;
            return contrastPixels(picture,
                                  {board.kind->widthMm - kSignMm - kHalfMm, y - kHalfMm, 2 * kHalfMm, 2 * kHalfMm});
        };
        EXPECT_GT(shapesApart(plain, sign(Line::TopPlus, -0.35), plain, sign(Line::TopMinus, 0.3)), kLeastPixels)
            << "rails";
        // The two ends of a reading between holes.
        const PinnedTag& between = *picture.pinnedTag("M2");
        const auto end = [&](std::size_t i) {
            return contrastPixels(picture, QRectF(between.ends[i].at - QPointF(0.6, 0.6), QSizeF(1.2, 1.2)));
        };
        EXPECT_GT(shapesApart(plain, end(0), plain, end(1)), kLeastPixels) << "probe ends";
        // A hole that takes a lead and one that doesn't.
        picture.marks.targets = {test::holeAt("A.b27")};
        const QImage taken = drawnPicture(picture);
        picture.marks.refused = true;
        const QImage refused = drawnPicture(picture);
        const Point at = picture.seenAt(test::holeAt("A.b27"));
        const QRect box = contrastPixels(picture, {at.x - 2, at.y - 2, 4, 4});
        EXPECT_GT(shapesApart(taken, box, refused, box), kLeastPixels) << "refused";
        // The way of the current and that of the electrons: a tail bar.
        const QImage conventional = drawnPicture(contrastPicture(name, kViews[0].views)),
                     electrons = drawnPicture(contrastPicture(name, kViews[1].views));
        EXPECT_GT(shapesApart(conventional, conventional.rect(), electrons, electrons.rect()), 10 * kLeastPixels)
            << "electrons";
    }
}

/// The symbol of a finding alone on the bench, as these eyes see it.
QImage symbolSeen(const Eyes& eyes, const Theme& theme, const Finding& finding) {
    constexpr int kPixels = 48;
    QImage image(kPixels, kPixels, QImage::Format_RGB32);
    image.fill(theme.boardTop);
    QPainter painter(&image);
    painter.setRenderHint(QPainter::Antialiasing);
    paintFindingSymbol(painter, theme, finding, {kPixels / 2.0, kPixels / 2.0}, 0.8 * kPixels);
    painter.end();
    return seenBy(eyes, image);
}

TEST(Colour, HowGraveAFindingIsAllEyesSee) {
    constexpr int kLeastPixels = 60;
    std::vector<Finding> kinds(4);
    kinds[0].severity = Severity::Fault;
    kinds[1].severity = Severity::Risk;
    kinds[2].severity = kinds[3].severity = Severity::Remark;
    for (std::size_t i = 0; i < 3; ++i) kinds[i].rule = "overlap";  // the last is only a place to look at
    for (const ThemeName name : kContrastThemes)
        for (const Eyes& eyes : kDichromats)
            for (std::size_t i = 0; i < kinds.size(); ++i) {
                SCOPED_TRACE(std::string(kThemeWords[static_cast<std::size_t>(name)]) + " " + eyes.name);
                const QImage one = symbolSeen(eyes, theme(name), kinds[i]);
                EXPECT_GE(inkContrast(one, one.rect(), kTextShare), kMarkContrast) << i;
                for (std::size_t k = i + 1; k < kinds.size(); ++k) {
                    const QImage other = symbolSeen(eyes, theme(name), kinds[k]);
                    EXPECT_GT(shapesApart(one, one.rect(), other, other.rect()), kLeastPixels) << i << " and " << k;
                }
            }
}

}  // namespace
}  // namespace tiepoint::ui
