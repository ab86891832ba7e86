#pragma once
// The legend: what each mark means, and at the same time the switches of the views. Five keys that stay down.

#include "ui/cards/card.h"
#include "ui/cards/view_key.h"
#include "ui/paint/picture.h"

#include <functional>

namespace tiepoint::ui {

class LegendCard : public Card {
    Q_OBJECT
public:
    explicit LegendCard(QWidget* parent = nullptr);

    /// Shows the views in force, the full scale of the arrows and the upper end of the voltage view (empty: as it was).
    void showViews(const Views& views, double fullScaleAmpere, const QString& highestVolt);

Q_SIGNALS:
    void viewsChosen(const Views& views);  ///< a key was used

protected:
    void arrangeCard() override;
    void paintBody(QPainter&) override {}

private:
    void choose(const std::function<void(Views&)>& change);

    Views views_;
    double fullScaleAmpere_ = 1e-3;
    ArrowsKey* arrows_;
    ViewKey* voltage_;
    ViewKey* strips_;
    ViewKey* readings_;
    ViewKey* turned_;
};

}  // namespace tiepoint::ui
