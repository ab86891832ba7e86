#pragma once
// What quantities ask of a kind of part: a part made to order, or why there is none of it. Pure functions of the catalogue.

#include "core/base/said_quantity.h"
#include "ui/tray/tray_items.h"

#include <span>

namespace tiepoint::ui {

/// What came of asking a kind for quantities.
struct Wish {
    enum class Answer {
        Made,        ///< the part is in `items.front()`
        BetweenTwo,  ///< the same, and the value is no preferred one; those next to it stand behind
        NotMade,     ///< it comes in some values only; those next to it are the items
        OutOfRange,
        NoSuchValue,  ///< nothing about this kind is measured so
    };
    Answer answer = Answer::NoSuchValue;
    std::vector<TrayItem> items;
    QString words;  ///< what is to be said; empty for Made
};

/// Whether a part has a quantity already: as one of the values that people ask for, or in the name of its kind ("9 V block").
bool hasQuantity(const Part& part, const SaidQuantity& quantity);

/// Asks for a part of a kind with all quantities. Those that its usual part has already needn't be set.
Wish wishFor(const PartKind& kind, std::span<const SaidQuantity> quantities);

}  // namespace tiepoint::ui
