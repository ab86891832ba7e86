#pragma once
// A general library for equations in time (SUNDIALS IDA, order up to five) at work on equations that a test writes, at a tolerance far
// tighter than the program's. Only where the library is installed (TIEPOINT_SUNDIALS).

#include "core/time/circuit_run.h"

#include <gtest/gtest.h>
#include <ida/ida.h>
#include <nvector/nvector_serial.h>
#include <sundials/sundials_context.h>
#include <sunlinsol/sunlinsol_dense.h>
#include <sunmatrix/sunmatrix_dense.h>

#include <functional>
#include <utility>
#include <vector>

namespace tiepoint::test {

class IdaOracle {
public:
    /// Fills `left` with what the equations leave at a time, from the unknowns and their slopes.
    using Residual = std::function<void(double second, const double* y, const double* slope, double* left)>;

    explicit IdaOracle(const std::vector<double>& start, Residual residual) : residual_(std::move(residual)) {
        const auto size = static_cast<sunindextype>(start.size());
        SUNContext_Create(nullptr, &context_);
        y_ = N_VNew_Serial(size, context_);
        slope_ = N_VNew_Serial(size, context_);
        for (sunindextype i = 0; i < size; ++i) N_VGetArrayPointer(y_)[i] = start[static_cast<std::size_t>(i)];
        N_VConst(0, slope_);
        memory_ = IDACreate(context_);
        IDAInit(memory_, &IdaOracle::residualOf, 0, y_, slope_);
        IDASStolerances(memory_, 1e-9, 1e-11);
        IDASetMaxNumSteps(memory_, 200000);
        matrix_ = SUNDenseMatrix(size, size, context_);
        solver_ = SUNLinSol_Dense(y_, matrix_, context_);
        IDASetLinearSolver(memory_, solver_, matrix_);
        IDASetUserData(memory_, this);
        N_Vector kinds = N_VNew_Serial(size, context_);
        N_VConst(1, kinds);
        IDASetId(memory_, kinds);
        good_ = IDACalcIC(memory_, IDA_YA_YDP_INIT, 1e-8) == IDA_SUCCESS;
        N_VDestroy(kinds);
    }
    ~IdaOracle() {
        IDAFree(&memory_);
        SUNLinSolFree(solver_);
        SUNMatDestroy(matrix_);
        N_VDestroy(y_);
        N_VDestroy(slope_);
        SUNContext_Free(&context_);
    }
    IdaOracle(const IdaOracle&) = delete;
    IdaOracle& operator=(const IdaOracle&) = delete;

    /// False where the library gives up.
    bool goTo(double second) {
        double reached = 0;
        return good_ && IDASolve(memory_, second, &reached, y_, slope_, IDA_NORMAL) >= 0;
    }
    /// Goes on beside a run that has been started, and has both compared at instants ever further apart; false where the library gives up.
    bool beside(CircuitRun& run, double until, const std::function<void(double second)>& compare) {
        constexpr double kFirst = 1e-5, kFurther = 1.7;
        for (double second = kFirst; second < until; second *= kFurther) {
            if (!run.advanceTo(second)) {
                ADD_FAILURE() << "the run stopped before " << second;
                return true;
            }
            if (!goTo(second)) return false;
            compare(second);
        }
        return true;
    }
    double at(int unknown) const { return N_VGetArrayPointer(y_)[unknown]; }

private:
    static int residualOf(double second, N_Vector y, N_Vector slope, N_Vector left, void* self) {
        static_cast<IdaOracle*>(self)->residual_(second, N_VGetArrayPointer(y), N_VGetArrayPointer(slope),
                                                 N_VGetArrayPointer(left));
        return 0;
    }

    Residual residual_;
    SUNContext context_ = nullptr;
    N_Vector y_ = nullptr, slope_ = nullptr;
    SUNMatrix matrix_ = nullptr;
    SUNLinearSolver solver_ = nullptr;
    void* memory_ = nullptr;
    bool good_ = false;
};

}  // namespace tiepoint::test
