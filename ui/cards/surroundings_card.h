#pragma once
// Light and warmth, as a card: a torch that is dragged along a scale of lux, and a hand along one of degrees, each with its figure. Says what a
// person chose; changes nothing by itself.

#include "core/instant/surroundings.h"
#include "ui/cards/aside_card.h"
#include "ui/theme/words.h"

#include <QSlider>

namespace tiepoint::ui {

/// A slider whose handle is a picture, and whose line has words under it. Arrow keys move it as they move any slider.
class ScaleSlider : public QSlider {
    Q_OBJECT
public:
    enum class Handle { Torch, Hand };
    /// A word under the line, at a value.
    struct Word {
        int value;
        QString text;
    };
    ScaleSlider(Handle handle, std::vector<Word> words, QWidget* parent);

    void setLook(const Look& look);

protected:
    void paintEvent(QPaintEvent* event) override;
    void mousePressEvent(QMouseEvent* event) override;
    void mouseMoveEvent(QMouseEvent* event) override;
    void mouseReleaseEvent(QMouseEvent* event) override;

private:
    double placeOf(int value) const;
    void follow(double x);

    Handle handle_;
    std::vector<Word> words_;
    WordSheet sheet_{this};
    Look look_;
};

class SurroundingsCard : public AsideCard {
    Q_OBJECT
public:
    explicit SurroundingsCard(QWidget* parent);

    void showSurroundings(const Surroundings& surroundings);
    const Surroundings& surroundings() const { return surroundings_; }
    ScaleSlider* light() const { return light_; }
    ScaleSlider* warmth() const { return warmth_; }
    bool isForRoom() const override { return true; }

    // The scale of the torch: 0 is the dark, then twenty steps for each tenfold from 0.1 lx on, to two figures.
    static double luxOf(int step);
    static int stepOf(double lux);

Q_SIGNALS:
    /// `begins`: a new drag or key, so that what follows is one step of the history.
    void chosen(const tiepoint::Surroundings& surroundings, bool begins);

protected:
    void arrangeCard() override;
    void paintBody(QPainter& painter) override;

private:
    void choose();
    QRectF rowBox(int row) const;

    Surroundings surroundings_;
    ScaleSlider *light_, *warmth_;
    bool showing_ = false, begins_ = true;
};

}  // namespace tiepoint::ui
