// Reading takes one operation after the other. What an operation puts on the bench is scanned a second time as a value of its own, since
// the scanner keeps only the upper levels of a piece; the offsets in it count from where it stands.

#include "core/base/json_text.h"
#include "core/bench/jumper_ends.h"
#include "core/bench/kept_members.h"
#include "core/edit/edit_file.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <deque>
#include <limits>
#include <new>

namespace tiepoint {
namespace {

using Failure = std::optional<Trouble>;

constexpr std::string_view kList = "edits";

/// What the members of one operation are read with.
struct Reading {
    const Catalogue& catalogue;
    PartKinds& kinds;
    std::deque<std::string>& ids;  ///< of parts that operations bring; the kinds borrow them
    UnknownMembers unknown = {};
    Extras* extras = nullptr;  ///< where unknown members of the object go
};

template <class Item>
using ReadItem = Failure (*)(const JsonValue& json, Item& item, UnknownMembers& unknown);

template <class Item>
Failure readItem(ReadItem<Item> read, const JsonValue& json, Item& item, Reading& reading) {
    reading.extras = &item.extras;
    return read(json, item, reading.unknown);
}

Failure readWholePart(const JsonValue& json, Part& part, Reading& reading) {
    reading.extras = &part.extras;
    if (auto failure = readPart(json, part, reading.unknown, reading.catalogue)) return failure;
    reading.kinds[reading.ids.emplace_back(part.id)] = part.kind;
    return {};
}

Failure readWholeJumper(const JsonValue& json, Jumper& jumper, Reading& reading) {
    UnresolvedJumper unresolved;
    reading.extras = &jumper.extras;
    if (auto failure = readJumper(json, unresolved, reading.unknown)) return failure;
    if (auto failure = resolveEnds(unresolved, reading.kinds)) return failure;
    jumper = std::move(unresolved.jumper);
    return {};
}

/// Null takes away what the bench says.
template <class Item>
Failure readOrNull(ReadItem<Item> read, const JsonValue& json, std::optional<Item>& item, Reading& reading) {
    if (json.type == JsonType::Null) return {};
    return readItem(read, json, item.emplace(), reading);
}

/// Makes the operation in place, so that what is read can be pointed at.
template <class Made>
Made& make(Operation& operation) {
    return operation.emplace<Made>();
}

struct Form {
    std::string_view name, member;
    Failure (*read)(const JsonValue& json, Operation& operation, Reading& reading);
    int* (*place)(Operation& operation) = nullptr;  ///< of those that know a place in their list
};

template <class Made>
int* placeIn(Operation& operation) {
    return &std::get<Made>(operation).at;
}

constexpr std::array kForms = {
    Form{"add", "board",
         [](const JsonValue& json, Operation& operation, Reading& reading) {
             return readItem(readBoard, json, make<AddBoard>(operation).board, reading);
         },
         placeIn<AddBoard>},
    Form{"add", "part",
         [](const JsonValue& json, Operation& operation, Reading& reading) {
             return readWholePart(json, make<AddPart>(operation).part, reading);
         },
         placeIn<AddPart>},
    Form{"add", "jumper",
         [](const JsonValue& json, Operation& operation, Reading& reading) {
             return readWholeJumper(json, make<AddJumper>(operation).jumper, reading);
         },
         placeIn<AddJumper>},
    Form{"add", "note",
         [](const JsonValue& json, Operation& operation, Reading& reading) {
             return readItem(readNote, json, make<AddNote>(operation).note, reading);
         },
         placeIn<AddNote>},
    Form{"add", "pinned",
         [](const JsonValue& json, Operation& operation, Reading& reading) {
             return readItem(readPinned, json, make<AddPinned>(operation).reading, reading);
         },
         placeIn<AddPinned>},
    Form{"remove", "id",
         [](const JsonValue& json, Operation& operation, Reading&) {
             return readText(json, {}, make<Remove>(operation).id);
         }},
    Form{"replace", "board",
         [](const JsonValue& json, Operation& operation, Reading& reading) {
             return readItem(readBoard, json, make<ReplaceBoard>(operation).board, reading);
         }},
    Form{"replace", "part",
         [](const JsonValue& json, Operation& operation, Reading& reading) {
             return readWholePart(json, make<ReplacePart>(operation).part, reading);
         }},
    Form{"replace", "jumper",
         [](const JsonValue& json, Operation& operation, Reading& reading) {
             return readWholeJumper(json, make<ReplaceJumper>(operation).jumper, reading);
         }},
    Form{"replace", "note",
         [](const JsonValue& json, Operation& operation, Reading& reading) {
             return readItem(readNote, json, make<ReplaceNote>(operation).note, reading);
         }},
    Form{"title", "title",
         [](const JsonValue& json, Operation& operation, Reading&) {
             return readText(json, {}, make<SetTitle>(operation).title);
         }},
    Form{"reveal", "reveal",
         [](const JsonValue& json, Operation& operation, Reading& reading) {
             return readOrNull(readDisclosure, json, make<SetDisclosure>(operation).disclosure, reading);
         }},
    Form{"surroundings", "surroundings",
         [](const JsonValue& json, Operation& operation, Reading& reading) {
             return readOrNull(readSurroundings, json, make<SetSurroundings>(operation).surroundings, reading);
         }},
};

/// "part, board", each once.
template <class Take>
std::string listed(Take take) {
    std::vector<std::string_view> words;
    for (const Form& form : kForms) {
        const std::string_view word = take(form);
        if (!word.empty() && std::ranges::find(words, word) == words.end()) words.push_back(word);
    }
    return fmt::format("{}", fmt::join(words, ", "));
}

class EditReader {
public:
    /// The operations stand in `text` from `begin` on; `pointer` leads to their list.
    EditReader(std::string_view text, std::string pointer, const Bench& bench, const Catalogue& catalogue)
        : catalogue_(catalogue),
          text_(text),
          pointer_(std::move(pointer)),
          kinds_(kindsOf(bench)),
          kept_(text) {}

    void take(const JsonValue& json, int index, std::size_t base) {
        if (trouble_) return;
        const std::string pointer = fmt::format("{}/{}", pointer_, index);
        if (index >= kMostOperations) {
            trouble_ = Trouble{ErrorKind::Range, fmt::format("an edit has at most {} operations", kMostOperations),
                               pointer, base + json.begin};
            return;
        }
        if (auto trouble = readOperation(json, base, pointer)) {
            trouble->pointer = pointer + trouble->pointer;
            trouble_ = std::move(trouble);
        }
    }

    std::optional<Trouble>& trouble() { return trouble_; }
    std::string& name() { return edit_.name; }

    Result<ReadEdit> result() {
        if (!trouble_) return ReadEdit{std::move(edit_), kept_.takeWarnings()};
        Error error{trouble_->kind, std::move(trouble_->message), {std::move(trouble_->pointer), 0, 0}, {}};
        LineCounter(text_).locate(trouble_->offset, error.place);
        return error;
    }

private:
    Failure readOperation(const JsonValue& json, std::size_t base, const std::string& pointer) {
        if (json.type != JsonType::Object) return at(base, wrongType(json, {}, "an object"));
        const JsonValue* name = json.member("operation");
        if (!name) {
            return Trouble{ErrorKind::Format, "the member \"operation\" is missing", {}, base + json.begin};
        }
        std::string word;
        if (auto failure = readText(*name, "/operation", word)) return at(base, std::move(*failure));
        const JsonValue* place = nullptr;
        const JsonValue* object = nullptr;
        const Form* form = nullptr;
        bool known = false;
        for (const Form& each : kForms) {
            if (each.name != word) continue;
            known = true;
            if (const JsonValue* member = json.member(each.member); member && !form) form = &each, object = member;
            if (each.place) place = json.member("place");
        }
        if (!known) {
            return Trouble{ErrorKind::Reference,
                           fmt::format("there is no operation {}; there are: {}", inQuotes(word),
                                       listed([](const Form& each) { return each.name; })),
                           "/operation", base + name->begin};
        }
        if (!form) {
            const std::string wanted =
                listed([&](const Form& each) { return each.name == word ? each.member : std::string_view(); });
            return Trouble{ErrorKind::Format,
                           fmt::format("\"{}\" needs one of these members: {}", word, wanted),
                           {},
                           base + json.begin};
        }
        if (auto failure = refuseOthers(json, {name, object, place})) return at(base, std::move(*failure));
        return readObject(*form, *object, place, base, pointer);
    }

    static Failure refuseOthers(const JsonValue& json, std::array<const JsonValue*, 3> asked) {
        for (const JsonValue& member : json.items) {
            if (std::ranges::find(asked, &member) != asked.end()) continue;
            return Trouble{ErrorKind::Format, fmt::format("the operation has no member {}", inQuotes(member.name)),
                           '/' + pointerToken(member.name), member.nameBegin};
        }
        return {};
    }

    Failure readObject(const Form& form, const JsonValue& object, const JsonValue* place, std::size_t base,
                       const std::string& pointer) {
        const std::size_t begin = base + object.begin;
        auto whole = parseJson(text_.substr(begin, object.end - object.begin));
        const std::string step = '/' + std::string(form.member);
        if (!whole)
            return Trouble{whole.error().kind, whole.error().message, step + whole.error().place.pointer, begin};
        Reading reading{catalogue_, kinds_, ids_};
        Operation& operation = edit_.operations.emplace_back();
        if (auto failure = form.read(*whole, operation, reading)) {
            failure->pointer = step + failure->pointer;
            return at(begin, std::move(*failure));
        }
        for (const JsonValue* member : reading.unknown) kept_.keep(*member, pointer + step, *reading.extras, begin);
        if (!place) return {};
        if (place->type != JsonType::Number) return at(base, wrongType(*place, "/place", "a number"));
        if (!(place->number >= 0 && place->number <= std::numeric_limits<int>::max()) ||
            place->number != std::floor(place->number)) {
            return Trouble{ErrorKind::Range,
                           fmt::format("the place is {}; it is a whole number from 0 on", jsonNumber(place->number)),
                           "/place", base + place->begin};
        }
        *form.place(operation) = static_cast<int>(place->number);
        return {};
    }

    static Trouble at(std::size_t base, Trouble trouble) {
        trouble.offset += base;
        return trouble;
    }

    const Catalogue& catalogue_;
    std::string_view text_;
    std::string pointer_;
    PartKinds kinds_;
    std::deque<std::string> ids_;
    KeptMembers kept_;
    Edit edit_;
    std::optional<Trouble> trouble_;
};

Error outOfMemory() { return {ErrorKind::Io, "the edit needs more memory than there is", {}, {}}; }

}  // namespace

Result<ReadEdit> readEdit(std::string_view text, const Bench& bench, const Catalogue& kinds) try {
    EditReader reader(text, fmt::format("/{}", kList), bench, kinds);
    bool any = false;
    const auto takeMember = [&](const JsonValue& member) {
        any = any || member.name == kList;
        if (reader.trouble()) return;
        if (member.name == "text") {
            reader.trouble() = readText(member, "/text", reader.name());
        } else if (member.name == kList) {
            reader.trouble() = wrongType(member, fmt::format("/{}", kList), "a list");
        } else {
            reader.trouble() =
                Trouble{ErrorKind::Format, fmt::format("an edit has no member {}", inQuotes(member.name)),
                        '/' + pointerToken(member.name), member.nameBegin};
        }
    };
    const std::array lists{kList};
    const auto error = scanJson(text, lists, [&](JsonPiece&& piece) {
        if (piece.list < 0) return takeMember(piece.value);
        any = true;
        reader.take(piece.value, piece.index, 0);
    });
    if (error) return *error;
    if (!any && !reader.trouble()) {  // an empty list has no pieces
        const auto root = parseJson(text);
        if (!root || !root->member(kList))
            reader.trouble() = Trouble{ErrorKind::Format, fmt::format("the member \"{}\" is missing", kList), {}, 0};
    }
    return reader.result();
} catch (const std::bad_alloc&) {
    return outOfMemory();
}

Result<ReadEdit> readOperations(std::string_view text, std::size_t begin, std::size_t end, const std::string& pointer,
                                const Bench& bench, const Catalogue& kinds) try {
    // Scanned inside an object of its own, whose lists may be of any length.
    const std::string front = fmt::format("{{\"{}\":", kList);
    const std::string framed = front + std::string(text.substr(begin, end - begin)) + '}';
    EditReader reader(text, pointer, bench, kinds);
    const std::array lists{kList};
    const auto error = scanJson(framed, lists, [&](JsonPiece&& piece) {
        if (piece.list >= 0) {
            reader.take(piece.value, piece.index, begin - front.size());
        } else if (!reader.trouble()) {
            reader.trouble() = wrongType(piece.value, pointer, "a list");
            reader.trouble()->offset = begin;
        }
    });
    if (error) {
        reader.trouble() = Trouble{error->kind, error->message, pointer, begin};
    }
    return reader.result();
} catch (const std::bad_alloc&) {
    return outOfMemory();
}

std::vector<std::string_view> operationNames() {
    std::vector<std::string_view> names;
    for (const Form& form : kForms) {
        if (std::ranges::find(names, form.name) == names.end()) names.push_back(form.name);
    }
    return names;
}

}  // namespace tiepoint
