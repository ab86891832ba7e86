#include "ui/window/board_menu.h"

#include "core/bench/describe.h"
#include "core/edit/boxes.h"
#include "ui/theme/qs.h"

namespace tiepoint::ui {
namespace {

struct SideLine {
    Side side;
    const char* words;
};
constexpr std::array kSideLines{SideLine{Side::Left, "To the left of board %1"},
                                SideLine{Side::Right, "To the right of board %1"},
                                SideLine{Side::Above, "Above board %1"}, SideLine{Side::Below, "Below board %1"}};

}  // namespace

BoardMenu::BoardMenu(BenchDocument& document, QWidget* parent)
    : QMenu(QStringLiteral("&Board"), parent),
      document_(document) {
    connect(this, &QMenu::aboutToShow, this, &BoardMenu::fill);
    fill();
}

void BoardMenu::push(const Result<Edit>& edit, const std::string& board) {
    if (!edit) return void(Q_EMIT refused(qs(edit.error().message), qs(board)));
    if (const auto why = document_.push(*edit)) Q_EMIT refused(*why, qs(board));
}

/// What a break parts is said at once; the bench shows it.
void BoardMenu::turnRails(const std::string& board) {
    const auto before = document_.bench();
    push(turnRailsEdit(*before, board), board);
    const std::string parted = partedByRails(*before, *document_.bench(), board);
    if (!parted.empty()) Q_EMIT said(qs("Board " + board + ": " + parted + "."), qs(board));
}

void BoardMenu::addMoves(QMenu& menu, const Board& board) {
    const std::string id = board.id;
    QMenu* moves = menu.addMenu(QStringLiteral("Move board %1").arg(qs(id)));
    for (const Board& other : document_.bench()->boards) {
        if (other.id == id) continue;
        for (const SideLine& line : kSideLines) {
            QAction* dock = moves->addAction(QString::fromUtf8(line.words).arg(qs(other.id)));
            connect(dock, &QAction::triggered, this, [this, id, beside = other.id, side = line.side] {
                push(moveBoardBesideEdit(*document_.bench(), id, beside, side), id);
            });
        }
        moves->addSeparator();
    }
    QAction* carry = moves->addAction(QStringLiteral("With the &arrow keys"));
    connect(carry, &QAction::triggered, this, [this, id] { Q_EMIT moveWanted(qs(id)); });
}

void BoardMenu::fill() {
    clear();
    for (const BoardKind& kind : boardKinds()) {
        Board sample;
        sample.kind = &kind;
        QAction* add = addAction(QStringLiteral("Add: %1").arg(qs(describeBoard(sample)).toLower()));
        connect(add, &QAction::triggered, this, [this, &kind] { push(dockBoardEdit(*document_.bench(), kind), {}); });
    }
    for (const Board& board : document_.bench()->boards) {
        addSeparator();
        const std::string id = board.id;
        const QString name = qs(id);
        addMoves(*this, board);
        if (board.kind->hasRails()) {
            const bool through = board.rails == Rails::Through;
            QAction* rails = addAction(through ? QStringLiteral("Split the rails of board %1").arg(name)
                                               : QStringLiteral("Join the rails of board %1").arg(name));
            connect(rails, &QAction::triggered, this, [this, id] { turnRails(id); });
        }
        const bool fromTop = board.labels == Labels::ATop;
        QAction* turn = addAction(fromTop ? QStringLiteral("Letter board %1 from the bottom").arg(name)
                                          : QStringLiteral("Letter board %1 from the top").arg(name));
        connect(turn, &QAction::triggered, this, [this, id] { push(turnLabelsEdit(*document_.bench(), id), id); });
        QAction* remove = addAction(QStringLiteral("Remove board %1").arg(name));
        connect(remove, &QAction::triggered, this, [this, id] { push(removeBoardEdit(*document_.bench(), id), id); });
    }
    addSeparator();
    for (const Part& part : document_.bench()->parts) {
        if (!part.at) continue;
        QAction* home = addAction(QStringLiteral("Put %1 beside the boards").arg(qs(part.id)));
        connect(home, &QAction::triggered, this,
                [this, id = part.id] { push(boxHomeEdit(*document_.bench(), id), {}); });
    }
}

}  // namespace tiepoint::ui
