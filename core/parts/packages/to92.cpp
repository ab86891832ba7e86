// TO-92 (IEC 60191, from memory): a small round body with one flat side, 4.8 mm across and 3.7 mm deep, on three thin legs in line that
// bend to holes one or two pitches apart. The legs are numbered from the left, seen from above
// with the flat side below.
//
// Which lead is which leg differs from type to type: `order` names the leads by their place in the kind, from the left leg on. With
// collector, base, emitter 321 is E-B-C.

#include "core/parts/packages/packages.h"

#include <algorithm>
#include <array>

namespace tiepoint {
namespace {

constexpr int kLegs = 3;
constexpr std::array kOrders = {123, 132, 213, 231, 312, 321};

/// By leg from the left: the lead.
std::array<int, kLegs> leadsInOrder(int order) { return {order / 100 - 1, order / 10 % 10 - 1, order % 10 - 1}; }

/// By lead, the first at 0,0, of legs at these places.
std::vector<Point> placesOfLeads(int order, const std::array<double, kLegs>& legs) {
    const auto leads = leadsInOrder(order);
    std::vector<Point> places(kLegs);
    for (int leg = 0; leg < kLegs; ++leg) places[leads[leg]] = {legs[leg], 0};
    const double first = places[0].x;
    for (Point& place : places) place.x -= first;
    return places;
}

std::vector<Package> everyOrder(std::span<const double>) {
    std::vector<Package> packages;
    for (const int order : kOrders) {
        Package package;
        package.name = "to-92";
        package.reach = Reach::Rigid;
        package.footprint = placesOfLeads(order, {0, 1, 2});
        for (const auto& legs : {std::array<double, kLegs>{0, 2, 4}, {0, 1, 3}, {0, 2, 3}})
            package.spread.push_back(placesOfLeads(order, legs));
        package.bodyLengthMm = 4.8;
        package.bodyWidthMm = 3.7;
        package.heightMm = 9;
        packages.push_back(std::move(package));
    }
    return packages;
}

std::size_t ofOrder(std::span<const double> figures) {
    const auto found = std::ranges::find(kOrders, static_cast<int>(figures[0]));
    return found == kOrders.end() ? 0 : static_cast<std::size_t>(found - kOrders.begin());
}

}  // namespace

PackageFamily to92Family() {
    PackageFamily family;
    family.name = "to-92";
    family.numbers = {{"order", kOrders.front(), kOrders.back(), kOrders.front(), true, "1, 2 and 3 in any order",
                       [](double order) { return std::ranges::find(kOrders, order) != kOrders.end(); }}};
    family.sizes = everyOrder;
    family.choose = ofOrder;
    return family;
}

}  // namespace tiepoint
