#include "core/base/file_io.h"

#include <fcntl.h>
#include <fmt/format.h>
#include <sys/stat.h>
#include <unistd.h>

#include <algorithm>
#include <cerrno>
#include <cstdlib>
#include <system_error>

namespace tiepoint {
namespace {

constexpr std::size_t kChunkBytes = 1 << 20;
constexpr mode_t kNewFileMode = 0666;

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

/// The permissions that the file has, or that a new one gets.
mode_t modeFor(const std::filesystem::path& path) {
    struct stat status {};
    if (::stat(path.c_str(), &status) == 0) return status.st_mode & 07777;
    const mode_t mask = ::umask(0);
    ::umask(mask);
    return kNewFileMode & ~mask;
}

/// The file that a link stands for: a rename would replace the link itself.
std::filesystem::path behindLinks(const std::filesystem::path& path) {
    std::error_code failed;
    const auto target = std::filesystem::canonical(path, failed);
    return failed ? path : target;
}

/// The rename is safe on the disk only once the folder is. A file system that can't sync folders is no reason
/// to fail.
void syncFolder(const std::filesystem::path& file) {
    const auto folder = file.has_parent_path() ? file.parent_path() : std::filesystem::path(".");
    const Descriptor descriptor(::open(folder.c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC));
    if (descriptor.number() >= 0) ::fsync(descriptor.number());
}

}  // namespace

Result<std::string> readFile(const std::filesystem::path& path, std::size_t largestBytes) {
    const Descriptor file(::open(path.c_str(), O_RDONLY | O_CLOEXEC));
    if (file.number() < 0) return failure(path, "the file can't be opened", errno);
    const Error tooLarge{
        ErrorKind::Format, fmt::format("the file is larger than {} MB", largestBytes / 1'000'000), {}, path.string()};
    struct stat status {};
    if (::fstat(file.number(), &status) != 0) return failure(path, "the file can't be read", errno);
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
        if (size > largestBytes) return tooLarge;  // it grows, or has no size: a pipe
    }
    text.resize(size);
    return text;
}

Result<Done> writeFileAtomically(const std::filesystem::path& path, std::string_view text, bool durable) {
    const std::filesystem::path target = behindLinks(path);
    std::string temporary = (target.parent_path() / ("." + target.filename().string() + ".XXXXXX")).string();
    Descriptor file(::mkostemp(temporary.data(), O_CLOEXEC));
    if (file.number() < 0) return failure(path, "no file can be made beside it", errno);

    const bool written = ::fchmod(file.number(), modeFor(target)) == 0 && writeAll(file.number(), text) &&
                         (!durable || ::fsync(file.number()) == 0) && file.close() &&
                         ::rename(temporary.c_str(), target.c_str()) == 0;
    if (!written) {
        const int code = errno;
        ::unlink(temporary.c_str());
        return failure(path, "the file can't be written", code);
    }
    if (durable) syncFolder(target);
    return Done{};
}

void syncToDisk(const std::filesystem::path& path) {
    const Descriptor file(::open(path.c_str(), O_RDONLY | O_CLOEXEC));
    if (file.number() < 0) return;
    ::fsync(file.number());
    syncFolder(path);
}

}  // namespace tiepoint
