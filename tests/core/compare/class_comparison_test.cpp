// A folder of learners' files: every file ends in a row, whatever it is.

#include "core/compare/class_comparison.h"

#include "bench/full_boards.h"
#include "core/base/file_io.h"
#include "core/bench/bench_file.h"
#include "support/compact_bench.h"

#include <gtest/gtest.h>
#include <sys/stat.h>

#include <algorithm>
#include <chrono>
#include <random>

namespace tiepoint {
namespace {

namespace fs = std::filesystem;

constexpr const char* kClassTarget =
    "half; PS1 top+3 bottom-3 5; R1 c8 c14 330; D1 e14 f14 red; W1 top+7 a8 red; W2 j14 bottom-13 black";
constexpr const char* kReversed =
    "half; PS1 top+3 bottom-3 5; R1 c8 c14 330; D1 f14 e14 red; W1 top+7 a8 red; W2 j14 bottom-13 black";

class ClassOfBenches : public testing::Test {
protected:
    ClassOfBenches() : folder_(fs::path(testing::TempDir()) / ("class" + std::to_string(std::random_device{}()))) {
        fs::create_directories(folder_);
        wanted_.folder = folder_;
    }
    ~ClassOfBenches() override { fs::remove_all(folder_); }

    void add(const std::string& name, const std::string& text) {
        fs::create_directories((folder_ / name).parent_path());
        ASSERT_TRUE(writeFileAtomically(folder_ / name, text, false).ok());
    }
    void addBench(const std::string& name, std::string_view compact) {
        add(name, writeBench(test::CompactBench(compact).take()));
    }
    std::vector<LearnerRow> rows() {
        const auto files = learnersFiles(wanted_);
        EXPECT_TRUE(files.ok());
        std::size_t told = 0;
        const ComparisonTarget target(std::make_shared<const Bench>(test::CompactBench(kClassTarget).take()));
        auto all = compareFiles(wanted_, *files, target, [&](std::size_t done) { EXPECT_EQ(done, ++told); });
        EXPECT_EQ(told, files->size());
        return all;
    }

    fs::path folder_;
    ClassComparison wanted_;
};

TEST_F(ClassOfBenches, EveryFileIsARowInNaturalOrder) {
    addBench("ann10.bench.json", kClassTarget);
    addBench("ann9.bench.json", kReversed);
    addBench("table 2/bea.bench.json", kClassTarget);
    add("notes.txt", "ask about the meter\n");
    add("half.bench.json", writeBench(test::CompactBench(kClassTarget).take()).substr(0, 400));
    add("empty.bench.json", "");
    add("nul.bench.json", std::string("{\"format\": \"tiepoint-bench\"\0}", 30));
    add(".hidden", "no learner's");
    fs::create_directory_symlink(folder_, folder_ / "round");
    fs::create_symlink(folder_ / "nowhere", folder_ / "gone.bench.json");
    const auto all = rows();
    std::vector<std::string> names;
    for (const LearnerRow& row : all) names.push_back(row.file);
    EXPECT_EQ(names,
              (std::vector<std::string>{"ann9.bench.json", "ann10.bench.json", "empty.bench.json", "gone.bench.json",
                                        "half.bench.json", "notes.txt", "nul.bench.json", "table 2/bea.bench.json"}));
    for (const LearnerRow& row : all) {
        const bool isBench = row.file.starts_with("ann") || row.file.ends_with("bea.bench.json");
        EXPECT_EQ(row.error.empty(), isBench) << row.file << ": " << row.error;
        EXPECT_EQ(row.error.find('\n'), std::string::npos);
        EXPECT_EQ(row.comparison.sameBehaviour, isBench && row.file != "ann9.bench.json") << row.file;
    }
}

TEST_F(ClassOfBenches, WhatIsTooLargeIsGivenUp) {
    add("large.bench.json", std::string(5u << 20, ' '));
    Bench wide = test::CompactBench(kClassTarget).take();
    for (int i = 0; i < 2100; ++i) {
        Part loose = wide.parts[1];
        loose.id = "R" + std::to_string(100 + i);
        std::ranges::fill(loose.leads, std::nullopt);
        wide.parts.push_back(loose);
    }
    add("wide.bench.json", writeBench(wide));
    addBench("ann.bench.json", kClassTarget);
    const auto all = rows();
    EXPECT_TRUE(all[0].error.empty()) << all[0].error;
    EXPECT_NE(all[1].error.find("larger than"), std::string::npos) << all[1].error;
    EXPECT_NE(all[2].error.find("too many to compare"), std::string::npos) << all[2].error;
}

TEST_F(ClassOfBenches, SlowHugeAndStrangeFilesAreRowsThatSaySo) {
    constexpr std::uintmax_t kHuge = 100u << 20;
    add("huge.bench.json", "{");
    fs::resize_file(folder_ / "huge.bench.json", kHuge);
    fs::create_symlink("/dev/zero", folder_ / "zero.bench.json");
    ASSERT_EQ(::mkfifo((folder_ / "pipe.bench.json").c_str(), 0600), 0);
    addBench("ann.bench.json", kClassTarget);
    const auto began = std::chrono::steady_clock::now();
    auto all = rows();
    EXPECT_LT(std::chrono::steady_clock::now() - began, std::chrono::seconds(5)) << "nothing of them is read";
    ASSERT_EQ(all.size(), 4u);
    EXPECT_TRUE(all[0].error.empty()) << all[0].error;
    EXPECT_NE(all[1].error.find("larger than"), std::string::npos) << all[1].error;
    for (const std::size_t strange : {2, 3}) EXPECT_FALSE(all[strange].error.empty()) << all[strange].file;
    // Without any patience every file takes too long, and each row says so.
    wanted_.patience = std::chrono::milliseconds(0);
    add("crowded.bench.json", writeBench(test::crowdedBoards(1, test::kFullBoard)));
    all = rows();
    ASSERT_EQ(all.size(), 5u);
    EXPECT_EQ(all[1].file, "crowded.bench.json");
    EXPECT_NE(all[1].error.find("it takes too long to compare"), std::string::npos) << all[1].error;
}

TEST_F(ClassOfBenches, TitlesAndNamesCantPassForSomethingElse) {
    Bench bench = test::CompactBench(kClassTarget).take();
    bench.title = "=cmd()";
    add("=1+1.bench.json", writeBench(bench));
    add("a,b\"c.bench.json", writeBench(bench));
    const std::string csv = rowsAsCsv(rows());
    EXPECT_EQ(csv,
              "file,sameCircuit,sameBehaviour,differences,error\r\n"
              "'=1+1.bench.json,true,true,,\r\n"
              "\"a,b\"\"c.bench.json\",true,true,,\r\n");
}

TEST_F(ClassOfBenches, WhatIsNoLearnersIsLeftOut) {
    addBench("target.bench.json", kClassTarget);
    addBench("ann.bench.json", kReversed);
    wanted_.except = {fs::weakly_canonical(folder_ / "target.bench.json")};
    const auto all = rows();
    ASSERT_EQ(all.size(), 1u);
    EXPECT_EQ(rowsAsCsv(all).substr(50),
              "ann.bench.json,false,false,D1 is the wrong way round: its anode is in f14.,\r\n");
    wanted_.folder = folder_ / "nowhere";
    EXPECT_FALSE(learnersFiles(wanted_).ok());
}

}  // namespace
}  // namespace tiepoint
