// The tray's search: what is asked for is what is handed out, to the last digit, and where there is no such thing the drawer says so.

#include "ui/tray/tray_search.h"
#include "ui/tray/tray_wish.h"
#include "window_bench.h"

#include <QLineEdit>

namespace tiepoint::ui {
namespace {

struct Asked {
    const char *typed, *kind, *preset;
};

void PrintTo(const Asked& asked, std::ostream* out) { *out << asked.typed; }

class Search : public testing::TestWithParam<Asked> {};

TEST_P(Search, HandsOutExactlyWhatWasAskedFor) {
    const TrayFound found = findInTray(QString::fromUtf8(GetParam().typed));
    ASSERT_FALSE(found.items.empty()) << found.words.toStdString();
    EXPECT_EQ(found.items.front().kind, QString::fromLatin1(GetParam().kind));
    EXPECT_EQ(found.items.front().preset, QString::fromLatin1(GetParam().preset));
}

INSTANTIATE_TEST_SUITE_P(
    Spellings, Search,
    testing::Values(
        Asked{"47 ohm", "resistor", "resistance=47"}, Asked{"47ohm", "resistor", "resistance=47"},
        Asked{"47 Ohms", "resistor", "resistance=47"}, Asked{"47R", "resistor", "resistance=47"},
        Asked{"47r", "resistor", "resistance=47"}, Asked{"47 Ω", "resistor", "resistance=47"},
        Asked{"47", "resistor", "resistance=47"}, Asked{"47 o", "resistor", "resistance=47"},
        Asked{"4R7", "resistor", "resistance=4.7"}, Asked{"R47", "resistor", "resistance=0.47"},
        Asked{"4k7", "resistor", "resistance=4700"}, Asked{"4K7", "resistor", "resistance=4700"},
        Asked{"4.7k", "resistor", "resistance=4700"}, Asked{"4,7 kΩ", "resistor", "resistance=4700"},
        Asked{"47 k", "resistor", "resistance=47000"}, Asked{"47 kilohm", "resistor", "resistance=47000"},
        Asked{"47 kilo ohms", "resistor", "resistance=47000"}, Asked{"1M", "resistor", "resistance=1000000"},
        Asked{"2M2", "resistor", "resistance=2200000"}, Asked{"10 Megohm", "resistor", "resistance=10000000"},
        Asked{"470 ohm resistor", "resistor", "resistance=470"}, Asked{"resistor 47 ohm", "resistor", "resistance=47"},
        Asked{"resistor 47 ohm 1 %", "resistor", "resistance=47;tolerance=0.01"},
        Asked{"47 ohm 1/2 W", "resistor", "resistance=47;rating=0.5"}, Asked{"10k potentiometer", "potentiometer", ""},
        Asked{"50 k knob", "potentiometer", "resistance=50000"}, Asked{"100 mA lamp", "lamp", "current=0.1"},
        Asked{"lamp 6 V 100 mA", "lamp", "voltage=6;current=0.1"}, Asked{"12V bulb", "lamp", "voltage=12"},
        Asked{"bench supply 12 V", "bench-supply", "voltage=12"},
        Asked{"supply 3V3 100 mA", "bench-supply", "voltage=3.3;currentLimit=0.1"}, Asked{"9 V", "block-9v", ""},
        Asked{"9V battery", "block-9v", ""}, Asked{"1.5 V", "cells", ""}, Asked{"4 cells", "cells", "count=4"},
        Asked{"USB 5 V", "usb-supply", ""}));

TEST(SearchWords, AValueIsNeverAnotherOnesBeginning) {
    for (const char* typed : {"47 ohm", "47R", "4k7", "100 ohm", "1 k"}) {
        const QString text = QString::fromLatin1(typed);
        const SaidQuantity asked = readSaid(typed).quantities.at(0);
        for (const TrayItem& item : findInTray(text).items)
            EXPECT_TRUE(item.part && hasQuantity(*item.part, asked)) << typed << " gave " << item.label.toStdString();
    }
    // A bare number may still become more.
    QStringList labels;
    for (const TrayItem& item : findInTray(QStringLiteral("47")).items) labels << item.label;
    EXPECT_TRUE(labels.contains(QStringLiteral("47 kΩ"))) << labels.join('/').toStdString();
    EXPECT_TRUE(labels.contains(QStringLiteral("470 Ω")));
}

TEST(SearchWords, EveryKindWithTheValueIsOffered) {
    QStringList kinds;
    for (const TrayItem& item : findInTray(QStringLiteral("100 mA")).items) kinds << item.kind;
    kinds.sort();
    EXPECT_EQ(kinds.join(' ').toStdString(), "bench-supply lamp usb-supply");
    kinds.clear();
    for (const TrayItem& item : findInTray(QStringLiteral("5 V")).items) kinds << item.kind;
    kinds.sort();
    EXPECT_EQ(kinds.join(' ').toStdString(), "bench-supply buzzer-active lamp n-mosfet p-mosfet usb-supply");
}

TEST(SearchWords, SaysWhatIsNoPreferredValueAndWhatLiesNextToIt) {
    const TrayFound found = findInTray(QStringLiteral("48 ohm"));
    ASSERT_GE(found.items.size(), 3u);
    EXPECT_EQ(found.items[0].preset, QStringLiteral("resistance=48"));
    EXPECT_EQ(found.items[1].preset, QStringLiteral("resistance=47"));
    EXPECT_EQ(found.items[2].preset, QStringLiteral("resistance=51"));
    EXPECT_EQ(found.words, QStringLiteral("48 Ω is no preferred value; next to it in E24 there are 47 Ω and 51 Ω."));
    EXPECT_EQ(findInTray(QStringLiteral("47 ohm")).words, QString());
    EXPECT_EQ(findInTray(QStringLiteral("475 ohm")).words, QString()) << "one of E96";
}

struct Refused {
    const char *typed, *words;
};

TEST(SearchWords, SaysWhyThereIsNoSuchThing) {
    for (const Refused& each :
         {Refused{"47 k potentiometer",
                  "Potentiometer: there is none with 47 kΩ; next to it there are 20 kΩ and 50 kΩ."},
          {"40 V bench supply", "Not 40 V: the voltage of a bench supply goes from 0 V to 30 V."},
          {"lamp 5 A", "Not 5 A: the rated current of a filament lamp goes from 10 mA to 1 A."},
          {"toggle 47 ohm", "“47 ohm” isn't a value of the part slide switch."},
          {"5 cells", "Cells in a holder: there is none with 5; next to it there are 4 and 6."},
          {"flux capacitor", "Nothing in the tray suits “flux capacitor”."},
          {"10 parsec", "Nothing in the tray suits “10 parsec”."},
          {"1,000 ohm",
           "“1,000 ohm” can be read in two ways: write thousands without a comma, or a point in its place."}}) {
        const TrayFound found = findInTray(QString::fromUtf8(each.typed));
        EXPECT_EQ(found.words.toStdString(), std::string(each.words));
    }
    const TrayFound next = findInTray(QStringLiteral("47 k potentiometer"));
    ASSERT_EQ(next.items.size(), 2u);
    EXPECT_EQ(next.items[0].preset, QStringLiteral("resistance=20000"));
    EXPECT_EQ(next.items[1].preset, QStringLiteral("resistance=50000"));
    const TrayFound besideLed = findInTray(QStringLiteral("LED 47 ohm"));
    ASSERT_FALSE(besideLed.items.empty()) << "a resistor is told to belong beside an LED";
    EXPECT_EQ(besideLed.items.front().preset, QStringLiteral("resistance=47"));
    EXPECT_TRUE(findInTray(QString()).words.isEmpty());
    EXPECT_TRUE(findInTray(QStringLiteral("  ")).items.empty());
}

TEST(SearchWords, TheFormerWaysOfFindingStillWork) {
    for (const Asked& each : {Asked{"green", "led", "colour=green"},
                              {"bulb", "lamp", ""},
                              {"blue wire", "jumper", "blue"},
                              {"battery", "cells", ""},
                              {"toggle", "toggle", ""}}) {
        const TrayFound found = findInTray(QString::fromLatin1(each.typed));
        ASSERT_FALSE(found.items.empty()) << each.typed;
        EXPECT_EQ(found.items.front().kind, QString::fromLatin1(each.kind)) << each.typed;
        if (*each.preset) {
            EXPECT_EQ(found.items.front().preset, QString::fromLatin1(each.preset)) << each.typed;
        }
    }
}

/// Types into the tray, takes the first thing by Enter and puts it into the holes.
const Part& placed(WindowBench& bench, const char* typed, int column) {
    MainWindow& window = bench.window();
    QTest::keyClick(&window, Qt::Key_F, Qt::ControlModifier);
    QLineEdit& search = window.tray().search();
    search.clear();
    QTest::keyClicks(&search, QString::fromUtf8(typed));
    QTest::keyClick(&search, Qt::Key_Return);
    BenchView& view = window.view();
    EXPECT_TRUE(view.isGesturing()) << typed;
    const QPoint at = view.fromMm(*holeMm(*window.document().bench(), {"A", Line::C, column})).toPoint();
    QMouseEvent move(QEvent::MouseMove, QPointF(at), view.viewport()->mapToGlobal(QPointF(at)), Qt::NoButton,
                     Qt::NoButton, {});
    QApplication::sendEvent(view.viewport(), &move);
    QTest::mouseClick(view.viewport(), Qt::LeftButton, {}, at);
    return window.document().bench()->parts.back();
}

TEST(SearchInTheWindow, PlacesWhatWasTyped) {
    WindowBench bench(QSize(1600, 900));
    const Part& resistor = placed(bench, "47 ohm", 8);
    EXPECT_EQ(resistor.kind->name, "resistor");
    EXPECT_EQ(resistor.value(resistor.kind->valueIndex("resistance")), 47);
    const Part& lamp = placed(bench, "lamp 6 V 100 mA", 18);
    EXPECT_EQ(lamp.kind->name, "lamp");
    EXPECT_EQ(lamp.value(lamp.kind->valueIndex("voltage")), 6);
    EXPECT_EQ(lamp.value(lamp.kind->valueIndex("current")), 0.1);
}

TEST(SearchInTheWindow, SaysInTheDrawerWhatIsMissing) {
    WindowBench bench(QSize(1600, 900));
    MainWindow& window = bench.window();
    QTest::keyClick(&window, Qt::Key_F, Qt::ControlModifier);
    QLineEdit& search = window.tray().search();
    const Drawer& drawer = window.tray().drawer();
    QTest::keyClicks(&search, QStringLiteral("flux capacitor"));
    ASSERT_TRUE(drawer.isVisible());
    EXPECT_TRUE(drawer.buttons().empty());
    EXPECT_TRUE(drawer.words().contains(QStringLiteral("flux capacitor")));
    EXPECT_EQ(drawer.accessibleDescription(), drawer.words());
    QTest::keyClick(&search, Qt::Key_Return);
    EXPECT_FALSE(window.view().isGesturing()) << "there is nothing to take";
    // The words stand in the drawer, under the buttons where there are any, and are really painted.
    search.clear();
    QTest::keyClicks(&search, QStringLiteral("48 ohm"));
    ASSERT_TRUE(drawer.isVisible());
    ASSERT_EQ(drawer.buttons().size(), 4u) << "48, 47 and 51 ohm, and a photoresistor";
    int lowest = 0;
    for (const TrayButton* button : drawer.buttons()) lowest = std::max(lowest, button->geometry().bottom());
    ASSERT_LT(lowest + 8, drawer.height());
    const QImage below =
        window.tray().drawer().grab(QRect(0, lowest + 1, drawer.width(), drawer.height() - lowest - 14)).toImage();
    int dark = 0;
    for (int y = 0; y < below.height(); ++y)
        for (int x = 20; x < below.width() - 20; ++x) dark += qGray(below.pixel(x, y)) < 120 ? 1 : 0;
    EXPECT_GT(dark, 100);
}

}  // namespace
}  // namespace tiepoint::ui
