// The picture: every kind has one, every mark obeys its law, every theme can be read.

#include "core/snapshot/snapshot.h"
#include "support/build_bench.h"
#include "ui/paint/arrow_marks.h"
#include "ui/paint/bench_painter.h"
#include "ui/paint/flow_paths.h"
#include "ui/paint/light_painter.h"
#include "ui/paint/live_layers.h"
#include "ui/paint/overload.h"
#include "ui/paint/packages/package_painter.h"
#include "ui/paint/palette.h"
#include "ui/paint/part_scenes.h"
#include "ui/paint/pixel_rows.h"
#include "ui/paint/pixel_sheet.h"
#include "ui/paint/shade.h"
#include "ui/paint/sprites.h"

#include <QImage>

#include <gtest/gtest.h>

#include <cmath>
#include <random>
#include <set>

namespace tiepoint::ui {
namespace {

using test::BenchBuilder;

constexpr double kPixelsPerMm = 8;
constexpr ThemeName kThemes[] = {ThemeName::Day, ThemeName::Dark, ThemeName::Projector};

std::shared_ptr<const Bench> beacon(const char* colour = "red", double ohm = 330) {
    return std::make_shared<const Bench>(
        BenchBuilder()
            .board("A", "half")
            .part("PS1", "bench-supply", {{"+", "A.top+3"}, {"-", "A.bottom-3"}}, {{"voltage", 5}})
            .part("R1", "resistor", {{"1", "A.c8"}, {"2", "A.c14"}}, {{"resistance", ohm}})
            .part("S1", "push-button", {{"1a", "A.e14"}, {"1b", "A.f14"}, {"2a", "A.e16"}, {"2b", "A.f16"}})
            .part("D1", "led", {{"anode", "A.h16"}, {"cathode", "A.h19"}}, {{"colour", colour}})
            .jumper("A.top+7", "A.a8")
            .jumper("A.j19", "A.bottom-18")
            .build());
}

Picture pictureOf(std::shared_ptr<const Bench> bench, std::set<std::string, std::less<>> held = {},
                  ThemeName name = ThemeName::Day) {
    Inputs inputs;
    inputs.held = std::move(held);
    Picture picture;
    picture.snapshot = evaluate(bench, inputs);
    picture.layout = picture.snapshot->layout;
    picture.table = std::make_shared<const Table>(arrange(*bench));
    picture.theme = &theme(name);
    picture.pixelsPerMm = kPixelsPerMm;
    return picture;
}

/// What `paint` draws, with `centre` in the middle, in millimetres.
template <class Paint>
QImage drawn(QSizeF sizeMm, QPointF centre, Paint paint) {
    QImage image((sizeMm * kPixelsPerMm).toSize(), QImage::Format_ARGB32_Premultiplied);
    image.fill(Qt::transparent);
    PixelSheet sheet(image);
    QPainter painter(&sheet);
    painter.setRenderHint(QPainter::Antialiasing);
    painter.translate(image.width() / 2.0, image.height() / 2.0);
    painter.scale(kPixelsPerMm, kPixelsPerMm);
    painter.translate(-centre);
    paint(painter);
    painter.end();
    return image;
}

QImage whole(const Picture& picture) {
    const Rect all = picture.table->allMm;
    return drawn({all.width + 10, all.height + 16}, {all.left + all.width / 2, all.top + all.height / 2},
                 [&](QPainter& painter) { paintBench(painter, picture); });
}

std::set<QRgb> coloursIn(const QImage& image) {
    std::set<QRgb> colours;
    for (int y = 0; y < image.height(); ++y) {
        for (int x = 0; x < image.width(); ++x) colours.insert(image.pixel(x, y));
    }
    return colours;
}

/// Contrast ratio of WCAG 2.2 (W3C Recommendation, "contrast ratio"), from relative luminance.
double contrast(const QColor& a, const QColor& b) {
    const auto luminance = [](const QColor& c) {
        const auto linear = [](double v) { return v <= 0.04045 ? v / 12.92 : std::pow((v + 0.055) / 1.055, 2.4); };
        return 0.2126 * linear(c.redF()) + 0.7152 * linear(c.greenF()) + 0.0722 * linear(c.blueF());
    };
    const double la = luminance(a), lb = luminance(b);
    return (std::max(la, lb) + 0.05) / (std::min(la, lb) + 0.05);
}

TEST(Paint, EveryKindHasAPainterAndAPictureOfItsOwn) {
    std::set<QByteArray> seen;
    for (const PartKind& kind : catalogue()) {
        ASSERT_NE(findPackagePainter(kind.package->name), nullptr) << kind.name;
        for (const ThemeName name : kThemes) {
            const QImage image = drawn({70, 70}, {0, 0}, [&](QPainter& p) { paintSample(p, theme(name), kind); });
            EXPECT_GT(coloursIn(image).size(), 5U) << kind.name;
            const QByteArray bytes(reinterpret_cast<const char*>(image.constBits()), image.sizeInBytes());
            EXPECT_TRUE(seen.insert(bytes).second) << kind.name << " looks like another kind or theme";
        }
    }
}

TEST(Paint, ALitLedDiffersFromAnUnlitOne) {
    const QImage open = whole(pictureOf(beacon())), pressed = whole(pictureOf(beacon(), {"S1"}));
    EXPECT_NE(open, pressed);
    const LedColours red = ledColours("red");
    const auto dome = [&](double brightness) {
        return drawn({8, 8}, {0, 0}, [&](QPainter& p) { paintDome(p, theme(ThemeName::Day), red, brightness); });
    };
    const QPoint middle(32, 32);
    EXPECT_LE(lightnessOf(dome(0).pixelColor(middle)), 38.5);
    EXPECT_GT(lightnessOf(dome(1).pixelColor(middle)), 60);
}

TEST(Paint, UnlitPlasticIsDull) {
    for (const char* colour : {"red", "deep-red", "amber", "green", "pure-green", "blue", "white", "infrared"}) {
        EXPECT_LE(lightnessOf(ledColours(colour).dull), 38) << colour;
    }
}

TEST(Paint, LightObeysItsLaws) {
    EXPECT_EQ(haloRadiusMm(0), 0);
    EXPECT_DOUBLE_EQ(haloRadiusMm(0.5), 4 + 6.5 * 0.5);
    EXPECT_DOUBLE_EQ(haloRadiusMm(1), 10.5);
    EXPECT_DOUBLE_EQ(haloOpacity(theme(ThemeName::Day), 0.5, false), 0.78 * 0.5);
    EXPECT_DOUBLE_EQ(haloOpacity(theme(ThemeName::Dark), 1, false), 0.85);
    EXPECT_DOUBLE_EQ(haloOpacity(theme(ThemeName::Projector), 1, true), 0.90 / 4);
    for (const auto& [brightness, rays] : {std::pair{0.0, 0}, {0.05, 0}, {0.07, 1}, {0.5, 4}, {0.74, 6}, {1.0, 8}}) {
        EXPECT_EQ(rayCount(brightness), rays) << brightness;
    }
    EXPECT_EQ(litShare(0), 0);
    EXPECT_EQ(litShare(1), 1);
    EXPECT_NEAR(litShare(0.4), 1.25 * std::pow(0.4, 0.7), 1e-12);
}

TEST(Paint, BreadthsObeyTheirLawsAndAddUp) {
    EXPECT_DOUBLE_EQ(arrowBreadthMm(0), 0.55);
    EXPECT_DOUBLE_EQ(arrowBreadthMm(1), 2.30);
    EXPECT_NEAR(bedBreadthMm(12.53 / 20), bedBreadthMm(9.36 / 20) + bedBreadthMm(3.17 / 20), 1e-12);
    EXPECT_NEAR(bedBreadthMm(12.53 / 20), 1.44, 0.005);
    // The chevron is as broad as the law says: the round join's stroke is no part of its shape.
    for (const double breadth : {0.6, 1.2, 2.3})
        EXPECT_NEAR(chevron(breadth, false).boundingRect().height(), breadth, 1e-9);
}

TEST(Paint, FullScaleIsTheNextOfOneTwoFive) {
    auto snapshot = std::make_shared<Snapshot>();
    snapshot->solution.status = Status::Solved;
    Picture picture;
    picture.snapshot = snapshot;
    for (const auto& [largest, scale] : {std::pair{9.36e-3, 10e-3},
                                         {10e-3, 10e-3},
                                         {10.1e-3, 20e-3},
                                         {41.1e-3, 50e-3},
                                         {59e-3, 0.1},
                                         {0.5, 0.5},
                                         {0.0, 1e-3}}) {
        snapshot->largestCurrentAmpere = largest;
        EXPECT_NEAR(fullScaleAmpere(picture), scale, scale * 1e-9) << largest;
    }
    picture.views.lockedFullScaleAmpere = 0.2;
    EXPECT_EQ(fullScaleAmpere(picture), 0.2);
}

std::vector<ArrowMark> allMarks(const Picture& picture, double phaseMm, Arrows arrows = Arrows::Conventional) {
    FlowPaths paths(picture);
    std::vector<ArrowMark> marks;
    for (const Layer layer : {Layer::UnderParts, Layer::OverParts}) {
        paths.marks(*picture.live(), arrows, fullScaleAmpere(picture), phaseMm, layer, marks);
    }
    return marks;
}

TEST(Paint, ArrowsOnlyWhereCurrentFlows) {
    EXPECT_TRUE(allMarks(pictureOf(beacon()), 0).empty());
    const auto marks = allMarks(pictureOf(beacon(), {"S1"}), 0);
    EXPECT_GT(marks.size(), 20U);
    Picture picture = pictureOf(beacon(), {"S1"});
    const double share = picture.live()->largestCurrentAmpere / fullScaleAmpere(picture);
    for (const ArrowMark& mark : marks) EXPECT_NEAR(mark.breadthMm, arrowBreadthMm(share), 1e-6);
}

TEST(Paint, ArrowsRunUnbrokenOverJoints) {
    // Along the only way of a series loop marks stand one spacing apart, joints or not: from plus to minus
    // their number is the whole length divided by the spacing.
    const Picture picture = pictureOf(beacon(), {"S1"});
    const FlowPaths paths(picture);
    double length = 0;
    for (const FlowPaths::Way& way : paths.ways()) {
        if (std::abs(paths.currentOf(way, *picture.live())) > 1e-6) length += way.line.lengthMm();
    }
    EXPECT_NEAR(static_cast<double>(allMarks(picture, 0).size()), length / kArrowSpacingMm, 1.01);
    EXPECT_NEAR(static_cast<double>(allMarks(picture, 2).size()), length / kArrowSpacingMm, 1.01);
}

TEST(Paint, MarksMoveWithTheirCurrentAndElectronsTheOtherWay) {
    const Picture picture = pictureOf(beacon(), {"S1"});
    const double share = picture.live()->largestCurrentAmpere / fullScaleAmpere(picture);
    FlowPaths paths(picture);
    std::vector<ArrowMark> before, after;
    paths.marks(*picture.live(), Arrows::Conventional, fullScaleAmpere(picture), 0, Layer::UnderParts, before);
    paths.marks(*picture.live(), Arrows::Conventional, fullScaleAmpere(picture), 0.5, Layer::UnderParts, after);
    ASSERT_FALSE(before.empty());
    EXPECT_NEAR(distance(before.front().at, after.front().at), 0.5 * share, 1e-6);
    const auto electrons = allMarks(picture, 0, Arrows::Electrons), conventional = allMarks(picture, 0);
    ASSERT_FALSE(electrons.empty());
    EXPECT_NEAR(std::abs(std::cos(electrons.front().angle) - std::cos(conventional.front().angle)), 2, 1e-6);
}

TEST(Paint, BandsComeFromTheValue) {
    const PartKind& kind = *findKind("resistor");
    const auto sample = [&](double ohm) {
        Part part = makePart(kind, "R1");
        part.values[static_cast<std::size_t>(kind.valueIndex("resistance"))] = ohm;
        // Without light and shade a band is one colour.
        return coloursIn(
            drawn({14, 6}, {0, 0}, [&](QPainter& p) { paintSample(p, theme(ThemeName::Projector), part); }));
    };
    // 4.7 kohm: yellow, violet, red; IEC 60062.
    const auto colours = sample(4700);
    for (const BandColour band : {BandColour::Yellow, BandColour::Violet, BandColour::Red, BandColour::Gold}) {
        EXPECT_TRUE(colours.contains(bandColour(band).rgb())) << bandName(band);
    }
    EXPECT_FALSE(colours.contains(bandColour(BandColour::Orange).rgb()));
    EXPECT_TRUE(sample(3300).contains(bandColour(BandColour::Orange).rgb()));
}

TEST(Paint, TheProjectorHasNoGradient) {
    const Theme& projector = theme(ThemeName::Projector);
    const QRectF box(0, 0, 10, 10);
    EXPECT_EQ(shadeDown(projector, box, Qt::black, Qt::white).style(), Qt::SolidPattern);
    EXPECT_EQ(shadeRound(projector, {0, 0}, 3, Qt::black, Qt::white).style(), Qt::SolidPattern);
    EXPECT_EQ(shadeDown(theme(ThemeName::Day), box, Qt::black, Qt::white).style(), Qt::LinearGradientPattern);
    const QImage shadow = drawn({20, 20}, {0, 0}, [&](QPainter& p) {
        drawSoftShadow(p, projector, QPointF(0, 0), 3, {1, 1}, 1);
    });
    EXPECT_EQ(coloursIn(shadow).size(), 1U);
}

TEST(Paint, TheSamePictureIsTheSameByteForByte) {
    for (const ThemeName name : kThemes) {
        const QImage first = whole(pictureOf(beacon(), {"S1"}, name)),
                     second = whole(pictureOf(beacon(), {"S1"}, name));
        EXPECT_EQ(first, second);
    }
}

TEST(Paint, NothingLiveIsDrawnWithoutASolution) {
    Picture picture = pictureOf(beacon(), {"S1"});
    auto none = std::make_shared<Snapshot>(*picture.snapshot);
    none->solution.status = Status::None;
    picture.snapshot = none;
    Patches live;
    addMetal(live, picture);
    addBeds(live, picture, FlowPaths(picture));
    addHalos(live, picture);
    addOnParts(live, picture, FlowPaths(picture));
    ASSERT_EQ(live.size(), 1U)
        << "strips, beds, halos or figures of an answer that isn't one; the cap is pressed all the same";
    EXPECT_TRUE(overloads(picture).empty());
}

TEST(Paint, TooMuchIsSaidInWords) {
    const auto ampere = [](double value) { return Figure::nearest(scaleFor("A", value), value); };
    EXPECT_EQ(overloadWords(ampere(0.059), 0.030, "maximum"), QStringLiteral("59.0 mA: twice its 30 mA maximum"));
    EXPECT_TRUE(overloadWords(ampere(0.1), 0.030, "maximum").contains(QStringLiteral("far too much")));
    EXPECT_TRUE(overloads(pictureOf(beacon(), {"S1"})).empty());
    const auto over = overloads(pictureOf(beacon("red", 47), {"S1"}));
    ASSERT_FALSE(over.empty());
    EXPECT_TRUE(over.back().words.contains(QStringLiteral("30 mA maximum"))) << over.back().words.toStdString();
}

TEST(Paint, TheTagOfAHoleKeepsOffParts) {
    Picture picture = pictureOf(beacon());
    const Layout& layout = *picture.layout;
    for (const char* address : {"A.b13", "A.f13", "A.d17", "A.j18"}) {
        const Hole hole = test::holeAt(address);
        picture.marks.hoverNet = layout.netOfHole(layout.holeIndex(hole));
        picture.marks.hoverAt = picture.seenAt(hole);
        Patches patches;
        addHandMarks(patches, picture);
        ASSERT_EQ(patches.size(), 1u) << address;
        for (int part = 0; part < static_cast<int>(picture.bench().parts.size()); ++part) {
            const PartScene scene = sceneOf(picture, part);
            const QRectF hidden =
                patches[0].mm() & findPackagePainter(scene.part.kind->package->name)->body(scene).boundingRect();
            EXPECT_LT(hidden.width() * hidden.height(), 2) << scene.part.id << " under the tag of " << address;
        }
    }
}

TEST(Paint, SpritesShowWhatVectorsShow) {
    const Theme& day = theme(ThemeName::Day);
    ArrowSprites sprites(day, kPixelsPerMm, false);
    ArrowMark mark;
    mark.level = 12;
    mark.breadthMm = breadthOfLevel(12);
    const QImage vector = drawn({6, 6}, {0, 0}, [&](QPainter& p) { drawMark(p, day, mark, false); });
    QImage laid(vector.size(), QImage::Format_ARGB32_Premultiplied);
    laid.fill(Qt::transparent);
    QTransform toPixels = QTransform::fromTranslate(laid.width() / 2.0, laid.height() / 2.0);
    toPixels.scale(kPixelsPerMm, kPixelsPerMm);
    const std::vector<ArrowMark> marks{mark};
    for (const auto& make : sprites.prepare({&marks, 1})) make();
    for (const PlacedSprite& sprite : sprites.place(toPixels, {mark}))
        laySprite(laid, laid.rect(), sprite.at, sprite.picture);
    EXPECT_EQ(laid, vector);
    while (sprites.prewarm(8) > 0) {
    }
    EXPECT_EQ(sprites.prewarm(8), 0);
}

TEST(Paint, RowsLaidAtOnceAreAsPixelsLaidOneByOne) {
    // Rows go by eights and fours, with a look for empty and full ones; single pixels don't.
    std::mt19937 random(7);
    const auto premultiplied = [&random](int kind) -> QRgb {
        const unsigned alpha = kind == 0 ? 0 : kind == 1 ? 255 : random() % 256;
        const auto channel = [&] { return static_cast<int>(alpha == 0 ? 0 : random() % (alpha + 1)); };
        return qRgba(channel(), channel(), channel(), static_cast<int>(alpha));
    };
    for (int count = 1; count < 70; ++count) {
        std::vector<QRgb> above, below;
        for (int i = 0; i < count; ++i) {
            above.push_back(premultiplied(i / 9 % 3));
            below.push_back(premultiplied(count % 2 == 0 ? 1 : 2));
        }
        std::vector<QRgb> together = below, oneByOne = below;
        layOver(together.data(), above.data(), count);
        for (std::size_t i = 0; i < above.size(); ++i) layOver(&oneByOne[i], &above[i], 1);
        EXPECT_EQ(together, oneByOne) << count << " pixels";
    }
    // With less than all of their opacity, as a painter lays them; that rounds twice as well, but not always the same way.
    constexpr int kHalf = 120;
    QImage above(67, 5, QImage::Format_ARGB32_Premultiplied), below(67, 5, QImage::Format_RGB32);
    for (int y = 0; y < above.height(); ++y) {
        for (int x = 0; x < above.width(); ++x) {
            reinterpret_cast<QRgb*>(above.scanLine(y))[x] = premultiplied(x / 9 % 3);
            reinterpret_cast<QRgb*>(below.scanLine(y))[x] = premultiplied(1) | 0xff000000U;
        }
    }
    QImage laid = below, painted = below;
    layBlock(rowsOf(laid), rowsOf(std::as_const(above)), above.size(), kHalf);
    QPainter painter(&painted);
    painter.setOpacity(kHalf / 255.0);
    painter.drawImage(0, 0, above);
    painter.end();
    int far = 0;
    for (int y = 0; y < above.height(); ++y) {
        for (int x = 0; x < above.width(); ++x) {
            const QRgb a = laid.pixel(x, y), b = painted.pixel(x, y);
            far = std::max(
                {far, std::abs(qRed(a) - qRed(b)), std::abs(qGreen(a) - qGreen(b)), std::abs(qBlue(a) - qBlue(b))});
        }
    }
    EXPECT_LE(far, 2);
    EXPECT_NE(laid, below);
}

TEST(Paint, TextCanBeReadInEveryTheme) {
    for (const ThemeName name : kThemes) {
        const Theme& t = theme(name);
        constexpr double kText = 4.5, kGraphics = 3;  // WCAG 2.2 AA, success criteria 1.4.3 and 1.4.11
        const QColor whiteOrInk = t.dark ? QColor(0x0b0d10) : QColor(Qt::white);
        for (const auto& [what, ink, ground, least] :
             {std::tuple{"text on a card", t.text, t.card, kText},
              {"dim text on a card", t.dimText, t.card, kText},
              {"dim text on the bench", t.dimTextOnBench, t.benchBottom, kText},
              {"labels on the board", t.label, t.boardBottom, kText},
              {"text on the board", t.text, t.boardBottom, kText},
              {"a flag's words", whiteOrInk, t.overload, kText},
              {"digits", t.furnishing.digits, t.furnishing.displayLow, kText},
              {"words of a display", t.furnishing.digitsDim, t.furnishing.displayLow, kText},
              {"print on a supply", t.furnishing.panelDim, t.furnishing.panelBottom, kText},
              {"plus line", t.plusLine, t.boardBottom, kGraphics},
              {"minus line", t.minusLine, t.boardBottom, kGraphics},
              {"arrow on its casing", t.arrow, t.arrowCasing, kGraphics},
              {"accent on the board", t.accent, t.boardBottom, kGraphics},
              {"hover on the board", t.hover, t.boardBottom, kGraphics},
              {"overload on the board", t.overload, t.boardBottom, kGraphics}}) {
            EXPECT_GE(contrast(ink, ground), least) << what << ", theme " << static_cast<int>(name);
        }
    }
}

}  // namespace
}  // namespace tiepoint::ui
