#include "core/bench/seal.h"

#include "core/base/json_scan.h"
#include "core/base/json_text.h"

#include <algorithm>
#include <cstdint>

namespace tiepoint {
namespace {

constexpr std::string_view kSixtyFour = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_";
constexpr std::size_t kSealSumBytes = 4;

/// A stream of bytes that begins with a number: an xorshift.
class ByteStream {
public:
    explicit ByteStream(std::uint32_t start) : state_(start | 1u) {}
    unsigned char next() {
        state_ ^= state_ << 13;
        state_ ^= state_ >> 17;
        state_ ^= state_ << 5;
        return static_cast<unsigned char>(state_ >> 11);
    }

private:
    std::uint32_t state_;
};

/// FNV-1a.
std::uint32_t sumOf(std::string_view text) {
    std::uint32_t sum = 2166136261u;
    for (const char c : text) sum = (sum ^ static_cast<unsigned char>(c)) * 16777619u;
    return sum;
}

std::string sumBytes(std::uint32_t sum) {
    std::string bytes;
    for (std::size_t i = 0; i < kSealSumBytes; ++i) bytes += static_cast<char>(sum >> (8 * i) & 0xff);
    return bytes;
}

/// The bytes in letters (base64url of RFC 4648, without padding).
std::string inLetters(std::string_view bytes) {
    std::string text;
    unsigned held = 0;
    int bits = 0;
    for (const char c : bytes) {
        held = held << 8 | static_cast<unsigned char>(c);
        for (bits += 8; bits >= 6; bits -= 6) text += kSixtyFour[held >> (bits - 6) & 63];
        held &= (1u << bits) - 1;
    }
    if (bits > 0) text += kSixtyFour[held << (6 - bits) & 63];
    return text;
}

std::optional<std::string> fromLetters(std::string_view text) {
    std::string bytes;
    unsigned held = 0;
    int bits = 0;
    for (const char c : text) {
        const std::size_t digit = kSixtyFour.find(c);
        if (digit == std::string_view::npos) return std::nullopt;
        held = held << 6 | static_cast<unsigned>(digit);
        bits += 6;
        if (bits < 8) continue;
        bits -= 8;
        bytes += static_cast<char>(held >> bits & 0xff);
        held &= (1u << bits) - 1;
    }
    return bytes;
}

/// The text of a member of an object, if it is text.
std::optional<std::string> textOf(const JsonValue& object, std::string_view name) {
    const JsonValue* member = object.member(name);
    if (!member || member->type != JsonType::String) return std::nullopt;
    return member->text;
}

std::string memberText(std::string_view seen, std::string_view slip) {
    return "{\"seen\": " + jsonString(seen) + ", \"slip\": " + jsonString(slip) + "}";
}

const std::string* huntMemberOf(const Bench& bench) {
    const auto found = std::ranges::find(bench.extras, kHuntMember, &std::pair<std::string, std::string>::first);
    return found == bench.extras.end() ? nullptr : &found->second;
}

/// "W2=open inside;R1=dead"
std::string conditionsOf(const Bench& bench) {
    std::string all;
    const auto add = [&](const auto& thing) {
        if (thing.condition == Condition::Sound) return;
        if (!all.empty()) all += ';';
        all += thing.id;
        all += '=';
        all += kConditionNames[static_cast<std::size_t>(thing.condition)];
    };
    std::ranges::for_each(bench.parts, add);
    std::ranges::for_each(bench.jumpers, add);
    return all;
}

std::optional<HiddenConditions> readConditions(std::string_view text) {
    HiddenConditions hidden;
    while (!text.empty()) {
        const std::string_view one = text.substr(0, text.find(';'));
        text.remove_prefix(std::min(text.size(), one.size() + 1));
        const std::size_t equals = one.find('=');
        if (equals == std::string_view::npos) return std::nullopt;
        const auto name = std::ranges::find(kConditionNames, one.substr(equals + 1));
        if (name == kConditionNames.end()) return std::nullopt;
        hidden.emplace_back(one.substr(0, equals), static_cast<Condition>(name - kConditionNames.begin()));
    }
    return hidden;
}

}  // namespace

std::string obscured(std::string_view plain) {
    const std::uint32_t sum = sumOf(plain);
    std::string bytes = sumBytes(sum);
    ByteStream stream(sum);
    for (const char c : plain) bytes += static_cast<char>(static_cast<unsigned char>(c) ^ stream.next());
    return inLetters(bytes);
}

std::optional<std::string> unobscured(std::string_view text) {
    const auto bytes = fromLetters(text);
    if (!bytes || bytes->size() < kSealSumBytes) return std::nullopt;
    std::uint32_t sum = 0;
    for (std::size_t i = 0; i < kSealSumBytes; ++i)
        sum |= static_cast<std::uint32_t>(static_cast<unsigned char>((*bytes)[i])) << (8 * i);
    ByteStream stream(sum);
    std::string plain;
    for (const char c : std::string_view(*bytes).substr(kSealSumBytes))
        plain += static_cast<char>(static_cast<unsigned char>(c) ^ stream.next());
    if (sumOf(plain) != sum) return std::nullopt;
    return plain;
}

std::optional<SealedSlip> sealedSlipOf(const Bench& bench) {
    const std::string* member = huntMemberOf(bench);
    if (!member) return std::nullopt;
    const auto json = parseJson(*member);
    if (!json) return std::nullopt;
    const auto seen = textOf(*json, "seen"), slip = textOf(*json, "slip");
    const auto plain = slip ? unobscured(*slip) : std::nullopt;
    if (!seen || !plain) return std::nullopt;
    return SealedSlip{*seen, *plain};
}

void sealSlip(Bench& bench, const SealedSlip& slip) {
    unsealSlip(bench);
    bench.extras.emplace_back(kHuntMember, memberText(slip.seen, obscured(slip.slip)));
}

void unsealSlip(Bench& bench) {
    std::erase_if(bench.extras, [](const auto& extra) { return extra.first == kHuntMember; });
}

std::optional<Bench> asInFile(const Bench& bench) {
    if (!huntMemberOf(bench)) return std::nullopt;
    Bench written = soundOf(bench);
    const std::string conditions = ", \"conditions\": " + jsonString(obscured(conditionsOf(bench))) + "}";
    for (auto& [name, json] : written.extras) {
        if (name == kHuntMember && json.ends_with('}')) json.replace(json.size() - 1, 1, conditions);
    }
    return written;
}

std::optional<std::string> takeHidden(std::string_view member, HiddenConditions& hidden) {
    const auto json = parseJson(member);
    if (!json || json->type != JsonType::Object) return std::nullopt;
    const auto seen = textOf(*json, "seen"), slip = textOf(*json, "slip"), conditions = textOf(*json, "conditions");
    if (!seen || !slip || !unobscured(*slip)) return std::nullopt;
    const auto plain = conditions ? unobscured(*conditions) : std::optional<std::string>("");
    auto read = plain ? readConditions(*plain) : std::nullopt;
    if (!read) return std::nullopt;
    hidden = std::move(*read);
    return memberText(*seen, *slip);
}

void applyHidden(Bench& bench, const HiddenConditions& hidden) {
    for (const auto& each : hidden) {
        const int part = bench.partIndex(each.first), jumper = bench.jumperIndex(each.first);
        if (part >= 0) bench.parts[static_cast<std::size_t>(part)].condition = each.second;
        if (jumper >= 0) bench.jumpers[static_cast<std::size_t>(jumper)].condition = each.second;
    }
}

}  // namespace tiepoint
