// Random networks, their nodal matrix in compressed columns, and KLU on it, which solvers are measured against.
#pragma once

#include <klu.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <random>
#include <vector>

namespace tiepoint::bench {

/// Branch conductances between nodes; -1 is ground.
struct Network {
    int nodes = 0;
    std::vector<std::array<int, 2>> ends;
    std::vector<double> siemens;
};

/// As on a breadboard: mostly chains, some loops, two rails that many branches share.
inline Network makeNetwork(int nodes, std::mt19937& random) {
    std::uniform_real_distribution<double> exponent(-5, -1);
    const auto pick = [&](int count) { return static_cast<int>(random() % static_cast<unsigned>(count)); };
    Network n;
    n.nodes = nodes;
    const auto add = [&](int a, int b) {
        n.ends.push_back({a, b});
        n.siemens.push_back(std::pow(10, exponent(random)));
    };
    for (int node = 0; node < nodes; ++node) {
        add(node, pick(3) == 0 ? -1 : node - 1);
        if (pick(3) == 0 && node > 0) add(node, 0);
        if (pick(5) == 0 && node > 4) add(node, node - 2 - pick(3));
    }
    return n;
}

inline void reValue(Network& n, std::mt19937& random) {
    std::uniform_real_distribution<double> exponent(-8, 1);
    for (double& g : n.siemens) g = std::pow(10, exponent(random));
}

/// A nodal matrix in compressed columns; stamps as four places in its values.
struct Compressed {
    std::vector<int> first, row;
    std::vector<double> value;
    std::vector<std::array<int, 4>> stamps;

    explicit Compressed(const Network& n) {
        std::vector<std::vector<int>> rows(n.nodes);
        for (int i = 0; i < n.nodes; ++i) rows[i].push_back(i);
        for (const auto& [a, b] : n.ends) {
            if (a < 0 || b < 0) continue;
            rows[a].push_back(b);
            rows[b].push_back(a);
        }
        first.push_back(0);
        for (auto& column : rows) {
            std::sort(column.begin(), column.end());
            column.erase(std::unique(column.begin(), column.end()), column.end());
            row.insert(row.end(), column.begin(), column.end());
            first.push_back(static_cast<int>(row.size()));
        }
        value.resize(row.size() + 1);  // one dump
        const auto place = [&](int r, int c) {
            if (r < 0 || c < 0) return static_cast<int>(row.size());
            return static_cast<int>(std::lower_bound(row.begin() + first[c], row.begin() + first[c + 1], r) -
                                    row.begin());
        };
        for (const auto& [a, b] : n.ends) stamps.push_back({place(a, a), place(b, b), place(a, b), place(b, a)});
    }

    void load(const Network& n) {
        std::fill(value.begin(), value.end(), 0.0);
        for (std::size_t k = 0; k < stamps.size(); ++k) {
            value[stamps[k][0]] += n.siemens[k];
            value[stamps[k][1]] += n.siemens[k];
            value[stamps[k][2]] -= n.siemens[k];
            value[stamps[k][3]] -= n.siemens[k];
        }
    }
};

/// KLU without scaling; factored once, then refactored.
class Klu {
public:
    explicit Klu(Compressed& m) : m_(m) {
        klu_defaults(&common_);
        common_.scale = 0;
        symbolic_ = klu_analyze(size(), m_.first.data(), m_.row.data(), &common_);
        numeric_ = klu_factor(m_.first.data(), m_.row.data(), m_.value.data(), symbolic_, &common_);
    }
    ~Klu() {
        klu_free_numeric(&numeric_, &common_);
        klu_free_symbolic(&symbolic_, &common_);
    }
    Klu(const Klu&) = delete;
    Klu& operator=(const Klu&) = delete;

    void run(double* right) {
        klu_refactor(m_.first.data(), m_.row.data(), m_.value.data(), symbolic_, numeric_, &common_);
        klu_solve(symbolic_, numeric_, size(), 1, right, &common_);
    }

private:
    int size() const { return static_cast<int>(m_.first.size()) - 1; }
    Compressed& m_;
    klu_common common_{};
    klu_symbolic* symbolic_ = nullptr;
    klu_numeric* numeric_ = nullptr;
};

}  // namespace tiepoint::bench
