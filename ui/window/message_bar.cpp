#include "ui/window/message_bar.h"

#include "ui/theme/panels.h"
#include "ui/theme/plain_text.h"

#include <QAccessible>
#include <QApplication>
#include <QKeyEvent>
#include <QPainter>
#include <QStyle>

#include <algorithm>
#include <cmath>
#include <utility>

namespace tiepoint::ui {
namespace {

constexpr double kBarHeight = 60, kBarPad = 22, kBarTop = 14;
constexpr double kButtonHigh = 40, kBetweenButtons = 10, kPhraseWidth = 260;
constexpr double kLeastWords = 520;  ///< breadth that words keep beside the buttons
constexpr double kMostWords = 980;   ///< beyond it they take another line
constexpr int kLongWord = 24;

/// A long name may be parted anywhere: nothing of it is cut off.
QString partable(const QString& words) {
    QString parted;
    int run = 0;
    for (const QChar c : words) {
        parted += c;
        run = c.isSpace() ? 0 : run + 1;
        if (run > kLongWord) parted += QChar(0x200B);
    }
    return parted;
}

}  // namespace

MessageBar::MessageBar(QWidget* parent)
    : QWidget(parent),
      look_{&theme(ThemeName::Day), 1},
      label_(new QLabel(this)),
      moreLabel_(new QLabel(this)),
      phrase_(new QLineEdit(this)) {
    for (QLabel* label : {label_, moreLabel_}) {
        label->setTextFormat(Qt::PlainText);
        label->setWordWrap(true);
        label->setTextInteractionFlags(Qt::TextSelectableByMouse);
        label->setFocusPolicy(Qt::NoFocus);
    }
    moreLabel_->setObjectName(QStringLiteral("more"));
    phrase_->setEchoMode(QLineEdit::Password);
    phrase_->setAccessibleName(QStringLiteral("Pass phrase"));
    phrase_->hide();
    hide();
}

void MessageBar::setLook(const Look& look) {
    look_ = look;
    const Theme& theme = *look.theme;
    setStyleSheet(QStringLiteral("QLabel { color: %1; background: transparent; } QLabel#more { color: %2; }"
                                 "QLineEdit { color: %1; background: %3; border: %5px solid %4; border-radius: %6px; "
                                 "padding: 0 %6px; }")
                      .arg(theme.text.name(), theme.dimText.name(), theme.card.name(), theme.accent.name())
                      .arg(std::max(1, look.ipx(2)))
                      .arg(look.ipx(6)) +
                  buttonStyle());
    arrange();
}

QString MessageBar::buttonStyle() const {
    const Theme& theme = *look_.theme;
    return QStringLiteral(
               "QToolButton { color: %1; background: transparent; border: %4px solid transparent; border-radius: %5px; "
               "padding: 0 %6px; font-weight: 600; }"
               "QToolButton[answer=\"true\"] { border-color: %2; }"
               "QToolButton[safe=\"true\"] { color: %3; background: %1; border-color: %1; }"
               "QToolButton:hover { text-decoration: underline; }"
               "QToolButton:focus { text-decoration: underline; border-color: %7; }")
        .arg(theme.accent.name(), mix(theme.cardEdge, theme.dimText, 0.45).name(), theme.card.name())
        .arg(std::max(1, look_.ipx(2)))
        .arg(look_.ipx(6))
        .arg(look_.ipx(12))
        .arg(theme.text.name());
}

// --- saying ---

void MessageBar::say(Tone tone, const QString& line, const std::vector<Offer>& offers) {
    const Notice notice{tone, line, offers};
    if (isAsking())
        after_ = notice;
    else
        showNotice(notice);
}

void MessageBar::dismiss() {
    after_.reset();
    if (!isAsking()) hide();
}

void MessageBar::showNotice(const Notice& notice) {
    show(notice.tone, notice.line, {});
    for (const Offer& offer : notice.offers) {
        addButton(offer.word, [this, run = offer.run] {
            hide();
            run();
        });
    }
    addButton(QStringLiteral("\u00d7"), [this] { hide(); });
    buttons_.back()->setAccessibleName(QStringLiteral("Close"));
    arrange();
    update();
}

void MessageBar::show(Tone tone, const QString& line, const QString& more) {
    tone_ = tone;
    line_ = plainText(line);
    more_ = plainText(more);
    label_->setText(partable(line_));
    label_->setToolTip(plainTip(line_));
    moreLabel_->setText(partable(more_));
    moreLabel_->setVisible(!more_.isEmpty());
    for (QToolButton* button : buttons_) {
        button->hide();
        button->deleteLater();  // one of them may be the sender
    }
    buttons_.clear();
    phrase_->hide();
    phrase_->clear();
    setAccessibleName(more_.isEmpty() ? line_ : line_ + QLatin1Char(' ') + more_);
    QWidget::show();
    raise();
    QAccessibleEvent heard(this, QAccessible::Alert);
    QAccessible::updateAccessibility(&heard);
}

void MessageBar::addButton(const QString& word, const std::function<void()>& run) {
    auto* button = new QToolButton(this);
    button->setText(word);
    button->setFocusPolicy(Qt::StrongFocus);
    connect(button, &QToolButton::clicked, this, run);
    button->show();
    buttons_.push_back(button);
}

// --- asking ---

void MessageBar::ask(Question question) {
    if (isAsking()) return waiting_.push_back(std::move(question));
    before_ = QApplication::focusWidget();
    question_ = std::move(question);
    showQuestion();
}

void MessageBar::showQuestion() {
    const Question& asked = *question_;
    show(asked.tone, asked.line, asked.more);
    for (std::size_t i = 0; i < asked.answers.size(); ++i) {
        addButton(asked.answers[i].word, [this, i] { finish(question_->answers[i].run); });
        buttons_.back()->setProperty("answer", true);
        buttons_.back()->setProperty("safe", i == asked.safe);
        buttons_.back()->style()->polish(buttons_.back());  // its look follows from what it is
        buttons_.back()->setAccessibleDescription(accessibleName());
    }
    phrase_->setEchoMode(asked.masked ? QLineEdit::Password : QLineEdit::Normal);
    phrase_->setAccessibleName(asked.masked ? QStringLiteral("Pass phrase") : QStringLiteral("Words"));
    phrase_->setVisible(asked.phrase);
    phrase_->setAccessibleDescription(accessibleName());
    arrange();
    update();
    remind();
}

void MessageBar::remind() {
    if (!isAsking()) return;
    raise();
    QWidget* first = question_->phrase ? static_cast<QWidget*>(phrase_) : buttons_[question_->safe];
    first->setFocus(Qt::OtherFocusReason);
}

/// Takes the question away before its answer is given: the answer may ask the next.
void MessageBar::finish(const std::function<void()>& answer) {
    const std::function<void()> give = answer;
    const bool hadKeyboard = isAncestorOf(QApplication::focusWidget());
    question_.reset();
    hide();
    const QPointer<MessageBar> self(this);
    if (hadKeyboard) {
        if (before_ && before_->isVisible())
            before_->setFocus(Qt::OtherFocusReason);
        else
            Q_EMIT left();
    }
    if (give) give();
    if (self) showNext();  // the answer may have closed the window
}

void MessageBar::showNext() {
    phrase_->clear();
    if (isAsking()) return;
    if (!waiting_.empty()) {
        Question next = std::move(waiting_.front());
        waiting_.pop_front();
        return ask(std::move(next));
    }
    if (after_ && !isVisible()) showNotice(*std::exchange(after_, std::nullopt));
}

void MessageBar::cancelQuestions() {
    auto waiting = std::exchange(waiting_, {});
    if (isAsking()) finish(question_->cancel);
    for (const Question& each : waiting) {
        if (each.cancel) each.cancel();
    }
}

void MessageBar::keyPressEvent(QKeyEvent* event) {
    const bool enter = event->key() == Qt::Key_Return || event->key() == Qt::Key_Enter;
    if (event->key() == Qt::Key_Escape) {
        if (isAsking()) return finish(question_->cancel);
        return hide();
    }
    if (!enter) return QWidget::keyPressEvent(event);
    auto* button = qobject_cast<QToolButton*>(QApplication::focusWidget());
    if (std::ranges::find(buttons_, button) != buttons_.end()) return button->click();
    if (isAsking()) buttons_[question_->phrase ? 0 : question_->safe]->click();
}

/// Round the buttons, and not out to the bench: Escape leads there.
bool MessageBar::focusNextPrevChild(bool next) {
    if (!isAsking()) return QWidget::focusNextPrevChild(next);
    std::vector<QWidget*> stops;
    if (question_->phrase) stops.push_back(phrase_);
    stops.insert(stops.end(), buttons_.begin(), buttons_.end());
    const auto now = std::ranges::find(stops, QApplication::focusWidget());
    const std::size_t count = stops.size();
    const std::size_t at = now == stops.end() ? 0 : static_cast<std::size_t>(now - stops.begin());
    stops[(at + (next ? 1 : count - 1)) % count]->setFocus(next ? Qt::TabFocusReason : Qt::BacktabFocusReason);
    return true;
}

// --- arranging ---

void MessageBar::placeIn(const QRect& frame) {
    frame_ = frame;
    arrange();
}

/// What the words take in a breadth, at most.
QSize MessageBar::textSize(double breadth) const {
    const int whole = static_cast<int>(breadth);
    int width = 0, height = 0;
    for (const QLabel* label : {label_, moreLabel_}) {
        if (label->text().isEmpty()) continue;
        const QFontMetricsF metrics(label->font());
        const int line = static_cast<int>(std::ceil(metrics.horizontalAdvance(label->text()))) + look_.ipx(4);
        width = std::max(width, std::min(whole, line));
        height += label->heightForWidth(std::min(whole, line));
    }
    return {width, height};
}

void MessageBar::arrange() {
    label_->setFont(look_.font(text::kBody - 2, more_.isEmpty() ? QFont::Normal : QFont::DemiBold));
    moreLabel_->setFont(look_.font(text::kSmall));
    phrase_->setFont(look_.font(text::kBody - 2));
    const double pad = look_.px(kBarPad), gap = look_.px(kBetweenButtons);
    double buttons = question_ && question_->phrase ? look_.px(kPhraseWidth) + gap : 0;
    for (QToolButton* button : buttons_) {
        button->setFont(look_.font(text::kBody - 2, QFont::DemiBold));
        buttons += button->sizeHint().width() + gap;
    }
    const double most = frame_.width() - 2 * pad, inside = most - 2 * pad;
    const double words = std::min(look_.px(kMostWords), inside - buttons - gap);
    const bool beside = words >= std::min(look_.px(kLeastWords), static_cast<double>(textSize(1e6).width()));
    const QSize text = textSize(beside ? words : inside);
    const double high = look_.px(kButtonHigh), above = look_.px(kBarTop);
    const double width =
        beside ? text.width() + gap + buttons + 2 * pad : std::max<double>(text.width(), buttons) + 2 * pad;
    const double height = std::max(look_.px(kBarHeight), 2 * above + (beside ? std::max<double>(text.height(), high)
                                                                             : text.height() + gap + high));
    setGeometry(QRectF(frame_.center().x() - width / 2, frame_.top() + look_.px(4), std::ceil(width), std::ceil(height))
                    .toAlignedRect());
    double top = beside ? (this->height() - text.height()) / 2.0 : above;
    for (QLabel* label : {label_, moreLabel_}) {
        if (label->text().isEmpty()) continue;
        const int lines = label->heightForWidth(text.width());
        label->setGeometry(QRectF(pad, top, text.width(), lines).toRect());
        top += lines;
    }
    double left = this->width() - pad - buttons + gap;
    const double row = beside ? (this->height() - high) / 2.0 : this->height() - above - high;
    if (question_ && question_->phrase) {
        phrase_->setGeometry(QRectF(left, row, look_.px(kPhraseWidth), high).toRect());
        left += look_.px(kPhraseWidth) + gap;
    }
    for (QToolButton* button : buttons_) {
        button->setGeometry(QRectF(left, row, button->sizeHint().width(), high).toRect());
        left += button->width() + gap;
    }
}

void MessageBar::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    const double margin = look_.px(kCardMargin);
    const QRectF frame = QRectF(rect()).adjusted(margin, margin, -margin, -margin);
    paintCard(painter, look_, frame);
    const QColor edge = tone_ == Tone::Trouble ? look_.theme->overload : look_.theme->accent;
    painter.setPen(Qt::NoPen);
    painter.setBrush(edge);
    painter.drawRoundedRect(QRectF(frame.left(), frame.top(), look_.px(7), frame.height()), look_.px(3), look_.px(3));
}

}  // namespace tiepoint::ui
