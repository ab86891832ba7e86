#include "ui/view/key_list.h"

#include <QStringList>

#include <algorithm>

namespace tiepoint::ui {
namespace {

using Keys = std::vector<QKeySequence>;
using Lines = std::vector<KeyLine>;

const Keys kArrowKeys{Qt::Key_Left, Qt::Key_Right, Qt::Key_Up, Qt::Key_Down};
const Keys kDigitKeys{Qt::Key_0, Qt::Key_1, Qt::Key_2, Qt::Key_3, Qt::Key_4,
                      Qt::Key_5, Qt::Key_6, Qt::Key_7, Qt::Key_8, Qt::Key_9};

Keys withHeld(Qt::Modifier held, const Keys& keys) {
    Keys all;
    for (const QKeySequence& key : keys) all.emplace_back(QKeyCombination(held, key[0].key()));
    return all;
}

/// A digit, and the same with Alt.
Keys viewKeys(Qt::Key key) { return {key, Qt::ALT | key}; }

Lines linesOfBoard() {
    constexpr const char* kBuild = "Build";
    return {
        {kBuild, "letters on caps", "press the buttons that wear them", {{KeyFor::Caps, {}}}},
        {kBuild,
         "arrows, Ctrl and arrows",
         "walk from hole to hole, five holes; move what is selected",
         {{KeyFor::Walk, kArrowKeys}, {KeyFor::Stride, withHeld(Qt::CTRL, kArrowKeys)}}},
        {kBuild,
         nullptr,
         "take what is in a hole, begin a jumper or take a supply's lead",
         {{KeyFor::Take, {Qt::Key_Return, Qt::Key_Enter}}, {KeyFor::Wire, {Qt::Key_Insert}}}},
        {kBuild,
         "Shift and arrows",
         "stretch: move one leg or end",
         {{KeyFor::Stretch, withHeld(Qt::SHIFT, kArrowKeys)}}},
        {kBuild,
         "[ ]",
         "turn by a quarter, what is selected or pointed at",
         {{KeyFor::Turn, {Qt::Key_BracketLeft, Qt::Key_BracketRight}}}},
        {kBuild,
         "Ctrl+2 to Ctrl+9",
         "copy what is selected so many times in a row",
         {{KeyFor::RowOfCopies, withHeld(Qt::CTRL, Keys(kDigitKeys.begin() + 2, kDigitKeys.end()))}}},
        {kBuild, "menu key", "what can be done with the selected part", {{KeyFor::ThingMenu, {Qt::Key_Menu}}}},
        {kBuild, "space", "press a button, flip a switch", {{KeyFor::Operate, {Qt::Key_Space}}}},
        {kBuild,
         "+ -, digits",
         "step through preferred values, type a value",
         {{KeyFor::Step, {Qt::Key_Plus, Qt::Key_Minus}}, {KeyFor::Type, kDigitKeys}}},
        {kBuild, nullptr, "let go", {{KeyFor::LetGo, {Qt::Key_Escape}}}},
        {kBuild, nullptr, "lay jumpers flat or arched", {{KeyFor::LayFlat, {Qt::Key_F6}}}},
        {kBuild, nullptr, "find in the tray: a name, a value, what it does", {{KeyFor::Find, {Qt::CTRL | Qt::Key_F}}}},
    };
}

Lines linesOfViews() {
    constexpr const char* kSee = "See";
    return {
        {kSee,
         "1 2 3 4 5, Alt and digit",
         "arrows, voltage, strips, readings, underside; with Alt always",
         {{KeyFor::Arrows, viewKeys(Qt::Key_1)},
          {KeyFor::Voltage, viewKeys(Qt::Key_2)},
          {KeyFor::Strips, viewKeys(Qt::Key_3)},
          {KeyFor::Readings, viewKeys(Qt::Key_4)},
          {KeyFor::Underside, viewKeys(Qt::Key_5)}}},
        {kSee,
         nullptr,
         "zoom in, zoom out, fit the bench",
         {{KeyFor::ZoomIn, {Qt::CTRL | Qt::Key_Plus, Qt::CTRL | Qt::Key_Equal}},
          {KeyFor::ZoomOut, {Qt::CTRL | Qt::Key_Minus}},
          {KeyFor::Fit, {Qt::CTRL | Qt::Key_0}}}},
        {kSee,
         nullptr,
         "fold cards and tray away; the tray while it is shown to the room",
         {{KeyFor::Fold, {Qt::Key_F9}}}},
        {kSee, nullptr, "the circuit diagram", {{KeyFor::Diagram, {Qt::SHIFT | Qt::Key_F9}}}},
        {kSee,
         nullptr,
         "show to the room, full screen",
         {{KeyFor::Project, {Qt::Key_F11}}, {KeyFor::FullScreen, {Qt::SHIFT | Qt::Key_F11}}}},
        {kSee,
         nullptr,
         "the card of time; time stands still; slower, faster",
         {{KeyFor::TimeCard, {Qt::CTRL | Qt::Key_U}},
          {KeyFor::TimeStill, {Qt::CTRL | Qt::Key_K, Qt::Key_Pause}},
          {KeyFor::TimeSlower, {Qt::CTRL | Qt::Key_Comma}},
          {KeyFor::TimeFaster, {Qt::CTRL | Qt::Key_Period}}}},
        {kSee,
         nullptr,
         "one step on in time, power up again",
         {{KeyFor::TimeStep, {Qt::CTRL | Qt::Key_I}}, {KeyFor::TimeRestart, {Qt::CTRL | Qt::Key_B}}}},
        {kSee, nullptr, "draw with ink, wipe it", {{KeyFor::Ink, {Qt::Key_F7}}, {KeyFor::WipeInk, {Qt::Key_F8}}}},
        {kSee,
         "B, full stop",
         "blank the screen, while it is shown to the room",
         {{KeyFor::Blank, {Qt::Key_B, Qt::Key_Period}}}},
        {kSee,
         "Page Down, Page Up",
         "the next and the previous step of a lesson, shown to the room",
         {{KeyFor::NextStep, {Qt::Key_PageDown}}, {KeyFor::PreviousStep, {Qt::Key_PageUp}}}},
    };
}

Lines linesOfQuestions() {
    constexpr const char* kAsk = "Ask";
    return {
        {kAsk,
         nullptr,
         "why does the selected part do that, help on it; on nothing all keys",
         {{KeyFor::Why, {Qt::SHIFT | Qt::Key_F1}}, {KeyFor::PartHelp, {Qt::Key_F1}}}},
        {kAsk, nullptr, "what is wrong? the next finding", {{KeyFor::NextFinding, {Qt::Key_F3}}}},
        {kAsk, nullptr, "compare the bench with the goal of its exercise", {{KeyFor::Goal, {Qt::SHIFT | Qt::Key_F3}}}},
        {kAsk, nullptr, "a note", {{KeyFor::Note, {Qt::Key_F4}}}},
        {kAsk,
         nullptr,
         "pin a reading, pin volts between two holes",
         {{KeyFor::Pin, {Qt::Key_F5}}, {KeyFor::Probe, {Qt::SHIFT | Qt::Key_F5}}}},
        {kAsk,
         nullptr,
         "the voltage around the loop of the selected part, hole by hole",
         {{KeyFor::Loop, {Qt::CTRL | Qt::Key_L}}}},
        {kAsk,
         nullptr,
         "truth table of the switches; click a row to set them",
         {{KeyFor::TruthTable, {Qt::CTRL | Qt::Key_T}}}},
        {kAsk,
         nullptr,
         "the sum round the loop or at a junction, large; the legend",
         {{KeyFor::Sum, {Qt::CTRL | Qt::Key_M}}, {KeyFor::Legend, {Qt::CTRL | Qt::Key_G}}}},
        {kAsk,
         nullptr,
         "the resistor that an LED needs; My drawer holds the resistors of your kit",
         {{KeyFor::Resistor, {Qt::CTRL | Qt::Key_R}}}},
        {kAsk,
         nullptr,
         "the screen of the oscilloscope, large",
         {{KeyFor::ScopeCard, {Qt::CTRL | Qt::SHIFT | Qt::Key_U}}}},
        {kAsk, nullptr, "this page of keys", {{KeyFor::Keys, {Qt::CTRL | Qt::Key_F1}}}},
    };
}

Lines linesOfFiles() {
    constexpr const char* kFile = "File and edit";
    const auto ctrl = [](Qt::Key key) { return Keys{Qt::CTRL | key}; };
    const auto ctrlShift = [](Qt::Key key) { return Keys{Qt::CTRL | Qt::SHIFT | key}; };
    return {
        {kFile,
         nullptr,
         "undo, redo, the steps so far",
         {{KeyFor::Undo, ctrl(Qt::Key_Z)}, {KeyFor::Redo, ctrlShift(Qt::Key_Z)}, {KeyFor::Steps, ctrl(Qt::Key_H)}}},
        {kFile,
         nullptr,
         "cut, copy, paste, duplicate",
         {{KeyFor::Cut, ctrl(Qt::Key_X)},
          {KeyFor::Copy, ctrl(Qt::Key_C)},
          {KeyFor::Paste, ctrl(Qt::Key_V)},
          {KeyFor::Duplicate, ctrl(Qt::Key_D)}}},
        {kFile,
         nullptr,
         "remove what is selected, select all",
         {{KeyFor::Remove, {Qt::Key_Delete, Qt::Key_Backspace}}, {KeyFor::SelectAll, ctrl(Qt::Key_A)}}},
        {kFile,
         nullptr,
         "save a picture, copy the bench as one",
         {{KeyFor::SavePicture, ctrl(Qt::Key_E)}, {KeyFor::CopyPicture, ctrlShift(Qt::Key_C)}}},
        {kFile, nullptr, "the course and your benches", {{KeyFor::Course, {Qt::Key_F12}}}},
        {kFile, nullptr, "while a lesson is recorded: this is a step", {{KeyFor::MarkStep, ctrl(Qt::Key_J)}}},
        {kFile,
         nullptr,
         "new bench, open, save, save as",
         {{KeyFor::New, ctrl(Qt::Key_N)},
          {KeyFor::Open, ctrl(Qt::Key_O)},
          {KeyFor::Save, ctrl(Qt::Key_S)},
          {KeyFor::SaveAs, ctrlShift(Qt::Key_S)}}},
        {kFile,
         nullptr,
         "rename the bench, close the window, quit",
         {{KeyFor::Rename, {Qt::Key_F2}}, {KeyFor::Close, ctrl(Qt::Key_W)}, {KeyFor::Quit, ctrl(Qt::Key_Q)}}},
    };
}

QString keyInWords(const QKeySequence& key) {
    QString words = key.toString(QKeySequence::PortableText);
    words.replace(QLatin1String("Return"), QLatin1String("Enter"));
    words.replace(QLatin1String("Ins"), QLatin1String("Insert"));
    words.replace(QLatin1String("Del"), QLatin1String("Delete"));
    words.replace(QLatin1String("Esc"), QLatin1String("Escape"));
    return words;
}

}  // namespace

QString KeyLine::keysInWords() const {
    if (label) return QString::fromLatin1(label);
    QStringList words;
    for (const Use& use : uses) words << keyInWords(use.keys.front());
    return words.join(QStringLiteral(", "));
}

const std::vector<KeyLine>& keyLines() {
    static const Lines kLines = [] {
        Lines all;
        for (const Lines& some : {linesOfBoard(), linesOfViews(), linesOfQuestions(), linesOfFiles()})
            all.insert(all.end(), some.begin(), some.end());
        return all;
    }();
    return kLines;
}

const std::vector<QKeySequence>& keysFor(KeyFor what) {
    for (const KeyLine& line : keyLines()) {
        for (const KeyLine::Use& use : line.uses) {
            if (use.what == what) return use.keys;
        }
    }
    static const Keys kNone;
    return kNone;
}

bool isKeyFor(KeyFor what, int key) {
    return std::ranges::any_of(keysFor(what), [key](const QKeySequence& each) { return each[0].key() == key; });
}

QString otherKeyOf(KeyFor what) { return keysFor(what).at(1).toString(QKeySequence::PortableText); }

}  // namespace tiepoint::ui
