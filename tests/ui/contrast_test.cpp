// Contrast and colour, measured on rendered pictures in every theme and view: text at least 4.5 : 1 and marks at least 3 : 1 against what
// lies under them (WCAG 2.2, success criteria 1.4.3 and 1.4.11), and nothing told by colour alone to eyes with two kinds of cone.
//
// With TIEPOINT_PICTURES set to a folder the pictures that were measured are written there, to be looked at.

#include "core/bench/describe.h"
#include "picture_measure.h"
#include "support/build_bench.h"
#include "ui/paint/bench_painter.h"
#include "ui/paint/finding_marks.h"
#include "ui/paint/flow_paths.h"
#include "ui/paint/label_places.h"
#include "ui/paint/light_painter.h"
#include "ui/paint/live_layers.h"
#include "ui/paint/note_painter.h"
#include "ui/paint/overload.h"
#include "ui/paint/palette.h"
#include "ui/paint/part_scenes.h"
#include "ui/paint/pinned_places.h"
#include "ui/paint/pixel_sheet.h"
#include "ui/paint/shade.h"

#include <gtest/gtest.h>

#include <functional>

namespace tiepoint::ui {
namespace {

constexpr double kContrastPixelsPerMm = 14;
constexpr double kTextContrast = 4.5, kMarkContrast = 3;
constexpr double kTextShare = 0.01;     ///< of a label's box that is surely the core of its strokes
constexpr double kMarkShare = 1.0 / 5;  ///< of a mark's pixels; the rest are rims, beds, washes and soft edges
constexpr ThemeName kContrastThemes[] = {ThemeName::Day, ThemeName::Dark, ThemeName::Projector};
constexpr const char* kThemeWords[] = {"day", "dark", "projector"};

Bench quay() {
    Bench bench = test::BenchBuilder()
                      .title("Quay")
                      .board("A", "half")
                      .part("PS1", "bench-supply", {{"+", "A.top+3"}, {"-", "A.bottom-3"}}, {{"voltage", 5}})
                      .part("R1", "resistor", {{"1", "A.c4"}, {"2", "A.c9"}}, {{"resistance", 330}})
                      .part("S1", "push-button", {{"1a", "A.e9"}, {"1b", "A.f9"}, {"2a", "A.e11"}, {"2b", "A.f11"}})
                      .cap("A")
                      .part("D1", "led", {{"anode", "A.h11"}, {"cathode", "A.h14"}}, {{"colour", "green"}})
                      .part("R2", "resistor", {{"1", "A.b18"}, {"2", "A.b22"}}, {{"resistance", 33}})
                      .part("D2", "led", {{"anode", "A.d22"}, {"cathode", "A.d25"}}, {{"colour", "red"}})
                      .jumper("W1", "A.top+4", "A.a4", "red")
                      .jumper("W2", "A.j14", "A.bottom-12", "black")
                      .jumper("W3", "A.top+16", "A.a18", "yellow")
                      .jumper("W4", "A.e25", "A.bottom-21", "blue")
                      .jumper("W5", "A.g27", "A.g30", "white")
                      .build();
    bench.notes = {{"N1", test::holeAt("A.j20"), "the mole", {}}};
    bench.pinned = {{"M1", VoltsAt{test::holeAt("A.a14")}, {}},
                    {"M2", VoltsBetween{test::holeAt("A.b4"), test::holeAt("A.b9")}, {}},
                    {"M3", WattsOf{"D1"}, {}}};
    return bench;
}

Picture contrastPicture(ThemeName name, const Views& views) {
    const auto bench = std::make_shared<const Bench>(quay());
    Inputs inputs;
    inputs.held.insert("S1");
    Picture picture;
    picture.snapshot = evaluate(bench, inputs);
    picture.layout = picture.snapshot->layout;
    picture.theme = &theme(name);
    picture.views = views;
    picture.pixelsPerMm = kContrastPixelsPerMm;
    picture.arrangeTable();
    picture.arrangeTags();
    return picture;
}

struct ViewCase {
    const char* name;
    Views views;
};
const ViewCase kViews[] = {{"arrows", {}},
                           {"electrons", {Arrows::Electrons, false, false, true, false, {}}},
                           {"voltage", {Arrows::Conventional, true, false, true, false, {}}},
                           {"strips", {Arrows::Conventional, false, true, true, false, {}}},
                           {"all", {Arrows::Conventional, true, true, true, false, {}}},
                           {"turned", {Arrows::Conventional, false, false, true, true, {}}}};

constexpr double kMarginMm = 12;

QRectF areaOf(const Picture& picture) {
    return toQt(picture.table->allMm).adjusted(-kMarginMm, -kMarginMm, kMarginMm, kMarginMm);
}
QRect contrastPixels(const Picture& picture, const QRectF& mm) {
    const QPointF corner = areaOf(picture).topLeft();
    return QRectF((mm.topLeft() - corner) * kContrastPixelsPerMm, mm.size() * kContrastPixelsPerMm).toAlignedRect();
}

QImage drawnPicture(const Picture& picture) {
    const QRectF area = areaOf(picture);
    QImage image((area.size() * kContrastPixelsPerMm).toSize(), QImage::Format_RGB32);
    image.fill(picture.theme->benchBottom);
    PixelSheet sheet(image);
    QPainter painter(&sheet);
    painter.setRenderHint(QPainter::Antialiasing);
    painter.scale(kContrastPixelsPerMm, kContrastPixelsPerMm);
    painter.translate(-area.topLeft());
    paintTableTop(painter, *picture.theme, area);
    paintBench(painter, picture);
    painter.end();
    return image;
}

void keep(const QImage& image, const QString& name) {
    const QString folder = qEnvironmentVariable("TIEPOINT_PICTURES");
    const bool kept = folder.isEmpty() || image.save(folder + QLatin1Char('/') + name + QStringLiteral(".png"));
    EXPECT_TRUE(kept) << folder.toStdString();
}

struct Words {
    std::string what;
    QRectF frame;
};

/// Everything with words in it that is placed by what else lies there, in the order in which it is placed.
std::vector<Words> placedWords(const Picture& picture) {
    std::vector<Words> words;
    Clearance clearance(picture);
    takePinned(picture, clearance);
    const std::vector<Label> ids = placeIds(picture, clearance);
    for (const Label& id : ids) words.push_back({"id " + id.text.toStdString(), id.frame});
    words.push_back({"note", noteFrame(picture, 0)});
    for (const PinnedTag& tag : *picture.pinned) words.push_back({"pinned " + tag.text.toStdString(), tag.frame});
    clearance.take(noteFrame(picture, 0));
    takePinnedEnds(picture, clearance);
    if (picture.netTags)
        for (const NetTag& tag : *picture.netTags) {
            words.push_back({"volts " + tag.text.toStdString(), toQt(tag.frame)});
            clearance.take(toQt(tag.frame));
            clearance.take(endFrame({toQt(tag.ring)}));
        }
    for (const Flag& flag : placeFlags(picture, clearance)) words.push_back({"flag", flag.frame});
    if (picture.views.readings || picture.views.voltage)
        for (const Label& reading : placeReadings(picture, clearance))
            words.push_back({"reading " + reading.text.toStdString(), reading.frame});
    return words;
}

/// Those, and the figures on displays.
std::vector<Words> allWords(const Picture& picture) {
    std::vector<Words> words = placedWords(picture);
    for (int part = 0; part < static_cast<int>(picture.bench().parts.size()); ++part) {
        const PartScene scene = sceneOf(picture, part);
        const QRectF figures = findPackagePainter(scene.part.kind->package->name)->figures(scene);
        if (!figures.isEmpty()) words.push_back({"display of " + scene.part.id, figures});
    }
    return words;
}

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

// --- eyes with two kinds of cone ---

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
