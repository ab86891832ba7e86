#pragma once
// What a bench hides. A bench with a member "hunt" has a slip that is to be found: its file looks like that of a bench on which everything is
// sound, and what is broken stands in the member, obscured. On the table the conditions are in place, so that everything solves, moves and is
// swapped as on any bench; only the file keeps the secret. That keeps honest learners from reading the answer in an editor, and is no
// security.
//
//   "hunt": {"seen": "D1 stays dark while A is pressed.", "slip": "...", "conditions": "..."}
//
// `slip` is what core/hunt wrote about the slip, `conditions` what is broken now ("W2=open inside"); both obscured. On the table the member
// is among the bench's extras, without `conditions`.
// Pure functions; safe from any thread.

#include "core/bench/bench.h"

#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace tiepoint {

inline constexpr std::string_view kHuntMember = "hunt";

/// Text that nobody reads by accident, and back; nothing where it was damaged.
std::string obscured(std::string_view plain);
std::optional<std::string> unobscured(std::string_view text);

/// What a bench hides and says about it, in plain text.
struct SealedSlip {
    std::string seen;  ///< what is seen of it: one sentence
    std::string slip;  ///< JSON of core/hunt
    friend bool operator==(const SealedSlip&, const SealedSlip&) = default;
};
/// Nothing where the bench hides nothing.
std::optional<SealedSlip> sealedSlipOf(const Bench& bench);
/// Puts the member on the bench, in place of one that is there.
void sealSlip(Bench& bench, const SealedSlip& slip);
/// Takes it away.
void unsealSlip(Bench& bench);

// For the file.

/// The bench as its file says it: with everything sound to the eye, and the conditions in the member. Nothing where it hides nothing.
std::optional<Bench> asInFile(const Bench& bench);
/// What is broken, by id.
using HiddenConditions = std::vector<std::pair<std::string, Condition>>;
/// Reads the member's text (an object) as it stands in a file: fills what is broken and gives the text without that. Nothing where it isn't
/// what this program writes.
std::optional<std::string> takeHidden(std::string_view member, HiddenConditions& hidden);
void applyHidden(Bench& bench, const HiddenConditions& hidden);

}  // namespace tiepoint
