#pragma once
// The legend: what each mark means, and at the same time the switches of the views. Five buttons that stay down.

#include "ui/cards/card.h"
#include "ui/cards/view_button.h"
#include "ui/paint/picture.h"

#include <functional>

namespace tiepoint::ui {

class LegendCard : public Card {
    Q_OBJECT
public:
    explicit LegendCard(QWidget* parent = nullptr);

    /// Shows the views in force, the full scale of the arrows and the upper end of the voltage view (empty: as it was).
    /// `alternates`: some current goes to and fro within a frame, of which arrows show the mean.
    void showViews(const Views& views, double fullScaleAmpere, const QString& highestVolt, bool alternates = false);

Q_SIGNALS:
    void viewsChosen(const Views& views);  ///< a button was used

protected:
    void arrangeCard() override;
    void paintBody(QPainter&) override {}

private:
    void choose(const std::function<void(Views&)>& change);

    Views views_;
    double fullScaleAmpere_ = 1e-3;
    bool alternates_ = false;
    ArrowsButton* arrows_;
    ViewButton* voltage_;
    ViewButton* strips_;
    ViewButton* readings_;
    ViewButton* turned_;
};

}  // namespace tiepoint::ui
