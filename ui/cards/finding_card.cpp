#include "ui/cards/finding_card.h"

#include "core/findings/figure_words.h"
#include "core/findings/reveal.h"
#include "ui/cards/value_field.h"
#include "ui/paint/finding_marks.h"
#include "ui/theme/qs.h"

#include <QAccessible>
#include <QKeyEvent>
#include <QPainter>
#include <QScrollBar>

#include <algorithm>
#include <utility>

namespace tiepoint::ui {
namespace {

constexpr double kFindingWordSize = 21;
constexpr double kMendButtonHeight = 36, kButtonGap = 14, kArrowButton = 34;
constexpr double kSymbol = 28, kSymbolGap = 12;

QString severityWords(const Finding& finding) {
    if (isPlaceOnly(finding)) return QStringLiteral("A place to look at");
    if (finding.severity == Severity::Fault) return QStringLiteral("Fault");
    return finding.severity == Severity::Risk ? QStringLiteral("Risk") : QStringLiteral("Remark");
}

QString capitalised(const QString& words) { return words.isEmpty() ? words : words.left(1).toUpper() + words.mid(1); }

}  // namespace

FindingCard::FindingCard(QMenu& levels, QWidget* parent)
    : AsideCard(parent),
      area_(new QScrollArea(this)),
      words_(new QLabel),
      previous_(makeButton(QStringLiteral("\u2039"), QStringLiteral("The finding before"))),
      next_(makeButton(QStringLiteral("\u203a"), QStringLiteral("The next finding"))),
      level_(makeButton(QStringLiteral("Reveal\u2026"), QStringLiteral("How much is revealed"))),
      preview_(makeButton(QStringLiteral("Preview"), QStringLiteral("Show the mend on the bench"))),
      apply_(makeButton(QStringLiteral("Apply"), QStringLiteral("Carry out the mend"))) {
    setFocusPolicy(Qt::TabFocus);
    scrollWords(*area_, *words_);
    area_->setFocusPolicy(Qt::NoFocus);
    level_->setMenu(&levels);
    level_->setPopupMode(QToolButton::InstantPopup);
    preview_->setCheckable(true);
    connect(previous_, &QToolButton::clicked, this, [this] { step(-1); });
    connect(next_, &QToolButton::clicked, this, [this] { step(1); });
    connect(preview_, &QToolButton::toggled, this, &FindingCard::followPreview);
    connect(apply_, &QToolButton::clicked, this, &FindingCard::applyWanted);
    for (QToolButton* button : {preview_, apply_}) button->installEventFilter(this);
}

QToolButton* FindingCard::makeButton(const QString& text, const QString& name) {
    auto* button = new QToolButton(this);
    button->setText(text);
    button->setAccessibleName(name);
    button->setToolTip(name);
    button->setFocusPolicy(Qt::TabFocus);  // a click leaves the keyboard with the board
    return button;
}

void FindingCard::showFindings(std::shared_ptr<const std::vector<Finding>> findings, int current) {
    const QString before = findings_ ? accessibleName() + accessibleDescription() : QString();
    findings_ = std::move(findings);
    current_ = std::clamp(current, 0, static_cast<int>(findings_->size()) - 1);
    follow();
    if (accessibleName() + accessibleDescription() == before) return;
    preview_->setChecked(false);
    area_->verticalScrollBar()->setValue(0);
    QAccessibleEvent event(this, QAccessible::Alert);
    QAccessible::updateAccessibility(&event);
}

void FindingCard::showNothing() {
    if (!findings_ && isHidden()) return;
    findings_.reset();
    preview_->setChecked(false);
    follow();
}

void FindingCard::follow() {
    const Finding* shown = finding();
    const bool several = shown && findings_->size() > 1;
    previous_->setVisible(several);
    next_->setVisible(several);
    preview_->setVisible(shown && shown->mend);
    apply_->setVisible(shown && shown->mend);
    setAccessibleName(heading());
    setAccessibleDescription(shown ? qs(shown->text + (shown->mend ? " Mend: " + shown->mend->text + "." : ""))
                                   : QString());
    if (shown && shown->mend) apply_->setToolTip(qs(shown->mend->text));
    arrangeCard();
    update();
    followPreview();
}

QString FindingCard::heading() const {
    const Finding* shown = finding();
    if (!shown) return {};
    if (findings_->size() == 1) return severityWords(*shown);
    return QStringLiteral("%1, %2 of %3").arg(severityWords(*shown)).arg(current_ + 1).arg(findings_->size());
}

QString FindingCard::wordsInColour() const {
    const Finding& shown = *finding();
    QString words;
    const auto paragraph = [&](const QString& inside) {
        words += QStringLiteral("<p style='margin:0 0 4px 0'>%1</p>").arg(inside);
    };
    paragraph(qs(shown.text).toHtmlEscaped());
    if (const QString proof = qs(figureWords(shown)); !proof.isEmpty()) {
        paragraph(QStringLiteral("<span style='color:%1'>%2.</span>")
                      .arg(look().theme->dimText.name(), capitalised(proof).toHtmlEscaped()));
    }
    if (shown.mend) paragraph(QStringLiteral("<b>Mend:</b> %1.").arg(qs(shown.mend->text).toHtmlEscaped()));
    for (const Alternative& other : shown.alternatives)
        paragraph(QStringLiteral("<b>Or:</b> %1").arg(qs(other.text).toHtmlEscaped()));
    for (const std::string& consequence : shown.consequences) {
        paragraph(QStringLiteral("<span style='color:%1'>So: %2</span>")
                      .arg(look().theme->dimText.name(), qs(consequence).toHtmlEscaped()));
    }
    return words;
}

void FindingCard::step(int by) {
    if (!findings_) return;
    const int count = static_cast<int>(findings_->size());
    Q_EMIT chosen((current_ + by + count) % count);
}

/// Pointing at the keys or reaching them by the keyboard is enough to see what they would do; the key keeps it in sight.
void FindingCard::followPreview() {
    const Finding* shown = finding();
    const auto pointedAt = [](const QToolButton* button) {
        return button->isVisible() && (button->underMouse() || button->hasFocus());
    };
    Q_EMIT previewWanted(shown && shown->mend && (preview_->isChecked() || pointedAt(preview_) || pointedAt(apply_)));
}

bool FindingCard::eventFilter(QObject* watched, QEvent* event) {
    const auto type = event->type();
    if (type == QEvent::Enter || type == QEvent::Leave || type == QEvent::FocusIn || type == QEvent::FocusOut ||
        type == QEvent::Hide) {
        QMetaObject::invokeMethod(this, &FindingCard::followPreview,
                                  Qt::QueuedConnection);  // once the button knows it itself
    }
    return AsideCard::eventFilter(watched, event);
}

void FindingCard::keyPressEvent(QKeyEvent* event) {
    if (event->key() == Qt::Key_Left || event->key() == Qt::Key_Right)
        return step(event->key() == Qt::Key_Left ? -1 : 1);
    AsideCard::keyPressEvent(event);
}

void FindingCard::arrangeCard() {
    AsideCard::arrangeCard();
    const QRectF box = body();
    const Finding* shown = finding();
    words_->setFont(look().font(kFindingWordSize));
    area_->setStyleSheet(fieldStyle(look()) +
                         QStringLiteral("QLabel { color: %1; } QScrollArea { background: transparent; }")
                             .arg(look().theme->text.name()));
    words_->setText(shown ? wordsInColour() : QString());
    const QString style =
        wordButtonStyle(look()) +
        QStringLiteral(
            "QToolButton:checked { text-decoration: underline; } QToolButton::menu-indicator { image: none; }");
    for (QToolButton* button : {previous_, next_, level_, preview_, apply_}) {
        button->setFont(look().font(text::kLabel));
        button->setStyleSheet(style);
    }
    const double height = look().px(kMendButtonHeight), low = box.bottom() - height;
    double left = box.left() - look().px(4);
    for (QToolButton* button : {preview_, apply_}) {
        if (button->isHidden()) continue;
        button->setGeometry(QRectF(left, low, button->sizeHint().width(), height).toRect());
        left += button->sizeHint().width() + look().px(kButtonGap);
    }
    level_->setGeometry(
        QRectF(box.right() - level_->sizeHint().width(), low, level_->sizeHint().width(), height).toRect());
    const double heading = QFontMetricsF(look().font(text::kBody, QFont::DemiBold)).height();
    const double arrow = look().px(kArrowButton);
    const double arrowsLeft = box.left() + widthBesideButton() - 2 * arrow;
    previous_->setGeometry(QRectF(arrowsLeft, box.top() + (heading - arrow) / 2, arrow, arrow).toRect());
    next_->setGeometry(QRectF(arrowsLeft + arrow, box.top() + (heading - arrow) / 2, arrow, arrow).toRect());
    const double top = box.top() + heading + look().px(6);
    area_->setGeometry(QRectF(box.left(), top, box.width(), low - top).toRect());
    settleWords(*area_, *words_);
}

void FindingCard::paintBody(QPainter& painter) {
    const Finding* shown = finding();
    if (!shown) return;
    const QRectF box = body();
    const double height = QFontMetricsF(look().font(text::kBody, QFont::DemiBold)).height(),
                 symbol = look().px(kSymbol);
    paintFindingSymbol(painter, *look().theme, *shown, {box.left() + symbol / 2, box.top() + height / 2}, symbol);
    const double left = box.left() + symbol + look().px(kSymbolGap);
    drawLine(painter, QRectF(left, box.top(), previous_->x() - left, 0), heading(),
             look().font(text::kBody, QFont::DemiBold), look().theme->text);
}

}  // namespace tiepoint::ui
