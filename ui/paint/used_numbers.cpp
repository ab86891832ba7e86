#include "ui/paint/used_numbers.h"

#include "ui/paint/label_painter.h"
#include "ui/paint/lettering.h"

#include <algorithm>
#include <array>
#include <set>

namespace tiepoint::ui {
namespace {

constexpr double kNumberPadMm = 0.3;
constexpr double kHeight = 0.95;    ///< of a number's patch, in ems
constexpr double kBesideMm = 1.15;  ///< from a row to the edge of the nearest number
constexpr int kLines = 2;

/// Columns of one half of a board with something plugged in.
std::set<int> usedColumns(const Picture& picture, std::size_t board, bool upper) {
    std::set<int> used;
    const Layout& layout = *picture.layout;
    for (int hole = layout.boardFirstHole[board]; hole < layout.boardFirstHole[board + 1]; ++hole) {
        if (layout.jointOfHole[static_cast<std::size_t>(hole)] < 0) continue;
        const Hole at = layout.holeAt(hole);
        if (!isRail(at.line) && (at.line < Line::F) == upper) used.insert(at.number);
    }
    return used;
}

void placeRow(const Picture& picture, std::size_t board, bool upper, std::vector<UsedNumber>& out) {
    const Board& which = picture.bench().boards[board];
    const Lettering lettering{picture.sizes.numberMm, QFont::DemiBold};
    const double height = kHeight * lettering.sizeMm, away = upper ? -1 : 1;
    std::vector<UsedNumber> row;
    for (const int column : usedColumns(picture, board, upper)) {
        const Point hole = picture.seenAt({which.id, upper ? Line::A : Line::J, column});
        const QString text = QString::number(column);
        const double width = textWidthMm(text, lettering) + 2 * kNumberPadMm;
        for (int line = 0; line < kLines; ++line) {
            const double middle = hole.y + away * (kBesideMm + (line + 0.5) * height);
            const QRectF frame(hole.x - width / 2, middle - height / 2, width, height);
            if (std::any_of(row.begin(), row.end(),
                            [&](const UsedNumber& other) { return other.frame.intersects(frame); }))
                continue;
            row.push_back({frame, text});
            break;
        }
    }
    out.insert(out.end(), row.begin(), row.end());
}

}  // namespace

std::vector<UsedNumber> placeUsedNumbers(const Picture& picture) {
    std::vector<UsedNumber> numbers;
    for (std::size_t board = 0; board < picture.bench().boards.size(); ++board) {
        for (const bool upper : {true, false}) placeRow(picture, board, upper, numbers);
    }
    return numbers;
}

void addUsedNumbers(Patches& patches, const std::vector<UsedNumber>& numbers, double sizeMm) {
    for (const UsedNumber& number : numbers) patches.push_back(platePatch(number.frame, number.text, sizeMm));
}

}  // namespace tiepoint::ui
