#include "ui/sheet/sheet_pieces.h"

#include <cmath>
#include <utility>

namespace tiepoint::ui {
namespace {

constexpr QSizeF kField(40, 6);

void paintField(QPainter& painter, QPointF topLeft, const QString& unit) {
    painter.setPen(QPen(paper::ink(), 0.35));
    painter.setBrush(Qt::NoBrush);
    painter.drawRoundedRect(QRectF(topLeft, kField), 0.6, 0.6);
    drawText(painter, unit, topLeft + QPointF(kField.width() - 1.6, kField.height() / 2), paper::kSmall, paper::dim(),
             Qt::AlignRight);
}

/// "2.10 V (1.89 to 2.31 V)"; what a real meter shows at metal that is joined to nothing, in words.
QString expectedWords(const MeasuredPlace& place) {
    if (place.floats) return QStringLiteral("joined to nothing: about 0 V, may drift");
    const auto two = [](double volt) { return QString::number(std::abs(volt) < 0.005 ? 0.0 : volt, 'f', 2); };
    return QStringLiteral("%1 V (%2 to %3 V)").arg(two(place.volt), two(place.least), two(place.greatest));
}

std::vector<PaperCell> measuredRow(const QString& what, bool isKey, const QString& expected, const QString& unit) {
    if (isKey) return {{what, true, {}, 0}, {expected, false, {}, 0}};
    const PaperCell field{{},
                          false,
                          [unit](QPainter& painter, const QRectF& room) {
                              paintField(painter, room.center() - QPointF(kField.width(), kField.height()) / 2, unit);
                          },
                          kField.height() + 2};
    return {{what, true, {}, 0}, field, field};
}

void addPosition(std::vector<Block>& blocks, const MeasuredPosition& position, const SheetWish& wish, double width) {
    const bool isKey = wish.reader == SheetFor::Teacher;
    blocks.push_back(gap(2.5));
    blocks.back().keepsWithNext = true;
    Block title = paragraph(paperWords(position.title), paper::kStrong, width, 1);
    title.keepsWithNext = true;
    blocks.push_back(std::move(title));
    const double field = kField.width() + 4;
    std::vector<PaperColumn> columns{{QStringLiteral("Touch"), isKey ? width * 0.5 : width - 2 * field}};
    if (isKey)
        columns.push_back({QStringLiteral("Expected"), width * 0.5});
    else
        columns.insert(columns.end(), {{QStringLiteral("I predict"), field}, {QStringLiteral("I measure"), field}});
    std::vector<std::vector<PaperCell>> rows;
    for (const ExpectedLight& light : position.lights)
        rows.push_back(measuredRow(paperWords(light.id), isKey,
                                   light.lit ? QStringLiteral("lit") : QStringLiteral("dark"),
                                   QStringLiteral("lit / dark")));
    for (const MeasuredPlace& place : position.places)
        rows.push_back(measuredRow(paperWords(place.where), isKey, expectedWords(place), QStringLiteral("V")));
    for (Block& block : tableOf(columns, rows)) {
        block.keepsWithNext = true;  // a position is measured in one go: it stands on one page
        blocks.push_back(std::move(block));
    }
    blocks.back().keepsWithNext = false;
    if (isKey && !position.loop.empty()) {
        blocks.push_back(gap(1.5));
        blocks.push_back(paragraph(paperWords(position.loop), paper::kStrong, width));
    }
}

}  // namespace

std::vector<Block> measuringBlocks(const BuildPlan& plan, const SheetWish& wish) {
    std::vector<Block> blocks;
    const double width = paper::contentWidthMm(wish.paper);

    if (plan.positions.empty()) return blocks;
    blocks.push_back(heading(QStringLiteral("Measure")));
    const QString black = plan.blackTip.empty() ? QStringLiteral("the minus") : paperWords(plan.blackTip);
    blocks.push_back(
        paragraph(QStringLiteral("Meter on volts. Its tips don't go into holes: touch the leg, or a jumper plugged in "
                                 "beside it. Black tip: %1. Your partner presses.")
                      .arg(black),
                  paper::kBody, width));
    blocks.back().keepsWithNext = true;
    for (const MeasuredPosition& position : plan.positions) addPosition(blocks, position, wish, width);
    if (wish.reader == SheetFor::Teacher)
        blocks.push_back(paragraph(
            QStringLiteral("Ranges: every part off by its tolerance, all of them against the reading: resistors as "
                           "banded, supplies 1 %, USB and cells 5 %, LEDs 0.2 V. Outside of it, or a hot part: switch "
                           "off and look again."),
            paper::kSmall, width));
    return blocks;
}

}  // namespace tiepoint::ui
