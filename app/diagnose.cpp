// tiepoint diagnose TARGET: a real board that was to be built from a plan. From what is seen and measured there: which slips fit, what to look
// at next, and the mend.

#include "app/bench_input.h"
#include "app/commands.h"
#include "app/edit_json.h"
#include "app/kit_option.h"
#include "app/offscreen.h"
#include "app/output.h"
#include "core/base/printable.h"
#include "core/course/kit_slips.h"
#include "core/doctor/doctor.h"
#include "core/doctor/flow_chart.h"
#include "core/doctor/observation_words.h"
#include "core/doctor/question_words.h"
#include "core/sheet/kit_bench.h"
#include "ui/sheet/flow_chart_page.h"

#include <fmt/format.h>

#include <algorithm>

namespace tiepoint::app {
namespace {

struct DiagnoseOptions {
    BenchInput input;
    KitOption kit;
    std::vector<std::string> saw, hold;
    std::string black, chart, paper = "a4";
    bool probeLight = false, json = false;
    const CLI::App* parser = nullptr;
    const CLI::Option *sawOption = nullptr, *holdOption = nullptr;
};

std::vector<std::string> wordsOf(const std::string& list) {
    std::vector<std::string> words(1);
    for (const char sign : list) {
        if (sign == ',')
            words.emplace_back();
        else
            words.back() += sign;
    }
    return words;
}

Error placedIn(Error error, const std::string& file) {
    if (error.file.empty()) error.file = file;
    return error;
}

/// Each --saw with the --hold before it.
Result<std::vector<Observation>> observationsOf(const DiagnoseOptions& options, const Bench& plan) {
    std::optional<Hole> black;
    if (!options.black.empty()) {
        black = parseHole(options.black);
        if (!black || !holeMm(plan, *black))
            return Error{
                ErrorKind::Reference, fmt::format("--black {}: the bench has no such hole", options.black), {}, {}};
    }
    std::vector<Observation> seen;
    Digits digits = restOf(plan);
    std::size_t held = 0, saw = 0;
    for (const CLI::Option* option : options.parser->parse_order()) {
        if (option == options.holdOption) {
            auto read = readHolds(plan, wordsOf(options.hold[held++]));
            if (!read) return read.error();
            digits = std::move(read).value();
        } else if (option == options.sawOption) {
            auto read = readObservation(plan, options.saw[saw++], digits, black);
            if (!read) return read.error();
            if (std::holds_alternative<SawVolts>(read->what) && !black && !minusOfFirstSupply(plan))
                return Error{ErrorKind::Reference,
                             "volts need a black tip: no supply's minus is plugged in; use --black",
                             {},
                             {}};
            seen.push_back(std::move(read).value());
        }
    }
    return seen;
}

std::vector<std::string> holeNames(const std::vector<Hole>& holes) {
    std::vector<std::string> names;
    for (const Hole& hole : holes) names.push_back(toString(hole));
    return names;
}

void writeFit(JsonWriter& json, const Doctor& doctor, const Suspect& suspect) {
    const Bench& plan = doctor.plan();
    json.beginObject().key("slips").beginArray();
    for (const int index : suspect.slips) {
        const Slip& slip = doctor.suspects().slips()[static_cast<std::size_t>(index)];
        json.beginObject().field("kind", slip.kind->name).texts("parts", slip.ids());
        json.texts("holes", holeNames(slip.holes())).field("text", slipInWords(plan, slip)).endObject();
    }
    json.endArray().key("mend").beginObject().field("text", doctor.mendInWords(suspect));
    writeEdit(json, doctor.suspects().built(suspect), doctor.mendOf(suspect));
    json.endObject().endObject();
}

bool isLook(Asking asking) { return asking == Asking::Light || asking == Asking::Look || asking == Asking::Built; }

void writeNext(JsonWriter& json, const Doctor& doctor, const Diagnosis& diagnosis,
               const std::vector<Observation>& seen) {
    json.key("next");
    if (!diagnosis.next && !diagnosis.switchOff) {
        json.null();
        return;
    }
    json.beginObject().field("text", doctor.nextInWords(diagnosis, seen));
    if (!diagnosis.next) {
        json.key("hold").beginArray(JsonWriter::Form::Row).endArray().endObject();
        return;
    }
    const Question& question = diagnosis.next->question;
    const bool two = question.asking == Asking::Beep || question.asking == Asking::Extra;
    if (isLook(question.asking))
        json.field("look", question.id);
    else
        json.field(question.asking == Asking::Extra ? "look" : "measure",
                   toString(question.one) + (two ? "~" + toString(question.other) : ""));
    json.texts("hold", holdsOf(doctor.plan(), question.digits)).key("answers").beginArray();
    for (const Reply& answer : diagnosis.next->answers) {
        std::vector<std::string> saw;
        for (const Observation& each : answer.seen) saw.push_back(writeObservation(doctor.plan(), each));
        json.beginObject().field("text", answer.words).texts("saw", saw);
        json.field("fits", static_cast<int>(answer.leaves.size()));
        json.field("means", leavesInWords(answer, diagnosis.fits)).endObject();
    }
    json.endArray().endObject();
}

std::string diagnosisAsJson(const Doctor& doctor, const Diagnosis& diagnosis, const std::vector<Observation>& seen) {
    JsonWriter json;
    json.beginObject().field("title", doctor.plan().title).key("fits").beginArray();
    for (const Weighed& fit : diagnosis.fits) writeFit(json, doctor, *fit.suspect);
    json.endArray();
    writeNext(json, doctor, diagnosis, seen);
    json.field("contradiction", diagnosis.contradiction).field("pairs", diagnosis.pairs);
    std::vector<std::string> doubted;
    for (const std::size_t at : diagnosis.doubted) doubted.push_back(writeObservation(doctor.plan(), seen[at]));
    json.texts("doubted", doubted).endObject();
    return json.take();
}

std::string diagnosisAsText(const Doctor& doctor, const Diagnosis& diagnosis, const std::vector<Observation>& seen) {
    constexpr std::size_t kMostListed = 8;
    const Bench& plan = doctor.plan();
    std::string text = printable(plan.title) + '\n';
    for (const Observation& each : seen) text += fmt::format("  seen: {}\n", observationInWords(plan, each));
    if (!diagnosis.fits.empty()) {
        const std::size_t all = doctor.suspects().all().size();
        text += diagnosis.pairs ? fmt::format("Still possible, two slips at once: {}\n", diagnosis.fits.size())
                                : fmt::format("Still possible: {} of {}\n", diagnosis.fits.size(), all);
        const std::size_t listed = diagnosis.fits.size() > kMostListed + 1 ? kMostListed : diagnosis.fits.size();
        for (std::size_t i = 0; i < listed; ++i)
            text += fmt::format("  {}\n", doctor.slipsInWords(*diagnosis.fits[i].suspect));
        if (listed < diagnosis.fits.size()) text += fmt::format("  and {} more\n", diagnosis.fits.size() - listed);
    }
    const bool done = !diagnosis.next && !diagnosis.switchOff && !diagnosis.contradiction;
    return text + fmt::format("{}{}\n", done ? "Mend: " : "Next: ", doctor.nextInWords(diagnosis, seen));
}

int runDiagnose(const DiagnoseOptions& options) {
    const auto read = options.input.read();
    if (!read) return complain(read.error());
    std::shared_ptr<const Bench> bench = *read;
    const auto kit = options.kit.read();
    if (!kit) return complain(kit.error());
    PossibleSlip possible;
    if (*kit) {
        bench = benchForKit(bench, **kit).bench;
        possible = [&](const Slip& slip) { return canHappenWith(**kit, *bench, slip); };
    }
    const auto seen = observationsOf(options, *bench);
    if (!seen) return complain(placedIn(seen.error(), options.input.file));
    Doctor doctor(buildLayout(bench), possible);
    const bool noMeter = options.probeLight || (*kit && (*kit)->meters == 0);
    const Instrument instrument = noMeter ? Instrument::ProbeLight : Instrument::Meter;
    if (!options.chart.empty()) {
        const FlowChart chart = flowChart(doctor, {}, instrument);
        const Offscreen offscreen;
        const auto failed = ui::saveFlowChart(chart, options.paper == "letter" ? ui::Paper::Letter : ui::Paper::A4,
                                              QString::fromStdString(options.chart));
        return failed ? complain(fmt::format("{}: {}", options.chart, failed->toStdString())) : int{kExitGood};
    }
    const Diagnosis diagnosis = doctor.diagnose(*seen, instrument);
    print(options.json ? diagnosisAsJson(doctor, diagnosis, *seen) : diagnosisAsText(doctor, diagnosis, *seen));
    return diagnosis.contradiction ? kExitBad : kExitGood;
}

}  // namespace

Action declareDiagnose(CLI::App& parser) {
    auto options = std::make_shared<DiagnoseOptions>();
    options->parser = &parser;
    parser.add_option("TARGET", options->input.file, "The plan, a *.bench.json file")->required();
    options->kit.declare(parser);
    options->holdOption =
        parser
            .add_option("--hold", options->hold,
                        "How the switches stood for the --saw that follow: S1,S2 pressed, S3=b, or none")
            ->allow_extra_args(false);
    options->sawOption =
        parser
            .add_option(
                "--saw", options->saw,
                "What was seen: D1=dark|lit|dim|\"always lit\"|hot, A.c14=5.0 (volts), A.c14~A.c20=beeps|silent, "
                "W1.2=A.c9 (where it stands), R1=\"as planned\"")
            ->allow_extra_args(false);
    parser.add_option("--black", options->black, "The hole of the black tip; by default the minus of the first supply");
    parser.add_flag("--probe-light", options->probeLight,
                    "There is no meter: ask for a probe light, an LED and 1 kilohm");
    parser
        .add_option("--chart", options->chart, "Instead: a page of paper to find slips by without this program, as PDF")
        ->check([](const std::string& path) {
            return path.ends_with(".pdf") ? std::string() : path + ": a chart's name ends in .pdf";
        });
    parser.add_option("--paper", options->paper, "a4 or letter")
        ->check(CLI::IsMember({"a4", "letter"}).description(""));
    parser.add_flag("--json", options->json, "Write JSON");
    return [options] { return runDiagnose(*options); };
}

}  // namespace tiepoint::app
