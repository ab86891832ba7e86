#pragma once
// Flashes as they are seen: of each light how often it flashes, and the mean that could be shown in its place.
//
// A flash is a pair of opposing changes of relative luminance by a tenth of its maximum or more, where the darker state is below 0.80. More
// than three in any second can set off a seizure in people with photosensitive epilepsy: Web Content Accessibility Guidelines 2.2, success
// criterion 2.3.1 and its definition of general flash and red flash thresholds. Luminance here is that of the light itself, of 1.
// Times are seconds as they are seen, on the wall. Bounded memory; after the first call for so many lights nothing is allocated.

#include <array>
#include <vector>

namespace tiepoint {

/// More a second than anyone should have to see.
inline constexpr double kMostFlashes = 3;

class Flashes {
public:
    /// The light of each emitter, relative to its rated one, as it was seen for so many seconds.
    void take(const std::vector<double>& light, double seconds);
    /// In the last second, of the light that flashed most.
    double perSecond() const;
    /// Mean light of the last second.
    double meanLight(std::size_t emitter) const;
    void clear() { lights_.clear(); }

private:
    static constexpr int kKept = 64;   ///< turns of a light
    static constexpr int kParts = 60;  ///< of a second
    struct Seen {
        int way = 0;
        double furthest = 0;
        std::array<double, kKept> turns{};  ///< when, in a ring
        int turnCount = 0;
        std::array<double, kParts> sum{}, length{};  ///< of light and of time, by part of a second in a ring
    };

    std::vector<Seen> lights_;
    double now_ = 0;
    long long part_ = 0;
};

}  // namespace tiepoint
