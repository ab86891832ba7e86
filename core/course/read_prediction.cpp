#include "core/course/read_prediction.h"

#include "core/base/json_scan.h"
#include "core/course/lesson_file.h"

#include <fmt/format.h>

namespace tiepoint {

using reading::Failure;
using reading::forEachMember;
using reading::requireObject;

namespace {

void shift(JsonValue& value, std::size_t by) {
    value.begin += by;
    value.end += by;
    value.nameBegin += by;
    for (JsonValue& item : value.items) shift(item, by);
}

Failure readTag(const JsonValue& each, const std::string& pointer, WrongIdea& wrong) {
    auto hole = parseHole(each.name);
    if (!hole)
        return Trouble{ErrorKind::Placement,
                       fmt::format("{} is no hole; holes are written like A.e12 or A.top+7", inQuotes(each.name)),
                       pointer, each.nameBegin};
    wrong.tags.emplace_back(std::move(*hole), std::string());
    return readText(each, pointer, wrong.tags.back().second);
}

Failure readWrong(const JsonValue& value, const std::string& at, std::string_view text, WrongIdea& wrong) {
    if (auto failure = requireObject(value, at)) return failure;
    return forEachMember(value, at, [&](const JsonValue& member, const std::string& pointer) -> Failure {
        if (member.name == "idea") return readText(member, pointer, wrong.idea);
        if (member.name == "brokenAt") return readText(member, pointer, wrong.brokenAt);
        if (member.name == "breaks") return readText(member, pointer, wrong.breaks);
        if (member.name != "amperes" && member.name != "tags") return unknownMember(member, pointer, "a wrong idea");
        const JsonValue list = wholeJson(text, member);
        if (auto failure = requireObject(list, pointer)) return failure;
        return forEachMember(list, pointer, [&](const JsonValue& each, const std::string& place) -> Failure {
            if (member.name == "tags") return readTag(each, place, wrong);
            if (each.type != JsonType::Number) return wrongType(each, place, "a number");
            const std::size_t dot = each.name.find('.');
            wrong.amperes.emplace_back(AmperesIn{each.name.substr(0, dot),
                                                 dot == std::string::npos ? std::string() : each.name.substr(dot + 1)},
                                       each.number);
            return {};
        });
    });
}

}  // namespace

JsonValue wholeJson(std::string_view text, const JsonValue& value) {
    auto parsed = parseJson(text.substr(value.begin, value.end - value.begin));
    if (!parsed) return value;  // it was scanned before
    JsonValue again = std::move(parsed).value();
    shift(again, value.begin);
    again.name = value.name;
    again.nameBegin = value.nameBegin;
    return again;
}

std::optional<Trouble> readCount(const JsonValue& value, const std::string& pointer, int most, int& count) {
    if (value.type != JsonType::Number) return wrongType(value, pointer, "a number");
    if (!(value.number >= 0 && value.number <= most) || value.number != static_cast<int>(value.number))
        return Trouble{ErrorKind::Range, fmt::format("a whole number from 0 to {} belongs here", most), pointer,
                       value.begin};
    count = static_cast<int>(value.number);
    return {};
}

std::optional<Trouble> readTexts(const JsonValue& value, const std::string& pointer, std::vector<std::string>& texts) {
    if (value.type != JsonType::List) return wrongType(value, pointer, "a list of texts");
    for (std::size_t i = 0; i < value.items.size(); ++i) {
        if (auto failure = readText(value.items[i], fmt::format("{}/{}", pointer, i), texts.emplace_back()))
            return failure;
    }
    return {};
}

Trouble unknownMember(const JsonValue& member, const std::string& pointer, std::string_view of) {
    return {ErrorKind::Format, fmt::format("{} has no member {}", of, inQuotes(member.name)), pointer,
            member.nameBegin};
}

std::optional<Trouble> readPrediction(const JsonValue& value, const std::string& at, std::string_view text,
                                      Prediction& ask) {
    if (auto failure = requireObject(value, at)) return failure;
    for (const char* name : {"question", "right"}) {
        if (!value.member(name))
            return Trouble{ErrorKind::Format, fmt::format("the member \"{}\" is missing", name), at, value.begin};
    }
    const JsonValue *answers = value.member("answers"), *diagrams = value.member("diagrams");
    if (!answers == !diagrams)
        return Trouble{ErrorKind::Format, "a question has either \"answers\" or \"diagrams\"", at, value.begin};
    int right = 0;
    auto failure = forEachMember(value, at, [&](const JsonValue& member, const std::string& pointer) -> Failure {
        if (member.name == "question") return readText(member, pointer, ask.question);
        if (member.name == "seen") return readText(member, pointer, ask.seen);
        if (member.name == "answers") return readTexts(member, pointer, ask.answers);
        if (member.name == "diagrams") return readCount(member, pointer, kMostAnswers, ask.diagrams);
        if (member.name == "right") return readCount(member, pointer, kMostAnswers, right);
        if (member.name == "wrong") return readWrong(wholeJson(text, member), pointer, text, ask.wrong.emplace());
        return unknownMember(member, pointer, "a prediction");
    });
    if (failure) return failure;
    for (int i = 1; i <= ask.diagrams; ++i) ask.answers.push_back(fmt::format("Diagram {}", i));
    const int count = static_cast<int>(ask.answers.size());
    if (count < kFewestAnswers || count > kMostAnswers)
        return Trouble{ErrorKind::Range,
                       fmt::format("a question has {} to {} answers, not {}", kFewestAnswers, kMostAnswers, count),
                       at + (answers ? "/answers" : "/diagrams"), (answers ? answers : diagrams)->begin};
    if (right < 1 || right > count)
        return Trouble{ErrorKind::Range, fmt::format("the right answer is one of 1 to {}", count), at + "/right",
                       value.member("right")->begin};
    ask.right = right - 1;
    return {};
}

}  // namespace tiepoint
