#pragma once
// The hand on the bench: what a gesture may see and do. The view gives it; gestures know no widget.

#include "ui/document/bench_document.h"
#include "ui/live/live_bench.h"
#include "ui/paint/picture.h"
#include "ui/scene/under.h"

#include <QRectF>
#include <QStringList>

#include <optional>

namespace tiepoint::ui {

/// Where the pointer is, and what the hand holds down with it.
struct Pointer {
    Point at;        ///< on the bench, mm
    QPointF inView;  ///< in the viewport, pixels
    Qt::MouseButton button = Qt::NoButton;
    Qt::KeyboardModifiers modifiers;
    bool dragged = false;  ///< the pointer has left the place where the button went down
};

class Hand {
public:
    virtual ~Hand() = default;

    virtual const Picture& picture() const = 0;
    /// What lies under a place of the bench.
    virtual Under under(Point at) const = 0;
    /// Parts and jumpers that a rubber band takes, in the order of the bench.
    virtual QStringList touchedBy(const QRectF& band) const = 0;
    virtual BenchDocument& document() = 0;
    virtual LiveBench& live() = 0;

    /// What the hand points at. After changing it call showMarks().
    virtual Marks& marks() = 0;
    virtual void showMarks() = 0;
    /// Nets that something dragged would join, lit beside the hovered one.
    virtual void lightNets(std::vector<int> nets) = 0;
    /// Takes back every mark of a gesture: targets, carried things, words.
    virtual void clearMarks() = 0;
    /// Words at a place that stay for a moment.
    virtual void flash(const std::string& words, Point at) = 0;
    /// Words for who hears the bench: what a key has just done.
    virtual void tell(const std::string& words) = 0;
    /// Things that are being moved are shown pale at their old place.
    virtual void setPale(const std::vector<std::string>& ids) = 0;
    /// A rubber band on the bench, mm.
    virtual void setBand(const std::optional<QRectF>& band) = 0;
    /// What hangs at the pointer while it is over no hole; nothing: the usual pointer.
    virtual void setAtPointer(const std::optional<Part>& part, std::optional<int> jumperColour) = 0;

    virtual QStringList selection() const = 0;
    virtual void setSelection(const QStringList& ids) = 0;
    virtual void panBy(QPointF pixels) = 0;
    /// The colour chosen in the tray, if one was.
    virtual std::optional<int> chosenJumperColour() const = 0;
    virtual void chooseJumperColour(int colour) = 0;
    /// Buttons that a Shift-click holds down.
    virtual std::set<std::string>& latched() = 0;
};

}  // namespace tiepoint::ui
