#include "core/variants/ports.h"

#include <algorithm>
#include <cmath>

namespace tiepoint {

namespace {

constexpr int kMostPortSteps = 60;
constexpr double kPortSettled = 1e-6;     ///< of a law's unit, as in island.cpp
constexpr double kSettledAmpere = 1e-15;  ///< or so little current: behind leaks
                                          ///< rounding moves a voltage further
// Of an equation's largest entry. What leaks alone hold leaves pivots of 1e-9 and more, what nothing holds leaves rounding.
constexpr double kSmallestPortPivot = 1e-11;
constexpr double kNoPivot = 1e-12;
constexpr double kLiftUnit = 1e-5;
constexpr double kIdleAmpere = 1e-11;

}  // namespace

void PortSystem::clear() {
    ports_.clear();
    sources_.clear();
    lifts_.clear();
    rest_ = nullptr;
    anyStays_ = false;
}

int PortSystem::add(const Port& port) {
    Source source;
    if (port.stiff >= 0) {
        source.plus = &base_.ofStiff(port.stiff);
    } else if (port.soft >= 0) {
        source.plus = &base_.ofSoft(port.soft);
    } else if (port.ofCurve >= 0) {
        source.plus = &base_.ofCurve(port.ofCurve);
    } else {
        // A drive leaves the first point and enters the second.
        if (port.b.node >= 0) source.plus = &base_.ofNode(port.b.node);
        if (port.a.node >= 0) source.minus = &base_.ofNode(port.a.node);
    }
    ports_.push_back(port);
    sources_.push_back(source);
    return static_cast<int>(ports_.size()) - 1;
}

double PortSystem::responseOf(int port, int unknown) const {
    const Source& source = sources_[port];
    return (source.plus ? source.plus->unknown[unknown] : 0) - (source.minus ? source.minus->unknown[unknown] : 0);
}

/// Parts that ports touch. Of those that no port ties to the reference's, one of each group stays where it is.
void PortSystem::findLifts() {
    lifts_.clear();
    for (const Port& p : ports_) {
        for (const MetalPoint& point : {p.a, p.b})
            if (liftOf(point.part) < 0) lifts_.push_back({point.part, false, false});
    }
    std::vector<int>& group = groups_;
    group.resize(lifts_.size());
    for (std::size_t k = 0; k < group.size(); ++k) group[k] = static_cast<int>(k);
    for (const Port& p : ports_) {
        const bool ties = p.stiff < 0 && p.rule != PortRule::Fix && p.baseCurve < 0;
        if (!ties || (p.rule == PortRule::Tangent && p.element < 0)) continue;
        const int from = group[liftOf(p.a.part)], to = group[liftOf(p.b.part)];
        if (from == to) continue;
        for (int& each : group)
            if (each == from) each = to;
    }
    const int main = liftOf(base_.mainComponent());
    if (main >= 0) lifts_[main].fixed = true;
    for (std::size_t k = 0; k < lifts_.size(); ++k) {
        lifts_[k].tied = main >= 0 && group[k] == group[main];
        bool hasFixed = false;
        for (std::size_t other = 0; other < lifts_.size(); ++other)
            hasFixed = hasFixed || (group[other] == group[k] && lifts_[other].fixed);
        if (!hasFixed) lifts_[k].fixed = true;
    }
}

int PortSystem::liftOf(int part) const {
    for (std::size_t k = 0; k < lifts_.size(); ++k)
        if (lifts_[k].part == part) return static_cast<int>(k);
    return -1;
}

bool PortSystem::isTied(int part) const {
    const int lift = liftOf(part);
    return lift < 0 ? part == base_.mainComponent() : lifts_[lift].tied;
}

void PortSystem::findShares() {
    const int ports = static_cast<int>(ports_.size());
    volts_.assign(static_cast<std::size_t>(ports) * ports, 0.0);
    currents_.assign(volts_.size(), 0.0);
    for (int k = 0; k < ports; ++k) {
        const Port& p = ports_[k];
        for (int by = 0; by < ports; ++by) {
            double volt = 0;
            if (p.a.node >= 0) volt += responseOf(by, p.a.node);
            if (p.b.node >= 0) volt -= responseOf(by, p.b.node);
            volts_[k * ports + by] = volt;
            if (p.stiff >= 0) currents_[k * ports + by] = responseOf(by, base_.nodeCount() + p.stiff);
        }
    }
}

void PortSystem::fillRows() {
    const int ports = static_cast<int>(ports_.size());
    const int lifts = static_cast<int>(lifts_.size());
    count_ = ports + lifts;
    const int width = count_;
    matrix_.assign(static_cast<std::size_t>(width) * width, 0.0);
    right_.assign(width, 0.0);
    for (int k = 0; k < ports; ++k) {
        const Port& p = ports_[k];
        double* const row = matrix_.data() + k * width;
        // How much the voltage and the stiff current count in this equation, and what stands on its right.
        double volt = 0, ampere = 0, own = 0;
        if (p.stays) {
            row[k] = 1;
            continue;
        }
        switch (p.rule) {
            case PortRule::Join:
                volt = 1;
                break;
            case PortRule::Hold:
                volt = 1;
                (p.stiff < 0 ? own : ampere) = -p.ohm;
                right_[k] = p.emfVolt;
                break;
            case PortRule::Fix:
                (p.stiff < 0 ? own : ampere) = 1;
                right_[k] = p.fixedAmpere;
                break;
            case PortRule::Tangent:
                own = 1;
                volt = p.before.siemens - p.now.siemens;
                right_[k] = p.now.at(0) - p.before.at(0);
                break;
        }
        for (int by = 0; by < ports; ++by) row[by] = volt * volts_[k * ports + by] + ampere * currents_[k * ports + by];
        row[k] += own;
        row[ports + liftOf(p.a.part)] += volt;
        row[ports + liftOf(p.b.part)] -= volt;
        right_[k] -= volt * ((p.a.node >= 0 ? restOf(p.a.node) : 0) - (p.b.node >= 0 ? restOf(p.b.node) : 0));
        if (p.stiff >= 0) right_[k] -= ampere * restOf(base_.nodeCount() + p.stiff);
        if (p.stiff >= 0) continue;
        const int from = liftOf(p.a.part), to = liftOf(p.b.part);
        if (!lifts_[from].fixed) matrix_[(ports + from) * width + k] -= 1;
        if (!lifts_[to].fixed) matrix_[(ports + to) * width + k] += 1;
    }
    for (int lift = 0; lift < lifts; ++lift)
        if (lifts_[lift].fixed) matrix_[(ports + lift) * width + ports + lift] = 1;
}

/// Gauss's elimination with pivots by value, equations scaled.
bool PortSystem::eliminate() {
    const int n = count_;
    failedColumn_ = -1;
    for (int row = 0; row < n; ++row) {
        double* const a = matrix_.data() + row * n;
        double largest = 0;
        for (int k = 0; k < n; ++k) largest = std::max(largest, std::abs(a[k]));
        if (!std::isfinite(largest)) return false;
        if (largest == 0) continue;  // it finds no pivot
        for (int k = 0; k < n; ++k) a[k] /= largest;
        right_[row] /= largest;
    }
    for (int pivot = 0; pivot < n; ++pivot) {
        int best = pivot;
        for (int row = pivot + 1; row < n; ++row)
            if (std::abs(matrix_[row * n + pivot]) > std::abs(matrix_[best * n + pivot])) best = row;
        const double size = std::abs(matrix_[best * n + pivot]);
        // Of a lift, what is left is the conductance that holds it, beside drives of 1.
        const double unit = pivot < static_cast<int>(ports_.size()) ? 1 : kLiftUnit;
        if (!(size > kSmallestPortPivot * unit)) {
            if (size < kNoPivot * unit) failedColumn_ = pivot;
            return false;
        }
        if (best != pivot) {
            std::swap_ranges(matrix_.begin() + best * n, matrix_.begin() + (best + 1) * n, matrix_.begin() + pivot * n);
            std::swap(right_[best], right_[pivot]);
        }
        const double* const above = matrix_.data() + pivot * n;
        for (int row = pivot + 1; row < n; ++row) {
            double* const a = matrix_.data() + row * n;
            if (a[pivot] == 0) continue;
            const double factor = a[pivot] / above[pivot];
            for (int k = pivot + 1; k < n; ++k) a[k] -= factor * above[k];
            right_[row] -= factor * right_[pivot];
        }
    }
    unknown_.resize(n);
    for (int row = n - 1; row >= 0; --row) {
        double sum = right_[row];
        for (int k = row + 1; k < n; ++k) sum -= matrix_[row * n + k] * unknown_[k];
        unknown_[row] = sum / matrix_[row * n + row];
        if (!std::isfinite(unknown_[row])) return false;
    }
    return true;
}

bool PortSystem::keepOne(int column) {
    // What may move without moving any equation: which of the branches that go has most of it.
    const int n = count_;
    std::vector<double> free(column + 1, 0.0);
    free[column] = 1;
    for (int row = column - 1; row >= 0; --row) {
        double sum = 0;
        for (int k = row + 1; k <= column; ++k) sum -= matrix_[row * n + k] * free[k];
        free[row] = sum / matrix_[row * n + row];
    }
    int most = -1;
    const int ports = static_cast<int>(ports_.size());
    for (int k = 0; k < std::min(ports, column + 1); ++k) {
        if (!ports_[k].goes || ports_[k].stays) continue;
        if (most < 0 || std::abs(free[k]) > std::abs(free[most])) most = k;
    }
    if (most < 0 || std::abs(free[most]) < kNoPivot) return false;
    ports_[most].stays = anyStays_ = true;
    return true;
}

bool PortSystem::staysAreIdle() const {
    for (std::size_t k = 0; k < ports_.size() && anyStays_; ++k) {
        const Port& p = ports_[k];
        if (!p.stays) continue;
        const double ampere = p.stiff >= 0 ? stiffAmpere(p.stiff) : p.before.at(across(static_cast<int>(k)));
        if (!(std::abs(ampere) < kIdleAmpere)) return false;
    }
    return true;
}

/// One step of every curve among the ports; whether all stood still.
bool PortSystem::moveCurves() {
    double largest = 0;
    for (std::size_t k = 0; k < ports_.size(); ++k) {
        Port& p = ports_[k];
        if (!p.curve) continue;
        const double target = p.curve->touched(p.touch, p.now, across(static_cast<int>(k)));
        const double move = std::abs(target - p.touch);
        if (move * p.now.siemens > kSettledAmpere) largest = std::max(largest, move * p.curve->perUnitVolt);
        p.touch = p.curve->limited(p.touch, target);
    }
    return largest <= kPortSettled;
}

bool PortSystem::solve() {
    findLifts();
    findShares();
    for (int step = 0; step < kMostPortSteps; ++step) {
        for (Port& p : ports_)
            if (p.curve) p.now = p.curve->tangent(p.touch);
        fillRows();
        while (!eliminate()) {
            if (failedColumn_ < 0 || !keepOne(failedColumn_)) return false;
            fillRows();
        }
        if (moveCurves()) return staysAreIdle();
    }
    return false;
}

double PortSystem::volt(const MetalPoint& point) const {
    double volt = 0;
    if (point.node >= 0) {
        volt = restOf(point.node);
        for (std::size_t k = 0; k < ports_.size(); ++k)
            volt += unknown_[k] * responseOf(static_cast<int>(k), point.node);
    }
    const int lift = liftOf(point.part);
    return lift < 0 ? volt : volt + unknown_[ports_.size() + lift];
}

double PortSystem::stiffAmpere(int stiff) const {
    const int unknown = base_.nodeCount() + stiff;
    double ampere = restOf(unknown);
    for (std::size_t k = 0; k < ports_.size(); ++k) ampere += unknown_[k] * responseOf(static_cast<int>(k), unknown);
    return ampere;
}

void PortSystem::addAcross(std::vector<double>& across) const {
    const auto add = [&](const BaseSystem::Response* response, double drive) {
        if (!response || drive == 0) return;
        const double* const each = response->across.data();
        for (std::size_t k = 0; k < across.size(); ++k) across[k] += drive * each[k];
    };
    for (std::size_t k = 0; k < ports_.size(); ++k) {
        add(sources_[k].plus, unknown_[k]);
        add(sources_[k].minus, -unknown_[k]);
    }
}

}  // namespace tiepoint
