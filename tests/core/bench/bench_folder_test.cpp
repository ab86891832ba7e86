// Bench files on a disk: written whole or not at all, and what stands there is respected.

#include "core/bench/bench_file.h"
#include "support/beacon_text.h"

#include <gtest/gtest.h>

#include <filesystem>
#include <fstream>
#include <sstream>
#include <string>

namespace tiepoint {
namespace {

namespace fs = std::filesystem;
using namespace test;

class BenchFolder : public ::testing::Test {
protected:
    void SetUp() override {
        folder_ = fs::temp_directory_path() /
                  ("tiepoint-" + std::string(::testing::UnitTest::GetInstance()->current_test_info()->name()));
        fs::remove_all(folder_);
        fs::create_directories(folder_);
    }
    void TearDown() override { fs::remove_all(folder_); }

    static std::string contentOf(const fs::path& path) {
        std::ostringstream content;
        content << std::ifstream(path).rdbuf();
        return content.str();
    }

    fs::path folder_;
};

TEST_F(BenchFolder, WritesAndReadsBack) {
    const fs::path path = folder_ / "ferry.bench.json";
    const Bench bench = readBench(kBeacon).value().bench;
    ASSERT_TRUE(writeBenchFile(bench, path).ok());
    EXPECT_EQ(contentOf(path), kBeacon);
    const auto read = readBenchFile(path);
    ASSERT_TRUE(read.ok());
    EXPECT_EQ(read->bench, bench);
    EXPECT_EQ(std::distance(fs::directory_iterator(folder_), fs::directory_iterator()), 1) << "no temporary file stays";
}

TEST_F(BenchFolder, ReplacesAFileButKeepsItsPermissionsAndLinks) {
    const fs::path path = folder_ / "real.bench.json", link = folder_ / "link.bench.json";
    std::ofstream(path) << "old";
    fs::permissions(path, fs::perms::owner_read | fs::perms::owner_write);
    fs::create_symlink(path, link);
    ASSERT_TRUE(writeBenchFile(readBench(kBeacon).value().bench, link).ok());
    EXPECT_TRUE(fs::is_symlink(link));
    EXPECT_EQ(contentOf(path), kBeacon);
    EXPECT_EQ(fs::status(path).permissions(), fs::perms::owner_read | fs::perms::owner_write);
}

TEST_F(BenchFolder, LeavesTheOldThingWhenItCannotWrite) {
    const auto missing = writeBenchFile(Bench{}, folder_ / "no" / "such" / "folder.bench.json");
    ASSERT_FALSE(missing.ok());
    EXPECT_EQ(missing.error().kind, ErrorKind::Io);
    const fs::path inTheWay = folder_ / "folder.bench.json";
    fs::create_directory(inTheWay);
    std::ofstream(inTheWay / "keep") << "kept";
    EXPECT_FALSE(writeBenchFile(Bench{}, inTheWay).ok());
    EXPECT_EQ(contentOf(inTheWay / "keep"), "kept");
    EXPECT_EQ(std::distance(fs::directory_iterator(folder_), fs::directory_iterator()), 1) << "no temporary file stays";
}

TEST_F(BenchFolder, SaysWhyAFileCannotBeRead) {
    const auto missing = readBenchFile(folder_ / "missing.bench.json");
    ASSERT_FALSE(missing.ok());
    EXPECT_EQ(missing.error().kind, ErrorKind::Io);
    EXPECT_NE(missing.error().oneLine().find("missing.bench.json"), std::string::npos);
    EXPECT_FALSE(readBenchFile(folder_).ok());
    const fs::path large = folder_ / "large.bench.json";
    std::ofstream(large) << "{";
    fs::resize_file(large, kLargestBenchBytes + 1);  // a file with a hole takes no room
    const auto tooLarge = readBenchFile(large);
    ASSERT_FALSE(tooLarge.ok());
    EXPECT_NE(tooLarge.error().oneLine().find("larger than 128 MB"), std::string::npos);
}

}  // namespace
}  // namespace tiepoint
