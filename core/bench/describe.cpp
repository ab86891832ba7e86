#include "core/bench/describe.h"

#include "core/base/quantity.h"

#include <fmt/format.h>

#include <cctype>

namespace tiepoint {
namespace {

/// The index of the value that names the part, or -1: a choice says more than a number. What a switch or an instrument is set to doesn't name it.
int namingValue(const PartKind& kind) {
    if (kind.family == "Switch" || kind.family == "Meter") return -1;
    int number = -1;
    for (int i = 0; i < static_cast<int>(kind.values.size()); ++i) {
        const ValueSpec& spec = kind.values[i];
        if (spec.type == ValueType::Choice && !spec.lookAlike) return i;
        if (number < 0 && (!spec.series.empty() || !spec.allowed.empty())) number = i;
    }
    return number;
}

struct MeasurandWords {
    const Bench& bench;

    std::string name(const Hole& hole) const { return bench.boards.size() == 1 ? shortName(hole) : toString(hole); }

    std::string operator()(const VoltsAt& at) const { return "volts at " + name(at.hole); }
    std::string operator()(const VoltsBetween& between) const {
        return fmt::format("volts of {} above {}", name(between.first), name(between.second));
    }
    std::string operator()(const AmperesIn& in) const {
        return in.lead.empty() ? "amperes in " + in.id : fmt::format("amperes in {}, lead {}", in.id, in.lead);
    }
    std::string operator()(const WattsOf& of) const { return "watts of " + of.part; }
};

}  // namespace

std::string describeSetting(const ValueSpec& spec, double value) {
    switch (spec.type) {
        case ValueType::Choice:
            return spec.choices.at(static_cast<std::size_t>(value)).label;
        case ValueType::Switch:
            return value != 0 ? "yes" : "no";
        case ValueType::Number:
            break;
    }
    return formatSetting(value, spec.unit);
}

std::string describeKind(const Part& part) {
    const int naming = namingValue(*part.kind);
    if (naming < 0) return part.kind->label;
    return fmt::format("{} {}", describeSetting(part.kind->values[naming], part.value(naming)), part.kind->label);
}

std::string describePart(const Part& part) { return fmt::format("{}, {}", part.id, describeKind(part)); }

std::string measurandInWords(const Bench& bench, const Measurand& measurand) {
    return std::visit(MeasurandWords{bench}, measurand);
}

std::string describeBoard(const Board& board) {
    std::string name(board.kind->name);
    name.front() = static_cast<char>(std::toupper(static_cast<unsigned char>(name.front())));
    return fmt::format("{} board, {} tie points", name, board.kind->tiePoints);
}

std::string wireInWords(const Bench& bench, const Table& table, const Jumper& jumper) {
    constexpr double kInCentimetresMm = 100, kMmInCm = 10;
    const double mm = wireToCutMm(bench, table, jumper);
    const std::string length =
        mm < kInCentimetresMm ? fmt::format("{:.0f} mm", mm) : fmt::format("{:.1f} cm", mm / kMmInCm);
    return fmt::format("Cut {}: {:.0f} mm bare at each end.", length, kBareEndMm);
}

}  // namespace tiepoint
