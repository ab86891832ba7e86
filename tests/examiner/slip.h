#pragma once
// Slips that beginners make, drawn by chance on a sound bench. Each leaves a bench that can be built and that behaves otherwise somewhere,
// or breaks a law. How often each is drawn is common practice: no published table of frequencies is known.

#include "examiner/behaviour.h"
#include "examiner/chance.h"

#include <functional>
#include <optional>
#include <span>
#include <string_view>

namespace tiepoint::examiner {

/// A slip as it was made.
struct Slip {
    std::string kind;                 ///< "leg off by columns"
    std::string words;                ///< "R1.2 from A.c5 to A.c6"
    Bench bench;                      ///< afterwards
    std::vector<std::string> things;  ///< ids of the parts, jumpers or boards that it touched
    std::vector<Hole> holes;          ///< where it moved something from and to
};

/// A kind of slip: nothing where the draw finds no place for it. The bench that it leaves needn't be one that can be.
struct SlipKind {
    std::string_view name;
    double weight;
    std::function<std::optional<Slip>(const Bench&, Chance&)> draw;
};
std::span<const SlipKind> slipKinds();

/// A bench and what its maker wanted.
struct Case {
    Bench wanted;
    std::vector<Slip> slips;  ///< the last one's bench is the case's
    std::vector<Position> positions;
    Behaviour wantedBehaviour, behaviour;

    const Bench& bench() const { return slips.empty() ? wanted : slips.back().bench; }
};

/// A case with so many independent slips, each of which matters beside the others; nothing where none was found. `parked` parts take no slip.
std::optional<Case> drawCase(const Bench& wanted, const std::set<std::string>& parked, int slips, Chance& chance);

}  // namespace tiepoint::examiner
