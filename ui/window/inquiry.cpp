#include "ui/window/inquiry.h"

#include "core/findings/reveal.h"
#include "core/snapshot/readings.h"
#include "ui/view/key_list.h"

#include <algorithm>
#include <utility>

namespace tiepoint::ui {

Inquiry::Inquiry(BenchDocument& document, LiveBench& live, BenchView& view, CardRow& cards, QMenuBar& menus,
                 QAction* nextInBar, QWidget* window)
    : QObject(window),
      document_(document),
      live_(live),
      view_(view),
      cards_(cards),
      questions_(new Questions(this)),
      menu_(new QMenu(QStringLiteral("&Ask"), &menus)),
      table_(new TruthCard(&cards)),
      answer_(new AnswerCard(&cards)),
      tableAction_(new QAction(QStringLiteral("&Truth table"), this)),
      whyAction_(new QAction(QStringLiteral("&Why does this part do that?"), this)) {
    table_->hide();
    answer_->hide();
    tableAction_->setCheckable(true);
    tableAction_->setShortcut(keysFor(KeyFor::TruthTable).front());
    whyAction_->setShortcut(keysFor(KeyFor::Why).front());
    menus.insertMenu(nextInBar, menu_);
    for (QAction* action : {whyAction_, tableAction_}) {
        window->addAction(action);
        menu_->addAction(action);
    }
    connect(tableAction_, &QAction::triggered, this, &Inquiry::showTable);
    connect(whyAction_, &QAction::triggered, this, [this] { askAbout(partInQuestion()); });
    connectCards();
    connect(&document_, &BenchDocument::benchChanged, this, &Inquiry::followBench);
    connect(&live_, &LiveBench::answerReady, this, &Inquiry::followInstant);
    connect(&live_, &LiveBench::inputsChanged, this, [this] { answer_->showStale(); });
    followReveal();
}

void Inquiry::connectCards() {
    connect(questions_, &Questions::tableReady, this, [this](const std::shared_ptr<const TableAnswer>& answer) {
        if (answer->revision != document_.revision()) return;
        table_->showTable(answer);
        table_->showPresent(presentRow());
    });
    connect(questions_, &Questions::whyReady, this, [this](const std::shared_ptr<const WhyAnswer>& answer) {
        const bool present =
            answer->revision == document_.revision() && answer->inputSequence == live_.inputs().sequence;
        if (!present || answer->answer.part != asked_) return;
        showAnswer(*answer);
        cards_.showAside(answer_);
    });
    connect(&cards_.reading(), &ReadingCard::whyAsked, this, &Inquiry::askAbout);
    connect(questions_, &Questions::drawerChanged, this, &Inquiry::followInstant);
    connect(table_, &TruthCard::rowChosen, this, &Inquiry::setPosition);
    connect(answer_, &AnswerCard::remedyChosen, this, &Inquiry::carryOut);
    connect(&cards_, &CardRow::asideChanged, this, [this](const Card* aside) {
        if (aside != table_) tableAction_->setChecked(false);
        if (aside != answer_) asked_.clear();
        if (!aside && std::exchange(holds_, false)) live_.releaseAll();
    });
    connect(table_, &AsideCard::closed, this, &Inquiry::putAway);
    connect(answer_, &AsideCard::closed, this, &Inquiry::putAway);
    // From the bench the Tab key leads to the table at once.
    QWidget::setTabOrder(&view_, &table_->rows());
    QWidget::setTabOrder(&table_->rows(), &table_->words());
    QWidget::setTabOrder(&table_->words(), table_->closeButton());
}

void Inquiry::showAnswer(const WhyAnswer& answer) {
    auto told = std::make_shared<WhyAnswer>(answer);
    // Who asks wants to know what would help; a locked bench may keep it.
    if (!mayReveal(*document_.bench(), Reveal::Mend)) told->answer.remedies.clear();
    answer_->showAnswer(std::move(told));
}

void Inquiry::followReveal() {
    const bool answers = answersWhy(revealOf(*document_.bench()));
    whyAction_->setEnabled(answers);
    cards_.reading().setAnswered(answers);
    if (!answers && !asked_.empty()) putAway();
}

void Inquiry::putAway() {
    cards_.showAside(nullptr);
    view_.setFocus(Qt::OtherFocusReason);
}

void Inquiry::showTable(bool wanted) {
    if (!wanted) return putAway();
    asked_.clear();
    Q_EMIT cardWanted();
    cards_.showAside(table_);
    followInstant();
}

std::string Inquiry::partInQuestion() const {
    const Bench& bench = *document_.bench();
    if (const QStringList selected = view_.selection(); selected.size() == 1) {
        std::string id = selected.front().toStdString();
        if (bench.findPart(id)) return id;
    }
    if (std::string id = view_.hoveredPart().toStdString(); bench.findPart(id)) return id;
    const auto snapshot = live_.snapshot();
    const int part = snapshot && snapshot->revision == document_.revision() ? mostInteresting(*snapshot) : -1;
    return part < 0 ? std::string() : bench.parts[part].id;
}

void Inquiry::askAbout(const std::string& part) {
    asked_ = part;
    const auto snapshot = live_.snapshot();
    if (asked_.empty() || !snapshot) return;
    Q_EMIT cardWanted();
    questions_->askWhy(snapshot, asked_);
}

/// Until the new answers come nothing of the old ones is shown.
void Inquiry::followBench() {
    questions_->giveUp();
    table_->showStale();
    answer_->showStale();
    if (!asked_.empty() && !document_.bench()->findPart(asked_)) putAway();
    followReveal();
}

void Inquiry::followInstant() {
    const auto snapshot = live_.snapshot();
    if (!snapshot || snapshot->revision != document_.revision()) return;
    if (!asked_.empty()) questions_->askWhy(snapshot, asked_);
    if (!table_->isVisibleTo(&cards_)) return;
    if (table_->isStale())
        questions_->askTable(snapshot);
    else
        table_->showPresent(presentRow());
}

int Inquiry::presentRow() const {
    const TruthTable* shown = table_->table();
    if (shown == nullptr) return -1;
    const Digits now = digitsOf(throwsOf(*document_.bench()), *document_.bench(), live_.inputs());
    const auto row = std::ranges::find(shown->rows, now, &TruthRow::digits);
    return row == shown->rows.end() ? -1 : static_cast<int>(row - shown->rows.begin());
}

void Inquiry::setPosition(int row) {
    const TruthTable& shown = *table_->table();
    Edit edit{"Set the switches", {}};
    std::set<std::string, std::less<>> held;
    Bench next = *document_.bench();
    for (std::size_t s = 0; s < shown.switches.size(); ++s) {
        const Throw& each = shown.switches[s].thrown;
        const int digit = shown.rows[row].digits[s];
        Part& part = next.parts[each.part];
        if (each.isCap()) {
            if (digit != 0) held.insert(part.id);
        } else if (static_cast<int>(part.stateValue(each.state)) != digit) {
            part.state[each.state] = digit;
            std::erase_if(edit.operations,
                          [&](const Operation& done) { return std::get<ReplacePart>(done).part.id == part.id; });
            edit.operations.emplace_back(ReplacePart{part});
        }
    }
    if (!edit.operations.empty()) document_.push(edit);
    holdOnly(held);
    table_->showPresent(presentRow());
}

void Inquiry::carryOut(const Remedy& remedy) {
    const auto held = remedy.held;  // the remedy belongs to a card that the edit empties
    if (!remedy.edit.operations.empty() && document_.push(remedy.edit)) return;
    holdOnly(held);
}

void Inquiry::holdOnly(const std::set<std::string, std::less<>>& held) {
    const auto before = live_.inputs().held;
    for (const std::string& id : before) {
        if (!held.contains(id)) live_.setHeld(id, false);
    }
    for (const std::string& id : held) live_.setHeld(id, true);
    holds_ = !held.empty();
}

}  // namespace tiepoint::ui
