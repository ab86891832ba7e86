#pragma once
// What a picture of a bench is made from. Plain values; the window, the `render` command and printing all
// fill one. Painters draw in millimetres of the bench; the caller sets the painter's transform.

#include "core/bench/turned_table.h"
#include "core/findings/finding.h"
#include "core/snapshot/changes.h"
#include "ui/paint/qt_geometry.h"
#include "ui/paint/spark_painter.h"
#include "ui/theme/theme.h"

#include <QRectF>

#include <optional>
#include <string>
#include <vector>

namespace tiepoint::ui {

using tiepoint::Arrows;
using tiepoint::Views;

/// Where the tag of a pinned reading points, and what stands there.
struct TagEnd {
    enum class Sign { None, Plus, Minus };
    QPointF at;
    Sign sign = Sign::None;  ///< of a reading between two holes
    friend bool operator==(const TagEnd& a, const TagEnd& b) {
        return fromQt(a.at) == fromQt(b.at) && a.sign == b.sign;
    }
};

/// The tag of a pinned reading as it lies on the bench.
struct PinnedTag {
    std::string id;
    QString text;
    QRectF frame;
    std::vector<TagEnd> ends;
    bool isNext = false;             ///< of a card's: the next place to measure
    std::vector<SparkColumn> spark;  ///< the trace beside it; empty where it stands still
    /// Hung by a card; the bench knows nothing of it.
    bool isHung() const { return id.empty(); }
    friend bool operator==(const PinnedTag& a, const PinnedTag& b) {
        return a.id == b.id && a.text == b.text && fromQt(a.frame) == fromQt(b.frame) && a.ends == b.ends &&
               a.isNext == b.isNext && a.spark == b.spark;
    }
};

/// A tag that a card hangs at a hole of the bench.
struct HungTag {
    Hole at;
    QString text;
    bool isNext = false;  ///< the next place to measure: a probe stands in it
    friend bool operator==(const HungTag&, const HungTag&) = default;
};

/// The volts of a net, on a tag outside of the boards.
struct NetTag {
    int net = -1;
    QString text;
    bool isFloating = false;  ///< joined to nothing
    bool isChanged = false;   ///< by an edit or a press, just now
    Rect frame;
    Point ring;  ///< where its leader ends, on its own metal
    friend bool operator==(const NetTag&, const NetTag&) = default;
};

/// How large words stand on the bench: the em of each kind, mm.
struct WordSizes {
    double idMm = 1.7;
    double readingMm = 2.1;
    double flagMm = 2.25;
    double wordsMm = 2.1;  ///< beside the pointer
    double numberMm = 0;   ///< of columns in use; 0: only as printed on the board
    double noteMm = 2.1;
    double leaderMm = 0.23;  ///< breadth of the leaders of tags
    friend bool operator==(const WordSizes&, const WordSizes&) = default;
};

/// A leg in the wrong hole, and the hole where it belongs.
struct Hop {
    Hole is, belongs;
    bool isDone = false;   ///< the leg is where it belongs
    bool hasArrow = true;  ///< from hole to hole
    friend bool operator==(const Hop&, const Hop&) = default;
};

/// What the pointer and the hand point at; changes often and never changes the bench.
struct Marks {
    std::vector<std::string> selected;  ///< ids of parts and jumpers
    int hoverNet = -1;                  ///< lit with everything in it; -1: none
    Point hoverAt;                      ///< where the tag of the hovered net stands
    std::string hoverPart;
    std::vector<Hole> targets;           ///< holes where leads of something dragged would go
    std::optional<Part> carried;         ///< a part being dragged, drawn over all
    std::shared_ptr<const Bench> group;  ///< parts and jumpers dragged together, where they would go; null: none
    std::string groupBoard;              ///< the board that is moved with them and drawn too; empty: none
    std::optional<Jumper> drawn;         ///< a jumper being drawn, if both ends have a hole
    std::optional<std::pair<Point, Point>> drawnFree;  ///< else from where to where
    int drawnColour = 0;
    std::optional<std::pair<Point, Point>> probe;  ///< volts between two places being measured: plus, minus
    bool refused = false;                          ///< the carried thing can't go there
    std::optional<std::pair<Point, Point>> tie;    ///< from what a menu is about to the menu
    std::optional<QRectF> band;                    ///< the rubber band, mm
    std::optional<Hole> cursor;                    ///< of the keyboard
    std::string lit;                               ///< part or jumper that a card points at
    std::vector<Hole> guide;  ///< holes that a guide points at; those that don't exist are left out
    std::optional<Hop> hop;   ///< that a guide asks for
    std::vector<Hole> open;   ///< where ends are still open; the same
    std::string say;          ///< words beside the pointer; empty: none
    Point sayAt;
    int finding = -1;                     ///< the one told on the card, among the picture's findings
    std::shared_ptr<const Bench> mended;  ///< shown as a ghost over the bench; null: none
    std::shared_ptr<const Bench> built;   ///< what somebody built instead: how it differs is drawn; null: nothing
    friend bool operator==(const Marks&, const Marks&) = default;
};

struct Picture {
    std::shared_ptr<const Layout> layout;      ///< of the document's revision; never null
    std::shared_ptr<const Table> table;        ///< of the same bench; never null
    std::shared_ptr<const Snapshot> snapshot;  ///< null, or of the same revision: else no mark is drawn
    std::shared_ptr<const Inputs> hands;       ///< what is held where there is no snapshot; may be null
    const Theme* theme = nullptr;
    Views views;  ///< where they are turned over, so is the table
    Marks marks;
    std::shared_ptr<const std::vector<Change>> changes;  ///< shown for a moment after an edit or a press; may be null
    std::shared_ptr<const std::vector<Finding>>
        findings;  ///< marked at their places, as far as these exist; may be null
    WordSizes sizes;
    std::vector<HungTag> hung;                             ///< they stand alone: pinned readings stay away
    std::shared_ptr<const std::vector<PinnedTag>> pinned;  ///< see tag_keeper.h; null: none is shown
    std::shared_ptr<const std::vector<NetTag>> netTags;    ///< the same for the volts of nets
    double phaseMm = 0;                                    ///< how far full-scale arrows have moved
    double pixelsPerMm = 8;                                ///< of the device, for level of detail
    bool wordsToCome = false;  ///< the frame is wanted sooner: ids and tags come right after it
    bool isOnPaper = false;    ///< printed or saved: nothing waits under a pointer, and notes show all of their text
    QRectF seenMm;  ///< what a window shows of the table, where words of the hand have to stay; empty: all of it
    friend bool operator==(const Picture&, const Picture&) = default;

    const Bench& bench() const { return *layout->bench; }
    /// Arranges the table of the layout's bench, turned or not as the views say.
    void arrangeTable();
    /// Places the tags of pinned readings and of nets, whatever stood there before: after any change of the layout, the table, the snapshot,
    /// the views, the selection or the sizes. What moves keeps a TagKeeper instead.
    void arrangeTags();
    /// The tag of a pinned reading, or null.
    const PinnedTag* pinnedTag(const std::string& id) const;
    /// Where a hole of the bench is seen.
    Point seenAt(const Hole& hole) const { return table->seen(*holeMm(bench(), hole)); }
    /// Whether a part hides behind a board that is turned over.
    bool isBehind(int part) const {
        return table->turned && standsOnBoard(bench().parts[static_cast<std::size_t>(part)]);
    }
    /// What is held, or null.
    const Inputs* held() const { return snapshot ? snapshot->inputs.get() : hands.get(); }
    /// The snapshot if it may be shown (a solution of this revision), else null.
    const Snapshot* live() const { return snapshot && snapshot->status() == Status::Solved ? snapshot.get() : nullptr; }
};

/// The smallest of 1, 2, 5 x 10^n amperes that holds the largest current (or the locked one); 1 mA where none
/// flows.
double fullScaleAmpere(const Picture& picture);

}  // namespace tiepoint::ui
