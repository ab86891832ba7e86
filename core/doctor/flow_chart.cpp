// Grown from the front: of the boxes that could ask on, the one that most suspects come to asks next, while the page has room.

#include "core/doctor/flow_chart.h"

#include "core/base/stopping.h"
#include "core/doctor/question_words.h"

#include <fmt/format.h>

#include <algorithm>
#include <optional>

namespace tiepoint {
namespace {

constexpr std::size_t kMostBranches = 4, kMostSlipsTold = 2;

/// A box that may still ask.
struct OpenBox {
    int box = 0;
    std::vector<Observation> seen;
    std::vector<Weighed> live;
    double weight = 0;
};

double weightOf(const std::vector<Weighed>& live) {
    double sum = 0;
    for (const Weighed& each : live) sum += each.weight;
    return sum;
}

/// What is left at an end: the likeliest slips, and how many more.
std::string chartEndInWords(const Doctor& doctor, const std::vector<Weighed>& live) {
    std::string words;
    for (std::size_t i = 0; i < std::min(live.size(), kMostSlipsTold); ++i)
        words += (words.empty() ? "" : " Or: ") + doctor.slipsInWords(*live[i].suspect);
    if (live.size() > kMostSlipsTold) {
        Reply all;
        for (std::size_t i = kMostSlipsTold; i < live.size(); ++i) all.leaves.push_back(i);
        const std::string more = leavesInWords(all, live);
        if (!more.empty()) words += fmt::format(" Else {}.", more);
    }
    return words;
}

/// The answers that hardly anybody gives, as one.
void joinRarest(AskedQuestion& asked) {
    Reply& last = asked.answers[kMostBranches - 1];
    last.words = "something else";
    last.seen.clear();
    for (std::size_t i = kMostBranches; i < asked.answers.size(); ++i) {
        last.weight += asked.answers[i].weight;
        last.leaves.insert(last.leaves.end(), asked.answers[i].leaves.begin(), asked.answers[i].leaves.end());
    }
    std::ranges::sort(last.leaves);  // the likeliest first again
    asked.answers.resize(kMostBranches);
}

}  // namespace

int FlowChart::depth() const {
    int deepest = 0;
    for (const ChartBox& box : boxes) deepest = std::max(deepest, box.depth);
    return deepest;
}

FlowChart flowChart(Doctor& doctor, const ChartSize& size, Instrument instrument) {
    FlowChart chart;
    chart.title = doctor.plan().title;
    std::vector<OpenBox> open(1);
    if (!doctor.plan().boards.empty())
        open.front().seen.push_back({restOf(doctor.plan()), SawBuilt{doctor.plan().boards.front().id, true}, {}});
    open.front().live = doctor.diagnose(open.front().seen, instrument).fits;
    open.front().weight = weightOf(open.front().live);
    chart.boxes.push_back({chartEndInWords(doctor, open.front().live), {}, 0});
    int ends = 1;
    while (!open.empty()) {
        stopIfAsked();
        const auto heaviest = std::ranges::max_element(open, {}, &OpenBox::weight);
        const OpenBox at = std::move(*heaviest);
        open.erase(heaviest);
        const int depth = chart.boxes[static_cast<std::size_t>(at.box)].depth;
        if (depth == size.mostDepth) continue;
        auto asked = doctor.questioner().best(at.live, at.seen, instrument);
        if (!asked) continue;
        if (asked->answers.size() > kMostBranches) joinRarest(*asked);
        const int more = static_cast<int>(asked->answers.size()) - 1;
        if (ends + more > size.mostEnds) continue;
        ends += more;
        chart.boxes[static_cast<std::size_t>(at.box)].text = questionInWords(doctor.plan(), asked->question);
        for (const Reply& answer : asked->answers) {
            OpenBox next;
            next.box = static_cast<int>(chart.boxes.size());
            next.seen = at.seen;
            next.seen.insert(next.seen.end(), answer.seen.begin(), answer.seen.end());
            for (const std::size_t leaves : answer.leaves) next.live.push_back(at.live[leaves]);
            next.weight = weightOf(next.live);
            chart.boxes[static_cast<std::size_t>(at.box)].branches.push_back({answer.words, next.box});
            chart.boxes.push_back({chartEndInWords(doctor, next.live), {}, depth + 1});
            open.push_back(std::move(next));
        }
    }
    return chart;
}

}  // namespace tiepoint
