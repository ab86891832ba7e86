#include "ui/cards/loop_card.h"

#include "ui/cards/legend_samples.h"
#include "ui/cards/part_tint.h"
#include "ui/paint/palette.h"
#include "ui/theme/panels.h"

#include <algorithm>

namespace tiepoint::ui {
namespace {

constexpr double kSmallestShare = 0.02;  // a drop below this gets no piece of the bar: its words would lie over others
constexpr double kSmallestWidth = 84;    // a piece must hold its volts
constexpr double kWordlessWidth = 62;    // where that is too much for all pieces, they may be as narrow
constexpr double kGap = 5;
constexpr double kVoltSize = 30;
constexpr double kBranchSize = 28;

}  // namespace

LoopCard::LoopCard(QWidget* parent) : Card(parent) { setAccessibleName(QStringLiteral("The whole bench")); }

void LoopCard::showPicture(const Picture& picture, const std::string& pointedAt) {
    LoopText text = loopText(picture, pointedAt);
    const double fullScale = fullScaleAmpere(picture);
    const bool same = text == text_ && voltage_ == picture.views.voltage && arrows_ == picture.views.arrows &&
                      fullScale == fullScaleAmpere_;
    if (same) return;
    text_ = std::move(text);
    voltage_ = picture.views.voltage;
    arrows_ = picture.views.arrows;
    fullScaleAmpere_ = fullScale;
    tints_.clear();
    for (const DropText& drop : text_.drops)
        tints_[drop.part] = partTint(*look().theme, *picture.bench().findPart(drop.part));
    setAccessibleDescription(spoken());
    update();
}

QString LoopCard::dropsInWords() const {
    QStringList words;
    for (const DropText& drop : text_.drops)
        words << QStringLiteral("%1 %2").arg(QString::fromStdString(drop.part), drop.volts);
    return words.join(QStringLiteral(", "));
}

/// For a card with less room: "12 parts, 2.50 V each", "12 parts: from 0.52 V (R3) to 4.10 V (R7)".
QString LoopCard::dropsInBrief() const {
    const auto [least, most] = std::ranges::minmax_element(text_.drops, {}, &DropText::share);
    const QString count = QString::number(text_.drops.size());
    if (least->volts == most->volts) return QStringLiteral("%1 parts, %2 each").arg(count, least->volts);
    return QStringLiteral("%1 parts: from %2 (%3) to %4 (%5)")
        .arg(count, least->volts, QString::fromStdString(least->part), most->volts, QString::fromStdString(most->part));
}

QString LoopCard::spoken() const {
    QStringList words{text_.title + QLatin1Char('.'), text_.big};
    if (!text_.drops.empty()) words << dropsInWords() + QLatin1Char('.');
    for (const auto* side : {&text_.in, &text_.out}) {
        QStringList branches;
        for (const BranchText& branch : *side) branches << branch.where + QLatin1Char(' ') + branch.current;
        if (!branches.isEmpty())
            words << (side == &text_.in ? QStringLiteral("In: ") : QStringLiteral("Out: ")) +
                         branches.join(QStringLiteral(", ")) + QLatin1Char('.');
    }
    words << text_.note;
    words.removeAll(QString());
    return words.join(QLatin1Char(' '));
}

void LoopCard::paintBody(QPainter& painter) {
    const Theme& theme = *look().theme;
    const QRectF box = body();
    drawLine(painter, box, text_.title, look().font(text::kBody), theme.dimText);
    if (!text_.drops.empty())
        paintDrops(painter, box);
    else if (!text_.in.empty())
        paintBranchPoint(painter, box);
    else if (!text_.big.isEmpty())
        drawFigure(painter, box.translated(-look().px(3), look().px(19)), text_.big, text::kBigReading, theme.text);
    paintNote(painter);
}

void LoopCard::paintNote(QPainter& painter) const {
    const QRectF box = body();
    const QFont font = look().font(text::kBody);
    const bool alone = text_.drops.empty() && text_.in.empty() && text_.big.isEmpty();
    const double lines = text_.big.isEmpty() ? 1 : 2;
    const double low = frame().bottom() - look().px(12);
    const double top = alone ? box.top() + look().px(48) : low - look().px(8) - lines * QFontMetricsF(font).height();
    drawBlock(painter, QRectF(box.left(), top, box.width(), low - top), text_.note, font, look().theme->dimText,
              Qt::AlignLeft | (alone ? Qt::AlignTop : Qt::AlignVCenter));
}

std::vector<QRectF> LoopCard::segments(const QRectF& box) const {
    // Shares of the width that the gaps and the smallest pieces leave.
    double shares = 0;
    int shown = 0;
    for (const DropText& drop : text_.drops) {
        if (drop.share < kSmallestShare) continue;
        shares += drop.share;
        ++shown;
    }
    const double each = (box.width() - (shown - 1) * look().px(kGap)) / std::max(1, shown);
    const double smallest = std::min(look().px(kSmallestWidth), each);
    const double spare = std::max(0.0, box.width() - (shown - 1) * look().px(kGap) - shown * smallest);
    std::vector<QRectF> frames;
    double left = box.left();
    for (const DropText& drop : text_.drops) {
        const bool small = drop.share < kSmallestShare;
        const double width = small ? 0 : smallest + spare * drop.share / shares;
        frames.emplace_back(left, box.top(), width, box.height());
        if (!small) left += width + look().px(kGap);
    }
    return frames;
}

void LoopCard::paintDrops(QPainter& painter, const QRectF& box) const {
    const QRectF bar(box.left(), box.top() + look().px(45), box.width(), look().px(44));
    const auto frames = segments(bar);
    if (std::ranges::any_of(frames, [&](const QRectF& frame) {
            return frame.width() > 0 && frame.width() < look().px(kWordlessWidth);
        }))
        return paintManyDrops(painter, bar, frames);
    for (std::size_t i = 0; i < frames.size(); ++i) {
        if (frames[i].width() <= 0) continue;
        paintSegment(painter, frames[i], text_.drops[i]);
        if (voltage_) continue;
        drawFigure(painter, frames[i].translated(0, look().px(52)), text_.drops[i].volts, kVoltSize, look().theme->text,
                   Qt::AlignHCenter);
    }
    if (voltage_) paintPotentials(painter, bar, frames);
}

/// So many that no words find room in their pieces: the pieces show the shares, and lines below tell them.
void LoopCard::paintManyDrops(QPainter& painter, const QRectF& bar, const std::vector<QRectF>& frames) const {
    for (std::size_t i = 0; i < frames.size(); ++i) {
        if (frames[i].width() <= 0) continue;
        paintSegment(painter, frames[i], text_.drops[i], false);
    }
    const double low = frame().bottom() - look().px(20) - QFontMetricsF(look().font(text::kBody)).height();
    drawBlock(painter, QRectF(bar.left(), bar.bottom() + look().px(6), bar.width(), low - bar.bottom() - look().px(8)),
              QStringList{dropsInWords(), dropsInBrief()}, look().font(text::kSmall), look().theme->text);
}

void LoopCard::paintSegment(QPainter& painter, const QRectF& box, const DropText& drop, bool named) const {
    const Theme& theme = *look().theme;
    const double radius = look().px(5);
    if (voltage_) {
        QLinearGradient fall(box.topLeft(), box.topRight());
        constexpr int kStops = 8;
        for (int i = 0; i <= kStops; ++i) {
            const double at = static_cast<double>(i) / kStops;
            fall.setColorAt(at, voltColour(drop.fromShare + (drop.toShare - drop.fromShare) * at));
        }
        painter.setBrush(fall);
        painter.setPen(QPen(theme.flat ? theme.cardEdge : theme.text, look().px(1.4)));
        painter.drawRoundedRect(box, radius, radius);
        return;
    }
    const QColor face = tints_.contains(drop.part) ? tints_.at(drop.part) : theme.cardEdge;
    painter.setBrush(face);
    painter.setPen(QPen(mix(face, QColor(Qt::black), 0.45), look().px(1.4)));
    painter.drawRoundedRect(box, radius, radius);
    if (!named) return;
    const QColor ink = qGray(face.rgb()) > 120 ? QColor(0x1b, 0x1e, 0x22) : QColor(0xff, 0xff, 0xff);
    const QFont font = look().font(text::kBody, QFont::DemiBold);
    const double top = box.center().y() - QFontMetricsF(font).height() / 2;
    const double pad = look().px(3);
    drawLine(painter, QRectF(box.left() + pad, top, box.width() - 2 * pad, 0), QString::fromStdString(drop.part), font,
             ink, Qt::AlignHCenter);
}

void LoopCard::paintPotentials(QPainter& painter, const QRectF& box, const std::vector<QRectF>& segments) const {
    const Theme& theme = *look().theme;
    const QFont ids = look().font(text::kSmall);
    const double top = box.bottom() + look().px(27);
    QString last;
    // A figure stands under the joint of two pieces, and may take up half of each; those at the ends take up half of theirs.
    double before = 0, end = 0;
    for (std::size_t i = 0; i < segments.size(); ++i) {
        const QRectF& segment = segments[i];
        if (segment.width() <= 0) continue;
        drawLine(painter, segment.translated(0, segment.height() + look().px(2)),
                 QString::fromStdString(text_.drops[i].part), ids, theme.dimText, Qt::AlignHCenter);
        const bool first = last.isEmpty();
        const double half = segment.width() / 2 - look().px(4);
        const double side = std::min(before, half);
        drawFigure(painter,
                   first ? QRectF(segment.left(), top, half, 0) : QRectF(segment.left() - side, top, 2 * side, 0),
                   text_.drops[i].fromVolts, text::kLabel, theme.text, first ? Qt::AlignLeft : Qt::AlignHCenter);
        before = end = half;
        last = text_.drops[i].toVolts;
    }
    drawFigure(painter, QRectF(box.right() - end, top, end, 0), last, text::kLabel, theme.text, Qt::AlignRight);
}

void LoopCard::paintBranchPoint(QPainter& painter, const QRectF& box) const {
    const Theme& theme = *look().theme;
    const QFont names = look().font(text::kSmall);
    std::vector<const BranchText*> terms;
    for (const BranchText& term : text_.in) terms.push_back(&term);
    for (const BranchText& term : text_.out) terms.push_back(&term);
    const double sign = look().px(34);
    const double width =
        (box.width() - sign * static_cast<double>(terms.size() - 1)) / static_cast<double>(terms.size());
    double widest = 1;
    for (const BranchText* term : terms) widest = std::max(widest, figureWidth(term->current, kBranchSize));
    const double branchSize = kBranchSize * std::min(1.0, width / widest);
    double left = box.left();
    for (std::size_t i = 0; i < terms.size(); ++i) {
        const QRectF column(left, box.top() + look().px(42), width, 0);
        paintArrowSample(painter, look(), QRectF(left, column.top(), std::min(width, look().px(144)), look().px(26)),
                         terms[i]->ampere / fullScaleAmpere_, arrows_, SampleBed::Strip);
        drawFigure(painter, column.translated(0, look().px(32)), terms[i]->current, branchSize, theme.text);
        drawBlock(painter, QRectF(left, column.top() + look().px(66), width, look().px(40)), terms[i]->where, names,
                  theme.dimText);
        left += width;
        if (i + 1 == terms.size()) break;
        const QString between = i + 1 == text_.in.size() ? QStringLiteral("=") : QStringLiteral("+");
        drawFigure(painter, QRectF(left, column.top() + look().px(32), sign - look().px(8), 0), between, kBranchSize,
                   theme.dimText, Qt::AlignHCenter);
        left += sign;
    }
}

}  // namespace tiepoint::ui
