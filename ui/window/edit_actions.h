#pragma once
// What Edit does to the selection: cut, copy, paste, duplicate, delete, select all. The clipboard holds a bench as text, in the file's
// own format, so that parts pass between windows and can be read.

#include "core/edit/copies.h"
#include "ui/document/bench_document.h"
#include "ui/view/bench_view.h"

#include <QObject>

namespace tiepoint::ui {

class EditActions : public QObject {
    Q_OBJECT
public:
    EditActions(BenchDocument& document, BenchView& view, QObject* parent);

    void cut();
    void copy();
    void paste();
    /// So many copies in a row to the right; the last one is then selected, so that the row goes on from it.
    void duplicate(int count = 1);
    void removeSelection();
    void selectAll();

Q_SIGNALS:
    void refused(const QString& why);

private:
    std::vector<std::string> selection() const;
    void addCopies(const Result<Copies>& copies);

    BenchDocument& document_;
    BenchView& view_;
};

}  // namespace tiepoint::ui
