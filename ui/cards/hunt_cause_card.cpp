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

QString choiceButtonStyle(const Look& look) {
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
        auto* button = new QToolButton(this);
        button->setText(qs(fault.label));
        button->setCheckable(true);
        connect(button, &QToolButton::clicked, this, [this, &fault] {
            fault_ = &fault;
            follow();
        });
        faultButtons_.push_back(button);
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
        for (QToolButton* button : thingButtons_) button->deleteLater();
        thingButtons_.clear();
        for (const HuntThing& thing : things_) {
            auto* button = new QToolButton(this);
            button->setText(qs(thing.id));
            button->setCheckable(true);
            connect(button, &QToolButton::clicked, this, [this, id = thing.id] {
                thing_ = id;
                follow();
            });
            button->show();
            thingButtons_.push_back(button);
        }
        if (std::ranges::find(things_, thing_, &HuntThing::id) == things_.end()) thing_.clear();
    }
    for (std::size_t i = 0; i < things_.size(); ++i) {
        const bool pictured = things_.size() <= kMostPictured && !things_[i].picture.isNull();
        thingButtons_[i]->setToolButtonStyle(pictured ? Qt::ToolButtonTextUnderIcon : Qt::ToolButtonTextOnly);
        thingButtons_[i]->setIcon(pictured ? QIcon(QPixmap::fromImage(things_[i].picture)) : QIcon());
    }
    arrangeCard();
    follow();
}

void HuntCauseCard::showAnswer(const QString& words, bool solved) {
    answer_ = words;
    solved_ = solved;
    setAccessibleDescription(words);
    for (QToolButton* button : thingButtons_) button->setEnabled(!solved);
    for (QToolButton* button : faultButtons_) button->setEnabled(!solved);
    try_->setText(solved ? QStringLiteral("End the hunt") : QStringLiteral("Try it mended"));
    try_->setEnabled(solved || isComplete());
    update();
}

void HuntCauseCard::follow() {
    for (std::size_t i = 0; i < thingButtons_.size(); ++i) thingButtons_[i]->setChecked(things_[i].id == thing_);
    for (std::size_t i = 0; i < faultButtons_.size(); ++i) faultButtons_[i]->setChecked(&faults()[i] == fault_);
    showAnswer({}, false);
    Q_EMIT guessChanged();
}

QToolButton* HuntCauseCard::thingButton(const std::string& id) const {
    const auto found = std::ranges::find(things_, id, &HuntThing::id);
    return found == things_.end() ? nullptr : thingButtons_[static_cast<std::size_t>(found - things_.begin())];
}

QToolButton* HuntCauseCard::faultButton(const Fault& fault) const {
    return faultButtons_[static_cast<std::size_t>(&fault - faults().data())];
}

/// Keys of equal breadth side by side; returns where they end.
double HuntCauseCard::arrangeRow(const std::vector<QToolButton*>& buttons, double top, double high) {
    const QRectF box = body();
    const double gap = look().px(kCauseGap);
    const auto count = static_cast<double>(buttons.size());
    const double wide = (box.width() - (count - 1) * gap) / std::max(1.0, count);
    double left = box.left();
    // Side by side they speak in one size: that of the longest.
    const WordStyle full{look().font(text::kSmall + 1, QFont::DemiBold), look().theme->text};
    QFont font = full.font;
    for (QToolButton* button : buttons) {
        const QFont fits = fittingFont(button->text(), full, QSizeF(wide - look().px(10), look().px(36)));
        if (fits.pixelSize() < font.pixelSize()) font = fits;
    }
    for (QToolButton* button : buttons) {
        button->setStyleSheet(choiceButtonStyle(look()));
        button->setIconSize(QSizeF(wide - look().px(14), high - look().px(38)).toSize());
        button->setFont(font);
        button->setGeometry(QRectF(left, top, wide, high).toRect());
        left += wide + gap;
    }
    return top + high + gap;
}

void HuntCauseCard::arrangeCard() {
    const QRectF box = body();
    double top = box.top() + look().px(kCauseHead);
    if (things_.size() <= kMostPictured) {
        const double left = box.height() - look().px(kCauseHead + 2 * kFaultHigh + kTryHigh + 4 * kCauseGap + 26);
        top = arrangeRow(thingButtons_, top, std::clamp(left, look().px(kThingLow), look().px(kThingHigh)));
        // In two rows their words are read from afar, and whole in a small window.
        const auto half = faultButtons_.begin() + static_cast<std::ptrdiff_t>(faultButtons_.size() / 2);
        top = arrangeRow({faultButtons_.begin(), half}, top, look().px(kFaultHigh));
        arrangeRow({half, faultButtons_.end()}, top, look().px(kFaultHigh));
    } else {
        const std::size_t half = (thingButtons_.size() + 1) / 2;
        const auto middle = thingButtons_.begin() + static_cast<std::ptrdiff_t>(half);
        top = arrangeRow({thingButtons_.begin(), middle}, top, look().px(kThingLow));
        top = arrangeRow({middle, thingButtons_.end()}, top, look().px(kThingLow));
        arrangeRow(faultButtons_, top, look().px(kFaultHigh));
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
    const QRectF room(box.left(), faultButtons_.back()->geometry().bottom() + look().px(14),
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
