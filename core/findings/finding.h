#pragma once
// Findings: what is wrong on a bench, where, and what mends it. One file a rule; the table of rules is in rules.h.

#include "core/edit/mend.h"
#include "core/parts/drawer.h"
#include "core/snapshot/snapshot.h"

#include <map>
#include <optional>
#include <string>
#include <utility>
#include <vector>

namespace tiepoint {

enum class Severity { Remark, Risk, Fault };

/// Another cause that would explain the same as well.
struct Alternative {
    std::string text;
    std::vector<std::string> parts;
    std::vector<Hole> holes;
    std::optional<Mend> mend;
};

struct Finding {
    std::string rule;  ///< "short-circuit"; of a cause the kind of slip
    Severity severity = Severity::Fault;
    std::vector<std::string> parts;  ///< ids of parts and jumpers
    std::vector<Hole> holes;
    bool alongMetal = false;  ///< the holes in their order are one path of metal, through the parts
    std::string text;         ///< one plain sentence
    std::vector<std::pair<std::string, double>> figures;    ///< the proof, SI, by name
    std::map<std::string, std::string, std::less<>> shown;  ///< of those read off a snapshot, by name: as it shows them
    std::optional<Mend> mend;
    std::vector<Alternative> alternatives;  ///< "either ... or": equally good causes
    std::vector<std::string> consequences;  ///< sentences on what goes away with the mend
};

/// Everything that the rules find about one instant, the cause first.
struct Report {
    std::uint64_t revision = 0;
    std::vector<Finding> findings;
};

/// Runs every rule of the table on a snapshot. Mends take resistors from the drawer only. Pure; safe from any thread.
Report inspect(const Snapshot& snapshot, const ResistorDrawer& drawer = {});

}  // namespace tiepoint
