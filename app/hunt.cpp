// tiepoint hunt TARGET: benches with a hidden slip each, and their key; or cards with harmless slips for real boards.

#include "core/hunt/hunt.h"

#include "app/bench_input.h"
#include "app/commands.h"
#include "app/json_writer.h"
#include "app/offscreen.h"
#include "app/output.h"
#include "core/base/file_io.h"
#include "core/base/printable.h"
#include "core/bench/bench_file.h"
#include "core/hunt/cards.h"
#include "ui/export/hunt_cards.h"

#include <fmt/format.h>

#include <filesystem>

namespace tiepoint::app {
namespace {

constexpr int kMostHunts = 999;

struct HuntOptions {
    BenchInput input;
    int count = 1;
    int cards = 0;
    std::uint64_t seed = 1;
    std::string output;
    std::string paper = "a4";
};

std::string fileNameOf(int number, int count) {
    return fmt::format("hunt-{:0{}}.bench.json", number, count > 99 ? 3 : 2);
}

void writeHunt(JsonWriter& json, const Bench& target, const Plant& plant, const std::string& file) {
    json.beginObject().field("file", file).field("seen", plant.seen);
    json.field("kind", plant.slip.kind->name).texts("things", plant.things).field("fault", plant.fault->label);
    json.field("told", slipInWords(target, plant.slip)).field("mend", mendInWords(target, plant.slip));
    json.field("hidden", plant.hidden).field("readings", plant.readings).endObject();
}

std::string keyOf(const HuntOptions& options, const Bench& target, const HuntSet& set) {
    JsonWriter json;
    json.beginObject().field("format", "tiepoint-hunt-key").field("version", 1).field("title", target.title);
    json.field("seed", static_cast<double>(options.seed)).field("readings", set.readings);
    json.field("different", set.different).key("hunts").beginArray();
    for (int n = 0; n < options.count; ++n)
        writeHunt(json, target, set.hunts[static_cast<std::size_t>(n)], fileNameOf(n + 1, options.count));
    json.endArray().endObject();
    return json.take();
}

/// The path of a failure in front of its reason.
Error inFile(Error error, const std::filesystem::path& path) {
    error.file = path.string();
    return error;
}

int writeSet(const HuntOptions& options, const std::shared_ptr<const Bench>& target) {
    const auto set = makeHunts(target, options.count, options.seed);
    if (!set) return complain(inFile(set.error(), options.input.file));
    const std::filesystem::path folder = options.output;
    std::error_code failed;
    std::filesystem::create_directories(folder, failed);
    if (failed) return complain(fmt::format("{}: {}", options.output, failed.message()));
    const HuntGround ground(target);
    for (int n = 0; n < options.count; ++n) {
        Bench bench = huntBench(ground, set->hunts[static_cast<std::size_t>(n)]);
        const auto path = folder / fileNameOf(n + 1, options.count);
        if (const auto written = writeBenchFile(bench, path); !written) return complain(inFile(written.error(), path));
    }
    const auto written = writeFileAtomically(folder / "key.json", keyOf(options, *target, *set));
    if (!written) return complain(inFile(written.error(), folder / "key.json"));
    print(fmt::format("{}: {} hunts, {} of them different, each found by {} reading{} at the best; the key is {}\n",
                      printable(target->title), options.count, set->different, set->readings,
                      set->readings == 1 ? "" : "s", (folder / "key.json").string()));
    return kExitGood;
}

int writeCards(const HuntOptions& options, const std::shared_ptr<const Bench>& target) {
    const auto slips = cardSlips(target, options.cards, options.seed);
    if (!slips) return complain(inFile(slips.error(), options.input.file));
    std::vector<ui::HuntCard> cards;
    for (const CardSlip& slip : *slips) {
        cards.push_back({QString::fromStdString(slip.doWords), QString::fromStdString(slip.seenWords),
                         QString::fromStdString(slip.undoWords)});
    }
    const Offscreen offscreen;
    const auto failed =
        ui::saveHuntCards(QString::fromStdString(target->title), cards, QString::fromStdString(options.output),
                          options.paper == "a4" ? ui::Paper::A4 : ui::Paper::Letter);
    if (failed) return complain(fmt::format("{}: {}", options.output, failed->toStdString()));
    return kExitGood;
}

int runHunt(const HuntOptions& options) {
    const auto bench = options.input.read();
    if (!bench) return complain(bench.error());
    return options.cards > 0 ? writeCards(options, *bench) : writeSet(options, *bench);
}

}  // namespace

Action declareHunt(CLI::App& parser) {
    auto options = std::make_shared<HuntOptions>();
    options->input.declareFile(parser);
    CLI::Option* count =
        parser.add_option("--count", options->count, "How many hunts")->check(CLI::Range(1, kMostHunts));
    parser.add_option("--cards", options->cards, "Cards for real boards instead: how many")
        ->check(CLI::Range(1, kMostHunts))
        ->excludes(count);
    parser.add_option("--seed", options->seed, "A number; the same one gives the same hunts")
        ->check(CLI::Range(std::uint64_t{0}, std::uint64_t{1} << 53));
    parser.add_option("--paper", options->paper, "Sheets of the cards: a4 or letter")
        ->check(CLI::IsMember({"a4", "letter"}).description(""));
    parser.add_option("-o,--output", options->output, "The folder of the hunts, or the PDF of the cards")->required();
    return [options] { return runHunt(*options); };
}

}  // namespace tiepoint::app
