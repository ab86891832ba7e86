#pragma once
// The Board menu: adds boards, and for each that stands there moves it, breaks its rails, letters it from the other edge, and removes it while
// it is empty. Made anew each time it opens, since its lines name the boards that stand there.

#include "core/edit/boards.h"
#include "ui/document/bench_document.h"

#include <QMenu>

namespace tiepoint::ui {

class BoardMenu : public QMenu {
    Q_OBJECT
public:
    BoardMenu(BenchDocument& document, QWidget* parent);

Q_SIGNALS:
    /// Why something can't be done with a board.
    void refused(const QString& why, const QString& board);
    /// What something has done to a board, where it isn't plain to see.
    void said(const QString& words, const QString& board);
    /// The board is to be moved by arrow keys or by the pointer.
    void moveWanted(const QString& board);

private:
    void fill();
    void addMoves(QMenu& menu, const Board& board);
    void push(const Result<Edit>& edit, const std::string& board);
    void turnRails(const std::string& board);

    BenchDocument& document_;
};

}  // namespace tiepoint::ui
