#include "ui/window/hunt_desk.h"

#include "core/base/json_text.h"
#include "core/hunt/ground.h"
#include "core/meter/meter.h"
#include "core/snapshot/pinned_value.h"
#include "core/snapshot/throws.h"
#include "ui/cards/suspect_pictures.h"
#include "ui/theme/qs.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace tiepoint::ui {
namespace {

constexpr double kHuntWidths[] = {0.27, 0.42, 0.31};  // of the three cards
constexpr QSize kThingPicture(150, 130);
constexpr int kHintCount = 3;
constexpr std::size_t kMostPictures = 9;

QString holeAddress(const Hole& hole) {
    const QString whole = qs(toString(hole));
    return whole.mid(whole.indexOf(QLatin1Char('.')) + 1);
}

/// "the minus rail", "j24".
QString tipPlace(const Hole& hole) {
    if (!isRail(hole.line)) return holeAddress(hole);
    const bool plus = hole.line == Line::TopPlus || hole.line == Line::BottomPlus;
    return plus ? QStringLiteral("the plus rail") : QStringLiteral("the minus rail");
}

/// The number that a pinned reading of a hunt begins with; 0 of any other.
int numberOf(const PinnedReading& reading) {
    const auto shown = frozenText(reading);
    return shown ? QString::fromStdString(*shown).section(QLatin1Char(' '), 0, 0).toInt() : 0;
}

/// "S1 pressed", from "while S1 is pressed and S2 is pressed".
QString shortWhen(const std::string& clause) {
    QString words = qs(clause);
    if (words.startsWith(QStringLiteral("while "))) words = words.mid(6);
    return words.replace(QStringLiteral(" is "), QStringLiteral(" "));
}

Digits positionNow(const Bench& bench, const std::vector<Throw>& controls, const Inputs& inputs) {
    return digitsOf(controls, bench, inputs);
}

std::string clauseNow(const Bench& bench, const Inputs& inputs) {
    const auto controls = throwsOf(bench);
    std::string clause;
    for (std::size_t c = 0; c < controls.size(); ++c) {
        const int digit = positionNow(bench, controls, inputs)[c];
        if (controls[c].isCap() && digit == 0) continue;
        const Part& part = bench.parts[static_cast<std::size_t>(controls[c].part)];
        clause += clause.empty() ? "while " : " and ";
        clause += fmt::format("{} is {}", part.id, positionInWords(controls[c], bench, digit));
    }
    return clause;
}

}  // namespace

HuntDesk::HuntDesk(const Parts& parts, QWidget* stage)
    : QObject(stage),
      parts_(parts),
      panel_(new QWidget(stage)),
      readings_(new HuntReadingsCard(panel_)),
      cause_(new HuntCauseCard(panel_)),
      proof_(new HuntProofCard(panel_)),
      look_{&theme(ThemeName::Day), 1} {
    panel_->hide();
    connect(&parts_.document, &BenchDocument::benchChanged, this, &HuntDesk::followBench);
    connect(&parts_.live, &LiveBench::answerReady, this, &HuntDesk::followInstant);
    connect(cause_, &HuntCauseCard::guessChanged, this, &HuntDesk::showAll);
    connect(cause_, &HuntCauseCard::tried, this, &HuntDesk::tryGuess);
    connect(cause_, &HuntCauseCard::finished, this, &HuntDesk::finish);
    connect(proof_, &HuntProofCard::hintWanted, this, &HuntDesk::nextHint);
    connect(proof_, &HuntProofCard::chosen, this, [this](const std::string& id, bool asProof) {
        if (asProof)
            chosen_.insert(id);
        else
            chosen_.erase(id);
        cause_->showAnswer({}, false);
        showAll();
    });
    connect(&parts_.questions, &Questions::verdictReady, this,
            [this](const std::shared_ptr<const HuntVerdict>& verdict) { takeVerdict(*verdict); });
    connect(&parts_.questions, &Questions::hintsReady, this,
            [this](const std::shared_ptr<const std::vector<std::string>>& hints) {
                hints_ = *hints;
                openHints_ = std::max(openHints_, 1);
                showAll();
            });
}

QString HuntDesk::seen() const { return active_ && slip_ ? qs(slip_->seen) : QString(); }

void HuntDesk::setLook(const Look& look) {
    look_ = look;
    for (Card* card : std::initializer_list<Card*>{readings_, cause_, proof_}) card->setLook(look);
    if (active_) showThings();
}

void HuntDesk::arrange() {
    double left = 0;
    Card* const cards[] = {readings_, cause_, proof_};
    for (int i = 0; i < 3; ++i) {
        const double wide = kHuntWidths[i] * panel_->width();
        cards[i]->setGeometry(QRectF(left, 0, wide, panel_->height()).toRect());
        left += wide;
    }
}

void HuntDesk::followBench() {
    const Bench& bench = *parts_.document.bench();
    slip_ = hiddenSlipOf(bench);
    const bool another = opening_ != parts_.document.opening();
    if (another) {
        opening_ = parts_.document.opening();
        last_.reset();
        taken_.clear();
        chosen_.clear();
        hints_.clear();
        openHints_ = 0;
        shown_.reset();
        cause_->showThings({});
        cause_->showAnswer({}, false);
    }
    const bool active = slip_.has_value() && finished_ != opening_;
    const bool silent = slip_ && isStillThere(bench, *slip_);
    for (QAction* action : parts_.locked) action->setEnabled(!silent);
    if (active) {
        std::erase_if(chosen_, [&](const std::string& id) { return !bench.findPinned(id); });
        showThings();
        showAll();
    }
    if (active == active_ && !(another && active)) return;
    active_ = active;
    panel_->setVisible(active_);
    Q_EMIT activeChanged();
}

void HuntDesk::followInstant() {
    const auto snapshot = parts_.live.snapshot();
    if (!active_ || cause_->isSolved() || !snapshot || snapshot->revision != parts_.document.revision()) return;
    const Part* last = nullptr;  // the hunt's own stands behind those that are part of the circuit
    for (const Part& part : snapshot->layout->bench->parts)
        if (isMeter(*part.kind)) last = &part;
    if (last) takeReading(snapshot, *last);
}

void HuntDesk::takeReading(const std::shared_ptr<const Snapshot>& snapshot, const Part& meter) {
    const Bench& bench = *snapshot->layout->bench;
    if (meter.leads.size() < 2 || !meter.leads[0] || !meter.leads[1]) return;
    const auto reading = meterReading(*snapshot, bench.partIndex(meter.id));
    if (!reading || !reading->on || std::isnan(reading->value)) return;
    const Spot spot{*meter.leads[0], *meter.leads[1], reading->quantity, clauseNow(bench, *snapshot->inputs)};
    if (last_ == spot) return;
    const bool sameTips = last_ && last_->red == spot.red && last_->black == spot.black;
    if (sameTips && spot.when.empty()) {
        last_ = spot;  // a hand let go of the button
        return;
    }
    last_ = spot;
    int number = 1;
    for (const PinnedReading& pinned : bench.pinned) {
        const auto known = taken_.find(pinned.id);
        if (known != taken_.end() && pinned.of == Measurand(VoltsAt{spot.red}) &&
            clauseNow(*known->second.at->layout->bench, *known->second.at->inputs) == spot.when)
            return;  // measured before
        number = std::max(number, numberOf(pinned) + 1);
    }
    PinnedReading pin{freeId(bench, "P"), VoltsAt{spot.red}, {}};
    pin.extras.emplace_back(kFrozenMember, jsonString(fmt::format("{}  {}", number, reading->text())));
    taken_[pin.id] = {snapshot, meter.id};
    parts_.document.push({fmt::format("Read {}", holeAddress(spot.red).toStdString()), {AddPinned{std::move(pin)}}});
}

std::vector<HuntRow> HuntDesk::rowsNow() const {
    std::vector<HuntRow> rows;
    double most = 1;
    for (const PinnedReading& pinned : parts_.document.bench()->pinned) {
        const auto* volts = std::get_if<VoltsAt>(&pinned.of);
        const auto shown = frozenText(pinned);
        if (!volts || !shown) continue;
        HuntRow row;
        row.id = pinned.id;
        row.number = numberOf(pinned);
        row.place = holeAddress(volts->hole);
        row.shown = qs(*shown).section(QLatin1Char(' '), 1).trimmed();
        row.chosen = chosen_.contains(pinned.id);
        const auto taken = taken_.find(pinned.id);
        row.usable = taken != taken_.end();
        if (row.usable) {
            const Snapshot& at = *taken->second.at;
            row.when = shortWhen(clauseNow(*at.layout->bench, *at.inputs));
            const auto reading = meterReading(at, at.layout->bench->partIndex(taken->second.meter));
            row.share = reading && !std::isnan(reading->value) ? std::abs(reading->value) : 0;
        }
        row.where = whereOf(volts->hole);
        most = std::max(most, row.share);
        rows.push_back(std::move(row));
    }
    for (HuntRow& row : rows) row.share /= most;
    std::ranges::stable_sort(rows, {}, &HuntRow::number);
    return rows;
}

/// Whether a hole is in the metal of the thing that is guessed.
QString HuntDesk::whereOf(const Hole& hole) const {
    const Bench& bench = *parts_.document.bench();
    const Layout* layout = parts_.view.picture().layout.get();
    const std::string thing = cause_->thing();
    if (thing.empty() || !layout || layout->bench.get() != &bench) return {};
    const auto stripOf = [&](const Hole& at) {
        const int index = layout->holeIndex(at);
        return index < 0 ? -1 : layout->stripOfHole[static_cast<std::size_t>(index)];
    };
    const int strip = stripOf(hole);
    const auto meets = [&](const std::optional<Hole>& tip) { return tip && stripOf(*tip) == strip; };
    bool at = false;
    if (const Part* part = bench.findPart(thing)) at = std::ranges::any_of(part->leads, meets);
    if (const Jumper* jumper = bench.findJumper(thing)) {
        for (const JumperEnd& end : jumper->ends) {
            const auto* tip = std::get_if<Hole>(&end);
            at = at || (tip && meets(*tip));
        }
    }
    return at ? QStringLiteral("at %1").arg(qs(thing)) : QString();
}

/// Pictures are dear: they are made anew only where a thing has changed.
void HuntDesk::showThings() {
    const auto bench = parts_.document.bench();
    Shown now{bench->parts, bench->jumpers, look_.theme};
    std::erase_if(now.parts, [](const Part& part) { return isMeter(*part.kind); });
    if (shown_ == now) return;
    shown_ = std::move(now);
    const auto sound = std::make_shared<const Bench>(soundOf(*bench));
    std::vector<HuntThing> things;
    const auto add = [&](const std::string& id) {
        things.push_back({id, pictureOfThing(sound, id, *look_.theme, kThingPicture, panel_->devicePixelRatioF())});
    };
    const bool pictured = shown_->jumpers.size() + shown_->parts.size() <= kMostPictures;
    for (const Part& part : shown_->parts) {
        if (pictured)
            add(part.id);
        else
            things.push_back({part.id, {}});
    }
    for (const Jumper& jumper : bench->jumpers) {
        if (pictured)
            add(jumper.id);
        else
            things.push_back({jumper.id, {}});
    }
    cause_->showThings(std::move(things));
}

void HuntDesk::showAll() {
    if (!slip_) return;
    std::vector<HuntRow> rows = rowsNow();
    QString foot = QStringLiteral("Put a meter on the table to measure.");
    for (const Part& part : parts_.document.bench()->parts) {
        if (!isMeter(*part.kind) || part.leads.size() < 2) continue;
        foot = part.leads[1] ? QStringLiteral("Black tip in %1.").arg(tipPlace(*part.leads[1]))
                             : QStringLiteral("The black tip hangs free: put it into minus.");
    }
    readings_->showReadings(rows, foot);
    proof_->showReadings(std::move(rows));
    QStringList open;
    for (int i = 0; i < openHints_ && i < static_cast<int>(hints_.size()); ++i)
        open << qs(hints_[static_cast<std::size_t>(i)]);
    proof_->showHints(open, hints_.empty() ? kHintCount : static_cast<int>(hints_.size()));
}

void HuntDesk::nextHint() {
    if (hints_.empty()) return parts_.questions.askHints(parts_.document.bench());
    ++openHints_;
    showAll();
}

void HuntDesk::tryGuess() {
    if (!slip_ || !cause_->isComplete()) return;
    HuntGuess guess{cause_->thing(), cause_->fault(), {}};
    for (const std::string& id : chosen_)
        if (const auto taken = taken_.find(id); taken != taken_.end()) guess.evidence.push_back(taken->second);
    parts_.questions.askVerdict(parts_.document.bench(), guess);
}

void HuntDesk::takeVerdict(const HuntVerdict& verdict) {
    if (!active_ || !slip_) return;
    if (!verdict.solved()) return cause_->showAnswer(qs(verdict.text), false);
    const HiddenSlip slip = *slip_;  // the edit makes it anew
    if (isStillThere(*parts_.document.bench(), slip)) {
        if (const auto refused = parts_.document.push(slip.mend)) return cause_->showAnswer(*refused, false);
    }
    const auto counted = [](std::size_t count, const char* one, const char* several) {
        return QStringLiteral("%1 %2").arg(count).arg(QLatin1String(count == 1 ? one : several));
    };
    cause_->showAnswer(QStringLiteral("%1 Right, and proved, with %2 and %3.")
                           .arg(qs(slip.told), counted(taken_.size(), "reading", "readings"),
                                counted(static_cast<std::size_t>(openHints_), "hint", "hints")),
                       true);
}

void HuntDesk::finish() {
    finished_ = opening_;
    followBench();
    parts_.view.setFocus(Qt::OtherFocusReason);
}

}  // namespace tiepoint::ui
