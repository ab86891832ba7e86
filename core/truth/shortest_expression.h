#pragma once
// The shortest expression for a function of switches. Pure; safe from any thread.

#include "core/truth/expression.h"

namespace tiepoint {

struct Shortest {
    Expression expression;
    bool exact = true;  ///< false where the search for a cover was cut short; the expression is equivalent all the same
};

/// An expression that says what the function says on every row that isn't free. Where the switches fall into groups that don't meddle
/// with each other, each switch group is named once; what is left is the shorter of the least sum of products, the least product of
/// sums and, for few switches, forms that take one switch out.
Shortest shortestExpression(const TruthFunction& function);

}  // namespace tiepoint
