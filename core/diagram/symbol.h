#pragma once
// Symbols: how a kind of part is drawn in a circuit diagram. Data of the kind, the member "symbol" of its file in resources/parts; a kind
// without one is drawn as a box with the names of its leads. Shapes are drawn here after IEC 60617 ("Graphical symbols for diagrams") and,
// as a choice, IEEE Std 315 (1975); the widths are our own (a resistor is 17 x 6 mm).
//
// A symbol's own frame: millimetres, x along the current, y across. A sheet whose current runs rightward takes it as it is; one whose
// current runs downward takes x for y and y for x, so that what points up points to the left there.
// A symbol lives as long as the program and never changes.

#include "core/base/geometry.h"
#include "core/base/result.h"
#include "core/bench/bench.h"
#include "core/instant/inputs.h"

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

namespace tiepoint {

enum class SymbolStyle : std::uint8_t { Iec, Ieee };

enum class SymbolSide : std::uint8_t { Start, End, Low, High };  ///< towards -x, +x, -y, +y

/// Where a lead leaves the symbol.
struct SymbolLead {
    int lead = 0;  ///< of a joined group, its first
    Point at;
    SymbolSide side = SymbolSide::Start;
};

/// When a shape is drawn: always, or as a contact or a state of the part stands.
struct SymbolWhen {
    enum class Kind : std::uint8_t { Always, Closed, Open, State };
    Kind kind = Kind::Always;
    int index = -1;  ///< of the model's element, or of the state
    double is = 0;   ///< the state's value
};

struct SymbolShape {
    enum class Kind : std::uint8_t { Line, Filled, Outline, Circle, Arrow, Dotted, Text };
    Kind kind = Kind::Line;
    std::vector<Point> points;  ///< of a circle and a text: its middle
    double radius = 0;          ///< of a circle
    std::string text;
    bool lit = false;  ///< an outline or a circle that is filled with the part's light
    SymbolWhen when;
};

struct Symbol {
    std::vector<SymbolLead> leads;  ///< one for each terminal of the kind, in their order
    std::vector<SymbolShape> shapes;
    Rect bounds;  ///< of all shapes
};

/// The symbol of a kind, or null: a box.
const Symbol* symbolOf(const PartKind& kind, SymbolStyle style);

/// Reads the member "symbol" of a kind's file. A mistake is an error with its place.
Result<Symbol> readSymbol(std::string_view kindText, const PartKind& kind, SymbolStyle style);

/// Whether a shape is drawn while the part stands so.
bool isDrawn(const SymbolWhen& when, const Part& part, const Inputs& inputs);

/// By lead of a kind: the first lead of the same metal, itself where it is alone.
std::vector<int> firstOfTerminal(const PartKind& kind);

}  // namespace tiepoint
