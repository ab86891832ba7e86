// Bytes that once broke a reader, or came near it, kept in a folder for each format: tests/fuzz/corpus/FORMAT.

#include "fuzz/formats.h"

#include <gtest/gtest.h>

#include <filesystem>
#include <fstream>
#include <iterator>
#include <string>

namespace tiepoint::fuzz {
namespace {

const std::filesystem::path kCorpus = std::filesystem::path(TIEPOINT_SOURCE_DIR) / "tests/fuzz/corpus";

std::string bytesOf(const std::filesystem::path& path) {
    std::ifstream file(path, std::ios::binary);
    return {std::istreambuf_iterator<char>(file), {}};
}

TEST(Corpus, BreaksNoReader) {
    for (const Format& format : formats()) {
        int files = 0;
        for (const auto& file : std::filesystem::directory_iterator(kCorpus / format.name)) {
            SCOPED_TRACE(file.path());
            EXPECT_NO_THROW(format.take(bytesOf(file.path())));
            ++files;
        }
        EXPECT_GT(files, 0) << format.name;
    }
}

TEST(Corpus, HasAFormatForEachOfItsFolders) {
    for (const auto& folder : std::filesystem::directory_iterator(kCorpus))
        EXPECT_NO_THROW(findFormat(folder.path().filename().string()));
}

TEST(Corpus, SamplesOfEveryFormatAreAccepted) {
    for (const Format& format : formats()) {
        for (const std::string& sample : format.samples())
            EXPECT_TRUE(format.take(sample)) << format.name << ": " << sample;
    }
}

}  // namespace
}  // namespace tiepoint::fuzz
