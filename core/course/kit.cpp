#include "core/course/kit.h"

#include "core/base/embedded.h"
#include "core/base/file_io.h"
#include "core/bench/bench_file.h"
#include "core/bench/first_trouble.h"
#include "core/bench/read_helpers.h"
#include "core/bench/read_named.h"
#include "core/bench/resolve.h"
#include "core/course/fit.h"
#include "core/parts/preferred.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>

namespace tiepoint {
namespace {

using reading::Failure;
using reading::forEachMember;
using reading::requireObject;

constexpr std::string_view kKitFormat = "tiepoint-kit";
constexpr std::array<std::string_view, 1> kKitLists = {"parts"};
constexpr std::array<std::string_view, 2> kKitRails = {"through", "split"};
constexpr std::array<std::string_view, 2> kKitLabels = {"a-top", "a-bottom"};
constexpr int kMostCount = 100'000;
constexpr std::string_view kNoId = "X";  // a kit's part has no id of its own; readers of parts ask for one

class KitReader {
public:
    explicit KitReader(std::string_view text) : text_(text), trouble_(text) {}

    Result<ReadKit> read() {
        const auto takePiece = [this](JsonPiece&& piece) { take(std::move(piece)); };
        if (auto error = trouble_.scan(kKitLists, head_, kKitFormat, "kit", takePiece)) return std::move(*error);
        return std::move(read_);
    }

private:
    void hold(Failure failure, const std::string& pointer) { trouble_.hold(std::move(failure), pointer); }

    void take(JsonPiece&& piece) {
        if (piece.list >= 0) {
            KitPart& part = read_.kit.parts.emplace_back();
            return hold(readKitPart(piece.value, part.part, &part.count), fmt::format("/parts/{}", piece.index));
        }
        JsonValue& member = piece.value;
        if (head_.take(member)) return;
        const std::string pointer = '/' + pointerToken(member.name);
        Kit& kit = read_.kit;
        if (member.name == "title") return hold(readText(member, pointer, kit.title), {});
        if (member.name == "board") return hold(readKitBoard(member), pointer);
        if (member.name == "supply") return hold(readSupply(member), pointer);
        if (member.name == "meters") return hold(readNumber(member, kit.meters), pointer);
        if (member.name == "jumpers") return hold(readNumber(member, kit.jumpers), pointer);
        hold(
            Trouble{
                ErrorKind::Format, fmt::format("a kit has no member {}", inQuotes(member.name)), {}, member.nameBegin},
            pointer);
    }

    static Failure readNumber(const JsonValue& value, int& count) {
        if (value.type != JsonType::Number) return wrongType(value, {}, "a number");
        if (!(value.number >= 0 && value.number <= kMostCount) || value.number != static_cast<int>(value.number))
            return Trouble{
                ErrorKind::Range, fmt::format("a whole number from 0 to {} belongs here", kMostCount), {}, value.begin};
        count = static_cast<int>(value.number);
        return {};
    }

    Failure readKitBoard(const JsonValue& value) {
        if (auto failure = requireObject(value)) return failure;
        return forEachMember(value, {}, [&](const JsonValue& member, const std::string& pointer) -> Failure {
            std::size_t index = 0;
            Failure failure;
            if (member.name == "kind") {
                failure = reading::readNameOf(member, pointer, "board kind", boardKinds(), reading::kOwnName, index);
                if (!failure) read_.kit.board = &boardKinds()[index];
            } else if (member.name == "labels") {
                failure = reading::readNameOf(member, pointer, "way of labels", kKitLabels, reading::kItself, index);
                read_.kit.labels = static_cast<Labels>(index);
            } else if (member.name == "rails") {
                failure = reading::readNameOf(member, pointer, "kind of rails", kKitRails, reading::kItself, index);
                read_.kit.rails = static_cast<Rails>(index);
            } else {
                return Trouble{ErrorKind::Format, fmt::format("a kit's board has no member {}", inQuotes(member.name)),
                               pointer, member.nameBegin};
            }
            return failure;
        });
    }

    Failure readSupply(const JsonValue& value) {
        Part part;
        auto failure = readKitPart(value, part, nullptr);
        if (!failure && !part.kind->isSupply)
            return Trouble{ErrorKind::Reference, fmt::format("a {} is no supply", part.kind->label), "/kind",
                           value.begin};
        read_.kit.supply = std::move(part);
        return failure;
    }

    /// A part without id and leads: read as one of a bench.
    Failure readKitPart(const JsonValue& value, Part& part, int* count) {
        if (auto failure = requireObject(value)) return failure;
        auto again = parseJson(text_.substr(value.begin, value.end - value.begin));
        if (!again) return Trouble{ErrorKind::Syntax, again.error().message, {}, value.begin};
        JsonValue json = std::move(again).value();
        for (auto member = json.items.begin(); member != json.items.end(); ++member) {
            if (!count || member->name != "count") continue;
            auto failure = readNumber(*member, *count);
            if (failure) return moved(std::move(failure), value.begin, "/count");
            json.items.erase(member);
            break;
        }
        JsonValue id;
        id.type = JsonType::String;
        id.name = "id";
        id.text = kNoId;
        json.items.push_back(std::move(id));
        UnknownMembers unknown;
        auto failure = readPart(json, part, unknown, Catalogue::shipped());
        if (!failure && !unknown.empty())
            failure = Trouble{ErrorKind::Format,
                              fmt::format("a kit's part has no member {}", inQuotes(unknown.front()->name)),
                              '/' + pointerToken(unknown.front()->name), unknown.front()->nameBegin};
        return moved(std::move(failure), value.begin, {});
    }

    static Failure moved(Failure failure, std::size_t by, const std::string& pointer) {
        if (!failure) return failure;
        failure->offset += by;
        failure->pointer = pointer + failure->pointer;
        return failure;
    }

    std::string_view text_;
    FileHead head_;
    ReadKit read_;
    FirstTrouble trouble_;
};

/// As a part's line of a bench, without its id.
std::string kitPartLine(const Part& part) {
    Part named = part;
    named.id = kNoId;
    named.leads.assign(named.kind->leads.size(), std::nullopt);
    std::string line = partLine(named);
    const std::string id = fmt::format("\"id\": \"{}\", ", kNoId);
    return line.erase(line.find(id), id.size());
}

}  // namespace

Kit usualKit() {
    for (const EmbeddedFile& file : embeddedFiles()) {
        if (file.name == "kits/usual.kit.json") return readKit(file.text).value().kit;
    }
    return {};
}

bool tellsApart(const ValueSpec& spec) {
    if (spec.type == ValueType::Choice) return true;
    return spec.sought && spec.unit != "W" && (!spec.unit.empty() || spec.integer);
}

bool isSameInDrawer(const Part& a, const Part& b) {
    if (a.kind != b.kind) return false;
    for (int value = 0; value < static_cast<int>(a.values.size()); ++value) {
        if (tellsApart(a.kind->values[static_cast<std::size_t>(value)]) && a.value(value) != b.value(value))
            return false;
    }
    return true;
}

bool hasPart(const Kit& kit, const Part& part) {
    if (part.kind->isSupply) return !kit.supply || kit.supply->kind == part.kind;
    return std::ranges::any_of(kit.parts,
                               [&](const KitPart& each) { return each.count > 0 && isSameInDrawer(each.part, part); });
}

std::vector<std::string> lackingIn(const Kit& kit, const Bench& bench) {
    std::vector<std::string> lacking;
    std::vector<const Part*> counted;
    for (const Part& part : bench.parts) {
        if (standsOnTable(part)) continue;
        const auto isSame = [&](const Part* other) { return isSameInDrawer(*other, part); };
        if (std::ranges::any_of(counted, isSame)) continue;
        counted.push_back(&part);
        const auto needed =
            std::ranges::count_if(bench.parts, [&](const Part& other) { return isSameInDrawer(part, other); });
        std::ptrdiff_t there = 0;
        for (const KitPart& each : kit.parts) there += isSameInDrawer(each.part, part) ? each.count : 0;
        if (there >= needed) continue;
        const std::string name = askedFor(part);
        lacking.push_back(there == 0 && needed == 1 ? name
                                                    : fmt::format("{} ({} needed, {} there)", name, needed, there));
    }
    if (const auto jumpers = std::ssize(bench.jumpers); kit.jumpers >= 0 && jumpers > kit.jumpers)
        lacking.push_back(fmt::format("jumpers ({} needed, {} there)", jumpers, kit.jumpers));
    return lacking;
}

Kit withResistors(Kit kit, const ResistorDrawer& drawer) {
    std::erase_if(kit.parts, [](const KitPart& each) { return resistanceValue(*each.part.kind) >= 0; });
    std::vector<KitPart> resistors;
    constexpr int kMany = 10;
    for (const double ohm : drawer.ohms()) {
        KitPart each{makePart(usualResistor(), std::string(kNoId)), kMany};
        each.part.values[static_cast<std::size_t>(resistanceValue(*each.part.kind))] = ohm;
        resistors.push_back(std::move(each));
    }
    kit.parts.insert(kit.parts.begin(), resistors.begin(), resistors.end());
    return kit;
}

Bench newBenchWith(const Kit& kit) {
    Bench bench = makeNewBench();
    Board& board = bench.boards.front();
    if (kit.board) {
        board.kind = kit.board;
        board.rails = kit.rails;
        board.labels = kit.labels;
    }
    if (!kit.supply) return bench;
    Part& supply = bench.parts.front();
    const auto leads = supply.leads;
    supply = *kit.supply;
    supply.id = freeId(Bench{}, supply.kind->prefix);
    supply.leads.assign(supply.kind->leads.size(), std::nullopt);
    // A supply with leads is plugged in as the usual one is; one with sockets waits for jumpers, a board without rails for a hand.
    for (std::size_t lead = 0; lead < supply.leads.size() && lead < leads.size(); ++lead) {
        if (!supply.kind->leads[lead].socket && leads[lead] && holeMm(bench, *leads[lead]))
            supply.leads[lead] = leads[lead];
    }
    return bench;
}

ResistorDrawer drawerOf(const Kit& kit) {
    std::vector<double> ohms;
    for (const KitPart& each : kit.parts) {
        if (const int value = resistanceValue(*each.part.kind); value >= 0 && each.count > 0)
            ohms.push_back(each.part.value(value));
    }
    return ResistorDrawer(std::move(ohms));
}

Result<ReadKit> readKit(std::string_view text) {
    text = withoutMark(text);
    return KitReader(text).read();
}

Result<ReadKit> readKitFile(const std::filesystem::path& path) { return readNamed(path, readKit); }

std::string writeKit(const Kit& kit) {
    std::string text =
        fmt::format("{{\n  \"format\": \"{}\",\n  \"version\": 1,\n  \"title\": {}", kKitFormat, jsonString(kit.title));
    if (kit.board)
        text += fmt::format(",\n  \"board\": {{\"kind\": \"{}\", \"labels\": \"{}\", \"rails\": \"{}\"}}",
                            kit.board->name, kKitLabels[static_cast<std::size_t>(kit.labels)],
                            kKitRails[static_cast<std::size_t>(kit.rails)]);
    if (kit.supply) text += ",\n  \"supply\": " + kitPartLine(*kit.supply);
    text += ",\n  \"parts\": [";
    std::string_view separator = "\n    ";
    for (const KitPart& each : kit.parts) {
        std::string line = kitPartLine(each.part);
        line.insert(line.size() - 1, fmt::format(", \"count\": {}", each.count));
        text += separator;
        text += line;
        separator = ",\n    ";
    }
    text += kit.parts.empty() ? "]" : "\n  ]";
    if (kit.jumpers >= 0) text += fmt::format(",\n  \"jumpers\": {}", kit.jumpers);
    return text + fmt::format(",\n  \"meters\": {}\n}}\n", kit.meters);
}

Result<Done> writeKitFile(const Kit& kit, const std::filesystem::path& path) {
    return writeFileAtomically(path, writeKit(kit));
}

}  // namespace tiepoint
