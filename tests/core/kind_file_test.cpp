// The loader of part kinds is strict: what is misspelt, missing or out of range is refused at its place.
#include "core/parts/kind_file.h"

#include "core/base/embedded.h"

#include <gtest/gtest.h>

namespace tiepoint {
namespace {

/// The push button's file with one piece exchanged: each slip is refused, at its place.
TEST(KindFile, RefusesSlips) {
    std::string good;
    for (const EmbeddedFile& file : embeddedFiles()) {
        if (file.name == "parts/push-button.json") good = file.text;
    }
    ASSERT_TRUE(readPartKind("good", good).ok());
    const struct {
        const char *from, *to, *pointer;
    } slips[] = {
        {"\"label\": \"push button\"", "\"label\": 7", "/label"},
        {"\"label\": \"push button\"", "\"lable\": \"push button\"", "/label"},
        {"\"family\": \"Switch\"", "\"family\": \"Swich\"", "/family"},
        {"\"package\": \"push-button\"", "\"package\": \"push\"", "/package"},
        {"\"package\": \"push-button\"", "\"package\": \"led-5mm\"", "/leads"},
        {"[\"2a\", \"2b\"]", "[\"2a\", \"2c\"]", "/joined"},
        {"\"default\": 0.05", "\"default\": 500", "/values/0/default"},
        {"\"unit\": \"ohm\"", "\"unit\": \"ohms\"", "/values/0/unit"},
        {"\"minimum\": 0.001,", "", "/values/0/minimum"},
        {"\"type\": \"number\"", "\"type\": \"real\"", "/values/0/type"},
        {"\"to\": \"2a\"", "\"to\": \"2x\"", "/model"},
        {"\"held\"", "\"pressed\"", "/model/0/closedWhen"},
        {"\"contactResistance\": \"contactResistance\"", "\"contactResistance\": \"resistance\"",
         "/model/0/contactResistance"},
        {"\"quantity\": \"current\"", "\"quantity\": \"amps\"", "/ratings/0/quantity"},
        {"\"status\": \"published\"", "\"status\": \"sure\"", "/sources/0/status"},
        {"\"contactResistance\": \"contactResistance\"",
         "\"reads\": \"smell\", \"contactResistance\": \"contactResistance\"", "/model/0/reads"},
        {"\"cap\": true", "\"cap\": 1", "/cap"},
        {"\"cap\": true", "\"cop\": true", "/cop"},
    };
    for (const auto& slip : slips) {
        std::string text = good;
        const auto at = text.find(slip.from);
        ASSERT_NE(at, std::string::npos) << slip.from;
        text.replace(at, std::string_view(slip.from).size(), slip.to);
        const auto kind = readPartKind("slip", text);
        ASSERT_FALSE(kind.ok()) << slip.to;
        EXPECT_EQ(kind.error().place.pointer, slip.pointer) << slip.to;
    }
    EXPECT_FALSE(readPartKind("twice", "{\"kind\": \"a\", " + good.substr(1)).ok());
    EXPECT_FALSE(readPartKind("cut", good.substr(0, good.size() / 2)).ok());
}

}  // namespace
}  // namespace tiepoint
