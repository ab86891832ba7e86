// Time in a real window, with real events: the card that comes with a bench that moves, its lever and keys, and the oscilloscope.

#include "support/build_bench.h"
#include "ui/paint/bench_painter.h"
#include "ui/paint/packages/package_painter.h"
#include "window_bench.h"

#include <QWheelEvent>

#include <cmath>
#include <fstream>
#include <sstream>

namespace tiepoint::ui {
namespace {

using test::BenchBuilder;

/// A capacitor that charges through a resistor, 1 s in time, once a button is pressed; with an oscilloscope and a meter on it.
Bench chargingBench() {
    return BenchBuilder()
        .board("A", "half")
        .part("PS1", "bench-supply", {{"+", "A.top+3"}, {"-", "A.bottom-3"}}, {{"voltage", 5}})
        .jumper("A.top+8", "A.a5")
        .part("R1", "resistor", {{"1", "A.b5"}, {"2", "A.b10"}}, {{"resistance", 10e3}})
        .part("C1", "electrolytic-capacitor", {{"+", "A.c10"}, {"-", "A.c12"}}, {{"capacitance", 100e-6}})
        .jumper("A.a12", "A.bottom-14")
        .part("O1", "oscilloscope", {{"1", "A.e10"}, {"2", "A.e5"}, {"-", "A.e12"}}, {{"time", 0.2}, {"volts1", 2}})
        .build();
}

Bench restingBench() {
    return BenchBuilder()
        .board("A", "half")
        .part("PS1", "bench-supply", {{"+", "A.top+3"}, {"-", "A.bottom-3"}}, {{"voltage", 5}})
        .jumper("A.top+8", "A.a5")
        .part("R1", "resistor", {{"1", "A.b5"}, {"2", "A.b10"}})
        .jumper("A.a10", "A.bottom-14")
        .build();
}

class TimeWindow : public testing::Test {
protected:
    TimeWindow() : bench({1600, 900}) {}

    void open(Bench next) {
        bench.window().document().reset(std::move(next), {});
        EXPECT_TRUE(bench.waitForAnswer());
    }
    MainWindow& window() { return bench.window(); }
    TimeCard& card() { return window().time().card(); }
    double second() { return window().live().snapshot()->timeSecond; }
    static bool waitFor(const std::function<bool()>& condition) { return WindowBench::waitFor(condition); }
    void key(Qt::Key pressed, Qt::KeyboardModifiers held = Qt::ControlModifier) {
        QTest::keyClick(&window(), pressed, held);
    }

    WindowBench bench;
};

TEST_F(TimeWindow, TheCardComesWithABenchThatMovesAndNeverForARestingOne) {
    open(restingBench());
    QTest::qWait(50);
    EXPECT_FALSE(card().isVisible());
    open(chargingBench());
    EXPECT_TRUE(waitFor([&] { return card().isVisible(); }));
    EXPECT_EQ(card().headline(), QStringLiteral("As in life"));
    EXPECT_TRUE(waitFor([&] { return second() > 0.1; }));
    EXPECT_TRUE(card().clockWords().startsWith(QStringLiteral("circuit time ")));
    open(restingBench());
    EXPECT_TRUE(waitFor([&] { return !card().isVisible(); }));
}

TEST_F(TimeWindow, TheLeverIsTakenByTheMouseAndByKeys) {
    open(chargingBench());
    ASSERT_TRUE(waitFor([&] { return card().isVisible(); }));
    TimeLever& lever = card().lever();
    for (const int detent : {3, 1, 6, 0, 4}) {
        QTest::mouseClick(&lever, Qt::LeftButton, {}, lever.detentPlace(detent).toPoint());
        EXPECT_EQ(lever.value(), detent);
        EXPECT_EQ(window().live().isPaused(), detent == 0);
        EXPECT_EQ(card().headline(), detentWords(detent));
        if (detent == 0) continue;
        EXPECT_EQ(window().live().inputs().timeScale, kTimeRates[static_cast<std::size_t>(detent)]);
    }
    lever.setFocus();
    QTest::keyClick(&lever, Qt::Key_Left);
    EXPECT_EQ(window().live().inputs().timeScale, 0.1);
    EXPECT_EQ(card().explanation(), QStringLiteral("1 s of the circuit lasts 10 s."));
}

TEST_F(TimeWindow, KeysHoldTimeStepOnAndPowerUpAgain) {
    open(chargingBench());
    ASSERT_TRUE(waitFor([&] { return second() > 0.2; }));
    key(Qt::Key_K);
    EXPECT_TRUE(window().live().isPaused());
    QTest::qWait(100);
    const double stood = second();
    QTest::qWait(100);
    EXPECT_EQ(second(), stood);
    EXPECT_EQ(card().headline(), QStringLiteral("Still"));
    key(Qt::Key_I);
    EXPECT_TRUE(waitFor([&] { return second() > stood; }));
    EXPECT_NEAR(second(), stood + 1.0 / 60, 1e-9);
    key(Qt::Key_B);
    EXPECT_TRUE(waitFor([&] { return second() == 0; }));
    EXPECT_LT(window().live().snapshot()->leadVoltage(window().live().snapshot()->layout->leadIndex(2, 0)), 0.01)
        << "all charge is gone";
    key(Qt::Key_K);
    EXPECT_TRUE(waitFor([&] { return second() > 0; }));
    key(Qt::Key_Comma);
    EXPECT_EQ(window().live().inputs().timeScale, 0.1);
    key(Qt::Key_Period);
    key(Qt::Key_Period);
    EXPECT_EQ(window().live().inputs().timeScale, 10);
}

TEST_F(TimeWindow, TheCardIsCalledForAndPutAwayBeforeARoom) {
    open(chargingBench());
    ASSERT_TRUE(waitFor([&] { return card().isVisible(); }));
    window().actions().project->trigger();
    EXPECT_FALSE(card().isVisible());
    window().time().cardAction()->trigger();
    EXPECT_TRUE(card().isVisible());
    window().actions().project->trigger();
    EXPECT_TRUE(waitFor([&] { return card().isVisible(); }));
}

TEST_F(TimeWindow, TheOscilloscopeShowsTheChargingOfTheCapacitor) {
    open(chargingBench());
    const auto trace = [&]() -> const ScopeTrace* { return window().live().snapshot()->traces.scopeOf("O1"); };
    ASSERT_TRUE(waitFor([&] { return trace() && trace()->hasTrace() && second() > 0.9; }));
    // The charge of a capacitor through a resistor, 1 Mohm of the oscilloscope beside it: V (1 - exp(-t / RC)), in closed form.
    const ScopeTrace& seen = *trace();
    const double share = 1e6 / (1e6 + 10e3), tau = 100e-6 * 10e3 * share;
    int compared = 0;
    for (std::size_t i = 0; i < seen.channels[0].least.size(); ++i) {
        const double t = seen.firstSecond + static_cast<double>(i) * seen.columnSecond;
        if (t < 0.05 || t > seen.nowSecond - 0.02 || std::isnan(seen.channels[0].least[i])) continue;
        EXPECT_NEAR(seen.channels[0].least[i], 5 * share * (1 - std::exp(-t / tau)), 0.03) << t;
        EXPECT_NEAR(seen.channels[1].greatest[i], 5, 0.01) << t;
        ++compared;
    }
    EXPECT_GT(compared, 100);
}

TEST_F(TimeWindow, AKnobOnItsFaceTurnsByClickAndWheelAndIsUndone) {
    open(chargingBench());
    const Picture& picture = window().view().picture();
    const int scope = picture.bench().partIndex("O1");
    const auto timeKnob = [&] {
        for (const FaceKnob& knob : faceKnobsOf(picture, scope))
            if (std::string_view(knob.value) == "time") return knob;
        return FaceKnob{};
    };
    const auto value = [&] {
        const Part& part = *window().document().bench()->findPart("O1");
        return part.value(part.kind->valueIndex("time"));
    };
    const auto at = [&](double right) {
        const FaceKnob knob = timeKnob();
        return window().view().fromMm(fromQt(knob.at + QPointF(right * knob.radiusMm, 0))).toPoint();
    };
    QTest::mouseClick(window().view().viewport(), Qt::LeftButton, {}, at(0.6));
    EXPECT_EQ(value(), 0.5);
    QTest::mouseClick(window().view().viewport(), Qt::LeftButton, {}, at(-0.6));
    EXPECT_EQ(value(), 0.2);
    const QPointF there = at(0.2);
    QWheelEvent wheel(there, window().view().viewport()->mapToGlobal(there), {}, {0, -120}, Qt::NoButton, {},
                      Qt::NoScrollPhase, false);
    QApplication::sendEvent(window().view().viewport(), &wheel);
    EXPECT_EQ(value(), 0.1);
    window().document().undoStack().undo();
    EXPECT_EQ(value(), 0.2);
}

TEST_F(TimeWindow, WhatItShowsIsSavedAsATableAndAsAPicture) {
    open(chargingBench());
    ASSERT_TRUE(waitFor([&] { return second() > 0.5; }));
    key(Qt::Key_U, Qt::ControlModifier | Qt::ShiftModifier);
    ScopeCard& large = window().scope().card();
    ASSERT_TRUE(waitFor([&] { return large.isVisible() && large.hasTrace() && large.trace().hasTrace(); }));
    EXPECT_TRUE(large.channelWords(0).startsWith(QStringLiteral("1: mean ")));
    QStringList asked;
    window().scope().setAskPath([&](const QString& ending, const std::function<void(const QString&)>& give) {
        asked << ending;
        give(bench.file("trace.") + ending);
    });
    WindowBench::click(large.tableButton());
    WindowBench::click(large.pictureButton());
    EXPECT_EQ(asked, (QStringList{QStringLiteral("csv"), QStringLiteral("png")}));
    std::ifstream table(bench.file("trace.csv").toStdString());
    std::string head, row;
    std::getline(table, head);
    EXPECT_EQ(head, "time,least1,greatest1,least2,greatest2");
    int rows = 0;
    double lastVolt = -1;
    while (std::getline(table, row)) {
        std::istringstream cells(row);
        std::string cell;
        std::getline(cells, cell, ',');
        std::getline(cells, cell, ',');
        EXPECT_GE(std::stod(cell), lastVolt - 1e-6) << "it charges: " << row;
        lastVolt = std::stod(cell);
        ++rows;
    }
    EXPECT_GT(rows, 100);
    const QImage picture(bench.file("trace.png"));
    EXPECT_GT(picture.width(), 1000);
}

}  // namespace
}  // namespace tiepoint::ui
