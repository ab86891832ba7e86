#pragma once
// Measures of one channel over one sweep, from the pieces of the run and not from what is drawn of them. Plain value; no allocation.

#include "core/scope/piece.h"
#include "core/scope/traces.h"

namespace tiepoint {

class Tally {
public:
    Tally() = default;
    /// Periods are counted where it rises past a level, once it was so much under it.
    Tally(double levelVolt, double hysteresisVolt) : level_(levelVolt), hysteresis_(hysteresisVolt) {}

    void take(const Piece3& piece, double from, double until);
    ScopeMeasures measures() const;
    bool isEmpty() const { return !(seconds_ > 0); }
    double least() const { return least_; }
    double greatest() const { return greatest_; }

private:
    struct Sums {
        double second = 0, once = 0, squared = 0, above = 0;
    };
    void add(const Piece3& piece, double from, double until, bool isAbove);

    double level_ = 0, hysteresis_ = 0;
    double seconds_ = 0, least_ = 0, greatest_ = 0;
    Sums sums_, atFirstRise_, atLastRise_;
    bool wasUnder_ = false;
    int rises_ = 0;
};

}  // namespace tiepoint
