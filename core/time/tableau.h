#pragma once
// The figures of an implicit Runge-Kutta method whose first stage is explicit and whose later ones share one diagonal entry (ESDIRK), as
// data: another method is another table. The last stage is the step's result (stiffly accurate), so that laws without memory hold
// there exactly.
// Constant data; safe from any thread.

#include <array>
#include <string_view>

namespace tiepoint {

struct Tableau {
    static constexpr int kMostStages = 6;
    using Row = std::array<double, kMostStages>;

    std::string_view name;
    int stages = 0;
    int order = 0, embeddedOrder = 0;
    double diagonal = 0;
    Row places{};                      ///< c: where in the step each stage lies
    std::array<Row, kMostStages> a{};  ///< by stage, below the diagonal
    Row b{}, embedded{};               ///< b is the last row of a
};

/// Order four with an error estimate of order three, six stages, L-stable.
/// Source: C. A. Kennedy and M. H. Carpenter, "Additive Runge-Kutta schemes for convection-diffusion-reaction equations", Applied
/// Numerical Mathematics 44 (2003) 139-181, the implicit half of their ARK4(3)6L[2]SA. The figures are from memory; tests hold them to
/// the order conditions and to a library's table.
const Tableau& esdirk43();

}  // namespace tiepoint
