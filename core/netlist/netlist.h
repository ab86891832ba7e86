#pragma once
// A circuit without places: which parts there are and which of their leads meet, and nothing about boards, holes and wires.
// Read from a bench (bench_netlist.h) or from a file (circuit_file.h). Plain values; safe to share once made.

#include "core/base/result.h"
#include "core/bench/bench.h"

#include <string>
#include <string_view>
#include <vector>

namespace tiepoint {

struct Netlist {
    std::string title;
    std::vector<Part> parts;              ///< what each is. Their own leads hang and they have no place: `leads` counts
    std::vector<std::vector<int>> leads;  ///< by part, by the kind's lead index: a net, or -1 where it hangs free
    std::vector<std::string> nets;        ///< names, in the order in which the leads of the parts meet them
    Extras extras;
    friend bool operator==(const Netlist&, const Netlist&) = default;

    int partIndex(std::string_view id) const;   ///< -1 if there is none
    int netIndex(std::string_view name) const;  ///< -1 if there is none
};

/// The longest name of a net, in bytes.
inline constexpr std::size_t kLongestNetName = 100;

/// Whether the text may name a net: printable, in one line, of 1 to kLongestNetName bytes.
bool isNetName(std::string_view text);

/// Adds a part whose leads hang. Returns its index.
int addPart(Netlist& netlist, Part part);
/// Numbers the nets anew, in the order in which the leads of the parts meet them; those without a lead go.
void renumberNets(Netlist& netlist);

/// What every netlist fulfils: ids, values and states as on a bench, names of nets that are unique and printable, nets in the order
/// above. The error's pointer is that of the file. Linear in the size of the circuit.
Result<Done> validate(const Netlist& netlist);

/// The leads that are one piece of metal inside their part, and where each such terminal goes. Nets that a part's own metal joins count
/// as one.
struct Terminals {
    std::vector<int> rootOfNet;            ///< by net: the first of those that are one with it
    std::vector<int> firstOfPart;          ///< by part, with one entry more at the end: its first terminal
    std::vector<int> netOf;                ///< by terminal: net (a root), or -1
    std::vector<std::vector<int>> ofLead;  ///< by part, by lead: its terminal
    int countOf(int part) const { return firstOfPart[part + 1] - firstOfPart[part]; }
};
Terminals terminalsOf(const Netlist& netlist);

}  // namespace tiepoint
