#include "core/bench/bench_in_picture.h"

#include <array>
#include <cassert>
#include <cstdint>

namespace tiepoint {
namespace {

constexpr std::string_view kSignature("\x89PNG\r\n\x1a\n", 8);
constexpr std::string_view kInternationalText = "iTXt", kEnd = "IEND";
constexpr std::string_view kKeyword = "tiepoint-bench";
/// Behind the keyword: its end, not compressed, no method, no language, no translated keyword.
constexpr std::string_view kPlain("\0\0\0\0\0", 5);
constexpr std::size_t kLengthBytes = 4, kTypeBytes = 4, kSumBytes = 4;

/// The checksum of ISO/IEC 15948, annex D.
std::uint32_t checksumOf(std::string_view bytes) {
    static const auto table = [] {
        std::array<std::uint32_t, 256> entries{};
        for (std::uint32_t n = 0; n < entries.size(); ++n) {
            std::uint32_t c = n;
            for (int k = 0; k < 8; ++k) c = (c & 1) != 0 ? 0xedb88320u ^ (c >> 1) : c >> 1;
            entries[n] = c;
        }
        return entries;
    }();
    std::uint32_t sum = 0xffffffffu;
    for (const char each : bytes) sum = table[(sum ^ static_cast<unsigned char>(each)) & 0xffu] ^ (sum >> 8);
    return ~sum;
}

std::string bigEndian(std::uint32_t number) {
    std::string bytes;
    for (int shift = 24; shift >= 0; shift -= 8) bytes += static_cast<char>((number >> shift) & 0xffu);
    return bytes;
}

std::uint32_t fromBigEndian(std::string_view bytes) {
    std::uint32_t number = 0;
    for (std::size_t i = 0; i < kLengthBytes; ++i) number = number << 8 | static_cast<unsigned char>(bytes[i]);
    return number;
}

/// One chunk of a file, or none where the bytes don't hold one.
struct Chunk {
    std::string_view type, data, whole;
    bool holds = false;
};

Chunk chunkAt(std::string_view bytes) {
    if (bytes.size() < kLengthBytes + kTypeBytes + kSumBytes) return {};
    const std::size_t length = fromBigEndian(bytes);
    if (length > bytes.size() - kLengthBytes - kTypeBytes - kSumBytes) return {};
    const std::string_view summed = bytes.substr(kLengthBytes, kTypeBytes + length);
    const std::string_view sum = bytes.substr(kLengthBytes + kTypeBytes + length, kSumBytes);
    return {summed.substr(0, kTypeBytes), summed.substr(kTypeBytes),
            bytes.substr(0, kLengthBytes + kTypeBytes + length + kSumBytes), fromBigEndian(sum) == checksumOf(summed)};
}

Error notInside(std::string_view why) { return {ErrorKind::Format, "a picture " + std::string(why), {}, {}}; }

}  // namespace

bool isPng(std::string_view bytes) { return bytes.starts_with(kSignature); }

std::string withBenchInside(std::string_view png, std::string_view benchText) {
    std::string content(kInternationalText);
    content += kKeyword;
    content += kPlain;
    content += benchText;
    const std::string chunk =
        bigEndian(static_cast<std::uint32_t>(content.size() - kTypeBytes)) + content + bigEndian(checksumOf(content));
    // Right behind the header, so that a reader that stops at the pixels has seen it.
    const Chunk header = chunkAt(png.substr(kSignature.size()));
    assert(isPng(png) && header.holds);
    const std::size_t at = kSignature.size() + header.whole.size();
    return std::string(png.substr(0, at)) + chunk + std::string(png.substr(at));
}

Result<std::string> benchInside(std::string_view png) {
    if (!isPng(png)) return notInside("that is no PNG");
    std::string_view left = png.substr(kSignature.size());
    const std::string beginning = std::string(kKeyword) + std::string(kPlain);
    while (true) {
        const Chunk chunk = chunkAt(left);
        if (!chunk.holds) return notInside("that is damaged: its chunks don't hold together");
        if (chunk.type == kInternationalText && chunk.data.starts_with(beginning))
            return std::string(chunk.data.substr(beginning.size()));
        if (chunk.type == kEnd) return notInside("without a bench inside");
        left.remove_prefix(chunk.whole.size());
    }
}

Result<std::string> textOrInside(std::string bytes) {
    if (!isPng(bytes)) return bytes;
    return benchInside(bytes);
}

}  // namespace tiepoint
