// A class's kit in a real window: chosen, kept between starts, obeyed by tray, drawer, new benches and lessons.

#include "core/course/shipped.h"
#include "core/parts/part_kind.h"
#include "window_bench.h"

#include <gtest/gtest.h>

#include <fstream>

namespace tiepoint::ui {
namespace {

constexpr const char* kQuayKit = R"({
  "format": "tiepoint-kit", "version": 1, "title": "Quay school",
  "board": {"kind": "mini", "labels": "a-bottom", "rails": "through"},
  "supply": {"kind": "bench-supply", "values": {"voltage": 5, "currentLimit": 0.05}},
  "parts": [
    {"kind": "resistor", "values": {"resistance": 390}, "count": 4},
    {"kind": "led", "values": {"colour": "green"}, "count": 3},
    {"kind": "push-button", "count": 2}
  ],
  "meters": 0
})";

class KitTest : public testing::Test {
protected:
    void SetUp() override {
        desk.restart({1600, 900});
        desk.unsavedAnswer = FileActions::Answer::Discard;
    }
    MainWindow& window() { return desk.window(); }
    QString write(const char* name, const char* text) {
        const QString path = desk.file(name);
        std::ofstream(path.toStdString()) << text;
        return path;
    }
    void choose(const QString& path) {
        window().kit().setAskPath([path](const KitDesk::GivePath& give) { give(path); });
        window().kit().chooseAction()->trigger();
    }
    TrayButton* compartment(const char* family) {
        for (TrayButton* button : window().tray().compartments())
            if (!button->isHidden() && button->item().part && button->item().part->kind->family == std::string(family))
                return button;
        return nullptr;
    }

    WindowBench desk;
};

TEST_F(KitTest, TheTrayHoldsOnlyWhatTheClassHas) {
    ASSERT_NE(compartment("Lamp"), nullptr);
    choose(write("quay.kit.json", kQuayKit));
    EXPECT_TRUE(window().bar().line().startsWith(QStringLiteral("Quay school")));
    EXPECT_EQ(compartment("Lamp"), nullptr);
    EXPECT_EQ(compartment("Meter"), nullptr);
    ASSERT_NE(compartment("LED"), nullptr);
    EXPECT_EQ(compartment("LED")->item().label, QStringLiteral("green"));
    ASSERT_NE(compartment("Resistor"), nullptr);
    EXPECT_EQ(compartment("Resistor")->item().part->value(0), 390);
    ASSERT_NE(compartment("Supply"), nullptr);
    EXPECT_TRUE(compartment("Supply")->item().preset.contains(QStringLiteral("currentLimit=0.05")));
    desk.restart({1600, 900});
    EXPECT_EQ(compartment("Lamp"), nullptr) << "kept between starts";
    EXPECT_EQ(window().document().bench()->boards[0].kind->name, "mini");
    window().kit().withoutAction()->trigger();
    EXPECT_NE(compartment("Lamp"), nullptr);
    window().files().newBench();
    EXPECT_EQ(window().document().bench()->boards[0].kind->name, "half");
}

TEST_F(KitTest, ABrokenKitChangesNothing) {
    choose(write("bad.kit.json", "{\"format\": \"tiepoint-kit\", \"version\": 1, \"boat\": 1}"));
    EXPECT_TRUE(window().bar().line().contains(QStringLiteral("bad.kit.json")));
    EXPECT_FALSE(window().kit().withoutAction()->isEnabled());
    EXPECT_NE(compartment("Lamp"), nullptr);
}

TEST_F(KitTest, SaysWhatABenchLacksAndFitsALesson) {
    window().kit().usualAction()->trigger();
    window().files().openEmbedded(QStringLiteral("benches/two-way-stair-lamp.bench.json"));
    window().kit().lackingAction()->trigger();
    EXPECT_EQ(window().bar().line(), QStringLiteral("Usual kit lacks: amber LED."));
    EXPECT_FALSE(window().kit().fitAction()->isEnabled());
    window().files().openEmbedded(QStringLiteral("lessons/05-one-loop.lesson.json"));
    ASSERT_TRUE(window().kit().fitAction()->isEnabled());
    window().kit().fitAction()->trigger();
    ASSERT_TRUE(QTest::qWaitFor([&] { return !window().kit().isFitting(); }, 20000));
    EXPECT_TRUE(window().bar().line().contains(QStringLiteral("kit"))) << window().bar().line().toStdString();
}

}  // namespace
}  // namespace tiepoint::ui
