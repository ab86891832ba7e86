#pragma once
// Findings on the bench: a small symbol near the place whose shape tells how grave it is (a diamond: fault, a triangle: risk, a disc:
// remark, an open ring: only a place to look at), and a faint outline round the holes and parts. Nothing blinks.

#include "ui/paint/label_places.h"
#include "ui/paint/patch.h"
#include "ui/paint/picture.h"

#include <optional>
#include <vector>

namespace tiepoint::ui {

/// Where the symbol of a finding stands.
struct FindingMark {
    int finding = 0;  ///< among the picture's findings
    QRectF frame;
    QPointF anchor;     ///< what it belongs to
    double roomMm = 0;  ///< about the anchor, left free
};

/// What is drawn of a finding.
struct FindingSeen {
    Severity severity = Severity::Fault;
    bool placeOnly = false;                   ///< a place to look at, and no more
    bool current = false;                     ///< told on the card
    bool alongMetal = false;                  ///< its holes are one path of metal
    std::vector<std::optional<Point>> holes;  ///< nothing: there is no such hole
    /// Index of a part or jumper of the bench.
    struct Thing {
        bool jumper = false;
        int index = 0;
        friend bool operator==(const Thing&, const Thing&) = default;
    };
    std::vector<Thing> things;
    std::vector<int> ways;  ///< along metal: the jumper from each hole to the next, or -1: straight
    friend bool operator==(const FindingSeen&, const FindingSeen&) = default;
};
std::vector<FindingSeen> findingsSeen(const Picture& picture);

/// A mark for each finding with a place on the bench, clear of what `clearance` knows and of each other.
std::vector<FindingMark> placeFindings(const std::vector<FindingSeen>& findings, Clearance& clearance);

/// The outlines, and a path of metal lit along its length. Under the words.
void addFindingPlaces(Patches& patches, const std::vector<FindingSeen>& findings, const WordGround& ground);
void addFindingMarks(Patches& patches, const std::vector<FindingSeen>& findings, const std::vector<FindingMark>& marks);
/// The symbol alone, as a card shows it too: centred, `size` broad, in whatever unit the painter has.
void paintFindingSymbol(QPainter& painter, const Theme& theme, const Finding& finding, QPointF centre, double size);

}  // namespace tiepoint::ui
