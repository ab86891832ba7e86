#include "ui/sheet/feedback.h"

#include "ui/sheet/board_on_paper.h"
#include "ui/sheet/build_sheet.h"
#include "ui/theme/plain_text.h"

#include <algorithm>

namespace tiepoint::ui {
namespace {

constexpr double kMostPictureMm = 130;
constexpr std::size_t kMostBoardsDrawn = 12, kMostLooks = 6;

QString verdictFor(const Comparison& comparison) {
    if (comparison.sameBehaviour && !comparison.limits.empty())
        return QStringLiteral("Your bench does what was asked for. Can it be done with less?");
    if (comparison.sameBehaviour && comparison.sameCircuit)
        return QStringLiteral("Your bench does what was asked for. Well built.");
    if (comparison.sameBehaviour)
        return QStringLiteral(
            "Your bench does what was asked for, by a circuit of its own. Can you say why both work?");
    return QStringLiteral("Not yet: your bench does something else. Look here, one place after the other:");
}

/// Where to look, each once, in the order of the differences.
std::vector<QString> looksOf(const Comparison& comparison) {
    std::vector<QString> looks;
    for (const auto* told : {&comparison.differences, &comparison.behaviour}) {
        for (const BenchDifference& each : *told) {
            const QString look = plainText(each.look);
            if (looks.size() < kMostLooks && std::ranges::find(looks, look) == looks.end()) looks.push_back(look);
        }
    }
    for (const std::string& limit : comparison.limits) looks.push_back(plainText(limit));
    return looks;
}

/// The parts that are looked at, as the learner's bench has them.
std::vector<std::string> lookedAt(const Comparison& comparison) {
    std::vector<std::string> ids;
    for (const BenchDifference& each : comparison.differences)
        ids.insert(ids.end(), each.parts.begin(), each.parts.end());
    return ids;
}

Block pictureFor(const LearnerRow& row, double width) {
    BoardOnPaper board = boardsAlone(*row.bench);
    if (!row.comparison.sameBehaviour) board.bracketed = lookedAt(row.comparison);
    const QSizeF size = sizeOnPaper(board);
    board.scale = std::min({1.0, width / size.width(), kMostPictureMm / size.height()});
    return {sizeOnPaper(board).height() + 4,
            [board](QPainter& painter, QPointF at) { paintOnPaper(painter, at, board); }, false, false};
}

std::vector<Block> feedbackFor(const LearnerRow& row, double width) {
    std::vector<Block> blocks;
    blocks.push_back(paragraph(plainText(row.file), paper::kHeading, width, 3));
    if (!row.error.empty()) {
        blocks.push_back(paragraph(QStringLiteral("This file could not be looked at: %1.").arg(plainText(row.error)),
                                   paper::kStrong, width, 3));
        blocks.push_back(
            paragraph(QStringLiteral("Open your bench, save it again, and hand that file in."), paper::kBody, width));
        return blocks;
    }
    if (row.bench->boards.size() <= kMostBoardsDrawn && !row.bench->boards.empty())
        blocks.push_back(pictureFor(row, width));
    blocks.push_back(paragraph(verdictFor(row.comparison), paper::kStrong, width, 3));
    if (!row.comparison.isReached())
        blocks.push_back(tickList(looksOf(row.comparison), width, paper::kBody, paper::kBody));
    return blocks;
}

}  // namespace

std::vector<std::vector<Block>> feedbackPages(const std::vector<LearnerRow>& rows, Paper paper) {
    std::vector<std::vector<Block>> pages;
    for (const LearnerRow& row : rows) {
        for (auto& page : pagesOf(feedbackFor(row, paper::contentWidthMm(paper)), paper))
            pages.push_back(std::move(page));
    }
    return pages;
}

std::optional<QString> saveFeedback(const std::vector<LearnerRow>& rows, const std::string& title, Paper paper,
                                    const QString& path) {
    return savePages(pagesAsPdf(feedbackPages(rows, paper), {plainText(title), QStringLiteral("Where to look")}, paper),
                     path);
}

}  // namespace tiepoint::ui
