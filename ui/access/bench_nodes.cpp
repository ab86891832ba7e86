// Nodes hold what they are by address or id, never a pointer into a bench, and look it up when asked: benches change under a screen
// reader's hands. A node whose thing is gone says that it is invalid and is dropped at the next look.

#include "ui/access/bench_nodes.h"

#include "core/edit/placement.h"
#include "ui/access/bench_words.h"
#include "ui/paint/bench_painter.h"
#include "ui/paint/note_painter.h"
#include "ui/theme/qs.h"
#include "ui/view/bench_marks.h"

#include <QApplication>
#include <QKeyEvent>

#include <algorithm>

namespace tiepoint::ui {
namespace {

constexpr int kLineCount = kRowCount + kRailCount;
constexpr double kHoleHalfMm = 1.27;

template <class Item>
int indexOf(const std::vector<Item>& items, const std::string& id) {
    const auto found = std::find_if(items.begin(), items.end(), [&](const Item& item) { return item.id == id; });
    return found == items.end() ? -1 : static_cast<int>(found - items.begin());
}

/// Nets that something is plugged into.
std::vector<int> usedNets(const Picture& picture) {
    std::vector<int> nets;
    for (int net = 0; net < picture.layout->netCount; ++net)
        if (picture.layout->netUsed[static_cast<std::size_t>(net)]) nets.push_back(net);
    return nets;
}

std::vector<NodeName> childrenOf(const Picture& picture) {
    const Bench& bench = picture.bench();
    std::vector<NodeName> names;
    for (const Board& board : bench.boards) names.push_back({NodeKind::Board, board.id});
    for (const Part& part : bench.parts) names.push_back({NodeKind::Part, part.id});
    for (const Jumper& jumper : bench.jumpers) names.push_back({NodeKind::Jumper, jumper.id});
    for (const int net : usedNets(picture)) names.push_back({NodeKind::Net, std::to_string(net)});
    for (const Note& note : bench.notes) names.push_back({NodeKind::Note, note.id});
    for (const PinnedReading& reading : bench.pinned) names.push_back({NodeKind::Pinned, reading.id});
    return names;
}

std::vector<NodeName> holesOf(const Board& board) {
    std::vector<NodeName> names;
    for (int index = 0; index < kLineCount; ++index) {
        const Line line = static_cast<Line>(index);
        const int count = isRail(line) ? board.kind->railHoles : board.kind->columns;
        for (int number = 1; number <= count; ++number)
            names.push_back({NodeKind::Hole, toString(Hole{board.id, line, number})});
    }
    return names;
}

/// One thing on the bench.
class BenchNode : public QAccessibleInterface, public QAccessibleActionInterface {
public:
    BenchNode(const BenchRoot& root, NodeName name) : root_(root), name_(std::move(name)) {}

    const NodeName& name() const { return name_; }

    bool isValid() const override {
        const Bench& bench = root_.picture().bench();
        switch (name_.kind) {
            case NodeKind::Board:
                return bench.findBoard(name_.id) != nullptr;
            case NodeKind::Hole:
                return hole() && holeMm(bench, *hole()).has_value();
            case NodeKind::Part:
                return bench.findPart(name_.id) != nullptr;
            case NodeKind::Jumper:
                return bench.findJumper(name_.id) != nullptr;
            case NodeKind::Note:
                return bench.findNote(name_.id) != nullptr;
            case NodeKind::Pinned:
                return bench.findPinned(name_.id) != nullptr;
            case NodeKind::Net:
                return net() < root_.picture().layout->netCount;
        }
        return false;
    }
    QObject* object() const override { return nullptr; }
    QWindow* window() const override { return root_.window(); }

    QAccessibleInterface* parent() const override {
        const bool inBoard = name_.kind == NodeKind::Hole && hole();
        return inBoard ? root_.nodeOf({NodeKind::Board, hole()->board}) : const_cast<BenchRoot*>(&root_);
    }
    int childCount() const override { return static_cast<int>(holes().size()); }
    QAccessibleInterface* child(int index) const override {
        const auto names = holes();
        return index >= 0 && index < static_cast<int>(names.size())
                   ? root_.nodeOf(names[static_cast<std::size_t>(index)])
                   : nullptr;
    }
    int indexOfChild(const QAccessibleInterface* child) const override {
        const auto names = holes();
        const auto* node = dynamic_cast<const BenchNode*>(child);
        const auto found = node ? std::find(names.begin(), names.end(), node->name()) : names.end();
        return found == names.end() ? -1 : static_cast<int>(found - names.begin());
    }
    QAccessibleInterface* childAt(int, int) const override { return nullptr; }

    QAccessible::Role role() const override {
        switch (name_.kind) {
            case NodeKind::Board:
                return QAccessible::Table;
            case NodeKind::Hole:
                return QAccessible::Cell;
            case NodeKind::Part:
                return canPress() ? QAccessible::Button : QAccessible::Graphic;
            case NodeKind::Jumper:
                return QAccessible::Graphic;
            case NodeKind::Net:
                return QAccessible::Grouping;
            case NodeKind::Note:
                return QAccessible::Note;
            case NodeKind::Pinned:
                return QAccessible::StaticText;
        }
        return QAccessible::NoRole;
    }

    QAccessible::State state() const override {
        QAccessible::State state;
        if (!isValid()) {
            state.invalid = true;
            return state;
        }
        state.readOnly = true;
        if (name_.kind == NodeKind::Hole) {
            state.focusable = true;
            state.focused = root_.view().cursor() == hole() && root_.view().hasFocus();
        } else if (name_.kind != NodeKind::Board && name_.kind != NodeKind::Net) {
            state.selectable = true;
            state.selected = root_.view().selection().contains(qs(name_.id));
        }
        if (name_.kind == NodeKind::Part) {
            const Snapshot* live = root_.picture().snapshot.get();
            state.pressed = live && live->inputs->held.contains(name_.id);
        }
        return state;
    }

    QRect rect() const override {
        if (!isValid()) return {};
        const QRectF mm = areaMm();
        const BenchView& view = root_.view();
        const QRectF inView(view.fromMm({mm.left(), mm.top()}), view.fromMm({mm.right(), mm.bottom()}));
        return {view.viewport()->mapToGlobal(inView.topLeft().toPoint()), inView.size().toSize()};
    }

    QString text(QAccessible::Text what) const override {
        if (!isValid()) return {};
        if (what == QAccessible::Name) return nameWords();
        if (what == QAccessible::Value) return valueWords();
        if (what == QAccessible::Description && name_.kind == NodeKind::Part)
            return leadsWords(root_.picture(), index());
        return {};
    }
    void setText(QAccessible::Text, const QString&) override {}

    void* interface_cast(QAccessible::InterfaceType type) override {
        return type == QAccessible::ActionInterface ? static_cast<QAccessibleActionInterface*>(this) : nullptr;
    }
    QStringList actionNames() const override {
        if (name_.kind == NodeKind::Board || name_.kind == NodeKind::Net) return {};
        return canPress() ? QStringList{pressAction(), setFocusAction()} : QStringList{setFocusAction()};
    }
    void doAction(const QString& action) override {
        if (!isValid()) return;
        BenchView& view = root_.view();
        view.setFocus(Qt::OtherFocusReason);
        if (name_.kind == NodeKind::Hole) return view.setCursorHole(hole());
        view.setSelection({qs(name_.id)});
        if (action != pressAction()) return;
        for (const auto type : {QEvent::KeyPress, QEvent::KeyRelease}) {
            QKeyEvent space(type, Qt::Key_Space, Qt::NoModifier, QStringLiteral(" "));
            QApplication::sendEvent(&view, &space);
        }
    }
    QStringList keyBindingsForAction(const QString&) const override { return {}; }

private:
    std::optional<Hole> hole() const { return parseHole(name_.id); }
    int net() const { return std::stoi(name_.id); }
    int index() const {
        const Bench& bench = root_.picture().bench();
        return name_.kind == NodeKind::Part ? bench.partIndex(name_.id) : bench.jumperIndex(name_.id);
    }
    bool canPress() const {
        const Part* part = name_.kind == NodeKind::Part ? root_.picture().bench().findPart(name_.id) : nullptr;
        return part && (part->kind->hasCap || part->kind->hasControl());
    }
    std::vector<NodeName> holes() const {
        const Board* board = name_.kind == NodeKind::Board ? root_.picture().bench().findBoard(name_.id) : nullptr;
        return board ? holesOf(*board) : std::vector<NodeName>{};
    }

    QRectF areaMm() const {
        const Picture& picture = root_.picture();
        switch (name_.kind) {
            case NodeKind::Board: {
                const Rect frame = picture.bench().findBoard(name_.id)->frameMm();
                return {frame.left, frame.top, frame.width, frame.height};
            }
            case NodeKind::Hole: {
                const Point at = picture.seenAt(*hole());
                return {at.x - kHoleHalfMm, at.y - kHoleHalfMm, 2 * kHoleHalfMm, 2 * kHoleHalfMm};
            }
            case NodeKind::Part:
                return partShape(picture, index()).boundingRect();
            case NodeKind::Jumper:
                return jumperShape(picture, index()).boundingRect();
            case NodeKind::Note:
                return noteFrame(picture, indexOf(picture.bench().notes, name_.id));
            case NodeKind::Pinned: {
                const PinnedTag* tag = picture.pinnedTag(name_.id);
                return tag ? tag->frame : QRectF();
            }
            case NodeKind::Net:
                break;
        }
        QRectF around;
        for (const Joint& joint : picture.layout->joints) {
            if (joint.net != net() || joint.hole < 0) continue;
            const Point at = picture.seenAt(picture.layout->holeAt(joint.hole));
            around |= QRectF(at.x - kHoleHalfMm, at.y - kHoleHalfMm, 2 * kHoleHalfMm, 2 * kHoleHalfMm);
        }
        return around;
    }

    QString nameWords() const {
        const Picture& picture = root_.picture();
        switch (name_.kind) {
            case NodeKind::Board:
                return boardWordsFor(picture, indexOf(picture.bench().boards, name_.id));
            case NodeKind::Hole:
                return holeWords(picture, *hole());
            case NodeKind::Part:
                return partWords(picture, index());
            case NodeKind::Jumper:
                return jumperWords(picture, index());
            case NodeKind::Net:
                return netWords(picture, net());
            case NodeKind::Pinned:
                return pinnedWords(picture, name_.id);
            case NodeKind::Note:
                return noteWords(picture, indexOf(picture.bench().notes, name_.id));
        }
        return {};
    }

    QString valueWords() const {
        if (name_.kind == NodeKind::Net) return voltsWords(root_.picture(), net());
        if (name_.kind == NodeKind::Pinned) return pinnedFigure(root_.picture(), name_.id);
        if (name_.kind == NodeKind::Part || name_.kind == NodeKind::Jumper)
            return readingWords(root_.picture(), name_.id);
        return {};
    }

    const BenchRoot& root_;
    NodeName name_;
};

}  // namespace

BenchRoot::~BenchRoot() {
    for (const auto& [name, id] : ids_) QAccessible::deleteAccessibleInterface(id);
}

QAccessibleInterface* BenchRoot::child(int index) const {
    const auto& all = names();
    return index >= 0 && index < static_cast<int>(all.size()) ? nodeOf(all[static_cast<std::size_t>(index)]) : nullptr;
}

QAccessibleInterface* BenchRoot::childAt(int x, int y) const {
    const Point mm = view_->toMm(view_->viewport()->mapFromGlobal(QPointF(x, y)));
    const auto& all = names();
    for (auto name = all.rbegin(); name != all.rend(); ++name) {
        QAccessibleInterface* node = nodeOf(*name);
        if (name->kind != NodeKind::Net && node->rect().contains(x, y)) {
            if (name->kind != NodeKind::Board) return node;
            const auto hole = nearestHole(picture().bench(), picture().table->seen(mm), kHoleHalfMm);
            return hole ? nodeOf({NodeKind::Hole, toString(*hole)}) : node;
        }
    }
    return nullptr;
}

QAccessibleInterface* BenchRoot::focusChild() const {
    const auto cursor = view_->cursor();
    return cursor ? nodeOf({NodeKind::Hole, toString(*cursor)}) : nullptr;
}

QString BenchRoot::text(QAccessible::Text what) const {
    if (what == QAccessible::Name) return view_->accessibleName();
    if (what == QAccessible::Value) return benchWords(picture());
    if (what == QAccessible::Description) {
        const QString told = qs(view_->marks().told());
        return told.isEmpty() ? saidWords(picture()) : told + QStringLiteral(". ") + saidWords(picture());
    }
    return QAccessibleWidget::text(what);
}

const std::vector<NodeName>& BenchRoot::names() const {
    if (layout_ != picture().layout) {
        layout_ = picture().layout;
        names_ = childrenOf(picture());
    }
    return names_;
}

QAccessibleInterface* BenchRoot::nodeOf(const NodeName& name) const {
    if (const auto known = ids_.find(name); known != ids_.end()) return QAccessible::accessibleInterface(known->second);
    auto* node = new BenchNode(*this, name);  // the registry owns it
    ids_.emplace(name, QAccessible::registerAccessibleInterface(node));
    return node;
}

int BenchRoot::indexOfChild(const QAccessibleInterface* child) const {
    const auto* node = dynamic_cast<const BenchNode*>(child);
    const auto& all = names();
    const auto found = node ? std::find(all.begin(), all.end(), node->name()) : all.end();
    return found == all.end() ? -1 : static_cast<int>(found - all.begin());
}

}  // namespace tiepoint::ui
