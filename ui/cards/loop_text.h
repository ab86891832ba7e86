#pragma once
// What the second card says about the whole bench: the drops once round a simple loop, else the sum where the current divides,
// else what the supplies give. Pure functions of a picture; figures come from the snapshot.

#include "ui/paint/picture.h"

#include <QString>

#include <string>
#include <vector>

namespace tiepoint::ui {

/// A piece of the bar once round the loop.
struct DropText {
    std::string part;
    QString volts;                      ///< "3.09 V"
    double share = 0;                   ///< of the whole loop, 0..1
    double fromShare = 0, toShare = 0;  ///< of the largest potential, for the colours of the voltage view
    QString fromVolts, toVolts;
    friend bool operator==(const DropText&, const DropText&) = default;
};

/// One current at a branch point, "9.36 mA" through "W1".
struct BranchText {
    QString current;
    QString where;
    double ampere = 0;
    friend bool operator==(const BranchText&, const BranchText&) = default;
};

struct LoopText {
    QString title;
    std::vector<DropText> drops;      ///< once round the loop
    std::vector<BranchText> in, out;  ///< at a branch point: what comes in equals what goes out
    QString big;                      ///< what the supplies give
    QString note;
    friend bool operator==(const LoopText&, const LoopText&) = default;
};

/// `id` is the part or jumper pointed at, whose branch point is preferred; may be empty.
LoopText loopText(const Picture& picture, const std::string& id);

}  // namespace tiepoint::ui
