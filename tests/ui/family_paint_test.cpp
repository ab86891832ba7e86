// Pictures of packages of a family, and of broken things: each body is painted where it lies and as large as it is, and what is broken
// looks sound. With TIEPOINT_PICTURES=FOLDER the pictures are kept, to be looked at.

#include "core/bench/resolve.h"
#include "core/snapshot/snapshot.h"
#include "support/build_bench.h"
#include "support/test_catalogue.h"
#include "ui/paint/bench_painter.h"
#include "ui/paint/packages/package_painter.h"
#include "ui/paint/part_scenes.h"
#include "ui/paint/pixel_sheet.h"

#include <QImage>

#include <gtest/gtest.h>

namespace tiepoint::ui {
namespace {

using test::BenchBuilder;
using test::testCatalogue;

constexpr double kFamilyPxPerMm = 12;
constexpr ThemeName kEveryTheme[] = {ThemeName::Day, ThemeName::Dark, ThemeName::Projector};

BenchBuilder families() {
    BenchBuilder builder(testCatalogue());
    builder.board("A", "half")
        .part("U1", "test-chip",
              {{"1", "A.f3"},
               {"2", "A.f4"},
               {"3", "A.f5"},
               {"4", "A.f6"},
               {"5", "A.e6"},
               {"6", "A.e5"},
               {"7", "A.e4"},
               {"8", "A.e3"}})
        .part("U2", "test-chip",
              {{"1", "A.e12"},
               {"2", "A.e11"},
               {"3", "A.e10"},
               {"4", "A.e9"},
               {"5", "A.f9"},
               {"6", "A.f10"},
               {"7", "A.f11"},
               {"8", "A.f12"}})
        .part("Q1", "test-star", {{"left", "A.b4"}, {"middle", "A.b5"}, {"right", "A.b6"}})
        .part("Q2", "test-star", {{"left", "A.b10"}, {"middle", "A.b12"}, {"right", "A.b14"}})
        .part("Q3", "test-star", {{"left", "A.a17"}, {"middle", "A.b17"}, {"right", "A.c17"}})
        .part("C1", "test-can", {{"+", "A.c20"}, {"-", "A.c21"}}, {{"capacitance", 10e-6}})
        .part("C2", "test-can", {{"-", "A.c25"}, {"+", "A.c27"}}, {{"capacitance", 1e-3}})
        .part("C3", "test-can", {{"+", "A.h25"}, {"-", "A.h28"}}, {{"capacitance", 4.7e-3}})
        .part("C4", "test-disc", {{"1", "A.h5"}, {"2", "A.h7"}})
        .part("C5", "test-disc", {{"1", "A.h16"}, {"2", "A.j16"}});
    return builder;
}

Picture pictureOfBench(std::shared_ptr<const Bench> bench, ThemeName name) {
    Picture picture;
    picture.layout = buildLayout(bench);
    picture.table = std::make_shared<const Table>(arrange(*bench));
    picture.theme = &theme(name);
    picture.pixelsPerMm = kFamilyPxPerMm;
    return picture;
}

QImage pictured(const Picture& picture) {
    const Rect all = picture.table->allMm;
    QImage image(QSizeF(all.width * kFamilyPxPerMm, all.height * kFamilyPxPerMm).toSize(),
                 QImage::Format_ARGB32_Premultiplied);
    image.fill(picture.theme->benchTop);
    PixelSheet sheet(image);
    QPainter painter(&sheet);
    painter.setRenderHint(QPainter::Antialiasing);
    painter.scale(kFamilyPxPerMm, kFamilyPxPerMm);
    painter.translate(-all.left, -all.top);
    paintBench(painter, picture);
    painter.end();
    return image;
}

TEST(FamilyPaint, EveryFamilyHasAPainter) {
    for (const PackageFamily& family : packageFamilies())
        EXPECT_NE(findPackagePainter(family.name), nullptr) << family.name;
}

/// Inside the outline of a body the picture is another than without the part; outside of everything it is the same.
TEST(FamilyPaint, BodiesArePaintedWhereTheyLie) {
    const auto bench = families().share();
    Bench bare = *bench;
    bare.parts.clear();
    for (const ThemeName name : kEveryTheme) {
        const Picture picture = pictureOfBench(bench, name);
        const QImage with = pictured(picture);
        Picture empty = pictureOfBench(std::make_shared<const Bench>(bare), name);
        empty.table = std::make_shared<const Table>([&] {
            Table table = arrange(bare);
            table.allMm = picture.table->allMm;
            return table;
        }());
        const QImage without = pictured(empty);
        ASSERT_EQ(with.size(), without.size());
        if (const QString folder = qEnvironmentVariable("TIEPOINT_PICTURES"); !folder.isEmpty())
            with.save(folder + QStringLiteral("/families-%1.png").arg(static_cast<int>(name)));
        const auto at = [&](QPointF mm) {
            return ((mm - QPointF(picture.table->allMm.left, picture.table->allMm.top)) * kFamilyPxPerMm).toPoint();
        };
        for (int part = 0; part < static_cast<int>(bench->parts.size()); ++part) {
            const PartScene scene = sceneOf(picture, part);
            const QPainterPath body = findPackagePainter(scene.part.kind->package->name)->body(scene);
            const QRectF box = body.boundingRect();
            EXPECT_NEAR(std::max(box.width(), box.height()), packageOf(scene.part).bodyLengthMm, 0.4) << scene.part.id;
            int inside = 0, painted = 0;
            for (double x = box.left(); x < box.right(); x += 0.25)
                for (double y = box.top(); y < box.bottom(); y += 0.25) {
                    if (!body.contains(QPointF(x, y)) || !with.rect().contains(at({x, y}))) continue;
                    ++inside;
                    painted += with.pixel(at({x, y})) != without.pixel(at({x, y}));
                }
            EXPECT_GT(inside, 30) << scene.part.id;
            EXPECT_GT(painted, 0.97 * inside) << scene.part.id;
        }
    }
}

/// The pale stripe lies at the lead called minus, whichever way the can stands.
TEST(FamilyPaint, StripeIsAtTheMinusLead) {
    const auto bench = families().share();
    const Picture picture = pictureOfBench(bench, ThemeName::Day);
    const QImage image = pictured(picture);
    for (const char* id : {"C1", "C2", "C3"}) {
        const PartScene scene = sceneOf(picture, bench->partIndex(id));
        const QPointF middle(scene.place.pose.centre.x, scene.place.pose.centre.y);
        const QPointF minus(scene.place.leadsMm[1].x, scene.place.leadsMm[1].y);
        const QPointF way = minus - middle;
        const double reach = packageOf(scene.part).bodyLengthMm / 2 * 0.95, length = std::hypot(way.x(), way.y());
        // Beside the printed sign, at a quarter of the stripe's breadth.
        const auto lightnessAt = [&](double sign) {
            const double angle = std::atan2(way.y(), way.x()) + (sign < 0 ? 3.14159265 : 0) + 0.38;
            const QPointF at = middle + QPointF(std::cos(angle), std::sin(angle)) * reach;
            const QPointF from(picture.table->allMm.left, picture.table->allMm.top);
            return QColor(image.pixel(((at - from) * kFamilyPxPerMm).toPoint())).lightness();
        };
        ASSERT_GT(length, 0.5);
        EXPECT_GT(lightnessAt(1), lightnessAt(-1) + 60) << id;
    }
}

TEST(FamilyPaint, CapacitancesStandBesideTheId) {
    const auto bench = families().share();
    EXPECT_EQ(valueLabel(*bench->findPart("C1")), QStringLiteral("10 \u00b5F"));
    EXPECT_EQ(valueLabel(*bench->findPart("Q1")), QStringLiteral("100 \u03a9"));
    EXPECT_EQ(valueLabel(*bench->findPart("U1")), QString());
}

TEST(FamilyPaint, WaysOfCurrentBeginAtTheLegs) {
    const auto bench = families().share();
    const Picture picture = pictureOfBench(bench, ThemeName::Day);
    for (const char* id : {"U1", "U2", "Q1", "Q2", "Q3", "C1", "C4"}) {
        const PartScene scene = sceneOf(picture, bench->partIndex(id));
        const auto ways = findPackagePainter(scene.part.kind->package->name)->paths(scene);
        std::size_t begun = 0;
        for (const PartPath& way : ways) {
            ASSERT_EQ(way.leads.size(), 1u);
            const Point tip = scene.place.leadsMm[static_cast<std::size_t>(way.leads[0])];
            EXPECT_LT(QLineF(way.line.pointAtPercent(0), QPointF(tip.x, tip.y)).length(), 1e-6) << id;
            EXPECT_GT(way.line.length(), 0.5) << id;
            ++begun;
        }
        EXPECT_EQ(begun, scene.part.leads.size() == 2 ? 1u : scene.part.leads.size()) << id;
    }
}

TEST(FamilyPaint, BrokenThingsLookSound) {
    const Bench sound =
        BenchBuilder()
            .board("A", "half")
            .part("R1", "resistor", {{"1", "A.c8"}, {"2", "A.c14"}})
            .part("D1", "led", {{"anode", "A.e14"}, {"cathode", "A.f14"}})
            .part("S1", "push-button", {{"1a", "A.e18"}, {"1b", "A.f18"}, {"2a", "A.e20"}, {"2b", "A.f20"}})
            .jumper("W1", "A.top+7", "A.a8")
            .build();
    const QImage looks = pictured(pictureOfBench(std::make_shared<const Bench>(sound), ThemeName::Day));
    for (const Condition condition : {Condition::Dead, Condition::OpenInside, Condition::DryContact}) {
        Bench broken = sound;
        for (Part& part : broken.parts) part.condition = condition;
        for (Jumper& jumper : broken.jumpers) jumper.condition = condition;
        EXPECT_EQ(pictured(pictureOfBench(std::make_shared<const Bench>(broken), ThemeName::Day)), looks);
    }
}

}  // namespace
}  // namespace tiepoint::ui
