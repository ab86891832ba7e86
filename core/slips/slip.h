#pragma once
// Slips: the one list of what a hand or a part can do wrong, each a change of a bench. Findings, answers, mends, the doctor, the hunt,
// exercises and symptom sheets read it.
//
// Forwards, slips() makes every slip of a kind that a sound bench allows; backwards, mends() gives every change that would undo one on a
// bench as it stands. Only what hands can build is given: legs that reach, holes that are free, bodies and wires with room.
// What changes no circuit is none: where nets, settings and parts stay as they were, the slip is left out.
//
// How often a kind happens is its weight, of which only ratios count. No published table of frequencies is known; the weights are common
// practice: what people who teach with such boards meet most.
//
// Everything is pure, in stable order, and stoppable (core/base/stopping.h).

#include "core/slips/bench_change.h"
#include "core/slips/ground.h"

#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace tiepoint {

class SlipSearch;
struct Slip;

/// One kind of slip. Instances live as long as the program; compare by address.
struct SlipKind {
    std::string_view name;  ///< stable, as in JSON: "one-hole-off"
    double weight;          ///< how often beginners do it, beside the other kinds
    std::string_view seen;  ///< id of the words for what the eye sees of it (core/words)
    bool symmetric;         ///< what undoes such a slip is a slip of the same kind
    void (*find)(SlipSearch& search);
    std::string (*words)(const Bench& bench, const Slip& slip);      ///< the slip in one sentence, full stop included
    std::string (*mendWords)(const Bench& bench, const Slip& slip);  ///< what to do: "put D1's anode into c14"
    bool hidden = false;  ///< no eye sees it: only a measurement tells, or another part in its place
};

/// Every kind, the most frequent first.
std::span<const SlipKind* const> slipKinds();
/// The kind of that name, or null.
const SlipKind* findSlipKind(std::string_view name);

struct Slip {
    const SlipKind* kind = nullptr;
    BenchChange wrong;          ///< brings the sound bench to the slipped one
    BenchChange right;          ///< brings the slipped bench back to the sound one
    bool made = false;          ///< the bench that was searched has it: to be undone; else it can be made there
    double weight = 0;          ///< that of the kind, less where the hand went farther astray
    std::string about;          ///< id of another part by which it is told; may be empty
    int away = 0;               ///< how far from the symptom: parts and jumpers between
    std::uint64_t circuit = 0;  ///< what the circuit is afterwards; equal for equal circuits

    /// What can be done to the bench that was searched.
    const BenchChange& change() const { return made ? right : wrong; }
    std::vector<std::string> ids() const { return idsOf(change()); }
    /// Holes where it is and where it should be.
    std::vector<Hole> holes() const;
};

/// The change as an edit of the bench that was searched, named as the history shows it.
Edit editOf(const Bench& bench, const Slip& slip);
/// "D1's anode is in c15, one hole to the right of c14."
std::string slipInWords(const Bench& bench, const Slip& slip);
/// "Put D1's anode into c14."
std::string mendInWords(const Bench& bench, const Slip& slip);
/// "Look whether a leg is one hole beside the column of what it belongs to."
std::string seenInWords(const Slip& slip);

/// What isn't as it should be: ids of the lights that are dark, of the parts that are too hot. Without any the whole bench is meant.
struct Symptom {
    std::vector<std::string> parts;
};

/// Every slip of one kind that can be made on a bench.
std::vector<Slip> slips(const SlipKind& kind, const Ground& ground);
/// Every change that would undo a slip of one kind near the symptom.
std::vector<Slip> mends(const SlipKind& kind, const Ground& ground, const Symptom& symptom = {});

/// Slips of all kinds, at most so many: the commonest first, then the nearest. Of those that give the same circuit only the commonest.
std::vector<Slip> allSlips(const Ground& ground, std::size_t most);
/// Slips of all kinds with every change that makes them, the commonest first: also those that give the same circuit by other hands, which
/// an eye or a meter at the hole tells apart.
std::vector<Slip> everySlip(const Ground& ground);
std::vector<Slip> allMends(const Ground& ground, const Symptom& symptom, std::size_t most);
/// The commonest slip near the symptom, the nearest of equally common ones, that leaves a circuit with this digest once it is undone, or
/// nothing. In a fraction of the time that a list of them takes.
std::optional<Slip> mendTo(std::uint64_t circuit, const Ground& ground, const Symptom& symptom);

}  // namespace tiepoint
