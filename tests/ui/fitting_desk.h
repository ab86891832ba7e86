#pragma once
// A window in one size and theme, whose words are to fit. The sizes and themes are listed in fitting_test.cpp.

#include "fitting.h"
#include "support/compact_bench.h"
#include "ui/theme/theme_choice.h"
#include "window_bench.h"

#include <set>
#include <tuple>

namespace tiepoint::ui {

/// Benches with something wrong.
inline const char* const kTroubled[] = {
    "half; PS1 top+3 bottom-3 5; R1 c8 c14 330; D1 f14 e14 red; W1 top+7 a8 red; W2 j14 bottom-13 black",
    "half; PS1 top+3 bottom-3 5; R1 c8 c14 330; D1 e14 f14 red; W1 top+7 a8 red; W2 j14 bottom-13 black; W9 top+20 "
    "bottom-20 red",
    "half; PS1 top+3 bottom-3 9; D1 e14 f14 red; W1 top+7 a14 red; W2 j14 bottom-13 black",
    "half; PS1 top+3 bottom-3 5 off; R1 c8 c14 330; D1 e14 f14 red; W1 top+7 a8 red; W2 j14 bottom-13 black",
    "half; PS1 top+3 bottom-3 5; S1 c14 1; R1 c20 c26 330; D1 e26 f26 red; W1 top+7 a14 red; W2 j26 bottom-23 black",
    "half; PS1 top+3 bottom-3 5; R1 c8 c14 1000000; D1 e14 f14 blue; W1 top+7 a8 black; W2 j14 bottom-13 red",
    "half; PS1 top+3 bottom-3 5; R1 c8 c14 330; D1 e14 f14 red; W1 top+7 a8 red",
};

class FittingTest : public testing::TestWithParam<std::tuple<QSize, ThemeName>> {
protected:
    FittingTest() : desk(std::get<0>(GetParam())) {
        chooseTheme(std::get<1>(GetParam()));
        desk.restart(std::get<0>(GetParam()));
        window().setUpdatesEnabled(false);  // words are looked at in a drawing of their own, no pixel is
        EXPECT_EQ(window().size(), std::get<0>(GetParam()));
    }
    MainWindow& window() { return desk.window(); }
    FindingCard& findingCard() { return window().findings().card(); }

    void open(Bench bench) {
        window().document().reset(std::move(bench), {});
        window().view().fitBench();
        ASSERT_TRUE(desk.waitForAnswer()) << desk.whyNoAnswer();
    }
    void open(std::string_view text, Reveal level = Reveal::Mend) {
        Bench bench = test::compactBench(text);
        bench.disclosure = Disclosure{level, {}, {}};
        open(std::move(bench));
    }
    void fits(const QString& where, Shortened shortened = Shortened::Never) {
        for (const QString& wrong : misfitsOf(window(), shortened))
            if (told_.insert(wrong).second) ADD_FAILURE() << where.toStdString() << ": " << wrong.toStdString();
    }
    void show(Views views) { window().view().setViews(views); }

    WindowBench desk;

private:
    std::set<QString> told_;  ///< each is told once
};

}  // namespace tiepoint::ui
