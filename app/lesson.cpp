// tiepoint lesson check FILE: whether every step says what is so. tiepoint lesson fit FILE --kit KIT: whether a class can give it with what
// it has. tiepoint lesson page FILE -o OUT: the teacher's page as PDF.

#include "app/commands.h"
#include "app/json_writer.h"
#include "app/offscreen.h"
#include "app/output.h"
#include "core/base/printable.h"
#include "core/compare/exercise_target.h"
#include "core/course/exercise.h"
#include "core/course/fit.h"
#include "core/course/lesson_check.h"
#include "core/course/lesson_file.h"
#include "ui/export/teacher_page.h"

#include <fmt/format.h>
#include <spdlog/spdlog.h>

#include <functional>
#include <memory>
#include <string>

namespace tiepoint::app {
namespace {

struct LessonOptions {
    std::string file, kit, output, paper = "a4";
    bool json = false;
    std::function<int()> action;
};

Result<Lesson> readLessonInput(const std::string& file) {
    auto read = readLessonFile(file);
    if (!read) return read.error();
    for (const Error& warning : read->warnings) spdlog::warn(warning.oneLine());
    return std::move(read).value().lesson;
}

void writeClaims(JsonWriter& json, const CheckedStep& step) {
    json.key("claims").beginArray();
    for (const CheckedClaim& claim : step.claims) {
        json.beginObject(JsonWriter::Form::Row).key("claim").raw(predicateLine(claim.claim));
        json.field("holds", claim.here.holds).field("failsOtherwise", !claim.thin).field("figure", claim.here.figure);
        json.endObject();
    }
    json.endArray();
}

void writeChecked(JsonWriter& json, const Lesson& lesson, const CheckedLesson& checked) {
    json.field("holds", checked.good() && complaintsAbout(lesson).empty()).key("steps").beginArray();
    for (int step = 0; step < lesson.stepCount(); ++step) {
        json.beginObject().field("step", step + 1).field("caption", lesson.steps[step].caption);
        json.field("holds", checked.steps[step].good());
        writeClaims(json, checked.steps[step]);
        json.endObject();
    }
    json.endArray();
}

std::string checkedAsText(const Lesson& lesson, const CheckedLesson& checked) {
    std::string text;
    for (int step = 0; step < lesson.stepCount(); ++step) {
        const CheckedStep& result = checked.steps[step];
        text += fmt::format("  {} {}: {}\n", step + 1, printable(lesson.steps[step].caption),
                            result.claims.empty() ? "claims nothing"
                            : result.good()       ? "holds"
                                                  : "doesn't hold");
        for (const CheckedClaim& claim : result.claims) {
            if (!claim.good()) text += fmt::format("    {}\n", printable(complaintAbout(claim)));
        }
    }
    return text;
}

int runLessonCheck(const LessonOptions& options) {
    const auto lesson = readLessonInput(options.file);
    if (!lesson) return complain(lesson.error());
    const CheckedLesson checked = checkLesson(*lesson);
    const std::vector<std::string> complaints = complaintsAbout(*lesson);
    const bool good = checked.good() && complaints.empty();
    if (options.json) {
        JsonWriter json;
        json.beginObject().field("title", lesson->title);
        writeChecked(json, *lesson, checked);
        if (isExercise(*lesson)) json.texts("exercise", complaints);
        print(json.endObject().take());
    } else {
        std::string text = checkedAsText(*lesson, checked);
        for (const std::string& complaint : complaints) text += fmt::format("  {}\n", printable(complaint));
        print(fmt::format("{}: {}\n{}", printable(lesson->title), good ? "all holds" : "not all holds", text));
    }
    return good ? kExitGood : kExitBad;
}

std::string gapText(const KitGap& gap) {
    std::string counts = gap.needed > gap.there ? fmt::format(", {} needed and {} there", gap.needed, gap.there) : "";
    if (!gap.instead.empty()) return fmt::format("  {}{}: take {}\n", gap.wanted, counts, gap.instead);
    return fmt::format("  {}{}: nothing serves{}\n", gap.wanted, counts, gap.why.empty() ? "" : "; " + gap.why);
}

int runLessonFit(const LessonOptions& options) {
    const auto lesson = readLessonInput(options.file);
    if (!lesson) return complain(lesson.error());
    const auto kit = readKitFile(options.kit);
    if (!kit) return complain(kit.error());
    const KitFit fit = fitLesson(*lesson, kit->kit);
    if (!options.output.empty() && fit.fitted) {
        if (const auto written = writeLessonFile(*fit.fitted, options.output); !written)
            return complain(written.error());
    }
    if (options.json) {
        JsonWriter json;
        json.beginObject().field("title", lesson->title).field("kit", kit->kit.title).field("fits", fit.fits());
        json.key("gaps").beginArray();
        for (const KitGap& gap : fit.gaps) {
            json.beginObject(JsonWriter::Form::Row)
                .field("wanted", gap.wanted)
                .field("needed", gap.needed)
                .field("there", gap.there);
            json.key("instead");
            gap.instead.empty() ? json.null() : json.value(gap.instead);
            json.field("why", gap.why).endObject();
        }
        json.endArray();
        writeChecked(json, *fit.fitted, fit.checked);
        print(json.endObject().take());
    } else {
        std::string text = fmt::format("{} with {}: {}\n", printable(lesson->title), printable(kit->kit.title),
                                       !fit.fits()        ? "doesn't fit"
                                       : fit.gaps.empty() ? "fits"
                                                          : "fits with what follows");
        for (const KitGap& gap : fit.gaps) text += printable(gapText(gap).substr(0, gapText(gap).size() - 1)) + '\n';
        print(text);
    }
    return fit.fits() ? kExitGood : kExitBad;
}

int runLessonPage(const LessonOptions& options) {
    const auto lesson = readLessonInput(options.file);
    if (!lesson) return complain(lesson.error());
    const Offscreen offscreen;
    const auto paper = options.paper == "letter" ? ui::Paper::Letter : ui::Paper::A4;
    const auto failed = ui::saveTeacherPage(*lesson, QString::fromStdString(options.output), paper);
    if (failed) return complain(fmt::format("{}: {}", options.output, failed->toStdString()));
    return kExitGood;
}

}  // namespace

Action declareLesson(CLI::App& parser) {
    auto options = std::make_shared<LessonOptions>();
    CLI::App* check = parser.add_subcommand("check", "Solve what every step claims");
    CLI::App* fit = parser.add_subcommand(
        "fit", "What a class lacks for it, what serves instead, and the lesson solved anew with that");
    CLI::App* page = parser.add_subcommand("page", "The teacher's page: aim, kit, words, safety, steps and questions");
    for (CLI::App* each : {check, fit, page}) {
        each->add_option("FILE", options->file, "The lesson, a *.lesson.json file")->required();
        if (each != page) each->add_flag("--json", options->json, "Write JSON");
    }
    fit->add_option("--kit", options->kit, "What the class has, a *.kit.json file")->required();
    fit->add_option("-o,--output", options->output, "Write the lesson as it fits");
    page->add_option("-o,--output", options->output, "The PDF")->required();
    page->add_option("--paper", options->paper, "Sheets of PDF: a4 or letter")
        ->check(CLI::IsMember({"a4", "letter"}).description(""));
    page->callback([options] { options->action = [options] { return runLessonPage(*options); }; });
    check->callback([options] { options->action = [options] { return runLessonCheck(*options); }; });
    fit->callback([options] { options->action = [options] { return runLessonFit(*options); }; });
    parser.require_subcommand(1);
    return [options] {
        const auto action = std::move(options->action);
        return action();
    };
}

}  // namespace tiepoint::app
