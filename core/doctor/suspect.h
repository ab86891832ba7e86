#pragma once
// Suspects: what may be wrong at a board that was to be built from a plan, one slip or two, or nothing at all. Each is a variant of the plan,
// so that thousands can be solved, and knows what the eye would see of it.
// Made once for a plan; immutable values, indices and ids are the plan's.

#include "core/slips/slip.h"
#include "core/variants/variant.h"

#include <functional>
#include <map>
#include <memory>
#include <optional>
#include <set>
#include <string>
#include <utility>
#include <vector>

namespace tiepoint {

/// What of a thing an eye sees that isn't as planned: the strips where its tips stand, its settings, that it is missing. Equal texts look
/// the same; empty: as planned.
using Looks = std::map<std::string, std::string>;

/// A value or a state of a part.
struct SettingOf {
    std::string part;
    bool state = false;
    int index = 0;
    friend auto operator<=>(const SettingOf&, const SettingOf&) = default;
};

struct Suspect {
    std::vector<int> slips;  ///< indices into SuspectList::slips; none: everything is as planned
    double weight = 1;
    Variant variant;
    std::set<std::string> splitRails;  ///< boards whose rails are broken where the plan's run through
    Looks looks;                       ///< by id of part, jumper or board
    /// Strips in which tips stand that the eye can see elsewhere than planned, by id and tip; -1: it hangs.
    std::map<std::pair<std::string, int>, int> tips;
    std::map<SettingOf, double> settings;    ///< other than planned
    std::set<std::string> missing;           ///< jumpers
    std::vector<std::pair<int, int>> extra;  ///< strips that a jumper too many joins, the smaller first
    std::vector<std::string> concerned;      ///< ids to look at
    std::set<std::string> touched;           ///< ids that it changes, hidden things too
    std::set<int> strips;                    ///< where it changes something; to look for places to measure

    bool isVisible() const { return !looks.empty() || !extra.empty(); }
};

/// Whether a slip can have been made at all, with what a class has; empty: each can.
using PossibleSlip = std::function<bool(const Slip&)>;

class SuspectList {
public:
    /// Nothing wrong, then every single slip of the plan that is possible, the likeliest first, each way of standing in the strips once.
    explicit SuspectList(std::shared_ptr<const Layout> plan, const PossibleSlip& possible = {});

    const Ground& ground() const { return ground_; }
    const Bench& plan() const { return ground_.bench(); }
    const std::vector<Slip>& slips() const { return slips_; }
    const std::vector<Suspect>& all() const { return suspects_; }

    /// Both at once; nothing where they touch the same thing or would stand in one hole.
    std::optional<Suspect> pairOf(const Suspect& one, const Suspect& other) const;
    /// The plan as it would have been built.
    Bench built(const Suspect& suspect) const;

private:
    Suspect suspectOf(int slip) const;
    void addChange(const BenchChange& wrong, bool hidden, Suspect& suspect) const;

    Ground ground_;
    std::vector<Slip> slips_;
    std::vector<Suspect> suspects_;
};

}  // namespace tiepoint
