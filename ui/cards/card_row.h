#pragma once
// The row of cards below the bench: a reading, the whole bench or what is selected (a part's values, a jumper), and the legend. Follows what the
// view points at and what the live bench answers; changes nothing by itself.

#include "ui/cards/jumper_card.h"
#include "ui/cards/legend_card.h"
#include "ui/cards/loop_card.h"
#include "ui/cards/reading_card.h"
#include "ui/cards/value_editor.h"
#include "ui/view/bench_view.h"

#include <QTimer>
#include <QWidget>

namespace tiepoint::ui {

class CardRow : public QWidget {
    Q_OBJECT
public:
    CardRow(BenchDocument& document, LiveBench& live, BenchView& view, QWidget* parent);

    void setLook(const Look& look);
    ReadingCard& reading() const { return *reading_; }
    LoopCard& loop() const { return *loop_; }
    LegendCard& legend() const { return *legend_; }
    ValueEditor& values() const { return *values_; }
    JumperCard& jumper() const { return *jumper_; }
    /// Where the second card stands in the row.
    QRect middlePlace() const { return placeOf(1); }
    /// Shows a card of this row, made by others, in the legend's place; null shows what stands there otherwise.
    void showAside(Card* card);
    /// While projecting only a card that is meant for a room is shown, over the whole breadth, in print that a room can read.
    void setRoom(bool room);
    /// At the desk too the card that was called for stands alone, over the whole breadth, in the print of the desk.
    void setAlone(bool alone);
    /// The card for the room, or null.
    Card* roomCard() const;
    /// What was called for, in the legend's place; null: nothing.
    Card* aside() const { return aside_; }
    /// Calls the legend for the room, or puts it away; at the desk, where it stands anyway, what stands in its place goes.
    void callLegend();
    /// The card that stands in the legend's place while no other is called for; null: the legend itself.
    void setStanding(Card* card);
    /// The card of time, which stands in the legend's place, or in the loop's where that is taken; null: none.
    void setTime(Card* card);

Q_SIGNALS:
    void asideChanged(Card* aside);  ///< null: the legend stands there again

protected:
    void resizeEvent(QResizeEvent* event) override;

private:
    void refresh();
    void followSelection();
    void showMiddle(bool shown);
    void arrangeAside();
    std::string pointedAt() const;
    void arrange();
    QRect placeOf(int card) const;
    void arrangeTime();
    /// The look of a card that was called for.
    Look asideLook() const;

    BenchView& view_;
    ReadingCard* reading_;
    LoopCard* loop_;
    ValueEditor* values_;
    JumperCard* jumper_;
    LegendCard* legend_;
    Card* aside_ = nullptr;     ///< called for, in the legend's place
    Card* standing_ = nullptr;  ///< there while none is called for
    Card* time_ = nullptr;      ///< of time, while the bench moves
    bool legendKept_ = false;   ///< the legend was called for at the desk and keeps its place
    QTimer patience_;           ///< an answer that takes longer than a frame is shown as missing
    Look look_;
    bool room_ = false, alone_ = false, legendCalled_ = false;
};

}  // namespace tiepoint::ui
