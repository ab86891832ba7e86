// Lights and looks cost nothing to foresee and are weighed for everybody; places to measure are weighed for the likeliest suspects first, at
// the strips that most of them have to do with. Only where that tells nothing, every strip in every position is tried.

#include "core/doctor/question.h"

#include "core/base/stopping.h"
#include "core/doctor/observation_words.h"
#include "core/doctor/question_words.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <map>
#include <numeric>
#include <set>

namespace tiepoint {
namespace {

/// What an answer costs beside a glance at a light.
constexpr std::array<double, 7> kCosts = {1, 1, 1.2, 1.6, 1.25, 1.3, 2};
constexpr double kNothingTold = 1e-9;
constexpr double kShareOfDetail = 0.2;
constexpr std::size_t kMostWeighed = 120, kMostPlaces = 24, kMostAllPlaces = 160, kMostPositions = 8, kFewPositions = 2;
/// Readings that lie nearer than this many allowances may be one.
constexpr double kApart = 1.2, kSurelyApart = 2;

double askingCost(Asking asking) { return kCosts[static_cast<std::size_t>(asking)]; }

/// By suspect: which answer it would give, numbered from 0.
using Classes = std::vector<int>;

double bitsOf(const Classes& classes, const std::vector<Weighed>& live) {
    std::vector<double> sums;
    double all = 0;
    for (std::size_t i = 0; i < classes.size(); ++i) {
        const auto at = static_cast<std::size_t>(classes[i]);
        if (sums.size() <= at) sums.resize(at + 1, 0);
        sums[at] += live[i].weight;
        all += live[i].weight;
    }
    double bits = 0;
    for (const double sum : sums) {
        if (sum > 0) bits -= sum / all * std::log2(sum / all);
    }
    return bits;
}

/// Readings as classes: a new one begins where the next reading surely differs; if that parts nothing, wherever it differs from the first.
Classes classesOfReadings(const std::vector<double>& readings) {
    std::vector<std::size_t> order(readings.size());
    std::iota(order.begin(), order.end(), 0);
    const auto known = [&](std::size_t i) {
        return std::isnan(readings[i]) ? -std::numeric_limits<double>::infinity() : readings[i];
    };
    std::ranges::stable_sort(order, {}, known);
    Classes classes(readings.size(), 0);
    const auto part = [&](bool fromFirst) {
        int number = 0;
        double before = 0;
        for (std::size_t i = 0; i < order.size(); ++i) {
            const double reading = known(order[i]);
            const double gap = (fromFirst ? kSurelyApart : kApart) * meterAllowance(before, reading);
            const bool first = i == 0;
            const bool isNew = !first && (std::isinf(before) != std::isinf(reading) || reading - before > gap);
            number += isNew;
            if (first || isNew || !fromFirst) before = reading;
            classes[order[i]] = number;
        }
        return number;
    };
    if (part(false) == 0) part(true);
    return classes;
}

/// Whether somebody has looked closely at a thing: how it stands, or that it is as planned.
bool wasLookedAt(const Observation& seen, const std::string& id) {
    if (const auto* built = std::get_if<SawBuilt>(&seen.what)) return built->asPlanned && built->id == id;
    if (const auto* tip = std::get_if<SawTip>(&seen.what)) return tip->id == id;
    if (const auto* setting = std::get_if<SawSetting>(&seen.what)) return setting->part == id;
    const auto* missing = std::get_if<SawMissing>(&seen.what);
    return missing != nullptr && missing->jumper == id;
}

template <class Key>
int numberOf(std::map<Key, int>& numbers, const Key& key) {
    return numbers.try_emplace(key, static_cast<int>(numbers.size())).first->second;
}

}  // namespace

/// One search among the questions that can be asked about some suspects.
class Questioner::Search {
public:
    Search(Questioner& questioner, const std::vector<Weighed>& live, const std::vector<Observation>& seen)
        : suspects_(questioner.suspects_),
          foresight_(questioner.foresight_),
          positions_(questioner.positions_),
          live_(live),
          seen_(seen) {
        weighed_.assign(live.begin(), live.begin() + static_cast<std::ptrdiff_t>(std::min(live.size(), kMostWeighed)));
        for (const Observation& each : seen) black_ = each.black ? each.black : black_;
    }

    std::optional<Question> best(Instrument instrument) {
        askLights();
        askLooks();
        if (live_.size() <= kMostWeighed || foundBits_ == 0) askPlaces(instrument, kFewPositions, kMostPlaces);
        if (foundBits_ == 0) {
            askPlaces(instrument, kMostPositions, kMostAllPlaces);
            if (instrument == Instrument::Meter) askBeeps();
        }
        return found_;
    }

    Classes classesFor(const Question& question, const std::vector<Weighed>& of) {
        switch (question.asking) {
            case Asking::Built:
                return classesBy(of, [](const Suspect& s) { return int{s.isVisible()}; });
            case Asking::Light: {
                const int part = suspects_.plan().partIndex(question.id);
                return classesBy(of, [&](const Suspect& s) {
                    return static_cast<int>(shineOf(foresight_.brightness(s, question.digits, part)));
                });
            }
            case Asking::Look:
                return classesBy(of, [&](const Suspect& s) {
                    const auto look = s.looks.find(question.id);
                    return look == s.looks.end() ? std::string() : look->second;
                });
            case Asking::Extra: {
                const std::pair<int, int> pair = std::minmax({stripOf(question.one), stripOf(question.other)});
                return classesBy(
                    of, [&](const Suspect& s) { return int{std::ranges::find(s.extra, pair) != s.extra.end()}; });
            }
            case Asking::Volts:
                return classesOfReadings(readings(question, of));
            case Asking::Glow:
                return classesBy(of, [&](const Suspect& s) {
                    return int{shineOf(foresight_.glow(s, question.digits, question.one, question.black)) !=
                               Shine::Dark};
                });
            case Asking::Beep:
                return classesBy(of, [&](const Suspect& s) {
                    return int{foresight_.ohms(s, question.digits, question.one, question.other) < kSurelyBeepsOhm};
                });
        }
        return Classes(of.size(), 0);
    }

    std::vector<double> readings(const Question& question, const std::vector<Weighed>& of) {
        std::vector<double> volts;
        for (const Weighed& each : of)
            volts.push_back(foresight_.volts(*each.suspect, question.digits, question.one, question.black));
        return volts;
    }

private:
    template <class Show>
    static Classes classesBy(const std::vector<Weighed>& of, Show&& show) {
        std::map<decltype(show(*of.front().suspect)), int> numbers;
        Classes classes;
        for (const Weighed& each : of) classes.push_back(numberOf(numbers, show(*each.suspect)));
        return classes;
    }

    int stripOf(const Hole& hole) const { return suspects_.ground().stripOf(suspects_.ground().holeIndex(hole)); }

    bool wasAsked(const Question& question) const {
        return std::ranges::any_of(seen_, [&](const Observation& each) {
            const bool here = each.digits == question.digits;
            if (const auto* light = std::get_if<SawLight>(&each.what))
                return question.asking == Asking::Light && light->part == question.id && (here || light->always);
            if (const auto* volts = std::get_if<SawVolts>(&each.what))
                return question.asking == Asking::Volts && here && stripOf(volts->red) == stripOf(question.one);
            if (const auto* glow = std::get_if<SawGlow>(&each.what))
                return question.asking == Asking::Glow && here && stripOf(glow->red) == stripOf(question.one);
            if (const auto* beep = std::get_if<HeardBeep>(&each.what))
                return question.asking == Asking::Beep && here && stripOf(beep->one) == stripOf(question.one) &&
                       stripOf(beep->other) == stripOf(question.other);
            if (const auto* extra = std::get_if<SawExtra>(&each.what))
                return question.asking == Asking::Extra && stripOf(extra->one) == stripOf(question.one) &&
                       stripOf(extra->other) == stripOf(question.other);
            return question.asking == Asking::Look && wasLookedAt(each, question.id);
        });
    }

    static Classes classesOfLook(const Question& question, const std::vector<Weighed>& of) {
        return classesBy(of, [&](const Suspect& s) { return int{s.looks.contains(question.id)}; });
    }

    void weigh(const Question& question, const std::vector<Weighed>& of) {
        if (of.empty() || wasAsked(question)) return;
        stopIfAsked();
        const Classes classes = classesFor(question, of);
        double bits = bitsOf(classes, of);
        if (question.asking ==
            Asking::Look) {  // whether it is that thing tells most; how it stands is seen at any later look
            const double thing = bitsOf(classesOfLook(question, of), of);
            bits = thing + kShareOfDetail * (bits - thing);
        }
        if (bits < kNothingTold || bits / askingCost(question.asking) <= foundBits_) return;
        foundBits_ = bits / askingCost(question.asking);
        found_ = question;
    }

    Question at(Asking asking, const Digits& digits) const {
        Question question;
        question.asking = asking;
        question.digits = digits;
        question.black = black_;
        return question;
    }

    void askLights() {
        for (const int light : foresight_.lights()) {
            for (const Digits& digits : positions_) {
                Question question = at(Asking::Light, digits);
                question.id = suspects_.plan().parts[static_cast<std::size_t>(light)].id;
                weigh(question, live_);
            }
        }
    }

    void askLooks() {
        std::set<std::string> ids;
        std::map<std::pair<int, int>, std::pair<Hole, Hole>> extras;
        for (const Weighed& each : live_) {
            for (const auto& [id, look] : each.suspect->looks) {
                if (suspects_.plan().findBoard(id) == nullptr) ids.insert(id);
            }
            for (const Jumper& jumper : each.suspect->variant.added) {
                const Hole *one = std::get_if<Hole>(&jumper.ends[0]), *other = std::get_if<Hole>(&jumper.ends[1]);
                if (one && other) extras.try_emplace({stripOf(*one), stripOf(*other)}, *one, *other);
            }
        }
        for (const std::string& id : ids) {
            Question question = at(Asking::Look, positions_.front());
            question.id = id;
            weigh(question, live_);
        }
        for (const auto& [strips, holes] : extras) {
            Question question = at(Asking::Extra, positions_.front());
            question.one = holes.first, question.other = holes.second;
            weigh(question, live_);
        }
    }

    /// Positions in which something was seen, then those to look at.
    std::vector<Digits> positionsFor(std::size_t most) const {
        std::vector<Digits> found;
        const auto add = [&](const Digits& digits) {
            if (found.size() < most && std::ranges::find(found, digits) == found.end()) found.push_back(digits);
        };
        for (auto each = seen_.rbegin(); each != seen_.rend(); ++each) {
            if (!std::holds_alternative<SawBuilt>(each->what)) add(each->digits);
        }
        if (positions_.size() > 1 && most < positions_.size()) add(positions_[1]);
        for (const Digits& digits : positions_) add(digits);
        return found;
    }

    /// Strips in which the plan has something, those first that most suspects have to do with; with the hole for the tip.
    std::vector<Hole> places(std::size_t most) const {
        std::map<int, double> weights;
        const Ground& ground = suspects_.ground();
        for (const Tip& tip : ground.tips()) weights[tip.strip] += 0;
        for (const Weighed& each : weighed_) {
            for (const int strip : each.suspect->strips) {
                const auto found = weights.find(strip);
                if (found != weights.end()) found->second += each.weight;
            }
        }
        std::vector<std::pair<double, int>> order;
        for (const auto& [strip, weight] : weights) order.emplace_back(-weight, strip);
        std::ranges::sort(order);
        if (order.size() > most) order.resize(most);
        std::vector<Hole> holes;
        for (const auto& [weight, strip] : order) holes.push_back(tipHole(strip));
        return holes;
    }

    /// A free hole of a strip beside what stands there, or else a hole with a leg to touch.
    Hole tipHole(int strip) const {
        const Ground& ground = suspects_.ground();
        const Hole first = ground.holeAt(ground.tips()[static_cast<std::size_t>(ground.tipsIn(strip).front())].hole);
        const auto free = ground.freeIn(first, 1);
        return free.empty() ? first : free.front();
    }

    void askPlaces(Instrument instrument, std::size_t positions, std::size_t most) {
        if (!black_ && !minusOfFirstSupply(suspects_.plan())) return;
        const std::vector<Hole> holes = places(most);
        for (const Digits& digits : positionsFor(positions)) {
            for (const Hole& hole : holes) {
                Question question = at(instrument == Instrument::Meter ? Asking::Volts : Asking::Glow, digits);
                question.one = hole;
                weigh(question, weighed_);
            }
        }
    }

    /// From end to end of what should beep: jumpers, and switches in every position.
    void askBeeps() {
        const Ground& ground = suspects_.ground();
        const auto askBetween = [&](const std::vector<int>& tips) {
            for (std::size_t i = 1; i < tips.size(); ++i) {
                const Tip &one = ground.tips()[static_cast<std::size_t>(tips[0])],
                          &other = ground.tips()[static_cast<std::size_t>(tips[i])];
                if (one.strip == other.strip) continue;
                for (const Digits& digits : positions_) {
                    Question question = at(Asking::Beep, digits);
                    question.one = ground.holeAt(one.hole), question.other = ground.holeAt(other.hole);
                    weigh(question, weighed_);
                }
            }
        };
        for (int jumper = 0; jumper < static_cast<int>(ground.bench().jumpers.size()); ++jumper)
            askBetween(ground.tipsOfJumper(jumper));
        for (int part = 0; part < static_cast<int>(ground.bench().parts.size()); ++part) {
            if (isSwitch(*ground.part(part).kind)) askBetween(ground.tipsOfPart(part));
        }
    }

    const SuspectList& suspects_;
    Foresight& foresight_;
    const std::vector<Digits>& positions_;
    const std::vector<Weighed>& live_;
    const std::vector<Observation>& seen_;
    std::vector<Weighed> weighed_;
    std::optional<Hole> black_;
    std::optional<Question> found_;
    double foundBits_ = 0;
};

Questioner::Questioner(const SuspectList& suspects, Foresight& foresight)
    : suspects_(suspects),
      foresight_(foresight),
      positions_(positionsToLookAt(suspects.ground().layout(), kMostPositions)) {}

std::optional<AskedQuestion> Questioner::best(const std::vector<Weighed>& live, const std::vector<Observation>& seen,
                                              Instrument instrument) {
    if (live.size() < 2) return std::nullopt;
    const auto found = Search(*this, live, seen).best(instrument);
    if (!found) return std::nullopt;
    return ask(*found, live);
}

AskedQuestion Questioner::ask(const Question& question, const std::vector<Weighed>& live) {
    const std::vector<Observation> none;
    Search search(*this, live, none);
    AskedQuestion asked;
    asked.question = question;
    const Classes classes = search.classesFor(question, live);
    asked.bits = bitsOf(classes, live);
    for (std::size_t i = 0; i < live.size(); ++i) {
        const auto at = static_cast<std::size_t>(classes[i]);
        if (asked.answers.size() <= at) asked.answers.resize(at + 1);
        asked.answers[at].weight += live[i].weight;
        asked.answers[at].leaves.push_back(i);
    }
    for (Reply& answer : asked.answers) {
        if (answer.leaves.empty()) continue;
        const Suspect& likeliest = *live[answer.leaves.front()].suspect;
        answer.seen = foreseen(foresight_, suspects_, question, likeliest);
        answer.words = answerInWords(suspects_.plan(), question, answer.seen);
    }
    std::erase_if(asked.answers, [](const Reply& answer) { return answer.leaves.empty(); });
    std::ranges::stable_sort(asked.answers, std::greater<>(), &Reply::weight);
    return asked;
}

}  // namespace tiepoint
