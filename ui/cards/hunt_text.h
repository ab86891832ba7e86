#pragma once
// What the cards of a hunt show, as plain values.

#include <QImage>
#include <QString>

#include <string>
#include <vector>

namespace tiepoint::ui {

/// One reading, with the number that it has everywhere.
struct HuntRow {
    std::string id;  ///< of the pinned reading that marks it on the bench
    int number = 0;
    QString place;        ///< "a7"
    QString shown;        ///< "5.00 V"
    QString when;         ///< "S1 pressed"; empty at rest
    QString where;        ///< "before W2", as the guess stands; may be empty
    double share = 0;     ///< of the bar, 0..1
    bool chosen = false;  ///< as evidence
    bool usable = true;   ///< it was taken in this window, so that it can be proof
};

/// A part or jumper that may be to blame.
struct HuntThing {
    std::string id;
    QImage picture;  ///< may be null
};

}  // namespace tiepoint::ui
