#include "ui/cards/hunt_cause_card.h"

#include "ui/theme/panels.h"
#include "ui/theme/qs.h"

#include <QPainter>

#include <algorithm>
#include <cmath>

namespace tiepoint::ui {
namespace {

constexpr double kCauseHead = 40, kCauseGap = 10, kFaultHigh = 44, kTryHigh = 52, kTryWide = 220;
constexpr double kThingHigh = 112, kThingLow = 40;
constexpr std::size_t kMostPictured = 9;  ///< more things than that stand without pictures, in two rows

}  // namespace

QString choiceKeyStyle(const Look& look) {
    const Theme& theme = *look.theme;
    const QColor face = theme.flat ? theme.card : mix(theme.card, theme.cardEdge, 0.25);  // edges are ink there
    return QStringLiteral(
               "QToolButton { color: %1; background: %2; border: %3px solid %4; border-radius: %5px; font-weight: 600; "
               "}"
               "QToolButton:checked { color: %6; background: %7; border: %8px solid %6; }"
               "QToolButton:focus, QToolButton:hover { border-color: %6; } QToolButton:disabled { color: %9; }")
        .arg(theme.text.name(), face.name())
        .arg(std::max(1, look.ipx(1)))
        .arg(theme.dimText.name())
        .arg(look.ipx(5))
        .arg(theme.accent.name(), mix(theme.card, theme.accent, 0.12).name())
        .arg(std::max(2, look.ipx(2)))
        .arg(theme.dimText.name());
}

HuntCauseCard::HuntCauseCard(QWidget* parent) : Card(parent), try_(new QToolButton(this)) {
    setAccessibleName(QStringLiteral("What is wrong?"));
    for (const Fault& fault : faults()) {
        auto* key = new QToolButton(this);
        key->setText(qs(fault.label));
        key->setCheckable(true);
        connect(key, &QToolButton::clicked, this, [this, &fault] {
            fault_ = &fault;
            follow();
        });
        faultKeys_.push_back(key);
    }
    connect(try_, &QToolButton::clicked, this, [this] {
        if (solved_)
            Q_EMIT finished();
        else
            Q_EMIT tried();
    });
    follow();
}

void HuntCauseCard::showThings(std::vector<HuntThing> things) {
    const bool same = std::ranges::equal(things, things_, {}, &HuntThing::id, &HuntThing::id);
    things_ = std::move(things);
    if (!same) {
        for (QToolButton* key : thingKeys_) key->deleteLater();
        thingKeys_.clear();
        for (const HuntThing& thing : things_) {
            auto* key = new QToolButton(this);
            key->setText(qs(thing.id));
            key->setCheckable(true);
            connect(key, &QToolButton::clicked, this, [this, id = thing.id] {
                thing_ = id;
                follow();
            });
            key->show();
            thingKeys_.push_back(key);
        }
        if (std::ranges::find(things_, thing_, &HuntThing::id) == things_.end()) thing_.clear();
    }
    for (std::size_t i = 0; i < things_.size(); ++i) {
        const bool pictured = things_.size() <= kMostPictured && !things_[i].picture.isNull();
        thingKeys_[i]->setToolButtonStyle(pictured ? Qt::ToolButtonTextUnderIcon : Qt::ToolButtonTextOnly);
        thingKeys_[i]->setIcon(pictured ? QIcon(QPixmap::fromImage(things_[i].picture)) : QIcon());
    }
    arrangeCard();
    follow();
}

void HuntCauseCard::showAnswer(const QString& words, bool solved) {
    answer_ = words;
    solved_ = solved;
    setAccessibleDescription(words);
    for (QToolButton* key : thingKeys_) key->setEnabled(!solved);
    for (QToolButton* key : faultKeys_) key->setEnabled(!solved);
    try_->setText(solved ? QStringLiteral("End the hunt") : QStringLiteral("Try it mended"));
    try_->setEnabled(solved || isComplete());
    update();
}

void HuntCauseCard::follow() {
    for (std::size_t i = 0; i < thingKeys_.size(); ++i) thingKeys_[i]->setChecked(things_[i].id == thing_);
    for (std::size_t i = 0; i < faultKeys_.size(); ++i) faultKeys_[i]->setChecked(&faults()[i] == fault_);
    showAnswer({}, false);
    Q_EMIT guessChanged();
}

QToolButton* HuntCauseCard::thingKey(const std::string& id) const {
    const auto found = std::ranges::find(things_, id, &HuntThing::id);
    return found == things_.end() ? nullptr : thingKeys_[static_cast<std::size_t>(found - things_.begin())];
}

QToolButton* HuntCauseCard::faultKey(const Fault& fault) const {
    return faultKeys_[static_cast<std::size_t>(&fault - faults().data())];
}

/// Keys of equal breadth side by side; returns where they end.
double HuntCauseCard::arrangeRow(const std::vector<QToolButton*>& keys, double top, double high) {
    const QRectF box = body();
    const double gap = look().px(kCauseGap);
    const auto count = static_cast<double>(keys.size());
    const double wide = (box.width() - (count - 1) * gap) / std::max(1.0, count);
    double left = box.left();
    // Side by side they speak in one size: that of the longest.
    const WordStyle full{look().font(text::kSmall + 1, QFont::DemiBold), look().theme->text};
    QFont font = full.font;
    for (QToolButton* key : keys) {
        const QFont fits = fittingFont(key->text(), full, QSizeF(wide - look().px(10), look().px(36)));
        if (fits.pixelSize() < font.pixelSize()) font = fits;
    }
    for (QToolButton* key : keys) {
        key->setStyleSheet(choiceKeyStyle(look()));
        key->setIconSize(QSizeF(wide - look().px(14), high - look().px(38)).toSize());
        key->setFont(font);
        key->setGeometry(QRectF(left, top, wide, high).toRect());
        left += wide + gap;
    }
    return top + high + gap;
}

void HuntCauseCard::arrangeCard() {
    const QRectF box = body();
    double top = box.top() + look().px(kCauseHead);
    if (things_.size() <= kMostPictured) {
        const double left = box.height() - look().px(kCauseHead + 2 * kFaultHigh + kTryHigh + 4 * kCauseGap + 26);
        top = arrangeRow(thingKeys_, top, std::clamp(left, look().px(kThingLow), look().px(kThingHigh)));
        // In two rows their words are read from afar, and whole in a small window.
        const auto half = faultKeys_.begin() + static_cast<std::ptrdiff_t>(faultKeys_.size() / 2);
        top = arrangeRow({faultKeys_.begin(), half}, top, look().px(kFaultHigh));
        arrangeRow({half, faultKeys_.end()}, top, look().px(kFaultHigh));
    } else {
        const std::size_t half = (thingKeys_.size() + 1) / 2;
        const auto middle = thingKeys_.begin() + static_cast<std::ptrdiff_t>(half);
        top = arrangeRow({thingKeys_.begin(), middle}, top, look().px(kThingLow));
        top = arrangeRow({middle, thingKeys_.end()}, top, look().px(kThingLow));
        arrangeRow(faultKeys_, top, look().px(kFaultHigh));
    }
    try_->setFont(look().font(text::kSmall + 1, QFont::DemiBold));
    const Theme& theme = *look().theme;
    try_->setStyleSheet(
        QStringLiteral(
            "QToolButton { color: %1; background: %2; border: none; border-radius: %3px; font-weight: 600; }"
            "QToolButton:disabled { background: %4; color: %5; } QToolButton:focus { border: 2px solid %6; }")
            .arg(theme.card.name(), theme.accent.name())
            .arg(look().ipx(5))
            .arg(mix(theme.card, theme.cardEdge, 0.4).name(), theme.dimText.name(), theme.text.name()));
    try_->setGeometry(QRectF(box.right() - look().px(kTryWide), box.bottom() - look().px(kTryHigh), look().px(kTryWide),
                             look().px(kTryHigh))
                          .toRect());
}

void HuntCauseCard::paintBody(QPainter& painter) {
    const QRectF box = body();
    drawHeading(painter, box, {QStringLiteral("What is wrong?")});
    const QRectF room(box.left(), faultKeys_.back()->geometry().bottom() + look().px(14),
                      box.width() - look().px(kTryWide + 18), 0);
    const QRectF words(room.left(), room.top(), room.width(), box.bottom() - room.top());
    if (!answer_.isEmpty()) {
        drawBlock(painter, words, answer_, look().font(text::kSmall + 1), look().theme->text);
    } else if (isComplete()) {
        drawBlock(painter, words, qs(causeInWords(thing_, *fault_)), look().font(34, QFont::DemiBold),
                  look().theme->text, Qt::AlignLeft | Qt::AlignVCenter);
    } else {
        drawBlock(painter, words, QStringLiteral("Choose the thing and what is wrong with it."),
                  look().font(text::kSmall + 1), look().theme->dimText, Qt::AlignLeft | Qt::AlignVCenter);
    }
}

}  // namespace tiepoint::ui
