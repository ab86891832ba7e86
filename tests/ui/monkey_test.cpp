// A monkey of random editing: no crash, every bench on the way is valid, and undo goes back to the first byte, redo to the last one.
// The long run is tests/bench/monkey_bench.cpp.

#include "monkey.h"

#include "core/bench/bench_file.h"
#include "core/bench/validate.h"
#include "window_bench.h"

namespace tiepoint::ui {
namespace {

constexpr int kActs = 250;

TEST(Monkey, RandomEditingIsUndoneToTheFirstByte) {
    for (const unsigned seed : {1u, 2u}) {
        SCOPED_TRACE(seed);
        WindowBench bench;
        MainWindow& window = bench.window();
        window.files().openEmbedded(QStringLiteral("benches/beacon-lamp.bench.json"));
        const std::string first = writeBench(*window.document().bench());
        Monkey monkey(window, seed);
        for (int i = 0; i < kActs; ++i) {
            monkey.act();
            const auto valid = validate(*window.document().bench());
            ASSERT_TRUE(valid.ok()) << i << ": " << valid.error().oneLine();
        }
        QTest::keyClick(&window.view(), Qt::Key_Escape);
        QUndoStack& stack = window.document().undoStack();
        while (stack.canRedo()) stack.redo();
        const std::string last = writeBench(*window.document().bench());
        EXPECT_GT(stack.count(), kActs / 8) << "the monkey did something";
        while (stack.canUndo()) stack.undo();
        EXPECT_EQ(writeBench(*window.document().bench()), first);
        while (stack.canRedo()) stack.redo();
        EXPECT_EQ(writeBench(*window.document().bench()), last);
    }
}

}  // namespace
}  // namespace tiepoint::ui
