#include "core/bench/measurable.h"

#include <fmt/format.h>

namespace tiepoint {
namespace {

template <class... Cases>
struct Either : Cases... {
    using Cases::operator()...;
};
template <class... Cases>
Either(Cases...) -> Either<Cases...>;

}  // namespace

std::string_view quantityOf(const Measurand& measurand) {
    return std::visit(Either{[](const VoltsAt&) { return std::string_view("volts"); },
                             [](const VoltsBetween&) { return std::string_view("volts"); },
                             [](const AmperesIn&) { return std::string_view("amperes"); },
                             [](const WattsOf&) { return std::string_view("watts"); }},
                      measurand);
}

std::string_view thingOf(const Measurand& measurand) {
    return std::visit(Either{[](const VoltsAt&) { return std::string_view(); },
                             [](const VoltsBetween&) { return std::string_view(); },
                             [](const AmperesIn& in) { return std::string_view(in.id); },
                             [](const WattsOf& of) { return std::string_view(of.part); }},
                      measurand);
}

Measurable::Measurable(const Bench& bench) {
    for (const Board& board : bench.boards) boards_.emplace(board.id, &board);
    for (const Part& part : bench.parts) parts_.emplace(part.id, &part);
    for (const Jumper& jumper : bench.jumpers) jumpers_.insert(jumper.id);
}

std::optional<std::string> Measurable::refusalOf(const Hole& hole) const {
    const auto board = boards_.find(hole.board);
    if (board != boards_.end() && board->second->kind->has(hole.line, hole.number)) return {};
    return fmt::format("there is no hole {}", toString(hole));
}

std::optional<std::string> Measurable::refusal(const Measurand& measurand) const {
    using Refusal = std::optional<std::string>;
    return std::visit(Either{[&](const VoltsAt& at) { return refusalOf(at.hole); },
                             [&](const VoltsBetween& between) -> Refusal {
                                 if (between.first == between.second)
                                     return "between a hole and itself there are no volts";
                                 const auto first = refusalOf(between.first);
                                 return first ? first : refusalOf(between.second);
                             },
                             [&](const AmperesIn& in) -> Refusal {
                                 if (in.lead.empty()) {
                                     if (jumpers_.contains(in.id)) return {};
                                     return fmt::format("there is no jumper {}", in.id);
                                 }
                                 const auto part = parts_.find(in.id);
                                 if (part == parts_.end()) return fmt::format("there is no part {}", in.id);
                                 if (part->second->kind->leadIndex(in.lead) >= 0) return {};
                                 return fmt::format("{} has no lead {}", in.id, in.lead);
                             },
                             [&](const WattsOf& of) -> Refusal {
                                 if (parts_.contains(of.part)) return {};
                                 return fmt::format("there is no part {}", of.part);
                             }},
                      measurand);
}

}  // namespace tiepoint
