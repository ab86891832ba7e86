#pragma once
// Draws a bench in layers, as vectors, in millimetres. Knows no cache: views cache what these functions draw.

#include "ui/paint/patch.h"
#include "ui/paint/picture.h"

#include <QPainter>
#include <QPainterPath>

namespace tiepoint::ui {

// Resting layers: depend on bench and theme only (views.strips for the boards' metal).
void paintTableTop(QPainter& painter, const Theme& theme, const QRectF& area);
void paintPart(QPainter& painter, const Picture& picture,
               int part);  ///< unlit, unpressed leads and body; supplies without live digits
void paintJumper(QPainter& painter, const Picture& picture, int jumper);  ///< with its shadow
QRectF partBounds(const Picture& picture, int part);                      ///< everything that paintPart draws
QRectF jumperBounds(const Picture& picture, int jumper);
QPainterPath partShape(const Picture& picture, int part);  ///< what a pointer hits
QPainterPath jumperShape(const Picture& picture, int jumper);
/// The centre line of a jumper or of a supply's lead, along which arrows run.
QPainterPath jumperLine(const Picture& picture, int jumper);

/// Where the brackets of something selected stand: a part, a jumper, a note or a pinned reading; empty if the bench has none of that id.
QRectF selectionFrame(const Picture& picture, const std::string& id);

/// Where the pointer presses, switches or turns something of a part: cap, lever, blade, knob. Empty if it has
/// none.
QPainterPath controlShape(const Picture& picture, int part);

/// The position of a part's dial that a point on it means; nothing at its hub, and for parts without a dial.
std::optional<int> dialPositionAt(const Picture& picture, int part, Point at);

struct FaceKnob;  // ui/paint/packages/package_painter.h
/// Knobs on the face of an instrument, where they are seen.
std::vector<FaceKnob> faceKnobsOf(const Picture& picture, int part);

/// All layers in order, for pictures on paper and files.
void paintBench(QPainter& painter, const Picture& picture);

/// A part kind as it lies in the tray, centred at 0,0, no live marks.
void paintSample(QPainter& painter, const Theme& theme, const PartKind& kind);
/// The same with a part's own values: an LED of its colour, a resistor with its bands.
void paintSample(QPainter& painter, const Theme& theme, const Part& part);
/// A jumper of a colour as it lies in the tray, centred at 0,0.
void paintJumperSample(QPainter& painter, const Theme& theme, int colour, double lengthMm);

}  // namespace tiepoint::ui
