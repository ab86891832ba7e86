#pragma once
// What the card of the potential walk shows, in words and figures. Pure functions of a picture; the walk comes from core.

#include "ui/paint/picture.h"

#include <QString>
#include <QStringList>

#include <string>
#include <vector>

namespace tiepoint::ui {

/// From one place of the walk to the next.
struct WalkMove {
    std::string thing;  ///< the part or jumper that is passed; empty along a strip
    bool isPart = false;
    QString figure;  ///< of a part: "\u22123.09 V"
    friend bool operator==(const WalkMove&, const WalkMove&) = default;
};

struct WalkText {
    QString title;
    QString note;                  ///< where the current divides, or why there is no walk
    QStringList briefer;           ///< the note where there is less room
    std::vector<QString> places;   ///< "b14"
    std::vector<double> volts;     ///< by place, for the plot
    std::vector<QString> figures;  ///< the same in words
    std::vector<WalkMove> moves;   ///< one fewer than places
    QString spoken;                ///< all of it, for those who hear it
    friend bool operator==(const WalkText&, const WalkText&) = default;
};

/// The walk round the loop of that part; with an unknown or empty id, of the supply that gives most.
WalkText walkText(const Picture& picture, const std::string& id);

/// The axis of a plot: from `low` to `high` in steps of 1, 2 or 5 x 10^n, zero among them.
struct AxisTicks {
    double low = 0, high = 1, step = 1;
    int count() const;
};
AxisTicks ticksFor(double least, double most);

}  // namespace tiepoint::ui
