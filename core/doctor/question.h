#pragma once
// Questions: what to look at or to measure next, and what each answer would leave. Chosen as in J. de Kleer and B. C. Williams, "Diagnosing
// multiple faults", Artificial Intelligence 32 (1987): the one whose answers tell most, in bits, of the suspects by their weights; a cheap
// look counts for more than a measurement (D. Heckerman, J. Breese and K. Rommelse, "Decision-theoretic troubleshooting", Comm. ACM 38
// (1995), from memory).

#include "core/doctor/judgement.h"

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

namespace tiepoint {

/// What is at hand.
enum class Instrument { Meter, ProbeLight };

enum class Asking {
    Built,  ///< is the board as planned?
    Light,  ///< how does a light look?
    Look,   ///< is a thing as planned, or where is it?
    Extra,  ///< is there a jumper too many?
    Volts,
    Glow,
    Beep,
};

struct Question {
    Asking asking = Asking::Built;
    Digits digits;
    std::string id;   ///< of what is looked at
    Hole one, other;  ///< where the red tip goes, or between which; other: Extra, Beep
    std::optional<Hole> black;
};

/// One way in which a question may be answered.
struct Reply {
    std::vector<Observation> seen;    ///< what was seen then; several where a thing stands in other holes
    std::string words;                ///< "5.00 V", "dark", "as planned", "leg 1 in c15"
    double weight = 0;                ///< of all whom it leaves
    std::vector<std::size_t> leaves;  ///< places in the list of suspects that was asked about
};

struct AskedQuestion {
    Question question;
    std::vector<Reply> answers;  ///< the likeliest first
    double bits = 0;             ///< how much it tells on the average
};

/// A suspect with the weight that it has after what was seen.
struct Weighed {
    const Suspect* suspect = nullptr;
    double weight = 0;
};

/// What somebody would see who asks that question of a board with this slip.
std::vector<Observation> foreseen(Foresight& foresight, const SuspectList& suspects, const Question& question,
                                  const Suspect& suspect);

class Questioner {
public:
    Questioner(const SuspectList& suspects, Foresight& foresight);

    /// The question that splits these best; nothing where none of those left does. What is among `seen` isn't asked again.
    std::optional<AskedQuestion> best(const std::vector<Weighed>& live, const std::vector<Observation>& seen,
                                      Instrument instrument);
    /// What each answer to a question would leave.
    AskedQuestion ask(const Question& question, const std::vector<Weighed>& live);

private:
    class Search;

    const SuspectList& suspects_;
    Foresight& foresight_;
    std::vector<Digits> positions_;
};

}  // namespace tiepoint
