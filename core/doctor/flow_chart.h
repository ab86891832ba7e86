#pragma once
// A chart to find slips with on paper: what to look at or to measure, and where each answer leads, until a slip or a few are left. Made from
// the same questions as the doctor asks, the likeliest branches first. Pure but for the doctor's own stores.

#include "core/doctor/doctor.h"

#include <string>
#include <vector>

namespace tiepoint {

struct ChartBranch {
    std::string answer;  ///< "5 V", "dark"
    int box = -1;        ///< where it leads
};

struct ChartBox {
    std::string text;                   ///< a question; or what is left and its mend
    std::vector<ChartBranch> branches;  ///< none: the chart ends here
    int depth = 0;
};

struct FlowChart {
    std::string title;
    std::vector<ChartBox> boxes;  ///< the first is where it begins; each after the one that leads to it

    int depth() const;
};

/// What a page of paper holds.
struct ChartSize {
    int mostEnds = 9, mostDepth = 3;
};

FlowChart flowChart(Doctor& doctor, const ChartSize& size = {}, Instrument instrument = Instrument::Meter);

}  // namespace tiepoint
