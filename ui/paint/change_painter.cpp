#include "ui/paint/change_painter.h"

#include "core/base/quantity.h"
#include "ui/paint/label_painter.h"
#include "ui/paint/net_marks.h"
#include "ui/paint/shade.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace tiepoint::ui {
namespace {

constexpr int kRatioDigits = 2;
constexpr std::size_t kMany = 12;  ///< tags beyond this hide the bench
constexpr double kNear = 0.04;     ///< how far from a half is still called half
constexpr double kTagPadMm = 0.75, kTagHeight = 1.4;

struct Ratio {
    double value;
    const char* word;
};
constexpr std::array kRatios{Ratio{0.1, "a tenth"},  Ratio{0.25, "a quarter"}, Ratio{1.0 / 3, "a third"},
                             Ratio{0.5, "half"},     Ratio{2, "twice"},        Ratio{3, "three times"},
                             Ratio{4, "four times"}, Ratio{10, "ten times"}};

QString ratioWords(double before, double after) {
    const double ratio = after / before;
    for (const Ratio& known : kRatios) {
        if (std::abs(ratio / known.value - 1) <= kNear) return QString::fromLatin1(known.word);
    }
    if (ratio > 2) {
        // Two digits; beyond a hundred times whole hundreds and so on, never a power of ten in letters.
        const double rounded = QString::number(ratio, 'g', kRatioDigits).toDouble();
        return QStringLiteral("%1 times").arg(QString::fromStdString(formatSetting(rounded, {})));
    }
    const int percent = static_cast<int>(std::lround(std::abs(ratio - 1) * 100));
    return ratio > 1 ? QStringLiteral("%1 % more").arg(percent) : QStringLiteral("%1 % less").arg(percent);
}

QString qs(const Figure& figure) { return QString::fromStdString(figure.text()); }

/// "9.2 to 4.6 mA": a unit that both share is said once, and so is a figure.
QString fromTo(const QString& from, const QString& to) {
    if (from == to) return to;
    const QString unit = to.section(QLatin1Char(' '), 1);
    const bool once = from.section(QLatin1Char(' '), 1) == unit || from.startsWith(QLatin1String("0 "));
    return QStringLiteral("%1 to %2").arg(once ? from.section(QLatin1Char(' '), 0, 0) : from, to);
}

std::vector<Change> shown(const std::vector<Change>& all) {
    if (all.size() <= kMany) return all;
    std::vector<Change> some;
    std::copy_if(all.begin(), all.end(), std::back_inserter(some),
                 [](const Change& c) { return c.changed && c.kind == ReadingKind::Current; });
    some.resize(std::min(some.size(), kMany));
    return some;
}

}  // namespace

QString changeWords(const Change& change) {
    QString both = fromTo(qs(change.beforeShown), qs(change.afterShown));
    if (change.kind == ReadingKind::Voltage) return both;
    if (!change.changed) return QStringLiteral("%1, unchanged").arg(qs(change.afterShown));
    if (change.before == 0 || change.after == 0) return both;
    return QStringLiteral("%1, %2").arg(both, ratioWords(change.before, change.after));
}

std::vector<ChangeSeen> changesSeen(const Picture& picture) {
    std::vector<ChangeSeen> changes;
    if (!picture.changes || !picture.live()) return changes;
    for (const Change& change : shown(*picture.changes)) {
        const int part = picture.bench().partIndex(change.part);
        if (part >= 0 && change.kind == ReadingKind::Current)
            changes.push_back({changeWords(change), change.changed, part});
    }
    return changes;
}

void addChanges(Patches& patches, const std::vector<ChangeSeen>& changes, Clearance clearance) {
    const Lettering lettering{clearance.ground().sizes.wordsMm, QFont::DemiBold};
    for (const ChangeSeen& change : changes) {
        const QSizeF size(textWidthMm(change.words, lettering) + 2 * kTagPadMm, kTagHeight * lettering.sizeMm);
        const Label label = placeBesidePart(change.part, change.words, size, clearance);
        patches.push_back(
            tagPatch(label.frame, change.words, lettering, change.changed ? TagEdge::Accent : TagEdge::Dim));
    }
}

}  // namespace tiepoint::ui
