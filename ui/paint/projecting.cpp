#include "ui/paint/projecting.h"

#include "ui/paint/bench_painter.h"
#include "ui/paint/lettering.h"
#include "ui/paint/shade.h"

#include <algorithm>

namespace tiepoint::ui {
namespace {

constexpr double kColumnsMm = 3 * kPitchMm;
constexpr double kLeaderPixels = 2.4, kLinesOfScreen = 1080;
constexpr double kWordsOfTag = 0.8;        ///< words beside the pointer and on flags, by those of tags
constexpr double kSmallestIdPixels = 9.5;  ///< that can be read at a desk
constexpr double kSmallestTagPixels = 12;  ///< in a low window: words of it can be read still
constexpr double kAboveMm = 2.5;           ///< room above and below, for wires that stand out

/// A supply is before it is plugged in too: the lesson begins there. A meter that lies by isn't.
bool isInTheCircuit(const Part& part) {
    return part.kind->isSupply || std::ranges::any_of(part.leads, [](const auto& hole) { return hole.has_value(); });
}

}  // namespace

QRectF circuitArea(const Picture& picture) {
    QRectF area;
    const std::vector<Part>& parts = picture.bench().parts;
    for (int part = 0; part < static_cast<int>(parts.size()); ++part) {
        if (isInTheCircuit(parts[static_cast<std::size_t>(part)])) area |= partShape(picture, part).boundingRect();
    }
    for (int jumper = 0; jumper < static_cast<int>(picture.bench().jumpers.size()); ++jumper)
        area |= jumperLine(picture, jumper).boundingRect();
    if (area.isEmpty()) return toQt(picture.table->allMm);
    return area.adjusted(-kColumnsMm, -kAboveMm, kColumnsMm, kAboveMm);
}

WordSizes deskSizes(double heightPixels, double pixelsPerMm) {
    WordSizes sizes;
    const double tag = std::max(kDeskTagShare * heightPixels, kSmallestTagPixels) / pixelsPerMm;
    sizes.readingMm = std::max(sizes.readingMm, tag);
    sizes.wordsMm = std::max(sizes.wordsMm, kWordsOfTag * tag);
    sizes.flagMm = std::max(sizes.flagMm, kWordsOfTag * tag);
    sizes.idMm = std::max(sizes.idMm, kSmallestIdPixels / pixelsPerMm);
    sizes.noteMm = std::max(sizes.noteMm, sizes.readingMm);
    sizes.leaderMm = std::max(sizes.leaderMm, kLeaderPixels * heightPixels / kLinesOfScreen / pixelsPerMm);
    return sizes;
}

WordSizes projectedSizes(double heightPixels, double pixelsPerMm) {
    const auto em = [&](double capShare) { return capShare * heightPixels / pixelsPerMm / kCapHeight; };
    const WordSizes desk = deskSizes(heightPixels, pixelsPerMm);
    const double words = em(kWordCapShare), reading = em(kReadingCapShare);
    return {std::max(desk.idMm, words),
            std::max(desk.readingMm, reading),
            std::max(desk.flagMm, words),
            std::max(desk.wordsMm, words),
            words,
            std::max(desk.noteMm, words),
            desk.leaderMm};
}

}  // namespace tiepoint::ui
