// The Hungarian method with potentials and shortest augmenting paths, row by row (H. W. Kuhn, "The Hungarian method for the assignment
// problem", Naval Research Logistics Quarterly 2 (1955); J. Munkres, J. SIAM 5 (1957); from memory), on costs that are the gains' opposites. As many
// columns without gain are added as there are rows, so that each row may stay alone.
// Rows whose best column nobody else has taken are placed at once: with the least cost of a row as its potential and none of the columns, such a
// start fulfils the method's condition (that no reduced cost is below nothing, and of what is assigned none above).

#include "core/netlist/assignment.h"

#include <cstddef>
#include <limits>

namespace tiepoint {
namespace {

class Assigning {
public:
    explicit Assigning(const Grid<double>& gains)
        : gains_(gains),
          rows_(gains.rows()),
          real_(gains.columns()),
          columns_(real_ + rows_),
          rowPotential_(rows_, 0),
          columnPotential_(columns_, 0),
          rowOf_(columns_, kNone) {}

    std::vector<int> run() {
        std::vector<std::size_t> open;
        for (std::size_t row = 0; row < rows_; ++row) {
            if (!takeBest(row)) open.push_back(row);
        }
        for (const std::size_t row : open) place(row);
        std::vector<int> columnOf(rows_, -1);
        for (std::size_t column = 0; column < real_; ++column) {
            if (rowOf_[column] != kNone) columnOf[rowOf_[column]] = static_cast<int>(column);
        }
        return columnOf;
    }

private:
    static constexpr std::size_t kNone = static_cast<std::size_t>(-1);

    double costOf(std::size_t row, std::size_t column) const { return column < real_ ? -gains_.row(row)[column] : 0; }
    double reducedCost(std::size_t row, std::size_t column) const {
        return costOf(row, column) - rowPotential_[row] - columnPotential_[column];
    }

    /// Sets the row's potential, and gives it its best column if that is free; the column for staying alone is its own.
    bool takeBest(std::size_t row) {
        std::size_t best = real_ + row;
        for (std::size_t column = 0; column < real_; ++column)
            if (costOf(row, column) < costOf(row, best)) best = column;
        rowPotential_[row] = costOf(row, best);
        if (rowOf_[best] != kNone) return false;
        rowOf_[best] = row;
        return true;
    }

    /// Finds the cheapest way to give a row a column, along which others move on.
    void place(std::size_t first) {
        std::vector<double> distance(columns_, std::numeric_limits<double>::infinity());
        std::vector<std::size_t> before(columns_, kNone);
        std::vector<char> done(columns_, 0);
        std::size_t row = first, column = kNone;
        do {
            const std::size_t from = column;
            const double passed = from == kNone ? 0 : distance[from];
            std::size_t nearest = kNone;
            for (std::size_t c = 0; c < columns_; ++c) {
                if (done[c]) continue;
                const double there = passed + reducedCost(row, c);
                if (there < distance[c]) {
                    distance[c] = there;
                    before[c] = from;
                }
                if (nearest == kNone || distance[c] < distance[nearest]) nearest = c;
            }
            column = nearest;
            done[column] = 1;
            row = rowOf_[column];
        } while (row != kNone);
        settlePotentials(first, column, distance, done);
        for (; column != kNone; column = before[column])
            rowOf_[column] = before[column] == kNone ? first : rowOf_[before[column]];
    }

    void settlePotentials(std::size_t first, std::size_t end, const std::vector<double>& distance,
                          const std::vector<char>& done) {
        rowPotential_[first] += distance[end];
        for (std::size_t c = 0; c < columns_; ++c) {
            if (!done[c] || c == end) continue;
            columnPotential_[c] += distance[c] - distance[end];
            rowPotential_[rowOf_[c]] += distance[end] - distance[c];
        }
    }

    const Grid<double>& gains_;
    std::size_t rows_, real_, columns_;
    std::vector<double> rowPotential_, columnPotential_;
    std::vector<std::size_t> rowOf_;  // by column
};

}  // namespace

std::vector<int> bestAssignment(const Grid<double>& gains) { return Assigning(gains).run(); }

}  // namespace tiepoint
