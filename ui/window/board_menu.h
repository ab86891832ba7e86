#pragma once
// The Board menu: adds boards, letters them from the other edge, and removes empty ones. Made anew each time it opens, since its lines
// name the boards that stand there.

#include "ui/document/bench_document.h"

#include <QMenu>

namespace tiepoint::ui {

class BoardMenu : public QMenu {
    Q_OBJECT
public:
    BoardMenu(BenchDocument& document, QWidget* parent);

Q_SIGNALS:
    void refused(const QString& why);

private:
    void fill();
    void push(const Edit& edit);

    BenchDocument& document_;
};

}  // namespace tiepoint::ui
