// The multimeter in the window: its dial under the mouse, the wheel and the keys, its leads, its display for eyes and for ears.

#include "core/meter/meter.h"

#include "desk.h"
#include "ui/access/bench_words.h"
#include "ui/cards/reading_text.h"
#include "ui/paint/bench_painter.h"
#include "ui/paint/label_places.h"
#include "ui/paint/overload.h"
#include "ui/paint/packages/package_painter.h"
#include "ui/tray/tray_search.h"

#include <QWheelEvent>

#include <algorithm>
#include <cmath>
#include <numbers>

namespace tiepoint::ui {
namespace {

enum Dial { kOff, kVolts, kAmperes, kOhms, kContinuity, kPositions };

class MeterDesk : public Desk {
protected:
    /// The beacon with a meter across its resistor.
    static Bench metered(const char* dial = "volts") {
        return test::BenchBuilder(beacon())
            .part("M1", "multimeter", {{"+", "A.d8"}, {"com", "A.d14"}}, {}, {{"dial", dial}})
            .build();
    }

    int index() const { return bench().partIndex("M1"); }
    int dial() const { return static_cast<int>(part("M1").stateValue(0)); }
    QPoint onDial(double degrees) const {
        const QPointF middle = controlShape(view.picture(), index()).boundingRect().center();
        const double a = degrees * std::numbers::pi / 180, radius = 9;
        return at({middle.x() + radius * std::sin(a), middle.y() - radius * std::cos(a)});
    }
    QString value() { return readingWords(view.picture(), "M1"); }

    static constexpr double kDegrees[] = {-100, -50, 0, 50, 100};
};

TEST_F(MeterDesk, AClickTurnsTheDialToThePositionClicked) {
    open(metered());
    for (const int position : {kOhms, kOff, kContinuity, kAmperes, kVolts}) {
        click(onDial(kDegrees[position]));
        EXPECT_EQ(dial(), position);
    }
    EXPECT_EQ(document.undoStack().count(), 5);
    click(at(Point{controlShape(view.picture(), index()).boundingRect().center().x(),
                   controlShape(view.picture(), index()).boundingRect().center().y()}));
    EXPECT_EQ(dial(), kAmperes) << "a click on the hub goes on";
    click(onDial(kDegrees[kAmperes]));
    EXPECT_EQ(document.undoStack().count(), 6) << "where it stands already, nothing changes";
}

TEST_F(MeterDesk, ADragTurnsItAndIsOneStep) {
    open(metered());
    press(onDial(kDegrees[kVolts]));
    for (const int position : {kAmperes, kOhms, kContinuity}) {
        moveTo(onDial(kDegrees[position]), Qt::LeftButton);
        EXPECT_EQ(dial(), position);
    }
    release(onDial(kDegrees[kContinuity]));
    EXPECT_EQ(dial(), kContinuity);
    document.undoStack().undo();
    EXPECT_EQ(dial(), kVolts);
    EXPECT_EQ(document.undoStack().index(), 0);
}

TEST_F(MeterDesk, TheWheelAndTheKeysTurnIt) {
    open(metered());
    const QPointF where = onDial(kDegrees[kVolts]);
    for (const int notch : {120, 120, -120}) {
        QWheelEvent wheel(where, view.viewport()->mapToGlobal(where), {}, {0, notch}, Qt::NoButton, {},
                          Qt::NoScrollPhase, false);
        QApplication::sendEvent(view.viewport(), &wheel);
    }
    EXPECT_EQ(dial(), kAmperes);
    view.setSelection({"M1"});
    key(Qt::Key_Space);
    EXPECT_EQ(dial(), kOhms);
    key(Qt::Key_Minus);
    EXPECT_EQ(dial(), kAmperes);
}

TEST_F(MeterDesk, ItsReadingIsToldInWords) {
    open(metered());
    live.setHeld("S1", true);
    ASSERT_TRUE(waitForAnswer());
    EXPECT_EQ(value(), QString::fromUtf8("3.09 V, Set to volts."));
    EXPECT_EQ(readingText(view.picture(), "M1").big, QStringLiteral("3.09 V"));
    click(onDial(kDegrees[kOhms]));
    ASSERT_TRUE(waitForAnswer());
    EXPECT_EQ(value(), QStringLiteral("---, PS1 is on: switch it off to measure ohms."));
    document.push(setStateEdit(bench(), "PS1", "on", 0));
    ASSERT_TRUE(waitForAnswer());
    EXPECT_EQ(value(), QString::fromUtf8("330 Ω, Set to ohms."));
    click(onDial(kDegrees[kVolts]));
    ASSERT_TRUE(waitForAnswer());
    EXPECT_EQ(value(), QStringLiteral("0.0 mV, Set to volts.")) << "everything is off, and it shows that";
    click(onDial(kDegrees[kOff]));
    ASSERT_TRUE(waitForAnswer());
    EXPECT_EQ(value(), QStringLiteral("off, Its dial is at off."));
}

TEST_F(MeterDesk, ABeepIsSeenAndTold) {
    Bench bench = metered("continuity");
    bench.parts[0].state[0] = 0;
    bench.parts.back().leads[0] = test::holeAt("A.e14");
    open(std::move(bench));
    EXPECT_EQ(value(), QString::fromUtf8("0.0 Ω, Set to continuity. It beeps: joined."));
}

/// The probe of the red lead, taken at its tip and put into another column.
TEST_F(MeterDesk, ALeadIsPulledIntoAnotherHole) {
    open(metered());
    drag(at("A.d8"), at("A.b20"));
    EXPECT_EQ(part("M1").leads[0], test::holeAt("A.b20"));
    EXPECT_EQ(part("M1").leads[1], test::holeAt("A.d14"));
    drag(at("A.d14"), at("A.b20"));
    EXPECT_EQ(part("M1").leads[1], test::holeAt("A.a20")) << "one hole takes one lead: it goes beside";
}

TEST_F(MeterDesk, ItLiesAtTheRightOfTheBoards) {
    open(metered());
    const Table& table = *view.picture().table;
    const Outline& body = table.parts[static_cast<std::size_t>(index())].pose.body;
    EXPECT_GT(body.centre.x - body.halfLength, table.boardsMm.right() + 5);
    EXPECT_LT(table.parts[0].pose.body.centre.x, table.boardsMm.left);
    EXPECT_GT(table.allMm.bottom(), body.centre.y + body.halfWidth);
}

/// Lying across the resistor it joins nothing: the nets on either side keep volts of their own.
TEST_F(MeterDesk, TheNetsAtItsLeadsKeepTheirVolts) {
    open(metered());
    live.setHeld("S1", true);
    ASSERT_TRUE(waitForAnswer());
    std::vector<QString> texts;
    ASSERT_TRUE(view.picture().netTags);
    for (const NetTag& tag : *view.picture().netTags) texts.push_back(tag.text);
    for (const char* volt : {"5.00 V", "1.91 V", "0 V"})
        EXPECT_TRUE(std::any_of(texts.begin(), texts.end(), [&](const QString& text) {  // just changed: "0 to 1.91 V"
            return text == QLatin1String(volt) || text.endsWith(QLatin1String(" ") + QLatin1String(volt));
        })) << volt;
}

/// Where a room needs larger words than the display's own figures, the reading stands beside the meter as well.
TEST_F(MeterDesk, ARoomReadsItBesideTheMeter) {
    open(metered());
    live.setHeld("S1", true);
    ASSERT_TRUE(waitForAnswer());
    for (const double readingMm : {2.1, 9.0}) {
        Picture picture = view.picture();
        picture.sizes.readingMm = readingMm;
        Clearance clearance(picture);
        const auto labels = placeReadings(picture, clearance);
        const bool beside = std::any_of(labels.begin(), labels.end(),
                                        [](const Label& label) { return label.text == QStringLiteral("3.09 V"); });
        EXPECT_EQ(beside, readingMm > 7.4) << readingMm;
    }
}

TEST_F(MeterDesk, TooMuchIsSaidByItsDisplayNotByACollar) {
    Bench bench = metered("amperes");
    bench.parts.back().leads = {test::holeAt("A.top+9"), test::holeAt("A.bottom-9")};
    open(std::move(bench));
    EXPECT_EQ(value(), QStringLiteral("FUSE, 500 mA: its fuse bears 200 mA and blows."));
    for (const Overload& overload : overloads(view.picture())) EXPECT_NE(overload.part, index());
}

TEST(MeterTray, IsFoundByWhatPeopleCallIt) {
    for (const char* word : {"meter", "volt", "ammeter", "ohm", "continuity", "multimeter"}) {
        const auto found = findInTray(QString::fromLatin1(word)).items;
        EXPECT_TRUE(std::any_of(found.begin(), found.end(), [](const TrayItem& item) {
            return item.kind == QStringLiteral("multimeter");
        })) << word;
    }
}

}  // namespace
}  // namespace tiepoint::ui
