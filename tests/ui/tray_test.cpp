// The tray: everything in the catalogue can be taken out of it, by a drag or by clicks, with real events on a real window.

#include "window_bench.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <set>

namespace tiepoint::ui {
namespace {

TrayButton* compartment(MainWindow& window, const char* family) {
    for (TrayButton* button : window.tray().compartments())
        if (button->text() == QString::fromLatin1(family)) return button;
    return nullptr;
}

TrayButton* inDrawer(MainWindow& window, const char* label) {
    for (TrayButton* button : window.tray().drawer().buttons())
        if (button->text() == QString::fromUtf8(label)) return button;
    return nullptr;
}

/// What the tray hands out while something is done with it.
struct Taken {
    QString kind, preset;
};

std::vector<Taken> takenDuring(MainWindow& window, const std::function<void()>& act) {
    std::vector<Taken> taken;
    const auto connection =
        QObject::connect(&window.tray(), &Tray::taken, [&](const QString& kind, const QString& preset, QPoint) {
            taken.push_back({kind, preset});
        });
    act();
    QObject::disconnect(connection);
    return taken;
}

void sendMove(QWidget* receiver, QPoint global, Qt::MouseButtons buttons) {
    QMouseEvent event(QEvent::MouseMove, receiver->mapFromGlobal(QPointF(global)), QPointF(global), Qt::NoButton,
                      buttons, {});
    QApplication::sendEvent(receiver, &event);
}

/// Presses on a button of the tray and drags out of it, still holding.
void dragOut(TrayButton* button) {
    const QPoint middle = button->rect().center();
    QTest::mousePress(button, Qt::LeftButton, {}, middle);
    sendMove(button, button->mapToGlobal(middle - QPoint(0, 60)), Qt::LeftButton);
}

TEST(TrayItems, HoldEveryKindAndEveryJumperColour) {
    std::set<QString> kinds, colours;
    for (const TrayFamily& family : trayFamilies()) {
        ASSERT_FALSE(family.items.empty()) << family.name.toStdString();
        for (const TrayItem& item : family.items) {
            if (item.part)
                kinds.insert(item.kind);
            else
                colours.insert(item.preset);
            EXPECT_FALSE(item.label.isEmpty());
        }
    }
    EXPECT_EQ(kinds.size(), catalogue().size());
    EXPECT_EQ(colours.size(), jumperColours().size());
}

TEST(TrayItems, OfferEveryColourOfLightAndPreferredResistors) {
    for (const TrayFamily& family : trayFamilies()) {
        if (family.name == QStringLiteral("LED")) {
            EXPECT_EQ(
                static_cast<std::size_t>(std::ranges::count(family.items, QStringLiteral("led"), &TrayItem::kind)),
                findKind("led")->values[0].choices.size());
        }
        if (family.name != QStringLiteral("Resistor")) continue;
        const auto resistors = std::ranges::count(family.items, QStringLiteral("resistor"), &TrayItem::kind);
        EXPECT_GE(resistors, 12);
        EXPECT_EQ(family.items.front().label, QStringLiteral("330 Ω")) << "the default lies on top";
    }
}

TEST(Tray, ADragOutOfACompartmentTakesItsUsualPart) {
    WindowBench bench;
    const auto taken = takenDuring(bench.window(), [&] { dragOut(compartment(bench.window(), "LED")); });
    ASSERT_EQ(taken.size(), 1u);
    EXPECT_EQ(taken[0].kind, QStringLiteral("led"));
    EXPECT_EQ(taken[0].preset, QStringLiteral("colour=red"));
}

TEST(Tray, WordsStandWholeOrTheTooltipSaysThem) {
    WindowBench bench;
    for (const int width : {900, 1280, 1600, 1920, 2560}) {
        bench.window().resize(width, width * 9 / 16);
        QCoreApplication::processEvents();
        for (const TrayButton* button : bench.window().tray().compartments()) {
            if (button->isHidden()) continue;
            EXPECT_GE(button->width() + 1, button->wantedWidth()) << width << ' ' << button->text().toStdString();
            if (button->wordAt() == TrayButton::Word::None) {
                EXPECT_TRUE(button->toolTip().startsWith(button->text())) << button->toolTip().toStdString();
            }
        }
    }
}

TEST(Tray, AClickOpensTheDrawerAndASecondClosesIt) {
    WindowBench bench;
    WindowBench::click(compartment(bench.window(), "Resistor"));
    EXPECT_TRUE(bench.window().tray().drawer().isVisible());
    WindowBench::click(compartment(bench.window(), "Resistor"));
    EXPECT_FALSE(bench.window().tray().drawer().isVisible());
    WindowBench::click(compartment(bench.window(), "Resistor"));
    QTest::mouseClick(bench.window().view().viewport(), Qt::LeftButton, {}, QPoint(3, 3));
    EXPECT_FALSE(bench.window().tray().drawer().isVisible()) << "the bench closes it";
}

TEST(Tray, TheDrawerHandsOutItsValue) {
    WindowBench bench;
    WindowBench::click(compartment(bench.window(), "Resistor"));
    TrayButton* button = inDrawer(bench.window(), "4.7 kΩ");
    ASSERT_TRUE(button);
    const auto taken = takenDuring(bench.window(), [&] { WindowBench::click(button); });
    ASSERT_EQ(taken.size(), 1u);
    EXPECT_EQ(taken[0].preset, QStringLiteral("resistance=4700"));
    EXPECT_FALSE(bench.window().tray().drawer().isVisible());
}

TEST(Tray, ADraggedLightLandsInTheHoles) {
    WindowBench bench(QSize(1600, 900));
    MainWindow& window = bench.window();
    BenchView& view = window.view();
    const auto before = window.document().bench()->parts.size();
    dragOut(compartment(window, "LED"));
    const Point hole = *holeMm(*window.document().bench(), {"A", Line::C, 20});
    const QPoint at = view.fromMm(hole).toPoint();
    sendMove(view.viewport(), view.viewport()->mapToGlobal(at - QPoint(4, 4)), Qt::LeftButton);
    sendMove(view.viewport(), view.viewport()->mapToGlobal(at), Qt::LeftButton);
    QTest::mouseRelease(view.viewport(), Qt::LeftButton, {}, at);
    ASSERT_EQ(window.document().bench()->parts.size(), before + 1);
    const Part& part = window.document().bench()->parts.back();
    EXPECT_EQ(part.kind->name, "led");
    EXPECT_TRUE(part.leads[0] && part.leads[1]);
}

TEST(Tray, AClickedLightIsPlacedByAClickInTheHoles) {
    WindowBench bench(QSize(1600, 900));
    MainWindow& window = bench.window();
    BenchView& view = window.view();
    const auto before = window.document().bench()->parts.size();
    WindowBench::click(compartment(window, "LED"));
    WindowBench::click(inDrawer(window, "green"));
    const Point hole = *holeMm(*window.document().bench(), {"A", Line::C, 20});
    const QPoint at = view.fromMm(hole).toPoint();
    sendMove(view.viewport(), view.viewport()->mapToGlobal(at), Qt::NoButton);
    QTest::mouseClick(view.viewport(), Qt::LeftButton, {}, at);
    ASSERT_EQ(window.document().bench()->parts.size(), before + 1);
    const Part& part = window.document().bench()->parts.back();
    EXPECT_EQ(part.kind->values[0].choices[static_cast<std::size_t>(part.value(0))].name, "green");
}

}  // namespace
}  // namespace tiepoint::ui
