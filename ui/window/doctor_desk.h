#pragma once
// Help with a real board in the window: the bench is the plan, as it should have been built. Its action, its card, and what ties them to the
// board: a hole that is clicked is where the red tip stands, the next place to measure is ringed, and at the end so is the mend. What was seen
// is kept for each table and each plan between starts. Changes the plan never.

#include "core/doctor/observation.h"
#include "ui/cards/card_row.h"
#include "ui/cards/doctor_card.h"
#include "ui/document/bench_document.h"
#include "ui/live/live_bench.h"
#include "ui/view/bench_view.h"

#include <QAction>
#include <QMenu>

#include <optional>
#include <tuple>
#include <vector>

namespace tiepoint::ui {

class DoctorDesk : public QObject {
    Q_OBJECT
public:
    /// Adds its action to the menu and to the window.
    DoctorDesk(BenchDocument& document, LiveBench& live, BenchView& view, CardRow& cards, QMenu& menu, QWidget* window);

    QAction* action() const { return action_; }
    /// What the class has; nothing: anything, and a meter.
    void setKit(const std::optional<Kit>& kit);
    /// Its card takes the place of all cards and the tray.
    bool isOpen() const { return cards_.aside() == card_; }
    DoctorCard& card() const { return *card_; }
    const std::vector<Observation>& seen() const { return seen_; }
    const std::optional<Hole>& redTip() const { return red_; }

Q_SIGNALS:
    void cardWanted();  ///< the card is about to be shown: the row of cards has to be there

protected:
    bool eventFilter(QObject* watched, QEvent* event) override;

private:
    void connectCard();
    void show(bool wanted);
    void endPlan();
    void ask();
    void take(const std::shared_ptr<const DoctorAnswer>& answer);
    void add(std::vector<Observation> more);
    void answer(int choice);
    void seeLight(int kind);
    void takeTyped(const QString& text);
    void followLight();
    void followPlace();
    void markBoard();
    void showSeen();
    void makePictures();
    Digits digitsNow() const;
    /// Where the red tip stands, or is to stand; nothing: nowhere.
    std::optional<Hole> place() const;
    /// The question is how a light looks, and nobody has turned to another one or moved a switch.
    bool asksForLight() const;
    /// The light that is asked about: the question's, else the one selected, else the first.
    std::string light() const;
    QString caseKey() const;
    void recall();
    void remember() const;

    BenchDocument& document_;
    LiveBench& live_;
    BenchView& view_;
    CardRow& cards_;
    Instrument instrument_ = Instrument::Meter;  ///< that the class has
    DoctorRun* run_;
    DoctorCard* card_;
    QAction* action_;
    std::vector<Observation> seen_;
    std::optional<Hole> red_;  ///< a hole that was clicked
    QString table_;
    bool ownLight_ = false;  ///< somebody turned to another light or another position
    quint64 asked_ = 0;
    /// What the pictures were made from.
    std::tuple<std::shared_ptr<const Bench>, const Theme*, QSize, std::string, bool> pictured_;
};

}  // namespace tiepoint::ui
