#pragma once
// What the reading card says about one part or jumper, in words. Pure functions: figures come from the snapshot, never from here.

#include "ui/paint/picture.h"

#include <QString>
#include <QStringList>

#include <optional>
#include <string>

namespace tiepoint::ui {

struct ReadingText {
    QString title;  ///< "D1, red LED in h16 and h19"
    QString big;    ///< "9.43 mA"
    QString in;     ///< "9.43 mA" of current in; empty: not shown
    QString out;
    QString note;                 ///< "31 % of its 30 mA maximum"
    std::optional<double> share;  ///< of the rating, for the bar
    std::string part = {};        ///< whose reading it is; empty for a jumper and an empty bench
    QStringList briefer = {};     ///< the title where there is less room, the longest first: "D1 \u00b7 h16, h19", "D1"

    /// The title in all its forms, the whole first.
    QStringList titles() const { return QStringList(title) + briefer; }
    friend bool operator==(const ReadingText&, const ReadingText&) = default;
};

/// The reading of the part or jumper with that id; with an unknown or empty id, of the most interesting part.
ReadingText readingText(const Picture& picture, const std::string& id);

/// The end of a scale in volts, as short as it is exact: "5 V".
QString voltScaleWords(double volt);

}  // namespace tiepoint::ui
