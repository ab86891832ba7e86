#pragma once
// The table top behind everything in the window: the bench's own colours run on behind the cards.

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
    void paintEvent(QPaintEvent*) override { QPainter(this).fillRect(rect(), look_.theme->benchBottom); }

private:
    Look look_;
};

/// Style sheet of menus, tool tips and lists in the colours of a theme.
QString windowStyle(const Theme& theme);

}  // namespace tiepoint::ui
