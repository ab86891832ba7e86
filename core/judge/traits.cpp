#include "core/judge/traits.h"

#include "core/bench/resolve.h"
#include "core/circuit/compile.h"
#include "core/circuit/element.h"
#include "core/judge/build_traits.h"
#include "core/light/lightness.h"
#include "core/meter/meter.h"
#include "core/netlist/digest.h"
#include "core/snapshot/emitters.h"
#include "core/snapshot/lit.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <set>

namespace tiepoint {
namespace {

constexpr double kCarries = 1e-5;      // A; less is leakage or what a voltmeter takes
constexpr double kChange = 0.05;       // of brightness, or of the larger of two currents
constexpr double kLeastChange = 2e-5;  // A
constexpr double kUsualLed = 0.01;     // A; common practice
constexpr double kBlocks = 0.5;        // V
constexpr double kNothingRead = 2e-3;  // V or A: no figure worth reading
constexpr double kTraitRounding = 1e-6;
constexpr double kMostDecades = 3;
constexpr double kFarDecades = 0.6;  // from the usual current of a light
constexpr double kMuchSag = 0.05;
constexpr double kAlikeTraits = 0.04;  // of brightness

/// One bench in all its scenes, asked for one trait after the other.
class Observer {
public:
    Observer(const Stage& stage, const Play& play)
        : stage_(stage),
          play_(play),
          layout_(*play.layout),
          bench_(*play.layout->bench) {
        for (int part = 0; part < static_cast<int>(bench_.parts.size()); ++part)
            for (std::size_t spec = 0; spec < bench_.parts[part].kind->model.size(); ++spec)
                places_.push_back({part, static_cast<int>(spec), {}});
        emitters_ = std::make_unique<Emitters>(bench_, places_);
        for (const Scene& scene : play_.scenes) solved_.push_back(scene.status == Status::Solved);
        brightness_.assign(play_.scenes.size(), std::vector<double>(bench_.parts.size(), 0));
        for (std::size_t s = 0; s < play_.scenes.size(); ++s) {
            if (!solved_[s]) continue;
            for (const Emitter& each : emitters_->all) {
                double& seen = brightness_[s][each.part];
                const double ampere = play_.scenes[s].elementAmpere[each.element];
                const double own = each.visibleShare > 0 ? brightnessOfLight(each.lightAt(ampere))
                                                         : (ampere >= kVisibleAmpere ? kVisibleBrightness : 0);
                seen = std::max(seen, own);
            }
        }
    }

    Observed observe() {
        for (int part = 0; part < partCount(); ++part) seen_.mostAmpere.push_back(mostAmpere(part));
        seen_.lit.assign(bench_.parts.size(), 0);
        seen_.works.assign(bench_.parts.size(), 0);
        lights();
        throwsAndKnobs();
        carriers();
        limits();
        supplies();
        meters();
        std::vector<int> idle;
        observeBuild(layout_, traits_, idle);
        for (const int part : idle) note(part, kIdle);
        digestShow();
        std::ranges::stable_sort(amiss_, {}, &Amiss::rank);
        for (const Amiss& each : amiss_)
            if (std::ranges::find(seen_.amiss, each.part) == seen_.amiss.end()) seen_.amiss.push_back(each.part);
        seen_.traits = traits_;
        return std::move(seen_);
    }

private:
    const PartKind& kind(int part) const { return *bench_.parts[part].kind; }
    int partCount() const { return static_cast<int>(bench_.parts.size()); }
    int netOf(int part, int lead) const { return layout_.netOfLead[layout_.leadIndex(part, lead)]; }

    double partAmpere(std::size_t scene, int part) const {
        double most = 0;
        for (int e = play_.firstElement[part]; e < play_.firstElement[part + 1]; ++e)
            most = std::max(most, std::abs(play_.scenes[scene].elementAmpere[e]));
        return most;
    }
    double mostAmpere(int part) const {
        double most = 0;
        for (std::size_t s = 0; s < solved_.size(); ++s)
            if (solved_[s]) most = std::max(most, partAmpere(s, part));
        return most;
    }

    void lights() {
        std::set<std::vector<int>> patterns;
        std::vector<double> most(bench_.parts.size(), 0), least(bench_.parts.size(), 1);
        for (std::size_t s = 0; s < solved_.size(); ++s) {
            std::vector<int> pattern;
            for (int part = 0; part < partCount(); ++part) {
                if (!kind(part).emitsLight) continue;
                const double seen = brightness_[s][part];
                most[part] = std::max(most[part], seen);
                least[part] = std::min(least[part], seen);
                pattern.push_back(static_cast<int>(std::lround(seen * 10)));
            }
            patterns.insert(std::move(pattern));
        }
        traits_[Trait::Patterns] = std::log2(static_cast<double>(std::max<std::size_t>(1, patterns.size())));
        const bool switches = !stage_.throws().empty();
        std::map<const PartKind*, std::vector<double>> levels;
        for (int part = 0; part < partCount(); ++part) {
            if (!kind(part).emitsLight) continue;
            const bool lit = most[part] >= kVisibleBrightness;
            seen_.lit[part] = lit;
            if (!lit) note(part, kDark);
            if (lit && kind(part).needsResistor && std::abs(std::log10(mostAmpere(part) / kUsualLed)) > kFarDecades)
                note(part, kOddLight);
            traits_[Trait::LitLights] += lit;
            traits_[Trait::Brightness] += std::min(1.0, most[part]);
            if (lit && switches && least[part] >= kVisibleBrightness) traits_[Trait::EverLit] += 1;
            if (lit && kind(part).needsResistor) {
                traits_[Trait::LightCurrent] +=
                    std::min(kMostDecades, std::abs(std::log10(mostAmpere(part) / kUsualLed)));
            }
            if (!lit) continue;
            auto& known = levels[bench_.parts[part].kind];
            const bool again =
                std::ranges::any_of(known, [&](double level) { return std::abs(level - most[part]) < kAlikeTraits; });
            if (!again) known.push_back(most[part]);
        }
        for (const auto& [of, known] : levels) traits_[Trait::OddLights] += static_cast<double>(known.size());
    }

    bool differ(std::size_t a, std::size_t b) const {
        if (!solved_[a] || !solved_[b]) return solved_[a] != solved_[b];
        for (int part = 0; part < partCount(); ++part) {
            if (kind(part).emitsLight && std::abs(brightness_[a][part] - brightness_[b][part]) > kChange) return true;
            if (isSwitch(kind(part))) continue;
            const double one = partAmpere(a, part), other = partAmpere(b, part);
            if (std::abs(one - other) > std::max(kLeastChange, kChange * std::max(one, other))) return true;
            if (!isMeter(kind(part))) continue;
            if (std::abs(readAt(a, part) - readAt(b, part)) > kNothingRead) return true;
        }
        return false;
    }

    void throwsAndKnobs() {
        const auto& throws = stage_.throws();
        const auto& positions = stage_.positions();
        std::map<Digits, std::size_t> sceneOf;
        const std::size_t scenes = play_.scenes.size();
        for (std::size_t p = 0; p < scenes; ++p) sceneOf.emplace(positions[p], p);
        for (std::size_t t = 0; t < throws.size(); ++t) {
            bool matters = false;
            for (std::size_t p = 0; p < scenes && !matters; ++p) {
                Digits other = positions[p];
                for (int value = 0; value < throws[t].values && !matters; ++value) {
                    if (value <= positions[p][t] && !throws[t].isKnob) continue;
                    if (value == positions[p][t]) continue;
                    other[t] = value;
                    const auto found = sceneOf.find(other);
                    matters = found != sceneOf.end() && differ(p, found->second);
                }
            }
            traits_[throws[t].isKnob ? Trait::Knobs : Trait::Throws] += matters;
            if (matters) seen_.works[throws[t].part] = 1;
            if (!matters) note(throws[t].part, kIdle);
        }
    }

    void carriers() {
        for (int part = 0; part < partCount(); ++part) {
            const PartKind& it = kind(part);
            if (it.isSupply || isMeter(it) || it.emitsLight) continue;
            if (isSwitch(it)) {
                int used = 0, contacts = 0;
                for (std::size_t spec = 0; spec < it.model.size(); ++spec) {
                    if (findElement(it.model[spec].element) != &kContactElement) continue;
                    ++contacts;
                    const int e = play_.firstElement[part] + static_cast<int>(spec);
                    bool carries = false;
                    for (std::size_t s = 0; s < solved_.size() && !carries; ++s)
                        carries = solved_[s] && std::abs(play_.scenes[s].elementAmpere[e]) > kCarries;
                    used += carries;
                }
                traits_[Trait::Contacts] += used;
                if (contacts > 1 && used > 0) traits_[Trait::DeadThrows] += contacts - used;
                if (used < contacts) note(part, kIdle);
                continue;
            }
            traits_[Trait::Carriers] += mostAmpere(part) > kCarries;
            if (mostAmpere(part) <= kCarries) note(part, kIdle);
        }
    }

    /// Taken by a part whose elements all end at leads; 0 where they don't.
    double watt(std::size_t scene, int part) const {
        double sum = 0;
        const PartKind& it = kind(part);
        for (std::size_t spec = 0; spec < it.model.size(); ++spec) {
            const int from = it.leadIndex(it.model[spec].from()), to = it.leadIndex(it.model[spec].to());
            if (from < 0 || to < 0) return 0;
            const double ampere = play_.scenes[scene].elementAmpere[play_.firstElement[part] + static_cast<int>(spec)];
            if (ampere == 0) continue;
            sum += ampere * (voltAt(scene, part, from) - voltAt(scene, part, to));
        }
        return std::isnan(sum) ? 0 : sum;
    }
    double voltAt(std::size_t scene, int part, int lead) const {
        return play_.scenes[scene].leadVolt[layout_.leadIndex(part, lead)];
    }

    double figureOf(std::size_t scene, int part, const Rating& rating) const {
        if (rating.quantity == "current" && rating.leads.empty()) return partAmpere(scene, part);
        if (rating.quantity == "power") return std::max(0.0, watt(scene, part));
        if (rating.quantity == "reverseVoltage" && rating.leads.empty() && kind(part).leads.size() >= 2) {
            const double volt = voltAt(scene, part, 1) - voltAt(scene, part, 0);
            return std::isnan(volt) ? 0 : std::max(0.0, volt);
        }
        return 0;
    }

    void limits() {
        double unsolved = 0;
        for (const Scene& scene : play_.scenes) unsolved += scene.status == Status::None;
        traits_[Trait::Unsolved] = unsolved / static_cast<double>(play_.scenes.size());
        for (int part = 0; part < partCount(); ++part) {
            double worst = 0;
            for (const Rating& rating : kind(part).ratings) {
                if (!rating.maximum) continue;
                const double limit = resolve(rating.limit, bench_.parts[part]);
                if (!(limit > 0)) continue;
                for (std::size_t s = 0; s < solved_.size(); ++s)
                    if (solved_[s]) worst = std::max(worst, figureOf(s, part, rating) / limit);
            }
            if (worst <= 1 + kTraitRounding) continue;
            note(part, kBreaks);
            traits_[Trait::Over] += 1;
            traits_[Trait::OverFar] += std::min(kMostDecades, std::log10(worst));
        }
        for (int part = 0; part < partCount(); ++part) {
            if (!kind(part).emitsLight && kind(part).family != "Diode") continue;
            if (kind(part).leads.size() != 2 || mostAmpere(part) > kCarries) continue;
            bool blocks = false;
            for (std::size_t s = 0; s < solved_.size(); ++s)
                blocks = blocks || (solved_[s] && voltAt(s, part, 1) - voltAt(s, part, 0) > kBlocks);
            traits_[Trait::Backwards] += blocks;
        }
    }

    void supplies() {
        for (int part = 0; part < partCount(); ++part) {
            const PartKind& it = kind(part);
            if (!it.isSupply) continue;
            for (std::size_t spec = 0; spec < it.model.size(); ++spec) {
                if (findElement(it.model[spec].element) != &kSupplyElement) continue;
                supply(part, it.model[spec], play_.firstElement[part] + static_cast<int>(spec));
            }
        }
    }

    void supply(int part, const ElementSpec& spec, int element) {
        const auto figures = figuresOf(kSupplyElement, spec, bench_.parts[part]);
        const double open = figures[0], limit = figures[2];
        const int plus = kind(part).leadIndex(spec.from()), minus = kind(part).leadIndex(spec.to());
        bool gives = false, takes = false, limited = false;
        double sag = 0;
        for (std::size_t s = 0; s < solved_.size(); ++s) {
            if (!solved_[s]) continue;
            const double out = -play_.scenes[s].elementAmpere[element];
            gives = gives || out > kCarries;
            takes = takes || out < -1e-3;
            limited = limited || std::abs(out) >= limit * (1 - kTraitRounding);
            const double volt = voltAt(s, part, plus) - voltAt(s, part, minus);
            if (open > 0 && out > kCarries && !std::isnan(volt)) sag = std::max(sag, 1 - volt / open);
        }
        if (!gives || takes || limited || sag > kMuchSag) note(part, !gives ? kIdle : kBreaks);
        traits_[Trait::Supplies] += gives;
        traits_[Trait::Absorbing] += takes;
        traits_[Trait::Limiting] += limited;
        traits_[Trait::Sagging] += std::clamp(sag, 0.0, 1.0);
    }

    const ElementSpec* readingOf(int part) const {
        for (const ElementSpec& spec : kind(part).model)
            if (!spec.reads.empty() && isPresent(bench_.parts[part], spec, {})) return &spec;
        return nullptr;
    }
    /// Volts or amperes; 0 of other dials.
    double readAt(std::size_t scene, int part) const {
        const ElementSpec* spec = readingOf(part);
        if (spec == nullptr || !solved_[scene]) return 0;
        const int e = play_.firstElement[part] + static_cast<int>(spec - kind(part).model.data());
        if (spec->reads == "current") return play_.scenes[scene].elementAmpere[e];
        if (spec->reads != "voltage") return 0;
        const double volt = voltAt(scene, part, kind(part).leadIndex(spec->from())) -
                            voltAt(scene, part, kind(part).leadIndex(spec->to()));
        return std::isnan(volt) ? 0 : volt;
    }

    void meters() {
        bool driven = false;
        for (int part = 0; part < partCount(); ++part)
            driven = driven || (kind(part).isSupply && mostAmpere(part) > kCarries);
        for (int part = 0; part < partCount(); ++part) {
            if (!isMeter(kind(part)) || liesUnplugged(bench_.parts[part])) continue;
            const ElementSpec* spec = readingOf(part);
            if (spec == nullptr) continue;
            double most = 0, least = 0;
            for (std::size_t s = 0; s < solved_.size(); ++s) {
                most = std::max(most, readAt(s, part));
                least = std::min(least, readAt(s, part));
            }
            const bool reads = spec->reads == "voltage" || spec->reads == "current";
            const bool figure = reads && (most > kNothingRead || least < -kNothingRead);
            if (reads) traits_[Trait::Meters] += figure;
            seen_.works[part] = figure;
            if (!figure || most < kNothingRead) note(part, kIdle);
            if (!reads && driven) traits_[Trait::BadReadings] += 1;
            if (least < -kNothingRead && most < kNothingRead) traits_[Trait::BadReadings] += 1;
        }
    }

    /// What eye and meter tell, roughly enough that rounding doesn't matter.
    void digestShow() {
        std::uint64_t digest = 0;
        const auto add = [&](double figure) {
            constexpr double kSteps = 50;
            digest = mixed(digest, static_cast<std::uint64_t>(std::llround(figure * kSteps)));
        };
        for (std::size_t s = 0; s < solved_.size(); ++s) {
            digest = mixed(digest, static_cast<std::uint64_t>(play_.scenes[s].status));
            for (int part = 0; part < partCount(); ++part) {
                if (kind(part).emitsLight) add(std::min(1.0, brightness_[s][part]));
                if (isMeter(kind(part))) add(std::asinh(readAt(s, part) / kNothingRead));
            }
        }
        digest = mixed(digest, static_cast<std::uint64_t>(traits_[Trait::Over] + traits_[Trait::Limiting]));
        seen_.show = mixed(digest, static_cast<std::uint64_t>(traits_[Trait::Misprinted]));
    }

    enum Rank { kDark, kBreaks, kIdle, kOddLight };
    struct Amiss {
        int part;
        Rank rank;
    };
    void note(int part, Rank rank) { amiss_.push_back({part, rank}); }

    const Stage& stage_;
    const Play& play_;
    const Layout& layout_;
    const Bench& bench_;
    ElementPlaces places_;
    std::unique_ptr<Emitters> emitters_;
    std::vector<char> solved_;                     ///< by scene
    std::vector<std::vector<double>> brightness_;  ///< by scene and part
    Traits traits_;
    Observed seen_;
    std::vector<Amiss> amiss_;
};

}  // namespace

std::string_view nameOf(Trait trait) {
    constexpr std::array<std::string_view, kTraitCount> kNames = {
        "lit lights", "brightness", "throws",       "contacts",   "knobs",         "patterns",   "carriers",
        "meters",     "supplies",   "unsolved",     "over",       "over far",      "sagging",    "limiting",
        "absorbing",  "backwards",  "bad readings", "misprinted", "colours",       "loose legs", "loose ends",
        "parked",     "bypassed",   "idle jumpers", "ever lit",   "light current", "sharing",    "usual values",
        "odd values", "odd lights", "usual volts",  "rail ties",  "dead throws"};
    return kNames[static_cast<std::size_t>(trait)];
}

Observed observe(const Stage& stage, const Play& play) { return Observer(stage, play).observe(); }

}  // namespace tiepoint
