#include "ui/window/board_menu.h"

#include "core/bench/describe.h"
#include "core/edit/boards.h"

namespace tiepoint::ui {

BoardMenu::BoardMenu(BenchDocument& document, QWidget* parent)
    : QMenu(QStringLiteral("&Board"), parent),
      document_(document) {
    connect(this, &QMenu::aboutToShow, this, &BoardMenu::fill);
    fill();
}

void BoardMenu::push(const Edit& edit) {
    if (const auto why = document_.push(edit)) Q_EMIT refused(*why);
}

void BoardMenu::fill() {
    clear();
    for (const BoardKind& kind : boardKinds()) {
        Board sample;
        sample.kind = &kind;
        QAction* add =
            addAction(QStringLiteral("Add: %1").arg(QString::fromStdString(describeBoard(sample)).toLower()));
        connect(add, &QAction::triggered, this, [this, &kind] { push(dockBoardEdit(*document_.bench(), kind)); });
    }
    for (const Board& board : document_.bench()->boards) {
        addSeparator();
        const std::string id = board.id;
        const QString name = QString::fromStdString(id);
        const bool fromTop = board.labels == Labels::ATop;
        QAction* turn = addAction(fromTop ? QStringLiteral("Letter board %1 from the bottom").arg(name)
                                          : QStringLiteral("Letter board %1 from the top").arg(name));
        connect(turn, &QAction::triggered, this, [this, id] { push(turnLabelsEdit(*document_.bench(), id)); });
        QAction* remove = addAction(QStringLiteral("Remove board %1").arg(name));
        connect(remove, &QAction::triggered, this, [this, id] {
            const auto edit = removeBoardEdit(*document_.bench(), id);
            if (edit.ok())
                push(*edit);
            else
                Q_EMIT refused(QString::fromStdString(edit.error().message));
        });
    }
}

}  // namespace tiepoint::ui
