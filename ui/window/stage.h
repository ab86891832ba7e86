#pragma once
// The table top behind everything in the window: one surface, whose light runs on behind the cards as in the bench view.

#include "ui/paint/bench_painter.h"
#include "ui/theme/look.h"

#include <QPainter>
#include <QWidget>

namespace tiepoint::ui {

class Stage : public QWidget {
    Q_OBJECT
public:
    explicit Stage(QWidget* parent) : QWidget(parent), look_{&theme(ThemeName::Day), 1} {}

    void setLook(const Look& look) {
        look_ = look;
        update();
    }

protected:
    void paintEvent(QPaintEvent*) override {
        QPainter painter(this);
        paintTableTop(painter, *look_.theme, rect());
    }

private:
    Look look_;
};

/// Style sheet of menus, tool tips and lists.
QString windowStyle(const Look& look);

}  // namespace tiepoint::ui
