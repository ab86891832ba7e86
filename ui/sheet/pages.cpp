#include "ui/sheet/pages.h"

#include "ui/export/paper_sheet.h"

#include <QBuffer>
#include <QPageSize>
#include <QPdfWriter>

#include <algorithm>
#include <utility>

namespace tiepoint::ui {
namespace {

constexpr int kDotsPerInch = 1200;
constexpr double kOneInchMm = 25.4;
constexpr double kCellPadMm = 1.5, kTitleMidMm = 4.5;

QSizeF pageSizeOf(Paper paper) { return paper == Paper::A4 ? QSizeF(210, 297) : QSizeF(215.9, 279.4); }

void paintFrame(QPainter& painter, const PageHead& head, Paper paper, std::size_t page, std::size_t count) {
    const QSizeF size = pageSizeOf(paper);
    const double left = paper::kMarginMm, right = size.width() - paper::kMarginMm;
    const double middle = paper::kMarginMm + kTitleMidMm;
    const QString what = QStringLiteral("%1, page %2 of %3").arg(head.what).arg(page + 1).arg(count);
    const double besideMm = textWidthMm(what, paper::kBody) + 6;
    drawText(painter, fittedText(head.title, paper::kTitle, right - left - besideMm), {left, middle}, paper::kTitle,
             paper::ink(), Qt::AlignLeft);
    drawText(painter, what, {right, middle}, paper::kBody, paper::dim(), Qt::AlignRight);
    painter.setPen(QPen(paper::ink(), paper::kLineMm));
    const double lineAt = paper::kMarginMm + paper::kHeadMm - 5;
    painter.drawLine(QPointF(left, lineAt), QPointF(right, lineAt));
    const double foot = size.height() - paper::kMarginMm + 2;
    drawText(painter, QStringLiteral("Tiepoint: %1").arg(fittedText(head.title, paper::kSmall, (right - left) / 2)),
             {left, foot}, paper::kSmall, paper::dim(), Qt::AlignLeft);
    drawText(painter, QString::number(page + 1), {right, foot}, paper::kSmall, paper::dim(), Qt::AlignRight);
}

double roomMm(Paper paper) {
    return pageSizeOf(paper).height() - 2 * paper::kMarginMm - paper::kHeadMm - paper::kFootMm;
}

void setPen(QPainter& painter, double widthMm, const QColor& colour = paper::ink()) {
    painter.setPen(QPen(colour, widthMm));
    painter.setBrush(Qt::NoBrush);
}

}  // namespace

namespace paper {
QColor ink() { return QColor(0x11, 0x16, 0x1c); }
QColor dim() { return QColor(0x45, 0x4b, 0x52); }
QColor wash() { return QColor(0xec, 0xec, 0xec); }
double contentWidthMm(Paper paper) { return pageSizeOf(paper).width() - 2 * kMarginMm; }
}  // namespace paper

std::vector<std::vector<Block>> pagesOf(std::vector<Block> blocks, Paper paper) {
    const double room = roomMm(paper);
    std::vector<std::vector<Block>> pages(1);
    double used = 0;
    for (std::size_t i = 0; i < blocks.size();) {
        std::size_t end = i + 1;  // what has to stand together
        while (end < blocks.size() && blocks[end - 1].keepsWithNext) ++end;
        double height = 0;
        for (std::size_t k = i; k < end; ++k) height += blocks[k].heightMm;
        if (!pages.back().empty() && (blocks[i].startsPage || used + height > room)) {
            pages.emplace_back();
            used = 0;
        }
        for (std::size_t k = i; k < end; ++k) pages.back().push_back(std::move(blocks[k]));
        used += height;
        i = end;
    }
    return pages;
}

bool paintPages(QPagedPaintDevice& device, const std::vector<std::vector<Block>>& pages, const PageHead& head,
                Paper paper) {
    PaperSheet sheet(device);
    QPainter painter;
    if (!painter.begin(&sheet)) return false;
    const double dotsPerMm = device.logicalDpiX() / kOneInchMm;
    for (std::size_t page = 0; page < pages.size(); ++page) {
        if (page > 0 && !device.newPage()) return false;
        painter.save();
        painter.scale(dotsPerMm, dotsPerMm);
        paintFrame(painter, head, paper, page, pages.size());
        double y = paper::kMarginMm + paper::kHeadMm;
        for (const Block& block : pages[page]) {
            painter.save();
            if (block.paint) block.paint(painter, {paper::kMarginMm, y});
            painter.restore();
            y += block.heightMm;
        }
        painter.restore();
    }
    return painter.end();
}

std::optional<QByteArray> pagesAsPdf(const std::vector<std::vector<Block>>& pages, const PageHead& head, Paper paper) {
    QBuffer buffer;
    if (!buffer.open(QIODevice::WriteOnly)) return std::nullopt;
    {
        QPdfWriter writer(&buffer);
        writer.setTitle(head.title);
        writer.setCreator(QStringLiteral("Tiepoint"));
        writer.setResolution(kDotsPerInch);
        writer.setPageSize(QPageSize(paper == Paper::A4 ? QPageSize::A4 : QPageSize::Letter));
        writer.setPageMargins(QMarginsF(0, 0, 0, 0));
        if (!paintPages(writer, pages, head, paper)) return std::nullopt;
    }
    return buffer.data();
}

std::vector<QString> wrapped(const QString& text, const Lettering& lettering, double widthMm) {
    std::vector<QString> lines;
    for (const QString& part : text.split(QLatin1Char('\n'))) {
        QString line;
        for (const QString& word : part.split(QLatin1Char(' '), Qt::SkipEmptyParts)) {
            const QString longer = line.isEmpty() ? word : line + QLatin1Char(' ') + word;
            if (!line.isEmpty() && textWidthMm(longer, lettering) > widthMm) {
                lines.push_back(line);
                line = word;
            } else {
                line = longer;
            }
        }
        lines.push_back(line);
    }
    return lines;
}

double lineHeightMm(const Lettering& lettering) { return lettering.sizeMm * 1.45; }

double paintLines(QPainter& painter, QPointF topLeft, const std::vector<QString>& lines, const Lettering& lettering,
                  const QColor& colour) {
    const double step = lineHeightMm(lettering);
    double y = topLeft.y() + step / 2;
    for (const QString& line : lines) {
        drawText(painter, line, {topLeft.x(), y}, lettering, colour, Qt::AlignLeft);
        y += step;
    }
    return step * static_cast<double>(lines.size());
}

QString fittedText(QString text, const Lettering& lettering, double widthMm) {
    if (textWidthMm(text, lettering) <= widthMm) return text;
    while (!text.isEmpty() && textWidthMm(text + QChar(0x2026), lettering) > widthMm) text.chop(1);
    return text + QChar(0x2026);
}

Block paragraph(const QString& text, const Lettering& lettering, double widthMm, double belowMm) {
    auto lines = wrapped(text, lettering, widthMm);
    const double height = lineHeightMm(lettering) * static_cast<double>(lines.size()) + belowMm;
    return {height,
            [lines = std::move(lines), lettering](QPainter& painter, QPointF at) {
                paintLines(painter, at, lines, lettering, paper::ink());
            },
            false, false};
}

Block heading(const QString& text, const QString& beside) {
    constexpr double kAboveMm = 4, kBelowMm = 1.5;
    const double height = kAboveMm + lineHeightMm(paper::kHeading) + kBelowMm;
    return {height,
            [text, beside](QPainter& painter, QPointF at) {
                const double middle = at.y() + kAboveMm + lineHeightMm(paper::kHeading) / 2;
                drawText(painter, text, {at.x(), middle}, paper::kHeading, paper::ink(), Qt::AlignLeft);
                const double after = at.x() + textWidthMm(text, paper::kHeading) + 4;
                drawText(painter, beside, {after, middle}, paper::kSmall, paper::dim(), Qt::AlignLeft);
            },
            true, false};
}

Block gap(double heightMm) { return {heightMm, {}, false, false}; }

void paintTickBox(QPainter& painter, QPointF topLeft) {
    setPen(painter, 0.35);
    painter.drawRoundedRect(QRectF(topLeft, QSizeF(kTickBoxMm, kTickBoxMm)), 0.5, 0.5);
}

Block tickList(const std::vector<QString>& lines, double widthMm, const Lettering& first, const Lettering& others) {
    constexpr double kBesideMm = 2.2, kBelowMm = 1.6;
    std::vector<std::pair<std::vector<QString>, Lettering>> items;
    double height = 0;
    for (const QString& line : lines) {
        const Lettering& lettering = items.empty() ? first : others;
        items.emplace_back(wrapped(line, lettering, widthMm - kTickBoxMm - kBesideMm), lettering);
        height += lineHeightMm(lettering) * static_cast<double>(items.back().first.size()) + kBelowMm;
    }
    return {height,
            [items = std::move(items)](QPainter& painter, QPointF at) {
                double y = at.y();
                for (const auto& [text, lettering] : items) {
                    paintTickBox(painter, {at.x(), y + (lineHeightMm(lettering) - kTickBoxMm) / 2});
                    y += paintLines(painter, {at.x() + kTickBoxMm + kBesideMm, y}, text, lettering, paper::ink()) +
                         kBelowMm;
                }
            },
            false, false};
}

std::vector<Block> tableOf(const std::vector<PaperColumn>& columns, const std::vector<std::vector<PaperCell>>& rows) {
    constexpr double kHeadRowMm = 6.4, kLeastRowMm = 7;
    double width = 0;
    for (const PaperColumn& column : columns) width += column.widthMm;
    std::vector<Block> blocks;
    blocks.push_back({kHeadRowMm,
                      [columns, width](QPainter& painter, QPointF at) {
                          painter.fillRect(QRectF(at, QSizeF(width, kHeadRowMm)), paper::wash());
                          double x = at.x();
                          for (const PaperColumn& column : columns) {
                              drawText(painter, column.head, {x + kCellPadMm, at.y() + kHeadRowMm / 2}, paper::kSmall,
                                       paper::dim(), Qt::AlignLeft);
                              x += column.widthMm;
                          }
                          setPen(painter, 0.4);
                          painter.drawLine(at + QPointF(0, kHeadRowMm), at + QPointF(width, kHeadRowMm));
                      },
                      true, false});
    for (const auto& row : rows) {
        double height = kLeastRowMm;
        std::vector<std::vector<QString>> texts;
        for (std::size_t c = 0; c < columns.size(); ++c) {
            const Lettering& lettering = row[c].strong ? paper::kStrong : paper::kBody;
            texts.push_back(wrapped(row[c].text, lettering, columns[c].widthMm - 2 * kCellPadMm));
            height = std::max(
                {height, lineHeightMm(lettering) * static_cast<double>(texts.back().size()) + 2, row[c].heightMm});
        }
        blocks.push_back({height,
                          [columns, row, texts = std::move(texts), height, width](QPainter& painter, QPointF at) {
                              double x = at.x();
                              for (std::size_t c = 0; c < columns.size(); ++c) {
                                  const Lettering& lettering = row[c].strong ? paper::kStrong : paper::kBody;
                                  const double inked = lineHeightMm(lettering) * static_cast<double>(texts[c].size());
                                  if (row[c].paint) {
                                      painter.save();
                                      row[c].paint(painter, QRectF(x, at.y(), columns[c].widthMm, height));
                                      painter.restore();
                                  } else {
                                      paintLines(painter, {x + kCellPadMm, at.y() + (height - inked) / 2}, texts[c],
                                                 lettering, paper::ink());
                                  }
                                  x += columns[c].widthMm;
                              }
                              setPen(painter, paper::kHairMm, paper::dim());
                              painter.drawLine(at + QPointF(0, height), at + QPointF(width, height));
                          },
                          false, false});
    }
    return blocks;
}

}  // namespace tiepoint::ui
