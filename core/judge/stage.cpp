#include "core/judge/stage.h"

#include "core/base/stopping.h"
#include "core/behaviour/position_plan.h"

#include <algorithm>
#include <functional>
#include <iterator>
#include <numeric>

namespace tiepoint {
namespace {

double combinationsOf(const std::vector<Throw>& switches) {
    double count = 1;
    for (const Throw& each : switches) count *= each.values;
    return count;
}

template <class Solver>
void readScene(const Solver& solver, Status status, const Play& play, Scene& scene) {
    scene.status = status;
    const Bench& bench = *play.layout->bench;
    scene.elementAmpere.assign(static_cast<std::size_t>(play.firstElement.back()), 0);
    scene.leadVolt.assign(static_cast<std::size_t>(play.layout->leadCount()), 0);
    if (status != Status::Solved) return;
    for (int part = 0; part < static_cast<int>(bench.parts.size()); ++part) {
        for (int e = play.firstElement[part]; e < play.firstElement[part + 1]; ++e)
            scene.elementAmpere[e] = solver.ampere(part, e - play.firstElement[part]);
        for (int lead = play.layout->firstLead[part]; lead < play.layout->firstLead[part + 1]; ++lead)
            scene.leadVolt[lead] = solver.volt(part, lead - play.layout->firstLead[part]);
    }
}

}  // namespace

Stage::Stage(std::shared_ptr<const Layout> layout, const Inputs& now, std::size_t mostPositions)
    : layout_(std::move(layout)),
      throws_(throwsOf(*layout_->bench)),
      now_(now) {
    planPositions(now, mostPositions);
    for (const Digits& digits : positions_) setUp(digits);
}

void Stage::planPositions(const Inputs& now, std::size_t most) {
    const std::vector<Throw> switches = throws_, knobs = knobsOf(bench());
    const Digits resting = digitsOf(switches, bench(), now);
    std::vector<Digits> thrown{resting};
    if (combinationsOf(switches) <= static_cast<double>(most)) {
        for (Digits& each : everyPosition(switches))
            if (each != resting) thrown.push_back(std::move(each));
        const auto apart = [&](const Digits& each) {
            return std::inner_product(each.begin(), each.end(), resting.begin(), 0, std::plus<>(),
                                      std::not_equal_to<>());
        };
        std::ranges::stable_sort(thrown, {}, apart);
        if (thrown.size() > 2) std::ranges::rotate(thrown.begin() + 1, thrown.end() - 1, thrown.end());
    } else {
        PositionPlan plan = tiepoint::planPositions(*layout_, switches, resting);
        complete_ = plan.complete() && plan.others.size() < most;
        // Of too many the nearest, and the last, in which everything is thrown.
        if (plan.others.size() >= most) {
            plan.others[most - 2] = std::move(plan.others.back());
            plan.others.resize(most - 1);
        }
        std::ranges::move(plan.others, std::back_inserter(thrown));
    }
    throws_.insert(throws_.end(), knobs.begin(), knobs.end());
    const Digits standing = digitsOf(knobs, bench(), now);
    for (Digits& each : thrown) each.insert(each.end(), standing.begin(), standing.end());
    positions_ = thrown;
    for (std::size_t k = 0; k < knobs.size(); ++k) {
        for (const Digits& each : thrown) {
            for (const int end : {0, knobs[k].values - 1}) {
                if (positions_.size() >= 2 * most) return;
                Digits turned = each;
                turned[switches.size() + k] = end;
                if (turned != each) positions_.push_back(std::move(turned));
            }
        }
    }
}

void Stage::throwPart(Part& part, int index, const Digits& digits) const {
    for (std::size_t t = 0; t < throws_.size(); ++t) {
        if (throws_[t].part == index && !throws_[t].isCap())
            part.state[throws_[t].state] = throws_[t].stateAt(digits[t], part.stateValue(throws_[t].state));
    }
}

void Stage::setUp(const Digits& digits) {
    auto thrown = std::make_shared<Bench>(bench());
    Desk desk;
    desk.inputs = now_;
    desk.inputs.held.clear();
    for (std::size_t t = 0; t < throws_.size(); ++t) {
        Part& part = thrown->parts[throws_[t].part];
        if (!throws_[t].isCap())
            part.state[throws_[t].state] = throws_[t].stateAt(digits[t], part.stateValue(throws_[t].state));
        else if (digits[t] != 0)
            desk.inputs.held.insert(part.id);
    }
    desk.bench = std::move(thrown);
    desks_.push_back(std::move(desk));
}

void Stage::reorder(const std::vector<std::size_t>& order) {
    std::vector<Digits> positions;
    std::vector<Desk> desks;
    for (const std::size_t each : order) {
        positions.push_back(std::move(positions_[each]));
        desks.push_back(std::move(desks_[each]));
    }
    positions_ = std::move(positions);
    desks_ = std::move(desks);
}

Play Stage::emptyPlay(std::shared_ptr<const Bench> bench, std::size_t scenes) const {
    Play play;
    play.layout = buildLayout(std::move(bench));
    play.firstElement.push_back(0);
    for (const Part& part : play.layout->bench->parts)
        play.firstElement.push_back(play.firstElement.back() + static_cast<int>(part.kind->model.size()));
    play.scenes.resize(std::min(scenes, positions_.size()));
    return play;
}

Play Stage::play(std::size_t scenes) { return play(Variant(), scenes); }

Play Stage::play(const Variant& variant, std::size_t scenes) {
    Play play = emptyPlay(benchOf(bench(), variant), scenes);
    for (std::size_t p = 0; p < play.scenes.size(); ++p) {
        stopIfAsked();
        Desk& desk = desks_[p];
        if (!desk.solver) {
            auto layout = std::make_shared<Layout>(*layout_);
            layout->bench = desk.bench;
            desk.solver = std::make_unique<VariantSolver>(std::move(layout), desk.inputs);
        }
        Variant thrown = variant;
        for (Variant::PartAs& each : thrown.parts)
            if (each.as) throwPart(*each.as, each.part, positions_[p]);
        const Status status = desk.solver->solve(thrown);
        readScene(*desk.solver, status, play, play.scenes[p]);
    }
    return play;
}

Play Stage::playInFull(std::shared_ptr<const Bench> bench, std::size_t scenes) {
    Play play = emptyPlay(bench, scenes);
    FullVariant solver;
    for (std::size_t p = 0; p < play.scenes.size(); ++p) {
        stopIfAsked();
        auto thrown = std::make_shared<Bench>(*bench);
        for (std::size_t t = 0; t < throws_.size(); ++t) {
            if (!throws_[t].isCap()) throwPart(thrown->parts[throws_[t].part], throws_[t].part, positions_[p]);
        }
        const Status status = solver.solve(*thrown, {}, desks_[p].inputs);
        readScene(solver, status, play, play.scenes[p]);
    }
    return play;
}

}  // namespace tiepoint
