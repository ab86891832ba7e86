// No text of the cards is cut: around every part, bench, finding and answer, in windows of all sizes and in all themes.

#include "core/base/embedded.h"
#include "core/bench/bench_file.h"
#include "fitting_desk.h"
#include "support/held_out_benches.h"

namespace tiepoint::ui {
namespace {

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
            constexpr int kMayComeMs = 2000;  // not every one of them leads to a card
            (void)QTest::qWaitFor([this] { return findingCard().isVisible(); }, kMayComeMs);
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

TEST_P(FittingTest, WhatIsStillOpen) {
    open("half; PS1 top+3 bottom-3 5; R1 c8 c13 330; D1 e13 e14 red; W1 top+7 a8 red");
    OpenCard& card = window().findings().openCard();
    ASSERT_TRUE(QTest::qWaitFor([&] { return card.isVisible(); }, FindingsDesk::kCalmMs + 2000));
    fits(QStringLiteral("one end"));
    open("half; PS1 - - 5; R1 c8 c13 330; R2 c18 c23 330; D1 e16 e17 red; D2 e26 e27 red; S1 c3 1");
    ASSERT_TRUE(QTest::qWaitFor([&] { return card.isVisible() && card.open().size() > 4; }, 3000));
    fits(QStringLiteral("many ends"));
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
