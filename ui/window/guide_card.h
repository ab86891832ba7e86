#pragma once
// The guided first build: a card in the row below the bench that says what to do next and lights the holes for it. It follows the circuit, never the
// clicks, and stands in nobody's way: everything else works while it is there. A slip is told over two cards' breadth: what, why, and one thing to
// do in a frame; where a leg has to move, beside two close-ups of the metal, now and mended, and then down over the tray, from which nothing is
// needed. It has the picture of the tap and the pipe for whoever asks.

#include "core/lesson/first_build.h"
#include "ui/live/live_bench.h"
#include "ui/theme/look.h"
#include "ui/theme/words.h"
#include "ui/view/bench_view.h"
#include "ui/window/metal_closeups.h"

#include <QToolButton>
#include <QWidget>

namespace tiepoint::ui {

class GuideCard : public QWidget {
    Q_OBJECT
public:
    GuideCard(BenchView& view, LiveBench& live, QWidget* parent);

    /// Begins with the first step of whatever stands on the bench.
    void begin();
    void end();
    int step() const { return advice_.step; }
    const FirstBuildAdvice& advice() const { return advice_; }
    void setLook(const Look& look);
    /// Takes a frame of the parent's, the second card's; the picture lies over the cards and the tray.
    void placeIn(const QRect& frame);
    QToolButton* pictureButton() const { return pictureButton_; }
    bool showsPicture() const { return pictureShown_; }
    const MetalCloseups& closeups() const { return *closeups_; }

Q_SIGNALS:
    void ended();

protected:
    void paintEvent(QPaintEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;

private:
    void follow();
    void arrange();
    int wordsBreadth() const;  ///< of the guide's words, beside the picture if that is shown
    void paintStep(QPainter& painter);
    void paintSlip(QPainter& painter);
    void paintSilhouettes(QPainter& painter);
    void markWay();
    double slipBreadth() const;  ///< of the words about a slip
    bool isSlip() const { return !advice_.action.empty(); }
    bool showsMetal() const { return isSlip() && advice_.mend && advice_.mend->is && advice_.mend->belongs; }

    BenchView& view_;
    Look look_;
    WordSheet sheet_{this};
    FirstBuildAdvice advice_;
    bool running_ = false, pictureShown_ = false;
    QRect frame_;
    QToolButton* pictureButton_;
    QToolButton* closeButton_;
    MetalCloseups* closeups_;
};

}  // namespace tiepoint::ui
