#include "core/course/class_record.h"

#include "core/base/json_text.h"
#include "core/bench/first_trouble.h"
#include "core/bench/read_named.h"
#include "core/course/lesson_file.h"
#include "core/course/read_prediction.h"

#include <fmt/format.h>

#include <algorithm>

namespace tiepoint {
namespace {

using reading::Failure;
using reading::forEachMember;
using reading::requireObject;

constexpr std::string_view kRecordFormat = "tiepoint-class";
constexpr std::array<std::string_view, 2> kRecordLists = {"votes", "looked"};
constexpr std::size_t kLargestRecord = 1u << 20;
constexpr int kMostHandsCounted = 999, kMostAnswersCounted = 8;

class RecordReader {
public:
    explicit RecordReader(std::string_view text) : text_(text), trouble_(text) {}

    Result<ClassRecord> read() {
        const auto takePiece = [this](JsonPiece&& piece) { take(std::move(piece)); };
        if (auto error = trouble_.scan(kRecordLists, head_, kRecordFormat, "record", takePiece))
            return std::move(*error);
        return std::move(record_);
    }

private:
    void hold(Failure failure, const std::string& pointer) { trouble_.hold(std::move(failure), pointer); }

    void take(JsonPiece&& piece) {
        JsonValue& value = piece.value;
        if (piece.list == 0) return hold(readVote(wholeJson(text_, value)), fmt::format("/votes/{}", piece.index));
        if (piece.list == 1) return hold(readLooked(wholeJson(text_, value)), fmt::format("/looked/{}", piece.index));
        if (head_.take(value)) return;
        const std::string pointer = '/' + value.name;
        if (value.name == "lesson") return hold(readText(value, pointer, record_.lesson), {});
        if (value.name == "paper") return hold(readTexts(wholeJson(text_, value), pointer, record_.paper), {});
        if (value.name != "step") return hold(unknownMember(value, pointer, "a record"), {});
        int step = 0;
        hold(readCount(value, pointer, kMostSteps, step), {});
        record_.step = step - 1;
    }

    Failure readVote(const JsonValue& json) {
        if (auto failure = requireObject(json)) return failure;
        int step = 0, round = 0, table = 0;
        std::vector<int> hands;
        auto failure = forEachMember(json, {}, [&](const JsonValue& member, const std::string& at) -> Failure {
            if (member.name == "step") return readCount(member, at, kMostSteps, step);
            if (member.name == "vote") return readCount(member, at, 2, round);
            if (member.name == "table") return readCount(member, at, kMostTables, table);
            if (member.name == "hands") return readHands(member, at, hands);
            return unknownMember(member, at, "a vote");
        });
        if (failure) return failure;
        if (step < 1 || round < 1) return Trouble{ErrorKind::Range, "steps and votes count from 1", {}, json.begin};
        Vote& vote = record_.votes[step - 1][static_cast<std::size_t>(round - 1)];
        for (std::size_t answer = 0; answer < hands.size(); ++answer) {
            if (hands[answer] >= 0) vote.set(table, static_cast<int>(answer), hands[answer]);
        }
        return {};
    }

    /// Null where nothing was counted.
    static Failure readHands(const JsonValue& list, const std::string& at, std::vector<int>& hands) {
        if (list.type != JsonType::List) return wrongType(list, at, "a list");
        if (list.items.size() > kMostAnswersCounted)
            return Trouble{ErrorKind::Range, "there are too many answers", at, list.begin};
        for (const JsonValue& each : list.items) {
            hands.push_back(-1);
            if (each.type == JsonType::Null) continue;
            if (auto failure = readCount(each, at, kMostHandsCounted, hands.back())) return failure;
        }
        return {};
    }

    Failure readLooked(const JsonValue& json) {
        if (auto failure = requireObject(json)) return failure;
        int step = 0;
        std::vector<int> tables;
        auto failure = forEachMember(json, {}, [&](const JsonValue& member, const std::string& at) -> Failure {
            if (member.name == "step") return readCount(member, at, kMostSteps, step);
            if (member.name != "tables") return unknownMember(member, at, "a step that was looked at");
            if (member.type != JsonType::List) return wrongType(member, at, "a list");
            for (const JsonValue& each : member.items) {
                int table = 0;
                if (auto wrong = readCount(each, at, kMostTables, table)) return wrong;
                tables.push_back(table);
            }
            return {};
        });
        for (const int table : tables) record_.looked.insert({step - 1, table});
        return failure;
    }

    std::string_view text_;
    FileHead head_;
    ClassRecord record_;
    FirstTrouble trouble_;
};

std::string handsLine(int step, int round, int table, const std::vector<int>& hands) {
    std::vector<std::string> counts;
    for (const int count : hands) counts.push_back(count < 0 ? "null" : std::to_string(count));
    return fmt::format("{{\"step\": {}, \"vote\": {}, \"table\": {}, \"hands\": [{}]}}", step + 1, round + 1, table,
                       fmt::join(counts, ", "));
}

std::string lines(const std::vector<std::string>& all) {
    return all.empty() ? "[]" : fmt::format("[\n    {}\n  ]", fmt::join(all, ",\n    "));
}

}  // namespace

int Vote::total(int answer) const {
    int total = -1;
    for (const auto& [table, counted] : hands_) {
        const int here = of(table, answer);
        if (here >= 0) total = std::max(total, 0) + here;
    }
    return total;
}

int Vote::of(int table, int answer) const {
    const auto found = hands_.find(table);
    if (found == hands_.end() || answer < 0 || answer >= static_cast<int>(found->second.size())) return -1;
    return found->second[static_cast<std::size_t>(answer)];
}

void Vote::set(int table, int answer, int hands) {
    std::erase_if(hands_, [&](const auto& each) { return (each.first == kWholeClass) != (table == kWholeClass); });
    std::vector<int>& counted = hands_[table];
    const auto place = static_cast<std::size_t>(answer);
    if (counted.size() <= place) counted.resize(place + 1, -1);
    counted[place] = hands;
}

Result<ClassRecord> readClassRecord(std::string_view text) { return RecordReader(text).read(); }

Result<ClassRecord> readClassRecordFile(const std::filesystem::path& path) {
    return readNamed(path, readClassRecord, kLargestRecord);
}

std::string writeClassRecord(const ClassRecord& record) {
    std::vector<std::string> votes, looked, paper;
    for (const auto& [step, rounds] : record.votes) {
        for (int round = 0; round < 2; ++round) {
            for (const auto& [table, hands] : rounds[static_cast<std::size_t>(round)].hands())
                votes.push_back(handsLine(step, round, table, hands));
        }
    }
    std::map<int, std::vector<int>> tables;
    for (const auto& [step, table] : record.looked) tables[step].push_back(table);
    for (const auto& [step, all] : tables)
        looked.push_back(fmt::format("{{\"step\": {}, \"tables\": [{}]}}", step + 1, fmt::join(all, ", ")));
    for (const std::string& question : record.paper) paper.push_back(jsonString(question));
    return fmt::format(
        "{{\n  \"format\": \"{}\",\n  \"version\": 1,\n  \"lesson\": {},\n  \"step\": {},\n  \"votes\": {},\n"
        "  \"looked\": {},\n  \"paper\": {}\n}}\n",
        kRecordFormat, jsonString(record.lesson), record.step + 1, lines(votes), lines(looked), lines(paper));
}

}  // namespace tiepoint
