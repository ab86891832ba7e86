#include "app/bench_input.h"

#include "core/course/lesson_file.h"

#include <fmt/format.h>
#include <spdlog/spdlog.h>

#include <algorithm>

namespace tiepoint::app {
namespace {

bool canBePressed(const PartKind& kind) {
    return std::any_of(kind.model.begin(), kind.model.end(), [](const ElementSpec& spec) { return spec.whenHeld; });
}

}  // namespace

void BenchInput::declareFile(CLI::App& parser) {
    parser.add_option("FILE", file, "The bench, a *.bench.json file")->required();
}

void BenchInput::declareHold(CLI::App& parser) {
    parser.add_option("--hold", held, "Ids of the buttons to press: S1,S2")->delimiter(',')->allow_extra_args(false);
}

Result<std::shared_ptr<const Bench>> BenchInput::read() const {
    auto read = readTableFile(file);
    if (!read) return read.error();
    for (const Error& warning : read->warnings) spdlog::warn(warning.oneLine());
    spdlog::debug("{}: {} boards, {} parts, {} jumpers", file, read->bench.boards.size(), read->bench.parts.size(),
                  read->bench.jumpers.size());
    return std::make_shared<const Bench>(std::move(read).value().bench);
}

Result<Inputs> BenchInput::inputsFor(const Bench& bench) const {
    Inputs inputs;
    for (const std::string& id : held) {
        const Part* part = bench.findPart(id);
        if (part == nullptr) {
            return Error{
                ErrorKind::Reference, fmt::format("--hold {}: the bench has no part of that id", id), {}, file};
        }
        if (!canBePressed(*part->kind)) {
            return Error{
                ErrorKind::Reference, fmt::format("--hold {}: a {} can't be pressed", id, part->kind->label), {}, file};
        }
        inputs.held.insert(id);
    }
    return inputs;
}

}  // namespace tiepoint::app
