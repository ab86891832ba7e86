#include "ui/window/reveal_menu.h"

#include "core/findings/reveal.h"
#include "ui/document/pass_phrase.h"

#include <QPointer>

namespace tiepoint::ui {
namespace {

constexpr std::array kLevels{Reveal::Nothing, Reveal::Place, Reveal::Proof, Reveal::Mend};

}  // namespace

RevealMenu::RevealMenu(BenchDocument& document, QWidget* parent)
    : QMenu(QStringLiteral("&How much is revealed"), parent),
      document_(document),
      group_(new QActionGroup(this)) {
    setToolTipsVisible(true);
    for (const Reveal each : kLevels) {
        const auto index = static_cast<std::size_t>(each);
        auto* action = addAction(QStringLiteral("&%1  %2").arg(index).arg(QString::fromStdString(revealWords(each))));
        action->setCheckable(true);
        group_->addAction(action);
        connect(action, &QAction::triggered, this, [this, each] { choose(each); });
        levels_[index] = action;
    }
    addSeparator();
    lock_ = addAction(QString());
    lock_->setToolTip(QStringLiteral(
        "Keeps honest learners from peeking. It is no security: who edits the file by hand gets round it."));
    connect(lock_, &QAction::triggered, this, &RevealMenu::toggleLock);
    connect(&document, &BenchDocument::benchChanged, this, &RevealMenu::follow);
    follow();
}

void RevealMenu::follow() {
    const Bench& bench = *document_.bench();
    level(revealOf(bench))->setChecked(true);
    lock_->setText(isLocked(bench) ? QStringLiteral("&Unlock\u2026")
                                   : QStringLiteral("&Lock with a pass phrase\u2026"));
}

void RevealMenu::choose(Reveal wanted) {
    const Bench& bench = *document_.bench();
    if (wanted == revealOf(bench)) return;
    const auto raise = [this, wanted] {
        Disclosure disclosure = document_.bench()->disclosure.value_or(Disclosure{});
        disclosure.level = wanted;
        set(disclosure, "Reveal " + revealWords(wanted));
    };
    if (mayReveal(bench, wanted)) return raise();
    follow();  // the mark stays where the bench is, until the phrase is right
    whenOpened(QStringLiteral("This bench is locked. The pass phrase shows more of what is found:"), raise);
}

void RevealMenu::toggleLock() {
    if (isLocked(*document_.bench())) return whenOpened(QStringLiteral("Pass phrase:"), [this] { unlock(); });
    asker_(QStringLiteral("Lock"),
           QStringLiteral("Lock what is revealed with a pass phrase:\nIt keeps honest learners from peeking "
                          "and is no security."),
           whileItStands([this](const QString& phrase) { lockBy(phrase); }));
}

void RevealMenu::lockBy(const QString& phrase) {
    if (isLocked(*document_.bench())) return;  // by an answer that came before
    if (phrase.trimmed().isEmpty())
        return Q_EMIT said(QStringLiteral("Not locked: a pass phrase has at least one letter."));
    Disclosure disclosure = document_.bench()->disclosure.value_or(Disclosure{});
    disclosure.lock = lockWith(phrase);
    set(disclosure, "Lock");
}

void RevealMenu::unlock() {
    if (!isLocked(*document_.bench())) return;
    Disclosure disclosure = *document_.bench()->disclosure;
    disclosure.lock.clear();
    set(disclosure, "Unlock");
}

void RevealMenu::set(const Disclosure& disclosure, const std::string& name) {
    const bool locked = isLocked(*document_.bench()) || !disclosure.lock.empty();
    const auto why = locked ? document_.setDisclosure(disclosure) : document_.push({name, {SetDisclosure{disclosure}}});
    if (why) Q_EMIT said(*why);
}

RevealMenu::GivePhrase RevealMenu::whileItStands(const GivePhrase& take) {
    return [self = QPointer<RevealMenu>(this), opening = document_.opening(), take](const QString& phrase) {
        if (self && self->document_.opening() == opening) take(phrase);
    };
}

void RevealMenu::whenOpened(const QString& question, const std::function<void()>& then) {
    asker_(QStringLiteral("Unlock"), question, whileItStands([this, then](const QString& phrase) {
               const Bench& bench = *document_.bench();
               if (!isLocked(bench) || opens(phrase, bench.disclosure->lock)) return then();
               Q_EMIT said(QStringLiteral("That is not the pass phrase."));
           }));
}

}  // namespace tiepoint::ui
