#pragma once
// What was measured in a hunt: each reading with its number, place, a bar and its figure; the newest is framed. Shows the last ones where
// there are more than have room.

#include "ui/cards/card.h"
#include "ui/cards/hunt_text.h"

namespace tiepoint::ui {

class HuntReadingsCard : public Card {
    Q_OBJECT
public:
    explicit HuntReadingsCard(QWidget* parent);

    /// `foot`: where the black tip is.
    void showReadings(std::vector<HuntRow> rows, const QString& foot);
    const std::vector<HuntRow>& rows() const { return rows_; }

protected:
    void paintBody(QPainter& painter) override;

private:
    std::vector<HuntRow> rows_;
    QString foot_;
};

/// The number of a reading on a dark square, as on its tag.
void paintHuntNumber(QPainter& painter, const Look& look, const QRectF& box, int number, bool accent);

}  // namespace tiepoint::ui
