#pragma once
// Slips of the first build that lie in no hole: a supply that is shorted, off or weak, a part that is broken inside, a value that lets hardly
// anything through. Pure; safe from any thread.

#include "core/lesson/first_slips.h"

namespace tiepoint {

/// Whatever else is wrong: plus and minus of the supply are one piece of metal. None where nothing that can be taken out parts them.
std::optional<FirstSlip> shortedSupply(const Layout& layout, const FirstChain& chain, const FirstMends& mends);

/// Why a loop that is closed the right way round stays dark. Requires all parts of the chain.
FirstSlip whyDark(const Bench& bench, const FirstChain& chain);

}  // namespace tiepoint
