#pragma once
// Constants of nature and the temperature of the bench.

namespace tiepoint {

inline constexpr double kBoltzmann = 1.380649e-23;                                        ///< J/K, exact (SI)
inline constexpr double kElementaryCharge = 1.602176634e-19;                              ///< C, exact (SI)
inline constexpr double kBenchKelvin = 298.15;                                            ///< 25 degrees Celsius
inline constexpr double kThermalVoltage = kBoltzmann * kBenchKelvin / kElementaryCharge;  ///< V, about 25.7 mV

}  // namespace tiepoint
