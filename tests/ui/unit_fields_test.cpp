// Farads in the fields of the window: typed, refused with examples that suit, and stepped through on the ladder.

#include "desk.h"
#include "support/test_catalogue.h"
#include "ui/cards/value_field.h"
#include "ui/view/value_box.h"
#include "ui/view/value_ladder.h"

#include <QLineEdit>

namespace tiepoint::ui {
namespace {

class UnitFields : public Desk {
protected:
    UnitFields() {
        open(test::BenchBuilder(test::testCatalogue())
                 .board("A", "half")
                 .part("C1", "test-can", {{"+", "A.c5"}, {"-", "A.c6"}}, {{"capacitance", 100e-6}})
                 .build());
    }
    double farad() const { return part("C1").value(0); }
};

TEST_F(UnitFields, BoxOverTheBoardTakesCapacitances) {
    ValueBox box(document, &view);
    const struct {
        const char* typed;
        double farad;
        const char* reason;
    } cases[] = {{"4u7", 4.7e-6, ""},
                 {"220n", 220e-9, ""},
                 {"1 mF", 1e-3, ""},
                 {"2 kF", 1e-3, "that isn't a value in F; 100n, 4u7, 10 \u00b5F and 330p are"},
                 {"1 F", 1e-3, "from 100 nF to 10 mF"}};
    for (const auto& c : cases) {
        box.begin("C1", {}, {20, 20});
        box.field().setText(QString::fromUtf8(c.typed));
        QTest::keyClick(&box.field(), Qt::Key_Return);
        EXPECT_DOUBLE_EQ(farad(), c.farad) << c.typed;
        EXPECT_EQ(box.reason(), QString::fromUtf8(c.reason)) << c.typed;
    }
    box.begin("C1", {}, {20, 20});
    EXPECT_EQ(box.field().text(), QStringLiteral("1 mF"));
}

TEST_F(UnitFields, FieldOfTheEditorShowsThem) {
    const ValueSpec& spec = part("C1").kind->values[0];
    QWidget parent;
    ValueField* field = makeValueField(spec, &parent);
    double chosen = 0;
    QObject::connect(field, &ValueField::chosen, [&](double value) { chosen = value; });
    field->showValue(47e-9);
    auto* edit = field->findChild<QLineEdit*>();
    ASSERT_NE(edit, nullptr);
    EXPECT_EQ(edit->text(), QStringLiteral("47 nF"));
    edit->selectAll();
    QTest::keyClicks(edit, QStringLiteral("10uF"));
    QTest::keyClick(edit, Qt::Key_Return);
    EXPECT_DOUBLE_EQ(chosen, 10e-6);
    QString refused;
    QObject::connect(field, &ValueField::refusalShown, [&](const QString& why) { refused = why; });
    edit->selectAll();
    QTest::keyClicks(edit, QStringLiteral("10 H"));
    QTest::keyClick(edit, Qt::Key_Return);
    EXPECT_EQ(refused, QStringLiteral("That is no number in F."));
}

TEST_F(UnitFields, LadderClimbsTheSeries) {
    view.setSelection({"C1"});
    auto& ladder = *view.findChild<ValueLadder*>();
    EXPECT_TRUE(ladder.isVisible());
    ASSERT_EQ(ladder.rungs().size(), 5u);
    EXPECT_DOUBLE_EQ(ladder.rungs()[1], 68e-6);
    EXPECT_DOUBLE_EQ(ladder.rungs()[3], 150e-6);
}

/// The legs of a TO-92 can be taken one by one, and are refused where they don't reach.
TEST_F(UnitFields, LegsThatBendAreGripped) {
    open(test::BenchBuilder(test::testCatalogue())
             .board("A", "half")
             .part("Q1", "test-star", {{"left", "A.c5"}, {"middle", "A.c6"}, {"right", "A.c7"}})
             .build());
    drag(at("A.c7"), at("A.c8"));
    EXPECT_EQ(part("Q1").leads[2], test::holeAt("A.c8"));
    EXPECT_EQ(part("Q1").leads[0], test::holeAt("A.c5"));
    drag(at("A.c8"), at("A.c12"));
    EXPECT_EQ(part("Q1").leads[2], test::holeAt("A.c8")) << "it doesn't reach so far";
}

}  // namespace
}  // namespace tiepoint::ui
