// Capitals at the beginning of sentences.

#include "core/base/capital.h"

#include <gtest/gtest.h>

namespace tiepoint {
namespace {

TEST(Capital, OnlyTheFirstLetterChangesAndOnlyIfItIsOne) {
    const std::string small = "abcdefghijklmnopqrstuvwxyz", large = "ABCDEFGHIJKLMNOPQRSTUVWXYZ";
    for (int code = 0; code < 0x100; ++code) {
        const std::string text = std::string(1, static_cast<char>(code)) + "b C";
        const auto asSmall = small.find(text.front()), asLarge = large.find(text.front());
        EXPECT_EQ(capitalised(text), asSmall == std::string::npos ? text : large[asSmall] + text.substr(1)) << code;
        EXPECT_EQ(uncapitalised(text), asLarge == std::string::npos ? text : small[asLarge] + text.substr(1)) << code;
    }
    EXPECT_EQ(capitalised(""), "");
    EXPECT_EQ(uncapitalised(""), "");
}

}  // namespace
}  // namespace tiepoint
