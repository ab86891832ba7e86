#pragma once
// A monkey at the window: random gestures by real mouse and key events, random edits of values, boards and notes. The same seed does the
// same. Everything it does goes through the window and can be undone.

#include "core/edit/boards.h"
#include "ui/window/main_window.h"

#include <QApplication>
#include <QTest>

#include <random>

namespace tiepoint::ui {

class Monkey {
public:
    Monkey(MainWindow& window, unsigned seed) : window_(window), random_(seed) {}

    /// One gesture, from the press to the release.
    void act() {
        constexpr void (Monkey::*kActs[])() = {&Monkey::drag, &Monkey::drag,      &Monkey::click,  &Monkey::key,
                                               &Monkey::key,  &Monkey::place,     &Monkey::place,  &Monkey::place,
                                               &Monkey::wire, &Monkey::wire,      &Monkey::value,  &Monkey::board,
                                               &Monkey::note, &Monkey::clipboard, &Monkey::history};
        (this->*kActs[pick(std::size(kActs))])();
        QApplication::processEvents();
    }

private:
    int pick(std::size_t count) { return static_cast<int>(random_() % count); }
    BenchView& view() { return window_.view(); }
    BenchDocument& document() { return window_.document(); }

    QPoint somewhere() {
        const QSize size = view().viewport()->size();
        return {pick(static_cast<std::size_t>(size.width())), pick(static_cast<std::size_t>(size.height()))};
    }
    QPoint atHole() {
        const Bench& bench = *document().bench();
        const Board& board = bench.boards[static_cast<std::size_t>(pick(bench.boards.size()))];
        const Hole hole{board.id, static_cast<Line>(pick(kRowCount)),
                        1 + pick(static_cast<std::size_t>(board.kind->columns))};
        return view().fromMm(*holeMm(bench, hole)).toPoint();
    }
    void move(QPoint to, Qt::MouseButtons buttons) {
        QMouseEvent event(QEvent::MouseMove, QPointF(to), view().viewport()->mapToGlobal(QPointF(to)), Qt::NoButton,
                          buttons, {});
        QApplication::sendEvent(view().viewport(), &event);
    }
    void dragBetween(QPoint from, QPoint to) {
        QTest::mousePress(view().viewport(), Qt::LeftButton, {}, from);
        move((from + to) / 2, Qt::LeftButton);
        move(to, Qt::LeftButton);
        QTest::mouseRelease(view().viewport(), Qt::LeftButton, {}, to);
    }

    void drag() { dragBetween(somewhere(), somewhere()); }
    void wire() { dragBetween(atHole(), atHole()); }
    void click() {
        QTest::mouseClick(view().viewport(), Qt::LeftButton, pick(3) ? Qt::NoModifier : Qt::ShiftModifier,
                          pick(2) ? somewhere() : atHole());
    }
    void key() {
        constexpr Qt::Key kKeys[] = {
            Qt::Key_Left,         Qt::Key_Right,  Qt::Key_Up,     Qt::Key_Down,  Qt::Key_BracketLeft,
            Qt::Key_BracketRight, Qt::Key_Delete, Qt::Key_Escape, Qt::Key_Space, Qt::Key_Plus,
            Qt::Key_Minus,        Qt::Key_Insert, Qt::Key_A,      Qt::Key_F6};
        view().setFocus();
        QTest::keyClick(&view(), kKeys[pick(std::size(kKeys))], pick(4) ? Qt::NoModifier : Qt::ShiftModifier);
    }
    void place() {
        const auto families = trayFamilies();
        const auto& family = families[static_cast<std::size_t>(pick(families.size()))];
        const TrayItem& item = family.items[static_cast<std::size_t>(pick(family.items.size()))];
        view().beginPlacing(item.kind, item.preset, view().viewport()->mapToGlobal(QPoint(5, 5)));
        const QPoint to = pick(8) ? atHole() : somewhere();
        move(to, Qt::LeftButton);
        if (pick(4) == 0) QTest::keyClick(&view(), Qt::Key_BracketRight);
        QTest::mouseRelease(view().viewport(), Qt::LeftButton, {}, to);
        QTest::keyClick(&view(), Qt::Key_Escape);
    }
    void value() {
        const Bench& bench = *document().bench();
        if (bench.parts.empty()) return;
        const Part& part = bench.parts[static_cast<std::size_t>(pick(bench.parts.size()))];
        if (part.kind->values.empty()) return;
        const ValueSpec& spec = part.kind->values[static_cast<std::size_t>(pick(part.kind->values.size()))];
        double to = spec.minimum + (spec.maximum - spec.minimum) * pick(1000) / 999.0;
        if (spec.type != ValueType::Number || spec.integer) to = std::floor(to);
        document().push(setValueEdit(bench, part.id, spec.name, to));
    }
    void board() {
        const Bench& bench = *document().bench();
        const std::string& id = bench.boards[static_cast<std::size_t>(pick(bench.boards.size()))].id;
        if (pick(3) == 0 && bench.boards.size() < 4)
            return void(document().push(dockBoardEdit(bench, boardKinds()[static_cast<std::size_t>(pick(3))])));
        if (pick(2)) return void(document().push(turnLabelsEdit(bench, id)));
        if (const auto edit = removeBoardEdit(bench, id); edit.ok()) document().push(*edit);
    }
    void note() {
        const Bench& bench = *document().bench();
        const Hole at{bench.boards.front().id, Line::C, 1 + pick(10)};
        document().push(
            {"Pin a note", {AddNote{{freeId(bench, "N"), at, "note " + std::to_string(random_() % 1000), {}}}}});
    }
    void clipboard() {
        constexpr Qt::Key kKeys[] = {Qt::Key_C, Qt::Key_X, Qt::Key_V, Qt::Key_D, Qt::Key_A};
        QTest::keyClick(&window_, kKeys[pick(std::size(kKeys))], Qt::ControlModifier);
        if (document().bench()->parts.size() > 40) document().undoStack().undo();
    }
    void history() {
        QUndoStack& stack = document().undoStack();
        const int steps = pick(4);
        for (int i = 0; i < steps; ++i) pick(2) ? stack.undo() : stack.redo();
    }

    MainWindow& window_;
    std::mt19937 random_;
};

}  // namespace tiepoint::ui
