#pragma once
// Parts, jumpers and notes that go together: all by the same columns and rows, on their boards or onto another one, so that their places
// to each other stay. Ends in rails go along: by the same columns, into the nearest free hole of the rail. Pure; safe from any thread.

#include "core/edit/clashes.h"

#include <optional>
#include <set>
#include <string>
#include <vector>

namespace tiepoint {

struct Group {
    std::vector<Part> parts;
    std::vector<Jumper> jumpers;
    std::vector<Note> notes;
    bool isEmpty() const { return parts.empty() && jumpers.empty() && notes.empty(); }
};

/// The named parts, jumpers and notes of a bench, each kind in the order of the names.
Group groupOf(const Bench& bench, const std::vector<std::string>& ids);
/// The hole by which a hand leads a thing: the first in a strip, else the first in a rail; nothing if it is in no hole.
std::optional<Hole> handleOf(const Part& part);
std::optional<Hole> handleOf(const Jumper& jumper);
std::optional<Hole> handleOf(const Bench& bench, const std::string& id);

/// How a group goes.
struct Step {
    int columns = 0, rows = 0;
    int rails = 0;         ///< of things that are in rails only: by so many rails down
    std::string from, to;  ///< what is on the one board goes to the other; empty: all stay on their boards
    bool changesBoard() const { return from != to; }
    friend bool operator==(const Step&, const Step&) = default;
};

/// The step that brings a hole to the hole of its sort (of a strip, or of a rail) nearest to a place of the bench; nothing if none lies
/// within the reach.
std::optional<Step> stepTo(const Bench& bench, const Hole& from, Point at, double reachMm);

struct MovedGroup {
    Group group;          ///< where its things would go, as far as they find holes
    std::string refused;  ///< why one of them finds none, or empty
};

/// Finds the holes of groups on one bench, for as many steps as are tried. Keeps a reference to the bench.
class GroupPlacer {
public:
    /// `away`: ids that count as taken away, such as those of the group itself when it moves.
    GroupPlacer(const Bench& bench, std::vector<std::string> away);

    /// The group after a step. Ends in rails find a free hole; whether all the rest is free is for `refusalOfChange` to say.
    MovedGroup moved(const Group& group, const Step& step) const;
    /// Whether each hole of a group is free.
    bool isFree(const Group& group) const;
    /// Whether nothing else is in the strips of its holes; rails are there to be shared.
    bool hasOwnStrips(const Group& group) const;

private:
    class Mover;
    bool isTaken(const Hole& hole) const { return taken_.contains(hole); }
    int stripOf(const Hole& hole) const;
    const Occupancy& around() const;

    const Bench& bench_;
    std::vector<std::string> away_;
    std::set<Hole> taken_;
    std::set<std::pair<std::string, int>> takenStrips_;  ///< by board
    mutable std::optional<Occupancy> around_;            ///< made when it is first needed
};

}  // namespace tiepoint
