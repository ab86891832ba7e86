#pragma once
// Sums of products: the prime products of a function, and the shortest set of them that covers it. Pure functions.

#include "core/truth/truth_function.h"

#include <vector>

namespace tiepoint {

/// More variables than this are refused: all products of ten are 59 049, easily listed.
inline constexpr int kMostVariables = 10;

/// A product: some switches set, some not, the others either way. Bits as TruthFunction::bit().
struct Product {
    unsigned cares = 0;
    unsigned values = 0;  ///< within `cares`

    bool holds(std::size_t row) const { return (row & cares) == values; }
    friend bool operator==(const Product&, const Product&) = default;
};

/// Every prime product: one that holds on no row where the function says no, and stops doing so with any switch left out. Products that
/// hold only on free rows are left out.
std::vector<Product> primeProducts(const TruthFunction& function);

struct Cover {
    std::vector<Product> products;
    bool exact = true;  ///< no shorter cover exists; false where the search was cut short
};

/// The cover with the fewest names, then the fewest NOTs. A function that never says yes has an empty one.
Cover shortestCover(const TruthFunction& function);

}  // namespace tiepoint
