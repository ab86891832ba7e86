#pragma once
// The multimeter: what it shows at one instant, read off the solved circuit as its own electronics would.
//
// A meter is a part whose model has elements that read something. The dial, a state of the part, puts one of them between the leads:
// its current and its voltage are what the meter measures, loading included. The names of readings:
//
//   voltage      across the element, from its first lead to its second
//   current      through it, counted the same way
//   resistance   of what lies outside, from the element's own small source; nothing where another source takes part
//   continuity   the same, with a beep where it is next to nothing
//   trace        the voltage across the element, over time (core/scope)
//
// What goes up and down within a fifth of a second of a bench that moves is read as its mean, or as its root mean square where the meter
// is set so; anything else as it is at the instant.
//
// The display has three and a half digits (1999 steps) and chooses its range by itself. Over the largest range it says OL.
// A fuse that would blow isn't written into the document, which only edits change: as with every part that gets too much, the display and
// the findings say so while it lasts, and nothing has to be mended afterwards.
// Pure functions; safe from any thread. SI units.

#include "core/edit/edit.h"
#include "core/snapshot/snapshot.h"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace tiepoint {

struct MeterReading {
    bool on = true;        ///< the dial isn't at off
    std::string quantity;  ///< "voltage", "current", "resistance", "continuity"; empty while off
    double value = 0;    ///< SI; NaN where the meter has no number: OL, a blown fuse, a supply in the way, no solution
    std::string digits;  ///< as the display has them: "4.98", "−0.5", "OL", "FUSE", "---"; empty while off
    std::string unit;    ///< "V", "mV", "kΩ"; empty beside words
    bool beeps = false;
    std::string_view average = {};  ///< "mean" or "rms" where it alternates and that is what is read
    std::string why;                ///< one plain sentence where there is no number; may be empty

    /// "4.98 V", "OL", "off".
    std::string text() const;
};

/// Whether parts of that kind measure.
bool isMeter(const PartKind& kind);
/// What the part's dial is set to measure: a name of a reading; empty for a meter that is off and for parts that are no meters.
std::string_view quantityRead(const Part& part);
/// Whether a meter only looks on: no current that others could do without runs through it. Amperes aren't measured so.
bool looksOn(const Part& part);

/// Whether a meter sends a test current of its own, for which the supplies have to be off: ohms and continuity.
bool testsWithOwnSource(const Part& part);

/// How the dial stands, in words: "volts", "off"; empty for parts that are no meters.
std::string dialLabel(const Part& part);

/// The display; nothing for parts that are no meters.
std::optional<MeterReading> meterReading(const Snapshot& snapshot, int part);

/// Turns the dial to where the meter reads that quantity; nothing if it has no such position.
std::optional<Edit> turnDialEdit(const Bench& bench, const Part& meter, std::string_view quantity);

/// Names of the readings, for the table test.
std::vector<std::string_view> readingNames();

}  // namespace tiepoint
