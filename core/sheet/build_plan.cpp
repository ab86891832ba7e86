#include "core/sheet/build_plan.h"

#include "core/base/csv.h"
#include "core/base/quantity.h"
#include "core/behaviour/behaviour.h"
#include "core/bench/describe.h"
#include "core/bench/jumper_routes.h"
#include "core/bench/natural_order.h"
#include "core/edit/holes.h"
#include "core/parts/preferred.h"
#include "core/sheet/build_steps.h"
#include "core/sheet/kit_bench.h"
#include "core/sheet/measured_places.h"
#include "core/slips/exchangeable.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <map>

namespace tiepoint {
namespace {

/// In the order of jumperColours(): red black blue yellow green violet orange white.
constexpr std::string_view kColourLetters = "rkbygvow";

/// What a resistor's bands say, or nothing for other parts and values that no bands say.
std::string bandWords(const Part& part) {
    const int ohm = resistanceValue(*part.kind), tolerance = part.kind->valueIndex("tolerance");
    if (ohm < 0) return {};
    const auto bands = colourBands(part.value(ohm), tolerance < 0 ? 0.05 : part.value(tolerance));
    if (!bands) return {};
    std::string words;
    for (const BandColour band : *bands) words += (words.empty() ? "" : ", ") + std::string(bandName(band));
    return words;
}

/// `limit`: a supply's own too. On a learner's table only what is set counts, and the check before power says how low that is.
std::string settingsInWords(const Part& part, bool limit) {
    std::string words;
    for (int i = 0; i < std::ssize(part.values); ++i) {
        const ValueSpec& spec = part.kind->values[static_cast<std::size_t>(i)];
        if (!limit && i == part.kind->valueIndex("currentLimit")) continue;
        if (!spec.sought && spec.series.empty() && spec.type != ValueType::Choice && spec.allowed.empty()) continue;
        words += (words.empty() ? "" : ", ") + describeSetting(spec, part.value(i));
    }
    return words;
}

std::string signsOf(const Part& part) {
    std::string words = bandWords(part);
    if (!words.empty()) return words;
    if (part.kind->isSupply) return settingsInWords(part, false);
    if (hasDirection(*part.kind) && part.kind->leads.size() == 2) {
        const LeadSpec& last = part.kind->leads.back();
        return fmt::format("{}: {}", last.name, last.description);
    }
    return part.kind->leads.size() > 2 && part.kind->package->reach == Reach::Rigid ? "push it straight in" : "";
}

std::string nameOfPart(const Part& part) {
    std::string name = describeKind(part);
    if (!part.cap.empty()) name += ", cap " + part.cap;
    return name;
}

/// A supply's leads are known by their colours, and a sign at a line's end is easily overlooked.
std::string leadOnPaper(const std::string& name) {
    if (name == "+") return "red lead (plus):";
    return name == "-" ? "black lead (minus):" : name;
}

/// Holes of a part in words, legs that do the same work together.
std::string holesOfPart(const Bench& bench, const Part& part) {
    const PartKind& kind = *part.kind;
    const bool plain = !hasDirection(kind) && kind.leads.size() == 2;
    std::string words;
    std::vector<char> told(part.leads.size(), 0);
    for (std::size_t lead = 0; lead < part.leads.size(); ++lead) {
        if (told[lead] || kind.leads[lead].socket) continue;
        std::string holes;
        const auto add = [&](std::size_t each) {
            told[each] = 1;
            const auto& hole = part.leads[each];
            holes += (holes.empty() ? "" : " ") + (hole ? placeInWords(bench, *hole) : std::string("hangs free"));
        };
        add(lead);
        for (const auto& group : kind.joined) {
            if (std::ranges::find(group, static_cast<int>(lead)) == group.end()) continue;
            for (const int other : group)
                if (!told[static_cast<std::size_t>(other)]) add(static_cast<std::size_t>(other));
        }
        const bool named = !plain && kind.joined.empty();
        words += (words.empty() ? "" : plain || !kind.joined.empty() ? " and " : ", ");
        words += named ? fmt::format("{} {}", leadOnPaper(kind.leads[lead].name), holes) : holes;
    }
    if (plain && !words.empty()) words += ", either way round";
    return words.empty() ? "beside the board" : words;
}

std::vector<PlanPart> planParts(const Bench& bench) {
    std::vector<PlanPart> parts;
    for (const bool onTable : {false, true}) {
        std::vector<PlanPart> some;
        for (int p = 0; p < std::ssize(bench.parts); ++p) {
            const Part& part = bench.parts[static_cast<std::size_t>(p)];
            if (standsOnTable(part) != onTable) continue;
            some.push_back({p, nameOfPart(part), signsOf(part), holesOfPart(bench, part)});
        }
        std::ranges::stable_sort(some, [&](const PlanPart& a, const PlanPart& b) {
            return naturalLess(bench.parts[static_cast<std::size_t>(a.part)].id,
                               bench.parts[static_cast<std::size_t>(b.part)].id);
        });
        parts.insert(parts.end(), some.begin(), some.end());
    }
    return parts;
}

std::string endOnPaper(const Bench& bench, const JumperEnd& end) {
    if (const Hole* hole = std::get_if<Hole>(&end)) return placeInWords(bench, *hole);
    const Socket& socket = std::get<Socket>(end);
    const Part& part = *bench.findPart(socket.part);
    return fmt::format("{} of {}", part.kind->leads[static_cast<std::size_t>(socket.lead)].name, part.id);
}

std::vector<PlanJumper> planJumpers(const Bench& bench) {
    const Table table = arrange(bench);
    std::vector<PlanJumper> jumpers;
    for (int j = 0; j < std::ssize(bench.jumpers); ++j) {
        const Jumper& jumper = bench.jumpers[static_cast<std::size_t>(j)];
        const Point a = endMm(bench, table, jumper.ends[0]), b = endMm(bench, table, jumper.ends[1]);
        jumpers.push_back({j, kColourLetters[static_cast<std::size_t>(jumper.colour)],
                           endOnPaper(bench, jumper.ends[0]), endOnPaper(bench, jumper.ends[1]),
                           static_cast<int>(std::lround(distance(a, b))),
                           static_cast<int>(std::ceil(wireToCutMm(bench, table, jumper)))});
    }
    std::ranges::stable_sort(jumpers, [&](const PlanJumper& a, const PlanJumper& b) {
        return naturalLess(bench.jumpers[static_cast<std::size_t>(a.jumper)].id,
                           bench.jumpers[static_cast<std::size_t>(b.jumper)].id);
    });
    return jumpers;
}

/// The most that all supplies together give in any position; A.
double largestDraw(const Layout& layout) {
    const auto now = evaluate(layout.bench);
    if (now->status() == Status::None) return 0;
    const Behaviour behaviour = behaviourAround(now);
    double most = 0;
    for (const BehaviourRow& row : behaviour.rows) {
        for (std::size_t p = 0; p < row.partAmpere.size(); ++p)
            if (layout.bench->parts[p].kind->isSupply) most = std::max(most, row.partAmpere[p]);
    }
    return most;
}

/// The limit to set: 50 mA for a learner's bench, more only where the bench takes more.
std::string limitInWords(double drawAmpere) {
    constexpr double kReserve = 1.25;
    for (const double limit : {0.05, 0.1, 0.2, 0.5, 1.0, 2.0, 5.0})
        if (drawAmpere * kReserve <= limit) return formatSetting(limit, "A");
    return formatQuantity(drawAmpere * kReserve, "A", 2);
}

bool hasLimit(const Bench& bench) {
    return std::ranges::any_of(bench.parts, [](const Part& part) {
        return part.kind->isSupply && part.kind->valueIndex("currentLimit") >= 0;
    });
}

bool needsResistors(const Bench& bench) {
    return std::ranges::any_of(bench.parts, [](const Part& part) { return part.kind->needsResistor; });
}

std::vector<std::string> checksBefore(const BuildPlan& plan) {
    const Bench& bench = plan.bench();
    std::vector<std::string> checks{
        "My teacher has seen my board. The person in charge and local rules come first.",
        "Extra-low voltage only, from this supply or cells. Never the mains.",
        "Plus and minus are where the plan has them. Nothing joins plus straight to minus.",
    };
    if (needsResistors(bench))
        checks.emplace_back("Every LED has its resistor, and its short leg (cathode) where the plan says.");
    if (!plan.jumpers.empty())
        checks.emplace_back("Eye protection is on while wire is cut: bits fly. Bare ends go down to the insulation.");
    if (hasLimit(bench))
        checks.push_back(
            fmt::format("The supply's current limit is set to {}.", limitInWords(largestDraw(*plan.layout))));
    checks.emplace_back("Don't stare into a lit LED.");
    return checks;
}

std::vector<std::string> checksAfter(const BuildPlan& plan) {
    std::vector<std::string> checks{
        "Nothing gets hot, nothing smells. A hot part is a fault: switch off, don't touch."};
    if (hasLimit(plan.bench()))
        checks.emplace_back("The supply's display stays below its limit. At the limit: switch off and look again.");
    checks.emplace_back("Every button does what I predicted. If not: switch off, then look, from plus to minus.");
    return checks;
}

}  // namespace

std::string placeInWords(const Bench& bench, const Hole& hole) {
    if (!isRail(hole.line)) return holeName(bench, hole);
    const Board& board = *bench.findBoard(hole.board);
    const bool isPlus = hole.line == Line::TopPlus || hole.line == Line::BottomPlus;
    const bool isTop = hole.line == Line::TopPlus || hole.line == Line::TopMinus;
    const std::string of = bench.boards.size() == 1 ? "" : " of board " + board.id;
    return fmt::format("{} rail {} column {}{}", isPlus ? "plus" : "minus", isTop ? "above" : "below",
                       board.kind->railColumn(hole.number), of);
}

BuildPlan planOf(std::shared_ptr<const Bench> bench) {
    BuildPlan plan;
    plan.layout = buildLayout(std::move(bench));
    plan.parts = planParts(plan.bench());
    plan.jumpers = planJumpers(plan.bench());
    plan.steps = stepsOf(plan.bench(), plan.parts, plan.jumpers);
    plan.beforePower = checksBefore(plan);
    plan.afterPower = checksAfter(plan);
    plan.blackTip = blackTipOf(*plan.layout);
    plan.positions = measuredPositions(plan.layout);
    return plan;
}

BuildPlan planOf(const std::shared_ptr<const Bench>& bench, const Kit& kit) {
    const BenchFit fit = benchForKit(bench, kit);
    BuildPlan plan = planOf(fit.bench);
    plan.kitTitle = kit.title;
    for (const KitGap& gap : fit.gaps) {
        plan.kitGaps.push_back(gapInWords(gap));
        plan.kitServes = plan.kitServes && !gap.instead.empty();
    }
    return plan;
}

std::vector<Total> totalsOf(const BuildPlan& plan, int copies, double sparePercent) {
    const Bench& bench = plan.bench();
    std::vector<Total> totals;
    const auto add = [&](const std::string& name, const std::string& id, double wireMm) {
        auto found = std::ranges::find(totals, name, &Total::name);
        if (found == totals.end()) found = totals.insert(totals.end(), Total{name, "", 0, 0, 0});
        found->ids += (found->ids.empty() ? "" : ", ") + id;
        found->each += 1;
        found->wireMm += wireMm;
    };
    for (const PlanPart& part : plan.parts) {
        const Part& each = bench.parts[static_cast<std::size_t>(part.part)];
        std::string name = describeKind(each);
        if (each.kind->isSupply) name += " (" + settingsInWords(each, true) + ")";
        add(name, each.id, 0);
    }
    for (const PlanJumper& jumper : plan.jumpers) {
        const Jumper& each = bench.jumpers[static_cast<std::size_t>(jumper.jumper)];
        add(fmt::format("jumper, {}", jumperColours()[static_cast<std::size_t>(each.colour)].name), each.id,
            jumper.cutMm);
    }
    for (const Board& board : bench.boards) add(describeBoard(board), board.id, 0);
    constexpr double kPercent = 100, kRounding = 1e-9;
    const double factor = copies * (1 + sparePercent / kPercent);
    for (Total& total : totals) {
        total.all = static_cast<int>(std::ceil(total.each * factor - kRounding));
        total.wireMm *= factor;
    }
    return totals;
}

std::string totalsAsCsv(const std::vector<Total>& totals) {
    std::string csv = csvLine({"part", "ids", "each", "total", "wireMm"});
    for (const Total& total : totals)
        csv += csvLine({csvText(total.name), csvText(total.ids), std::to_string(total.each), std::to_string(total.all),
                        total.wireMm > 0 ? fmt::format("{:.0f}", total.wireMm) : ""});
    return csv;
}

}  // namespace tiepoint
