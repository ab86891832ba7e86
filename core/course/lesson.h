#pragma once
// A lesson: a bench with ordered steps. Each step holds words, the edits from the step before, what to show, what to try and what must then
// be true. Plain values; the benches of all steps are worked out when a lesson is read, so that each is reached at once and exactly.

#include "core/bench/bench.h"
#include "core/course/predicate.h"
#include "core/edit/edit.h"
#include "core/instant/inputs.h"

#include <memory>
#include <optional>
#include <string>
#include <utility>
#include <vector>

namespace tiepoint {

/// What hands do at a step, without changing it: buttons held, knobs and switches set.
struct Tried {
    std::vector<std::string> hold;
    std::vector<std::pair<std::string, double>>
        set;  ///< "RV1.turn", "PS1.on", "R1.resistance": a state or a value of a part
    bool isNothing() const { return hold.empty() && set.empty(); }
    friend bool operator==(const Tried&, const Tried&) = default;
};

/// A bench in which hands do something.
struct Situation {
    std::shared_ptr<const Bench> bench;
    Inputs inputs;
};

/// A common wrong idea, with its own figures: what would flow if it were so. Shown as a grey ghost beside the truth.
struct WrongIdea {
    std::string idea;                                   ///< "If current were used up"
    std::vector<std::pair<AmperesIn, double>> amperes;  ///< into each lead; jumpers follow from them
    std::vector<std::pair<Hole, std::string>> tags;     ///< plausible figures, at holes
    std::string brokenAt;  ///< id of the part or jumper where it breaks a law; may be empty
    std::string breaks;    ///< "9.8 in, 7 out: 2.8 mA would vanish"
};

struct Prediction {
    std::string question;
    std::vector<std::string> answers;  ///< two to four
    int diagrams = 0;                  ///< so many circuit diagrams are the answers, and one is the board's; 0: words
    int right = 0;                     ///< index
    std::string seen;                  ///< what was seen, in one sentence, after the reveal
    std::optional<WrongIdea> wrong;
};

enum class StepKind {
    Show,     ///< look
    Predict,  ///< question, vote, talk, vote again, reveal
    Stop,     ///< each board is looked at before power
    Build,    ///< learners do it themselves; judged by the first build's laws
};

struct LessonStep {
    StepKind kind = StepKind::Show;
    std::string caption;  ///< large, for the room
    std::string note;     ///< for the teacher alone
    std::vector<Operation> edits;
    std::optional<Views> show;
    std::vector<std::string> places;  ///< ids or holes that are pointed at
    bool sheet = false;               ///< the circuit diagram beside the board
    std::string card;                 ///< the card for the room: "loop", "junction", "truth", ...; may be empty
    Tried tried;
    std::vector<Predicate> then;
    std::optional<Prediction> ask;

    std::shared_ptr<const Bench> bench;    ///< after the edits
    std::optional<Situation> opposite;     ///< in which the claims don't hold
    std::vector<Operation> oppositeEdits;  ///< as in the file
    Tried oppositeTried;
};

/// What an exercise allows.
struct LessonLimits {
    int parts = 0, jumpers = 0;      ///< at most so many; 0: any number
    std::vector<std::string> locks;  ///< of "mends", "diagram", "tidying"
};

struct Lesson {
    std::string title;
    std::string summary;               ///< one sentence for the course
    std::vector<std::string> teaches;  ///< aims
    int minutes = 0;
    std::string answers;  ///< the wrong idea that it answers
    std::string surprise;
    std::vector<std::string> must, may;  ///< what it shows in any case, and with time left
    std::vector<std::string> words;      ///< new words
    std::vector<std::string> safety;
    std::vector<std::string> packing;  ///< packing away
    std::vector<std::string> paper;    ///< two questions on paper at the end, asked again at the start of the next
    std::shared_ptr<const Bench> start;
    std::vector<LessonStep> steps;
    std::shared_ptr<const Bench> goal;  ///< of exercises; may be null
    LessonLimits limits;
    Extras extras;

    int stepCount() const { return static_cast<int>(steps.size()); }
    /// The bench of a step; -1 is the start.
    const std::shared_ptr<const Bench>& benchAt(int step) const { return step < 0 ? start : steps[step].bench; }
};

/// A step with its hands on it; the bench as the step leaves it where nothing is set.
Situation situationOf(const Lesson& lesson, int step);
/// The same bench with other hands. Fails where something can't be set.
Result<Situation> situationOf(std::shared_ptr<const Bench> bench, const Tried& tried);

/// One edit that turns a bench into another exactly, the order of its lists included. Looks and surroundings go along; saved views don't.
Edit editBetween(const Bench& from, const Bench& to, std::string name);

/// What a lesson needs: the most of each kind and value that lie on any of its benches together.
struct NeededPart {
    const PartKind* kind = nullptr;
    Part example;
    int count = 0;
};
std::vector<NeededPart> partsNeeded(const Lesson& lesson);
int jumpersNeeded(const Lesson& lesson);

}  // namespace tiepoint
