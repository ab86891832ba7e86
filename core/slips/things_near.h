#pragma once
// What lies about a place: a small bench of the things there, on which the laws of placing give the same answers as on the whole one.
// Things are kept by the squares that they reach over. Keeps a reference to the bench; immutable, safe from any thread.

#include "core/bench/table.h"
#include "core/slips/bench_change.h"

#include <optional>
#include <string_view>
#include <unordered_map>
#include <vector>

namespace tiepoint {

class ThingsNear {
public:
    explicit ThingsNear(const Bench& bench);

    /// The bench of what a change moves and of everything near where that is or comes to be. Adds to `work` how much it looked at.
    Bench benchAbout(const BenchChange& change, std::size_t& work) const;

private:
    /// A part, or a jumper past the parts.
    using Thing = int;
    struct Square {
        int x, y;
        friend bool operator==(const Square&, const Square&) = default;
    };
    struct HashOfSquare {
        std::size_t operator()(const Square& square) const;
    };

    int partCount() const { return static_cast<int>(bench_.parts.size()); }
    std::vector<Thing> touched(const BenchChange& change) const;
    Rect boundsOf(Thing thing) const;
    std::optional<Point> placeOf(const Hole& hole) const;
    std::optional<Point> placeOf(const JumperEnd& end) const;
    static void addWire(const std::optional<Point>& from, const std::optional<Point>& to, std::vector<Rect>& frames);
    std::vector<Rect> framesOf(const BenchChange& change) const;
    void add(Thing thing);
    void addAlongWires(std::vector<Thing>& things, std::size_t& work) const;
    std::vector<Thing> within(const Rect& frame, std::size_t& work) const;
    Part standing(int part) const;
    std::vector<Board> boardsUnder(const std::vector<Thing>& things, const BenchChange& change) const;

    const Bench& bench_;
    Table table_;
    std::unordered_map<std::string_view, Thing> byId_;
    std::unordered_map<std::string_view, int> boards_;
    std::unordered_map<Square, std::vector<Thing>, HashOfSquare> squares_;
};

}  // namespace tiepoint
