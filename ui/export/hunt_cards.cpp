#include "ui/export/hunt_cards.h"

#include "ui/export/paper_sheet.h"
#include "ui/export/save_bytes.h"
#include "ui/paint/lettering.h"
#include "ui/theme/plain_text.h"

#include <QBuffer>
#include <QPageSize>
#include <QPainter>
#include <QPdfWriter>

namespace tiepoint::ui {
namespace {

constexpr double kCardMm = 14;  // margin of the sheet
constexpr int kCardColumns = 2, kCardRows = 4;
constexpr int kCardDots = 1200;
constexpr double kCardInchMm = 25.4;
constexpr double kCardHairMm = 0.2, kPadMm = 5;
constexpr Lettering kCardHead{4.4, QFont::DemiBold}, kCardBody{4.2, QFont::Normal}, kCardSmall{3.2, QFont::Normal};
const QColor kCardInk(0x1d, 0x27, 0x33), kCardDim(0x50, 0x5a, 0x66);

/// Words on as many lines as a breadth needs.
QStringList cardLines(const QString& words, double breadth, const Lettering& lettering) {
    QStringList lines;
    QString line;
    for (const QString& word : words.split(QLatin1Char(' '), Qt::SkipEmptyParts)) {
        const QString longer = line.isEmpty() ? word : line + QLatin1Char(' ') + word;
        if (!line.isEmpty() && textWidthMm(longer, lettering) > breadth) {
            lines << line;
            line = word;
        } else {
            line = longer;
        }
    }
    if (!line.isEmpty()) lines << line;
    return lines;
}

/// Draws words from a corner down; returns how far down they reach.
double drawWords(QPainter& painter, const QString& words, QPointF at, double breadth, const Lettering& lettering,
                 const QColor& colour) {
    const double step = 1.35 * lettering.sizeMm;
    for (const QString& line : cardLines(words, breadth, lettering)) {
        drawText(painter, line, at + QPointF(0, step / 2), lettering, colour, Qt::AlignLeft);
        at.ry() += step;
    }
    return at.y();
}

/// One PDF of cards while it is written.
class CardSheets {
public:
    CardSheets(QPdfWriter& writer, const QString& title, const std::vector<HuntCard>& cards, QSizeF paperMm)
        : writer_(writer),
          title_(title),
          cards_(cards),
          paperMm_(paperMm),
          sheet_(writer) {}

    bool draw() {
        if (!painter_.begin(&sheet_)) return false;
        painter_.scale(kCardDots / kCardInchMm, kCardDots / kCardInchMm);
        const int perSheet = kCardColumns * kCardRows;
        for (int first = 0; first < static_cast<int>(cards_.size()); first += perSheet) {
            if (first > 0 && !writer_.newPage()) return false;
            for (int place = 0; place < perSheet && first + place < static_cast<int>(cards_.size()); ++place)
                drawCard(first + place, place);
        }
        if (!drawKey()) return false;
        return painter_.end();
    }

private:
    void drawCard(int card, int place) {
        const QSizeF size((paperMm_.width() - 2 * kCardMm) / kCardColumns,
                          (paperMm_.height() - 2 * kCardMm) / kCardRows);
        const QRectF frame(
            QPointF(kCardMm + place % kCardColumns * size.width(), kCardMm + place / kCardColumns * size.height()),
            size);
        painter_.setPen(QPen(kCardDim, kCardHairMm, Qt::DashLine));
        painter_.drawRect(frame);
        const double half = frame.center().y(), left = frame.left() + kPadMm, breadth = frame.width() - 2 * kPadMm;
        painter_.setPen(QPen(kCardDim, kCardHairMm, Qt::DotLine));
        painter_.drawLine(QPointF(frame.left(), half), QPointF(frame.right(), half));
        // The upper half is the outside once it is folded.
        double y = drawWords(painter_, QStringLiteral("Card %1").arg(card + 1), {left, frame.top() + kPadMm}, breadth,
                             kCardHead, kCardInk);
        y = drawWords(painter_, title_, {left, y}, breadth, kCardSmall, kCardDim);
        drawWords(painter_, QStringLiteral("Secret: only for the one who makes the slip. Fold back along the dots."),
                  {left, y + 1}, breadth, kCardSmall, kCardDim);
        y = drawWords(painter_, QStringLiteral("Supply off. ") + cards_[static_cast<std::size_t>(card)].order,
                      {left, half + 3}, breadth, kCardBody, kCardInk);
        drawWords(painter_,
                  QStringLiteral("Supply on: ") + cards_[static_cast<std::size_t>(card)].seen +
                      QStringLiteral(" Anything warm, or any smell: switch off at once."),
                  {left, y + 1}, breadth, kCardSmall, kCardDim);
    }

    bool drawKey() {
        const double breadth = paperMm_.width() - 2 * kCardMm, bottom = paperMm_.height() - kCardMm;
        double y = bottom + 1;
        for (std::size_t card = 0; card < cards_.size(); ++card) {
            const QString words = QStringLiteral("%1   %2 %3 To put it right: %4")
                                      .arg(card + 1)
                                      .arg(cards_[card].order, cards_[card].seen, cards_[card].undo);
            const double needed =
                1.35 * kCardSmall.sizeMm * static_cast<double>(cardLines(words, breadth, kCardSmall).size()) + 1.5;
            if (y + needed > bottom) {
                if (!writer_.newPage()) return false;
                y = drawWords(painter_, title_ + QStringLiteral(": key to the cards"), {kCardMm, kCardMm}, breadth,
                              kCardHead, kCardInk);
                y = drawWords(
                        painter_,
                        QStringLiteral("Extra-low voltage only. Change nothing while the supply is on. Local rules "
                                       "and the person who supervises you come first."),
                        {kCardMm, y + 1}, breadth, kCardSmall, kCardInk) +
                    3;
            }
            y = drawWords(painter_, words, {kCardMm, y}, breadth, kCardSmall, kCardInk) + 1.5;
        }
        return true;
    }

    QPdfWriter& writer_;
    QString title_;
    const std::vector<HuntCard>& cards_;
    QSizeF paperMm_;
    PaperSheet sheet_;
    QPainter painter_;
};

}  // namespace

std::optional<QString> saveHuntCards(const QString& title, const std::vector<HuntCard>& cards, const QString& path,
                                     Paper paper) {
    QBuffer drawn;
    if (!drawn.open(QIODevice::WriteOnly)) return QStringLiteral("the cards could not be drawn");
    {
        QPdfWriter writer(&drawn);
        writer.setTitle(plainText(title.toStdString()));
        writer.setCreator(QStringLiteral("Tiepoint"));
        writer.setResolution(kCardDots);
        const QPageSize page(paper == Paper::A4 ? QPageSize::A4 : QPageSize::Letter);
        writer.setPageSize(page);
        writer.setPageMargins(QMarginsF(0, 0, 0, 0));
        CardSheets sheets(writer, plainText(title.toStdString()), cards, page.size(QPageSize::Millimeter));
        if (!sheets.draw()) return QStringLiteral("the cards could not be drawn");
    }
    return saveBytes(drawn.data(), path);
}

}  // namespace tiepoint::ui
