#pragma once
// A bench's boards on paper: parts at rest, nothing lit, no arrows, in the flat look that prints well and needs no colour to be read. Drawn by
// the painters of the screen.

#include "core/bench/bench.h"

#include <QPainter>

#include <memory>
#include <string>
#include <vector>

namespace tiepoint::ui {

struct BoardOnPaper {
    std::shared_ptr<const Bench> bench;
    std::vector<std::string> bracketed;  ///< brackets stand round these
    std::vector<Hole> ringed;            ///< rings round these
    double scale = 1;                    ///< 1: true size
    /// Words above or below the board, on a line to a hole.
    struct Label {
        Hole at;
        QString words;
    };
    std::vector<Label> labels;
};

/// How large it is on paper, mm.
QSizeF sizeOnPaper(const BoardOnPaper& board);
/// Draws it with its top left corner there; the painter's unit is a millimetre of the paper.
void paintOnPaper(QPainter& painter, QPointF topLeft, const BoardOnPaper& board);

/// The boards without the boxes that stand on the table: their leads, and jumpers into their sockets, are told by labels.
BoardOnPaper boardsAlone(const Bench& bench);

/// The bench with only these of its parts and jumpers, without notes and pinned readings.
Bench onlyThese(const Bench& bench, const std::vector<std::string>& ids);

}  // namespace tiepoint::ui
