#pragma once
// The operating point: which voltages and currents a bench settles to, for given inputs.

#include "core/bench/inputs.h"
#include "core/nets/layout.h"

#include <memory>
#include <string>
#include <vector>

namespace tiepoint {

enum class Status {
    Solved,  ///< a source is on (a supply, or an instrument's test source), and every number is a solution
    Off,     ///< no supply is switched on and no instrument tests anything: no voltage, no current
    None,    ///< no solution exists or none was found: no number may be shown
};

/// One element as it was solved: the current through it and the constants that the solve used.
struct ElementState {
    int part = 0;                                           ///< part index
    int spec = 0;                                           ///< index into the kind's model
    bool closed = true;                                     ///< contacts: whether it conducts
    bool limiting = false;                                  ///< supplies: the current limit holds
    double currentAmpere = 0;                               ///< from `from` to `to`
    double powerWatt = 0;                                   ///< taken (negative: given)
    std::vector<std::pair<std::string, double>> constants;  ///< resolved parameters by name, SI
};

struct Solution {
    Status status = Status::None;
    std::string reason;              ///< why there is none, in plain words
    std::vector<int> troubleParts;   ///< part indices at the place of the trouble
    std::vector<double> netVoltage;  ///< by net; NaN: floating (no conductor ties it to the reference)
    std::vector<double>
        leadInjection;  ///< by lead: current that the elements at this lead draw out of the metal, i.e. into the part.
                        ///< For joined leads the group's whole current stands at its first lead.
    std::vector<ElementState> elements;  ///< by part, then by model order
    int iterations = 0;                  ///< Newton iterations of the slowest island
    double kirchhoffWorst = 0;           ///< A, worst defect at any node
    double powerBalance = 0;             ///< W, sum of all element powers
};

/// Solves one layout for changing inputs, warm from the last answer. Not thread-safe; the answer never depends on the order of parts.
class OperatingPoint {
public:
    OperatingPoint();
    ~OperatingPoint();
    OperatingPoint(OperatingPoint&&) noexcept;
    OperatingPoint& operator=(OperatingPoint&&) noexcept;

    /// Compiles the circuit. Junction voltages of parts that stay (by id) are kept as the next start.
    void setLayout(std::shared_ptr<const Layout> layout);
    /// The solution; valid until the next call.
    const Solution& solve(const Inputs& inputs);

private:
    struct Body;
    std::unique_ptr<Body> body_;
};

}  // namespace tiepoint
