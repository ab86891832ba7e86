#pragma once
// The judge: which slip explains what is amiss on a bench, found without a target. Every change that would undo a slip near what is amiss is
// solved in every position; the one that is worth most (worth.h) is the cause. No change that lowers a gain is taken.
//
// Bounded: on a bench of at most kSmallBench things slips are looked for everywhere, on larger ones around the gravest kMostSymptoms parts that
// do nothing; the larger the bench, the fewer are solved. Growth is that of the bench for each slip tried. What wasn't tried is known.
// Belongs to one thread; stoppable (core/base/stopping.h).

#include "core/edit/mend.h"
#include "core/judge/traits.h"
#include "core/parts/drawer.h"
#include "core/slips/slip.h"
#include "core/snapshot/snapshot.h"

#include <optional>
#include <string>
#include <vector>

namespace tiepoint {

/// One slip that may be the cause, and what undoes it.
struct FoundCause {
    std::string_view kind;  ///< as SlipKind::name
    std::string text;       ///< what is wrong and where, with what the mend brings: one sentence
    Mend mend;
    std::vector<std::string> parts;
    std::vector<Hole> holes;
    double worth = 0;
    bool hidden =
        false;      ///< something is broken that looks sound: whoever tells it gives away what a meter has to find
    Observed then;  ///< what the mended bench does
};

class Judge {
public:
    explicit Judge(const Snapshot& now);

    /// What the bench does as it stands.
    const Observed& now() const { return now_; }
    /// The causes that are worth telling, the worthiest first; at most kMostCauses.
    std::vector<FoundCause> causes();
    /// Those of the list that leave eye and meter nothing to tell them from this one by.
    static std::vector<const FoundCause*> likeIt(const FoundCause& cause, const std::vector<FoundCause>& causes);

    struct Trial {
        double worth = 0;
        bool lowers = false;  ///< a gain that no mend may lower
        Observed then;
    };
    /// What a mend is worth that is no slip of the list; its parts are those of the bench, and perhaps more behind them.
    std::optional<Trial> trialOf(const Edit& edit);

    /// Whether more slips might have been tried than were.
    bool leftUntried() const { return leftUntried_; }

private:
    std::vector<Slip> candidates(const Ground& ground);
    std::optional<Observed> seen(const Slip& slip, std::size_t scenes);
    void tell(const Slip& slip, FoundCause& cause) const;
    std::string proofOf(const Observed& then) const;

    std::shared_ptr<const Layout> layout_;
    Stage stage_;
    Observed now_;
    bool leftUntried_ = false;
};

}  // namespace tiepoint
