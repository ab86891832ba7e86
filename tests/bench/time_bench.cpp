// Benchmarks of circuits in time beside a general library (SUNDIALS IDA, dense, rtol 1e-4), in one process:
//   D  an RC chain, a ringing RLC, an astable pair, a rectifier fed by a resonant circuit; ours at an error not larger than IDA's
// Ratios count; absolute times are of this machine and this moment. Each run begins at power-up, ours with its planning.

#include "bench/interleave.h"
#include "core/time/circuit_run.h"

#include <fmt/format.h>

#include <cmath>

#ifdef TIEPOINT_SUNDIALS
#include <ida/ida.h>
#include <nvector/nvector_serial.h>
#include <sundials/sundials_context.h>
#include <sunlinsol/sunlinsol_dense.h>
#include <sunmatrix/sunmatrix_dense.h>
#endif

namespace tiepoint::bench {
namespace {

using Residual = std::function<void(const double* y, const double* slope, double* left)>;

/// The same circuit for both, and what is compared at the end of equal pieces of time.
struct Task {
    std::string name;
    double bar = 0;
    double untilSecond = 0;
    int samples = 20;
    Circuit circuit;
    std::vector<double> stored;  ///< by store, at the start
    int node = 0;                ///< whose voltage is compared
    int unknowns = 0;            ///< of IDA
    int unknown = 0;             ///< the same voltage there
    std::vector<double> start;
    Residual residual;
    std::function<double(double)> closedForm;  ///< empty: a run of ours with a far smaller tolerance
};

double grown(double volt) { return std::exp(std::min(volt / kThermalVoltage, 200.0)) - 1; }

Task chargingTask() {
    Task t;
    t.name = "RC";
    t.bar = 6;
    t.untilSecond = 10;
    const int g = t.circuit.addNode(), plus = t.circuit.addNode(), top = t.circuit.addNode();
    t.circuit.addSupply(plus, g, 15);
    t.circuit.addConductor(plus, top, 1e4);
    t.circuit.add(CapacitanceLaw(std::vector<double>{1e-4, 0, 0}), {top, g});
    t.node = top;
    t.unknowns = 1;
    t.start = {0};
    t.residual = [](const double* y, const double* slope, double* left) {
        left[0] = 1e-4 * slope[0] - (15 - y[0]) / 1e4;
    };
    t.closedForm = [](double second) { return 15 * (1 - std::exp(-second)); };
    return t;
}

Task ringingTask() {
    Task t;
    t.name = "RLC";
    t.bar = 5;
    t.untilSecond = 5e-3;
    t.samples = 50;
    const int g = t.circuit.addNode(), plus = t.circuit.addNode(), middle = t.circuit.addNode(),
              end = t.circuit.addNode();
    t.circuit.addSupply(plus, g, 5);
    t.circuit.addConductor(plus, middle, 20);
    t.circuit.add(InductanceLaw(std::vector<double>{0.01, 0, 0}), {middle, end});
    t.circuit.add(CapacitanceLaw(std::vector<double>{1e-6, 0, 0}), {end, g});
    t.node = end;
    t.unknowns = 2;
    t.start = {0, 0};
    t.residual = [](const double* y, const double* slope, double* left) {
        left[0] = 1e-6 * slope[0] - y[1];
        left[1] = 0.01 * slope[1] - (5 - 20 * y[1] - y[0]);
    };
    t.closedForm = [](double second) {
        const double alpha = 1000, omega = std::sqrt(1e8 - alpha * alpha);
        return 5 *
               (1 - std::exp(-alpha * second) * (std::cos(omega * second) + alpha / omega * std::sin(omega * second)));
    };
    return t;
}

Task astableTask() {
    Task t;
    t.name = "astable";
    t.bar = 4;
    t.untilSecond = 0.25;
    t.samples = 50;
    const int g = t.circuit.addNode(), plus = t.circuit.addNode();
    t.circuit.addSupply(plus, g, 5);
    const int c[2] = {t.circuit.addNode(), t.circuit.addNode()}, b[2] = {t.circuit.addNode(), t.circuit.addNode()};
    for (int k : {0, 1}) {
        t.circuit.addConductor(plus, c[k], 1e3);
        t.circuit.addConductor(plus, b[k], 47e3);
        t.circuit.add(TransistorLaw(std::vector<double>{200 + 20.0 * k, 5, 1e-14, 1, 0, 0, 8e-12, 4e-12}),
                      {c[k], b[k], g});
        t.circuit.add(CapacitanceLaw(std::vector<double>{1e-6, 0, 0}), {c[k], b[1 - k]});
    }
    t.stored.assign(static_cast<std::size_t>(t.circuit.storeCount), 0.0);
    // The first base at half a volt, all else at none: charges of each transistor, then of its capacitor.
    t.stored[0] = 8e-12 * 0.5;
    t.stored[1] = 4e-12 * 0.5;
    t.stored[5] = -1e-6 * 0.5;
    t.node = c[0];
    t.unknowns = 4;  // c0 c1 b0 b1
    t.start = {0, 0, 0.5, 0};
    t.residual = [](const double* y, const double* slope, double* left) {
        for (int k : {0, 1}) {
            const double collector = y[k], base = y[2 + k];
            const double dc = slope[k], db = slope[2 + k], dOther = slope[1 - k], dOtherBase = slope[3 - k];
            const double there = 1e-14 * grown(base), back = 1e-14 * grown(base - collector);
            left[k] = (collector - 5) / 1e3 + (there - back) - back / 5 - 4e-12 * (db - dc) + 1e-6 * (dc - dOtherBase);
            left[2 + k] = (base - 5) / 47e3 + there / (200 + 20.0 * k) + back / 5 + 8e-12 * db + 4e-12 * (db - dc) +
                          1e-6 * (db - dOther);
        }
    };
    return t;
}

Task rectifierTask() {
    Task t;
    t.name = "rectifier";
    t.bar = 4.5;
    t.untilSecond = 0.2;
    t.samples = 100;
    // 1000 uF and 10 mH swing at 50 Hz from 10 V and feed 10 uF with 1 kohm through a diode and 10 ohm.
    const int g = t.circuit.addNode(), source = t.circuit.addNode(), anode = t.circuit.addNode(),
              out = t.circuit.addNode();
    t.circuit.add(InductanceLaw(std::vector<double>{0.01, 0, 0}), {source, g});
    t.circuit.add(CapacitanceLaw(std::vector<double>{1e-3, 0, 0}), {source, g});
    t.circuit.addConductor(source, anode, 10);
    t.circuit.add(JunctionLaw(1e-12, 1, 0), {anode, out});
    t.circuit.add(CapacitanceLaw(std::vector<double>{1e-5, 0, 0}), {out, g});
    t.circuit.addConductor(out, g, 1e3);
    // Stores stand in the order of adding: the flux, then the two charges.
    t.stored = {0, 1e-3 * 10, 0};
    t.node = out;
    t.unknowns = 4;  // source, out, current of the coil, anode
    t.unknown = 1;
    t.start = {10, 0, 0, 0};
    t.residual = [](const double* y, const double* slope, double* left) {
        const double through = (y[0] - y[3]) / 10;
        left[0] = 1e-3 * slope[0] + y[2] + through;
        left[1] = 1e-5 * slope[1] + y[1] / 1e3 - through;
        left[2] = 0.01 * slope[2] - y[0];
        left[3] = 1e-12 * grown(y[3] - y[1]) - through;
    };
    return t;
}

std::vector<double> oursOf(const Task& t, double relative, long long* steps = nullptr) {
    Tolerance tolerance;
    tolerance.relative = relative;
    tolerance.volt = relative * 1e-2;
    tolerance.ampere = relative * 1e-4;
    CircuitRun run(t.circuit, tolerance);
    for (std::size_t k = 0; k < t.stored.size(); ++k) run.state().stored[k] = t.stored[k];
    std::vector<double> read;
    const std::vector<char> present(static_cast<std::size_t>(t.circuit.elementCount()), 1);
    if (!run.start(present, 0)) return read;
    for (int i = 1; i <= t.samples; ++i) {
        if (!run.advanceTo(t.untilSecond * i / t.samples)) return {};
        read.push_back(run.solution().nodeVolt[t.node]);
    }
    if (steps) *steps = run.stepCount();
    return read;
}

double rootMeanSquare(const std::vector<double>& read, const std::vector<double>& truth) {
    if (read.size() != truth.size()) return INFINITY;
    double sum = 0;
    for (std::size_t i = 0; i < read.size(); ++i) sum += (read[i] - truth[i]) * (read[i] - truth[i]);
    return std::sqrt(sum / static_cast<double>(read.size()));
}

#ifdef TIEPOINT_SUNDIALS
int residualOf(double, N_Vector y, N_Vector slope, N_Vector left, void* task) {
    static_cast<const Task*>(task)->residual(N_VGetArrayPointer(y), N_VGetArrayPointer(slope),
                                             N_VGetArrayPointer(left));
    return 0;
}

std::vector<double> idaOf(const Task& t, double relative, SUNContext context, long* steps = nullptr) {
    N_Vector y = N_VNew_Serial(t.unknowns, context), slope = N_VNew_Serial(t.unknowns, context),
             kinds = N_VNew_Serial(t.unknowns, context);
    for (int i = 0; i < t.unknowns; ++i) N_VGetArrayPointer(y)[i] = t.start[static_cast<std::size_t>(i)];
    N_VConst(0, slope);
    N_VConst(1, kinds);
    if (t.name == "rectifier") N_VGetArrayPointer(kinds)[3] = 0;
    void* memory = IDACreate(context);
    IDAInit(memory, residualOf, 0, y, slope);
    IDASStolerances(memory, relative, relative * 1e-2);
    IDASetMaxNumSteps(memory, 1000000);
    IDASetUserData(memory, const_cast<Task*>(&t));
    SUNMatrix matrix = SUNDenseMatrix(t.unknowns, t.unknowns, context);
    SUNLinearSolver solver = SUNLinSol_Dense(y, matrix, context);
    IDASetLinearSolver(memory, solver, matrix);
    IDASetId(memory, kinds);
    std::vector<double> read;
    if (IDACalcIC(memory, IDA_YA_YDP_INIT, t.untilSecond * 1e-6) == IDA_SUCCESS) {
        for (int i = 1; i <= t.samples; ++i) {
            double reached = 0;
            if (IDASolve(memory, t.untilSecond * i / t.samples, &reached, y, slope, IDA_NORMAL) < 0) break;
            read.push_back(N_VGetArrayPointer(y)[t.unknown]);
        }
    }
    if (steps) IDAGetNumSteps(memory, steps);
    IDAFree(&memory);
    SUNLinSolFree(solver);
    SUNMatDestroy(matrix);
    for (N_Vector v : {y, slope, kinds}) N_VDestroy(v);
    return read;
}

void compare(const Task& t, SUNContext context) {
    std::vector<double> truth;
    for (int i = 1; t.closedForm && i <= t.samples; ++i) truth.push_back(t.closedForm(t.untilSecond * i / t.samples));
    if (!t.closedForm) truth = oursOf(t, 1e-9);
    constexpr double kIdaTolerance = 1e-4;
    long idaSteps = 0;
    const double idaError = rootMeanSquare(idaOf(t, kIdaTolerance, context, &idaSteps), truth);
    double relative = 1e-3, ownError = INFINITY;
    long long steps = 0;
    for (; relative > 1e-8; relative /= 1.5) {
        ownError = rootMeanSquare(oursOf(t, relative, &steps), truth);
        if (ownError <= idaError) break;
    }
    std::vector<Contestant> c;
    c.push_back({"ours", [&] { oursOf(t, relative); }});
    c.push_back({"ida", [&] { idaOf(t, kIdaTolerance, context); }});
    interleave(c);
    fmt::print("   {:<10} {:>9.1e} {:>9.1e} {:>9.1e} {:>6} {:>6} {:>10.1f} {:>10.1f} {:>8.2f} {:>6.1f} {:>12.0f}\n",
               t.name, idaError, ownError, relative, idaSteps, steps, c[1].medianSecond * 1e6, c[0].medianSecond * 1e6,
               c[1].medianSecond / c[0].medianSecond, t.bar, t.untilSecond / c[0].medianSecond);
}
#endif

/// Astables on one ideal supply: each an island of its own.
Circuit astables(int count) {
    Circuit circuit;
    const int g = circuit.addNode(), plus = circuit.addNode();
    circuit.addSupply(plus, g, 5);
    for (int copy = 0; copy < count; ++copy) {
        const double farad = 1e-5 * (1 + 0.1 * copy);  // half a second for a period, or longer
        const int c[2] = {circuit.addNode(), circuit.addNode()}, b[2] = {circuit.addNode(), circuit.addNode()};
        for (int k : {0, 1}) {
            circuit.addConductor(plus, c[k], 1e3);
            circuit.addConductor(plus, b[k], 47e3);
            circuit.add(TransistorLaw(std::vector<double>{200 + 20.0 * k, 5, 1e-14, 1, 0, 0, 8e-12, 4e-12}),
                        {c[k], b[k], g});
            circuit.add(CapacitanceLaw(std::vector<double>{farad, 0, 0}), {c[k], b[1 - k]});
        }
    }
    return circuit;
}

void manyAstables() {
    constexpr double kSeconds = 10;
    const auto seconds = [&](const Circuit& each) {
        return secondsOf(
            [&] {
                CircuitRun run(each);
                const std::vector<char> all(static_cast<std::size_t>(each.elementCount()), 1);
                if (!run.start(all, 0) || !run.advanceTo(kSeconds)) fmt::print("   stopped\n");
            },
            1);
    };
    fmt::print(
        "   at the tolerance of benches: one astable {:.0f} x real time (bar 1000), five on one supply {:.0f} x (bar "
        "400)\n",
        kSeconds / seconds(astables(1)), kSeconds / seconds(astables(5)));
}

}  // namespace
}  // namespace tiepoint::bench

int main() {
    using namespace tiepoint::bench;
    fmt::print("D  in time, at an error not larger than IDA's at rtol 1e-4 (root mean square over even instants, V)\n");
#ifdef TIEPOINT_SUNDIALS
    fmt::print("   {:<10} {:>9} {:>9} {:>9} {:>6} {:>6} {:>10} {:>10} {:>8} {:>6} {:>12}\n", "", "IDA err", "our err",
               "our tol", "steps", "ours", "IDA us", "our us", "ratio", "bar", "x real time");
    SUNContext context = nullptr;
    SUNContext_Create(nullptr, &context);
    for (const Task& t : {chargingTask(), ringingTask(), astableTask(), rectifierTask()}) compare(t, context);
    SUNContext_Free(&context);
#else
    fmt::print("   SUNDIALS isn't installed: nothing to compare with\n");
#endif
    manyAstables();
    return 0;
}
