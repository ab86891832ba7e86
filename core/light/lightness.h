#pragma once
// Light: from current to what an eye sees. Luminous intensity is proportional to current; the eye averages over time
// (Talbot-Plateau) and sees lightness as CIE 1976 L*.

namespace tiepoint {

/// CIE 1976 lightness L* (0..100) of a relative luminance Y/Yn (0..1 and above). CIE e-ILV 17-23-076.
double lightness(double relativeLuminance);

/// Brightness 0..1 of a light source whose light rises as a power of its current: L*/100 of its light at the mean current relative to
/// that at the rated current; 1 above that, 0 below zero.
double brightness(double meanCurrentAmpere, double ratedCurrentAmpere, double exponent = 1);

}  // namespace tiepoint
