#pragma once
// Families of packages: one drawing for many sizes. A kind file names the family and its numbers,
//
//   "package": {"family": "dip", "legs": 8, "rows": 3}
//   "package": {"family": "radial-can", "capacitance": "capacitance", "voltage": "voltageRating"}
//
// and a number may be a value of the kind where the family allows it, so that a part's size follows what it holds. A family is one file
// of core/parts/packages, one painter of ui/paint and one line in each of their tables. Constant data; pure functions.

#include "core/parts/package.h"

#include <functional>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace tiepoint {

/// A number that a kind gives to its package.
struct FamilyNumber {
    std::string_view name;
    double least = 0, most = 0;
    std::optional<double> fallback = std::nullopt;  ///< without one the kind must give it
    bool ofPart = false;         ///< may follow a value of the part; else it is a number for all parts of the kind
    std::string_view rule = {};  ///< what else holds of it, in words; see `suits`
    bool (*suits)(double) = nullptr;
};

struct PackageFamily {
    std::string_view name;
    std::vector<FamilyNumber> numbers;
    /// Every size that a part of the kind may have; `figures` in the order of the numbers (those of a part are their fallback).
    std::vector<Package> (*sizes)(std::span<const double> figures) = nullptr;
    /// Which of them a part has, by its figures; null where there is one size.
    std::size_t (*choose)(std::span<const double> figures) = nullptr;
};

std::span<const PackageFamily> packageFamilies();
/// The family of that name, or null.
const PackageFamily* findPackageFamily(std::string_view name);

}  // namespace tiepoint
