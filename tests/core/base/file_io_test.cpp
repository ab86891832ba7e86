// Files in and out: nothing but a file is read or replaced, and what can't be written leaves everything as it was.

#include "core/base/file_io.h"

#include <fcntl.h>
#include <gtest/gtest.h>
#include <sys/resource.h>
#include <sys/socket.h>
#include <sys/stat.h>
#include <sys/un.h>
#include <unistd.h>

#include <atomic>
#include <chrono>
#include <csignal>
#include <filesystem>
#include <fstream>
#include <future>
#include <sstream>
#include <string>
#include <thread>

namespace tiepoint {
namespace {

namespace fs = std::filesystem;

constexpr std::size_t kLarge = 1 << 20;
constexpr auto kPatience = std::chrono::seconds(5);

class FileIo : public testing::Test {
protected:
    FileIo() {
        std::string pattern = (fs::temp_directory_path() / "tiepoint-files-XXXXXX").string();
        EXPECT_NE(mkdtemp(pattern.data()), nullptr);
        folder_ = pattern;
    }
    ~FileIo() override { fs::remove_all(folder_); }

    fs::path in(const char* name) const { return folder_ / name; }
    static std::string contentOf(const fs::path& path) {
        std::ostringstream content;
        content << std::ifstream(path).rdbuf();
        return content.str();
    }
    static mode_t modeOf(const fs::path& path) {
        struct stat status {};
        EXPECT_EQ(lstat(path.c_str(), &status), 0);
        return status.st_mode;
    }
    std::ptrdiff_t countIn() const { return std::distance(fs::directory_iterator(folder_), fs::directory_iterator()); }

    fs::path makePipe() const {
        const fs::path pipe = in("pipe");
        EXPECT_EQ(mkfifo(pipe.c_str(), 0600), 0);
        return pipe;
    }

    fs::path folder_;
};

// --- what is no file ---

struct Thing {
    const char* name;
    fs::path path;
    mode_t type;
    const char* called;
};

TEST_F(FileIo, WhatIsNoFileIsRefusedAndStays) {
    const fs::path pipe = makePipe(), device = in("device"), folder = in("folder"), socket = in("socket");
    fs::create_symlink("/dev/null", device);  // a link, so that nothing of the system's is at stake
    fs::create_directory(folder);
    const int listening = ::socket(AF_UNIX, SOCK_STREAM, 0);
    sockaddr_un address{};
    address.sun_family = AF_UNIX;
    socket.string().copy(address.sun_path, sizeof address.sun_path - 1);
    ASSERT_EQ(bind(listening, reinterpret_cast<const sockaddr*>(&address), sizeof address), 0);

    for (const Thing& thing :
         {Thing{"pipe", pipe, S_IFIFO, "a pipe"}, Thing{"device", device, S_IFLNK, "a device"},
          Thing{"folder", folder, S_IFDIR, "a folder"}, Thing{"socket", socket, S_IFSOCK, "a socket"}}) {
        SCOPED_TRACE(thing.name);
        const auto before = countIn();
        const auto written = writeFileAtomically(thing.path, "text");
        ASSERT_FALSE(written.ok());
        EXPECT_NE(written.error().oneLine().find(thing.called), std::string::npos) << written.error().oneLine();
        EXPECT_EQ(modeOf(thing.path) & S_IFMT, thing.type);
        EXPECT_EQ(countIn(), before) << "no temporary file stays";
    }
    close(listening);
}

TEST_F(FileIo, APipeIsNotWaitedFor) {
    const fs::path pipe = makePipe();
    auto reading = std::async(std::launch::async, [&] { return readFile(pipe, kLarge); });
    const bool answered = reading.wait_for(kPatience) == std::future_status::ready;
    if (!answered) close(open(pipe.c_str(), O_WRONLY));  // lets go of who waits
    ASSERT_TRUE(answered);
    const auto read = reading.get();
    ASSERT_FALSE(read.ok());
    EXPECT_NE(read.error().oneLine().find("a pipe"), std::string::npos) << read.error().oneLine();
}

TEST_F(FileIo, AFolderAndADeviceAreCalledSo) {
    EXPECT_NE(readFile(folder_, kLarge).error().message.find("a folder"), std::string::npos);
    EXPECT_NE(readFile("/dev/null", kLarge).error().message.find("a device"), std::string::npos);
}

// --- links and permissions ---

TEST_F(FileIo, ALinkStaysAndItsFileIsWritten) {
    fs::create_directory(in("harbour"));
    std::ofstream(in("harbour") / "mole") << "old";
    fs::create_symlink("harbour/mole", in("there"));  // relative to where the link lies
    fs::create_symlink("there", in("twice"));
    ASSERT_TRUE(writeFileAtomically(in("twice"), "new").ok());
    EXPECT_TRUE(fs::is_symlink(in("twice")) && fs::is_symlink(in("there")));
    EXPECT_EQ(contentOf(in("harbour") / "mole"), "new");
}

TEST_F(FileIo, ALinkToNoFileYetMakesThatFile) {
    fs::create_symlink("later", in("link"));
    ASSERT_TRUE(writeFileAtomically(in("link"), "new").ok());
    EXPECT_TRUE(fs::is_symlink(in("link")));
    EXPECT_EQ(contentOf(in("later")), "new");
}

TEST_F(FileIo, LinksInACircleAreAnError) {
    fs::create_symlink("b", in("a"));
    fs::create_symlink("a", in("b"));
    EXPECT_FALSE(writeFileAtomically(in("a"), "new").ok());
    EXPECT_TRUE(fs::is_symlink(in("a")) && fs::is_symlink(in("b")));
}

TEST_F(FileIo, AWriteProtectedFileIsRefused) {
    std::ofstream(in("kept")) << "old";
    fs::permissions(in("kept"), fs::perms::owner_read | fs::perms::group_read);
    const auto written = writeFileAtomically(in("kept"), "new");
    ASSERT_FALSE(written.ok());
    EXPECT_NE(written.error().message.find("write-protected"), std::string::npos) << written.error().message;
    EXPECT_EQ(contentOf(in("kept")), "old");
}

TEST_F(FileIo, ANewFileGetsTheUsualPermissionsAndAnOldOneKeepsItsOwn) {
    constexpr mode_t kMask = 027, kOwn = 0604;
    const mode_t before = umask(kMask);
    ASSERT_TRUE(writeFileAtomically(in("new"), "text").ok());
    umask(before);
    EXPECT_EQ(modeOf(in("new")) & 07777, mode_t{0666} & ~kMask);
    chmod(in("new").c_str(), kOwn);
    ASSERT_TRUE(writeFileAtomically(in("new"), "other").ok());
    EXPECT_EQ(modeOf(in("new")) & 07777, kOwn);
}

/// The mask is the whole process's: who sets it, if only for a moment, lays open what other threads make meanwhile.
TEST_F(FileIo, WritingLeavesFilesOfOtherThreadsAlone) {
    constexpr mode_t kMask = 077;
    constexpr int kRounds = 3000;
    const mode_t before = umask(kMask);
    std::atomic<bool> done = false;
    std::thread writing([&] {
        for (int i = 0; i < kRounds; ++i) {
            fs::remove(in("mine"));
            EXPECT_TRUE(writeFileAtomically(in("mine"), "text", false).ok());
        }
        done = true;
    });
    int open = 0;
    while (!done) {
        const int file = ::open(in("other").c_str(), O_WRONLY | O_CREAT | O_EXCL, 0666);
        struct stat status {};
        if (fstat(file, &status) == 0 && (status.st_mode & kMask) != 0) ++open;
        close(file);
        fs::remove(in("other"));
    }
    writing.join();
    umask(before);
    EXPECT_EQ(open, 0);
}

// --- a full disk, a long name ---

TEST_F(FileIo, WhenTheDiskIsFullTheOldFileStays) {
    std::ofstream(in("kept")) << "old";
    rlimit usual{};
    ASSERT_EQ(getrlimit(RLIMIT_FSIZE, &usual), 0);
    const auto handler = std::signal(SIGXFSZ, SIG_IGN);
    const rlimit small{4096, usual.rlim_max};
    ASSERT_EQ(setrlimit(RLIMIT_FSIZE, &small), 0);
    const auto written = writeFileAtomically(in("kept"), std::string(kLarge, 'x'));
    setrlimit(RLIMIT_FSIZE, &usual);
    std::signal(SIGXFSZ, handler);
    ASSERT_FALSE(written.ok());
    EXPECT_EQ(contentOf(in("kept")), "old");
    EXPECT_EQ(countIn(), 1) << "no temporary file stays";
}

TEST_F(FileIo, TheLongestNameCanBeWritten) {
    constexpr std::size_t kMostLetters = 255;
    const std::string name(kMostLetters, 'n');
    ASSERT_TRUE(writeFileAtomically(in(name.c_str()), "text").ok());
    EXPECT_EQ(contentOf(in(name.c_str())), "text");
}

}  // namespace
}  // namespace tiepoint
