// The root is scanned once; each step, and each value below it, is scanned again as a value of its own, since the scanner keeps only the
// upper levels of a piece. All offsets count in the whole text. Steps wait until all of the root is known: their edits are applied one after
// the other from the start bench on.

#include "core/base/file_io.h"
#include "core/base/json_scan.h"
#include "core/base/line_counter.h"
#include "core/bench/bench_file.h"
#include "core/bench/file_head.h"
#include "core/bench/kept_members.h"
#include "core/bench/read_helpers.h"
#include "core/course/exercise.h"
#include "core/course/lesson_file.h"
#include "core/course/read_predicate.h"
#include "core/course/read_prediction.h"
#include "core/edit/edit_file.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <new>

namespace tiepoint {
namespace {

using reading::Failure;
using reading::forEachMember;
using reading::requireMembers;
using reading::requireObject;

constexpr std::array<std::string_view, 1> kLessonLists = {"steps"};
constexpr std::array<std::string_view, 4> kStepKinds = {"show", "predict", "stop",
                                                        "build"};  // in the order of StepKind
constexpr std::array<std::string_view, 3> kLocks = {"mends", "diagram", "tidying"};
constexpr int kMostMinutes = 600;

class LessonReader {
public:
    explicit LessonReader(std::string_view text) : text_(text), kept_(text) {}

    Result<ReadLesson> read() {
        if (auto error = scanJson(text_, kLessonLists, [this](JsonPiece&& piece) { take(std::move(piece)); }))
            return std::move(*error);
        if (auto trouble = head_.judge(kLessonFormat, "lesson")) return located(text_, std::move(*trouble));
        if (error_) return std::move(*error_);
        if (!lesson_.start) return located(text_, {ErrorKind::Format, "the member \"start\" is missing", {}, 0});
        if (steps_.empty()) return located(text_, {ErrorKind::Format, "a lesson has at least one step", "/steps", 0});
        if (hasLock(lesson_, "mends")) {
            auto locked = std::make_shared<Bench>(*lesson_.start);
            lockMends(*locked);
            lesson_.start = std::move(locked);
        }
        for (std::size_t i = 0; i < steps_.size() && !error_; ++i) takeStep(steps_[i], fmt::format("/steps/{}", i));
        if (error_) return std::move(*error_);
        ReadLesson read{std::move(lesson_), kept_.takeWarnings()};
        read.warnings.insert(read.warnings.end(), warnings_.begin(), warnings_.end());
        return read;
    }

private:
    JsonValue whole(const JsonValue& value) const { return wholeJson(text_, value); }

    void hold(Trouble trouble, const std::string& pointer = {}) {
        if (error_) return;
        trouble.pointer = pointer + trouble.pointer;
        error_ = located(text_, std::move(trouble));
    }
    void hold(const Failure& failure, const std::string& pointer = {}) {
        if (failure) hold(Trouble(*failure), pointer);
    }

    void take(JsonPiece&& piece) {
        if (piece.list < 0) return takeMember(std::move(piece.value));
        if (piece.index >= kMostSteps)
            return hold({ErrorKind::Range, fmt::format("a lesson has at most {} steps", kMostSteps),
                         fmt::format("/steps/{}", piece.index), piece.value.begin});
        steps_.push_back(std::move(piece.value));
    }

    void takeMember(JsonValue&& member) {
        if (head_.take(member)) return;
        const std::string pointer = '/' + pointerToken(member.name);
        const std::pair<std::string_view, std::string*> texts[] = {{"title", &lesson_.title},
                                                                   {"summary", &lesson_.summary},
                                                                   {"answers", &lesson_.answers},
                                                                   {"surprise", &lesson_.surprise}};
        for (const auto& [name, text] : texts) {
            if (member.name == name) return hold(readText(member, pointer, *text));
        }
        const std::pair<std::string_view, std::vector<std::string>*> lists[] = {
            {"teaches", &lesson_.teaches}, {"must", &lesson_.must},     {"may", &lesson_.may},
            {"words", &lesson_.words},     {"safety", &lesson_.safety}, {"packing", &lesson_.packing},
            {"paper", &lesson_.paper}};
        for (const auto& [name, list] : lists) {
            if (member.name == name) return hold(readTexts(whole(member), pointer, *list));
        }
        if (member.name == "minutes") return hold(readCount(member, pointer, kMostMinutes, lesson_.minutes));
        if (member.name == "start") return takeBench(member, pointer, lesson_.start);
        if (member.name == "goal") return takeBench(member, pointer, lesson_.goal);
        if (member.name == "limits") return hold(readLimits(whole(member), pointer));
        if (member.name == "steps") return hold(wrongType(member, pointer, "a list"));
        kept_.keep(member, {}, lesson_.extras);
    }

    Failure readLimits(const JsonValue& value, const std::string& at) {
        if (auto failure = requireObject(value, at)) return failure;
        return forEachMember(value, at, [&](const JsonValue& member, const std::string& pointer) -> Failure {
            constexpr int kMost = 100'000;
            if (member.name == "parts") return readCount(member, pointer, kMost, lesson_.limits.parts);
            if (member.name == "jumpers") return readCount(member, pointer, kMost, lesson_.limits.jumpers);
            if (member.name != "locks") return unknownMember(member, pointer, "limits");
            if (auto failure = readTexts(member, pointer, lesson_.limits.locks)) return failure;
            for (const std::string& lock : lesson_.limits.locks) {
                if (std::ranges::find(kLocks, lock) == kLocks.end())
                    return Trouble{ErrorKind::Reference,
                                   fmt::format("there is no lock {}; there are: {}", inQuotes(lock),
                                               reading::listed(kLocks, reading::kItself)),
                                   pointer, member.begin};
            }
            return {};
        });
    }

    /// A bench inside the lesson: read as a file of its own, its errors placed in this one.
    void takeBench(const JsonValue& member, const std::string& pointer, std::shared_ptr<const Bench>& bench) {
        const std::string_view inner = text_.substr(member.begin, member.end - member.begin);
        auto read = readBench(inner);
        if (!read) {
            if (!error_) error_ = outward(read.error(), pointer, member.begin);
            return;
        }
        for (const Error& warning : read->warnings) warnings_.push_back(outward(warning, pointer, member.begin));
        bench = std::make_shared<const Bench>(std::move(read).value().bench);
    }

    /// Lines and columns of a stretch of the text as those of the whole.
    Error outward(Error error, const std::string& pointer, std::size_t begin) const {
        Place from;
        LineCounter(text_).locate(begin, from);
        if (error.place.line <= 1) error.place.column += from.column - 1;
        error.place.line += from.line - 1;
        error.place.pointer = pointer + error.place.pointer;
        return error;
    }

    void takeStep(const JsonValue& json, const std::string& pointer) {
        if (auto failure = requireObject(json)) return hold(failure, pointer);
        LessonStep& step = lesson_.steps.emplace_back();
        const JsonValue *edits = nullptr, *then = nullptr, *opposite = nullptr, *kind = nullptr;
        const auto failure = forEachMember(json, {}, [&](const JsonValue& member, const std::string& at) -> Failure {
            if (member.name == "caption") return readText(member, at, step.caption);
            if (member.name == "note") return readText(member, at, step.note);
            if (member.name == "kind") return readKind(*(kind = &member), at, step.kind);
            if (member.name == "show") return readShow(whole(member), at, step);
            if (member.name == "try") return readTried(whole(member), at, step.tried);
            if (member.name == "ask") return readPrediction(wholeJson(text_, member), at, text_, step.ask.emplace());
            if (member.name == "edits") return edits = &member, Failure{};
            if (member.name == "then") return then = &member, Failure{};
            if (member.name == "opposite") return opposite = &member, Failure{};
            return unknownMember(member, at, "a step");
        });
        if (failure) return hold(failure, pointer);
        if (!kind && step.ask) step.kind = StepKind::Predict;
        if (step.sheet && step.ask && step.ask->diagrams > 0)
            return hold({ErrorKind::Format, "a step that asks which diagram is the board's can't show it",
                         "/show/sheet", json.begin},
                        pointer);
        if ((step.kind == StepKind::Predict) != step.ask.has_value())
            return hold({ErrorKind::Format, "a step that predicts has \"ask\", and no other has", {}, json.begin},
                        pointer);
        const int index = lesson_.stepCount() - 1;
        step.bench = lesson_.benchAt(index - 1);
        if (edits) applyEdits(*edits, pointer + "/edits", step.bench, step.edits);
        if (error_) return;
        if (auto situation = situationOf(step.bench, step.tried); !situation)
            return holdAt(json, "try", situation.error(), pointer);
        if (auto trouble = namesThere(json, step)) return hold(std::move(*trouble), pointer);
        if (then) hold(readThen(whole(*then), step), pointer);
        if (opposite && !error_) takeOpposite(whole(*opposite), step, pointer + "/opposite");
    }

    void holdAt(const JsonValue& json, const std::string& member, const Error& error, const std::string& pointer) {
        const JsonValue* there = json.member(member);
        hold({error.kind, error.message, '/' + member + error.place.pointer, there ? there->begin : json.begin},
             pointer);
    }

    static Failure readKind(const JsonValue& value, const std::string& pointer, StepKind& kind) {
        std::size_t index = 0;
        auto failure = reading::readNameOf(value, pointer, "kind of step", kStepKinds, reading::kItself, index);
        if (!failure) kind = static_cast<StepKind>(index);
        return failure;
    }

    /// Views as in a bench file, places and a card.
    static Failure readShow(JsonValue value, const std::string& at, LessonStep& step) {
        if (auto failure = requireObject(value, at)) return failure;
        for (auto member = value.items.begin(); member != value.items.end();) {
            Failure failure;
            if (member->name == "places") {
                failure = readTexts(*member, at + "/places", step.places);
            } else if (member->name == "sheet") {
                step.sheet = member->number != 0;
                if (member->type != JsonType::Bool) failure = wrongType(*member, at + "/sheet", "true or false");
            } else if (member->name == "card") {
                failure = readText(*member, at + "/card", step.card);
            } else {
                ++member;
                continue;
            }
            if (failure) return failure;
            member = value.items.erase(member);
        }
        if (value.items.empty()) return {};
        SavedViews views;
        UnknownMembers unknown;
        auto failure = readViews(value, views, unknown);
        if (failure) failure->pointer = at + failure->pointer.substr(std::string_view("/views").size());
        if (!failure && !unknown.empty()) return unknownMember(*unknown.front(), at, "what is shown");
        step.show = views.shown;
        return failure;
    }

    static Failure readTried(const JsonValue& value, const std::string& at, Tried& tried) {
        if (auto failure = requireObject(value, at)) return failure;
        return forEachMember(value, at, [&](const JsonValue& member, const std::string& pointer) -> Failure {
            if (member.name == "hold") return readTexts(member, pointer, tried.hold);
            if (member.name == "set") return readSet(member, pointer, tried);
            return unknownMember(member, pointer, "what is tried");
        });
    }

    static Failure readSet(const JsonValue& value, const std::string& at, Tried& tried) {
        if (auto failure = requireObject(value, at)) return failure;
        return forEachMember(value, at, [&](const JsonValue& member, const std::string& pointer) -> Failure {
            if (member.type != JsonType::Number && member.type != JsonType::Bool)
                return wrongType(member, pointer, "a number, true or false");
            tried.set.emplace_back(member.name, member.number);
            return {};
        });
    }

    /// Applies operations to a bench in place.
    void applyEdits(const JsonValue& json, const std::string& pointer, std::shared_ptr<const Bench>& bench,
                    std::vector<Operation>& operations) {
        if (json.type != JsonType::List) return hold(wrongType(json, pointer, "a list"));
        auto read = readOperations(text_, json.begin, json.end, pointer, *bench);
        if (!read) {
            if (!error_) error_ = read.error();
            return;
        }
        warnings_.insert(warnings_.end(), read->warnings.begin(), read->warnings.end());
        auto applied = apply(*bench, read->edit);
        if (!applied) {
            return hold(
                {applied.error().kind, "the edits can't be applied: " + applied.error().message, pointer, json.begin});
        }
        operations = std::move(read).value().edit.operations;
        bench = std::make_shared<const Bench>(std::move(applied).value().bench);
    }

    /// What a step points at, and what its wrong idea is about, is on its bench.
    std::optional<Trouble> namesThere(const JsonValue& json, const LessonStep& step) const {
        const Bench& bench = *step.bench;
        const auto offset = [&](std::string_view member) {
            return json.member(member) ? json.member(member)->begin : json.begin;
        };
        for (const std::string& place : step.places) {
            if (bench.findPart(place) || bench.findJumper(place)) continue;
            const auto hole = parseHole(place);
            if (!hole || !holeMm(bench, *hole))
                return Trouble{ErrorKind::Reference,
                               fmt::format("nothing on the bench of this step is {}", inQuotes(place)), "/show/places",
                               offset("show")};
        }
        if (!step.ask || !step.ask->wrong) return {};
        const WrongIdea& wrong = *step.ask->wrong;
        const auto missing = [&](std::string_view what, std::string_view where) {
            return Trouble{ErrorKind::Reference, fmt::format("nothing on the bench of this step is {}", inQuotes(what)),
                           fmt::format("/ask/wrong/{}", where), offset("ask")};
        };
        for (const auto& [in, ampere] : wrong.amperes) {
            const Part* part = bench.findPart(in.id);
            if (!part || part->kind->leadIndex(in.lead) < 0) return missing(in.id + '.' + in.lead, "amperes");
        }
        for (const auto& [hole, text] : wrong.tags) {
            if (!holeMm(bench, hole)) return missing(toString(hole), "tags");
        }
        if (!wrong.brokenAt.empty() && !bench.findPart(wrong.brokenAt) && !bench.findJumper(wrong.brokenAt))
            return missing(wrong.brokenAt, "brokenAt");
        return {};
    }

    Failure readThen(const JsonValue& list, LessonStep& step) {
        if (list.type != JsonType::List) return wrongType(list, "/then", "a list");
        for (std::size_t i = 0; i < list.items.size(); ++i) {
            auto failure = readPredicate(whole(list.items[i]), *step.bench, step.then.emplace_back());
            if (!failure) continue;
            failure->pointer = fmt::format("/then/{}", i) + failure->pointer;
            return failure;
        }
        return {};
    }

    void takeOpposite(const JsonValue& json, LessonStep& step, const std::string& pointer) {
        const JsonValue* edits = nullptr;
        if (auto failure = requireObject(json)) return hold(failure, pointer);
        const auto failure = forEachMember(json, {}, [&](const JsonValue& member, const std::string& at) -> Failure {
            if (member.name == "hold") return readTexts(member, at, step.oppositeTried.hold);
            if (member.name == "set") return readSet(member, at, step.oppositeTried);
            if (member.name == "edits") return edits = &member, Failure{};
            return unknownMember(member, at, "an opposite");
        });
        if (failure) return hold(failure, pointer);
        std::shared_ptr<const Bench> bench = step.bench;
        if (edits) applyEdits(*edits, pointer + "/edits", bench, step.oppositeEdits);
        if (error_) return;
        auto situation = situationOf(bench, step.oppositeTried);
        if (!situation) return hold({situation.error().kind, situation.error().message, {}, json.begin}, pointer);
        step.opposite = std::move(situation).value();
    }

    std::string_view text_;
    KeptMembers kept_;
    FileHead head_;
    Lesson lesson_;
    std::vector<JsonValue> steps_;
    std::vector<Error> warnings_;
    std::optional<Error> error_;  ///< the first
};

}  // namespace

Result<ReadLesson> readLesson(std::string_view text) try {
    if (text.size() > kLargestBenchBytes) return Error{ErrorKind::Format, "the file is larger than 128 MB", {}, {}};
    text = withoutMark(text);
    return LessonReader(text).read();
} catch (const std::bad_alloc&) {
    return Error{ErrorKind::Io, "the file needs more memory than there is", {}, {}};
}

}  // namespace tiepoint
