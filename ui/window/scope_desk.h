#pragma once
// The oscilloscope's large screen in the window: its action and card, and files of what it shows. Changes nothing of the bench.

#include "ui/cards/card_row.h"
#include "ui/cards/scope_card.h"
#include "ui/document/bench_document.h"
#include "ui/live/live_bench.h"

#include <QAction>
#include <QMenu>
#include <QObject>

#include <functional>

namespace tiepoint::ui {

class ScopeDesk : public QObject {
    Q_OBJECT
public:
    struct Parts {
        BenchDocument& document;
        LiveBench& live;
        BenchView& view;
        CardRow& cards;
    };
    /// How a person is asked for a file of that ending; tests answer in their place.
    using AskPath = std::function<void(const QString& ending, const std::function<void(const QString& path)>& give)>;

    /// Adds its action to the menu and to the window.
    ScopeDesk(const Parts& parts, QMenu& menu, QWidget* window);

    QAction* action() const { return action_; }
    ScopeCard& card() const { return *card_; }
    void setAskPath(AskPath ask) { ask_ = std::move(ask); }

Q_SIGNALS:
    void cardWanted();                ///< the card is about to be shown: the row of cards has to be there
    void failed(const QString& why);  ///< a file couldn't be written

private:
    void show(bool wanted);
    void follow();
    int scopeShown(const Bench& bench) const;
    void save(const QString& ending);

    Parts parts_;
    ScopeCard* card_;
    QAction* action_;
    AskPath ask_;
};

}  // namespace tiepoint::ui
