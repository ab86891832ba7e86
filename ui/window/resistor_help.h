#pragma once
// The resistor helper and the drawer in the window: their menu entries, their cards, and the edit that puts a resistor in.

#include "core/findings/finding.h"
#include "ui/cards/card_row.h"
#include "ui/cards/drawer_card.h"
#include "ui/cards/resistor_card.h"
#include "ui/document/bench_document.h"
#include "ui/document/my_drawer.h"
#include "ui/live/live_bench.h"
#include "ui/view/bench_view.h"

#include <QAction>
#include <QMenu>

#include <optional>

namespace tiepoint::ui {

class ResistorHelp : public QObject {
    Q_OBJECT
public:
    ResistorHelp(BenchDocument& document, LiveBench& live, BenchView& view, CardRow& cards, MyDrawer& drawer,
                 QMenu& menu, QWidget* window);

    QAction* helpAction() const { return helpAction_; }
    QAction* drawerAction() const { return drawerAction_; }
    ResistorCard& card() const { return *card_; }
    DrawerCard& drawerCard() const { return *drawerCard_; }

Q_SIGNALS:
    void cardWanted();  ///< a card is about to be shown: the row of cards has to be there

private:
    void showCard(Card* card);
    void begin();
    /// Finds anew where the resistor would go.
    void followPlace();
    /// The part that it is for: the one selected, or the first LED; index, or -1.
    int partInQuestion() const;
    void putIn();

    BenchDocument& document_;
    LiveBench& live_;
    BenchView& view_;
    CardRow& cards_;
    MyDrawer& drawer_;
    ResistorCard* card_;
    DrawerCard* drawerCard_;
    QAction *helpAction_, *drawerAction_;
    std::optional<Mend> place_;
};

}  // namespace tiepoint::ui
