#include "ui/window/findings_desk.h"

#include "core/edit/placement.h"
#include "core/findings/reveal.h"
#include "ui/view/bench_marks.h"
#include "ui/view/key_list.h"

#include <QApplication>

#include <algorithm>
#include <iterator>
#include <utility>

namespace tiepoint::ui {

namespace {

/// Where the ring of an open end stands: in a free hole of its metal, as far outside as can be, away from what lies there.
Hole ringedHole(const Bench& bench, const Hole& hole) {
    Hole outer = hole;
    if (!isRail(hole.line)) outer.line = hole.line <= Line::E ? Line::A : Line::J;
    return nearestFreeInStrip(bench, outer).value_or(hole);
}

}  // namespace

FindingsDesk::FindingsDesk(const Parts& parts, QMenu& menu, QWidget* window)
    : QObject(window),
      parts_(parts),
      reveal_(new RevealMenu(parts.document, window)),
      card_(new FindingCard(*reveal_, &parts.cards)),
      openCard_(new OpenCard(&parts.cards)),
      next_(new QAction(QStringLiteral("What is wron&g?"), this)) {
    card_->hide();
    openCard_->hide();
    next_->setShortcut(keysFor(KeyFor::NextFinding).front());
    window->addAction(next_);
    menu.addSeparator();
    menu.addAction(next_);
    menu.addMenu(reveal_);
    calm_.setSingleShot(true);
    calm_.setInterval(kCalmMs);
    patience_.setSingleShot(true);
    patience_.setInterval(kPatienceMs);
    afterPicture_.setSingleShot(true);
    afterPicture_.setInterval(0);  // as soon as there is nothing else to do
    connect(&afterPicture_, &QTimer::timeout, this, &FindingsDesk::ask);
    connect(&calm_, &QTimer::timeout, this, &FindingsDesk::show);
    connect(&patience_, &QTimer::timeout, this, &FindingsDesk::show);
    connect(&parts.document, &BenchDocument::benchReplaced, this, &FindingsDesk::forget);
    connect(&parts.document, &BenchDocument::benchChanged, this, &FindingsDesk::followBench);
    connect(&parts.live, &LiveBench::snapshotReady, this, &FindingsDesk::followInstant);
    connect(&parts.questions, &Questions::reportReady, this, &FindingsDesk::take);
    connect(&parts.questions, &Questions::drawerChanged, this, [this] {
        asked_ = 0;
        followInstant();
    });
    connect(&parts.view, &BenchView::findingChosen, this, &FindingsDesk::openAt);
    connect(&parts.view, &BenchView::gestureEnded, &calm_, qOverload<>(&QTimer::start));
    connect(next_, &QAction::triggered, this, &FindingsDesk::next);
    connect(card_, &FindingCard::chosen, this, &FindingsDesk::showOnCard);
    connect(card_, &FindingCard::previewWanted, this, &FindingsDesk::preview);
    connect(card_, &FindingCard::applyWanted, this, &FindingsDesk::applyMend);
    connect(card_, &AsideCard::closed, this, &FindingsDesk::putAway);
    connect(openCard_, &OpenCard::asked, this, &FindingsDesk::next);
    connect(openCard_, &AsideCard::closed, this, &FindingsDesk::putOpenAway);
    connect(reveal_, &RevealMenu::said, this, &FindingsDesk::said);
}

void FindingsDesk::forget() {
    told_.clear();
    putAway_.clear();
    open_ = worked_ = wanted_ = openPutAway_ = answerDue_ = false;
    unfinished_ = {};
    shown_ = nullptr;
    showOnCard(-1);
}

void FindingsDesk::followBench() {
    report_ = nullptr;
    parts_.view.marks().set(&Marks::mended, std::shared_ptr<const Bench>());
    calm_.start();
    patience_.start();
}

void FindingsDesk::followInstant() {
    const auto snapshot = parts_.live.snapshot();
    if (!snapshot || snapshot->revision != parts_.document.revision()) return;
    const bool first = !worked_ && works(*snapshot);
    worked_ = worked_ || first;
    if (first && report_) show();
    if (first || snapshot->revision != asked_) {
        followUnfinished();
        showOpenEnds();
    }
    if (snapshot->revision == asked_) return;
    asked_ = snapshot->revision;
    // The picture comes first: it needs every processor for a moment, and some systems don't heed that the report's thread can wait.
    afterPicture_.start();
}

void FindingsDesk::ask() {
    const auto snapshot = parts_.live.snapshot();
    if (snapshot && snapshot->revision == parts_.document.revision()) parts_.questions.askReport(snapshot);
}

void FindingsDesk::take(const std::shared_ptr<const Report>& report) {
    if (report->revision != parts_.document.revision()) return;
    report_ = report;
    patience_.stop();
    show();
    if (std::exchange(answerDue_, false) && !shown_) sayNothing();
}

void FindingsDesk::show() {
    if (parts_.view.isGesturing() && !calm_.isActive()) calm_.start();  // the hand hasn't let go yet
    const bool calm = !calm_.isActive();
    followUnfinished();
    std::vector<Finding> ripe;
    if (report_) {
        std::ranges::copy_if(report_->findings, std::back_inserter(ripe), [&](const Finding& finding) {
            if (!isTold(unfinished_, finding)) return false;
            return calm || wanted_ || finding.severity == Severity::Fault || told_.contains(idOf(finding));
        });
    }
    const bool grave = std::ranges::any_of(ripe, [&](const Finding& finding) {
        return finding.severity != Severity::Remark && !putAway_.contains(idOf(finding));
    });
    if (report_) {
        told_.clear();
        for (const Finding& finding : ripe) told_.insert(idOf(finding));
    }
    const Finding* before = card_->finding();
    const FindingId kept = before ? idOf(*before) : FindingId();
    const Bench& bench = *parts_.document.bench();
    auto found = std::make_shared<const std::vector<Finding>>(revealed(bench, ripe, revealOf(bench)));
    if (found->empty()) {
        shown_ = nullptr;
        open_ = open_ && !report_;  // while nothing is known the card only waits
        wanted_ = wanted_ && !report_;
        followUnfinished();
        showOnCard(-1);
        return;
    }
    shown_ = std::move(found);
    open_ = open_ || grave;
    const auto same = std::ranges::find_if(*shown_, [&](const Finding& each) { return before && idOf(each) == kept; });
    showOnCard(same == shown_->end() ? 0 : static_cast<int>(same - shown_->begin()));
}

void FindingsDesk::showOnCard(int finding) {
    const bool onCard = open_ && finding >= 0;
    parts_.view.setFindings(shown_, onCard ? finding : -1);
    if (onCard) {
        card_->showFindings(shown_, finding);
    } else {
        // Before its buttons go: they would hand the focus on as if someone had tabbed.
        if (card_->isAncestorOf(QApplication::focusWidget())) parts_.view.setFocus(Qt::OtherFocusReason);
        card_->showNothing();
    }
    if (onCard) parts_.cards.setStanding(card_);
    showOpenEnds();
}

/// What is open of the bench as it stands; while it is being solved, as it was before.
void FindingsDesk::followUnfinished() {
    const auto snapshot = parts_.live.snapshot();
    if (worked_ || wanted_)
        unfinished_ = {};
    else if (snapshot && snapshot->revision == parts_.document.revision())
        unfinished_ = unfinished(*snapshot, worked_);
}

/// The calm card waits for a calm moment, and gives way to anything that is found.
void FindingsDesk::showOpenEnds() {
    const Reveal level = revealOf(*parts_.document.bench());
    const bool found = open_ && card_->finding();
    const bool standing = !openCard_->isHidden() || !calm_.isActive();
    const bool wanted = !unfinished_.isEmpty() && !openPutAway_ && level != Reveal::Nothing && standing;
    const bool withPlaces = level != Reveal::Place;
    std::vector<Hole> holes;
    for (const OpenEnd& end : unfinished_.open)
        if (wanted && withPlaces && end.hole) holes.push_back(ringedHole(*parts_.document.bench(), *end.hole));
    parts_.view.marks().set(&Marks::open, holes);
    if (found) return;
    if (wanted)
        openCard_->showOpen(unfinished_.open, withPlaces);
    else if (openCard_->isAncestorOf(QApplication::focusWidget()))
        parts_.view.setFocus(Qt::OtherFocusReason);
    parts_.cards.setStanding(wanted ? openCard_ : nullptr);
}

void FindingsDesk::putOpenAway() {
    openPutAway_ = true;
    showOpenEnds();
    parts_.view.setFocus(Qt::OtherFocusReason);
}

void FindingsDesk::openAt(int finding) {
    if (!shown_ || finding >= static_cast<int>(shown_->size())) return;
    open_ = true;
    putAway_.clear();
    Q_EMIT cardWanted();
    showOnCard(finding);
}

void FindingsDesk::next() {
    const bool wasOpen = open_ && card_->isVisible();
    if (!std::exchange(wanted_, true)) show();  // who asks is told all, at once
    if (!shown_ && !report_) {                  // the answer is being worked out
        open_ = answerDue_ = true;
        return Q_EMIT cardWanted();
    }
    if (!shown_) return sayNothing();
    const int count = static_cast<int>(shown_->size());
    openAt(wasOpen ? (card_->current() + 1) % count : 0);
    card_->setFocus(Qt::ShortcutFocusReason);
}

void FindingsDesk::sayNothing() {
    const bool silent = revealOf(*parts_.document.bench()) == Reveal::Nothing;
    Q_EMIT said(silent ? QStringLiteral("This bench keeps what is found to itself.")
                       : QStringLiteral("Nothing found."));
}

void FindingsDesk::putAway() {
    open_ = wanted_ = false;
    putAway_ = told_;
    show();
    parts_.view.setFocus(Qt::OtherFocusReason);
}

void FindingsDesk::preview(bool wanted) {
    const Finding* finding = card_->finding();
    std::shared_ptr<const Bench> mended;
    if (wanted && finding && finding->mend) {
        if (auto applied = apply(*parts_.document.bench(), finding->mend->edit))
            mended = std::make_shared<const Bench>(std::move(applied).value().bench);
    }
    parts_.view.marks().set(&Marks::mended, mended);
}

void FindingsDesk::applyMend() {
    const Finding* finding = card_->finding();
    if (!report_ || !finding || !finding->mend) return;
    Edit edit = finding->mend->edit;
    edit.name = finding->mend->text;  // the history tells what it put right
    if (const auto why = parts_.document.push(edit)) Q_EMIT said(*why);
}

}  // namespace tiepoint::ui
