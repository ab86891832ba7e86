#pragma once
// What becomes of the nets that a change touches, for CircuitDigest. One for each change; made and thrown away.

#include "core/slips/circuit_digest.h"

#include <cstdint>
#include <unordered_map>
#include <vector>

namespace tiepoint {

/// A number with its bits thrown about.
std::uint64_t mixedNumber(std::uint64_t number);
/// What a net with that sum of leads adds to the digest; an empty one nothing.
inline std::uint64_t numberOfNet(std::uint64_t sum) { return sum == 0 ? 0 : mixedNumber(sum); }

class ChangedNets {
public:
    explicit ChangedNets(const CircuitDigest& circuit) : circuit_(circuit) {}

    /// By how much the digest changes with the nets.
    std::uint64_t difference(const BenchChange& change);
    std::size_t work() const { return work_; }

private:
    using Vertex = CircuitDigest::Vertex;
    struct Piece {
        std::uint64_t sum = 0;
        int joinedTo = -1;  ///< the piece that it is one with, or -1
    };
    /// How a net that something is taken from falls apart.
    struct Parted {
        int net = -1;
        std::vector<int> joins;                   ///< what is taken away
        int first = -1;                           ///< its first piece
        Vertex below = -1;                        ///< the second is what hangs below this; -1: there is none
        std::unordered_map<Vertex, int> pieceOf;  ///< where several joins go: the piece of each vertex
    };

    void readParts(const BenchChange& change);
    void readJumpers(const BenchChange& change);
    void movePart(int index, const Part& part);
    void takeJoin(int join);
    void part(Parted& parted);
    void walkApart(Parted& parted);
    Parted* partedOf(int net);
    int pieceOf(Vertex vertex);
    int rootOf(int piece) const;

    struct MovedLead {
        int lead;
        Vertex from, to;
    };
    const CircuitDigest& circuit_;
    std::vector<MovedLead> moved_;
    std::vector<std::pair<Vertex, Vertex>> joined_;
    std::vector<Parted> parted_;
    std::unordered_map<Vertex, int> pulledOut_;  ///< by lead that comes to hang: its piece
    std::unordered_map<int, int> whole_;         ///< by net that is only added to: its piece
    std::vector<Piece> pieces_;
    std::vector<int> nets_;
    std::size_t work_ = 0;
};

}  // namespace tiepoint
