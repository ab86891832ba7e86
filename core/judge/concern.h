#pragma once
// Which changes of a bench can have to do with what is amiss: those of the parts themselves, those that reach metal of theirs that isn't a
// supply's, and those of supplies and rails, which all share. Made once for each bench; keeps references. Pure.

#include "core/slips/ground.h"

#include <string_view>
#include <unordered_set>
#include <vector>

namespace tiepoint {

class Concern {
public:
    Concern(const Ground& ground, const std::vector<int>& amiss);

    bool touches(const BenchChange& change) const;

private:
    bool isNear(const Hole& hole) const;
    bool isNear(const JumperEnd& end) const;
    bool isNearLeadsOf(std::string_view part) const;
    bool isNearEndsOf(std::string_view jumper) const;

    const Ground& ground_;
    std::unordered_set<std::string_view> amiss_;
    bool everything_ = false;  ///< a supply is amiss: it reaches everywhere
    void reachStrips(const std::vector<int>& amiss);

    std::vector<char> nearStrip_;  ///< by strip: what is amiss reaches it by jumpers, without a rail between
    std::vector<char> near_;       ///< by net
    std::vector<char> supply_;     ///< by net
};

}  // namespace tiepoint
