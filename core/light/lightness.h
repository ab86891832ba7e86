#pragma once
// Light: from current to what an eye sees. Luminous intensity is proportional to current; the eye averages over time
// (Talbot-Plateau) and sees lightness as CIE 1976 L*. Pure functions; safe from any thread.

namespace tiepoint {

/// CIE 1976 lightness L* (0..100) of a relative luminance Y/Yn (0..1 and above). CIE e-ILV 17-23-076.
double lightness(double relativeLuminance);

/// The light of a source whose light rises as a power of its current, relative to that at its rated current; 0 below zero, without
/// a bound above. Light adds up over time, brightness doesn't.
double relativeLight(double currentAmpere, double ratedCurrentAmpere, double exponent = 1);

/// Brightness 0..1 of the mean of a relative light: its L*/100; 1 above the rated light.
double brightnessOfLight(double meanRelativeLight);

/// Brightness of a light that burns evenly.
double brightness(double currentAmpere, double ratedCurrentAmpere, double exponent = 1);

}  // namespace tiepoint
