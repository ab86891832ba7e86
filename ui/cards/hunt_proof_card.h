#pragma once
// How do you know? The readings, to be chosen as proof, and below them hints, which open one at a time.

#include "ui/cards/card.h"
#include "ui/cards/hunt_text.h"

#include <QStringList>
#include <QToolButton>

#include <vector>

namespace tiepoint::ui {

class HuntProofCard : public Card {
    Q_OBJECT
public:
    explicit HuntProofCard(QWidget* parent);

    void showReadings(std::vector<HuntRow> rows);
    /// The hints that are open, and how many there are.
    void showHints(const QStringList& open, int all);

    const std::vector<HuntRow>& rows() const { return rows_; }
    const QStringList& hints() const { return hints_; }
    QToolButton* readingButton(int number) const;
    QToolButton* hintButton() const { return more_; }

Q_SIGNALS:
    void chosen(const std::string& id, bool asProof);
    void hintWanted();

protected:
    void paintBody(QPainter& painter) override;
    void arrangeCard() override;

private:
    std::vector<HuntRow> rows_;
    std::vector<QToolButton*> buttons_;
    QStringList hints_;
    int allHints_ = 3;
    QToolButton* more_;
};

}  // namespace tiepoint::ui
