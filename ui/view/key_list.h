#pragma once
// Every key of the program, each once. The actions of the window take their shortcuts from this list and the board its keys, so that the page of
// keys in Help, which shows its lines, can't say anything else. The table in README.md has the same lines; a test compares them.

#include <QKeySequence>
#include <QString>

#include <vector>

namespace tiepoint::ui {

/// What a key is for.
enum class KeyFor {
    // the board's
    Caps,
    Walk,
    Stride,
    Take,
    Wire,
    Stretch,
    Turn,
    RowOfCopies,  ///< two copies, three, ...
    ThingMenu,
    Operate,
    Step,
    Type,
    LetGo,
    // the window's
    Arrows,
    Voltage,
    Strips,
    Readings,
    Underside,
    ZoomIn,
    ZoomOut,
    Fit,
    Fold,
    Diagram,
    Project,
    FullScreen,
    Ink,
    WipeInk,
    Blank,
    NextStep,
    PreviousStep,
    Why,
    PartHelp,
    NextFinding,
    Goal,
    Loop,
    Sum,
    Legend,
    Course,
    MarkStep,
    TruthTable,
    Resistor,
    ScopeCard,
    TimeCard,
    TimeStill,
    TimeSlower,
    TimeFaster,
    TimeStep,
    TimeRestart,
    Note,
    Pin,
    Probe,
    LayFlat,
    Undo,
    Redo,
    Steps,
    Cut,
    Copy,
    Paste,
    Duplicate,
    Remove,
    SelectAll,
    Find,
    CopyPicture,
    Rename,
    New,
    Open,
    Save,
    SaveAs,
    SavePicture,
    Close,
    Quit,
    Keys,
};

/// A line of the list: keys that are told together.
struct KeyLine {
    struct Use {
        KeyFor what;
        std::vector<QKeySequence> keys;
    };
    const char* group;  ///< "Build"
    const char* label;  ///< the keys in words, or null: they are told by their names
    const char* does;
    std::vector<Use> uses;

    /// "F5, Shift+F5".
    QString keysInWords() const;
};

const std::vector<KeyLine>& keyLines();
/// The keys for something, first those that the list tells. None for the letters on caps, which the bench has.
const std::vector<QKeySequence>& keysFor(KeyFor what);
/// Whether one of the keys for something is this one (a Qt::Key), whatever is held down with it.
bool isKeyFor(KeyFor what, int key);
/// "Alt+1": the second key of a view, which works while digits type a value.
QString otherKeyOf(KeyFor what);

}  // namespace tiepoint::ui
