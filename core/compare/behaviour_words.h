#pragma once
// What a comparison of behaviour says of one difference: where, in which position of the bench's own switches, and what to look at. Pure.

#include "core/compare/comparison.h"
#include "core/compare/doing.h"

#include <string>
#include <string_view>

namespace tiepoint {

class BehaviourWords {
public:
    /// Both must outlive this.
    BehaviourWords(const Doing& mine, const Doing& target) : mine_(mine), target_(target) {}

    /// "This bench has no light, the target one."; `several` in the plural.
    static BenchDifference countsApart(std::string_view one, std::string_view several, std::size_t mine,
                                       std::size_t target);
    /// "With S1 pressed, "; empty for a bench without controls.
    std::string position(const Digits& own) const;
    BenchDifference noAnswer(bool isMine, const Digits& own) const;
    BenchDifference lightApart(const Snapshot& there, int light, const Snapshot& here, int lamp,
                               const Digits& own) const;

private:
    const Doing& mine_;
    const Doing& target_;
};

}  // namespace tiepoint
