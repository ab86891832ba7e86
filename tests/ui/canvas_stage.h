#pragma once
// A picture with the scene and the frame that a view would have, without a window: changed in every way that a window can change it.

#include "core/snapshot/snapshot.h"
#include "support/build_bench.h"
#include "ui/paint/note_places.h"
#include "ui/paint/projecting.h"
#include "ui/view/bench_canvas.h"

#include <cmath>
#include <random>

namespace tiepoint::ui {

/// What a canvas draws at the moment, as on a screen of the frame's device pixel ratio.
inline QImage shownOn(QImage screen, const BenchCanvas& canvas, const QRegion& device) {
    QPainter painter(&screen);
    canvas.show(painter, device);
    painter.end();
    return screen;
}

/// How many pixels of two pictures differ by more than `tolerance` in a channel.
inline int differing(const QImage& a, const QImage& b, int tolerance = 0) {
    int count = 0;
    for (int y = 0; y < a.height(); ++y) {
        const auto* p = reinterpret_cast<const QRgb*>(a.constScanLine(y));
        const auto* q = reinterpret_cast<const QRgb*>(b.constScanLine(y));
        for (int x = 0; x < a.width(); ++x) {
            count += std::abs(qRed(p[x]) - qRed(q[x])) > tolerance ||
                     std::abs(qGreen(p[x]) - qGreen(q[x])) > tolerance ||
                     std::abs(qBlue(p[x]) - qBlue(q[x])) > tolerance;
        }
    }
    return count;
}

class CanvasStage {
public:
    static constexpr QSize kLogical{560, 380};

    Picture picture;
    Frame frame;
    Inputs inputs;
    std::unique_ptr<BenchScene> scene;
    std::vector<int> litNets;

    explicit CanvasStage(double devicePixelRatio = 1) {
        frame.devicePixelRatio = devicePixelRatio;
        frame.viewport = (QSizeF(kLogical) * devicePixelRatio).toSize();
        picture.theme = &theme(ThemeName::Day);
        zoom(4.3);
        frame.origin = QPointF(QPointF(170, 60) * devicePixelRatio).toPoint();
        picture.layout = buildLayout(bench_.share());
        scene = std::make_unique<BenchScene>(picture);
        edit(bench_.build());
    }
    /// Another bench, as after an edit.
    void edit(Bench bench) {
        bench_ = test::BenchBuilder(bench);
        picture.layout = buildLayout(std::make_shared<const Bench>(std::move(bench)));
        picture.snapshot = nullptr;
        picture.marks.hoverNet = -1;  // a net of the former bench, which a window lets go of
        arrange();
        solve();
    }
    /// Another answer for the same bench, as after a press.
    void solve() {
        picture.snapshot = evaluate(picture.layout->bench, inputs);
        picture.arrangeTags();
    }
    /// The table, its sizes and the scene anew.
    void arrange() {
        picture.arrangeTable();
        picture.arrangeTags();
        findContent();
        scene->follow();
    }
    void zoom(double logicalPixelsPerMm) {
        frame.pixelsPerMm = picture.pixelsPerMm = logicalPixelsPerMm * frame.devicePixelRatio;
        const bool projecting = picture.sizes.numberMm > 0;
        if (projecting) picture.sizes = projectedSizes(kLogical.height(), logicalPixelsPerMm);
        if (picture.table) findContent();
    }
    /// Where anything is drawn.
    void findContent() {
        constexpr double kAroundMm = 60;
        frame.contentMm = toQt(picture.table->allMm)
                              .united(notesArea(picture))
                              .adjusted(-kAroundMm, -kAroundMm, kAroundMm, kAroundMm);
    }
    const Bench& bench() const { return picture.bench(); }
    QRect viewport() const { return {QPoint(0, 0), frame.viewport}; }
    QImage screen() const {
        QImage screen(frame.viewport, QImage::Format_RGB32);
        screen.fill(Qt::magenta);
        screen.setDevicePixelRatio(frame.devicePixelRatio);
        return screen;
    }
    void follow(BenchCanvas& canvas) const {
        canvas.setTableArea(viewport());
        canvas.update(picture, frame, *scene, litNets);
    }
    QImage shown(BenchCanvas& canvas) const {
        follow(canvas);
        return shownOn(screen(), canvas, viewport());
    }

    static test::BenchBuilder harbour() {
        test::BenchBuilder bench;
        bench.board("A", "half")
            .part("PS1", "bench-supply", {{"+", "A.top+3"}, {"-", "A.bottom-3"}}, {{"voltage", 5}})
            .part("R1", "resistor", {{"1", "A.c8"}, {"2", "A.c14"}}, {{"resistance", 330}})
            .part("S1", "push-button", {{"1a", "A.e14"}, {"1b", "A.f14"}, {"2a", "A.e16"}, {"2b", "A.f16"}})
            .cap("A")
            .part("D1", "led", {{"anode", "A.h16"}, {"cathode", "A.h19"}}, {{"colour", "red"}})
            .part("R2", "resistor", {{"1", "A.top+10"}, {"2", "A.d22"}}, {{"resistance", 47}})
            .part("S2", "push-button", {{"1a", "A.e22"}, {"1b", "A.f22"}, {"2a", "A.e24"}, {"2b", "A.f24"}})
            .part("D2", "led", {{"anode", "A.h24"}, {"cathode", "A.h27"}}, {{"colour", "green"}})
            .part("M1", "multimeter", {{"+", "A.b14"}, {"com", "A.i19"}})
            .jumper("A.top+7", "A.a8")
            .jumper("A.j19", "A.bottom-18")
            .jumper("A.j27", "A.bottom-22");
        return bench;
    }

private:
    test::BenchBuilder bench_ = harbour();
};

}  // namespace tiepoint::ui
