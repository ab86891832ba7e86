#include "support/beacon_text.h"

#include <stdexcept>

namespace tiepoint::test {

std::string beaconWith(std::string_view from, std::string_view to) {
    std::string text(kBeacon);
    const auto at = text.find(from);
    if (at == std::string::npos) throw std::invalid_argument("the beacon has no " + std::string(from));
    return text.replace(at, from.size(), to);
}

std::string minimal(std::string_view members) {
    std::string text = R"({"format": "tiepoint-bench", "version": 1, )";
    return text.append(members).append("}");
}

}  // namespace tiepoint::test
