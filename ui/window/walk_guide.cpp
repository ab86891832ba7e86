#include "ui/window/walk_guide.h"

#include "ui/view/bench_marks.h"
#include "ui/view/key_list.h"

namespace tiepoint::ui {
namespace {

constexpr int kOneFrameMs = 17;  // one frame

}  // namespace

WalkGuide::WalkGuide(BenchDocument& document, LiveBench& live, BenchView& view, CardRow& cards, QMenu& menu,
                     QWidget* window)
    : QObject(window),
      view_(view),
      cards_(cards),
      card_(new WalkCard(&cards)),
      action_(new QAction(QStringLiteral("Voltage around the &loop"), this)) {
    card_->hide();
    action_->setCheckable(true);
    action_->setShortcut(keysFor(KeyFor::Loop).front());
    window->addAction(action_);
    menu.addAction(action_);
    connect(action_, &QAction::triggered, this, &WalkGuide::show);
    connect(card_, &AsideCard::closed, this, [this] {
        cards_.showAside(nullptr);
        view_.setFocus(Qt::OtherFocusReason);
    });
    connect(&cards_, &CardRow::asideChanged, this, [this](Card* aside) {
        action_->setChecked(aside == card_);
        if (aside != card_) view_.marks().set(&Marks::lit, std::string());
    });
    patience_.setSingleShot(true);
    patience_.setInterval(kOneFrameMs);
    connect(&patience_, &QTimer::timeout, this, &WalkGuide::follow);
    connect(&document, &BenchDocument::benchChanged, &patience_, qOverload<>(&QTimer::start));
    connect(&live, &LiveBench::snapshotReady, this, &WalkGuide::follow);
    connect(&view_, &BenchView::selectionChanged, this, &WalkGuide::follow);
    connect(&view_, &BenchView::hoverChanged, this, [this] { card_->mark(view_.hoveredPart().toStdString()); });
    connect(card_, &WalkCard::pointed, this,
            [this](const std::string& thing) { view_.marks().set(&Marks::lit, thing); });
}

void WalkGuide::show(bool wanted) {
    if (!wanted) return cards_.showAside(nullptr);
    Q_EMIT cardWanted();
    cards_.showAside(card_);
    follow();
}

std::string WalkGuide::partToShow() const {
    const QStringList selected = view_.selection();
    return selected.size() == 1 ? selected.front().toStdString() : std::string();
}

void WalkGuide::follow() {
    if (card_->isVisibleTo(&cards_)) card_->showPicture(view_.picture(), partToShow());
}

}  // namespace tiepoint::ui
