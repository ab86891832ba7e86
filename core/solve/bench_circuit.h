#pragma once
// A bench's layout as a circuit, and a circuit's solution as the bench's: what is present for given inputs, where 0 V is, and whose
// lead, net and element each number belongs to. The same for a bench at rest and one in time. The circuit itself lies with whoever
// solves it.
// Thread rule: one thread at a time.

#include "core/circuit/compile.h"
#include "core/solve/circuit_solver.h"
#include "core/solve/operating_point.h"

#include <memory>
#include <string>
#include <vector>

namespace tiepoint {

class BenchCircuit {
public:
    /// Compiles a layout and hands over its circuit, to which elements may be added: `addHidden`.
    Circuit setLayout(std::shared_ptr<const Layout> layout);
    /// The next element of the circuit is part of another one between the same nodes, as the air is of a contact: always present, and
    /// counted there.
    void addHidden(const Circuit& circuit, int ofElement);

    const Layout& layout() const { return *layout_; }
    const std::vector<CompiledElement>& elements() const { return compiled_.elements; }
    /// What is present for the inputs, by element; whether a supply is on.
    bool setInputs(const Inputs& inputs);
    const std::vector<char>& present() const { return present_; }
    std::vector<char>& present() { return present_; }
    /// What surrounds the elements for the inputs, by element.
    const std::vector<Surroundings>& surroundings() const { return surroundings_; }
    /// Where 0 V is; looked for anew only where contacts or supplies stand otherwise than at the last question.
    int reference(const Circuit& circuit);
    /// Whether some part of the bench has energy that can drive current.
    bool hasStored(const State& state) const;

    Solution& solution() { return solution_; }
    void clear();  ///< numbers of searches and reasons, before an answer is written
    void writeOff() { fillWith(Status::Off, 0); }
    void write(const CircuitSolution& found);  ///< its numbers, or why there are none

private:
    void prepareSolution();
    int findReference(const Circuit& circuit) const;
    void fillWith(Status status, double current);
    void copy(const CircuitSolution& found);
    void explain(const CircuitSolution& found);

    std::shared_ptr<const Layout> layout_;
    CompiledCircuit compiled_;   ///< without its circuit
    std::vector<char> present_;  ///< by element
    std::vector<int> placeOf_;   ///< by element: its place in the solution
    std::vector<int> supplyOf_;  ///< by element: index of the supply, or -1
    std::vector<char> drives_;   ///< by element: whether it drives a circuit where it is present
    std::vector<Surroundings> surroundings_;
    Solution solution_;
    std::vector<char> referredTo_;  ///< what was present when the reference was last looked for
    int foundReference_ = -1;
};

}  // namespace tiepoint
