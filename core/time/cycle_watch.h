#pragma once
// Whether what an island stores repeats: watched at the instants at which one of its stores, the slowest that swings, rises through the
// middle of its swing. It repeats if all stores are at such an instant what they were half as many cycles ago, and the cycle is as long.
//
// Watching goes in rounds, each as long as all before together, so that what goes on at first is forgotten: one round finds how far each
// store swings, the next how often, the third judges by the slowest. What still drifts is told from what errs by how it goes on: a drift that
// is to end halves from one half to the next, and one that has hardly begun is seen as a difference that grows.
// Where a bench was followed for too short a time to come to a third round, all of it is looked at once more, at its end: what came back to the
// same instant, with nothing from outside, goes on as it did before.
// Thread rule: one thread at a time.

#include <span>
#include <vector>

namespace tiepoint {

/// All that a circuit stores at an instant, and how fast it changes, by store of the circuit.
struct StoredInstant {
    double second = 0;
    std::vector<double> stored, storing;
};

class CycleWatch {
public:
    /// `least`: by store of the circuit, what of it is too little to count.
    CycleWatch(std::vector<int> stores, const std::vector<double>& least);

    /// What went on smoothly from one instant to another.
    void add(const StoredInstant& from, const StoredInstant& to);
    /// The next round.
    void beginRound();
    /// What was followed from its beginning to its end, looked at once more.
    void lookBack(std::span<const StoredInstant> history);

    bool repeats() const { return periodSecond_ > 0; }
    double periodSecond() const { return periodSecond_; }
    /// Whether nothing has moved in this round by more than a share of what was ever stored, nor would at its present pace within
    /// so many seconds.
    bool rests(const StoredInstant& now, double share, double seconds) const;

private:
    struct Swing {
        double least = 0, greatest = 0;  ///< in this round
        double middle = 0, width = 0;    ///< of the round before
        double largest = 0;              ///< ever, of its magnitude
        int rises = 0;                   ///< in this round
        bool below = false;              ///< since it last rose
    };
    struct Rise {
        double second = 0, width = 0;  ///< how far the slowest swung in the cycle that ends here
        std::vector<double> stored;
    };

    static bool swingsAsBefore(const Swing& swing);
    /// Whether a value has risen through the middle of its store's swing.
    static bool rises(Swing& swing, double value);
    void lookAtAll(std::span<const StoredInstant> history);
    void findSlowest(std::span<const StoredInstant> history);
    Rise riseBetween(const StoredInstant& from, const StoredInstant& to) const;
    void noteRise(const StoredInstant& from, const StoredInstant& to);
    void judge();
    double apart(const Rise& a, const Rise& b) const;

    std::vector<int> stores_;
    std::vector<double> tooLittle_;
    std::vector<Swing> swings_;
    std::vector<Rise> rises_;
    int slowest_ = -1, round_ = 0;
    bool begun_ = false;
    double cycleLeast_ = 0, cycleGreatest_ = 0, periodSecond_ = 0;
};

}  // namespace tiepoint
