#pragma once
// Chance from a seed: the same seed draws the same everywhere, which the distributions of the standard library don't promise.

#include <cstdint>
#include <random>
#include <span>
#include <utility>
#include <vector>

namespace tiepoint::examiner {

class Chance {
public:
    explicit Chance(std::uint64_t seed) : numbers_(seed) {}

    /// 0 to `count` - 1; `count` is positive.
    int below(int count) { return static_cast<int>(numbers_() % static_cast<std::uint64_t>(count)); }
    int within(int least, int most) { return least + below(most - least + 1); }
    double share() { return static_cast<double>(numbers_() >> 11) * 0x1.0p-53; }
    double between(double least, double most) { return least + (most - least) * share(); }
    bool happens(double probability) { return share() < probability; }

    template <class Items>
    const auto& oneOf(const Items& items) {
        return items[static_cast<std::size_t>(below(static_cast<int>(std::size(items))))];
    }
    template <class T>
    void shuffle(std::vector<T>& items) {
        for (int i = static_cast<int>(items.size()) - 1; i > 0; --i) std::swap(items[i], items[below(i + 1)]);
    }
    /// An index, each as likely as its weight.
    int weighted(std::span<const double> weights) {
        double sum = 0;
        for (const double weight : weights) sum += weight;
        double left = share() * sum;
        for (std::size_t i = 0; i < weights.size(); ++i) {
            if ((left -= weights[i]) < 0) return static_cast<int>(i);
        }
        return static_cast<int>(weights.size()) - 1;
    }

private:
    std::mt19937_64 numbers_;
};

}  // namespace tiepoint::examiner
