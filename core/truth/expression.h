#pragma once
// Logic expressions in the trade's words: S1 AND S2; S1 OR S2; NOT S1; S1 XOR S2. Immutable values, built by the functions below,
// which keep them flat: no AND directly inside an AND, no NOT directly inside a NOT, no constant inside anything.

#include "core/truth/truth_function.h"

#include <string>
#include <tuple>
#include <utility>
#include <vector>

namespace tiepoint {

struct Expression {
    enum class Kind { Never, Always, Variable, Not, And, Or, Xor };

    Kind kind = Kind::Never;
    int variable = -1;              ///< of a Variable
    std::vector<Expression> terms;  ///< one of a Not, at least two of And, Or and Xor

    bool isConstant() const { return kind == Kind::Never || kind == Kind::Always; }
    /// What it says of one row of a function's table.
    bool holds(const TruthFunction& table, std::size_t row) const;
    /// How many names it has, then how many other words.
    std::pair<int, int> length() const;
    /// How many terms that aren't names stand directly in an XOR: few people read such a thing without paper.
    int compared() const;
    /// What "easier to read" compares: names, then what compared() counts, then other words.
    std::tuple<int, int, int> effort() const { return {length().first, compared(), length().second}; }
    /// "S1 AND (S2 OR S3)"; "always", "never".
    std::string inWords(const std::vector<std::string>& names) const;

    friend bool operator==(const Expression&, const Expression&) = default;
};

Expression constantExpression(bool always);
Expression variableExpression(int variable);
Expression notOf(Expression term);
Expression allOf(std::vector<Expression> terms);
Expression anyOf(std::vector<Expression> terms);
/// An odd number of them. A NOT inside moves out, so that what is left compares switches as they are.
Expression oddOf(std::vector<Expression> terms);

/// The rows on which an expression holds.
TruthFunction tableOf(const Expression& expression, int variables);

}  // namespace tiepoint
