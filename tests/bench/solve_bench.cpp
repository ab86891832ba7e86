// Benchmarks of the solver beside general libraries, in one process:
//   B  load + factor + solve of nodal systems, against KLU (no scaling), Eigen's dense LU and Eigen's SparseLU
//   C  operating point of LED branches, against the same Newton's method with KLU inside
//   P  operating points of the harbour benches and of 100 LED branches, against their bars in time
// Ratios count; absolute times are of this machine and this moment.

#include "bench/interleave.h"
#include "bench/nodal_klu.h"
#include "core/base/embedded.h"
#include "core/bench/bench_file.h"
#include "core/solve/circuit_solver.h"
#include "core/solve/elimination_order.h"
#include "core/solve/linear_program.h"
#include "core/solve/operating_point.h"

#include <Eigen/Dense>
#include <Eigen/SparseLU>
#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <numeric>
#include <random>

namespace tiepoint::bench {
namespace {

/// Our program for the same network.
class Ours {
public:
    explicit Ours(const Network& n) {
        std::vector<LinearProgram::Entry> entries, pivots;
        std::vector<Edge> edges;
        for (int i = 0; i < n.nodes; ++i) entries.push_back({i, i});
        for (const auto& [a, b] : n.ends) {
            if (a < 0 || b < 0) continue;
            entries.push_back({a, b});
            entries.push_back({b, a});
            edges.push_back({a, b});
        }
        for (int node : eliminationOrder(n.nodes, edges, growSourceForest(n.nodes, {}))) pivots.push_back({node, node});
        program = LinearProgram(entries, pivots);
        constexpr int kDumps = 16;
        values.resize(program.slotCount() + kDumps);
        int entry = n.nodes, dump = 0;
        const auto slot = [&](int node) {
            return node < 0 ? program.slotCount() + (dump++ % kDumps) : program.slot(node);
        };
        for (const auto& [a, b] : n.ends) {
            std::array<int, 4> s{slot(a), slot(b), slot(-1), slot(-1)};
            if (a >= 0 && b >= 0) {
                s[2] = program.slot(entry++);
                s[3] = program.slot(entry++);
            }
            stamps.push_back(s);
        }
    }

    void load(const Network& n) {
        std::fill(values.begin(), values.end(), 0.0);
        for (std::size_t k = 0; k < stamps.size(); ++k) {
            values[stamps[k][0]] += n.siemens[k];
            values[stamps[k][1]] += n.siemens[k];
            values[stamps[k][2]] -= n.siemens[k];
            values[stamps[k][3]] -= n.siemens[k];
        }
    }

    LinearProgram program;
    std::vector<double> values;
    std::vector<std::array<int, 4>> stamps;
};

/// Worst residual of a solution, relative to the largest current at its node.
double residual(const Network& n, const std::vector<double>& volt, const std::vector<double>& injected) {
    std::vector<double> sum(injected), largest(n.nodes, 0.0);
    for (int i = 0; i < n.nodes; ++i) largest[i] = std::abs(injected[i]);
    for (std::size_t k = 0; k < n.ends.size(); ++k) {
        const auto [a, b] = n.ends[k];
        const double va = a < 0 ? 0 : volt[a], vb = b < 0 ? 0 : volt[b];
        for (int end : {0, 1}) {
            const int node = n.ends[k][end];
            if (node < 0) continue;
            sum[node] -= (end == 0 ? 1 : -1) * n.siemens[k] * (va - vb);
            largest[node] = std::max(largest[node], n.siemens[k] * std::max(std::abs(va), std::abs(vb)));
        }
    }
    double worst = 0;
    for (int i = 0; i < n.nodes; ++i) worst = std::max(worst, std::abs(sum[i]) / std::max(largest[i], 1e-300));
    return worst;
}

double worstResidualOverNineDecades(Network n, std::mt19937& random) {
    Ours ours(n);
    double worst = 0;
    for (int round = 0; round < 50; ++round) {
        reValue(n, random);
        ours.load(n);
        std::vector<double> right(n.nodes), injected(n.nodes, 0.0), volt(n.nodes);
        injected[0] = 1e-3;
        for (int i = 0; i < n.nodes; ++i) right[ours.program.positionOfRow(i)] = injected[i];
        if (!ours.program.run(ours.values, right)) return INFINITY;
        for (int i = 0; i < n.nodes; ++i) volt[i] = right[ours.program.positionOfColumn(i)];
        worst = std::max(worst, residual(n, volt, injected));
    }
    return worst;
}

void benchLinear() {
    fmt::print("B  load + factor + solve; how many times as fast as\n");
    fmt::print("   {:>6} {:>10} {:>8} {:>12} {:>10} {:>22}\n", "n", "ours us", "KLU", "Eigen dense", "SparseLU",
               "residual, 9 decades");
    double product = 1;
    int sizes = 0;
    for (int size : {5, 10, 20, 50, 200, 2000}) {
        std::mt19937 random(static_cast<unsigned>(size));
        const Network n = makeNetwork(size, random);
        Ours ours(n);
        Compressed forKlu(n), forSparse(n);
        forKlu.load(n);
        Klu klu(forKlu);
        forSparse.load(n);
        Eigen::Map<Eigen::SparseMatrix<double>> mapped(size, size, forSparse.first.back(), forSparse.first.data(),
                                                       forSparse.row.data(), forSparse.value.data());
        Eigen::SparseMatrix<double> sparse = mapped;
        Eigen::SparseLU<Eigen::SparseMatrix<double>> sparseLu;
        sparseLu.analyzePattern(sparse);
        Eigen::MatrixXd dense(size, size);
        Eigen::PartialPivLU<Eigen::MatrixXd> denseLu(size);
        Eigen::VectorXd right(size), x(size);
        std::vector<double> plain(size);

        std::vector<Contestant> c;
        c.push_back({"ours", [&] {
                         ours.load(n);
                         std::fill(plain.begin(), plain.end(), 1e-3);
                         if (!ours.program.run(ours.values, plain)) std::abort();
                     }});
        c.push_back({"klu", [&] {
                         forKlu.load(n);
                         std::fill(plain.begin(), plain.end(), 1e-3);
                         klu.run(plain.data());
                     }});
        c.push_back({"sparse", [&] {
                         forSparse.load(n);
                         std::copy_n(forSparse.value.begin(), sparse.nonZeros(), sparse.valuePtr());
                         right.setConstant(1e-3);
                         sparseLu.factorize(sparse);
                         x = sparseLu.solve(right);
                     }});
        const bool smallEnough = size <= 50;
        if (smallEnough) {
            c.push_back({"dense", [&] {
                             dense.setZero();
                             for (std::size_t k = 0; k < n.ends.size(); ++k) {
                                 const auto [a, b] = n.ends[k];
                                 if (a >= 0) dense(a, a) += n.siemens[k];
                                 if (b >= 0) dense(b, b) += n.siemens[k];
                                 if (a < 0 || b < 0) continue;
                                 dense(a, b) -= n.siemens[k];
                                 dense(b, a) -= n.siemens[k];
                             }
                             right.setConstant(1e-3);
                             denseLu.compute(dense);
                             x = denseLu.solve(right);
                         }});
        }
        interleave(c);
        const double own = c[0].medianSecond;
        product *= c[1].medianSecond / own;
        ++sizes;
        fmt::print("   {:>6} {:>10.3f} {:>8.2f} {:>12} {:>10.1f} {:>22.1e}\n", size, own * 1e6, c[1].medianSecond / own,
                   smallEnough ? fmt::format("{:.2f}", c[3].medianSecond / own) : "-", c[2].medianSecond / own,
                   worstResidualOverNineDecades(n, random));
    }
    fmt::print(
        "   geometric mean over KLU {:.2f} (bars: KLU 2 by mean and 1.8 each, dense 3 at n <= 10, SparseLU 15)\n\n",
        std::pow(product, 1.0 / sizes));
}

/// k branches of a resistor and an LED on one supply with inner resistance.
Circuit ledBranches(int count, double volt = 5) {
    Circuit circuit;
    const int minus = circuit.addNode(), plus = circuit.addNode();
    circuit.addSupply(plus, minus, volt, 0.01, 30);
    for (int k = 0; k < count; ++k) {
        const int middle = circuit.addNode();
        circuit.addConductor(plus, middle, 220 + 10 * (k % 40));
        circuit.add(JunctionLaw(k % 2 ? 1e-18 : 3e-20, 2, 5), {middle, minus});
    }
    return circuit;
}

/// The same Newton's method (start, law, steps, end) over the nodal equations, with KLU inside. The supply is folded to a current source
/// with a conductance, so that KLU gets the smaller and easier system.
class KluNewton {
public:
    explicit KluNewton(const Circuit& circuit)
        : circuit_(circuit),
          matrix_(networkOf(circuit)),
          volt_(circuit.nodeCount - 1) {
        state_.reset(circuit);
        loadMatrix();
        klu_ = std::make_unique<Klu>(matrix_);
    }

    void reset() {
        state_.reset(circuit_);
        std::fill(volt_.begin(), volt_.end(), 0.0);
    }

    int solve() {
        for (int iteration = 1; iteration < 60; ++iteration) {
            loadMatrix();
            klu_->run(right_.data());
            double voltStep = 0, junctionStep = 0;
            for (std::size_t i = 0; i < volt_.size(); ++i) {
                volt_[i] += right_[i];
                voltStep = std::max(voltStep, std::abs(right_[i]));
            }
            for (std::size_t k = 0; k < junctions().size(); ++k) {
                const auto& j = junctions()[k];
                const double across = at(j.nodes[0]) - at(j.nodes[1]);
                const double target = state_.touchVolt[k] +
                                      (1 - tangents_[k].siemens * j.law.seriesOhm()) * (across - tangents_[k].lineVolt);
                junctionStep = std::max(junctionStep, std::abs(target - state_.touchVolt[k]) / j.law.emissionVolt());
                state_.touchVolt[k] = j.law.limitedStep(state_.touchVolt[k], target);
            }
            if (junctionStep <= 1e-6 && voltStep <= 1e-9 * 5) return iteration;
        }
        return -1;
    }

private:
    struct Tangent {
        double ampere, siemens, lineVolt;
    };

    static Network networkOf(const Circuit& circuit) {
        Network n;
        n.nodes = circuit.nodeCount - 1;
        const auto add = [&](int from, int to) { n.ends.push_back({from - 1, to - 1}); };
        for (const auto& b : circuit.supplies) add(b.from, b.to);
        for (const auto& b : circuit.conductors) add(b.from, b.to);
        for (const auto& b : circuit.branches<JunctionLaw>()) add(b.nodes[0], b.nodes[1]);
        n.siemens.resize(n.ends.size());
        return n;
    }

    const LawBranches<JunctionLaw>& junctions() const { return circuit_.branches<JunctionLaw>(); }
    double at(int node) const { return node == 0 ? 0 : volt_[node - 1]; }

    void loadMatrix() {
        std::fill(matrix_.value.begin(), matrix_.value.end(), 0.0);
        right_.assign(volt_.size() + 1, 0.0);
        tangents_.resize(junctions().size());
        std::size_t stamp = 0;
        const auto add = [&](int from, int to, double siemens, double ampere) {
            const auto& s = matrix_.stamps[stamp++];
            matrix_.value[s[0]] += siemens;
            matrix_.value[s[1]] += siemens;
            matrix_.value[s[2]] -= siemens;
            matrix_.value[s[3]] -= siemens;
            if (from > 0) right_[from - 1] -= ampere;
            if (to > 0) right_[to - 1] += ampere;
        };
        for (const auto& b : circuit_.supplies)
            add(b.from, b.to, 1 / b.seriesOhm, (at(b.from) - at(b.to) - b.emfVolt) / b.seriesOhm);
        for (const auto& b : circuit_.conductors) add(b.from, b.to, b.siemens, b.siemens * (at(b.from) - at(b.to)));
        for (std::size_t k = 0; k < junctions().size(); ++k) {
            const auto& b = junctions()[k];
            const JunctionLaw::Point point = b.law.at(state_.touchVolt[k], kJunctionLeakSiemens);
            Tangent& t = tangents_[k];
            t = {point.ampere, point.siemens / (1 + point.siemens * b.law.seriesOhm()),
                 state_.touchVolt[k] + b.law.seriesOhm() * point.ampere};
            add(b.nodes[0], b.nodes[1], t.siemens,
                t.ampere + t.siemens * (at(b.nodes[0]) - at(b.nodes[1]) - t.lineVolt));
        }
    }

    const Circuit& circuit_;
    SolveState state_;
    Compressed matrix_;
    std::vector<double> volt_, right_;
    std::vector<Tangent> tangents_;
    std::unique_ptr<Klu> klu_;
};

void benchNewton() {
    fmt::print(
        "C  operating point of k LED branches (bars: iterations cold 7, warm 3, unchanged 1; 1.4 times as fast as with "
        "KLU inside)\n");
    fmt::print("   {:>6} {:>6} {:>6} {:>10} {:>10} {:>14} {:>12}\n", "k", "cold", "warm", "unchanged", "KLU cold",
               "cold solve us", "over KLU");
    for (int count : {1, 5, 20, 100}) {
        const Circuit low = ledBranches(count), high = ledBranches(count, 5.2);
        const std::vector<char> present(low.elementCount(), 1);
        CircuitSolver solver(low);
        const int cold = solver.solve(present, 0).iterations;
        const int unchanged = solver.solve(present, 0).iterations;
        CircuitSolver changed(high);
        std::copy(solver.touchVolts().begin(), solver.touchVolts().end(), changed.touchVolts().begin());
        const int warm = changed.solve(present, 0).iterations;
        KluNewton klu(low);
        const int kluCold = klu.solve();

        std::vector<double> start(low.branches<JunctionLaw>().size());
        for (std::size_t k = 0; k < start.size(); ++k) start[k] = low.branches<JunctionLaw>()[k].law.criticalVolt();
        std::vector<Contestant> c;
        c.push_back({"ours", [&] {
                         std::copy(start.begin(), start.end(), solver.touchVolts().begin());
                         if (!solver.solve(present, 0).solved()) std::abort();
                     }});
        c.push_back({"klu", [&] {
                         klu.reset();
                         if (klu.solve() < 0) std::abort();
                     }});
        interleave(c);
        fmt::print("   {:>6} {:>6} {:>6} {:>10} {:>10} {:>14.2f} {:>12.2f}\n", count, cold, warm, unchanged, kluCold,
                   c[0].medianSecond * 1e6, c[1].medianSecond / c[0].medianSecond);
    }
    fmt::print("\n");
}

void benchOperatingPoints() {
    fmt::print("P  operating points through bench and layout (bars: 100 us warm, 1 ms for 100 LED branches)\n");
    for (const EmbeddedFile& file : embeddedFiles()) {
        if (!file.name.ends_with(".bench.json")) continue;
        auto read = readBench(file.text);
        if (!read.ok()) {
            fmt::print("   {}: {}\n", file.name, read.error().oneLine());
            continue;
        }
        OperatingPoint point;
        const auto bench = std::make_shared<const Bench>(std::move(read).value().bench);
        point.setLayout(buildLayout(bench));
        Inputs pressed;
        for (const Part& part : bench->parts) pressed.held.insert(part.id);
        const Inputs released;
        bool down = false;
        point.solve(pressed);
        std::vector<Contestant> c;
        c.push_back({"unchanged", [&] { point.solve(pressed); }});
        c.push_back({"press", [&] { point.solve((down = !down) ? released : pressed); }});
        interleave(c, 7);
        fmt::print("   {:<40} unchanged {:>7.2f} us   press or release {:>7.2f} us\n", file.name,
                   c[0].medianSecond * 1e6, c[1].medianSecond * 1e6);
    }
    const Circuit hundred = ledBranches(100);
    const std::vector<char> present(hundred.elementCount(), 1);
    std::vector<Contestant> c;
    c.push_back({"first", [&] {
                     CircuitSolver solver(hundred);
                     if (!solver.solve(present, 0).solved()) std::abort();
                 }});
    interleave(c, 7);
    fmt::print("   100 LED branches, analysis and cold solve {:>7.2f} us\n", c[0].medianSecond * 1e6);
}

}  // namespace
}  // namespace tiepoint::bench

int main() {
    tiepoint::bench::benchLinear();
    tiepoint::bench::benchNewton();
    tiepoint::bench::benchOperatingPoints();
}
