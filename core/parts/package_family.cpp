#include "core/parts/package_family.h"

#include "core/parts/packages/packages.h"

#include <algorithm>
#include <array>

namespace tiepoint {

std::span<const PackageFamily> packageFamilies() {
    static const std::array kFamilies = {dipFamily(), to92Family(), radialCanFamily(), ceramicDiscFamily()};
    return kFamilies;
}

const PackageFamily* findPackageFamily(std::string_view name) {
    const auto families = packageFamilies();
    const auto found = std::ranges::find(families, name, &PackageFamily::name);
    return found == families.end() ? nullptr : &*found;
}

}  // namespace tiepoint
