#pragma once
// Where a search looks: the parts and jumpers that can have to do with a symptom, the nearest first. A slip that darkens a light either
// touches what hangs together with it, or leaves a hole there and lies in a strip that a hand may have meant instead. So things are reached
// through the metal that they share, and from one strip to the strips beside it, over the gap and over the nearest rail. Rails and the strips of
// supplies reach everywhere and aren't gone through; only what feeds them or ties them
// to others is reached from there. Where supplies are few, they come along by themselves.
// Immutable values.

#include "core/slips/ground.h"

#include <string>
#include <vector>

namespace tiepoint {

class Scope {
public:
    struct Thing {
        bool jumper = false;
        int index = 0;
        int away = 0;  ///< steps from the symptom
    };

    /// The whole bench, in its order.
    explicit Scope(const Ground& ground);
    /// At most so many things around some parts; ids that the bench doesn't have count for nothing.
    Scope(const Ground& ground, const std::vector<std::string>& around, std::size_t most);

    const std::vector<Thing>& things() const { return things_; }
    bool isWhole() const { return whole_; }
    /// The boards that they are on; indices.
    const std::vector<int>& boards() const { return boards_; }

private:
    class Spread;

    std::vector<Thing> things_;
    std::vector<int> boards_;
    bool whole_ = false;
};

}  // namespace tiepoint
