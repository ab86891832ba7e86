#pragma once
// The way to a first lit LED, in front of all benches: a picture of its first step, a sentence, and the one filled button of the start card.

#include "ui/window/bench_button.h"
#include "ui/window/pictures_beside.h"

#include <QWidget>

namespace tiepoint::ui {

class FirstPanel : public QWidget {
    Q_OBJECT
public:
    FirstPanel(PicturesBeside& pictures, QWidget* parent);

    void setLook(const Look& look);
    WordButton* beginButton() const { return begin_; }

protected:
    void paintEvent(QPaintEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;

private:
    QRectF frame() const;
    QRectF pictureBox() const;
    void draw();

    PicturesBeside& pictures_;
    Look look_;
    WordSheet sheet_{this};
    WordButton* begin_;
    QPixmap picture_;
};

}  // namespace tiepoint::ui
