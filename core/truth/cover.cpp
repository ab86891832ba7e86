// Primes (Quine 1952): every product is a number in base three, a digit for each variable: 0, 1, or 2 for "either way". A product with a
// 2 holds on the rows of the two with 0 and 1 in its place, which have smaller numbers; so one pass in order knows all of them.
//
// Cover (McCluskey 1956): rows that one prime alone covers make it essential; then branch and bound on the row with the fewest primes
// left. The bound adds up the cheapest primes of rows that share none. Functions of switch networks end at once; the search is cut short
// after a number of steps for the others, and says so.

#include "core/truth/cover.h"

#include "core/base/stopping.h"

#include <algorithm>
#include <bit>
#include <bitset>
#include <limits>

namespace tiepoint {
namespace {

constexpr std::size_t kMostCovered = std::size_t{1} << kMostVariables;
using RowSet = std::bitset<kMostCovered>;

constexpr int kMostSteps = 4000;

/// Whether a product may be taken, and whether that is of any use.
struct Standing {
    bool allowed = false;  ///< no row says no
    bool useful = false;   ///< some row says yes
};

/// Products of n variables as numbers in base three; the last variable is the lowest digit.
class Ternary {
public:
    explicit Ternary(int variables) : powers_(variables + 1, 1) {
        for (int i = 1; i <= variables; ++i) powers_[i] = 3 * powers_[i - 1];
    }
    int count() const { return powers_.back(); }
    int variables() const { return static_cast<int>(powers_.size()) - 1; }
    int digit(int product, int place) const { return product / powers_[place] % 3; }
    int with(int product, int place, int digitNow, int digit) const {
        return product + (digit - digitNow) * powers_[place];
    }

    Product product(int number) const {
        Product made;
        for (int place = 0; place < variables(); ++place) {
            const int at = digit(number, place);
            if (at == kEither) continue;
            made.cares |= 1u << place;
            made.values |= static_cast<unsigned>(at) << place;
        }
        return made;
    }

    static constexpr int kEither = 2;

private:
    std::vector<int> powers_;
};

std::vector<Standing> standings(const TruthFunction& function, const Ternary& all) {
    std::vector<Standing> found(all.count());
    for (int product = 0; product < all.count(); ++product) {
        int place = 0;
        while (place < all.variables() && all.digit(product, place) != Ternary::kEither) ++place;
        if (place == all.variables()) {
            const Truth row = function.rows[all.product(product).values];
            found[product] = {row != Truth::No, row == Truth::Yes};
            continue;
        }
        const Standing& without = found[all.with(product, place, Ternary::kEither, 0)];
        const Standing& with = found[all.with(product, place, Ternary::kEither, 1)];
        found[product] = {without.allowed && with.allowed, without.useful || with.useful};
    }
    return found;
}

/// Names first, then NOTs; a product more costs something too.
int costOf(const Product& product) {
    constexpr int kName = 1000, kNot = 10, kProduct = 1;
    const int names = std::popcount(product.cares);
    return kName * names + kNot * (names - std::popcount(product.values)) + kProduct;
}

class CoverSearch {
public:
    CoverSearch(const TruthFunction& function, std::vector<Product> primes) : primes_(std::move(primes)) {
        rows_.resize(primes_.size());
        for (std::size_t row = 0; row < function.rows.size(); ++row) {
            if (function.rows[row] != Truth::Yes) continue;
            wanted_.set(row);
            for (std::size_t prime = 0; prime < primes_.size(); ++prime) {
                if (!primes_[prime].holds(row)) continue;
                rows_[prime].set(row);
                primesOf_[row].push_back(static_cast<int>(prime));
            }
        }
        for (const Product& prime : primes_) costs_.push_back(costOf(prime));
        barred_.assign(primes_.size(), 0);
    }

    Cover run() {
        RowSet left = wanted_;
        takeEssentials(left);
        dropDominated(left);
        const std::vector<int> essential = chosen_;
        takeGreedily(left);
        best_ = chosen_;
        bestCost_ = costOfAll(chosen_);
        chosen_ = essential;
        search(left, costOfAll(essential));
        Cover cover;
        std::ranges::sort(best_);
        for (const int prime : best_) cover.products.push_back(primes_[prime]);
        cover.exact = steps_ <= kMostSteps;
        return cover;
    }

private:
    int costOfAll(const std::vector<int>& taken) const {
        int sum = 0;
        for (const int prime : taken) sum += costs_[prime];
        return sum;
    }

    void takeEssentials(RowSet& left) {
        for (std::size_t row = wanted_._Find_first(); row < kMostCovered; row = wanted_._Find_next(row)) {
            if (!left.test(row) || primesOf_[row].size() != 1) continue;
            chosen_.push_back(primesOf_[row].front());
            left &= ~rows_[chosen_.back()];
        }
    }

    /// A prime that covers no more of what is left than another, for no less, is never needed.
    void dropDominated(const RowSet& left) {
        for (std::size_t a = 0; a < primes_.size(); ++a) {
            stopIfAsked();
            const RowSet of = rows_[a] & left;
            for (std::size_t b = 0; b < primes_.size() && !barred_[a]; ++b) {
                if (a == b || barred_[b] || costs_[b] > costs_[a]) continue;
                const bool within = (of & ~rows_[b]).none();
                const bool alike = costs_[a] == costs_[b] && (rows_[b] & left) == of;
                if (within && (!alike || b < a)) barred_[a] = 1;
            }
        }
    }

    void takeGreedily(RowSet left) {
        while (left.any()) {
            stopIfAsked();
            int best = -1;
            double bestShare = 0;
            for (int prime = 0; prime < static_cast<int>(primes_.size()); ++prime) {
                if (barred_[prime]) continue;
                const double share = static_cast<double>((rows_[prime] & left).count()) / costs_[prime];
                if (share > bestShare) {
                    best = prime;
                    bestShare = share;
                }
            }
            chosen_.push_back(best);
            left &= ~rows_[best];
        }
    }

    /// What the rows left cost at least, and the row with the fewest primes; -1 for a row that nothing covers any more.
    std::pair<int, int> bound(RowSet left) const {
        int sum = 0, narrowest = -1;
        std::size_t fewest = std::numeric_limits<std::size_t>::max();
        for (std::size_t row = left._Find_first(); row < kMostCovered; row = left._Find_next(row)) {
            int cheapest = std::numeric_limits<int>::max();
            std::size_t count = 0;
            RowSet reached;
            for (const int prime : primesOf_[row]) {
                if (barred_[prime]) continue;
                ++count;
                cheapest = std::min(cheapest, costs_[prime]);
                reached |= rows_[prime];
            }
            if (count == 0) return {std::numeric_limits<int>::max() / 2, -1};
            if (count < fewest) {
                fewest = count;
                narrowest = static_cast<int>(row);
            }
            sum += cheapest;
            left &= ~reached;
            left.reset(row);
        }
        return {sum, narrowest};
    }

    void search(const RowSet& left, int cost) {
        if (++steps_ > kMostSteps) return;
        stopIfAsked();
        if (left.none()) {
            if (cost >= bestCost_) return;
            best_ = chosen_;
            bestCost_ = cost;
            return;
        }
        const auto [atLeast, row] = bound(left);
        if (row < 0 || cost + atLeast >= bestCost_) return;
        std::vector<int> tried;
        for (const int prime : primesOf_[row]) {
            if (barred_[prime]) continue;
            chosen_.push_back(prime);
            search(left & ~rows_[prime], cost + costs_[prime]);
            chosen_.pop_back();
            barred_[prime] = 1;  // covers with it are searched now
            tried.push_back(prime);
        }
        for (const int prime : tried) barred_[prime] = 0;
    }

    std::vector<Product> primes_;
    std::vector<RowSet> rows_;  ///< by prime: the wanted rows on which it holds
    std::vector<int> costs_;    ///< by prime
    std::vector<char> barred_;  ///< by prime: not to be taken any more
    std::vector<int> primesOf_[kMostCovered];
    RowSet wanted_;
    std::vector<int> chosen_, best_;
    int bestCost_ = 0;
    int steps_ = 0;
};

}  // namespace

std::vector<Product> primeProducts(const TruthFunction& function) {
    const Ternary all(function.variables);
    const std::vector<Standing> standing = standings(function, all);
    std::vector<Product> primes;
    for (int product = 0; product < all.count(); ++product) {
        if (!standing[product].allowed || !standing[product].useful) continue;
        bool prime = true;
        for (int place = 0; place < all.variables() && prime; ++place) {
            const int digit = all.digit(product, place);
            prime = digit == Ternary::kEither || !standing[all.with(product, place, digit, Ternary::kEither)].allowed;
        }
        if (prime) primes.push_back(all.product(product));
    }
    // Products with switches set come before those with switches not set, as one reads a table of what to press.
    std::ranges::sort(primes, [](const Product& a, const Product& b) {
        return std::pair(a.values, a.cares) > std::pair(b.values, b.cares);
    });
    return primes;
}

Cover shortestCover(const TruthFunction& function) {
    if (std::ranges::find(function.rows, Truth::Yes) == function.rows.end()) return {};
    return CoverSearch(function, primeProducts(function)).run();
}

}  // namespace tiepoint
