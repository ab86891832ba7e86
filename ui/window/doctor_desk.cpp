#include "ui/window/doctor_desk.h"

#include "core/doctor/observation_words.h"
#include "core/edit/holes.h"
#include "ui/theme/qs.h"
#include "ui/view/bench_marks.h"

#include <QCryptographicHash>
#include <QMouseEvent>
#include <QSettings>

#include <algorithm>

namespace tiepoint::ui {
namespace {

enum LightKey { kDarkKey, kDimKey, kLitKey, kAlwaysKey, kHotKey };

/// One observation as a line of a kept case: "S1,S2=b|A.c14=5".
QString lineOf(const Bench& plan, const Observation& seen) {
    QStringList holds;
    for (const std::string& hold : holdsOf(plan, seen.digits)) holds << qs(hold);
    return holds.join(QLatin1Char(',')) + QLatin1Char('|') + qs(writeObservation(plan, seen));
}

std::optional<Observation> observationOf(const Bench& plan, const QString& line) {
    const qsizetype bar = line.indexOf(QLatin1Char('|'));
    if (bar < 0) return std::nullopt;
    std::vector<std::string> holds;
    for (const QString& hold : line.left(bar).split(QLatin1Char(','), Qt::SkipEmptyParts))
        holds.push_back(hold.toStdString());
    auto digits = readHolds(plan, holds);
    if (!digits) return std::nullopt;
    auto read = readObservation(plan, line.mid(bar + 1).toStdString(), std::move(digits).value());
    return read ? std::optional(std::move(read).value()) : std::nullopt;
}

}  // namespace

DoctorDesk::DoctorDesk(BenchDocument& document, LiveBench& live, BenchView& view, CardRow& cards, QMenu& menu,
                       QWidget* window)
    : QObject(window),
      document_(document),
      live_(live),
      view_(view),
      cards_(cards),
      run_(new DoctorRun(this)),
      card_(new DoctorCard(&cards)),
      action_(new QAction(QStringLiteral("Help with a real &board"), this)) {
    card_->hide();
    action_->setCheckable(true);
    window->addAction(action_);
    menu.addAction(action_);
    view_.viewport()->installEventFilter(this);
    connect(action_, &QAction::triggered, this, &DoctorDesk::show);
    connect(&cards_, &CardRow::asideChanged, this, [this](Card* aside) {
        action_->setChecked(aside == card_);
        if (aside != card_) view_.marks().set(&Marks::guide, std::vector<Hole>());
    });
    connect(&document_, &BenchDocument::benchChanged, this, [this] {
        red_.reset();
        recall();
        if (isOpen()) ask();
    });
    connect(&live_, &LiveBench::inputsChanged, this, &DoctorDesk::followLight);
    connect(&view_, &BenchView::selectionChanged, this, &DoctorDesk::followLight);
    connect(run_, &DoctorRun::ready, this, &DoctorDesk::take);
    connectCard();
}

void DoctorDesk::connectCard() {
    connect(card_, &AsideCard::closed, this, [this] {
        cards_.showAside(nullptr);
        view_.setFocus(Qt::OtherFocusReason);
    });
    connect(card_, &DoctorCard::answered, this, &DoctorDesk::answer);
    connect(card_, &DoctorCard::lightSeen, this, &DoctorDesk::seeLight);
    connect(card_, &DoctorCard::typed, this, &DoctorDesk::takeTyped);
    connect(card_, &DoctorCard::tableChosen, this, [this](const QString& table) {
        table_ = table;
        recall();
        ask();
    });
    connect(card_, &DoctorCard::backWanted, this, [this] {
        if (!seen_.empty()) seen_.pop_back();
        remember();
        ask();
    });
    connect(card_, &DoctorCard::freshWanted, this, [this] {
        seen_.clear();
        remember();
        ask();
    });
}

void DoctorDesk::show(bool wanted) {
    if (!wanted) return cards_.showAside(nullptr);
    Q_EMIT cardWanted();
    cards_.showAside(card_);
    recall();
    followLight();
    ask();
}

QString DoctorDesk::caseKey() const {
    const std::string& title = document_.bench()->title;
    const QByteArray digest =
        QCryptographicHash::hash(QByteArray::fromStdString(title), QCryptographicHash::Sha1).toHex();
    return QStringLiteral("doctor/%1/%2")
        .arg(QString::fromLatin1(digest), table_.isEmpty() ? QStringLiteral("1") : table_);
}

void DoctorDesk::recall() {
    seen_.clear();
    for (const QString& line : QSettings().value(caseKey()).toStringList()) {
        if (auto seen = observationOf(*document_.bench(), line)) seen_.push_back(std::move(*seen));
    }
}

void DoctorDesk::remember() const {
    QStringList lines;
    for (const Observation& each : seen_) lines << lineOf(*document_.bench(), each);
    if (lines.isEmpty())
        QSettings().remove(caseKey());
    else
        QSettings().setValue(caseKey(), lines);
}

void DoctorDesk::ask() {
    QStringList words;
    for (const Observation& each : seen_) words << qs(observationInWords(*document_.bench(), each));
    card_->showSeen(words);
    card_->showAnswer(nullptr);
    markBoard();
    asked_ = run_->ask(document_.bench(), seen_, Instrument::Meter);
}

void DoctorDesk::take(const std::shared_ptr<const DoctorAnswer>& answer) {
    if (answer->number != asked_ || !isOpen()) return;
    card_->showAnswer(answer);
    followHint();
    markBoard();
}

void DoctorDesk::add(std::vector<Observation> more) {
    seen_.insert(seen_.end(), more.begin(), more.end());
    red_.reset();
    remember();
    ask();
}

void DoctorDesk::answer(int choice) {
    const DoctorAnswer* answer = card_->answer();
    if (answer == nullptr || choice >= static_cast<int>(answer->choices.size())) return;
    add(answer->choices[static_cast<std::size_t>(choice)].seen);
}

Digits DoctorDesk::digitsNow() const {
    return digitsOf(throwsOf(*document_.bench()), *document_.bench(), live_.inputs());
}

std::string DoctorDesk::light() const {
    const Bench& bench = *document_.bench();
    const QStringList selected = view_.selection();
    if (selected.size() == 1) {
        const Part* part = bench.findPart(selected.front().toStdString());
        if (part && part->kind->emitsLight) return part->id;
    }
    const auto first = std::ranges::find_if(bench.parts, [](const Part& part) { return part.kind->emitsLight; });
    return first == bench.parts.end() ? std::string() : first->id;
}

void DoctorDesk::seeLight(int kind) {
    const std::string id = light();
    if (id.empty()) return;
    if (kind == kHotKey) return add({{digitsNow(), SawHot{id}, {}}});
    const Shine shine = kind == kDarkKey ? Shine::Dark : kind == kDimKey ? Shine::Dim : Shine::Lit;
    add({{digitsNow(), SawLight{id, shine, kind == kAlwaysKey}, {}}});
}

void DoctorDesk::takeTyped(const QString& text) {
    const Bench& plan = *document_.bench();
    const DoctorAnswer* asked = card_->answer();
    const bool volts = asked && asked->question && asked->question->asking == Asking::Volts;
    std::string line = text.toStdString();
    Digits digits = digitsNow();
    if (line.find('=') == std::string::npos) {
        const std::optional<Hole> at = red_ ? red_ : volts ? std::optional(asked->question->one) : std::nullopt;
        if (!at) return view_.say(tr("Click the hole first, then type what the meter shows there."));
        line = toString(*at) + "=" + line;
        if (!red_) digits = asked->question->digits;
    }
    auto read = readObservation(plan, line, std::move(digits));
    if (!read) return view_.say(qs(read.error().message));
    if (std::holds_alternative<SawVolts>(read->what) && !minusOfFirstSupply(plan))
        return view_.say(tr("Volts need a supply whose minus is plugged in."));
    add({std::move(read).value()});
}

void DoctorDesk::followLight() {
    if (!isOpen()) return;
    const std::string id = light();
    const std::string position = positionInWords(*document_.bench(), digitsNow());
    card_->setLight(id.empty() ? QString() : qs(id + (position.empty() ? ", nothing pressed" : " " + position)));
    followHint();
}

void DoctorDesk::followHint() {
    const DoctorAnswer* asked = card_->answer();
    const bool volts = asked && asked->question && asked->question->asking == Asking::Volts;
    const std::optional<Hole> at = red_ ? red_ : volts ? std::optional(asked->question->one) : std::nullopt;
    card_->setFieldHint(at ? tr("volts at %1").arg(qs(holeName(*document_.bench(), *at)))
                           : tr("click a hole, type its volts"));
}

/// Rings the place for the red tip; at the end what the mend is about.
void DoctorDesk::markBoard() {
    if (!isOpen()) return;
    std::vector<Hole> holes;
    const DoctorAnswer* asked = card_->answer();
    if (red_) {
        holes = {*red_};
    } else if (asked && asked->question) {
        const Asking asking = asked->question->asking;
        const bool two = asking == Asking::Beep || asking == Asking::Extra;
        if (two || asking == Asking::Volts || asking == Asking::Glow) holes.push_back(asked->question->one);
        if (two) holes.push_back(asked->question->other);
    } else if (asked && asked->isFound()) {
        holes = asked->fits.front().holes;
        QStringList ids;
        for (const std::string& id : asked->fits.front().ids) ids << qs(id);
        view_.setSelection(ids);
    }
    view_.marks().set(&Marks::guide, holes);
}

/// A hole that is clicked while the card is open is where the red tip stands, and begins no jumper.
bool DoctorDesk::eventFilter(QObject* watched, QEvent* event) {
    if (event->type() != QEvent::MouseButtonPress || !isOpen()) return QObject::eventFilter(watched, event);
    const auto* press = static_cast<QMouseEvent*>(event);
    const std::optional<Hole> hole = view_.holeAtHand();
    if (press->button() != Qt::LeftButton || !hole || !view_.hoveredPart().isEmpty())
        return QObject::eventFilter(watched, event);
    red_ = *hole;
    followHint();
    markBoard();
    card_->field()->setFocus(Qt::OtherFocusReason);
    return true;
}

}  // namespace tiepoint::ui
