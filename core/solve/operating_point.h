#pragma once
// The operating point: which voltages and currents a bench settles to, for given inputs.

#include "core/instant/inputs.h"
#include "core/instant/state.h"
#include "core/nets/layout.h"

#include <iterator>
#include <memory>
#include <span>
#include <string>
#include <utility>
#include <vector>

namespace tiepoint {

enum class Status {
    Solved,  ///< something drives the circuit, and every number is a solution
    Off,     ///< nothing drives it: no supply is on, no instrument tests anything, no part has energy stored
    None,    ///< no solution exists or none was found: no number may be shown
};

/// A constant of an element as the solve used it, SI.
using Constant = std::pair<std::string, double>;

/// What only an edit changes about an element: whose it is, and its resolved parameters.
struct ElementPlace {
    int part = 0;  ///< part index
    int spec = 0;  ///< index into the kind's model
    std::vector<Constant> constants;
};
using ElementPlaces = std::vector<ElementPlace>;

/// One element as it was solved, read off a Solution; valid as long as that.
struct ElementState {
    int part = 0;              ///< part index
    int spec = 0;              ///< index into the kind's model
    bool closed = true;        ///< contacts: whether it conducts
    bool limiting = false;     ///< supplies: the current limit holds
    double currentAmpere = 0;  ///< into its first terminal: of two, from `from` to `to`
    double powerWatt = 0;      ///< taken (negative: given)
    double told = 0;           ///< what it tells of itself: a speed, a bit, a pitch (core/circuit/law.h); 0 of most
    std::span<const Constant> constants;
};

struct Solution {
    Status status = Status::None;
    std::string reason;              ///< why there is none, in plain words
    std::vector<int> troubleParts;   ///< part indices at the place of the trouble
    std::vector<double> netVoltage;  ///< by net; NaN: floating (no conductor ties it to the reference)
    std::vector<double>
        leadInjection;  ///< by lead: current that the elements at this lead draw out of the metal, i.e. into the part.
                        ///< For joined leads the group's whole current stands at its first lead.

    // By element, as in `places`: by part, then by model order.
    std::vector<double> elementAmpere, elementWatt, elementTold;
    std::vector<char> elementClosed, elementLimiting;
    std::shared_ptr<const ElementPlaces> places;  ///< shared by all solutions of one layout; null without elements

    int iterations = 0;         ///< Newton iterations of the slowest island
    double kirchhoffWorst = 0;  ///< A, worst defect at any node
    double powerBalance = 0;    ///< W, sum of all element powers

    int elementCount() const { return static_cast<int>(elementAmpere.size()); }
    ElementState element(int index) const {
        const ElementPlace& place = (*places)[index];
        return {place.part,           place.spec,         elementClosed[index] != 0, elementLimiting[index] != 0,
                elementAmpere[index], elementWatt[index], elementTold[index],        place.constants};
    }
    class Elements;
    /// All of them, in order; valid as long as the solution.
    Elements elements() const;
};

/// The elements of a solution as a range of values. (A view of the standard library would do, but clang 14 reads none of them.)
class Solution::Elements {
public:
    class Iterator {
    public:
        using value_type = ElementState;
        using difference_type = std::ptrdiff_t;
        using iterator_concept = std::forward_iterator_tag;

        Iterator() = default;
        Iterator(const Solution* solution, int index) : solution_(solution), index_(index) {}
        ElementState operator*() const { return solution_->element(index_); }
        Iterator& operator++() {
            ++index_;
            return *this;
        }
        Iterator operator++(int) {
            const Iterator before = *this;
            ++index_;
            return before;
        }
        friend bool operator==(const Iterator&, const Iterator&) = default;

    private:
        const Solution* solution_ = nullptr;
        int index_ = 0;
    };

    explicit Elements(const Solution& solution) : solution_(&solution) {}
    Iterator begin() const { return {solution_, 0}; }
    Iterator end() const { return {solution_, solution_->elementCount()}; }
    ElementState operator[](int index) const { return solution_->element(index); }
    int size() const { return solution_->elementCount(); }
    ElementState back() const { return solution_->element(solution_->elementCount() - 1); }

private:
    const Solution* solution_;
};

inline Solution::Elements Solution::elements() const { return Elements(*this); }

/// Solves one layout for changing inputs, warm from the last answer. Not thread-safe; the answer never depends on the order of parts.
class OperatingPoint {
public:
    OperatingPoint();
    ~OperatingPoint();
    OperatingPoint(OperatingPoint&&) noexcept;
    OperatingPoint& operator=(OperatingPoint&&) noexcept;

    /// Compiles the circuit. Junction voltages of parts that stay (by id) are kept as the next start.
    void setLayout(std::shared_ptr<const Layout> layout);
    /// The solution; valid until the next call. What parts have stored drives a circuit as a source does.
    const Solution& solve(const Inputs& inputs, const State& state = {});

private:
    struct Body;
    std::unique_ptr<Body> body_;
};

}  // namespace tiepoint
