#include "contrast_pictures.h"

#include "support/build_bench.h"
#include "ui/paint/label_places.h"
#include "ui/paint/live_layers.h"
#include "ui/paint/note_painter.h"
#include "ui/paint/overload.h"
#include "ui/paint/part_scenes.h"
#include "ui/paint/pinned_places.h"
#include "ui/paint/pixel_sheet.h"

#include <gtest/gtest.h>

namespace tiepoint::ui {
namespace {

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

constexpr double kMarginMm = 12;

QRectF areaOf(const Picture& picture) {
    return toQt(picture.table->allMm).adjusted(-kMarginMm, -kMarginMm, kMarginMm, kMarginMm);
}
}  // namespace

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

std::vector<Words> allWords(const Picture& picture) {
    std::vector<Words> words = placedWords(picture);
    for (int part = 0; part < static_cast<int>(picture.bench().parts.size()); ++part) {
        const PartScene scene = sceneOf(picture, part);
        const QRectF figures = findPackagePainter(scene.part.kind->package->name)->figures(scene);
        if (!figures.isEmpty()) words.push_back({"display of " + scene.part.id, figures});
    }
    return words;
}

}  // namespace tiepoint::ui
