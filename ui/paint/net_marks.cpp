#include "ui/paint/net_marks.h"

#include "ui/paint/shade.h"

#include <algorithm>
#include <cmath>

namespace tiepoint::ui {

std::vector<StripSpan> stripSpans(const Picture& picture) {
    const Layout& layout = *picture.layout;
    std::vector<StripSpan> spans(layout.netOfStrip.size());
    std::vector<char> begun(spans.size(), 0);
    for (std::size_t b = 0; b < picture.bench().boards.size(); ++b) {
        const Board& board = picture.bench().boards[b];
        for (int line = 0; line <= static_cast<int>(Line::BottomMinus); ++line) {
            for (int number = 1; board.kind->has(static_cast<Line>(line), number); ++number) {
                const int inBoard = board.kind->stripIndex(board.rails, static_cast<Line>(line), number);
                const int index = layout.boardFirstStrip[b] + inBoard;
                const auto strip = static_cast<std::size_t>(index);
                const QPointF at =
                    toQt(picture.table->seen(board.cornerMm() + board.kind->holeMm(static_cast<Line>(line), number)));
                if (!begun[strip]) spans[strip] = {at, at, isRail(static_cast<Line>(line)), {}};
                begun[strip] = 1;
                spans[strip].last = at;
                spans[strip].holes.push_back({at.x(), at.y()});
            }
        }
    }
    return spans;
}

VoltScale voltScale(const Snapshot& snapshot) {
    VoltScale scale{0, 0};
    for (const double volt : snapshot.solution.netVoltage) {
        if (std::isnan(volt)) continue;
        scale.low = std::min(scale.low, volt);
        scale.high = std::max(scale.high, volt);
    }
    constexpr double kLeastSpanVolt = 1e-3;
    if (scale.high - scale.low < kLeastSpanVolt) scale.high = scale.low + 1;
    return scale;
}

std::vector<int> netsByPress(const Picture& picture, int net) {
    std::vector<int> nets;
    const Layout& layout = *picture.layout;
    for (int part = 0; part < static_cast<int>(picture.bench().parts.size()); ++part) {
        const PartKind& kind = *picture.bench().parts[static_cast<std::size_t>(part)].kind;
        for (const ElementSpec& element : kind.model) {
            const int from = kind.leadIndex(element.from()), to = kind.leadIndex(element.to());
            if (!element.whenHeld || from < 0 || to < 0) continue;
            const int a = layout.netOfLead[static_cast<std::size_t>(layout.leadIndex(part, from))];
            const int b = layout.netOfLead[static_cast<std::size_t>(layout.leadIndex(part, to))];
            if (a == net && b != net) nets.push_back(b);
            if (b == net && a != net) nets.push_back(a);
        }
    }
    return nets;
}

}  // namespace tiepoint::ui
