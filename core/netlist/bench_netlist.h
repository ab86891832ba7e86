#pragma once
// The circuit of a bench without its places: jumpers and strips become nets.

#include "core/netlist/netlist.h"
#include "core/nets/layout.h"

#include <map>
#include <string>

namespace tiepoint {

/// Names that a person gave to nets, by the layout's net number.
using GivenNetNames = std::map<int, std::string>;

/// The circuit that a bench is. A net that only one terminal of one part touches joins nothing: such leads hang. A net keeps the name
/// that it was given; else it is called after one of its leads, "PS1.+": that of a supply where there is one, then the first in natural
/// order of ids, so that names don't change with places, jumpers and the order of the file. What a part has for its place alone is left out.
Netlist netlistOf(const Layout& layout, const GivenNetNames& given = {});

}  // namespace tiepoint
