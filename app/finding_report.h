#pragma once
// Findings in words and in JSON, for every command that prints them.

#include "app/json_writer.h"
#include "core/base/result.h"
#include "core/findings/reveal.h"
#include "core/snapshot/snapshot.h"

#include <optional>
#include <string>
#include <string_view>

namespace tiepoint::app {

/// "fault", "risk" or "remark".
std::string_view severityName(Severity severity);

/// What is printed unasked: what the bench says, and where it doesn't, place and proof in words, but all of it in JSON, whose reader
/// can choose.
Reveal printedLevel(const Bench& bench, bool json);

/// Why nothing is printed that a meter has to find, or who pulls a thing out: volts, currents, nets. Nothing where no slip is hidden.
std::optional<Error> heldBackByHunt(const Bench& bench, const std::string& file);

/// The member "findings" of an object that is open in `json`. `bench` is the one that the report is about.
void writeFindings(JsonWriter& json, const Bench& bench, const Report& report);
/// The member "settled" of an object that is open in `json`: what becomes of a bench that moves, and with `envelopes` how far the current of
/// each lead goes. Nothing of a bench at rest.
void writeSettled(JsonWriter& json, const Snapshot& snapshot, bool envelopes = false);
/// A line for each finding, and one for its mend.
std::string findingsText(const Report& report);

}  // namespace tiepoint::app
