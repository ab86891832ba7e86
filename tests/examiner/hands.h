#pragma once
// What the kinds of slip have in common: things in holes, picked and moved by chance. Private to the examiner.

#include "examiner/slip.h"

namespace tiepoint::examiner {

/// A part's lead or a jumper's end that is in a hole.
struct Pin {
    std::string id;
    int lead = 0;
    bool jumper = false;
    Hole hole;
};
std::vector<Pin> pinsOf(const Bench& bench);
std::vector<Pin> pinsOf(const Bench& bench, bool jumpers);
/// One of those for which it holds; nothing where there is none.
template <class Items, class Test>
auto pick(const Items& items, Chance& chance, Test suits) -> std::optional<typename Items::value_type> {
    Items found;
    for (const auto& item : items) {
        if (suits(item)) found.push_back(item);
    }
    if (found.empty()) return {};
    return chance.oneOf(found);
}

std::string nameOf(const Bench& bench, const Pin& pin);
/// Puts a lead or an end elsewhere.
void put(Bench& bench, const Pin& pin, const Hole& to);
bool isTaken(const Bench& bench, const Hole& hole);
bool exists(const Bench& bench, const Hole& hole);
/// A free hole of the strip of another, that one left out; nothing where there is none.
std::optional<Hole> besideIn(const Bench& bench, const Hole& hole, Chance& chance);
bool sameStrip(const Bench& bench, const Hole& one, const Hole& other);

Part& partOf(Bench& bench, const std::string& id);
/// Everything in the strip of a hole but what belongs to `except`.
std::vector<Pin> othersIn(const Bench& bench, const Hole& hole, const std::string& except);

/// A slip of one thing, with the holes of all its leads before and after.
Slip changedPart(const Bench& before, const Part& after, std::string words);
/// A slip that moved one pin.
Slip movedPin(const Bench& before, const Pin& pin, const Hole& to);

// The kinds, by file.
std::vector<SlipKind> pinSlips();
std::vector<SlipKind> partSlips();
std::vector<SlipKind> jumperSlips();
std::vector<SlipKind> settingSlips();
std::vector<SlipKind> conditionSlips();

}  // namespace tiepoint::examiner
