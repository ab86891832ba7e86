// The table of the method against the conditions of its order: J. C. Butcher, "Numerical Methods for Ordinary Differential Equations"
// (from memory), and against what it says of itself.

#include "core/time/tableau.h"

#include <gtest/gtest.h>

#include <cmath>

namespace tiepoint {
namespace {

using TableauRow = Tableau::Row;

double dotOf(const TableauRow& a, const TableauRow& b) {
    double sum = 0;
    for (int i = 0; i < Tableau::kMostStages; ++i) sum += a[i] * b[i];
    return sum;
}
TableauRow timesEach(const TableauRow& a, const TableauRow& b) {
    TableauRow product{};
    for (int i = 0; i < Tableau::kMostStages; ++i) product[i] = a[i] * b[i];
    return product;
}
TableauRow throughTable(const Tableau& t, const TableauRow& x) {
    TableauRow product{};
    for (int i = 0; i < t.stages; ++i) product[i] = dotOf(t.a[i], x);
    return product;
}

/// How far weights are from order one, two, three and four.
std::vector<double> defects(const Tableau& t, const TableauRow& b) {
    const TableauRow& c = t.places;
    TableauRow ones{};
    for (int i = 0; i < t.stages; ++i) ones[i] = 1;
    const TableauRow cc = timesEach(c, c), ac = throughTable(t, c);
    return {dotOf(b, ones) - 1, dotOf(b, c) - 1.0 / 2,
            std::max(std::abs(dotOf(b, cc) - 1.0 / 3), std::abs(dotOf(b, ac) - 1.0 / 6)),
            std::max({std::abs(dotOf(b, timesEach(cc, c)) - 1.0 / 4), std::abs(dotOf(timesEach(b, c), ac) - 1.0 / 8),
                      std::abs(dotOf(b, throughTable(t, cc)) - 1.0 / 12),
                      std::abs(dotOf(b, throughTable(t, ac)) - 1.0 / 24)})};
}

TEST(Tableau, HasTheOrderThatItClaims) {
    const Tableau& t = esdirk43();
    const auto main = defects(t, t.b), embedded = defects(t, t.embedded);
    for (int order = 0; order < t.order; ++order) EXPECT_LT(std::abs(main[order]), 1e-14) << order + 1;
    for (int order = 0; order < t.embeddedOrder; ++order) EXPECT_LT(std::abs(embedded[order]), 1e-14) << order + 1;
    EXPECT_GT(std::abs(embedded[t.embeddedOrder]), 1e-4) << "else there is no difference to judge by";
    for (int stage = 0; stage < t.stages; ++stage) {
        double sum = 0;
        for (const double a : t.a[stage]) sum += a;
        EXPECT_NEAR(sum, t.places[stage], 1e-14);
        if (stage > 0) {
            EXPECT_EQ(t.a[stage][stage], t.diagonal);
        }
    }
    EXPECT_EQ(t.b, t.a[t.stages - 1]) << "the last stage is the result";
}

/// What a step of length z makes of y' = z y, y = 1.
double growthAt(const Tableau& t, double z) {
    TableauRow y{};
    for (int i = 0; i < t.stages; ++i) {
        double sum = 1;
        for (int j = 0; j < i; ++j) sum += z * t.a[i][j] * y[j];
        y[i] = sum / (1 - z * t.a[i][i]);
    }
    return y[t.stages - 1];
}

TEST(Tableau, DampsWhatIsStiff) {
    for (double z = -1e-3; z > -1e12; z *= 3) EXPECT_LT(std::abs(growthAt(esdirk43(), z)), 1) << z;
    EXPECT_LT(std::abs(growthAt(esdirk43(), -1e9)), 1e-6);
}

}  // namespace
}  // namespace tiepoint
