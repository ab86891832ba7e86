#pragma once
// The circuit diagram: symbols, wires, dots and words of a circuit without places, laid out on a sheet. Millimetres, x to the right, y down,
// from 0,0. Plain values; the sheet in the window, the command `diagram` and printed sheets draw the same.
//
// What is drawn is the circuit: two wires are joined exactly where an end of one lies on the other, and where three or more ways meet there is
// a dot; wires that cross are not joined. tests/core/diagram reads the nets back from the lines alone.
//
// A layout depends on the circuit, on the order that the hints give and on nothing else: neither on hands and switches nor on the order of
// parts in a file that hints have settled. Thread rule: pure functions; stoppable (core/base/stopping.h).

#include "core/diagram/symbol.h"
#include "core/netlist/netlist.h"
#include "core/nets/layout.h"

#include <map>
#include <memory>
#include <optional>
#include <string>
#include <vector>

namespace tiepoint {

enum class SheetFlow : std::uint8_t { Rightward, Downward };

/// What a layout may take into account besides the circuit.
struct DiagramHints {
    std::vector<double> order;  ///< by part: smaller stands further left or higher, where current allows; empty: by id
    std::optional<SheetFlow> flow;  ///< nothing: whichever fills the sheet better
    double sheetRatio = 2;          ///< breadth of the sheet to its height, for that choice
    SymbolStyle style = SymbolStyle::Iec;
};

/// How a symbol's own frame lies on the sheet.
struct SymbolPose {
    Point at;
    bool along = true;  ///< its x runs along the sheet's x; else it runs along y
    bool flipX = false, flipY = false;
    Point place(Point own) const {
        const double x = flipX ? -own.x : own.x, y = flipY ? -own.y : own.y;
        return along ? Point{at.x + x, at.y + y} : Point{at.x + y, at.y + x};
    }
    friend bool operator==(const SymbolPose&, const SymbolPose&) = default;
};

/// The end of a part's lead on the sheet, where its wire begins.
struct SheetLead {
    int lead = 0;  ///< of a joined group, its first
    int net = -1;  ///< -1: hangs free
    Point at;
    friend bool operator==(const SheetLead&, const SheetLead&) = default;
};

struct PlacedPart {
    int part = 0;
    const Symbol* symbol = nullptr;  ///< null: a box, `body`
    SymbolPose pose;
    Rect body;  ///< all that is drawn of it but its leads and words
    std::vector<SheetLead> leads;
};

struct SheetWire {
    int net = -1;
    Point from, to;  ///< level or plumb; ends only where another wire, a lead or nothing begins
    friend bool operator==(const SheetWire&, const SheetWire&) = default;
};

struct SheetDot {
    int net = -1;
    Point at;
    friend bool operator==(const SheetDot&, const SheetDot&) = default;
};

enum class WordKind : std::uint8_t { Id, Value, Switch, Lead };  ///< Switch: how it stands, known only live

struct SheetWord {
    int part = -1;
    WordKind kind = WordKind::Id;
    std::string text;  ///< empty for Switch
    Rect frame;        ///< room kept for it
    int align = -1;    ///< -1 left, 0 centred, 1 right inside its frame
};

/// Where the volts of a net may be told: a tag beside the wire, joined by a stub to a small open node on it.
struct SheetTag {
    int net = -1;
    Point node;
    Rect frame;
};

struct Diagram {
    SheetFlow flow = SheetFlow::Rightward;
    double width = 0, height = 0;
    std::vector<PlacedPart> parts;  ///< by part of the netlist
    std::vector<SheetWire> wires;
    std::vector<SheetDot> dots;
    std::vector<Point> openEnds;  ///< where a lead hangs free
    std::vector<SheetWord> words;
    std::vector<SheetTag> tags;  ///< of the nets that have room for one
    int crossings = 0;           ///< of wires of different nets
};

inline constexpr double kSheetTextMm = 3.0;  ///< em of ids and values
inline constexpr double kSheetTagWidthMm = 14, kSheetTagHeightMm = 5;

Diagram layOutDiagram(const Netlist& netlist, const DiagramHints& hints = {});

/// Hints of a bench: the order of its strips from left to right. The netlist's parts are the bench's.
DiagramHints stripOrder(const Bench& bench);
/// Hints that keep what was drawn before where it was, for the parts that are still there, by id.
void keepOrder(DiagramHints& hints, const Netlist& netlist, const Diagram& before, const Netlist& beforeNetlist);

/// How much room a line of text takes at most, mm.
double sheetTextWidth(std::string_view text, double emMm = kSheetTextMm);

/// What stands beside the id: "330 Ω", "5 V", "red LED"; empty for switches, whose word is live.
std::string sheetValue(const Part& part);
/// "closed", "open", "towards a": how a switch stands; empty for anything else.
std::string switchWord(const Bench& bench, int part, const Inputs& inputs);

}  // namespace tiepoint
