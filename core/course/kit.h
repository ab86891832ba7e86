#pragma once
// A kit: what a class has. Lessons, sheets and mends obey it. Plain values; the format (*.kit.json) is documented in DEVELOPERS.md.

#include "core/bench/bench.h"
#include "core/parts/drawer.h"

#include <filesystem>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace tiepoint {

/// So many parts of one kind with the same values.
struct KitPart {
    Part part;
    int count = 1;
};

struct Kit {
    std::string title;
    const BoardKind* board = nullptr;  ///< null: not said
    Labels labels = Labels::ATop;
    Rails rails = Rails::Through;
    std::optional<Part> supply;  ///< nothing: not said
    std::vector<KitPart> parts;
    int jumpers = -1;  ///< -1: not said, as many as one likes
    int meters = 0;
};

/// The limit of a beginner's supply: enough for a few LEDs, too little to harm one at once (common practice), A.
inline constexpr double kBeginnersLimitAmpere = 0.05;

/// What most classes have: half boards, a supply of 5 V limited to 50 mA, E12 resistors, red and green LEDs, buttons.
Kit usualKit();
/// The resistors of a kit, for mends.
ResistorDrawer drawerOf(const Kit& kit);
/// The kit with these resistors in place of its own, many of each.
Kit withResistors(Kit kit, const ResistorDrawer& drawer);

/// Whether a value tells parts in a drawer apart: what people ask for, but not how exact a part is and what it bears.
bool tellsApart(const ValueSpec& spec);
/// Whether people take two parts out of the same compartment: alike in what they ask for, not in how exact a part is and what it bears.
bool isSameInDrawer(const Part& a, const Part& b);
/// Whether the kit has such a part at all; of supplies, the kit's own kind.
bool hasPart(const Kit& kit, const Part& part);
/// The parts of a bench that the kit lacks, or has too few of, as one asks for them: "470 Ω resistor", "two green LEDs (one there)".
std::vector<std::string> lackingIn(const Kit& kit, const Bench& bench);
/// What lies on the table to begin with: the kit's board and its supply.
Bench newBenchWith(const Kit& kit);

struct ReadKit {
    Kit kit;
    std::vector<Error> warnings;
};
Result<ReadKit> readKit(std::string_view text);
Result<ReadKit> readKitFile(const std::filesystem::path& path);
std::string writeKit(const Kit& kit);
Result<Done> writeKitFile(const Kit& kit, const std::filesystem::path& path);

}  // namespace tiepoint
