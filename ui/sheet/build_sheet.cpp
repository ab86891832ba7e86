#include "ui/sheet/build_sheet.h"

#include "core/base/quantity.h"
#include "ui/export/save_bytes.h"
#include "ui/paint/bench_painter.h"
#include "ui/sheet/sheet_pieces.h"
#include "ui/theme/plain_text.h"

#include <algorithm>
#include <memory>

namespace tiepoint::ui {
namespace {

constexpr double kRuleLengthMm = 50;

class SheetMaker {
public:
    SheetMaker(const BuildPlan& plan, const SheetWish& wish)
        : plan_(plan),
          wish_(wish),
          width_(paper::contentWidthMm(wish.paper)) {}

    std::vector<std::vector<Block>> run() {
        addNames();
        addBoardAndCautions();
        add(ruleBlock());
        addParts();
        addJumpers();
        if (wish_.reader == SheetFor::Planner) {
            addNotes();
        } else {
            add(stepBlocks(plan_, wish_));
            addAfterPower();
            add(measuringBlocks(plan_, wish_));
        }
        if (wish_.copies > 1 || wish_.sparePercent > 0) addTotals();
        return pagesOf(std::move(blocks_), wish_.paper);
    }

private:
    void add(Block block) { blocks_.push_back(std::move(block)); }
    void add(std::vector<Block> blocks) {
        for (Block& block : blocks) add(std::move(block));
    }
    /// Sentences of the plan as lines.
    static std::vector<QString> linesOf(const std::vector<std::string>& sentences) {
        std::vector<QString> lines;
        for (const std::string& each : sentences) lines.push_back(paperWords(each));
        return lines;
    }

    void addNames() {
        add({8,
             [width = width_](QPainter& painter, QPointF at) {
                 constexpr double kDateAtMm = 0.62;
                 painter.setPen(QPen(paper::dim(), paper::kHairMm));
                 double x = at.x();
                 for (const auto& [label, endMm] : {std::pair(QStringLiteral("Name"), width * kDateAtMm - 6),
                                                    std::pair(QStringLiteral("Date"), width)}) {
                     drawText(painter, label, {x, at.y() + 3}, paper::kSmall, paper::dim(), Qt::AlignLeft);
                     painter.drawLine(QPointF(x + 11, at.y() + 5), QPointF(at.x() + endMm, at.y() + 5));
                     x = at.x() + width * kDateAtMm;
                 }
             },
             false, false});
    }

    void addBoardAndCautions() {
        BoardOnPaper whole = boardsAlone(tellsPlaces(wish_) ? plan_.bench() : onlyThese(plan_.bench(), {}));
        whole.scale = boardFor(whole.bench, width_).scale;
        const QSizeF size = sizeOnPaper(whole);
        const double beside = width_ - size.width() - kBesideMm;
        constexpr double kLeastCautionsMm = 80;
        if (beside >= kLeastCautionsMm) {
            const Block cautions = cautionsBlock(beside);
            add({std::max(size.height(), cautions.heightMm) + 3,
                 [whole, cautions, x = size.width() + kBesideMm](QPainter& painter, QPointF at) {
                     paintOnPaper(painter, at, whole);
                     cautions.paint(painter, at + QPointF(x, 0));
                 },
                 false, false});
            return;
        }
        add({size.height() + 3, [whole](QPainter& painter, QPointF at) { paintOnPaper(painter, at, whole); }, true,
             false});
        Block cautions = cautionsBlock(width_);
        cautions.heightMm += 3;
        add(std::move(cautions));
    }

    /// In the heaviest frame of the sheet, as boxes to tick, the supervising person first.
    Block cautionsBlock(double width) const {
        constexpr double kPadMm = 4, kHeadMm = 8;
        const Block ticks = tickList(linesOf(plan_.beforePower), width - 2 * kPadMm, paper::kStrong, paper::kBody);
        const double height = ticks.heightMm + kHeadMm + 2 * kPadMm - 1;
        return {height,
                [=](QPainter& painter, QPointF at) {
                    painter.setPen(QPen(paper::ink(), paper::kHeavyMm));
                    painter.setBrush(Qt::NoBrush);
                    painter.drawRoundedRect(QRectF(at, QSizeF(width, height)), 1.5, 1.5);
                    drawText(painter, QStringLiteral("Before power"), at + QPointF(kPadMm, kPadMm + 2.4),
                             paper::kHeading, paper::ink(), Qt::AlignLeft);
                    ticks.paint(painter, at + QPointF(kPadMm, kPadMm + kHeadMm));
                },
                false, false};
    }

    Block ruleBlock() const {
        constexpr double kHighMm = 12;
        const QString say = boardFor(plan_.layout->bench, width_).scale == 1
                                ? QStringLiteral("50 mm. Longer or shorter? Print again at 100 %.")
                                : QStringLiteral("50 mm. The boards are drawn smaller than they are.");
        return {kHighMm,
                [say](QPainter& painter, QPointF at) {
                    painter.setPen(QPen(paper::ink(), paper::kHairMm));
                    const QPointF left = at + QPointF(1, 2);
                    painter.drawLine(left, left + QPointF(kRuleLengthMm, 0));
                    for (int mm = 0; mm <= 50; ++mm) {
                        const double tick = mm % 10 == 0 ? 3.2 : mm % 5 == 0 ? 2.2 : 1.4;
                        painter.drawLine(left + QPointF(mm, 0), left + QPointF(mm, tick));
                        if (mm % 10 == 0)
                            drawText(painter, QString::number(mm), left + QPointF(mm, 5.4), paper::kSmall,
                                     paper::ink());
                    }
                    drawText(painter, say, left + QPointF(kRuleLengthMm + 5, 1.6), paper::kSmall, paper::ink(),
                             Qt::AlignLeft);
                },
                false, false};
    }

    PaperCell box() const {
        return {{},
                false,
                [](QPainter& painter, const QRectF& room) {
                    paintTickBox(painter, room.center() - QPointF(kTickBoxMm, kTickBoxMm) / 2);
                },
                0};
    }

    void addParts() {
        add(heading(QStringLiteral("Parts")));
        const double pictureMm = 20, idMm = 14, boxMm = 14;
        const bool places = tellsPlaces(wish_);
        const double rest = width_ - pictureMm - idMm - boxMm;
        const std::vector<PaperColumn> columns{{QStringLiteral("Id"), idMm},
                                               {QStringLiteral("Part"), rest * 0.26},
                                               {QStringLiteral("How to know it"), pictureMm},
                                               {QString(), rest * 0.36},
                                               {QStringLiteral("Goes into"), rest * 0.38},
                                               {QStringLiteral("Found"), boxMm}};
        std::vector<std::vector<PaperCell>> rows;
        for (const PlanPart& part : plan_.parts) {
            const Part& each = plan_.bench().parts[static_cast<std::size_t>(part.part)];
            rows.push_back({{paperWords(each.id), true, {}, 0},
                            {paperWords(part.name), false, {}, 0},
                            samplePicture(each),
                            {paperWords(part.signs), false, {}, 0},
                            {places ? paperWords(part.place) : QString(), false, {}, 0},
                            box()});
        }
        add(tableOf(columns, rows));
        addKit();
    }

    /// What the class takes instead of what, and what it has to get.
    void addKit() {
        if (plan_.kitTitle.empty()) return;
        std::vector<std::string> said;
        for (const std::string& each : plan_.kitGaps) said.push_back(each);
        if (said.empty()) said.push_back("it has all that is needed");
        std::string text = plan_.kitTitle + ": ";
        for (std::size_t i = 0; i < said.size(); ++i) text += (i > 0 ? "; " : "") + said[i];
        const std::vector<QString> lines = wrapped(paperWords(text + "."), paper::kSmall, width_);
        const double height = lineHeightMm(paper::kSmall) * static_cast<double>(lines.size()) + 2;
        add({height,
             [lines](QPainter& painter, QPointF at) {
                 paintLines(painter, at + QPointF(0, 1), lines, paper::kSmall, paper::ink());
             },
             false, false});
    }

    static PaperCell samplePicture(const Part& part) {
        if (standsOnTable(part)) return {};  // too large for a row
        const double needed = std::min(12.0, std::max(7.0, part.kind->package->bodyWidthMm + 3));
        return {{},
                false,
                [part](QPainter& painter, const QRectF& room) {
                    painter.setClipRect(room);
                    painter.translate(room.center());
                    paintSample(painter, theme(ThemeName::Projector), part);
                },
                needed};
    }

    void addJumpers() {
        if (plan_.jumpers.empty()) return;
        add(heading(QStringLiteral("Jumpers")));
        const double idMm = 14, letterMm = 14, boxMm = 14, numberMm = 18;
        const bool places = tellsPlaces(wish_);
        const double rest = width_ - idMm - letterMm - boxMm - 2 * numberMm;
        const std::vector<PaperColumn> columns{
            {QStringLiteral("Id"), idMm},          {QStringLiteral("Letter"), letterMm},
            {QStringLiteral("Colour"), rest * .2}, {QStringLiteral("From"), rest * .4},
            {QStringLiteral("To"), rest * .4},     {QStringLiteral("Span"), numberMm},
            {QStringLiteral("Cut"), numberMm},     {QStringLiteral("Placed"), boxMm}};
        std::vector<std::vector<PaperCell>> rows;
        for (const PlanJumper& jumper : plan_.jumpers) {
            const Jumper& each = plan_.bench().jumpers[static_cast<std::size_t>(jumper.jumper)];
            const auto& colour = jumperColours()[static_cast<std::size_t>(each.colour)].name;
            const auto mm = [&](int length) { return places ? QStringLiteral("%1 mm").arg(length) : QString(); };
            rows.push_back({{paperWords(each.id), true, {}, 0},
                            {QString(QLatin1Char(jumper.letter)), false, {}, 0},
                            {QString::fromUtf8(colour.data(), static_cast<qsizetype>(colour.size())), false, {}, 0},
                            {places ? paperWords(jumper.from) : QString(), false, {}, 0},
                            {places ? paperWords(jumper.to) : QString(), false, {}, 0},
                            {mm(jumper.spanMm), false, {}, 0},
                            {mm(jumper.cutMm), false, {}, 0},
                            box()});
        }
        add(tableOf(columns, rows));
        add(gap(1.5));
        add(paragraph(
            QStringLiteral("Cut is the wire with 6 mm bared at each end. Wear eye protection where wire is cut. "
                           "Reusable jumpers: take the next longer one."),
            paper::kSmall, width_));
    }

    void addNotes() {
        add(heading(QStringLiteral("My plan")));
        constexpr int kLines = 6;
        for (int i = 0; i < kLines; ++i)
            add({9,
                 [width = width_](QPainter& painter, QPointF at) {
                     painter.setPen(QPen(paper::dim(), paper::kHairMm));
                     painter.drawLine(at + QPointF(0, 8), at + QPointF(width, 8));
                 },
                 false, false});
    }

    void addAfterPower() {
        add(heading(QStringLiteral("After power")));
        add(tickList(linesOf(plan_.afterPower), width_, paper::kBody, paper::kBody));
    }

    void addTotals() {
        Block title =
            heading(QStringLiteral("To buy for %1 benches, %2 % in reserve").arg(wish_.copies).arg(wish_.sparePercent));
        title.startsPage = true;
        add(std::move(title));
        const double numberMm = 24;
        const double rest = width_ - 3 * numberMm;
        const std::vector<PaperColumn> columns{{QStringLiteral("Part"), rest * 0.6},
                                               {QStringLiteral("Ids"), rest * 0.4},
                                               {QStringLiteral("On each"), numberMm},
                                               {QStringLiteral("Buy"), numberMm},
                                               {QStringLiteral("Wire"), numberMm}};
        std::vector<std::vector<PaperCell>> rows;
        for (const Total& total : totalsOf(plan_, wish_.copies, wish_.sparePercent)) {
            constexpr double kMmInMetre = 1000;
            const QString wire =
                total.wireMm > 0 ? QStringLiteral("%1 m").arg(total.wireMm / kMmInMetre, 0, 'f', 2) : QString();
            rows.push_back({{paperWords(total.name), false, {}, 0},
                            {paperWords(total.ids), false, {}, 0},
                            {QString::number(total.each), false, {}, 0},
                            {QString::number(total.all), true, {}, 0},
                            {wire, false, {}, 0}});
        }
        add(tableOf(columns, rows));
    }

    const BuildPlan& plan_;
    const SheetWish& wish_;
    double width_;
    std::vector<Block> blocks_;
};

}  // namespace

std::vector<std::vector<Block>> buildSheetPages(const BuildPlan& plan, const SheetWish& wish) {
    return SheetMaker(plan, wish).run();
}

PageHead buildSheetHead(const BuildPlan& plan, const SheetWish& wish) {
    const QString what = wish.reader == SheetFor::Teacher   ? QStringLiteral("Build sheet, key")
                         : wish.reader == SheetFor::Planner ? QStringLiteral("Planning sheet")
                                                            : QStringLiteral("Build sheet");
    return {plainText(plan.bench().title), what};
}

std::optional<QString> savePages(const std::optional<QByteArray>& bytes, const QString& path) {
    if (!bytes) return QStringLiteral("the pages could not be drawn");
    return saveBytes(*bytes, path);
}

std::optional<QString> saveBuildSheet(const BuildPlan& plan, const SheetWish& wish, const QString& path) {
    return savePages(pagesAsPdf(buildSheetPages(plan, wish), buildSheetHead(plan, wish), wish.paper), path);
}

}  // namespace tiepoint::ui
