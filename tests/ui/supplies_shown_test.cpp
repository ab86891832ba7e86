// What is shown of supplies: one figure on display and card, whose limit it is, two voltages side by side, and where there is no answer.

#include "support/compact_bench.h"
#include "ui/cards/loop_text.h"
#include "ui/cards/reading_text.h"
#include "ui/paint/packages/package_painter.h"
#include "window_bench.h"

#include <gtest/gtest.h>

namespace tiepoint::ui {
namespace {

class SuppliesShown : public testing::Test {
protected:
    void open(const char* text) { open(test::compactBench(text)); }
    void open(Bench bench) {
        desk.window().document().reset(std::move(bench), {});
        ASSERT_TRUE(desk.waitForAnswer());
    }
    const Picture& picture() { return desk.window().view().picture(); }
    const Snapshot& snapshot() { return *picture().snapshot; }
    std::string displayOf(const char* id) {
        const int part = picture().bench().partIndex(id);
        const auto* painter =
            findPackagePainter(picture().bench().parts[static_cast<std::size_t>(part)].kind->package->name);
        const auto shown = painter->figuresAt(snapshot(), part, 0);
        return shown ? shown->figure : std::string();
    }
    ReadingText cardOf(const char* id) { return readingText(picture(), id); }
    WindowBench desk;
};

TEST_F(SuppliesShown, AShortedSupplyShowsOneFigureAndWhoseLimitItIs) {
    open("half; PS1 top+3 bottom-3 5 0.1; W1 top+20 bottom-20 red");
    const ReadingText card = cardOf("PS1");
    EXPECT_EQ(displayOf("PS1"), card.big.toStdString());
    EXPECT_EQ(displayOf("PS1"), "100 mA");
    EXPECT_EQ(card.note, QStringLiteral("100 % of its 0.1 A limit"));
    EXPECT_EQ(loopText(picture(), {}).big, card.big) << "and the bench's own card";
    ASSERT_TRUE(WindowBench::waitFor([this] { return desk.window().findings().card().finding() != nullptr; }));
    const Finding& found = *desk.window().findings().card().finding();
    EXPECT_EQ(found.rule, "short-circuit");
    EXPECT_NE(found.text.find("PS1"), std::string::npos) << found.text;
}

TEST_F(SuppliesShown, TwoVoltagesAreNamedEachWithItsSupply) {
    open(
        "half; PS1 top+3 top-3 5; PS2 bottom+3 bottom-3 12; R1 c5 c10 1000; W1 a5 top+8 red; W2 a10 top-9 black; R2 "
        "h15 "
        "h20 1000; W3 j15 bottom+14 red; W4 j20 bottom-18 black; W5 top-24 bottom-24 black");
    const LoopText text = loopText(picture(), {});
    EXPECT_EQ(text.title, QStringLiteral("The supplies give"));
    EXPECT_EQ(text.big, QStringLiteral("169.0 mW")) << "25 mW and 144 mW";
    for (const char* words : {"PS1", "5.00 mA", "5.00 V", "PS2", "12.00 mA", "12.00 V"})
        EXPECT_NE(text.note.indexOf(QString::fromLatin1(words)), -1) << words << " in " << text.note.toStdString();
}

TEST_F(SuppliesShown, WithoutASolutionThePlaceIsNamedAndNoFigureStands) {
    Bench bench =
        test::compactBench("half; PS1 top+3 bottom-3 5; PS2 top+9 bottom-9 3; R1 c5 c10 1000; W1 a5 top+8 red");
    for (Part& part : bench.parts)
        if (part.kind->isSupply) part.values[static_cast<std::size_t>(part.kind->valueIndex("seriesResistance"))] = 0;
    open(std::move(bench));
    ASSERT_EQ(snapshot().status(), Status::None);
    EXPECT_EQ(displayOf("PS1"), "");
    EXPECT_EQ(cardOf("R1").big, QStringLiteral("no answer"));
    for (const QString& words : {loopText(picture(), {}).note, cardOf("R1").note}) {
        EXPECT_NE(words.indexOf(QStringLiteral("PS1")), -1) << words.toStdString();
        EXPECT_NE(words.indexOf(QStringLiteral("PS2")), -1) << words.toStdString();
        EXPECT_EQ(words.indexOf(QStringLiteral("R1")), -1) << words.toStdString();
    }
    ASSERT_TRUE(WindowBench::waitFor([this] { return desk.window().findings().card().finding() != nullptr; }));
    const Finding& found = *desk.window().findings().card().finding();
    EXPECT_EQ(found.rule, "no-solution");
    EXPECT_EQ(found.parts, (std::vector<std::string>{"PS1", "PS2"}));
    EXPECT_TRUE(WindowBench::waitFor([this] { return !desk.window().view().findingMark(0).isEmpty(); }));
}

TEST_F(SuppliesShown, ADisplayHasFourDigitsAndItsBranchesAddUp) {
    desk.window().files().openEmbedded(QStringLiteral("benches/three-buoys.bench.json"));
    ASSERT_TRUE(desk.waitForAnswer());
    const std::string shown = displayOf("PS1");
    EXPECT_LE(std::ranges::count_if(shown, [](char each) { return each >= '0' && each <= '9'; }), 4) << shown;
    const ShownFigures& figures = snapshot().shown();
    std::int64_t sum = 0;
    for (const char* jumper : {"W2", "W4", "W6"})
        sum += figures.jumperCurrent(picture().bench().jumperIndex(jumper)).steps();
    EXPECT_EQ(sum, figures.through(picture().bench().partIndex("PS1")).out.steps());
    // A branch of ten microamperes asks for a finer scale; the display keeps to its digits.
    open(
        "half; PS1 top+3 bottom-3 5; R1 c5 c10 250; W1 a5 top+8 red; W2 a10 bottom-9 black; R2 h15 h20 470000; W3 j15 "
        "top+14 red; W4 j20 bottom-18 black");
    EXPECT_EQ(cardOf("R2").big, QStringLiteral("0.011 mA"));
    EXPECT_EQ(displayOf("PS1"), "20.01 mA");
}

}  // namespace
}  // namespace tiepoint::ui
