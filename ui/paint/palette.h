#pragma once
// Colours that belong to things themselves, not to a theme: light, bands, caps, and the scale of volts.

#include "core/parts/preferred.h"

#include <QColor>

#include <string_view>

namespace tiepoint::ui {

/// How an LED looks: the colour of its light, and its plastic without light.
struct LedColours {
    QColor light;
    QColor dull;  ///< L* at most 38
};
LedColours ledColours(std::string_view choice);

QColor bandColour(BandColour colour);
/// The cap of a push button, by its letter, so that neighbours differ.
QColor capColour(std::string_view letter);

/// Volts as a colour: viridis, share 0..1 of the scale. The scale is that of Smith and van der Walt (2015),
/// in eleven steps.
QColor voltColour(double share);
inline constexpr int kVoltSteps = 11;

}  // namespace tiepoint::ui
