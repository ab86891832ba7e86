#include "core/edit/swap.h"

namespace tiepoint {

Edit swapEdit(const Bench& bench, const std::string& id) {
    Edit edit{"Swap " + id, {}};
    if (const Part* part = bench.findPart(id)) {
        ReplacePart replace{*part};
        replace.part.condition = Condition::Sound;
        edit.operations.emplace_back(std::move(replace));
    } else if (const Jumper* jumper = bench.findJumper(id)) {
        ReplaceJumper replace{*jumper};
        replace.jumper.condition = Condition::Sound;
        edit.operations.emplace_back(std::move(replace));
    }
    return edit;
}

}  // namespace tiepoint
