#pragma once
// Arrows of current as plain data: where each stands at one moment, and how broad it is. The law: breadth
// across the tips is 0.55 + 1.75 I/Ifs mm; below 2 % of full scale the mark is a dot of a thread; below 1 uA
// there is none. Two drawers: vectors here, for paper and files; sprites in ui/paint/sprites.h, for a moving
// screen.

#include "core/base/geometry.h"
#include "ui/theme/theme.h"

#include <QPainter>
#include <QPainterPath>

#include <vector>

namespace tiepoint::ui {

/// Under the parts (strips, rails) or over them (wires, leads, bodies).
enum class Layer { UnderParts, OverParts };

enum class MarkLook {
    Cased,    ///< with its light (or dark) rim
    OnLight,  ///< on an LED: 80 %, no rim
    Ghost,    ///< under a pressed cap: half seen, no rim
    Dot,      ///< of a thread
};

struct ArrowMark {
    Point at;          ///< its middle, mm
    double angle = 0;  ///< the way it points, radians, clockwise on the screen from the x axis
    double breadthMm = 0;
    int level = 0;  ///< of 24: its share of full scale, for sprites; 0 for dots
    double opacity = 1;
    MarkLook look = MarkLook::Cased;
};

inline constexpr double kArrowSpacingMm = 2 * kPitchMm;
inline constexpr double kDotSpacingMm = kPitchMm / 2;
inline constexpr int kArrowLevels = 24;
inline constexpr double kArrowSpeedMmPerSecond = 24;  ///< at full scale
inline constexpr double kThreadShare = 0.02;          ///< of full scale, below which a thread is drawn

double arrowBreadthMm(double shareOfFullScale);
/// How far an arrow reaches from its middle, its rim included.
double arrowReachMm(double shareOfFullScale, bool electrons);
/// Breadth of the stripe beneath arrows in strips and rails; without an offset, so that breadths add up.
double bedBreadthMm(double shareOfFullScale);
int arrowLevel(double shareOfFullScale);
double breadthOfLevel(int level);

/// A chevron about 0,0 that points along +x; with a tail bar for electrons.
QPainterPath chevron(double breadthMm, bool electrons);
/// Draws one mark at its place.
void drawMark(QPainter& painter, const Theme& theme, const ArrowMark& mark, bool electrons);
void drawMarks(QPainter& painter, const Theme& theme, const std::vector<ArrowMark>& marks, bool electrons);

}  // namespace tiepoint::ui
