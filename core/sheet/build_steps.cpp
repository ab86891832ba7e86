#include "core/sheet/build_steps.h"

#include "core/base/capital.h"
#include "core/bench/bodies.h"
#include "core/slips/exchangeable.h"

#include <fmt/format.h>

#include <algorithm>

namespace tiepoint {
namespace {

constexpr std::size_t kMostJumpersAtOnce = 6, kMostPartsAtOnce = 4;
constexpr double kInHand = 1e-6;  ///< heights nearer than this are one

/// Something to put in: a part or a jumper.
struct ToBuild {
    const PlanPart* part = nullptr;
    const PlanJumper* jumper = nullptr;
    double heightMm = 0;
    int order = 0;  ///< flat wires, arcs, parts, arcs over parts
};

/// "W1", "W1 and W2", "W1, W2 and W3".
std::string joinedIds(const std::vector<std::string>& ids) {
    std::string words;
    for (std::size_t i = 0; i < ids.size(); ++i) words += (i == 0 ? "" : i + 1 == ids.size() ? " and " : ", ") + ids[i];
    return words;
}

std::string labelFor(const PartKind& kind, bool several) {
    std::string label = capitalised(kind.label);
    if (several) label += label.ends_with("ch") ? "es" : "s";
    return label;
}

class StepMaker {
public:
    StepMaker(const Bench& bench, const std::vector<PlanPart>& parts, const std::vector<PlanJumper>& jumpers)
        : bench_(bench),
          table_(placeThings(bench)) {
        const auto bodies = bodiesOn(bench, table_);
        for (const PlanJumper& jumper : jumpers) {
            const Jumper& wire = bench.jumpers[static_cast<std::size_t>(jumper.jumper)];
            const int order = wire.flat ? 0 : passesOver(wire, bodies) ? 3 : 1;
            all_.push_back({nullptr, &jumper, 0, order});
        }
        for (const PlanPart& part : parts) {
            if (!standsOnTable(partAt(part.part))) all_.push_back({&part, nullptr, heightOf(part.part, bodies), 2});
        }
        std::ranges::stable_sort(all_, [&](const ToBuild& a, const ToBuild& b) {
            if (a.order != b.order) return a.order < b.order;
            if (std::abs(a.heightMm - b.heightMm) > kInHand) return a.heightMm < b.heightMm;
            return kindOf(a) < kindOf(b);
        });
    }

    std::vector<PlanStep> run(const std::vector<PlanPart>& parts) {
        for (std::size_t from = 0; from < all_.size();) {
            std::size_t to = from + 1;
            const std::size_t most = all_[from].part ? kMostPartsAtOnce : kMostJumpersAtOnce;
            while (to < all_.size() && to - from < most && goTogether(all_[from], all_[to])) ++to;
            steps_.push_back(stepOf(from, to));
            from = to;
        }
        steps_.push_back(lastStep(parts));
        return std::move(steps_);
    }

private:
    const Part& partAt(int index) const { return bench_.parts[static_cast<std::size_t>(index)]; }
    std::string_view kindOf(const ToBuild& each) const {
        return each.part ? std::string_view(partAt(each.part->part).kind->name) : std::string_view();
    }
    bool goTogether(const ToBuild& a, const ToBuild& b) const { return a.order == b.order && kindOf(a) == kindOf(b); }

    static double heightOf(int part, const InOrder<Body>& bodies) {
        double height = 0;
        bodies.each([&](const Body& body) {
            if (body.part == part) height = body.heightMm;
        });
        return height;
    }

    bool passesOver(const Jumper& wire, const InOrder<Body>& bodies) const {
        constexpr int kSamples = 24;
        const Point a = endMm(bench_, table_, wire.ends[0]), b = endMm(bench_, table_, wire.ends[1]);
        for (int i = 1; i < kSamples; ++i) {
            const double t = static_cast<double>(i) / kSamples;
            const Point at{a.x + t * (b.x - a.x), a.y + t * (b.y - a.y)};
            bool covered = false;
            bodies.within(at.x, at.x, [&](const Body& body) { covered = covered || covers(body, at); });
            if (covered) return true;
        }
        return false;
    }

    PlanStep stepOf(std::size_t from, std::size_t to) const {
        PlanStep step;
        for (std::size_t i = from; i < to; ++i) {
            const ToBuild& each = all_[i];
            const std::string& id = each.part ? partAt(each.part->part).id
                                              : bench_.jumpers[static_cast<std::size_t>(each.jumper->jumper)].id;
            step.ids.push_back(id);
            step.lines.push_back(each.part ? fmt::format("{}: {}", id, each.part->place)
                                           : fmt::format("{}: {} to {}", id, each.jumper->from, each.jumper->to));
        }
        const bool several = step.ids.size() > 1;
        step.title = all_[from].part ? partTitle(all_[from], several, joinedIds(step.ids))
                                     : jumperTitle(all_[from], several, joinedIds(step.ids));
        return step;
    }

    static std::string jumperTitle(const ToBuild& first, bool several, const std::string& ids) {
        return fmt::format("{} {}{}", several ? "Jumpers" : "Jumper", ids,
                           first.order == 0   ? ", flat on the board"
                           : first.order == 3 ? ", over the parts"
                                              : "");
    }
    std::string partTitle(const ToBuild& first, bool several, const std::string& ids) const {
        const PartKind& kind = *partAt(first.part->part).kind;
        std::string title = fmt::format("{} {}", labelFor(kind, several), ids);
        if (kind.leads.size() != 2) return title;
        if (!hasDirection(kind)) return title + ", either way round";
        const int cathode = kind.leadIndex("cathode");
        const auto hole =
            cathode < 0 ? std::nullopt : partAt(first.part->part).leads[static_cast<std::size_t>(cathode)];
        if (several || !hole) return title + ", the right way round";
        return title + fmt::format(", short leg (cathode) in {}", placeInWords(bench_, *hole));
    }

    PlanStep lastStep(const std::vector<PlanPart>& parts) const {
        PlanStep step;
        for (const PlanPart& part : parts) {
            const Part& supply = partAt(part.part);
            if (!standsOnTable(supply)) continue;
            step.ids.push_back(supply.id);
            step.lines.push_back(fmt::format("{}: {}", supply.id, part.place));
        }
        step.title = step.ids.empty() ? "There is no supply yet."
                                      : "The supply stays off. Its leads last. Check, then switch on.";
        return step;
    }

    const Bench& bench_;
    Table table_;
    std::vector<ToBuild> all_;
    std::vector<PlanStep> steps_;
};

}  // namespace

std::vector<PlanStep> stepsOf(const Bench& bench, const std::vector<PlanPart>& parts,
                              const std::vector<PlanJumper>& jumpers) {
    return StepMaker(bench, parts, jumpers).run(parts);
}

}  // namespace tiepoint
