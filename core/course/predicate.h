#pragma once
// Predicates: what a step of a lesson claims, judged by the solver. Each is one line of the table in predicate.cpp.
//
//   {"lit": "D1"}                                      {"brighter": ["D1", "D2"]}   the first is
//   {"dark": "D1"}                                     {"alike": ["D1", "D2"]}      equally bright, both lit
//   {"volts": "A.c14", "from": 1.8, "to": 2.1}         {"joined": ["A.c5", "A.c9"]} one piece of metal
//   {"volts": ["A.c14", "A.c19"], "from", "to"}        {"apart": ["A.e5", "A.f5"]}
//   {"amperes": "R1", "from", "to"}                    {"open": "S1"}               no current through it
//   {"watts": "R1", "from", "to"}                      {"findings": "none"}         or the name of a rule
//   {"chain": "led-in"}   how far a first build has come, wherever it stands: resistor-in, led-in, plus, lit; or broken: no light any more
//
// Figures are SI. Amperes of a part or jumper are without sign; of a lead ("R1.1") they count into the part. Pure; safe from any thread.

#include "core/snapshot/snapshot.h"

#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace tiepoint {

struct PredicateForm;

struct Predicate {
    const PredicateForm* form = nullptr;
    std::vector<std::string> names;  ///< ids, or the name of a rule
    std::vector<Hole> holes;
    double from = 0, to = 0;
    friend bool operator==(const Predicate&, const Predicate&) = default;
};

/// Whether a claim holds, and the figure that says so.
struct ClaimVerdict {
    bool holds = false;
    std::string figure;  ///< "D1 is dark: 0 mA", "8.82 mA, not 9 mA to 10 mA"
};

/// What the member of that name takes.
enum class PredicateTakes { Part, TwoParts, Holes, TwoHoles, Thing, Rule, Stage };

struct PredicateForm {
    std::string_view name;
    PredicateTakes takes;
    bool ranged;  ///< has "from" and "to"
    bool denies;  ///< says that something doesn't happen
    ClaimVerdict (*judge)(const Predicate& predicate, const Snapshot& snapshot);
};

std::span<const PredicateForm> predicateForms();

/// As in the file: {"lit": "D1"}.
std::string predicateLine(const Predicate& predicate);
/// The claim in words: "D1 is lit", "1.8 V to 2.1 V at c14".
std::string predicateWords(const Predicate& predicate);

/// Requires a snapshot of a bench that has what the predicate names; without, it doesn't hold.
ClaimVerdict judge(const Predicate& predicate, const Snapshot& snapshot);

}  // namespace tiepoint
