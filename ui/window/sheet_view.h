#pragma once
// The paper with the circuit diagram that folds down under the board: live, by the laws of the board. Pointing at one lights the other, net for
// net; switches are pressed and thrown on either. After an edit what is drawn glides to its new place. Window's thread only.

#include "ui/document/bench_document.h"
#include "ui/live/live_bench.h"
#include "ui/sheet/sheet_painter.h"
#include "ui/theme/look.h"
#include "ui/theme/words.h"
#include "ui/view/bench_view.h"

#include <QElapsedTimer>
#include <QTimer>
#include <QToolButton>
#include <QWidget>

namespace tiepoint::ui {

class SheetView : public QWidget {
    Q_OBJECT
public:
    SheetView(BenchDocument& document, LiveBench& live, BenchView& view, QWidget* parent);

    void setLook(const Look& look);
    /// Beside the board, for a room: without the crease.
    void setBeside(bool beside);
    void setStyle(SymbolStyle style);
    /// The diagram that is shown; null until there is one.
    std::shared_ptr<const BenchDiagram> sheet() const { return sheet_; }
    /// A place of the sheet in the widget, and back.
    QPointF fromSheet(Point mm) const;
    Point toSheet(QPointF at) const;
    QToolButton& foldButton() const { return *fold_; }
    bool isGliding() const { return before_ != nullptr; }

Q_SIGNALS:
    void foldWanted();

protected:
    void paintEvent(QPaintEvent* event) override;
    void mouseMoveEvent(QMouseEvent* event) override;
    void mousePressEvent(QMouseEvent* event) override;
    void mouseReleaseEvent(QMouseEvent* event) override;
    void leaveEvent(QEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;
    void showEvent(QShowEvent* event) override;
    void hideEvent(QHideEvent* event) override;

private:
    void followBench();
    void followMotion();
    void tick();
    QRectF paper() const;
    QRectF room() const;
    /// How a diagram lies in the middle of the room that it has: pixels for a millimetre, and where its corner is.
    double scaleOf(const Diagram& diagram) const;
    QPointF cornerOf(const Diagram& diagram) const;
    SheetPicture seen() const;
    void throwSwitch(int part);
    void paintFold(QPainter& painter);

    BenchDocument& document_;
    LiveBench& live_;
    BenchView& view_;
    Look look_;
    WordSheet words_{this};
    QToolButton* fold_;
    std::shared_ptr<const BenchDiagram> sheet_, before_;
    SymbolStyle style_ = SymbolStyle::Iec;
    bool beside_ = false;
    std::string pressed_;
    QTimer ticking_;
    QElapsedTimer clock_, gliding_;
    double phaseMm_ = 0;
};

}  // namespace tiepoint::ui
