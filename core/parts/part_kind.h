#pragma once
// Part kinds: the catalogue's data, read from resources/parts/*.json (see DEVELOPERS.md for the schema).
// A kind lives as long as the program and never changes; compare by address.

#include "core/parts/package_family.h"

#include <map>
#include <memory>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <utility>
#include <variant>
#include <vector>

namespace tiepoint {

/// One lead, or a socket that jumpers plug into.
struct LeadSpec {
    std::string name;         ///< as in the file: "anode", "1a", "GND2"
    std::string description;  ///< how a person tells it apart: "the longer leg"
    bool socket = false;
    bool insulated = false;  ///< nothing inside holds its voltage, as of a gate: something outside must
};

enum class ValueType { Number, Choice, Switch };

struct Choice {
    std::string name;
    std::string label;
    std::map<std::string, double, std::less<>> constants;  ///< figures that come with the choice, SI
};

/// One value or state of a kind. Values are held as doubles: a choice by its index, a switch as 0 or 1.
struct ValueSpec {
    std::string name;
    std::string label;
    ValueType type = ValueType::Number;
    std::string unit;  ///< as in core/base/unit.h; "" is a plain number
    double minimum = 0, maximum = 0;
    double fallback = 0;   ///< used where a file says nothing
    bool integer = false;  ///< only whole numbers, such as a count of cells
    std::vector<double>
        allowed;  ///< if not empty, the only numbers offered in the window (files may hold others in range)
    std::vector<Choice> choices;
    bool lookAlike = false;  ///< of a choice: parts of either look the same, so that a hand takes one for the other
    bool sought = false;     ///< people ask for the part by it: the ohms of a resistor, not those of a switch's contact
    bool remembered = false;  ///< of a state: what the part begins with in time, nothing that a hand sets
    std::string series;       ///< preferred numbers to offer: "E12", "E24", "E96", or empty
};

/// A parameter of a model: a number, the name of a value (or of a constant of a chosen choice), or a named derivation.
/// The closed list of derivations stands in core/parts/derivation.h.
struct Parameter {
    struct Argument;
    struct Derived {
        std::string name;
        std::vector<Argument> arguments;
    };
    std::variant<double, std::string, Derived> source;
};
/// What a derivation is given, under the name that it knows.
struct Parameter::Argument {
    std::string name;
    Parameter parameter;
};

/// One element of a model, between leads or inner nodes.
struct ElementSpec {
    std::string element;  ///< name in the element table: "resistance", "junction", "supply", "contact", "filament"
    std::vector<std::string> between;  ///< by terminal of the element, in its order
    const std::string& from() const { return between.front(); }
    const std::string& to() const { return between.back(); }
    std::vector<std::pair<std::string, Parameter>> parameters;
    std::string whenState;          ///< contact: closed while this state ...
    std::string whenChoice;         ///< ... has this choice ("" with a switch state: while it is 1)
    bool whenHeld = false;          ///< contact: closed while the part is held (pressed)
    std::string ofValue, ofChoice;  ///< only parts have it whose value of that name is this choice ("": all have it)
    double wavelengthMetre = 0;     ///< of its light, where a part has several; 0: as the part's value says
    std::string
        reads;  ///< instruments: what the part shows while this element is there, a name of core/meter/meter.h; else ""
};

/// A limit that a figure of the running part is compared with.
struct Rating {
    std::string name;      ///< "maximumCurrent", "ratedCurrent", "power", "reverseVoltage", "contactCurrent"
    std::string quantity;  ///< as in core/parts/rated_quantity.h: "current", "power", "voltage", "reverseVoltage"
    std::string label;     ///< "30 mA maximum" is made from label "maximum"
    Parameter limit;
    bool maximum = true;     ///< false: a rated (usual) figure, not a limit
    std::vector<int> leads;  ///< of one lead, or between two; none: of the whole part
};

/// How a part sounds: always at one pitch, from some voltage between its first two leads on, or as its current moves it.
struct SoundSpec {
    bool follows = false;  ///< at the pitch that its sounder tells (core/circuit/sounder_law.h)
    Parameter pitch;       ///< Hz
    Parameter fromVoltage;
};

struct SourceNote {
    std::string figure;
    std::string source;
    std::string status;  ///< "published", "common practice" or "from memory"
};

struct Help {
    std::string what;     ///< what it is and does
    std::string leads;    ///< how to tell its leads apart
    std::string ratings;  ///< what it bears
    std::string caution;  ///< what to beware of; may be empty
};

/// The sizes that a part of a kind may have, and what chooses among them.
struct PackageSizes {
    const PackageFamily* family = nullptr;
    std::vector<Parameter> figures;  ///< in the order of the family's numbers
    std::vector<Package> packages;
};

struct PartKind {
    std::string name;                  ///< as in the file: "push-button"
    std::string family;                ///< compartment of the tray: "Supply", "Resistor", "LED", "Switch", "Diode", ...
    std::string label;                 ///< "push button"
    std::string prefix;                ///< of new ids: "S"
    int order = 0;                     ///< place inside its compartment of the tray
    const Package* package = nullptr;  ///< at its usual values; that of a part: packageOf() in core/bench/resolve.h
    std::shared_ptr<const PackageSizes> sizes;  ///< of a family of packages, else null
    std::vector<LeadSpec> leads;
    std::vector<std::vector<int>> joined;  ///< groups of leads that are one piece of metal inside the part
    std::vector<ValueSpec> values;
    std::vector<ValueSpec> state;
    std::vector<ElementSpec> model;
    std::vector<Rating> ratings;
    std::optional<SoundSpec> sound;
    bool emitsLight = false;     ///< has a brightness
    Parameter ratedCurrent;      ///< brightness is relative to the light at this current
    double lightExponent = 1;    ///< light rises as this power of the current
    bool needsResistor = false;  ///< a light whose own resistance doesn't hold its current back: a junction
    bool hasCap = false;         ///< pressed with the letter on its cap
    bool isSupply = false;
    std::vector<std::string> searchWords;
    Help help;
    std::vector<SourceNote> sources;

    int leadIndex(std::string_view leadName) const;    ///< -1 if there is none
    int valueIndex(std::string_view valueName) const;  ///< -1 if there is none
    int stateIndex(std::string_view stateName) const;  ///< -1 if there is none
    bool hasControl() const;                           ///< a state that a hand sets
};

/// All kinds, in the order of the tray. Reads the embedded files at the first call; a broken embedded file ends the program.
const std::vector<PartKind>& catalogue();
/// The kind of that name, or null.
const PartKind* findKind(std::string_view name);

/// The value that is the resistance between its leads, of a kind that is a resistance and nothing else: index of the value, or -1.
int resistanceValue(const PartKind& kind);

/// The value that stands beside a part's id, on the screen and on paper: its resistance, capacitance or inductance; index, or -1.
int valueBesideId(const PartKind& kind);

// The kind to take where one is wanted and nobody chose which: the first of the tray that does it.
const PartKind& usualSupply();
const PartKind& usualResistor();
const PartKind& usualLight();  ///< one that needs a resistor

/// The eight jumper colours of the file, in order: red black blue yellow green violet orange white.
struct JumperColour {
    std::string_view name;
};
std::span<const JumperColour> jumperColours();
/// Index of a colour, or -1.
int findJumperColour(std::string_view name);

}  // namespace tiepoint
