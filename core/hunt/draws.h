#pragma once
// Numbers drawn from a seed, the same on every machine. A plain value.

#include <cstddef>
#include <cstdint>
#include <random>
#include <utility>
#include <vector>

namespace tiepoint {

class SeededDraws {
public:
    explicit SeededDraws(std::uint64_t seed) : engine_(seed * 0x9e3779b97f4a7c15 + 1) {}

    std::size_t below(std::size_t count) { return static_cast<std::size_t>(engine_() % count); }
    template <class Item>
    void shuffle(std::vector<Item>& items) {
        for (std::size_t i = items.size(); i > 1; --i) std::swap(items[i - 1], items[below(i)]);
    }

private:
    std::mt19937_64 engine_;
};

}  // namespace tiepoint
