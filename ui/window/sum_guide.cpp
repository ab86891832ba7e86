#include "ui/window/sum_guide.h"

#include "ui/view/key_list.h"

namespace tiepoint::ui {

SumGuide::SumGuide(LiveBench& live, BenchView& view, CardRow& cards, QMenu& menu, QWidget* window)
    : QObject(window),
      view_(view),
      cards_(cards),
      card_(new SumCard(&cards)),
      action_(new QAction(QStringLiteral("&Sum round the loop, or at a junction"), this)) {
    card_->hide();
    action_->setCheckable(true);
    action_->setShortcut(keysFor(KeyFor::Sum).front());
    window->addAction(action_);
    menu.addAction(action_);
    connect(action_, &QAction::triggered, this, &SumGuide::show);
    connect(card_, &AsideCard::closed, this, [this] {
        cards_.showAside(nullptr);
        view_.setFocus(Qt::OtherFocusReason);
    });
    connect(&cards_, &CardRow::asideChanged, this, [this](const Card* aside) { action_->setChecked(aside == card_); });
    connect(&live, &LiveBench::snapshotReady, this, &SumGuide::follow);
    connect(&view_, &BenchView::selectionChanged, this, &SumGuide::follow);
    connect(&view_, &BenchView::hoverChanged, this, &SumGuide::follow);
}

void SumGuide::show(bool wanted) {
    if (!wanted) return cards_.showAside(nullptr);
    Q_EMIT cardWanted();
    cards_.showAside(card_);
    follow();
}

void SumGuide::follow() {
    if (!card_->isVisibleTo(&cards_)) return;
    std::string id = view_.hoveredPart().toStdString();
    if (const QStringList selected = view_.selection(); id.empty() && selected.size() == 1)
        id = selected.front().toStdString();
    card_->showPicture(view_.picture(), id);
}

}  // namespace tiepoint::ui
