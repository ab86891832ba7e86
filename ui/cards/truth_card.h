#pragma once
// The truth table as a card: its rows, and beside them when each lamp is lit, in logic, the switches that change nothing, and what a 1
// means. Both scroll, so that nothing is left out however small the card is. Choosing a row asks for its position.

#include "ui/cards/aside_card.h"
#include "ui/cards/truth_rows.h"

#include <QStringList>

namespace tiepoint::ui {

class TruthCard : public AsideCard {
    Q_OBJECT
public:
    explicit TruthCard(QWidget* parent);

    void showTable(std::shared_ptr<const TableAnswer> answer);
    /// The bench changed and the new table isn't there yet: no lamp is shown.
    void showStale();
    /// The row of the bench's present position, or -1.
    void showPresent(int row) { rows_->showPresent(row); }

    const TruthTable* table() const { return rows_->table(); }
    bool isStale() const { return stale_; }
    int presentRow() const { return rows_->presentRow(); }
    const QStringList& sentences() const { return sentences_; }
    TruthRows& rows() const { return *rows_; }
    /// What stands beside the table, in an area that scrolls.
    QScrollArea& words() const { return *area_; }

    bool isForRoom() const override { return true; }
    double roomHeight(double most) const override;

Q_SIGNALS:
    void rowChosen(int row);

protected:
    void paintBody(QPainter& painter) override;
    void arrangeCard() override;

private:
    QString wordsInColour() const;

    TruthRows* rows_;
    QScrollArea* area_;
    QLabel* words_;
    QStringList sentences_;
    QString meaning_;  ///< of a 1
    bool stale_ = true;
};

}  // namespace tiepoint::ui
