#include "core/truth/expression.h"

#include <algorithm>
#include <string_view>

namespace tiepoint {
namespace {

std::string_view wordOf(Expression::Kind kind) {
    if (kind == Expression::Kind::And) return " AND ";
    return kind == Expression::Kind::Or ? " OR " : " XOR ";
}

bool isLone(const Expression& term) { return term.isConstant() || term.kind == Expression::Kind::Variable; }

/// A term inside a longer expression. Beginners know no precedence, so whatever has several words stands in brackets, but for NOT.
std::string inside(const Expression& term, const std::vector<std::string>& names) {
    const std::string words = term.inWords(names);
    return isLone(term) || term.kind == Expression::Kind::Not ? words : "(" + words + ")";
}

void collectVariables(const Expression& expression, std::vector<int>& variables) {
    if (expression.kind == Expression::Kind::Variable) variables.push_back(expression.variable);
    for (const Expression& term : expression.terms) collectVariables(term, variables);
}

/// Lone names come before brackets, which reads easier; else terms stand in the order of their switches.
std::pair<int, std::vector<int>> readingPlaceOf(const Expression& term) {
    std::vector<int> variables;
    collectVariables(term, variables);
    return {term.length().first, std::move(variables)};
}

/// One kind of expression over the terms, those of the same kind taken in.
Expression flat(Expression::Kind kind, std::vector<Expression> terms) {
    Expression made{kind, -1, {}};
    for (Expression& term : terms) {
        if (term.kind == kind)
            std::ranges::move(term.terms, std::back_inserter(made.terms));
        else
            made.terms.push_back(std::move(term));
    }
    std::ranges::stable_sort(made.terms, {}, readingPlaceOf);
    return made;
}

/// The terms of an AND or OR: constants that change nothing left out; one that decides all decides.
Expression joined(Expression::Kind kind, Expression::Kind deciding, std::vector<Expression> terms) {
    const Expression::Kind idle =
        deciding == Expression::Kind::Never ? Expression::Kind::Always : Expression::Kind::Never;
    if (std::ranges::any_of(terms, [&](const Expression& term) { return term.kind == deciding; }))
        return {deciding, -1, {}};
    std::erase_if(terms, [&](const Expression& term) { return term.kind == idle; });
    if (terms.empty()) return {idle, -1, {}};
    if (terms.size() == 1) return std::move(terms.front());
    return flat(kind, std::move(terms));
}

}  // namespace

bool Expression::holds(const TruthFunction& table, std::size_t row) const {
    const auto holdsHere = [&](const Expression& term) { return term.holds(table, row); };
    switch (kind) {
        case Expression::Kind::Never:
            return false;
        case Expression::Kind::Always:
            return true;
        case Expression::Kind::Variable:
            return table.isSet(row, variable);
        case Expression::Kind::Not:
            return !holdsHere(terms.front());
        case Expression::Kind::And:
            return std::ranges::all_of(terms, holdsHere);
        case Expression::Kind::Or:
            return std::ranges::any_of(terms, holdsHere);
        case Expression::Kind::Xor:
            return std::ranges::count_if(terms, holdsHere) % 2 != 0;
    }
    return false;
}

std::pair<int, int> Expression::length() const {
    if (isLone(*this)) return {1, 0};
    std::pair<int, int> sum{0, kind == Expression::Kind::Not ? 1 : static_cast<int>(terms.size()) - 1};
    for (const Expression& term : terms) {
        const auto [names, words] = term.length();
        sum.first += names;
        sum.second += words;
    }
    return sum;
}

int Expression::compared() const {
    int sum = 0;
    for (const Expression& term : terms)
        sum += term.compared() + (kind == Expression::Kind::Xor && term.kind != Expression::Kind::Variable);
    return sum;
}

std::string Expression::inWords(const std::vector<std::string>& names) const {
    if (kind == Expression::Kind::Never) return "never";
    if (kind == Expression::Kind::Always) return "always";
    if (kind == Expression::Kind::Variable) return names[variable];
    if (kind == Expression::Kind::Not) return "NOT " + inside(terms.front(), names);
    std::string words;
    for (const Expression& term : terms) {
        if (!words.empty()) words += wordOf(kind);
        words += inside(term, names);
    }
    return words;
}

Expression constantExpression(bool always) {
    return {always ? Expression::Kind::Always : Expression::Kind::Never, -1, {}};
}

Expression variableExpression(int variable) { return {Expression::Kind::Variable, variable, {}}; }

Expression notOf(Expression term) {
    if (term.isConstant()) return constantExpression(term.kind == Expression::Kind::Never);
    if (term.kind == Expression::Kind::Not) return Expression(term.terms.front());
    return {Expression::Kind::Not, -1, {std::move(term)}};
}

Expression allOf(std::vector<Expression> terms) {
    return joined(Expression::Kind::And, Expression::Kind::Never, std::move(terms));
}

Expression anyOf(std::vector<Expression> terms) {
    return joined(Expression::Kind::Or, Expression::Kind::Always, std::move(terms));
}

Expression oddOf(std::vector<Expression> terms) {
    bool turned = false;
    std::vector<Expression> plain;
    for (Expression& term : terms) {
        if (term.kind == Expression::Kind::Not || term.kind == Expression::Kind::Always) {
            turned = !turned;
            term = notOf(std::move(term));
        }
        if (!term.isConstant()) plain.push_back(std::move(term));
    }
    if (plain.empty()) return constantExpression(turned);
    Expression made = plain.size() == 1 ? std::move(plain.front()) : flat(Expression::Kind::Xor, std::move(plain));
    return turned ? notOf(std::move(made)) : made;
}

TruthFunction opposite(TruthFunction function) {
    for (Truth& row : function.rows) {
        if (row != Truth::Free) row = row == Truth::Yes ? Truth::No : Truth::Yes;
    }
    return function;
}

TruthFunction tableOf(const Expression& expression, int variables) {
    TruthFunction table(variables);
    for (std::size_t row = 0; row < table.rows.size(); ++row) {
        if (expression.holds(table, row)) table.rows[row] = Truth::Yes;
    }
    return table;
}

}  // namespace tiepoint
