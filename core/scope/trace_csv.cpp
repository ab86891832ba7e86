#include "core/scope/trace_csv.h"

#include <fmt/format.h>

#include <cmath>

namespace tiepoint {

std::string traceCsv(const ScopeTrace& trace) {
    std::string text = "time";
    for (int c : {0, 1})
        if (trace.settings.plugged[c]) text += fmt::format(",least{0},greatest{0}", c + 1);
    text += '\n';
    if (!trace.hasTrace()) return text;
    for (std::size_t i = 0; i < trace.channels[0].least.size(); ++i) {
        const double second = trace.firstSecond + static_cast<double>(i) * trace.columnSecond;
        if (std::isnan(trace.channels[0].least[i]) || second > trace.rightSecond()) continue;
        text += fmt::format("{:.10g}", second);
        for (int c : {0, 1})
            if (trace.settings.plugged[c])
                text += fmt::format(",{:.7g},{:.7g}", trace.channels[c].least[i], trace.channels[c].greatest[i]);
        text += '\n';
    }
    return text;
}

}  // namespace tiepoint
