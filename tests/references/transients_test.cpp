// Worked circuits in time from published books and from closed forms, as data in transients.json beside this file: each names its source.
// The switch of a book closes at 0 s, where the run begins.

#include "core/time/circuit_run.h"

#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include <cmath>
#include <fstream>
#include <map>
#include <string>

namespace tiepoint {
namespace {

using TransientJson = nlohmann::json;

/// One circuit of the data that can be run and asked.
class WorkedTransient {
public:
    explicit WorkedTransient(const TransientJson& data) {
        node("0");
        for (const auto& element : data["elements"]) add(element);
        Tolerance tolerance;
        tolerance.relative = 1e-7;
        tolerance.volt = tolerance.ampere = 1e-9;
        run_ = CircuitRun(circuit_, tolerance);
        for (const auto& [store, value] : starts_) run_.state().stored[store] = value;
        for (const auto& [path, ampere] : startAmpere_) run_.state().pathAmpere[path] = ampere;
        EXPECT_TRUE(run_.start(std::vector<char>(circuit_.elementCount(), 1), nodes_.at("0")));
    }

    void goTo(double second) { ASSERT_TRUE(run_.advanceTo(second)); }
    double second() const { return run_.second(); }
    double kirchhoffWorst() { return run_.solution().kirchhoffWorst; }

    /// V(a,b) or I(x).
    double read(const std::string& quantity) {
        const CircuitSolution& s = run_.solution();
        const auto open = quantity.find('('), close = quantity.find(')');
        const std::string inner = quantity.substr(open + 1, close - open - 1);
        if (quantity[0] == 'I') return s.elementAmpere[elements_.at(inner)];
        const auto comma = inner.find(',');
        return s.nodeVolt[nodes_.at(inner.substr(0, comma))] - s.nodeVolt[nodes_.at(inner.substr(comma + 1))];
    }

private:
    int node(const std::string& name) {
        const auto [found, isNew] = nodes_.try_emplace(name, circuit_.nodeCount);
        if (isNew) circuit_.addNode();
        return found->second;
    }

    void add(const TransientJson& element) {
        const int a = node(element["nodes"][0]), b = node(element["nodes"][1]);
        const std::string kind = element["kind"];
        const double value = element.value("value", 0.0), start = element.value("start", 0.0);
        int& number = elements_[element["name"]];
        if (kind == "source") number = circuit_.addSupply(a, b, value);
        if (kind == "resistor") number = circuit_.addConductor(a, b, value);
        if (kind == "switch") number = circuit_.addConductor(a, b, 1e-6);
        const int store = circuit_.storeCount;
        if (kind == "capacitor") {
            number = circuit_.add(CapacitanceLaw(std::vector<double>{value, 0, 0}), {a, b});
            starts_[store] = value * start;
        }
        if (kind == "inductor") {
            number = circuit_.add(InductanceLaw(std::vector<double>{value, 0, 0}), {a, b});
            starts_[store] = value * start;
            startAmpere_[circuit_.firstPath[number]] = start;
        }
    }

    Circuit circuit_;
    std::map<std::string, int> nodes_, elements_;
    std::map<int, double> starts_, startAmpere_;
    CircuitRun run_;
};

/// "time_to V(3,0)=80": when it gets there.
double timeTo(WorkedTransient& circuit, const std::string& quantity, double about) {
    const auto equals = quantity.find('=');
    const std::string what = quantity.substr(8, equals - 8);
    const double goal = std::stod(quantity.substr(equals + 1));
    const double begun = circuit.read(what);
    constexpr int kSteps = 2000;
    double before = begun;
    for (int i = 1; i <= 2 * kSteps; ++i) {
        circuit.goTo(about * i / kSteps);
        const double now = circuit.read(what);
        if ((now - goal) * (begun - goal) <= 0) return about / kSteps * (i - (now - goal) / (now - before));
        before = now;
    }
    return INFINITY;
}

TEST(Transients, WorkedCircuitsOfBooks) {
    std::ifstream file(TIEPOINT_SOURCE_DIR "/tests/references/transients.json");
    const TransientJson data = TransientJson::parse(file);
    int checks = 0;
    for (const auto& circuit : data["circuits"]) {
        SCOPED_TRACE(circuit["id"].get<std::string>());
        WorkedTransient worked(circuit);
        auto sorted = circuit["checks"].get<std::vector<TransientJson>>();
        std::ranges::stable_sort(sorted, {}, [](const TransientJson& c) { return c.value("second", 0.0); });
        for (const auto& check : sorted) {
            const std::string quantity = check["quantity"];
            SCOPED_TRACE(quantity);
            const double exact = check["exact"], tolerance = check["tolerance"];
            const double printed = check.value("expected", exact);
            double read = 0;
            if (quantity.starts_with("time_to")) {
                WorkedTransient fresh(circuit);
                read = timeTo(fresh, quantity, exact);
                EXPECT_NEAR(read, exact, 1e-5 * exact);
            } else {
                worked.goTo(check["second"]);
                read = worked.read(quantity);
                // Books give a switched instant as what holds right after it.
                const double scale = std::max(std::abs(exact), quantity[0] == 'V' ? 1.0 : 1e-2);
                EXPECT_NEAR(read, exact, 1e-5 * scale);
                EXPECT_LT(worked.kirchhoffWorst(), 1e-9);
            }
            EXPECT_NEAR(read, printed, tolerance + 1e-5 * std::abs(exact));
            ++checks;
        }
    }
    EXPECT_GE(checks, 40);
}

}  // namespace
}  // namespace tiepoint
