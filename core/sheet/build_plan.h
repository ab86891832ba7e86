#pragma once
// What it takes to build a bench from real parts by hand: the parts and how to know them, the jumpers and how much wire each takes, the steps
// in a sensible order, what to check before and after the supply is switched on, and where to measure what. Plain values and pure functions;
// how it looks on paper is ui/sheet's concern.

#include "core/bench/table.h"
#include "core/course/kit.h"
#include "core/nets/layout.h"

#include <memory>
#include <optional>
#include <string>
#include <vector>

namespace tiepoint {

/// "c4"; of a rail by its print and the column that it stands over: "plus rail above column 4". With the board where there are several.
std::string placeInWords(const Bench& bench, const Hole& hole);

struct PlanPart {
    int part = -1;      ///< index
    std::string name;   ///< "resistor 330 Ω", "push button, cap A"
    std::string signs;  ///< how to know it: "orange, orange, brown, gold"
    std::string place;  ///< "c4 and c9, either way round"
};

struct PlanJumper {
    int jumper = -1;       ///< index
    char letter = ' ';     ///< for the colour, where paper has none
    std::string from, to;  ///< places in words
    int spanMm = 0;        ///< between the holes, or where it lies as an arc along that arc
    int cutMm = 0;         ///< of wire, bare ends counted
};

/// One step by hand.
struct PlanStep {
    std::string title;               ///< "Resistor R1, either way round"
    std::vector<std::string> ids;    ///< what it adds
    std::vector<std::string> lines;  ///< where, one line each: "R1: c4 and c9, either way round"
};

/// What a meter shows at one place, its black tip in the minus.
struct MeasuredPlace {
    std::string where;               ///< "c9, leg 2 of R1": tips don't go into holes
    bool floats = false;             ///< joined to nothing: "about 0 V, may drift"
    double volt = 0;                 ///< expected
    double least = 0, greatest = 0;  ///< with all tolerances against each other
};
struct ExpectedLight {
    std::string id;
    bool lit = false;
};
/// Readings in one position of the switches.
struct MeasuredPosition {
    std::string title;  ///< "Nothing pressed", "S1 and S2 pressed"
    std::vector<ExpectedLight> lights;
    std::vector<MeasuredPlace> places;
    std::string
        loop;  ///< "Once round: 2.90 V over R1 + 2.10 V over D1 = 5.00 V. Current 8.78 mA."; empty where current branches
};

struct BuildPlan {
    std::shared_ptr<const Layout> layout;
    std::vector<PlanPart> parts;  ///< those on boards first, then supplies
    std::vector<PlanJumper> jumpers;
    std::vector<PlanStep> steps;  ///< the last one joins the supply
    std::vector<std::string> beforePower, afterPower;
    std::string blackTip;  ///< where the meter's black tip touches
    std::vector<MeasuredPosition> positions;
    std::string kitTitle;              ///< of the kit that it was made for; empty: none
    std::vector<std::string> kitGaps;  ///< what was taken instead of what, and what nothing serves for
    bool kitServes = true;             ///< whether something serves for everything

    const Bench& bench() const { return *layout->bench; }
};

BuildPlan planOf(std::shared_ptr<const Bench> bench);
/// The same with what a class has: on its board, with its supply, and with other values where these serve.
BuildPlan planOf(const std::shared_ptr<const Bench>& bench, const Kit& kit);

/// One kind of thing to buy for a class.
struct Total {
    std::string name;   ///< "resistor 330 Ω", "jumper, red"
    std::string ids;    ///< on one bench: "R1, R2"
    int each = 0;       ///< for one bench
    int all = 0;        ///< for all benches, with what is kept in reserve
    double wireMm = 0;  ///< of a jumper: for all
};
/// `sparePercent` more than the copies need, rounded up to whole things.
std::vector<Total> totalsOf(const BuildPlan& plan, int copies, double sparePercent);
/// As CSV (RFC 4180): part,ids,each,total,wireMm.
std::string totalsAsCsv(const std::vector<Total>& totals);

}  // namespace tiepoint
