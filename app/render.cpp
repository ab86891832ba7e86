// tiepoint render FILE -o OUT: a picture of the solved bench. Needs no display.

#include "app/bench_input.h"
#include "app/commands.h"
#include "app/offscreen.h"
#include "app/output.h"
#include "ui/export/picture_file.h"

#include <fmt/format.h>
#include <spdlog/spdlog.h>

#include <map>
#include <optional>

namespace tiepoint::app {
namespace {

constexpr int kDefaultWidth = 1600;
constexpr int kSmallestWidth = 64, kLargestWidth = 16384;

struct RenderOptions {
    BenchInput input;
    std::string output;
    std::string theme = "day";
    std::optional<std::vector<std::string>> show;  ///< nothing: as the bench was left
    std::string paper = "a4";
    int width = kDefaultWidth;
};

const std::map<std::string, ui::ThemeName> kThemes{
    {"day", ui::ThemeName::Day}, {"dark", ui::ThemeName::Dark}, {"projector", ui::ThemeName::Projector}};

const std::map<std::string, ui::Paper> kPapers{{"a4", ui::Paper::A4}, {"letter", ui::Paper::Letter}};

/// What each word of --show switches on.
const std::map<std::string, void (*)(ui::Views&)> kViews{
    {"arrows", [](ui::Views& views) { views.arrows = ui::Arrows::Conventional; }},
    {"electrons", [](ui::Views& views) { views.arrows = ui::Arrows::Electrons; }},
    {"voltage", [](ui::Views& views) { views.voltage = true; }},
    {"strips", [](ui::Views& views) { views.strips = true; }},
    {"readings", [](ui::Views& views) { views.readings = true; }},
    {"turned", [](ui::Views& views) { views.turned = true; }},
    {"none", [](ui::Views&) {}},
};

template <class Content>
std::vector<std::string> keysOf(const std::map<std::string, Content>& table) {
    std::vector<std::string> names;
    names.reserve(table.size());
    for (const auto& [name, content] : table) names.push_back(name);
    return names;
}

ui::Views viewsOf(const RenderOptions& options, const Bench& bench) {
    if (!options.show) return bench.views ? bench.views->shown : ui::Views{};
    ui::Views views;
    views.arrows = ui::Arrows::Off;
    views.readings = false;
    for (const std::string& word : *options.show) kViews.at(word)(views);
    return views;
}

int runRender(const RenderOptions& options) {
    const auto bench = options.input.read();
    if (!bench) return complain(bench.error());
    const auto inputs = options.input.inputsFor(**bench);
    if (!inputs) return complain(inputs.error());

    ui::Picture picture;
    picture.snapshot = evaluate(*bench, *inputs);
    picture.layout = picture.snapshot->layout;
    picture.theme = &ui::theme(kThemes.at(options.theme));
    picture.views = viewsOf(options, **bench);
    picture.arrangeTable();

    const Offscreen offscreen;
    picture.arrangeTags();
    const auto failed =
        ui::savePicture(picture, QString::fromStdString(options.output), options.width, kPapers.at(options.paper));
    if (failed) return complain(fmt::format("{}: {}", options.output, failed->toStdString()));
    spdlog::debug("{}: drawn", options.output);
    return picture.snapshot->status() == Status::None ? kExitBad : kExitGood;
}

std::string checkEnding(const std::string& path) {
    if (ui::isPictureFile(QString::fromStdString(path))) return {};
    return fmt::format("{}: a picture's name ends in .png, .svg or .pdf", path);
}

}  // namespace

Action declareRender(CLI::App& parser) {
    auto options = std::make_shared<RenderOptions>();
    options->input.declareFile(parser);
    options->input.declareHold(parser);
    parser.add_option("-o,--output", options->output, "The picture: PNG, SVG or PDF by the ending")
        ->required()
        ->check(checkEnding, "a name ending in .png, .svg or .pdf");
    parser.add_option("--theme", options->theme, "day, dark or projector")
        ->check(CLI::IsMember(keysOf(kThemes)).description(""));
    parser
        .add_option(
            "--show", options->show,
            "What to show: arrows, electrons, voltage, strips, readings, turned, or none; else as the bench was left")
        ->delimiter(',')
        ->allow_extra_args(false)
        ->check(CLI::IsMember(keysOf(kViews)).description(""));
    parser.add_option("--paper", options->paper, "Sheets of PDF: a4 or letter")
        ->check(CLI::IsMember(keysOf(kPapers)).description(""));
    parser.add_option("--width", options->width, "Width of PNG and SVG in pixels")
        ->check(CLI::Range(kSmallestWidth, kLargestWidth));
    return [options] { return runRender(*options); };
}

}  // namespace tiepoint::app
