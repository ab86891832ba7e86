#pragma once
// What a screen reader says about the pieces of a bench. Pure functions of a picture; figures come from the snapshot.

#include "ui/paint/picture.h"

#include <QString>

namespace tiepoint::ui {

QString benchWords(const Picture& picture);
/// What stands beside the pointer, such as why something is refused, and then the same.
QString saidWords(const Picture& picture);                    ///< "Beacon lamp, current flows"
QString boardWordsFor(const Picture& picture, int board);     ///< "Board A, half board, 400 tie points"
QString holeWords(const Picture& picture, const Hole& hole);  ///< "e14, S1 leg 1a, 1.91 V"
QString partWords(const Picture& picture, int part);          ///< "D1, red LED"
QString leadsWords(const Picture& picture, int part);         ///< "anode in h16, cathode in h19"
QString jumperWords(const Picture& picture, int jumper);      ///< "W1, red jumper from top+7 to a8"
QString netWords(const Picture& picture, int net);            ///< "Net of a8, c8 and R1 leg 1"
/// What a pinned reading measures, and what it reads.
QString pinnedWords(const Picture& picture, const std::string& id);
QString pinnedFigure(const Picture& picture, const std::string& id);
QString noteWords(const Picture& picture, int note);  ///< "Note at e12: High water"
/// The reading of a part or jumper, "9.43 mA, 31 % of its 30 mA maximum"; empty without a solution.
QString readingWords(const Picture& picture, const std::string& id);
/// "1.91 V", "joined to nothing", or empty without a solution.
QString voltsWords(const Picture& picture, int net);

}  // namespace tiepoint::ui
