#pragma once
// What was found on the bench, one at a time, the cause first: how grave it is, a sentence, the proof in figures, and where it is revealed
// the mend, which can be shown on the bench and carried out. Says nothing by itself: it shows what it is given.

#include "core/findings/finding.h"
#include "ui/cards/aside_card.h"

#include <QLabel>
#include <QMenu>
#include <QScrollArea>

#include <memory>
#include <vector>

namespace tiepoint::ui {

class FindingCard : public AsideCard {
    Q_OBJECT
public:
    /// `levels` is the menu of how much is revealed; it outlives the card.
    FindingCard(QMenu& levels, QWidget* parent);

    /// `current` is one of the findings, which are not empty.
    void showFindings(std::shared_ptr<const std::vector<Finding>> findings, int current);
    /// Nothing is found: nothing is shown or offered.
    void showNothing();

    const Finding* finding() const { return findings_ ? &(*findings_)[static_cast<std::size_t>(current_)] : nullptr; }
    int current() const { return findings_ ? current_ : -1; }
    /// "Fault, 1 of 3".
    QString heading() const;

    QToolButton* previousButton() const { return previous_; }
    QToolButton* nextButton() const { return next_; }
    QToolButton* previewButton() const { return preview_; }
    QToolButton* applyButton() const { return apply_; }
    QToolButton* levelButton() const { return level_; }

    bool isForRoom() const override { return true; }

Q_SIGNALS:
    void chosen(int finding);
    /// The mend of the present finding is to be seen on the bench, or no more.
    void previewWanted(bool wanted);
    void applyWanted();

protected:
    void paintBody(QPainter& painter) override;
    void arrangeCard() override;
    void keyPressEvent(QKeyEvent* event) override;
    bool eventFilter(QObject* watched, QEvent* event) override;

private:
    void step(int by);
    void follow();
    void followPreview();
    QString wordsInColour() const;
    QToolButton* makeButton(const QString& text, const QString& name);

    std::shared_ptr<const std::vector<Finding>> findings_;
    int current_ = 0;
    QScrollArea* area_;
    QLabel* words_;
    QToolButton *previous_, *next_, *level_, *preview_, *apply_;
};

}  // namespace tiepoint::ui
