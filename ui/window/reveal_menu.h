#pragma once
// How much of what is found is revealed: a menu of four levels, and a lock for teachers. Changes the bench by edits where there is no lock,
// and apart from the history where there is: no undoing opens one. Who wants more of a locked bench is asked for the pass phrase first; an
// answer that comes when another bench stands on the table counts for nothing.

#include "ui/document/bench_document.h"

#include <QActionGroup>
#include <QMenu>

#include <functional>

namespace tiepoint::ui {

class RevealMenu : public QMenu {
    Q_OBJECT
public:
    using GivePhrase = std::function<void(const QString&)>;
    /// Asks a person for a phrase, with a title and a question; a cancelled question gives nothing. The answer may come later.
    using Asker = std::function<void(const QString& title, const QString& question, const GivePhrase& give)>;

    RevealMenu(BenchDocument& document, QWidget* parent);

    /// Before it is set nobody is asked, and nothing opened.
    void setAsker(Asker asker) { asker_ = std::move(asker); }
    QAction* level(Reveal level) const { return levels_[static_cast<std::size_t>(level)]; }
    QAction* lockAction() const { return lock_; }

Q_SIGNALS:
    void said(const QString& line);

private:
    void follow();
    void choose(Reveal level);
    void toggleLock();
    void lockBy(const QString& phrase);
    void unlock();
    void set(const Disclosure& disclosure, const std::string& name);
    /// The answer to a question about the bench that stands on the table now; goes nowhere if another has come meanwhile.
    GivePhrase whileItStands(const GivePhrase& take);
    /// Goes on with a locked bench once the phrase is right.
    void whenOpened(const QString& question, const std::function<void()>& then);

    BenchDocument& document_;
    Asker asker_ = [](const QString&, const QString&, const GivePhrase&) {};
    QActionGroup* group_;
    std::array<QAction*, 4> levels_ = {};
    QAction* lock_;
};

}  // namespace tiepoint::ui
