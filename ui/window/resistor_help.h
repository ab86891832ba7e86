#pragma once
// The resistor helper and the drawer in the window: their menu entries, their cards, and the edit that puts a resistor in. What the bench says and
// where the resistor goes is reckoned beside (Questions): on a large bench it takes longer than a frame.

#include "core/findings/finding.h"
#include "ui/cards/card_row.h"
#include "ui/cards/drawer_card.h"
#include "ui/cards/resistor_card.h"
#include "ui/document/bench_document.h"
#include "ui/document/my_drawer.h"
#include "ui/live/live_bench.h"
#include "ui/live/questions.h"
#include "ui/view/bench_view.h"
#include "ui/window/inquiry.h"

#include <QAction>
#include <QMenu>

#include <optional>

namespace tiepoint::ui {

class ResistorHelp : public QObject {
    Q_OBJECT
public:
    ResistorHelp(BenchDocument& document, LiveBench& live, BenchView& view, CardRow& cards, MyDrawer& drawer,
                 Inquiry& inquiry, QWidget* window);

    QAction* helpAction() const { return helpAction_; }
    QAction* drawerAction() const { return drawerAction_; }
    ResistorCard& card() const { return *card_; }
    DrawerCard& drawerCard() const { return *drawerCard_; }

Q_SIGNALS:
    void cardWanted();  ///< a card is about to be shown: the row of cards has to be there

private:
    void showCard(Card* card);
    void begin();
    void takeQuestion(const DriveAnswer& answer);
    void takePlace(const PlaceAnswer& answer);
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
    Questions& questions_;
    ResistorCard* card_;
    DrawerCard* drawerCard_;
    QAction *helpAction_, *drawerAction_;
    std::optional<Mend> place_;
    bool beginning_ = false;  ///< the card is to open once it is known what the bench says
    quint64 placeOf_ = 0;     ///< the revision that the place on the card belongs to
};

}  // namespace tiepoint::ui
