#pragma once
// The scale of the arrows while a bench is projected: two chevrons at their true breadth on a piece of strip, and the round value that they mean.
// Fixed below the boards' right end. Window's thread only.

#include "ui/theme/look.h"
#include "ui/theme/words.h"
#include "ui/view/bench_view.h"

#include <QWidget>

namespace tiepoint::ui {

class ArrowScale : public QWidget {
    Q_OBJECT
public:
    ArrowScale(const BenchView& view, QWidget* parent);
    void setLook(const Look& look);
    /// Takes its place below the boards, in the parent; hidden while no arrows are shown.
    void place(bool wanted);
    QString words() const;

protected:
    void paintEvent(QPaintEvent* event) override;

private:
    const BenchView& view_;
    Look look_;
    WordSheet sheet_{this};
};

}  // namespace tiepoint::ui
