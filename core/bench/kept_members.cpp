#include "core/bench/kept_members.h"

#include "core/base/json_text.h"

#include <fmt/format.h>

#include <utility>

namespace tiepoint {
namespace {

constexpr std::size_t kMostWarnings = 100;

}  // namespace

void KeptMembers::keep(const JsonValue& member, const std::string& pointer, Extras& extras, std::size_t base) {
    extras.emplace_back(member.name, canonicalJson(text_.substr(base + member.begin, member.end - member.begin)));
    if (++count_ > kMostWarnings) return;
    Error warning{ErrorKind::Format,
                  fmt::format("the member {} isn't known; it is kept as it is", inQuotes(member.name)),
                  {pointer + '/' + pointerToken(member.name), 0, 0},
                  {}};
    lines_.locate(base + member.nameBegin, warning.place);
    warnings_.push_back(std::move(warning));
}

std::vector<Error> KeptMembers::takeWarnings() {
    if (count_ > kMostWarnings) {
        warnings_.push_back(
            {ErrorKind::Format, fmt::format("{} more members aren't known", count_ - kMostWarnings), {}, {}});
    }
    return std::exchange(warnings_, {});
}

}  // namespace tiepoint
