#pragma once
// What Edit does to the selection: cut, copy, paste, duplicate, delete, select all. The clipboard holds a bench as text, in the file's
// own format, so that parts pass between windows and can be read.

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
    void duplicate();
    void removeSelection();
    void selectAll();

Q_SIGNALS:
    void refused(const QString& why);

private:
    std::vector<std::string> selection() const;
    void addCopies(const Bench& from, const std::vector<std::string>& ids);

    BenchDocument& document_;
    BenchView& view_;
};

}  // namespace tiepoint::ui
