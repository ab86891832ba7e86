// How an expression is found:
//
// 1. Free rows are settled by a least cover, once of the function and once of its opposite; what follows knows no free rows.
// 2. Switches that never matter are dropped.
// 3. The rest is split in two groups wherever the function is g(one group) AND, OR or XOR h(the other) (Ashenhurst's disjoint
//    decomposition). No expression can name a switch less than once, so nothing is lost, and such splits come out the same in any order.
//    XOR is found here.
// 4. What can't be split is written as the least sum of products or the least product of sums (the least sum of the opposite,
//    turned round), or with one switch taken out: (S AND g) OR h where h is the function with S not set, and g has only to be right where
//    h isn't; the same with AND and OR exchanged, and with NOT S; (S AND d) XOR h, where d says whether S matters; S XOR something
//    that splits; by how switches differ, where only that matters; and (S XOR T) AND g, or OR g. Taking out is tried for few switches only: its tries multiply.
//
// Of two that name switches as often, the one without brackets in an XOR is taken: (NOT S1 AND S2) OR (S1 AND S3) reads easier than
// S2 XOR (S1 AND (S2 XOR S3)).

#include "core/truth/shortest_expression.h"

#include "core/base/stopping.h"
#include "core/truth/cover.h"

#include <algorithm>
#include <bit>
#include <functional>
#include <map>
#include <optional>
#include <span>

namespace tiepoint {
namespace {

/// The most switches of a function from which one is taken out.
constexpr int kMostForTakingOut = 5;
/// And of one from which a comparison of switches is taken out.
constexpr int kMostForComparing = 4;

Expression productExpression(const Product& product, int variables) {
    std::vector<Expression> factors;
    for (int variable = 0; variable < variables; ++variable) {
        const unsigned bit = 1u << (variables - 1 - variable);
        if ((product.cares & bit) == 0) continue;
        Expression name = variableExpression(variable);
        factors.push_back(product.values & bit ? std::move(name) : notOf(std::move(name)));
    }
    return allOf(std::move(factors));
}

Expression sumOfProducts(const Cover& cover, int variables) {
    std::vector<Expression> terms;
    for (const Product& product : cover.products) terms.push_back(productExpression(product, variables));
    return anyOf(std::move(terms));
}

/// NOT of a sum of products as a product of sums.
Expression turnedRound(const Expression& expression) {
    std::vector<Expression> terms;
    for (const Expression& term : expression.terms) terms.push_back(turnedRound(term));
    if (expression.kind == Expression::Kind::And) return anyOf(std::move(terms));
    if (expression.kind == Expression::Kind::Or) return allOf(std::move(terms));
    return notOf(expression);
}

TruthFunction settled(const TruthFunction& function, const Cover& cover) {
    TruthFunction table(function.variables);
    for (std::size_t row = 0; row < table.rows.size(); ++row) {
        const bool yes =
            std::ranges::any_of(cover.products, [&](const Product& product) { return product.holds(row); });
        table.rows[row] = yes ? Truth::Yes : Truth::No;
    }
    return table;
}

bool dependsOn(const TruthFunction& table, int variable) {
    for (std::size_t row = 0; row < table.rows.size(); ++row) {
        if (table.rows[row] != table.rows[row ^ table.bit(variable)]) return true;
    }
    return false;
}

/// The table over some of its variables, the others held as in `base`.
TruthFunction restricted(const TruthFunction& table, std::span<const int> kept, std::size_t base) {
    TruthFunction part(static_cast<int>(kept.size()));
    for (std::size_t row = 0; row < part.rows.size(); ++row) {
        std::size_t from = base;
        for (std::size_t i = 0; i < kept.size(); ++i) {
            if (part.isSet(row, static_cast<int>(i))) from |= table.bit(kept[i]);
        }
        part.rows[row] = table.rows[from];
    }
    return part;
}

Expression renamed(Expression expression, std::span<const int> variables) {
    if (expression.kind == Expression::Kind::Variable) expression.variable = variables[expression.variable];
    for (Expression& term : expression.terms) term = renamed(std::move(term), variables);
    return expression;
}

/// A function as two that share no switch, and how they are joined.
struct Split {
    Expression (*join)(std::vector<Expression> terms);
    std::vector<int> one, other;
    TruthFunction left, right;
};

/// A row of the whole table made of a row of each group.
std::vector<std::size_t> rowsOf(const TruthFunction& table, std::span<const int> group) {
    const TruthFunction part(static_cast<int>(group.size()));
    std::vector<std::size_t> rows;
    for (std::size_t row = 0; row < part.rows.size(); ++row) {
        std::size_t whole = 0;
        for (std::size_t i = 0; i < group.size(); ++i) {
            if (part.isSet(row, static_cast<int>(i))) whole |= table.bit(group[i]);
        }
        rows.push_back(whole);
    }
    return rows;
}

/// AND: each part says yes where the whole does for some standing of the other. OR is AND of the opposite. XOR: each part is the whole
/// with the other part held still.
std::optional<Split> splitInto(const TruthFunction& table, std::vector<int> one, std::vector<int> other) {
    const auto rowsOne = rowsOf(table, one), rowsOther = rowsOf(table, other);
    const auto is = [&](std::size_t a, std::size_t b) { return table.rows[rowsOne[a] | rowsOther[b]] == Truth::Yes; };
    TruthFunction left(static_cast<int>(one.size())), right(static_cast<int>(other.size()));
    const auto fits = [&](const std::function<bool(bool, bool)>& joined) {
        for (std::size_t a = 0; a < rowsOne.size(); ++a) {
            for (std::size_t b = 0; b < rowsOther.size(); ++b) {
                if (is(a, b) != joined(left.rows[a] == Truth::Yes, right.rows[b] == Truth::Yes)) return false;
            }
        }
        return true;
    };
    const auto fill = [&](Truth shown, bool sought) {
        const Truth elsewhere = shown == Truth::Yes ? Truth::No : Truth::Yes;
        std::ranges::fill(left.rows, elsewhere);
        std::ranges::fill(right.rows, elsewhere);
        for (std::size_t a = 0; a < rowsOne.size(); ++a) {
            for (std::size_t b = 0; b < rowsOther.size(); ++b) {
                if (is(a, b) == sought) left.rows[a] = right.rows[b] = shown;
            }
        }
    };
    fill(Truth::Yes, true);
    if (fits(std::logical_and<>())) return Split{allOf, std::move(one), std::move(other), left, right};
    fill(Truth::No, false);
    if (fits(std::logical_or<>())) return Split{anyOf, std::move(one), std::move(other), left, right};
    for (std::size_t a = 0; a < rowsOne.size(); ++a) left.rows[a] = is(a, 0) ? Truth::Yes : Truth::No;
    for (std::size_t b = 0; b < rowsOther.size(); ++b) right.rows[b] = is(0, b) != is(0, 0) ? Truth::Yes : Truth::No;
    if (fits(std::not_equal_to<>())) return Split{oddOf, std::move(one), std::move(other), left, right};
    return std::nullopt;
}

std::optional<Split> split(const TruthFunction& table) {
    // The first variable stands in the first group, so that each division is met once.
    for (std::size_t chosen = 0; chosen + 1 < table.rows.size() / 2; ++chosen) {
        stopIfAsked();
        std::vector<int> one{0}, other;
        for (int variable = 1; variable < table.variables; ++variable) {
            (table.isSet(chosen, variable) ? one : other).push_back(variable);
        }
        if (auto found = splitInto(table, std::move(one), std::move(other))) return found;
    }
    return std::nullopt;
}

class Minimiser {
public:
    Shortest shortest(const TruthFunction& function) {
        Expression best;
        if (std::ranges::find(function.rows, Truth::Free) == function.rows.end()) {
            best = ofTable(function);
        } else {
            best = ofTable(settled(function, coverOf(function)));
            keepShorter(best, ofTable(opposite(settled(function, coverOf(opposite(function))))));
        }
        return {std::move(best), exact_};
    }

private:
    static void keepShorter(Expression& best, Expression candidate) {
        if (candidate.effort() < best.effort()) best = std::move(candidate);
    }

    Cover coverOf(const TruthFunction& function) {
        Cover cover = shortestCover(function);
        exact_ = exact_ && cover.exact;
        return cover;
    }

    Expression ofTable(const TruthFunction& table) {
        std::vector<int> used;
        for (int variable = 0; variable < table.variables; ++variable) {
            if (dependsOn(table, variable)) used.push_back(variable);
        }
        if (used.empty()) return constantExpression(table.rows.front() == Truth::Yes);
        return renamed(ofUsed(restricted(table, used, 0)), used);
    }

    /// Every variable matters.
    Expression ofUsed(const TruthFunction& table) {
        if (table.variables == 1) {
            return table.rows.back() == Truth::Yes ? variableExpression(0) : notOf(variableExpression(0));
        }
        if (const auto known = known_.find(table); known != known_.end()) return known->second;
        Expression made = ofSeveral(table);
        known_.emplace(table, made);
        return made;
    }

    Expression ofSeveral(const TruthFunction& table) {
        if (const auto parts = split(table)) {
            return parts->join(
                {renamed(ofTable(parts->left), parts->one), renamed(ofTable(parts->right), parts->other)});
        }
        Expression best = sumOfProducts(coverOf(table), table.variables);
        keepShorter(best, turnedRound(sumOfProducts(coverOf(opposite(table)), table.variables)));
        compareInside(table, best);
        if (table.variables > kMostForTakingOut) return best;
        for (int variable = 0; variable < table.variables; ++variable) {
            takeOut(table, variable, best);
            compareWith(table, variable, best);
        }
        takeOutComparisons(table, best);
        return best;
    }

    /// Where throwing some switches all at once never matters, only how they differ from one of them does.
    void compareInside(const TruthFunction& table, Expression& best) {
        for (unsigned thrown = 1; thrown < table.rows.size(); ++thrown) {
            stopIfAsked();
            if (std::popcount(thrown) < 2 || !staysSame(table, thrown)) continue;
            int first = 0;
            while ((thrown & table.bit(first)) == 0) ++first;
            std::vector<int> others;
            for (int variable = 0; variable < table.variables; ++variable) {
                if (variable != first) others.push_back(variable);
            }
            const Expression differing = renamed(ofTable(restricted(table, others, 0)), others);
            keepShorter(best, comparedWith(differing, first, thrown, table));
        }
    }

    static bool staysSame(const TruthFunction& table, unsigned thrown) {
        for (std::size_t row = 0; row < table.rows.size(); ++row) {
            if (table.rows[row] != table.rows[row ^ thrown]) return false;
        }
        return true;
    }

    /// The expression with each of the thrown switches compared with the first.
    static Expression comparedWith(const Expression& expression, int first, unsigned thrown,
                                   const TruthFunction& table) {
        using Kind = Expression::Kind;
        if (expression.kind == Kind::Variable) {
            if ((thrown & table.bit(expression.variable)) == 0) return expression;
            return oddOf({variableExpression(first), expression});
        }
        std::vector<Expression> terms;
        for (const Expression& term : expression.terms) terms.push_back(comparedWith(term, first, thrown, table));
        if (expression.kind == Kind::Not) return notOf(std::move(terms.front()));
        if (expression.kind == Kind::And) return allOf(std::move(terms));
        return expression.kind == Kind::Or ? anyOf(std::move(terms)) : oddOf(std::move(terms));
    }

    /// The function as one variable XOR what splits well.
    void compareWith(const TruthFunction& table, int variable, Expression& best) {
        const TruthFunction rest = difference(table, tableOf(variableExpression(variable), table.variables));
        if (split(rest)) keepShorter(best, oddOf({variableExpression(variable), ofTable(rest)}));
    }

    /// One variable taken out, with its name or with NOT before it.
    void takeOut(const TruthFunction& table, int variable, Expression& best) {
        std::vector<int> others;
        for (int other = 0; other < table.variables; ++other) {
            if (other != variable) others.push_back(other);
        }
        for (const bool set : {true, false}) {
            const TruthFunction with = restricted(table, others, set ? table.bit(variable) : 0);
            const TruthFunction without = restricted(table, others, set ? 0 : table.bit(variable));
            const Expression name = set ? variableExpression(variable) : notOf(variableExpression(variable));
            const auto said = [&](const TruthFunction& part) { return renamed(shortest(part).expression, others); };
            if (set) keepShorter(best, oddOf({allOf({name, said(difference(with, without))}), said(without)}));
            if (isWithin(without, with)) {
                keepShorter(best, anyOf({allOf({name, said(freeWhere(with, without, Truth::Yes))}), said(without)}));
                keepShorter(best, allOf({anyOf({name, said(freeWhere(without, with, Truth::No))}), said(with)}));
            } else if (set && !isWithin(with, without)) {
                keepShorter(best, anyOf({allOf({name, said(with)}), allOf({notOf(name), said(without)})}));
            }
        }
    }

    /// (S1 XOR S2) AND g, or OR g, where g has only to be right where the comparison doesn't decide. What is left is settled without taking out
    /// another, so that no two wait for each other.
    void takeOutComparisons(const TruthFunction& table, Expression& best) {
        if (table.variables > kMostForComparing || isComparing_) return;
        isComparing_ = true;
        for (unsigned chosen = 1; chosen < table.rows.size(); ++chosen) {
            if (std::popcount(chosen) < 2) continue;
            std::vector<Expression> names;
            for (int variable = 0; variable < table.variables; ++variable)
                if (chosen & table.bit(variable)) names.push_back(variableExpression(variable));
            const Expression odd = oddOf(std::move(names));
            for (const Expression& compared : {odd, notOf(odd)}) {
                const TruthFunction decided = tableOf(compared, table.variables);
                if (isWithin(table, decided))
                    keepShorter(best, allOf({compared, shortest(freeWhere(table, decided, Truth::No)).expression}));
                if (isWithin(decided, table))
                    keepShorter(best, anyOf({compared, shortest(freeWhere(table, decided, Truth::Yes)).expression}));
            }
        }
        isComparing_ = false;
    }

    static bool isWithin(const TruthFunction& inner, const TruthFunction& outer) {
        for (std::size_t row = 0; row < inner.rows.size(); ++row) {
            if (inner.rows[row] == Truth::Yes && outer.rows[row] == Truth::No) return false;
        }
        return true;
    }

    static TruthFunction difference(TruthFunction one, const TruthFunction& other) {
        for (std::size_t row = 0; row < one.rows.size(); ++row) {
            one.rows[row] = one.rows[row] == other.rows[row] ? Truth::No : Truth::Yes;
        }
        return one;
    }

    static TruthFunction freeWhere(TruthFunction table, const TruthFunction& decided, Truth by) {
        for (std::size_t row = 0; row < table.rows.size(); ++row) {
            if (decided.rows[row] == by) table.rows[row] = Truth::Free;
        }
        return table;
    }

    std::map<TruthFunction, Expression> known_;
    bool exact_ = true;
    bool isComparing_ = false;
};

}  // namespace

Shortest shortestExpression(const TruthFunction& function) { return Minimiser().shortest(function); }

}  // namespace tiepoint
