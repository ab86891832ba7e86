#pragma once
// Pages of paper that are read and written on: blocks one below the other, as many on a page as fit, with a head and a foot on each. Letters
// are letters, lengths are millimetres. Needs a QGuiApplication, but no display.

#include "ui/export/paper_plan.h"
#include "ui/paint/lettering.h"

#include <QByteArray>
#include <QPagedPaintDevice>
#include <QPainter>
#include <QString>

#include <functional>
#include <optional>
#include <vector>

namespace tiepoint::ui {

namespace paper {
inline constexpr double kMarginMm = 14, kHeadMm = 16, kFootMm = 8;
inline constexpr double kHairMm = 0.2, kLineMm = 0.5, kHeavyMm = 0.9;
inline constexpr Lettering kTitle{7, QFont::DemiBold}, kHeading{4.4, QFont::DemiBold}, kStrong{3.2, QFont::DemiBold},
    kBody{3.2, QFont::Normal}, kSmall{3.0, QFont::Normal};
QColor ink();
QColor dim();
QColor wash();  ///< under heads of tables
double contentWidthMm(Paper paper);
}  // namespace paper

/// Something that stands across the page and isn't parted.
struct Block {
    double heightMm = 0;
    std::function<void(QPainter&, QPointF topLeft)> paint;
    bool keepsWithNext = false;  ///< a heading stands with what it heads
    bool startsPage = false;
};

/// What stands on each page beside its blocks.
struct PageHead {
    QString title;  ///< of the bench
    QString what;   ///< "Build sheet"
};

/// By page: the blocks that stand on it.
std::vector<std::vector<Block>> pagesOf(std::vector<Block> blocks, Paper paper);

/// Paints all pages on a device that is set to that paper without margins; false where it can't be painted on.
bool paintPages(QPagedPaintDevice& device, const std::vector<std::vector<Block>>& pages, const PageHead& head,
                Paper paper);

/// The same as the bytes of a PDF; nothing where it can't be drawn.
std::optional<QByteArray> pagesAsPdf(const std::vector<std::vector<Block>>& pages, const PageHead& head, Paper paper);

// Pieces of which blocks are made. `y` of a line is the top of its room.

/// The text on lines no broader than that; a word that is broader stands alone.
std::vector<QString> wrapped(const QString& text, const Lettering& lettering, double widthMm);
double lineHeightMm(const Lettering& lettering);
/// Lines of text from a top left corner; returns how high they are.
double paintLines(QPainter& painter, QPointF topLeft, const std::vector<QString>& lines, const Lettering& lettering,
                  const QColor& colour);
/// At most so broad, with an ellipsis where something is missing.
QString fittedText(QString text, const Lettering& lettering, double widthMm);

Block paragraph(const QString& text, const Lettering& lettering, double widthMm, double belowMm = 2);
Block heading(const QString& text, const QString& beside = {});
Block gap(double heightMm);
/// A box to tick, its top left corner there.
void paintTickBox(QPainter& painter, QPointF topLeft);
inline constexpr double kTickBoxMm = 3.6;
/// Lines with a box to tick before each.
Block tickList(const std::vector<QString>& lines, double widthMm, const Lettering& first, const Lettering& others);

/// A cell holds words, or paints itself into its room.
struct PaperCell {
    QString text;
    bool strong = false;
    std::function<void(QPainter&, const QRectF& room)> paint;
    double heightMm = 0;  ///< that painting needs
};
struct PaperColumn {
    QString head;
    double widthMm = 0;
};
/// The head of a table and its rows, a block each.
std::vector<Block> tableOf(const std::vector<PaperColumn>& columns, const std::vector<std::vector<PaperCell>>& rows);

}  // namespace tiepoint::ui
