// Supply and board are given and taken as they are. What the kit lacks is replaced group by group, each group by the nearest value that
// leaves every claim standing.

#include "core/course/fit.h"

#include "core/base/quantity.h"
#include "core/bench/resolve.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <functional>

namespace tiepoint {
namespace {

using ChangePart = std::function<void(Part&)>;

void changeIn(std::vector<Operation>& operations, const ChangePart& change,
              const std::function<void(Board&)>& changeBoard) {
    for (Operation& operation : operations) {
        if (auto* add = std::get_if<AddPart>(&operation)) change(add->part);
        if (auto* replace = std::get_if<ReplacePart>(&operation)) change(replace->part);
        if (auto* add = std::get_if<AddBoard>(&operation)) changeBoard(add->board);
        if (auto* replace = std::get_if<ReplaceBoard>(&operation)) changeBoard(replace->board);
    }
}

/// The lesson with every part and board changed that way.
Result<Lesson> changed(
    const Lesson& lesson, const ChangePart& change, const std::function<void(Board&)>& changeBoard = [](Board&) {}) {
    Lesson other = lesson;
    Bench start = *lesson.start;
    for (Part& part : start.parts) change(part);
    for (Board& board : start.boards) changeBoard(board);
    other.start = std::make_shared<const Bench>(std::move(start));
    for (LessonStep& step : other.steps) {
        changeIn(step.edits, change, changeBoard);
        changeIn(step.oppositeEdits, change, changeBoard);
    }
    return rebuilt(std::move(other));
}

/// How far another value of the same kind is: in decades, or none.
double distanceOf(const Part& wanted, const Part& other) {
    const int ohms = resistanceValue(*wanted.kind);
    return ohms < 0 ? 1 : std::abs(std::log10(other.value(ohms) / wanted.value(ohms)));
}

std::string firstComplaint(const CheckedLesson& checked) {
    for (std::size_t i = 0; i < checked.steps.size(); ++i) {
        for (const CheckedClaim& claim : checked.steps[i].claims) {
            if (!claim.good()) return fmt::format("step {}: {}", i + 1, complaintAbout(claim));
        }
    }
    return {};
}

/// Why a changed lesson won't do; empty: it will.
using LessonJudge = std::function<std::string(const Lesson&)>;

class Fitting {
public:
    Fitting(const Lesson& lesson, const Kit& kit, LessonJudge judge) : kit_(kit), judge_(std::move(judge)) {
        fit_.fitted = lesson;
    }

    KitFit run() {
        takeBoard();
        takeSupply();
        for (const NeededPart& needed : partsNeeded(*fit_.fitted)) {
            if (!isFromSupply(*needed.kind) && needed.kind->family != "Meter") takePart(needed);
        }
        takeMeters();
        const int jumpers = jumpersNeeded(*fit_.fitted);
        if (kit_.jumpers >= 0 && jumpers > kit_.jumpers)
            fit_.gaps.push_back({"jumpers", {}, jumpers, kit_.jumpers, "there are too few"});
        return std::move(fit_);
    }

private:
    /// Takes the changed lesson if its edits and claims bear it; says why it can't.
    std::string attempt(const Result<Lesson>& other) {
        if (!other) return other.error().message;
        std::string why = judge_(*other);
        if (why.empty()) fit_.fitted = *other;
        return why;
    }

    void takeBoard() {
        if (!kit_.board) return;
        bool differs = false;
        for (int step = -1; step < fit_.fitted->stepCount(); ++step) {
            for (const Board& board : fit_.fitted->benchAt(step)->boards)
                differs =
                    differs || board.kind != kit_.board || board.rails != kit_.rails || board.labels != kit_.labels;
        }
        if (!differs) return;
        const auto take = [&](Board& board) {
            board.kind = kit_.board;
            board.rails = kit_.rails;
            board.labels = kit_.labels;
        };
        const std::string wanted = fmt::format("{} board", fit_.fitted->start->boards.front().kind->name);
        const std::string have =
            fmt::format("{} board{}", kit_.board->name, kit_.rails == Rails::Split ? " with split rails" : "");
        const std::string why = attempt(changed(
            *fit_.fitted, [](Part&) {}, take));
        fit_.gaps.push_back({wanted, why.empty() ? have : std::string(), 1, 1, why});
    }

    /// Whether the kit's supply does its work: a cell that light drives may be a part of the kit itself.
    bool isFromSupply(const PartKind& kind) const {
        return kind.isSupply &&
               std::ranges::none_of(kit_.parts, [&](const KitPart& own) { return own.part.kind == &kind; });
    }

    void takeSupply() {
        if (!kit_.supply) return;
        const Part& have = *kit_.supply;
        for (const NeededPart& needed : partsNeeded(*fit_.fitted)) {
            if (!isFromSupply(*needed.kind) || (needed.kind == have.kind && needed.example.values == have.values))
                continue;
            std::string why = "its leads differ";
            const bool alike =
                std::ranges::equal(needed.kind->leads, have.kind->leads, {}, &LeadSpec::name, &LeadSpec::name);
            const auto take = [&](Part& part) {
                if (part.kind != needed.kind || part.values != needed.example.values) return;
                const bool sameKind = part.kind == have.kind;
                part.values = have.values;
                part.kind = have.kind;
                if (!sameKind) part.state.assign(have.state.size(), std::nullopt);
            };
            if (alike) why = attempt(changed(*fit_.fitted, take));
            fit_.gaps.push_back({askedFor(needed.example), why.empty() ? askedFor(have) : std::string(), 1, 1, why});
        }
    }

    void takePart(const NeededPart& needed) {
        int there = 0;
        std::vector<const KitPart*> others;
        for (const KitPart& each : kit_.parts) {
            if (isSameInDrawer(each.part, needed.example))
                there += each.count;
            else if (each.part.kind == needed.kind && each.count >= needed.count)
                others.push_back(&each);
        }
        if (there >= needed.count) return;
        std::ranges::stable_sort(others, {},
                                 [&](const KitPart* other) { return distanceOf(needed.example, other->part); });
        KitGap gap{askedFor(needed.example), {}, needed.count, there, "nothing of its kind is there"};
        constexpr std::size_t kMostTries = 12;
        for (std::size_t i = 0; i < std::min(others.size(), kMostTries) && gap.instead.empty(); ++i) {
            const auto take = [&](Part& part) {
                if (isSameInDrawer(part, needed.example)) part.values = others[i]->part.values;
            };
            const std::string why = attempt(changed(*fit_.fitted, take));
            if (why.empty()) gap.instead = askedFor(others[i]->part);
            gap.why = why.empty() ? std::string() : fmt::format("with a {}, {}", askedFor(others[i]->part), why);
        }
        fit_.gaps.push_back(std::move(gap));
    }

    void takeMeters() {
        int most = 0;
        for (int step = -1; step < fit_.fitted->stepCount(); ++step) {
            const auto& parts = fit_.fitted->benchAt(step)->parts;
            most = std::max(most, static_cast<int>(std::ranges::count_if(
                                      parts, [](const Part& p) { return p.kind->family == "Meter"; })));
        }
        if (most > kit_.meters) fit_.gaps.push_back({"meters", {}, most, kit_.meters, "there are too few"});
    }

    const Kit& kit_;
    LessonJudge judge_;
    KitFit fit_;
};

}  // namespace

bool KitFit::fits() const {
    return fitted && checked.good() &&
           std::ranges::none_of(gaps, [](const KitGap& gap) { return gap.instead.empty(); });
}

KitFit fitLesson(const Lesson& lesson, const Kit& kit) {
    const auto judge = [](const Lesson& other) {
        const CheckedLesson checked = checkLesson(other);
        return checked.good() ? std::string() : firstComplaint(checked);
    };
    KitFit fit = Fitting(lesson, kit, judge).run();
    fit.checked = checkLesson(*fit.fitted);
    return fit;
}

BenchFit fitBench(const std::shared_ptr<const Bench>& bench, const Kit& kit, const BenchJudge& judge) {
    Lesson alone;  // a bench is a lesson without steps
    alone.start = bench;
    KitFit fit = Fitting(alone, kit, [&](const Lesson& other) { return judge(*other.start); }).run();
    return {fit.fitted->start, std::move(fit.gaps)};
}

std::string gapInWords(const KitGap& gap) {
    if (!gap.instead.empty()) return fmt::format("{} for {}", gap.instead, gap.wanted);
    const std::string counted =
        gap.there > 0 ? fmt::format("{} ({} needed, {} there)", gap.wanted, gap.needed, gap.there) : gap.wanted;
    return fmt::format("nothing serves for {}: {}", counted, gap.why);
}

std::string askedFor(const Part& part) {
    std::string words;
    for (int value = 0; value < static_cast<int>(part.values.size()); ++value) {
        const ValueSpec& spec = part.kind->values[value];
        if (spec.type == ValueType::Choice)
            words += spec.choices[static_cast<std::size_t>(part.value(value))].label + ' ';
        else if (tellsApart(spec))
            words += formatSetting(part.value(value), spec.unit) + ' ';
    }
    return words + part.kind->label;
}

Result<Lesson> rebuilt(Lesson lesson) {
    std::shared_ptr<const Bench> bench = lesson.start;
    for (std::size_t i = 0; i < lesson.steps.size(); ++i) {
        LessonStep& step = lesson.steps[i];
        const auto failed = [&](Error error) {
            error.message = fmt::format("step {}: {}", i + 1, error.message);
            return error;
        };
        auto applied = apply(*bench, {{}, step.edits});
        if (!applied) return failed(applied.error());
        bench = step.bench = std::make_shared<const Bench>(std::move(applied).value().bench);
        if (auto tried = situationOf(bench, step.tried); !tried) return failed(tried.error());
        if (!step.opposite) continue;
        auto opposite = apply(*bench, {{}, step.oppositeEdits});
        if (!opposite) return failed(opposite.error());
        auto situation =
            situationOf(std::make_shared<const Bench>(std::move(opposite).value().bench), step.oppositeTried);
        if (!situation) return failed(situation.error());
        step.opposite = std::move(situation).value();
    }
    return lesson;
}

}  // namespace tiepoint
