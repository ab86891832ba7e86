#pragma once
// The nets of a bench as a person reads them: what is plugged into each. Nets with nothing in them are left out,
// and the others are numbered from 0 in the order of the layout.

#include "app/json_writer.h"
#include "core/nets/layout.h"

#include <string>
#include <vector>

namespace tiepoint::app {

struct NetMembers {
    int net = 0;                     ///< the layout's number
    std::vector<std::string> holes;  ///< occupied ones, in the order of the board
    std::vector<std::string> leads;  ///< "R1.1"
    std::vector<std::string> jumpers;
};

std::vector<NetMembers> netMembers(const Layout& layout);

/// The members "holes", "leads" and "jumpers" of an object that is open in `json`.
void writeMembers(JsonWriter& json, const NetMembers& members);
/// One line of the same: "A.top+3 A.a8   PS1.+ R1.1   W1".
std::string membersText(const NetMembers& members);

}  // namespace tiepoint::app
