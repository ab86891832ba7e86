#include "ui/window/resistor_help.h"

#include "core/findings/put_resistor.h"
#include "ui/view/key_list.h"

#include <algorithm>

namespace tiepoint::ui {

ResistorHelp::ResistorHelp(BenchDocument& document, LiveBench& live, BenchView& view, CardRow& cards, MyDrawer& drawer,
                           Inquiry& inquiry, QWidget* window)
    : QObject(window),
      document_(document),
      live_(live),
      view_(view),
      cards_(cards),
      drawer_(drawer),
      questions_(inquiry.questions()),
      card_(new ResistorCard(&cards)),
      drawerCard_(new DrawerCard(&cards)),
      helpAction_(inquiry.menu().addAction(tr("Which &resistor?"))),
      drawerAction_(inquiry.menu().addAction(tr("My &drawer…"))) {
    card_->hide();
    drawerCard_->hide();
    helpAction_->setShortcut(keysFor(KeyFor::Resistor).front());
    window->addAction(helpAction_);
    window->addAction(drawerAction_);
    card_->setDrawer(drawer_.drawer());
    drawerCard_->showDrawer(drawer_.drawer());
    connect(helpAction_, &QAction::triggered, this, &ResistorHelp::begin);
    connect(drawerAction_, &QAction::triggered, this, [this] { showCard(drawerCard_); });
    connect(card_, &ResistorCard::drawerWanted, this, [this] { showCard(drawerCard_); });
    connect(card_, &ResistorCard::reckoned, this, &ResistorHelp::followPlace);
    connect(card_, &ResistorCard::putWanted, this, &ResistorHelp::putIn);
    connect(drawerCard_, &DrawerCard::chosen, &drawer_, &MyDrawer::set);
    connect(&drawer_, &MyDrawer::changed, this, [this] {
        card_->setDrawer(drawer_.drawer());
        drawerCard_->showDrawer(drawer_.drawer());
    });
    connect(&questions_, &Questions::driveReady, this, [this](const auto& answer) { takeQuestion(*answer); });
    connect(&questions_, &Questions::placeReady, this, [this](const auto& answer) { takePlace(*answer); });
    connect(&live_, &LiveBench::answerReady, this, [this] {
        if (beginning_) begin();  // another bench came before the answer
        followPlace();
    });
    connect(&view_, &BenchView::selectionChanged, this, &ResistorHelp::followPlace);
    for (AsideCard* card : {static_cast<AsideCard*>(card_), static_cast<AsideCard*>(drawerCard_)}) {
        connect(card, &AsideCard::closed, this, [this] {
            cards_.showAside(nullptr);
            view_.setFocus(Qt::OtherFocusReason);
        });
    }
}

void ResistorHelp::showCard(Card* card) {
    Q_EMIT cardWanted();
    cards_.showAside(card);
    if (card == drawerCard_) drawerCard_->list()->setFocus(Qt::ShortcutFocusReason);
    followPlace();
}

void ResistorHelp::begin() {
    beginning_ = true;
    const auto snapshot = live_.snapshot();
    if (snapshot && snapshot->revision == document_.revision())
        questions_.askDrive(snapshot, partInQuestion(), card_->question());
}

void ResistorHelp::takeQuestion(const DriveAnswer& answer) {
    if (!beginning_ || answer.revision != document_.revision()) return;
    beginning_ = false;
    card_->begin(answer.question);
    showCard(card_);
    card_->supplyField()->takeKeyboard();
}

int ResistorHelp::partInQuestion() const {
    const Bench& bench = *document_.bench();
    if (const QStringList selected = view_.selection(); selected.size() == 1) {
        if (const int part = bench.partIndex(selected.front().toStdString()); part >= 0) return part;
    }
    const auto light = std::find_if(bench.parts.begin(), bench.parts.end(),
                                    [](const Part& part) { return part.kind->emitsLight && part.kind->needsResistor; });
    return light == bench.parts.end() ? -1 : static_cast<int>(light - bench.parts.begin());
}

void ResistorHelp::followPlace() {
    if (!card_->isVisibleTo(&cards_)) return;
    const auto snapshot = live_.snapshot();
    const int part = partInQuestion();
    const bool known = card_->choice() && part >= 0 && snapshot && snapshot->revision == document_.revision();
    if (!known || placeOf_ != document_.revision()) {
        place_.reset();
        card_->setPlace({}, false);
    }
    if (known) questions_.askPlace(snapshot, part, card_->choice()->ohm);
}

void ResistorHelp::takePlace(const PlaceAnswer& answer) {
    const int part = partInQuestion();
    if (answer.revision != document_.revision() || answer.part != part) return;
    if (!card_->choice() || card_->choice()->ohm != answer.ohm) return;
    placeOf_ = answer.revision;
    place_ = answer.place;
    if (place_) return card_->setPlace(QString::fromStdString(place_->text), true);
    const int resistor = resistorOf(*view_.picture().layout, part);
    card_->setPlace(
        resistor < 0
            ? QString()
            : tr("%1 has it")
                  .arg(QString::fromStdString(document_.bench()->parts[static_cast<std::size_t>(resistor)].id)),
        false);
}

void ResistorHelp::putIn() {
    if (!place_ || placeOf_ != document_.revision()) return;
    const Edit edit = place_->edit;  // the place is found anew after it
    document_.push(edit);
}

}  // namespace tiepoint::ui
