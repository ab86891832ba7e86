#include "support/beacon_text.h"

#include <gtest/gtest.h>

namespace tiepoint::test {

std::string beaconWith(std::string_view from, std::string_view to) {
    std::string text(kBeacon);
    const auto at = text.find(from);
    EXPECT_NE(at, std::string::npos) << from;
    return text.replace(at, from.size(), to);
}

std::string minimal(std::string_view members) {
    std::string text = R"({"format": "tiepoint-bench", "version": 1, )";
    return text.append(members).append("}");
}

}  // namespace tiepoint::test
