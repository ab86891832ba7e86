// The cards: what they say is what was solved, the legend's rows switch the views, and values can be set from the card alone.

#include "core/base/quantity.h"
#include "core/snapshot/readings.h"
#include "support/build_bench.h"
#include "ui/theme/panels.h"
#include "window_bench.h"

#include <QComboBox>
#include <QLineEdit>

#include <gtest/gtest.h>

#include <cmath>

namespace tiepoint::ui {
namespace {

using tiepoint::test::BenchBuilder;

class Cards : public testing::Test {
protected:
    MainWindow& window() { return desk.window(); }
    CardRow& cards() { return window().cards(); }

    void open(const char* name) {
        window().files().openEmbedded(QStringLiteral("benches/%1.bench.json").arg(QString::fromLatin1(name)));
        ASSERT_TRUE(desk.waitForAnswer());
    }
    void hold(const char* part) {
        window().live().setHeld(part, true);
        ASSERT_TRUE(desk.waitForAnswer());
    }
    double solvedCurrent(const char* part) {
        const auto snapshot = window().live().snapshot();
        return currentThrough(*snapshot, snapshot->layout->bench->partIndex(part)).inAmpere;
    }
    void select(const char* id) { window().view().setSelection({QString::fromLatin1(id)}); }
    ValueField* field(const char* name) {
        for (ValueField* each : cards().values().fields())
            if (each->spec().name == name) return each;
        ADD_FAILURE() << "no field " << name;
        return nullptr;
    }
    void type(const char* name, const char* text) {
        auto* edit = field(name)->findChild<QLineEdit*>();
        ASSERT_TRUE(edit);
        edit->setFocus();
        edit->selectAll();
        QTest::keyClicks(edit, QString::fromUtf8(text));
        QTest::keyClick(edit, Qt::Key_Return);
    }
    double valueOf(const char* part, const char* name) {
        const Part& found = *window().document().bench()->findPart(part);
        return found.value(found.kind->valueIndex(name));
    }

    WindowBench desk;
};

TEST_F(Cards, TheReadingIsTheSolvedNumberOfTheLight) {
    open("beacon-lamp");
    hold("S1");
    const double ampere = solvedCurrent("D1");
    // Common practice: a red LED with 330 ohm on 5 V passes 9 to 10 mA.
    EXPECT_GT(ampere, 9e-3);
    EXPECT_LT(ampere, 10e-3);
    const ReadingText& text = cards().reading().text();
    EXPECT_EQ(text.title, QStringLiteral("D1, red LED in h16 and h19"));
    EXPECT_EQ(text.big.toStdString(), formatQuantity(ampere, "A"));
    EXPECT_EQ(text.in, text.big);
    EXPECT_EQ(text.out, text.big);
    ASSERT_TRUE(text.share);
    EXPECT_NEAR(*text.share, ampere / 30e-3, 1e-9);
    EXPECT_EQ(text.note, QStringLiteral("%1 % of its 30 mA maximum").arg(std::round(ampere / 30e-3 * 100)));
}

TEST_F(Cards, ASelectedPartTakesTheReadingOver) {
    open("beacon-lamp");
    hold("S1");
    select("R1");
    EXPECT_EQ(cards().reading().text().title, QStringLiteral("R1, 330 Ω resistor in c8 and c14"));
    select("W1");
    EXPECT_EQ(cards().reading().text().title, QStringLiteral("W1, red jumper in top+7 and a8"));
    EXPECT_EQ(cards().reading().text().big.toStdString(), formatQuantity(solvedCurrent("D1"), "A"));
    window().view().setSelection({});
    EXPECT_EQ(cards().reading().text().title, QStringLiteral("D1, red LED in h16 and h19"));
}

TEST_F(Cards, OnceRoundTheLoopAddsUpToTheSupply) {
    open("beacon-lamp");
    hold("S1");
    const LoopText& text = cards().loop().text();
    EXPECT_EQ(text.title, QStringLiteral("Voltage around the loop"));
    double share = 0;
    std::vector<std::string> parts;
    for (const DropText& drop : text.drops) {
        share += drop.share;
        parts.push_back(drop.part);
    }
    EXPECT_NEAR(share, 1, 1e-9);
    EXPECT_EQ(parts, (std::vector<std::string>{"R1", "S1", "D1"}));
}

TEST_F(Cards, ReleasedNothingFlowsAndTheCardSaysSo) {
    open("beacon-lamp");
    EXPECT_EQ(cards().loop().text().title, QStringLiteral("Nothing flows yet"));
    EXPECT_TRUE(cards().loop().text().drops.empty());
}

TEST_F(Cards, ABranchPointShowsWhatComesInAndWhatGoesOut) {
    window().document().reset(
        BenchBuilder()
            .board("A", "half")
            .part("PS1", "bench-supply", {{"+", "A.top+3"}, {"-", "A.bottom-3"}}, {{"voltage", 5}})
            .jumper("A.top+7", "A.a8")
            .part("R1", "resistor", {{"1", "A.c8"}, {"2", "A.c13"}}, {{"resistance", 500.0}})
            .jumper("A.e13", "A.bottom-11")
            .jumper("A.top+17", "A.a20")
            .part("R2", "resistor", {{"1", "A.c20"}, {"2", "A.c25"}}, {{"resistance", 1000.0}})
            .jumper("A.e25", "A.bottom-21")
            .build(),
        {});
    ASSERT_TRUE(desk.waitForAnswer());
    const LoopText& text = cards().loop().text();
    EXPECT_EQ(text.title, QStringLiteral("Where W1 leaves the plus rail"));
    ASSERT_EQ(text.in.size(), 1u);
    ASSERT_EQ(text.out.size(), 2u);
    EXPECT_NEAR(text.in[0].ampere, text.out[0].ampere + text.out[1].ampere, 1e-9);
    EXPECT_EQ(text.in[0].where, QStringLiteral("rail before"));
    EXPECT_EQ(text.out[0].where, QStringLiteral("W1"));
    EXPECT_EQ(text.out[1].where, QStringLiteral("rail after"));
}

TEST_F(Cards, ABenchThatIsOffClaimsNoShareAndNoCurrent) {
    open("beacon-lamp");
    ASSERT_FALSE(window().document().push(setStateEdit(*window().document().bench(), "PS1", "on", 0)));
    ASSERT_TRUE(desk.waitForAnswer());
    EXPECT_EQ(cards().loop().text().title, QStringLiteral("Nothing flows"));
    EXPECT_FALSE(cards().reading().text().share);
    EXPECT_TRUE(cards().reading().text().in.isEmpty());
}

TEST_F(Cards, RowsOfTheLegendSwitchTheViews) {
    open("beacon-lamp");
    const auto buttons = cards().legend().findChildren<ViewButton*>(QString(), Qt::FindDirectChildrenOnly);
    ASSERT_EQ(buttons.size(), 5);
    const auto button = [&](const char* word) {
        for (ViewButton* each : buttons)
            if (each->text() == QString::fromLatin1(word)) return each;
        return static_cast<ViewButton*>(nullptr);
    };
    const Views before = window().view().views();
    WindowBench::click(button("Voltage"));
    EXPECT_NE(window().view().views().voltage, before.voltage);
    WindowBench::click(button("Strips"));
    EXPECT_NE(window().view().views().strips, before.strips);
    WindowBench::click(button("Readings"));
    EXPECT_NE(window().view().views().readings, before.readings);
    WindowBench::click(button("Underside"));
    EXPECT_TRUE(window().view().views().turned);
    WindowBench::click(button("Underside"));
    EXPECT_FALSE(window().view().views().turned);
    QTest::mouseClick(button("Arrows"), Qt::LeftButton, {}, QPoint(10, button("Arrows")->height() / 2));
    EXPECT_EQ(window().view().views().arrows, Arrows::Off);
    QTest::mouseClick(button("Arrows"), Qt::LeftButton, {}, QPoint(10, button("Arrows")->height() / 2));
    EXPECT_EQ(window().view().views().arrows, Arrows::Conventional);
    auto* arrows = qobject_cast<ArrowsButton*>(button("Arrows"));
    ASSERT_TRUE(arrows);
    WindowBench::click(arrows->directionButton());
    EXPECT_EQ(window().view().views().arrows, Arrows::Electrons);
    EXPECT_EQ(arrows->directionButton()->text(), QStringLiteral("electron flow"));
    WindowBench::click(arrows->lockButton());
    EXPECT_TRUE(window().view().views().lockedFullScaleAmpere);
    WindowBench::click(arrows->lockButton());
    EXPECT_FALSE(window().view().views().lockedFullScaleAmpere);
}

TEST_F(Cards, ValuesAreTypedInTheLetterCode) {
    open("beacon-lamp");
    select("R1");
    EXPECT_TRUE(cards().values().isVisible());
    EXPECT_FALSE(cards().loop().isVisible());
    struct Typed {
        const char* text;
        double ohm;
    };
    for (const Typed& typed :
         {Typed{"220", 220}, Typed{"4k7", 4700}, Typed{"4R7", 4.7}, Typed{"1M", 1e6}, Typed{"2,2k", 2200}}) {
        type("resistance", typed.text);
        EXPECT_DOUBLE_EQ(valueOf("R1", "resistance"), typed.ohm) << typed.text;
    }
    type("resistance", "a lot");
    EXPECT_DOUBLE_EQ(valueOf("R1", "resistance"), 2200) << "what is no number changes nothing";
    window().document().undoStack().undo();
    EXPECT_DOUBLE_EQ(valueOf("R1", "resistance"), 1e6);
}

TEST_F(Cards, AValueOutOfRangeIsRefusedInWords) {
    open("beacon-lamp");
    select("PS1");
    type("voltage", "31");
    EXPECT_DOUBLE_EQ(valueOf("PS1", "voltage"), 5);
    EXPECT_FALSE(field("voltage")->toolTip().isEmpty());
    type("voltage", "12");
    EXPECT_DOUBLE_EQ(valueOf("PS1", "voltage"), 12);
    EXPECT_TRUE(field("voltage")->toolTip().isEmpty());
}

TEST_F(Cards, EveryKindHasItsFieldsAndHelp) {
    for (const PartKind& kind : catalogue()) {
        SCOPED_TRACE(kind.name);
        Bench bench = makeNewBench();
        bench.parts.push_back(makePart(kind, "X1"));
        window().document().reset(bench, {});
        select("X1");
        EXPECT_EQ(cards().values().fields().size(), kind.values.size() + kind.state.size());
        EXPECT_TRUE(cards().values().helpText().contains(QString::fromStdString(kind.help.what).toHtmlEscaped()));
        window().actions().partHelp->trigger();
        const auto& fields = cards().values().fields();  // a chip has none
        EXPECT_TRUE(fields.empty() || !fields.front()->isVisible());
    }
}

TEST_F(Cards, AChoiceIsMadeFromItsList) {
    open("beacon-lamp");
    select("D1");
    auto* list = field("colour")->findChild<QComboBox*>();
    ASSERT_TRUE(list);
    const int green = list->findText(QStringLiteral("green"));
    ASSERT_GE(green, 0);
    list->setCurrentIndex(green);
    Q_EMIT list->activated(green);
    EXPECT_EQ(cards().values().partId(), "D1");
    EXPECT_DOUBLE_EQ(valueOf("D1", "colour"), green);
    ASSERT_TRUE(desk.waitForAnswer());
    EXPECT_TRUE(cards().reading().text().title.startsWith(QStringLiteral("D1, green LED")));
}

TEST(Panels, AShadowPutTogetherFromPiecesIsTheSame) {
    for (const ThemeName name : {ThemeName::Day, ThemeName::Dark}) {
        for (const double ratio : {1.0, 2.0}) {
            const Look look{&theme(name), 1};
            const auto painted = [&](const QRectF& frame) {
                QImage image(QSize(200, 120) * ratio, QImage::Format_RGB32);
                image.setDevicePixelRatio(ratio);
                image.fill(look.theme->benchTop);
                QPainter painter(&image);
                painter.setRenderHint(QPainter::Antialiasing);
                painter.translate(3, 2);
                paintCard(painter, look, frame);
                return image;
            };
            // What isn't on whole pixels is painted in one.
            const QRectF frame(12, 10, 160, 80);
            const QImage pieces = painted(frame), whole = painted(frame.translated(0.001, 0.001));
            int far = 0, shaded = 0;
            for (int y = 0; y < pieces.height(); ++y) {
                for (int x = 0; x < pieces.width(); ++x) {
                    far = std::max(far, std::abs(qRed(pieces.pixel(x, y)) - qRed(whole.pixel(x, y))));
                    shaded += pieces.pixel(x, y) != look.theme->benchTop.rgb();
                }
            }
            EXPECT_LE(far, 2) << static_cast<int>(name) << ' ' << ratio;
            EXPECT_GT(shaded, frame.width() * frame.height() * ratio * ratio + 500) << "there is a shadow";
        }
    }
}

}  // namespace
}  // namespace tiepoint::ui
