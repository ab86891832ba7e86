#include "core/base/file_io.h"

#include <fcntl.h>
#include <fmt/format.h>
#include <sys/stat.h>
#include <unistd.h>

#include <algorithm>
#include <cerrno>
#include <optional>
#include <random>
#include <system_error>
#include <utility>

namespace tiepoint {
namespace {

constexpr std::size_t kChunkBytes = 1 << 20;
constexpr mode_t kNewFileMode = 0666, kPrivateMode = 0600, kPermissions = 07777, kAnyoneMayWrite = 0222;
constexpr int kMostLinks = 40;            // as the system follows them
constexpr int kMostNamesTried = 100;      // for a temporary file
constexpr std::size_t kMostOfName = 200;  // bytes of a file's name that go into its temporary file's; 255 is the most

/// An open file, closed at the end of its life.
class Descriptor {
public:
    explicit Descriptor(int number) : number_(number) {}
    ~Descriptor() { close(); }
    Descriptor(const Descriptor&) = delete;
    Descriptor& operator=(const Descriptor&) = delete;

    int number() const { return number_; }
    bool close() {
        const int number = std::exchange(number_, -1);
        return number < 0 || ::close(number) == 0;
    }

private:
    int number_;
};

Error failure(const std::filesystem::path& path, std::string_view what, int code) {
    return {ErrorKind::Io, fmt::format("{}: {}", what, std::generic_category().message(code)), {}, path.string()};
}

bool writeAll(int descriptor, std::string_view text) {
    while (!text.empty()) {
        const ssize_t written = ::write(descriptor, text.data(), text.size());
        if (written < 0 && errno == EINTR) continue;
        if (written < 0) return false;
        text.remove_prefix(static_cast<std::size_t>(written));
    }
    return true;
}

/// What stands there instead of a file that holds a text; null where it is one.
const char* wrongThing(mode_t mode) {
    if (S_ISREG(mode)) return nullptr;
    if (S_ISDIR(mode)) return "a folder";
    if (S_ISFIFO(mode)) return "a pipe";
    if (S_ISSOCK(mode)) return "a socket";
    return "a device";
}

Error noFile(const std::filesystem::path& path, const char* thing) {
    return {ErrorKind::Io, fmt::format("this is {}, not a file", thing), {}, path.string()};
}

/// The file that a link stands for, also where there is none yet: a rename would replace the link itself.
std::filesystem::path behindLinks(std::filesystem::path path) {
    std::error_code failed;
    for (int i = 0; i < kMostLinks; ++i) {
        const auto target = std::filesystem::read_symlink(path, failed);
        if (failed) return path;
        path = path.parent_path() / target;
    }
    return path;
}

/// The file that a text is about to be put in the place of.
struct WriteTarget {
    std::filesystem::path path;
    std::optional<mode_t> permissions;  ///< of the file that stands there
};

/// Nothing but a file is ever replaced, and no file that is protected.
Result<WriteTarget> writeTargetFor(const std::filesystem::path& path) {
    struct stat status {};
    if (::stat(path.c_str(), &status) != 0) {
        if (errno == ENOENT) return WriteTarget{behindLinks(path), std::nullopt};
        return failure(path, "the file can't be written", errno);
    }
    if (const char* thing = wrongThing(status.st_mode)) return noFile(path, thing);
    if ((status.st_mode & kAnyoneMayWrite) == 0 || ::faccessat(AT_FDCWD, path.c_str(), W_OK, AT_EACCESS) != 0)
        return Error{ErrorKind::Io, "the file is write-protected", {}, path.string()};
    return WriteTarget{behindLinks(path), status.st_mode & kPermissions};
}

std::string randomLetters() {
    constexpr std::string_view kLetters = "abcdefghijklmnopqrstuvwxyz0123456789";
    constexpr int kCount = 8;
    static thread_local std::mt19937_64 random{std::random_device{}()};
    std::string letters;
    for (int i = 0; i < kCount; ++i) letters += kLetters[random() % kLetters.size()];
    return letters;
}

/// Makes a file beside the target, open for writing, and says its name; negative on failure. A new file gets the permissions that the
/// system gives new ones; what takes the place of another is nobody else's until it has that one's.
int openBeside(const WriteTarget& target, std::string& name) {
    const std::string stem = "." + target.path.filename().string().substr(0, kMostOfName) + ".";
    for (int i = 0; i < kMostNamesTried; ++i) {
        name = (target.path.parent_path() / (stem + randomLetters())).string();
        const int file = ::open(name.c_str(), O_WRONLY | O_CREAT | O_EXCL | O_CLOEXEC,
                                target.permissions ? kPrivateMode : kNewFileMode);
        if (file >= 0 || errno != EEXIST) return file;
    }
    return -1;
}

/// The rename is safe on the disk only once the folder is. A file system that can't sync folders is no reason
/// to fail.
void syncFolder(const std::filesystem::path& file) {
    const auto folder = file.has_parent_path() ? file.parent_path() : std::filesystem::path(".");
    const Descriptor descriptor(::open(folder.c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC));
    if (descriptor.number() >= 0) ::fsync(descriptor.number());
}

}  // namespace

Result<Done> checkFile(const std::filesystem::path& path) {
    struct stat status {};
    if (::stat(path.c_str(), &status) != 0) {
        if (errno == ENOENT) return Error{ErrorKind::Io, "there is no file", {}, path.string()};
        return failure(path, "the file can't be opened", errno);
    }
    if (const char* thing = wrongThing(status.st_mode)) return noFile(path, thing);
    return Done{};
}

Result<std::string> readFile(const std::filesystem::path& path, std::size_t largestBytes) {
    // Looked at before it is opened: opening a pipe waits for whoever writes, and a device may start to do something.
    if (auto there = checkFile(path); !there) return there.error();
    const Descriptor file(::open(path.c_str(), O_RDONLY | O_NONBLOCK | O_CLOEXEC));
    if (file.number() < 0) return failure(path, "the file can't be opened", errno);
    const Error tooLarge{
        ErrorKind::Format, fmt::format("the file is larger than {} MB", largestBytes / 1'000'000), {}, path.string()};
    struct stat status {};
    if (::fstat(file.number(), &status) != 0) return failure(path, "the file can't be read", errno);
    if (const char* thing = wrongThing(status.st_mode)) return noFile(path, thing);
    if (status.st_size > 0 && static_cast<std::size_t>(status.st_size) > largestBytes) return tooLarge;

    std::string text;
    std::size_t size = 0;
    text.resize(std::max<std::size_t>(static_cast<std::size_t>(std::max<off_t>(status.st_size, 0)) + 1, 4096));
    for (;;) {
        if (size == text.size()) text.resize(text.size() + std::max(text.size(), kChunkBytes));
        const ssize_t got = ::read(file.number(), text.data() + size, text.size() - size);
        if (got < 0 && errno == EINTR) continue;
        if (got < 0) return failure(path, "the file can't be read", errno);
        if (got == 0) break;
        size += static_cast<std::size_t>(got);
        if (size > largestBytes) return tooLarge;  // it grows, or tells no size, as the files of the system do
    }
    text.resize(size);
    return text;
}

Result<Done> writeFileAtomically(const std::filesystem::path& path, std::string_view text, bool durable) {
    const auto target = writeTargetFor(path);
    if (!target) return target.error();
    std::string temporary;
    Descriptor file(openBeside(*target, temporary));
    if (file.number() < 0) return failure(path, "no file can be made beside it", errno);

    const bool written = (!target->permissions || ::fchmod(file.number(), *target->permissions) == 0) &&
                         writeAll(file.number(), text) && (!durable || ::fsync(file.number()) == 0) && file.close() &&
                         ::rename(temporary.c_str(), target->path.c_str()) == 0;
    if (!written) {
        const int code = errno;
        ::unlink(temporary.c_str());
        return failure(path, "the file can't be written", code);
    }
    if (durable) syncFolder(target->path);
    return Done{};
}

void syncToDisk(const std::filesystem::path& path) {
    const Descriptor file(::open(path.c_str(), O_RDONLY | O_NONBLOCK | O_CLOEXEC));
    if (file.number() < 0) return;
    ::fsync(file.number());
    syncFolder(path);
}

}  // namespace tiepoint
