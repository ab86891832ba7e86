#include "ui/access/bench_access.h"

#include "ui/access/bench_nodes.h"
#include "ui/view/bench_marks.h"

namespace tiepoint::ui {
namespace {

/// Of something that can be selected.
NodeKind kindOf(const Bench& bench, const std::string& id) {
    if (bench.findPart(id)) return NodeKind::Part;
    if (bench.findNote(id)) return NodeKind::Note;
    return bench.findPinned(id) ? NodeKind::Pinned : NodeKind::Jumper;
}

QAccessibleInterface* makeAccess(const QString& className, QObject* object) {
    auto* view = className == QLatin1String("tiepoint::ui::BenchView") ? qobject_cast<BenchView*>(object) : nullptr;
    return view ? new BenchRoot(view) : nullptr;
}

BenchRoot* rootOf(BenchView& view) { return dynamic_cast<BenchRoot*>(QAccessible::queryAccessibleInterface(&view)); }

}  // namespace

void installBenchAccess() {
    static bool installed = false;
    if (!installed) QAccessible::installFactory(makeAccess);
    installed = true;
}

void announceBench(BenchView& view, LiveBench& live) {
    QObject::connect(&view.marks(), &BenchMarks::changed, &view, [&view, last = std::string()]() mutable {
        const Marks& marks = view.picture().marks;
        if (marks.say == last) return;
        last = marks.say;
        if (last.empty() || !QAccessible::isActive()) return;
        QAccessibleEvent described(&view, QAccessible::DescriptionChanged);
        QAccessible::updateAccessibility(&described);
        if (!marks.refused && view.isGesturing()) return;  // the length of a jumper changes with every hole
        QAccessibleEvent alert(&view, QAccessible::Alert);
        QAccessible::updateAccessibility(&alert);
    });
    QObject::connect(&view, &BenchView::cursorMoved, &view, [&view] {
        if (!QAccessible::isActive()) return;
        BenchRoot* root = rootOf(view);
        QAccessibleInterface* hole = root ? root->focusChild() : nullptr;
        if (!hole) return;
        QAccessibleEvent event(hole, QAccessible::Focus);
        QAccessible::updateAccessibility(&event);
    });
    QObject::connect(&view, &BenchView::selectionChanged, &view, [&view] {
        if (!QAccessible::isActive()) return;
        BenchRoot* root = rootOf(view);
        for (const QString& id : root ? view.selection() : QStringList()) {
            QAccessibleEvent event(root->nodeOf({kindOf(view.picture().bench(), id.toStdString()), id.toStdString()}),
                                   QAccessible::SelectionAdd);
            QAccessible::updateAccessibility(&event);
        }
    });
    QObject::connect(&view.marks(), &BenchMarks::toldAnew, &view, [&view] {
        if (!QAccessible::isActive()) return;
        for (const auto type : {QAccessible::DescriptionChanged, QAccessible::Alert}) {
            QAccessibleEvent event(&view, type);
            QAccessible::updateAccessibility(&event);
        }
    });
    QObject::connect(&live, &LiveBench::snapshotReady, &view, [&view] {
        if (!QAccessible::isActive()) return;
        BenchRoot* root = rootOf(view);
        for (const QString& id : root ? view.selection() : QStringList()) {
            if (!view.picture().bench().findPart(id.toStdString())) continue;
            QAccessibleInterface* node = root->nodeOf({NodeKind::Part, id.toStdString()});
            QAccessibleValueChangeEvent event(node, node->text(QAccessible::Value));
            QAccessible::updateAccessibility(&event);
        }
    });
}

}  // namespace tiepoint::ui
