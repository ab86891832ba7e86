// A bench inside a PNG: found again, and refused where the bytes don't hold together.

#include "core/bench/bench_in_picture.h"

#include <gtest/gtest.h>

namespace tiepoint {
namespace {

/// One grey pixel: header, pixels, end, with the checksums and the compressed pixels that zlib makes.
std::string tinyPng() {
    static constexpr unsigned char kBytes[] = {
        0x89, 'P',  'N',  'G',  0x0d, 0x0a, 0x1a, 0x0a, 0,    0,    0,    13,  'I',  'H',  'D',  'R',  0,
        0,    0,    1,    0,    0,    0,    1,    8,    0,    0,    0,    0,   0x3a, 0x7e, 0x9b, 0x55, 0,
        0,    0,    10,   'I',  'D',  'A',  'T',  0x78, 0xda, 0x63, 0x60, 0,   0,    0,    2,    0,    1,
        0xe5, 0x27, 0xde, 0xfc, 0,    0,    0,    0,    'I',  'E',  'N',  'D', 0xae, 0x42, 0x60, 0x82};
    return {reinterpret_cast<const char*>(kBytes), sizeof kBytes};
}

TEST(BenchInPicture, IsFoundAgain) {
    for (const std::string& text :
         {std::string("{}"), std::string("title \u03a9\n"), std::string(100'000, 'x'), std::string()}) {
        const std::string shared = withBenchInside(tinyPng(), text);
        EXPECT_TRUE(isPng(shared));
        const auto inside = benchInside(shared);
        ASSERT_TRUE(inside.ok()) << inside.error().message;
        EXPECT_EQ(*inside, text);
    }
}

TEST(BenchInPicture, APictureWithoutOneSaysSo) {
    const auto none = benchInside(tinyPng());
    ASSERT_FALSE(none.ok());
    EXPECT_EQ(none.error().message, "a picture without a bench inside");
    EXPECT_FALSE(benchInside("{\"format\": 1}").ok());
    EXPECT_FALSE(benchInside("").ok());
}

TEST(BenchInPicture, DamageIsSeen) {
    const std::string shared = withBenchInside(tinyPng(), "{\"format\": \"tiepoint-bench\"}");
    for (std::size_t cut = 8; cut < shared.size(); ++cut) {
        const auto part = benchInside(shared.substr(0, cut));
        // All of the chunk with the bench has to be there.
        EXPECT_EQ(part.ok(), cut >= 8 + 25 + 12 + 14 + 5 + 28) << cut;
    }
    for (std::size_t at = 8; at < 90; ++at) {
        std::string damaged = shared;
        damaged[at] = static_cast<char>(damaged[at] ^ 0x10);
        const auto read = benchInside(damaged);
        EXPECT_FALSE(read.ok()) << at;
    }
}

}  // namespace
}  // namespace tiepoint
