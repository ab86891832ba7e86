#include "ui/sheet/sheet_painter.h"
#include "ui/sheet/sheet_pieces.h"

#include <algorithm>
#include <utility>

namespace tiepoint::ui {
namespace {

constexpr double kMostHighMm = 190;

void paintNumber(QPainter& painter, QPointF topLeft, std::size_t number) {
    constexpr double kRadiusMm = 2.8;
    painter.setPen(Qt::NoPen);
    painter.setBrush(paper::ink());
    const QPointF middle = topLeft + QPointF(kRadiusMm, kRadiusMm);
    painter.drawEllipse(middle, kRadiusMm, kRadiusMm);
    drawText(painter, QString::number(number), middle, paper::kStrong, Qt::white);
}

/// The number, the title and its box; as high as its lines.
Block stepHead(const PlanStep& step, std::size_t number, double width) {
    constexpr double kTextAtMm = 8, kHighMm = 6.5;
    auto lines = wrapped(paperWords(step.title), paper::kStrong, width - kTextAtMm - kTickBoxMm - 4);
    const double height = std::max(kHighMm, lineHeightMm(paper::kStrong) * static_cast<double>(lines.size())) + 1;
    return {height,
            [=](QPainter& painter, QPointF at) {
                paintNumber(painter, at, number);
                paintLines(painter, at + QPointF(kTextAtMm, 0.6), lines, paper::kStrong, paper::ink());
                paintTickBox(painter, at + QPointF(width - kTickBoxMm, 1));
            },
            true, false};
}

Block stepPicture(const BuildPlan& plan, std::size_t step, double width, double pageWidth) {
    const Block head = stepHead(plan.steps[step], step + 1, width);
    BoardOnPaper picture =
        boardFor(std::make_shared<const Bench>(onlyThese(plan.bench(), builtBy(plan, step))), pageWidth);
    picture.bracketed = plan.steps[step].ids;
    const QSizeF size = sizeOnPaper(picture);
    return {head.heightMm + size.height() + 4,
            [=](QPainter& painter, QPointF at) {
                head.paint(painter, at);
                paintOnPaper(painter, at + QPointF(0, head.heightMm), picture);
            },
            false, false};
}

/// The circuit diagram in place of steps: where things go is the learner's own work.
std::vector<Block> diagramBlocks(const BuildPlan& plan, const SheetWish& wish) {
    constexpr double kMostDiagramMm = 110;
    const double width = paper::contentWidthMm(wish.paper);
    SheetPicture picture;
    picture.sheet = diagramOf(plan.layout, SymbolStyle::Iec);
    picture.theme = &theme(ThemeName::Projector);
    picture.views.arrows = Arrows::Off;
    picture.views.readings = false;
    picture.paper = false;
    const Diagram& diagram = picture.sheet->diagram;
    const double scale = std::min({1.0, width / diagram.width, kMostDiagramMm / diagram.height});
    std::vector<Block> blocks{heading(QStringLiteral("Build"), QStringLiteral("from the diagram; the supply is off"))};
    blocks.push_back({diagram.height * scale + 3,
                      [picture, scale](QPainter& painter, QPointF at) {
                          painter.translate(at);
                          painter.scale(scale, scale);
                          paintSheet(painter, picture);
                      },
                      false, false});
    return blocks;
}

}  // namespace

std::vector<std::string> builtBy(const BuildPlan& plan, std::size_t step) {
    std::vector<std::string> ids;
    for (std::size_t i = 0; i <= step; ++i) ids.insert(ids.end(), plan.steps[i].ids.begin(), plan.steps[i].ids.end());
    return ids;
}

BoardOnPaper boardFor(std::shared_ptr<const Bench> bench, double widthMm) {
    BoardOnPaper board;
    board.bench = std::move(bench);
    const QSizeF size = sizeOnPaper(board);
    board.scale = std::min({1.0, widthMm / size.width(), kMostHighMm / size.height()});
    return board;
}

std::vector<Block> stepBlocks(const BuildPlan& plan, const SheetWish& wish) {
    if (wish.support == Support::Diagram) return diagramBlocks(plan, wish);
    std::vector<Block> blocks;
    const double pageWidth = paper::contentWidthMm(wish.paper);
    Block title = heading(QStringLiteral("Build"), QStringLiteral("the supply is off, its leads are out"));
    const bool pictures = wish.support == Support::Pictures;
    title.startsPage = pictures;
    blocks.push_back(std::move(title));
    const std::size_t last = plan.steps.size() - 1;
    const double boardMm = sizeOnPaper(boardFor(plan.layout->bench, pageWidth)).width();
    const bool twoByTwo = 2 * boardMm + kBesideMm <= pageWidth;
    const double width = twoByTwo ? boardMm : pageWidth;
    for (std::size_t step = 0; pictures && step < last; step += twoByTwo ? 2 : 1) {
        Block left = stepPicture(plan, step, width, pageWidth);
        if (!twoByTwo || step + 1 >= last) {
            blocks.push_back(std::move(left));
            continue;
        }
        const Block right = stepPicture(plan, step + 1, width, pageWidth);
        blocks.push_back({std::max(left.heightMm, right.heightMm),
                          [left, right, x = pageWidth - width](QPainter& painter, QPointF at) {
                              left.paint(painter, at);
                              right.paint(painter, at + QPointF(x, 0));
                          },
                          false, false});
    }
    for (std::size_t step = pictures ? last : 0; step <= last; ++step) {
        blocks.push_back(stepHead(plan.steps[step], step + 1, pageWidth));
        std::string lines;
        for (const std::string& line : plan.steps[step].lines) lines += (lines.empty() ? "" : "\n") + line;
        if (!lines.empty()) blocks.push_back(paragraph(plainLines(lines), paper::kBody, pageWidth, 2.5));
    }
    return blocks;
}

}  // namespace tiepoint::ui
