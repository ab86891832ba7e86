// No text of the window is cut: around every part, bench, card, overlay and question, in windows of all sizes and in all themes.

#include "fitting.h"

#include "core/base/embedded.h"
#include "core/bench/bench_file.h"
#include "support/compact_bench.h"
#include "support/held_out_benches.h"
#include "ui/document/recovery.h"
#include "ui/theme/theme_choice.h"
#include "ui/window/questions_in_bar.h"
#include "window_bench.h"

#include <QDir>
#include <QFile>
#include <QFileDialog>

#include <set>
#include <tuple>

namespace tiepoint::ui {
namespace {

const char* const kTroubled[] = {
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
        EXPECT_EQ(window().size(), std::get<0>(GetParam()));
    }
    MainWindow& window() { return desk.window(); }
    FindingCard& findingCard() { return window().findings().card(); }

    void open(Bench bench) {
        window().document().reset(std::move(bench), {});
        window().view().fitBench();
        ASSERT_TRUE(desk.waitForAnswer());
    }
    void open(std::string_view text, Reveal level = Reveal::Mend) {
        Bench bench = test::compactBench(text);
        bench.disclosure = Disclosure{level, {}, {}};
        open(std::move(bench));
    }
    /// In the smallest window long words may be shortened, where a tool tip and what is heard tell the whole.
    void fits(const QString& where, Shortened shortened = Shortened::Never) {
        constexpr int kNarrow = 1000;
        if (window().width() < kNarrow) shortened = Shortened::IfToldElsewhere;
        for (const QString& wrong : misfitsOf(window(), shortened))
            if (told_.insert(wrong).second) ADD_FAILURE() << where.toStdString() << ": " << wrong.toStdString();
    }
    void show(Views views) { window().view().setViews(views); }

    WindowBench desk;

private:
    std::set<QString> told_;  ///< each is told once
};

/// Each value at its least, usual and greatest, each choice and position.
std::vector<Part> variantsOf(const PartKind& kind) {
    const Part usual = makePart(kind, kind.prefix + "12");
    std::vector<Part> variants{usual};
    for (const bool most : {false, true}) {
        Part extreme = usual;
        for (std::size_t i = 0; i < kind.values.size(); ++i) {
            const ValueSpec& spec = kind.values[i];
            if (spec.type != ValueType::Number) continue;
            extreme.values[i] = !spec.allowed.empty() ? (most ? spec.allowed.back() : spec.allowed.front())
                                : most                ? spec.maximum
                                                      : spec.minimum;
        }
        variants.push_back(extreme);
    }
    for (std::size_t i = 0; i < kind.values.size(); ++i) {
        for (std::size_t choice = 0; choice < kind.values[i].choices.size(); ++choice) {
            variants.push_back(usual);
            variants.back().values[i] = static_cast<double>(choice);
        }
    }
    for (std::size_t i = 0; i < kind.state.size(); ++i) {
        for (std::size_t choice = 0; choice < kind.state[i].choices.size(); ++choice) {
            variants.push_back(usual);
            variants.back().state[i] = static_cast<double>(choice);
        }
    }
    return variants;
}

TEST_P(FittingTest, TheValuesOfEveryKindOfPart) {
    for (const PartKind& kind : catalogue()) {
        for (const Part& part : variantsOf(kind)) {
            Bench bench = makeNewBench();
            bench.parts = {part};
            open(std::move(bench));
            window().view().setSelection({QString::fromStdString(part.id)});
            ASSERT_TRUE(window().cards().values().isVisible()) << kind.name;
            fits(QString::fromStdString(kind.name));
        }
        window().cards().values().showHelp(true);
        fits(QString::fromStdString(kind.name) + QStringLiteral(", help"));
    }
}

TEST_P(FittingTest, ARefusedValueIsSaidWhole) {
    open("half; PS1 top+3 bottom-3 5; R1 c8 c14 330");
    for (const char* id : {"PS1", "R1"}) {
        window().view().setSelection({QString::fromLatin1(id)});
        ValueEditor& values = window().cards().values();
        for (const char* typed : {"as much as there is", "99999999999"}) {
            auto* edit = values.fields().front()->findChild<QLineEdit*>();
            edit->setFocus();
            edit->selectAll();
            QTest::keyClicks(edit, QString::fromLatin1(typed));
            QTest::keyClick(edit, Qt::Key_Return);
            EXPECT_FALSE(values.refusal().isEmpty()) << id << ' ' << typed;
            edit->setText(QStringLiteral("5"));
            fits(QStringLiteral("%1 refused: %2").arg(QString::fromLatin1(id), values.refusal()));
        }
    }
}

TEST_P(FittingTest, EveryBenchInEveryView) {
    Views all;
    all.voltage = all.strips = all.readings = all.turned = true;
    all.arrows = Arrows::Electrons;
    all.lockedFullScaleAmpere = 0.5;
    for (const EmbeddedFile& file : embeddedFiles()) {
        if (!file.name.starts_with("benches/")) continue;
        const QString name = QString::fromUtf8(file.name.data(), static_cast<qsizetype>(file.name.size()));
        open(std::move(readBench(file.text)).value().bench);
        for (const Part& part : window().document().bench()->parts)
            if (part.kind->hasCap) window().live().setHeld(part.id, true);
        ASSERT_TRUE(desk.waitForAnswer());
        for (const Views& views : {Views{}, all}) {
            show(views);
            fits(name);
            const auto bench = window().document().bench();
            for (const Part& part : bench->parts) {
                window().view().setSelection({QString::fromStdString(part.id)});
                fits(name + QStringLiteral(", ") + QString::fromStdString(part.id));
            }
            for (const Jumper& jumper : bench->jumpers) {
                window().view().setSelection({QString::fromStdString(jumper.id)});
                fits(name + QStringLiteral(", ") + QString::fromStdString(jumper.id));
            }
            window().view().setSelection({});
        }
    }
}

TEST_P(FittingTest, ALoopOfManyParts) {
    std::string text = "full; PS1 top+3 bottom-3 30; W1 top+1 a1 red";
    for (int i = 0; i < 12; ++i)
        text += "; R" + std::to_string(i + 1) + (i % 2 ? " c" : " d") + std::to_string(1 + 5 * i) +
                (i % 2 ? " c" : " d") + std::to_string(6 + 5 * i) + " 1000";
    text += "; W2 a61 bottom-50 black";
    open(text);
    EXPECT_EQ(window().cards().loop().text().drops.size(), 12u);
    for (const bool voltage : {false, true}) {
        Views views;
        views.voltage = voltage;
        show(views);
        fits(QStringLiteral("twelve in a row"));
    }
}

TEST_P(FittingTest, FindingsAndAnswers) {
    for (const char* text : kTroubled) {
        for (const Reveal level : {Reveal::Place, Reveal::Mend}) {
            open(text, level);
            WindowBench::waitFor([this] { return findingCard().isVisible(); });
            fits(QString::fromLatin1(text));
        }
        const auto bench = window().document().bench();
        for (const Part& part : bench->parts) {
            window().view().setSelection({QString::fromStdString(part.id)});
            window().inquiry().whyAction()->trigger();
            const AnswerCard& answer = window().inquiry().answer();
            ASSERT_TRUE(WindowBench::waitFor(
                [&] { return answer.isVisible() && answer.answer() && answer.answer()->part == part.id; }));
            fits(QStringLiteral("why %1: %2").arg(QString::fromStdString(part.id), QString::fromLatin1(text)));
        }
        window().inquiry().putAway();
    }
}

TEST_P(FittingTest, TheCardsThatAreCalledFor) {
    for (const auto& [name, text] : test::heldOutBenches()) {
        open(text);
        const QString where = QString::fromUtf8(name.data(), static_cast<qsizetype>(name.size()));
        window().inquiry().tableAction()->trigger();
        ASSERT_TRUE(WindowBench::waitFor([this] { return !window().inquiry().table().isStale(); })) << name;
        fits(where + QStringLiteral(", truth"));
        window().inquiry().putAway();
        window().walk().action()->trigger();
        fits(where + QStringLiteral(", walk"));
        window().walk().action()->trigger();
    }
    window().resistorHelp().helpAction()->trigger();
    fits(QStringLiteral("which resistor"));
    window().resistorHelp().drawerAction()->trigger();
    fits(QStringLiteral("my drawer"));
}

TEST_P(FittingTest, TheTrayAndItsDrawers) {
    for (TrayButton* key : window().tray().compartments()) {
        WindowBench::click(key);
        fits(key->text());
        QTest::keyClick(&window().view(), Qt::Key_Escape);
        window().tray().closeDrawer();
    }
    for (const char* typed : {"r", "4k8", "resistor 1", "5 V", "zzz", "1,000", "red", "100 mA supply"}) {
        window().tray().beginSearch();
        QTest::keyClicks(QApplication::focusWidget(), QString::fromLatin1(typed));
        fits(QString::fromLatin1(typed));
    }
}

TEST_P(FittingTest, TheGuideFromStepToStep) {
    window().actions().firstBuild->trigger();
    ASSERT_TRUE(desk.waitForAnswer());
    const char* const kSteps[] = {"half; PS1 - - 5 off",
                                  "half; PS1 - - 5 off; R1 c8 c14 330",
                                  "half; PS1 - - 5 off; R1 c8 c14 330; D1 e14 f14 red",
                                  "half; PS1 top+3 bottom-3 5 off; R1 c8 c14 330; D1 e14 f14 red; W1 top+7 a8 red",
                                  kTroubled[3],
                                  kTroubled[0],
                                  kTroubled[6]};
    for (const char* text : kSteps) {
        open(text);
        ASSERT_TRUE(window().tools().guide().isVisible());
        fits(QStringLiteral("guide: ") + QString::fromStdString(window().tools().guide().advice().title));
    }
    WindowBench::click(window().tools().guide().pictureKey());
    fits(QStringLiteral("the tap"));
}

TEST_P(FittingTest, TheHistoryTellsLongStepsWhole) {
    for (int i = 0; i < 30; ++i) {
        const std::string name = i % 2 ? "Join column 14 with the minus rail, below, by a jumper" : "Move R1";
        ASSERT_FALSE(window().document().push({name, {SetTitle{"Pier " + std::to_string(i)}}}));
    }
    window().actions().steps->trigger();
    ASSERT_TRUE(window().tools().steps().isVisible());
    fits(QStringLiteral("steps so far"));
}

TEST_P(FittingTest, TheStartCardWithWorkThatWasLeftBehind) {
    QDir().mkpath(desk.recoveryFolder());
    ASSERT_TRUE(writeBenchFile(makeNewBench(), (desk.recoveryFolder() + "/left.bench.json").toStdString()).ok());
    window().showStartCard();
    ASSERT_TRUE(window().startCard()->recoverKey()->isVisible());
    fits(QStringLiteral("start"));
}

TEST_P(FittingTest, WhatIsSaidAndAsked) {
    window().actions().cautions->trigger();
    fits(QStringLiteral("cautions"));
    MessageBar& bar = window().bar();
    bar.say(
        MessageBar::Tone::Trouble,
        QStringLiteral("%1: /parts/3/leads/anode, line 812, column 40: \u201cA.e77\u201d is no hole of the board A, "
                       "which has 63 columns")
            .arg(QString(150, QLatin1Char('x'))),
        {{QStringLiteral("Take that one"), [] {}}, {QStringLiteral("Keep this one"), [] {}}});
    fits(QStringLiteral("a long line"));
    bar.dismiss();
    const std::string title =
        "The tide gauge at the end of the long pier, with the lamp of the harbour master beside it";
    ASSERT_FALSE(window().document().push({"Rename", {SetTitle{title}}}));
    const QString file =
        desk.file("a-rather-long-name-of-a-file-that-someone-gave-the-bench-of-the-tide-gauge.bench.json");
    ASSERT_TRUE(writeBenchFile(makeNewBench(), file.toStdString()).ok());
    window().files().setAsker(questionsInBar(bar, &window()));
    window().files().newBench();
    ASSERT_TRUE(bar.isAsking());
    fits(QStringLiteral("unsaved"), Shortened::IfToldElsewhere);
    QTest::keyClick(QApplication::focusWidget(), Qt::Key_Escape);
    ASSERT_FALSE(bar.isAsking());
    window().findings().reveal().lockAction()->trigger();
    ASSERT_TRUE(bar.isAsking());
    fits(QStringLiteral("phrase"), Shortened::IfToldElsewhere);
    QTest::keyClick(QApplication::focusWidget(), Qt::Key_Escape);
    // Names that are longer than their room are shortened in the middle, and told elsewhere.
    window().document().setFilePath(file);
    fits(QStringLiteral("long names"), Shortened::IfToldElsewhere);
}

TEST_P(FittingTest, WhatIsTypedOverTheBoard) {
    open("half; PS1 top+3 bottom-3 5; R1 c8 c14 330");
    window().view().setSelection({QStringLiteral("R1")});
    window().view().setFocus();
    QTest::keyClick(&window().view(), Qt::Key_2);
    fits(QStringLiteral("a value"));
    auto* edit = qobject_cast<QLineEdit*>(QApplication::focusWidget());
    ASSERT_TRUE(edit);
    edit->setText(QStringLiteral("lots"));
    QTest::keyClick(edit, Qt::Key_Return);
    fits(QStringLiteral("a refused value"));
    QTest::keyClick(edit, Qt::Key_Escape);
    window().view().setSelection({});
    window().view().setCursorHole(Hole{"A", Line::A, 20});
    window().actions().note->trigger();
    fits(QStringLiteral("a note"));
}

TEST_P(FittingTest, FileDialoguesAndMenusGrowWithTheWindow) {
    QApplication::setAttribute(Qt::AA_DontUseNativeDialogs);
    window().files().setAsker(questionsInBar(window().bar(), &window()));
    window().files().open();
    auto* dialog = window().findChild<QFileDialog*>();
    ASSERT_TRUE(dialog);
    const ui::Look look = lookFor(theme(std::get<1>(GetParam())), window().size());
    EXPECT_EQ(dialog->font().pixelSize(), look.font(text::kSmall).pixelSize());
    auto* name = dialog->findChild<QLineEdit*>(QStringLiteral("fileNameEdit"));
    ASSERT_TRUE(name);
    EXPECT_EQ(name->fontInfo().pixelSize(), look.font(text::kSmall).pixelSize());
    QTest::keyClick(dialog, Qt::Key_Escape);
    QApplication::setAttribute(Qt::AA_DontUseNativeDialogs, false);
    QMenu* menu = window().titleLine().menus().actions().front()->menu();
    menu->ensurePolished();
    EXPECT_EQ(menu->fontInfo().pixelSize(), look.ipx(text::kSmall));
}

std::string nameOfWindow(const testing::TestParamInfo<FittingTest::ParamType>& info) {
    static const char* const kThemes[] = {"Day", "Dark", "Projector"};
    const QSize size = std::get<0>(info.param);
    return std::to_string(size.width()) + "x" + std::to_string(size.height()) +
           kThemes[static_cast<int>(std::get<1>(info.param))];
}

INSTANTIATE_TEST_SUITE_P(Windows, FittingTest,
                         testing::Combine(testing::Values(QSize(900, 600), QSize(1366, 768), QSize(1920, 1080),
                                                          QSize(2560, 1440), QSize(3840, 2160)),
                                          testing::Values(ThemeName::Day, ThemeName::Dark, ThemeName::Projector)),
                         nameOfWindow);

}  // namespace
}  // namespace tiepoint::ui
