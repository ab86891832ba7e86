#pragma once
// The bench on the screen: a graphics view, put together from what it shows (picture, scene, marks, frame), fields over it and hands at it
// (pointer, keyboard, wheel, fingers). The view hands on what it is asked and each event to whoever deals with it.

#include "core/parts/drawer.h"
#include "ui/document/bench_document.h"
#include "ui/live/live_bench.h"
#include "ui/paint/picture.h"

#include <QGraphicsView>

#include <optional>

namespace tiepoint::ui {

class BenchMarks;
class BenchScene;
class RoomMode;
struct ThingActions;
struct ViewAssembly;

class BenchView : public QGraphicsView {
    Q_OBJECT
public:
    BenchView(BenchDocument& document, LiveBench& live, QWidget* parent = nullptr);
    ~BenchView() override;

    const Picture& picture() const;
    /// The same with all tags where they stand while the whole bench is seen: for paper and files.
    Picture wholePicture() const;
    const BenchScene& benchScene() const;  ///< the table's things, for asking where they lie
    BenchMarks& marks();                   ///< for what guides and cards point at
    RoomMode& room();                      ///< projecting, and ink
    const RoomMode& room() const;
    void setThemeName(ThemeName name);
    void setViews(const Views& views);
    const Views& views() const;
    QStringList selection() const;
    void setSelection(const QStringList& ids);
    QString hoveredPart() const;

    void fitBench();  ///< boards and supplies fill the view
    void zoomAt(QPointF viewPos, double factor);
    Point toMm(QPointF viewPos) const;
    QPointF fromMm(Point mm) const;

    /// The resistors that the person has: the ladder steps along them.
    void setDrawer(const ResistorDrawer& drawer);
    /// Whether the ladder of values stands beside a selected part; not while a lesson points at one.
    void setLadderAllowed(bool allowed);
    /// What comes next is compared with nothing before.
    void forgetBefore();
    /// A part of the view over which something of the window lies: fields keep off it.
    void setCovered(const QRect& inView);
    /// Starts carrying a new part (or a jumper, kind "jumper") out of the tray, from a global position. With the button down it is
    /// dragged, whichever widget has the mouse; with the button up the next click places it. Escape, or letting go off the bench, ends it.
    void beginPlacing(const QString& kind, const QString& presetValue, QPoint globalPos);
    /// Starts carrying a board, with the button up: arrows, or the pointer, move it; Enter or a click lets go of it.
    void beginMovingBoard(const QString& id);
    bool isGesturing() const;  ///< something is under way between button and bench
    bool isTyping() const;     ///< a value is being typed over the board
    bool isMoving() const;     ///< arrows move: the view ticks
    double pixelsPerMm() const;
    std::optional<Hole> cursor() const;  ///< of the keyboard, while it shows
    /// The hole under the pointer, or of the cursor while it shows.
    std::optional<Hole> holeAtHand() const;
    void setCursorHole(const std::optional<Hole>& hole);
    /// What the menu at a part offers beside what the view does by itself. The actions must outlive the view.
    void setThingActions(const ThingActions& actions);
    void say(const QString& words);     ///< beside what is selected, for a moment
    void turnSelection(int direction);  ///< by a quarter to the right (1) or left (-1)
    void pinReading();                  ///< of what the pointer or the cursor is at; pinned already: unpins it
    void probe();                       ///< begins a reading between the hole there and another
    /// What was found, as it may be shown; `current` is the one told on a card, or -1. Null: nothing.
    void setFindings(std::shared_ptr<const std::vector<Finding>> findings, int current);
    /// While a room guesses nothing of what flows is shown: no light, arrows, readings, findings, nor what a supply delivers.
    void setVeiled(bool veiled);
    /// The bench is the plan of a real board: the same, with these tags. Nothing: it is a bench again.
    void setPlan(std::optional<std::vector<HungTag>> tags);
    /// Where the symbol of a finding was drawn last, in the viewport; empty if it has none.
    QRectF findingMark(int finding) const;
    void beginNote();  ///< opens the field for writing one

Q_SIGNALS:
    void selectionChanged();
    void hoverChanged();
    void viewsChanged();
    void cursorMoved();
    void findingChosen(int finding);  ///< its symbol was clicked
    void gestureEnded();
    /// Enter or a digit on a selected part whose value isn't a figure to be typed over the board (an LED's colour): its card is wanted.
    void valueTyped(const QString& partId);

protected:
    bool event(QEvent* event) override;
    bool viewportEvent(QEvent* event) override;
    void paintEvent(QPaintEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;
    void keyReleaseEvent(QKeyEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;

private:
    std::unique_ptr<ViewAssembly> assembly_;
};

}  // namespace tiepoint::ui
