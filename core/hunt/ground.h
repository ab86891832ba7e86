#pragma once
// Where a hunt takes place: a sound bench, the positions of its switches, and the places where a red tip can go while the black one stays in
// minus. What a bench shows there, and what the eye sees of its lights, are its signs; two benches whose signs agree can't be told apart by
// looking and measuring volts.
//
// A place is a free hole of a strip that something is plugged into, so that a reading says something about each end by itself: of two
// strips that a jumper joins, both. The meter is the catalogue's, which loads what it measures with ten megohms.
// Two readings agree within 3 % and 0.05 V. One thread at a time; stoppable.

#include "core/behaviour/behaviour.h"

#include <memory>
#include <vector>

namespace tiepoint {

/// What the eye makes of a light: dark under 4.5 % of brightness, dim under 45 %.
enum class Seen { Dark, Dim, Lit };
Seen seenAt(double brightness);

/// A light as it is seen.
struct LightSign {
    Seen seen = Seen::Dark;
    double brightness = 0;
    /// Whether an eye that sees them one after the other sees no difference.
    bool isLike(const LightSign& other) const;
};

/// What a bench shows: lights first, then volts; by position, then light or place.
struct Signs {
    bool solved = true;  ///< in every position
    std::vector<std::vector<LightSign>> lights;
    std::vector<std::vector<double>> volts;

    bool looksLike(const Signs& other) const;
};

/// Whether a meter tells two voltages to be different.
bool differ(double volt, double other);

class HuntGround {
public:
    /// Of a sound bench.
    explicit HuntGround(std::shared_ptr<const Bench> target);

    const Bench& target() const { return *target_; }
    const std::vector<Throw>& controls() const { return controls_; }
    const std::vector<Digits>& positions() const { return positions_; }
    const std::vector<Hole>& places() const { return places_; }
    const std::vector<int>& lights() const { return lights_; }
    /// Where the black tip is: a hole in the minus of the first supply; nothing on a bench without one.
    const std::optional<Hole>& black() const { return black_; }

    /// Only the lights.
    Signs looksOf(const Bench& bench) const;
    /// Adds the volts.
    void measure(const Bench& bench, Signs& signs) const;

private:
    void findPlaces(const Layout& layout);
    void findPositions(const Layout& layout);

    std::shared_ptr<const Bench> target_;
    std::vector<Throw> controls_;
    std::vector<Digits> positions_;
    std::vector<Hole> places_;
    std::vector<int> lights_;
    std::optional<Hole> black_;
};

/// "while A is pressed", "while A is pressed and SW1 stands towards b"; empty at rest.
std::string positionClause(const Bench& bench, const std::vector<Throw>& controls, const Digits& digits);

}  // namespace tiepoint
