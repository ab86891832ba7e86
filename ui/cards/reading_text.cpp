#include "ui/cards/reading_text.h"

#include "core/base/quantity.h"
#include "core/bench/describe.h"
#include "core/edit/holes.h"
#include "core/findings/damage.h"
#include "core/meter/meter.h"
#include "core/snapshot/readings.h"
#include "ui/paint/overload.h"
#include "ui/theme/qs.h"

#include <cmath>

namespace tiepoint::ui {
namespace {

constexpr double kPercent = 100;

QString shareWords(const Snapshot& snapshot, int part, const RatingShare& share) {
    const Figure figure = shownFigure(snapshot, part, *share.rating);
    if (share.rating->maximum && share.share() > 1)  // in the same words as the flag on the bench
        return overloadWords(figure, share.limit, share.rating->label);
    const QString words = QStringLiteral("%1 % of its %2 %3")
                              .arg(QString::number(std::round(share.share() * kPercent)),
                                   qs(formatSetting(share.limit, share.unit)), qs(share.rating->label));
    return share.rating->quantity == "current" ? words : qs(figure.text()) + QStringLiteral(": ") + words;
}

/// The title in all its forms: "D1, red LED in h16 and h19", "D1 \u00b7 h16, h19", "D1". The holes are those of a part's leads or a jumper's
/// ends; there may be none.
void setTitles(ReadingText& text, const std::string& id, const QString& what, QStringList holes) {
    text.title = what;
    text.briefer.clear();
    if (!holes.isEmpty()) {
        text.briefer << qs(id) + QStringLiteral(" \u00b7 ") + holes.join(QStringLiteral(", "));
        const QString last = holes.takeLast();
        text.title += QStringLiteral(" in ") +
                      (holes.isEmpty() ? last : holes.join(QStringLiteral(", ")) + QStringLiteral(" and ") + last);
    }
    text.briefer << what << qs(id);
}

void setPartTitles(ReadingText& text, const Bench& bench, const Part& part) {
    QStringList holes;
    for (const auto& lead : part.leads)
        if (lead) holes << qs(holeName(bench, *lead));
    setTitles(text, part.id, qs(describePart(part)), holes);
}

void setJumperTitles(ReadingText& text, const Bench& bench, const Jumper& jumper) {
    QStringList holes;
    for (const JumperEnd& end : jumper.ends)
        if (const Hole* hole = std::get_if<Hole>(&end)) holes << qs(holeName(bench, *hole));
    const std::string_view colour = jumperColours()[jumper.colour].name;
    setTitles(text, jumper.id,
              QStringLiteral("%1, %2 jumper")
                  .arg(qs(jumper.id), QString::fromUtf8(colour.data(), static_cast<qsizetype>(colour.size()))),
              holes);
}

/// Words in place of figures where there is no solution; nothing if there is one.
std::optional<QString> noAnswer(const Picture& picture) {
    if (!picture.snapshot) return QStringLiteral("…");
    if (picture.snapshot->status() == Status::None) return QStringLiteral("no answer");
    return std::nullopt;
}

/// A meter's own display, large enough to be read from afar.
ReadingText meterText(const Part& part, const MeterReading& reading) {
    ReadingText text;
    text.big = qs(reading.text());
    if (!reading.why.empty())
        text.note = qs(reading.why);
    else if (!reading.on)
        text.note = QStringLiteral("Its dial is at off.");
    else
        text.note = QStringLiteral("Set to %1.%2")
                        .arg(qs(dialLabel(part)), reading.beeps ? QStringLiteral(" It beeps: joined.") : QString());
    return text;
}

ReadingText partFigures(const Picture& picture, int index) {
    const Part& part = picture.bench().parts[index];
    if (picture.snapshot) {
        if (const auto reading = meterReading(*picture.snapshot, index)) return meterText(part, *reading);
    }
    ReadingText text;
    if (const auto words = noAnswer(picture)) {
        text.big = *words;
        if (picture.snapshot) text.note = qs(picture.snapshot->solution.reason);
        return text;
    }
    const Snapshot& snapshot = *picture.snapshot;
    const ThroughFigures through = snapshot.shown().through(index);
    text.big = qs(through.most().text());
    if (snapshot.status() == Status::Off) {
        text.note = QStringLiteral("No supply is switched on.");
        return text;
    }
    text.in = qs(through.in.text());
    text.out = qs(through.out.text());
    if (const auto rating = tightestRating(snapshot, index)) {
        text.share = rating->share();
        text.note = shareWords(snapshot, index, *rating);
    }
    return text;
}

ReadingText partReading(const Picture& picture, int index) {
    ReadingText text = partFigures(picture, index);
    text.part = picture.bench().parts[index].id;
    setPartTitles(text, picture.bench(), picture.bench().parts[index]);
    return text;
}

ReadingText jumperReading(const Picture& picture, int index) {
    const Jumper& jumper = picture.bench().jumpers[index];
    ReadingText text;
    setJumperTitles(text, picture.bench(), jumper);
    if (const auto words = noAnswer(picture)) {
        text.big = *words;
        return text;
    }
    text.big = qs(picture.snapshot->shown().jumperCurrent(index).magnitude().text());
    text.in = text.out = text.big;
    text.note = QStringLiteral("The same at both ends.");
    return text;
}

/// The first supply, or the first part at all, while there is no snapshot that could say more.
int fallbackPart(const Bench& bench) {
    for (std::size_t i = 0; i < bench.parts.size(); ++i)
        if (bench.parts[i].kind->isSupply) return static_cast<int>(i);
    return bench.parts.empty() ? -1 : 0;
}

}  // namespace

QString voltScaleWords(double volt) {
    constexpr int kScaleDigits = 3;
    return qs(formatSetting(QString::number(volt, 'g', kScaleDigits).toDouble(), "V"));
}

ReadingText readingText(const Picture& picture, const std::string& id) {
    const Bench& bench = picture.bench();
    if (const int jumper = bench.jumperIndex(id); jumper >= 0) return jumperReading(picture, jumper);
    int part = bench.partIndex(id);
    if (part < 0 && picture.live()) part = mostInteresting(*picture.live());
    if (part < 0) part = fallbackPart(bench);
    if (part >= 0) {
        ReadingText text = partReading(picture, part);
        if (const std::string ruined = ruinWords(bench, part); !ruined.empty()) {
            text.note = qs(ruined);
            text.share.reset();
        }
        return text;
    }
    return {QStringLiteral("An empty bench"), {}, {}, {}, QStringLiteral("Drag a part out of the tray below."), {}};
}

}  // namespace tiepoint::ui
