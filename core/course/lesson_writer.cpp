#include "core/base/file_io.h"
#include "core/base/json_text.h"
#include "core/bench/bench_file.h"
#include "core/bench/read_objects.h"
#include "core/course/lesson_file.h"
#include "core/edit/edit_file.h"

#include <fmt/format.h>

namespace tiepoint {
namespace {

/// A bench inside a lesson: its own text, moved in.
std::string indented(std::string text, std::string_view by) {
    while (text.ends_with('\n')) text.pop_back();
    std::string moved;
    for (const char letter : text) {
        moved += letter;
        if (letter == '\n') moved += by;
    }
    return moved;
}

std::string textList(const std::vector<std::string>& texts) {
    std::vector<std::string> quoted;
    for (const std::string& text : texts) quoted.push_back(jsonString(text));
    return fmt::format("[{}]", fmt::join(quoted, ", "));
}

std::string setText(const Tried& tried, const Bench& bench) {
    std::vector<std::string> members;
    for (const auto& [what, to] : tried.set) {
        const std::size_t dot = what.find('.');
        const Part* part = bench.findPart(what.substr(0, dot));
        const int state = part ? part->kind->stateIndex(what.substr(dot + 1)) : -1;
        const bool isSwitch = state >= 0 && part->kind->state[state].type == ValueType::Switch;
        members.push_back(jsonString(what) + ": " + (isSwitch ? (to != 0 ? "true" : "false") : jsonNumber(to)));
    }
    return fmt::format("{{{}}}", fmt::join(members, ", "));
}

std::string triedText(const Tried& tried, const Bench& bench) {
    std::vector<std::string> members;
    if (!tried.hold.empty()) members.push_back("\"hold\": " + textList(tried.hold));
    if (!tried.set.empty()) members.push_back("\"set\": " + setText(tried, bench));
    return fmt::format("{}", fmt::join(members, ", "));
}

std::string showText(const LessonStep& step) {
    std::vector<std::string> members;
    if (step.show) {
        const Views& views = *step.show;
        const auto yesNo = [](bool yes) { return yes ? "true" : "false"; };
        members.push_back(fmt::format("\"arrows\": \"{}\"", kArrowsNames[static_cast<std::size_t>(views.arrows)]));
        members.push_back(fmt::format("\"voltage\": {}", yesNo(views.voltage)));
        members.push_back(fmt::format("\"strips\": {}", yesNo(views.strips)));
        members.push_back(fmt::format("\"readings\": {}", yesNo(views.readings)));
        members.push_back(fmt::format("\"turned\": {}", yesNo(views.turned)));
        if (views.lockedFullScaleAmpere)
            members.push_back("\"fullScale\": " + jsonNumber(*views.lockedFullScaleAmpere));
    }
    if (!step.places.empty()) members.push_back("\"places\": " + textList(step.places));
    if (step.sheet) members.push_back("\"sheet\": true");
    if (!step.card.empty()) members.push_back("\"card\": " + jsonString(step.card));
    return fmt::format("{}", fmt::join(members, ", "));
}

std::string wrongText(const WrongIdea& wrong) {
    std::vector<std::string> members{"\"idea\": " + jsonString(wrong.idea)}, amperes, tags;
    for (const auto& [in, ampere] : wrong.amperes)
        amperes.push_back(jsonString(in.id + '.' + in.lead) + ": " + jsonNumber(ampere));
    for (const auto& [hole, text] : wrong.tags) tags.push_back(jsonString(toString(hole)) + ": " + jsonString(text));
    if (!amperes.empty()) members.push_back(fmt::format("\"amperes\": {{{}}}", fmt::join(amperes, ", ")));
    if (!tags.empty()) members.push_back(fmt::format("\"tags\": {{{}}}", fmt::join(tags, ", ")));
    if (!wrong.brokenAt.empty()) members.push_back("\"brokenAt\": " + jsonString(wrong.brokenAt));
    if (!wrong.breaks.empty()) members.push_back("\"breaks\": " + jsonString(wrong.breaks));
    return fmt::format("{}", fmt::join(members, ", "));
}

/// Members of an object, one a line, those without a value left out.
class Members {
public:
    explicit Members(std::string indent) : indent_(std::move(indent)) {}
    void add(std::string_view name, std::string json) {
        text_ += (text_.empty() ? "\n" : ",\n") + indent_ + jsonString(name) + ": " + std::move(json);
    }
    void addText(std::string_view name, const std::string& text) {
        if (!text.empty()) add(name, jsonString(text));
    }
    void addTexts(std::string_view name, const std::vector<std::string>& texts) {
        if (texts.empty()) return;
        std::vector<std::string> lines;
        for (const std::string& text : texts) lines.push_back(indent_ + "  " + jsonString(text));
        add(name, fmt::format("[\n{}\n{}]", fmt::join(lines, ",\n"), indent_));
    }
    void addRow(std::string_view name, const std::string& members) {
        if (!members.empty()) add(name, '{' + members + '}');
    }
    void addLines(std::string_view name, const std::vector<std::string>& lines) {
        if (lines.empty()) return;
        add(name, fmt::format("[\n{0}  {1}\n{0}]", indent_, fmt::join(lines, ",\n" + indent_ + "  ")));
    }
    std::string take(const std::string& outer) { return '{' + text_ + '\n' + outer + '}'; }

private:
    std::string indent_, text_;
};

std::string stepText(const Lesson& lesson, int index) {
    const LessonStep& step = lesson.steps[index];
    constexpr std::string_view kKinds[] = {"show", "predict", "stop", "build"};
    Members members("      ");
    if (step.kind == StepKind::Stop || step.kind == StepKind::Build)
        members.add("kind", jsonString(kKinds[static_cast<std::size_t>(step.kind)]));
    members.addText("caption", step.caption);
    members.addText("note", step.note);
    members.addLines("edits", operationLines({{}, step.edits}, *lesson.benchAt(index - 1)));
    members.addRow("show", showText(step));
    members.addRow("try", triedText(step.tried, *step.bench));
    std::vector<std::string> claims;
    for (const Predicate& predicate : step.then) claims.push_back(predicateLine(predicate));
    members.addLines("then", claims);
    if (step.opposite) {
        std::string row;
        const auto edits = operationLines({{}, step.oppositeEdits}, *step.bench);
        if (!edits.empty()) row = fmt::format("\"edits\": [{}]", fmt::join(edits, ", "));
        const std::string tried = triedText(step.oppositeTried, *step.opposite->bench);
        if (!tried.empty()) row += (row.empty() ? "" : ", ") + tried;
        members.add("opposite", '{' + row + '}');
    }
    if (step.ask) {
        Members ask("        ");
        ask.addText("question", step.ask->question);
        if (step.ask->diagrams > 0) {
            ask.add("diagrams", jsonNumber(step.ask->diagrams));
        } else {
            ask.addTexts("answers", step.ask->answers);
        }
        ask.add("right", jsonNumber(step.ask->right + 1));
        ask.addText("seen", step.ask->seen);
        if (step.ask->wrong) ask.addRow("wrong", wrongText(*step.ask->wrong));
        members.add("ask", ask.take("      "));
    }
    return members.take("    ");
}

}  // namespace

std::string writeLesson(const Lesson& lesson) {
    Members members("  ");
    members.add("format", jsonString(kLessonFormat));
    members.add("version", "1");
    members.add("title", jsonString(lesson.title));
    members.addText("summary", lesson.summary);
    members.addTexts("teaches", lesson.teaches);
    members.add("minutes", jsonNumber(lesson.minutes));
    members.addText("answers", lesson.answers);
    members.addText("surprise", lesson.surprise);
    members.addTexts("must", lesson.must);
    members.addTexts("may", lesson.may);
    members.addTexts("words", lesson.words);
    members.addTexts("safety", lesson.safety);
    members.addTexts("packing", lesson.packing);
    members.addTexts("paper", lesson.paper);
    members.add("start", indented(writeBench(*lesson.start), "  "));
    std::vector<std::string> steps;
    for (int i = 0; i < lesson.stepCount(); ++i) steps.push_back(stepText(lesson, i));
    members.addLines("steps", steps);
    if (lesson.goal) members.add("goal", indented(writeBench(*lesson.goal), "  "));
    std::vector<std::string> limits;
    if (lesson.limits.parts > 0) limits.push_back(fmt::format("\"parts\": {}", lesson.limits.parts));
    if (lesson.limits.jumpers > 0) limits.push_back(fmt::format("\"jumpers\": {}", lesson.limits.jumpers));
    if (!lesson.limits.locks.empty()) limits.push_back("\"locks\": " + textList(lesson.limits.locks));
    members.addRow("limits", fmt::format("{}", fmt::join(limits, ", ")));
    for (const auto& [name, json] : lesson.extras) members.add(name, json);
    return members.take("") + '\n';
}

Result<Done> writeLessonFile(const Lesson& lesson, const std::filesystem::path& path) {
    return writeFileAtomically(path, writeLesson(lesson));
}

}  // namespace tiepoint
