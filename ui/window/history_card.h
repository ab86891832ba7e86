#pragma once
// The history card: every edit by its name, from how the bench was opened to the last one; a click or an arrow key goes to any of them.
// An overlay at the right of the bench that nothing waits for.

#include "ui/theme/look.h"
#include "ui/theme/words.h"

#include <QUndoStack>
#include <QUndoView>
#include <QWidget>

namespace tiepoint::ui {

class HistoryCard : public QWidget {
    Q_OBJECT
public:
    HistoryCard(QUndoStack& stack, QWidget* parent);

    void setLook(const Look& look);
    /// Stands along the right edge of a frame of the parent's.
    void placeIn(const QRect& frame);
    QUndoView& list() const { return *list_; }

Q_SIGNALS:
    void closed();

protected:
    void paintEvent(QPaintEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;

private:
    Look look_;
    WordSheet sheet_{this};
    QUndoView* list_;
};

}  // namespace tiepoint::ui
