#pragma once
// What eyes and instruments would show if a suspect were the truth: brightness of lights, volts of a meter whose ten megohms count, the ohms
// that a continuity test meets with every supply off, and a probe light.
//
// The plan is solved once for each position with the instruments beside it, on a board of their own; a suspect with its tips put somewhere
// is a variant of that. Answers are kept.
// Belongs to one thread. Keeps a reference to the list.

#include "core/doctor/observation.h"
#include "core/doctor/suspect.h"

#include <cstdint>
#include <map>
#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <unordered_map>
#include <vector>

namespace tiepoint {

/// A figure of a part that may be off by its tolerance: a resistor's ohms.
struct LooseFigure {
    int part = 0, value = 0;
    double share = 0;  ///< 0.05: by a twentieth
};

class Foresight {
public:
    explicit Foresight(const SuspectList& suspects);
    ~Foresight();
    Foresight(const Foresight&) = delete;
    Foresight& operator=(const Foresight&) = delete;

    /// Of a light, 0..1; NaN where nothing is solved. `loose`: with that figure greater by its tolerance; -1: all as printed.
    double brightness(const Suspect& suspect, const Digits& digits, int part, int loose = -1);
    /// What a meter shows between the strips of two holes; without a black one against the minus of the first supply. NaN: no solution.
    double volts(const Suspect& suspect, const Digits& digits, const Hole& red, const std::optional<Hole>& black,
                 int loose = -1);
    /// Brightness of an LED with 1 kilohm between them.
    double glow(const Suspect& suspect, const Digits& digits, const Hole& red, const std::optional<Hole>& black);
    /// Between two holes with every supply off; infinity where nothing flows.
    double ohms(const Suspect& suspect, const Digits& digits, const Hole& one, const Hole& other);

    /// A suspect that goes: what is known of it, too.
    void forget(const Suspect& suspect) { known_.erase(&suspect), shining_.erase(&suspect); }

    const std::vector<LooseFigure>& loose() const { return loose_; }
    /// Parts of the plan that emit light an eye sees.
    const std::vector<int>& lights() const { return lights_; }
    /// How many variants were solved, for measurements.
    std::size_t solved() const { return solved_; }

private:
    struct Desk;
    struct Probes;
    enum class Tool { Eye, Meter, ProbeLight, Beeper };

    Desk& deskOf(const Suspect& suspect, const Digits& digits);
    Desk& solve(const Suspect& suspect, const Digits& digits, Tool tool, const JumperEnd& red, const JumperEnd& black,
                int loose);
    void addTips(Variant& variant, Tool tool, const JumperEnd& red, const JumperEnd& black) const;
    void switchSuppliesOff(Variant& variant) const;
    Part& changed(Variant& variant, int part) const;
    JumperEnd blackEnd(const std::optional<Hole>& black) const;
    double brightnessOf(const Desk& desk, int part) const;
    double metered(const Desk& desk) const;
    double meterFigure(int element, std::string_view name) const;
    std::uint64_t keyOf(const Digits& digits, Tool tool, const JumperEnd& red, const JumperEnd& black) const;

    const SuspectList& suspects_;
    std::unique_ptr<Probes> probes_;
    std::vector<LooseFigure> loose_;
    std::vector<int> lights_;
    std::map<std::string, std::unique_ptr<Desk>> desks_;  ///< by rails and position
    std::unordered_map<const Suspect*, std::unordered_map<std::uint64_t, double>> known_;
    std::unordered_map<const Suspect*, std::map<Digits, std::vector<double>>> shining_;
    std::size_t solved_ = 0;
};

}  // namespace tiepoint
