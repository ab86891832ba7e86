// tiepoint diagram FILE -o OUT: the circuit diagram of a bench, solved, or of a circuit without places. Needs no display.

#include "app/bench_input.h"
#include "app/commands.h"
#include "app/offscreen.h"
#include "app/output.h"
#include "core/netlist/circuit_file.h"
#include "ui/export/drawing_file.h"
#include "ui/sheet/sheet_painter.h"

#include <fmt/format.h>
#include <spdlog/spdlog.h>

#include <map>

namespace tiepoint::app {
namespace {

struct DiagramOptions {
    BenchInput input;
    std::string output;
    std::string theme = "day";
    std::string style = "iec";
    int width = 1600;
};

const std::map<std::string, ui::ThemeName> kSheetThemes{
    {"day", ui::ThemeName::Day}, {"dark", ui::ThemeName::Dark}, {"projector", ui::ThemeName::Projector}};
const std::map<std::string, SymbolStyle> kStyles{{"iec", SymbolStyle::Iec}, {"ieee", SymbolStyle::Ieee}};

/// A circuit without places, as a bench on which nothing is plugged in: its parts, and the sheet's own nets.
std::shared_ptr<const BenchDiagram> sheetOfCircuit(const Netlist& netlist, SymbolStyle style) {
    Bench bench;
    bench.title = netlist.title;
    bench.parts = netlist.parts;
    auto sheet = std::make_shared<BenchDiagram>();
    sheet->layout = buildLayout(std::make_shared<const Bench>(std::move(bench)));
    sheet->netlist = netlist;
    DiagramHints hints;
    hints.style = style;
    sheet->diagram = layOutDiagram(netlist, hints);
    sheet->layoutNet.assign(netlist.nets.size(), -1);
    return sheet;
}

int runDiagram(const DiagramOptions& options) {
    const auto read = readCircuit(options.input.file);
    if (!read) return complain(read.error());
    for (const Error& warning : read->warnings) spdlog::warn(warning.oneLine());
    const SymbolStyle style = kStyles.at(options.style);

    ui::SheetPicture picture;
    picture.theme = &ui::theme(kSheetThemes.at(options.theme));
    if (read->bench) {
        const auto inputs = options.input.inputsFor(*read->bench);
        if (!inputs) return complain(inputs.error());
        picture.snapshot = evaluate(read->bench, *inputs);
        picture.sheet = diagramOf(picture.snapshot->layout, style);
        if (read->bench->views) picture.views = read->bench->views->shown;
        ui::Picture board;
        board.layout = picture.snapshot->layout;
        board.snapshot = picture.snapshot;
        board.views = picture.views;
        picture.fullScaleAmpere = ui::fullScaleAmpere(board);
    } else {
        if (!options.input.held.empty())
            return complain("--hold: a circuit without places isn't solved, so nothing can be pressed");
        picture.sheet = sheetOfCircuit(read->netlist, style);
    }

    const Offscreen offscreen;
    const Diagram& diagram = picture.sheet->diagram;
    const ui::DrawnFile drawing{
        read->netlist.title, {diagram.width, diagram.height}, picture.theme->card, [&](QPainter& painter) {
            ui::paintSheet(painter, picture);
        }};
    const auto failed = ui::saveDrawing(drawing, QString::fromStdString(options.output), options.width);
    if (failed) return complain(fmt::format("{}: {}", options.output, failed->toStdString()));
    return picture.snapshot && picture.snapshot->status() == Status::None ? kExitBad : kExitGood;
}

std::string checkDrawingEnding(const std::string& path) {
    if (ui::isDrawingFile(QString::fromStdString(path))) return {};
    return fmt::format("{}: a diagram's name ends in .png, .svg or .pdf", path);
}

}  // namespace

Action declareDiagram(CLI::App& parser) {
    auto options = std::make_shared<DiagramOptions>();
    parser.add_option("FILE", options->input.file, "The bench or circuit, a *.bench.json or *.circuit.json file")
        ->required();
    options->input.declareHold(parser);
    parser.add_option("-o,--output", options->output, "The diagram: PNG, SVG or PDF by the ending")
        ->required()
        ->check(checkDrawingEnding, "a name ending in .png, .svg or .pdf");
    parser.add_option("--style", options->style, "Symbols: iec (IEC 60617) or ieee (IEEE 315)")
        ->check(CLI::IsMember({"iec", "ieee"}).description(""));
    parser.add_option("--theme", options->theme, "day, dark or projector")
        ->check(CLI::IsMember({"day", "dark", "projector"}).description(""));
    constexpr int kNarrowest = 64, kBroadest = 16384;
    parser.add_option("--width", options->width, "Width of PNG and SVG in pixels")
        ->check(CLI::Range(kNarrowest, kBroadest));
    return [options] { return runDiagram(*options); };
}

}  // namespace tiepoint::app
