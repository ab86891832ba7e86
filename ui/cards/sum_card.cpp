#include "ui/cards/sum_card.h"

#include "core/snapshot/readings.h"
#include "ui/cards/part_tint.h"
#include "ui/theme/panels.h"
#include "ui/theme/qs.h"

#include <QPainter>

#include <algorithm>
#include <cmath>

namespace tiepoint::ui {
namespace {

constexpr double kDigitLines = 12;      // of the window's height, projected
constexpr double kDigitsAtDesk = 44;    // in the 1080-line layout
constexpr double kHeadingShare = 0.18;  // of the breadth
constexpr double kBarOfDigits = 0.46, kSignOfDigits = 0.7, kGapOfDigits = 0.28;
constexpr double kSmallestDigits = 0.35;  // of their size, where a sum is long
constexpr double kCardAboveDigits = 0.32, kCardBelowBars = 0.34;
constexpr double kNameOfBar = 0.66;
constexpr std::size_t kMostTerms = 7;

QString loopOwner(const Picture& picture, const std::string& id) {
    if (!id.empty() && picture.bench().findPart(id)) return qs(id);
    for (const Part& part : picture.bench().parts) {
        if (part.kind->emitsLight) return qs(part.id);
    }
    return {};
}

}  // namespace

SumCard::SumCard(QWidget* parent) : AsideCard(parent) { setAccessibleName(QStringLiteral("The sum")); }

void SumCard::showPicture(const Picture& picture, const std::string& id) {
    const LoopText text = loopText(picture, id);
    terms_.clear();
    tints_.clear();
    alone_.clear();
    heading_ = text.title;
    if (!text.drops.empty() && text.drops.size() < kMostTerms) {
        const QString owner = loopOwner(picture, id);
        heading_ = owner.isEmpty() ? QStringLiteral("Once round the loop")
                                   : QStringLiteral("Once round the loop of %1").arg(owner);
        for (const DropText& drop : text.drops) {
            terms_.push_back({drop.volts, qs(drop.part), drop.part, std::abs(drop.share)});
            if (const Part* part = picture.bench().findPart(drop.part))
                tints_[drop.part] = partTint(*look().theme, *part);
        }
        if (const Snapshot* live = picture.live()) {
            if (const auto loop = simpleLoop(*live))
                terms_.push_back({qs(loop->supplyShown.text()), QStringLiteral("supply"), {}, 1});
        }
    } else if (!text.in.empty() && text.in.size() + text.out.size() < kMostTerms) {
        // The side with several ways stands before the equals sign.
        const bool joins = text.in.size() > text.out.size();
        const auto &many = joins ? text.in : text.out, &one = joins ? text.out : text.in;
        double whole = 0;
        for (const BranchText& branch : one) whole += branch.ampere;
        for (const auto* side : {&many, &one}) {
            for (const BranchText& branch : *side)
                terms_.push_back(
                    {branch.current, branch.where, branch.where.toStdString(), whole > 0 ? branch.ampere / whole : 0});
        }
        for (const Term& term : terms_) {
            if (const Part* part = picture.bench().findPart(term.part))
                tints_[term.part] = partTint(*look().theme, *part);
        }
    } else {
        alone_ = text.big.isEmpty() ? text.note : text.big;
    }
    QStringList said;
    for (const Term& term : terms_) said << term.name + QLatin1Char(' ') + term.number;
    setAccessibleDescription(heading_ + QLatin1String(": ") +
                             (said.isEmpty() ? alone_ : said.join(QStringLiteral(", "))));
    update();
}

SumCard::Places SumCard::places() const {
    Places at;
    const QRectF box = body();
    const double wanted = look().px(kDigitsAtDesk);
    const double room = window()->height() / kDigitLines;
    // At a desk the card is low, before a room it is as high as it asks for.
    at.digits = std::min(std::max(wanted, room), box.height() / (1 + kBarOfDigits + kGapOfDigits));
    const double left = box.left() + kHeadingShare * box.width(), breadth = box.width() * (1 - kHeadingShare);
    double share = 0;
    for (const Term& term : terms_) share += term.share;
    for (;; at.digits *= 0.985) {
        const QFont font = uiFont(at.digits, QFont::DemiBold);
        const double gap = kGapOfDigits * at.digits,
                     sign = QFontMetricsF(uiFont(kSignOfDigits * at.digits)).horizontalAdvance(QLatin1Char('+'));
        at.widths.clear();
        double digits = 0;
        for (const Term& term : terms_) {
            at.widths.push_back(wordsSize(term.number, font, 1e5, false).width());
            digits += at.widths.back();
        }
        const double between = (static_cast<double>(terms_.size()) - 1) * (sign + 2 * gap);
        const bool fits = digits + between <= breadth;
        if (!fits && at.digits > kSmallestDigits * wanted) continue;
        // One length a volt: the longest that leaves each bar its place under its number.
        at.perShare = share > 0 ? std::max(0.0, breadth - between) / share : 0;
        double all = 0;
        const auto widen = [&](double perShare) {
            all = between;
            for (std::size_t i = 0; i < terms_.size(); ++i) all += std::max(at.widths[i], terms_[i].share * perShare);
            return all;
        };
        while (widen(at.perShare) > breadth && at.perShare > 1) at.perShare *= 0.97;
        double x = left + std::max(0.0, breadth - all) / 2;
        for (std::size_t i = 0; i < terms_.size(); ++i) {
            at.widths[i] = std::max(at.widths[i], terms_[i].share * at.perShare);
            at.lefts.push_back(x);
            x += at.widths[i] + sign + 2 * gap;
        }
        break;
    }
    at.barHeight = kBarOfDigits * at.digits;
    const double high = at.digits * (1 + kGapOfDigits / 2) + at.barHeight;
    at.top = box.top() + std::max(0.0, box.height() - high) / 2;
    at.barTop = at.top + at.digits * (1 + kGapOfDigits / 2);
    return at;
}

QRectF SumCard::bar(std::size_t term) const {
    const Places at = places();
    const double breadth = terms_[term].share * at.perShare;
    return {at.lefts[term] + (at.widths[term] - breadth) / 2, at.barTop, breadth, at.barHeight};
}

double SumCard::roomHeight(double most) const {
    const double digits = window()->height() / kDigitLines;
    const double around = height() > 0 && body().height() > 0 ? height() - body().height() : 0;
    return std::min(most,
                    digits * (1 + kGapOfDigits + kBarOfDigits + kCardAboveDigits + kCardBelowBars - 0.3) + around);
}

void SumCard::paintBody(QPainter& painter) {
    const Theme& theme = *look().theme;
    const QRectF box = body();
    if (terms_.empty()) {
        drawLine(painter, QRectF(box.left(), box.top(), widthBesideButton(), 0), heading_, look().font(text::kBody),
                 theme.dimText);
        drawBlock(painter, box.adjusted(0, look().px(40), 0, 0), alone_, look().font(text::kTitle), theme.text);
        return;
    }
    const Places at = places();
    const double heading = std::max(at.digits * 0.36, look().px(text::kSmall));
    drawBlock(painter, QRectF(box.left(), at.top, kHeadingShare * box.width() - look().px(10), box.bottom() - at.top),
              heading_, uiFont(heading), theme.dimText, Qt::AlignLeft | Qt::AlignTop);
    const QFont digits = uiFont(at.digits, QFont::DemiBold), sign = uiFont(kSignOfDigits * at.digits);
    for (std::size_t i = 0; i < terms_.size(); ++i) {
        const Term& term = terms_[i];
        const QRectF cell(at.lefts[i], at.top, at.widths[i], at.digits * (1 + kGapOfDigits / 2));
        // One line each: a number never wraps.
        const double spare = 0.1 * at.digits;
        drawLine(painter, cell.adjusted(-spare, -spare / 2, spare, 0), term.number, digits, theme.text,
                 Qt::AlignHCenter);
        if (i + 1 < terms_.size()) {
            const bool equals = i + 2 == terms_.size();
            drawBlock(painter, QRectF(cell.right(), cell.top(), at.lefts[i + 1] - cell.right(), cell.height()),
                      equals ? QStringLiteral("=") : QStringLiteral("+"), sign, theme.dimText,
                      Qt::AlignHCenter | Qt::AlignVCenter);
        }
        const auto tint = tints_.find(term.part);
        const QRectF bar(at.lefts[i] + (at.widths[i] - term.share * at.perShare) / 2, at.barTop,
                         term.share * at.perShare, at.barHeight);
        painter.setPen(QPen(theme.cardEdge, std::max(1.0, at.digits / 45)));
        painter.setBrush(tint != tints_.end() ? tint->second : mix(theme.card, theme.text, 0.12));
        painter.drawRoundedRect(bar, at.digits / 20, at.digits / 20);
        const double centre = at.lefts[i] + at.widths[i] / 2, name = std::max(bar.width(), at.widths[i]);
        const QFont small = uiFont(kNameOfBar * at.barHeight, QFont::DemiBold);
        const double top = bar.top() + (bar.height() - QFontMetricsF(small).height()) / 2;
        drawLine(painter, QRectF(centre - name / 2, top, name, 0), term.name, small,
                 tint != tints_.end() ? QColor(0x14, 0x18, 0x1f) : theme.text, Qt::AlignHCenter);
    }
}

}  // namespace tiepoint::ui
