#include "ui/cards/walk_text.h"

#include "core/bench/describe.h"
#include "core/why/walk_words.h"
#include "ui/theme/qs.h"

#include <QStringList>

#include <algorithm>
#include <cmath>

namespace tiepoint::ui {
namespace {

constexpr int kMostSteps = 5;  ///< of an axis on a card

/// Rises are told with their sign too: a walk goes up and down.
QString riseText(const Figure& rise) { return (rise.steps() > 0 ? QStringLiteral("+") : QString()) + qs(rise.text()); }

WalkMove moveOf(const Layout& layout, const WalkStep& step) {
    const Bench& bench = *layout.bench;
    if (step.part >= 0) return {bench.parts[static_cast<std::size_t>(step.part)].id, true, riseText(step.shown)};
    const Piece& piece = layout.pieces[static_cast<std::size_t>(step.piece)];
    if (piece.kind != PieceKind::Jumper) return {};
    return {bench.jumpers[static_cast<std::size_t>(piece.owner)].id, false, {}};
}

QString spokenOf(const WalkText& text) {
    QStringList words{text.title};
    if (!text.places.empty()) words << QStringLiteral("from %1 at %2").arg(text.places.front(), text.figures.front());
    for (std::size_t i = 0; i < text.moves.size(); ++i) {
        if (text.moves[i].isPart)
            words << QStringLiteral("%1 %2 to %3 at %4")
                         .arg(qs(text.moves[i].thing), text.moves[i].figure, text.figures[i + 1], text.places[i + 1]);
    }
    if (!text.places.empty()) words << QStringLiteral("and back to where it began");
    words << text.note;
    words.removeAll(QString());
    return words.join(QStringLiteral(", "));
}

}  // namespace

WalkText walkText(const Picture& picture, const std::string& id) {
    WalkText text;
    text.title = QStringLiteral("Voltage around the loop");
    if (!picture.snapshot) return text;
    const Snapshot& snapshot = *picture.snapshot;
    const int named = picture.bench().partIndex(id);
    const int part = named >= 0 ? named : partToWalk(snapshot);
    if (part < 0) {
        text.note = QStringLiteral("There is no supply on the bench.");
        return text;
    }
    text.title = QStringLiteral("Voltage around the loop of %1")
                     .arg(qs(describePart(picture.bench().parts[static_cast<std::size_t>(part)])));
    const PotentialWalk walk = walkPotential(snapshot, part);
    text.note = qs(whyNoWalk(snapshot, walk, part));
    for (const WalkPoint& point : walk.points) {
        text.places.push_back(qs(placeInWords(*snapshot.layout, point.joint)));
        text.volts.push_back(point.volt);
        text.figures.push_back(qs(point.shown.text()));
    }
    for (const WalkStep& step : walk.steps) text.moves.push_back(moveOf(*snapshot.layout, step));
    const auto divisions = divisionsInWords(snapshot, walk);
    if (!divisions.empty()) text.note = qs(divisions.front());
    if (divisions.size() > 1) {
        text.briefer << text.note;
        text.note += QStringLiteral(" It divides at %1 more.").arg(divisions.size() - 1);
    }
    text.spoken = spokenOf(text);
    return text;
}

int AxisTicks::count() const { return static_cast<int>(std::lround((high - low) / step)) + 1; }

AxisTicks ticksFor(double least, double most) {
    const double low = std::min(0.0, least), high = std::max(most, low + 1e-3);
    const double rough = (high - low) / kMostSteps;
    const double decade = std::pow(10, std::floor(std::log10(rough)));
    AxisTicks ticks;
    ticks.step = 10 * decade;
    for (const double factor : {5.0, 2.0, 1.0}) {
        if (factor * decade >= rough * (1 - 1e-9)) ticks.step = factor * decade;
    }
    constexpr double kSlack = 1e-9;
    ticks.low = std::floor(low / ticks.step + kSlack) * ticks.step;
    ticks.high = std::ceil(high / ticks.step - kSlack) * ticks.step;
    return ticks;
}

}  // namespace tiepoint::ui
