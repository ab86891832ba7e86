#pragma once
// A window with a document, a running bench and a view, and a hand that works them with real mouse and key events.

#include "support/build_bench.h"
#include "ui/document/bench_document.h"
#include "ui/live/live_bench.h"
#include "ui/view/bench_view.h"

#include <QApplication>
#include <QTest>

#include <gtest/gtest.h>

#include <string_view>

namespace tiepoint::ui {

class Desk : public testing::Test {
protected:
    Desk() : view(document, live) {
        QObject::connect(&document, &BenchDocument::benchChanged, &view,
                         [this] { live.setLayout(document.revision(), view.picture().layout); });
        view.resize(1280, 720);
        view.show();
        view.activateWindow();
        view.setFocus();
        EXPECT_TRUE(QTest::qWaitForWindowExposed(&view));
        open(makeNewBench());
    }

    /// Puts a bench on the desk and waits until it runs.
    void open(Bench bench) {
        document.reset(std::move(bench), {});
        view.fitBench();
        waitForAnswer();
    }

    static constexpr int kHangMs = 20'000;  ///< ends what hangs; how soon an answer must come is asked elsewhere
    /// Waits until the snapshot answers the present bench and inputs.
    bool waitForAnswer() {
        return QTest::qWaitFor(
            [this] {
                const auto snapshot = live.snapshot();
                return snapshot && snapshot->revision == document.revision() &&
                       snapshot->inputSequence == live.inputs().sequence && view.picture().snapshot == snapshot &&
                       !view.picture().wordsToCome;
            },
            kHangMs);
    }

    const Bench& bench() const { return *document.bench(); }
    const Part& part(std::string_view id) const {
        const Part* found = bench().findPart(id);
        if (!found) test::slip("the part", id);
        return *found;
    }
    const Marks& marks() const { return view.picture().marks; }
    QString said() const { return QString::fromStdString(marks().say); }

    QPoint at(Point mm) const { return view.fromMm(mm).toPoint(); }
    QPoint at(std::string_view hole) const { return at(*holeMm(bench(), test::holeAt(hole))); }
    /// The middle of a part's body.
    QPoint bodyOf(std::string_view id) const {
        return at(view.picture().table->parts[static_cast<std::size_t>(bench().partIndex(id))].pose.centre);
    }

    void moveTo(QPoint to, Qt::MouseButtons buttons = Qt::NoButton, Qt::KeyboardModifiers modifiers = {}) {
        QMouseEvent event(QEvent::MouseMove, QPointF(to), view.viewport()->mapToGlobal(QPointF(to)), Qt::NoButton,
                          buttons, modifiers);
        QApplication::sendEvent(view.viewport(), &event);
    }
    void press(QPoint where, Qt::MouseButton button = Qt::LeftButton, Qt::KeyboardModifiers modifiers = {}) {
        QTest::mousePress(view.viewport(), button, modifiers, where);
    }
    void release(QPoint where, Qt::MouseButton button = Qt::LeftButton, Qt::KeyboardModifiers modifiers = {}) {
        QTest::mouseRelease(view.viewport(), button, modifiers, where);
    }
    void click(QPoint where, Qt::KeyboardModifiers modifiers = {}) {
        press(where, Qt::LeftButton, modifiers);
        release(where, Qt::LeftButton, modifiers);
    }
    /// Presses, moves in a few steps, and leaves the button down.
    void dragAndHold(QPoint from, QPoint to, Qt::MouseButton button = Qt::LeftButton,
                     Qt::KeyboardModifiers modifiers = {}) {
        constexpr int kSteps = 5;
        press(from, button, modifiers);
        for (int step = 1; step <= kSteps; ++step) moveTo(from + (to - from) * step / kSteps, button, modifiers);
    }
    void drag(QPoint from, QPoint to, Qt::MouseButton button = Qt::LeftButton, Qt::KeyboardModifiers modifiers = {}) {
        dragAndHold(from, to, button, modifiers);
        release(to, button, modifiers);
    }
    void key(Qt::Key key, Qt::KeyboardModifiers modifiers = {}) { QTest::keyClick(&view, key, modifiers); }

    /// The beacon: supply, resistor, button, LED.
    static Bench beacon() {
        return test::BenchBuilder()
            .board("A", "half")
            .part("PS1", "bench-supply", {{"+", "A.top+3"}, {"-", "A.bottom-3"}}, {{"voltage", 5}})
            .part("R1", "resistor", {{"1", "A.c8"}, {"2", "A.c14"}}, {{"resistance", 330}})
            .part("S1", "push-button", {{"1a", "A.e14"}, {"1b", "A.f14"}, {"2a", "A.e16"}, {"2b", "A.f16"}})
            .cap("A")
            .part("D1", "led", {{"anode", "A.h16"}, {"cathode", "A.h19"}})
            .jumper("A.top+7", "A.a8")
            .jumper("A.j19", "A.bottom-18")
            .build();
    }

    BenchDocument document;
    LiveBench live;
    BenchView view;
};

}  // namespace tiepoint::ui
