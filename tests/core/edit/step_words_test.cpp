// Each kind of step in its two or three words.

#include "core/edit/step_words.h"

#include "support/compact_bench.h"

#include <gtest/gtest.h>

namespace tiepoint {
namespace {

const char* const kBeforeSteps =
    "half; PS1 top+3 bottom-3 5; R1 c8 c14 330; S1 e14; D1 h16 h19 green; D2 h25 h26 red; W1 top+7 a8 red";

class StepWords : public testing::Test {
protected:
    StepNote noteOf(const Edit& edit) const {
        const auto after = apply(bench, edit);
        EXPECT_TRUE(after.ok()) << after.error().message;
        return stepNote(bench, edit, after->bench);
    }
    std::string wordsOf(Operation operation) const { return noteOf({"Do", {std::move(operation)}}).words; }
    Part part(const char* id) const { return *bench.findPart(id); }
    static Jumper jumper(const char* id, const char* from, const char* to) {
        Jumper made;
        made.id = id;
        made.ends = {test::holeAt(from), test::holeAt(to)};
        return made;
    }
    Bench bench = test::compactBench(kBeforeSteps);
};

TEST_F(StepWords, SayWhatCameAndWhereItLeads) {
    Part second = part("R1");
    second.id = "R2";
    second.leads = {test::holeAt("A.c20"), test::holeAt("A.c25")};
    EXPECT_EQ(wordsOf(AddPart{second}), "R2 in");
    EXPECT_EQ(wordsOf(AddJumper{jumper("W2", "A.j19", "A.bottom-18")}), "D1 to minus");
    EXPECT_EQ(wordsOf(AddJumper{jumper("W2", "A.top+12", "A.a25")}), "joined to plus");
    EXPECT_EQ(wordsOf(AddJumper{jumper("W2", "A.d14", "A.j25")}), "R1 to D2") << "of two in one strip the first";
    EXPECT_EQ(wordsOf(AddJumper{jumper("W2", "A.a28", "A.a29")}), "W2 in");
}

TEST_F(StepWords, SayWhatChanged) {
    Part resistor = part("R1"), led = part("D1"), supply = part("PS1");
    resistor.values[static_cast<std::size_t>(resistor.kind->valueIndex("resistance"))] = 220;
    EXPECT_EQ(wordsOf(ReplacePart{resistor}), "R1 220 Ω");
    led.values[static_cast<std::size_t>(led.kind->valueIndex("colour"))] =
        part("D2").value(led.kind->valueIndex("colour"));
    EXPECT_EQ(wordsOf(ReplacePart{led}), "green to red");
    led = part("D1");
    std::swap(led.leads[0], led.leads[1]);
    EXPECT_EQ(wordsOf(ReplacePart{led}), "D1 turned");
    led.leads[1] = test::holeAt("A.g22");
    EXPECT_EQ(wordsOf(ReplacePart{led}), "D1 moved");
    supply.state[static_cast<std::size_t>(supply.kind->stateIndex("on"))] = 0;
    EXPECT_EQ(wordsOf(ReplacePart{supply}), "PS1 off");
    Jumper wire = *bench.findJumper("W1");
    wire.colour = findJumperColour("blue");
    EXPECT_EQ(wordsOf(ReplaceJumper{wire}), "W1 blue");
    EXPECT_EQ(wordsOf(SetTitle{"Lamp"}), "renamed");
}

TEST_F(StepWords, SayWhatWentAndHowMany) {
    EXPECT_EQ(wordsOf(Remove{"W1"}), "W1 out");
    EXPECT_EQ(noteOf({"Remove", {Remove{"D1"}, Remove{"D2"}}}), (StepNote{"D1, D2 out", {"D1", "D2"}}));
    EXPECT_EQ(noteOf({"Remove", {Remove{"D1"}, Remove{"D2"}, Remove{"W1"}}}).words, "3 things out");
    EXPECT_EQ(noteOf({"Put a resistor in front of D2", {Remove{"W1"}, SetTitle{"x"}}}).words, "Put a resistor");
}

}  // namespace
}  // namespace tiepoint
