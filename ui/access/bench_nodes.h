// The bench as a screen reader walks it: the view's own node, and below it boards with their holes, parts, jumpers, nets, notes and pinned
// readings. Window's thread only.
#pragma once

#include "ui/view/bench_view.h"

#include <QAccessible>
#include <QAccessibleWidget>

#include <map>
#include <memory>
#include <string>
#include <vector>

namespace tiepoint::ui {

enum class NodeKind { Board, Hole, Part, Jumper, Net, Note, Pinned };

/// What a node is: its kind and its address, id or number as text.
struct NodeName {
    NodeKind kind;
    std::string id;
    friend auto operator<=>(const NodeName&, const NodeName&) = default;
};

/// The view's own node; owns the registration of all others.
class BenchRoot : public QAccessibleWidget {
public:
    explicit BenchRoot(BenchView* view) : QAccessibleWidget(view, QAccessible::Grouping), view_(view) {}
    ~BenchRoot() override;

    BenchView& view() const { return *view_; }
    const Picture& picture() const { return view_->picture(); }
    QAccessibleInterface* nodeOf(const NodeName& name) const;

    int childCount() const override { return static_cast<int>(names().size()); }
    QAccessibleInterface* child(int index) const override;
    int indexOfChild(const QAccessibleInterface* child) const override;
    QAccessibleInterface* childAt(int x, int y) const override;
    QAccessibleInterface* focusChild() const override;
    QString text(QAccessible::Text what) const override;

private:
    /// The children in order, found anew for each revision of the bench.
    const std::vector<NodeName>& names() const;

    BenchView* view_;
    mutable std::shared_ptr<const Layout> layout_;
    mutable std::vector<NodeName> names_;
    mutable std::map<NodeName, QAccessible::Id> ids_;
};

}  // namespace tiepoint::ui
