#pragma once
// Packages: how a part's leads may reach holes, and the outline of its body.
//
// A package says nothing electrical. Offsets are in pitches in the unturned position, x along the columns,
// y down the rows (row e to row f counts 3). Body sizes are millimetres, seen from above.

#include "core/base/geometry.h"

#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace tiepoint {

enum class Reach {
    Rigid,    ///< legs fall on fixed places; turns in quarters
    Bending,  ///< two leads that bend to any two holes within a span
    Flying,   ///< stands on the table; leads of any length, or sockets
};

enum class BodyShape { Box, Round };

/// A body outline on the bench: a box (turned) or a circle.
struct Outline {
    BodyShape shape = BodyShape::Box;
    Point centre;
    double angle = 0;                      ///< radians, clockwise on screen, of the box's long axis
    double halfLength = 0, halfWidth = 0;  ///< mm; a circle's radius is halfLength
    friend bool operator==(const Outline&, const Outline&) = default;
};

struct Package {
    std::string_view name;
    Reach reach = Reach::Bending;
    std::vector<Point>
        footprint;  ///< rigid: place of each lead; first lead at 0,0. Flying: sockets/exits in mm from the body's top left corner
    std::vector<std::vector<Point>> spread;  ///< rigid: other places to which its legs bend, in the same order
    double minSpan = 0, maxSpan = 0;         ///< bending: lying, in pitches between the two holes
    double standingMaxSpan = 0;  ///< bending: up to here the body stands on its first lead (0: never stands)
    BodyShape shape = BodyShape::Box;
    double bodyLengthMm = 0, bodyWidthMm = 0;  ///< lying body, length along x; round: both are the diameter
    double heightMm = 0;  ///< top of the body over the board, of one that lies where it can stand and lie; 0: flying
    bool raised = false;  ///< bending: lies on its bent legs, so that a flat wire fits beneath
    double towardSecondMm =
        0;  ///< bending: so far from the middle the body sits, from two pitches on, where there is lead to bend
    int defaultSpan = 0;         ///< bending: pitches when taken from the tray
    bool rightOfBoards = false;  ///< flying: lies at the right of the boards, where instruments lie; else at the left
};

/// How a part lies, derived from where its leads are.
struct Pose {
    Point centre;      ///< of the body, mm
    double angle = 0;  ///< radians; 0: first lead at the left, last at the right (rigid: unturned)
    bool standing = false;
    Outline body;
    friend bool operator==(const Pose&, const Pose&) = default;
};

std::span<const Package> packages();
/// The package of that name, or null.
const Package* findPackage(std::string_view name);

/// The pose for lead places in mm (one for each lead of the kind, nothing for a lead that hangs).
/// Nothing if no lead is in a hole or the package flies. A hanging lead of a bending part is taken at the default span.
std::optional<Pose> poseOf(const Package& package, std::span<const std::optional<Point>> leadsMm);

/// Whether a single lead can be moved while the others stay.
bool bendsLegs(const Package& package);
/// The footprint that suits most of the present legs of a rigid package; its own where none is in a hole.
const std::vector<Point>& footprintFor(const Package& package, std::span<const std::optional<Point>> leadsMm);
/// Where each leg of a rigid package belongs by those that are present. Requires one.
std::vector<Point> legPlaces(const Package& package, std::span<const std::optional<Point>> leadsMm);

/// Why the lead places don't suit the package, in plain words; nothing if they do.
/// Rigid: present legs must match the footprint in one of four quarter turns. Bending: the span must be in range.
std::optional<std::string> misfit(const Package& package, std::span<const std::optional<Point>> leadsMm);

/// Whether two bodies overlap by more than a touch (0.05 mm).
bool overlap(const Outline& a, const Outline& b);

}  // namespace tiepoint
