#include "ui/window/doctor_desk.h"

#include "core/base/capital.h"
#include "core/base/quantity.h"
#include "core/doctor/observation_words.h"
#include "core/edit/holes.h"
#include "ui/cards/suspect_pictures.h"
#include "ui/theme/qs.h"
#include "ui/view/bench_marks.h"

#include <QCryptographicHash>
#include <QMouseEvent>
#include <QSettings>

#include <algorithm>

namespace tiepoint::ui {
namespace {

constexpr QSize kSuspectPicture(168, 126);
constexpr std::size_t kMostSuspectsPictured = 24;

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
        if (aside != card_) endPlan();
    });
    connect(&document_, &BenchDocument::benchChanged, this, [this] {
        red_.reset();
        if (!isOpen()) return;
        recall();
        followLight();
        ask();
    });
    connect(&document_, &BenchDocument::benchReplaced, this, [this] {
        if (isOpen()) cards_.showAside(nullptr);  // that was another plan
    });
    const auto turnToOther = [this] {
        ownLight_ = true;
        followLight();
    };
    connect(&live_, &LiveBench::inputsChanged, this, turnToOther);
    connect(&view_, &BenchView::selectionChanged, this, turnToOther);
    connect(run_, &DoctorRun::ready, this, &DoctorDesk::take);
    connectCard();
}

void DoctorDesk::connectCard() {
    connect(card_, &DoctorCard::closed, this, [this] {
        cards_.showAside(nullptr);
        view_.setFocus(Qt::OtherFocusReason);
    });
    DoctorAskCard& asking = card_->asking();
    connect(&asking, &DoctorAskCard::answered, this, &DoctorDesk::answer);
    connect(&card_->lights(), &DoctorSeenCard::seen, this, &DoctorDesk::seeLight);
    connect(&asking, &DoctorAskCard::typed, this, &DoctorDesk::takeTyped);
    connect(&asking, &DoctorAskCard::tableChosen, this, [this](const QString& table) {
        table_ = table;
        recall();
        ask();
    });
    connect(&asking, &DoctorAskCard::backWanted, this, [this] {
        if (!seen_.empty()) seen_.pop_back();
        remember();
        ask();
    });
    connect(&asking, &DoctorAskCard::freshWanted, this, [this] {
        seen_.clear();
        remember();
        ask();
    });
}

void DoctorDesk::setKit(const std::optional<Kit>& kit) {
    instrument_ = kit && kit->meters == 0 ? Instrument::ProbeLight : Instrument::Meter;
    run_->setKit(kit ? std::make_shared<const Kit>(*kit) : nullptr);
    if (isOpen()) ask();
}

void DoctorDesk::show(bool wanted) {
    if (!wanted) return cards_.showAside(nullptr);
    Q_EMIT cardWanted();
    cards_.showAside(card_);
    view_.setSelection({});
    recall();
    followLight();
    ask();
}

/// The bench is a bench again.
void DoctorDesk::endPlan() {
    red_.reset();
    view_.setPlan(std::nullopt);
    view_.marks().set(&Marks::guide, std::vector<Hole>());
    view_.marks().set(&Marks::built, std::shared_ptr<const Bench>());
    view_.marks().set(&Marks::lit, std::string());
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
    red_.reset();
    showSeen();
    card_->showAnswer(nullptr, {});
    followPlace();
    markBoard();
    asked_ = run_->ask(document_.bench(), seen_, instrument_);
    const bool hot =
        std::ranges::any_of(seen_, [](const Observation& each) { return std::holds_alternative<SawHot>(each.what); });
    if (!hot) return;
    // Nobody waits for this one.
    auto now = std::make_shared<DoctorAnswer>();
    now->switchOff = true;
    now->next = switchOffInWords();
    card_->asking().showAnswer(std::move(now));
}

void DoctorDesk::showSeen() {
    const Bench& plan = *document_.bench();
    std::vector<DoctorSeen> rows;
    for (const Observation& each : seen_) {
        DoctorSeen row;
        if (const auto* volts = std::get_if<SawVolts>(&each.what)) {
            row.place = qs(holeName(plan, volts->red));
            row.figure = qs(formatQuantity(volts->volt, "V"));
            row.words = qs(positionInWords(plan, each.digits));
        } else {
            row.words = qs(capitalised(observationInWords(plan, each)));
        }
        rows.push_back(std::move(row));
    }
    card_->asking().showSeen(std::move(rows));
}

void DoctorDesk::take(const std::shared_ptr<const DoctorAnswer>& answer) {
    if (answer->number != asked_ || !isOpen()) return;
    QStringList seen;
    for (const DoctorSeen& each : card_->asking().seen())
        seen << (each.place.isEmpty() ? each.words : each.place + QStringLiteral(": ") + each.figure);
    ownLight_ = false;
    card_->showAnswer(answer, seen);
    followLight();
    markBoard();
}

void DoctorDesk::add(std::vector<Observation> more) {
    seen_.insert(seen_.end(), more.begin(), more.end());
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

bool DoctorDesk::asksForLight() const {
    const DoctorAnswer* asked = card_->answer();
    return asked && asked->question && asked->question->asking == Asking::Light && !ownLight_;
}

std::string DoctorDesk::light() const {
    if (asksForLight()) return card_->answer()->question->id;
    const Bench& bench = *document_.bench();
    const QStringList selected = view_.selection();
    if (selected.size() == 1) {
        const Part* part = bench.findPart(selected.front().toStdString());
        if (part && part->kind->emitsLight) return part->id;
    }
    const auto first = std::ranges::find_if(bench.parts, [](const Part& part) { return part.kind->emitsLight; });
    return first == bench.parts.end() ? std::string() : first->id;
}

void DoctorDesk::seeLight(int button) {
    const std::string id = light();
    if (id.empty()) return;
    const Digits digits = asksForLight() ? card_->answer()->question->digits : digitsNow();
    if (button == DoctorSeenCard::Hot) return add({{digits, SawHot{id}, {}}});
    const Shine shine = button == DoctorSeenCard::Dark  ? Shine::Dark
                        : button == DoctorSeenCard::Dim ? Shine::Dim
                                                        : Shine::Lit;
    add({{digits, SawLight{id, shine, button == DoctorSeenCard::AlwaysLit}, {}}});
}

std::optional<Hole> DoctorDesk::place() const {
    if (red_) return red_;
    const DoctorAnswer* asked = card_->answer();
    const bool volts = asked && asked->question && asked->question->asking == Asking::Volts;
    return volts ? std::optional(asked->question->one) : std::nullopt;
}

void DoctorDesk::takeTyped(const QString& text) {
    const Bench& plan = *document_.bench();
    std::string line = text.toStdString();
    Digits digits = digitsNow();
    if (line.find('=') == std::string::npos) {
        const std::optional<Hole> at = place();
        if (!at) return view_.say(tr("Click the hole first, then type what the meter shows there."));
        line = toString(*at) + "=" + line;
        if (!red_) digits = card_->answer()->question->digits;
    }
    auto read = readObservation(plan, line, std::move(digits));
    if (!read) return view_.say(tr("“%1” is no reading in volts: type 4.8, for example.").arg(text));
    if (std::holds_alternative<SawVolts>(read->what) && !minusOfFirstSupply(plan))
        return view_.say(tr("Volts need a supply whose minus is plugged in."));
    add({std::move(read).value()});
}

void DoctorDesk::followLight() {
    if (!isOpen()) return;
    const Bench& plan = *document_.bench();
    DoctorLight asked;
    const std::string id = light();
    asked.id = qs(id);
    asked.isNext = asksForLight();
    asked.position = qs(positionInWords(plan, asked.isNext ? card_->answer()->question->digits : digitsNow()));
    asked.hasThrows = !throwsOf(plan).empty();
    card_->lights().showLight(asked);
    card_->asking().setAnsweredBeside(asked.isNext);
    makePictures();
    followPlace();
}

void DoctorDesk::followPlace() {
    const std::optional<Hole> at = place();
    card_->asking().showPlace(at ? qs(holeName(*document_.bench(), *at)) : QString(), red_.has_value());
}

/// Pictures are dear: they are made anew only where what they show has changed.
void DoctorDesk::makePictures() {
    const auto plan = document_.bench();
    const Theme* theme = card_->look().theme;
    const QSize size = card_->lights().pictureSize();
    const bool pressed = !card_->lights().light().position.isEmpty();
    const std::string id = light();
    const auto now = std::make_tuple(plan, theme, size, id, pressed);
    if (now == pictured_ || size.isEmpty()) return;
    const bool samePlan = std::get<0>(pictured_) == plan && std::get<1>(pictured_) == theme;
    pictured_ = now;
    const double ratio = card_->devicePixelRatioF();
    if (!id.empty()) {
        std::vector<QImage> looks;
        for (const LookOfLight look : {LookOfLight::Dark, LookOfLight::Dim, LookOfLight::Lit, LookOfLight::AlwaysLit})
            looks.push_back(pictureOfLook(look, *plan, id, pressed, *theme, size, ratio));
        card_->lights().setPictures(looks);
    }
    if (samePlan) return;
    std::map<std::string, QImage> things;
    if (plan->parts.size() + plan->jumpers.size() <= kMostSuspectsPictured) {
        for (const Part& part : plan->parts)
            things[part.id] = pictureOfThing(plan, part.id, *theme, kSuspectPicture, ratio);
        for (const Jumper& jumper : plan->jumpers)
            things[jumper.id] = pictureOfThing(plan, jumper.id, *theme, kSuspectPicture, ratio);
    }
    card_->causes().setPictures(std::move(things));
}

/// Hangs a tag on each place that was measured and on the next one, where the probe stands too; at the end draws how the board was built and
/// what mends it. A question about two places has them ringed.
void DoctorDesk::markBoard() {
    if (!isOpen()) return;
    const Bench& plan = *document_.bench();
    const DoctorAnswer* asked = card_->answer();
    std::vector<HungTag> tags;
    for (const Observation& each : seen_) {
        const auto* volts = std::get_if<SawVolts>(&each.what);
        if (!volts) continue;
        HungTag tag{volts->red,
                    qs(holeName(plan, volts->red)) + QStringLiteral("  ") + qs(formatQuantity(volts->volt, "V")),
                    false};
        const auto there = std::ranges::find(tags, tag.at, &HungTag::at);
        if (there == tags.end())
            tags.push_back(std::move(tag));
        else
            *there = std::move(tag);  // the newest
    }
    std::vector<Hole> rings;
    if (const std::optional<Hole> at = place()) {
        std::erase_if(tags, [&](const HungTag& tag) { return tag.at == *at; });
        tags.push_back({*at, tr("%1 next").arg(qs(holeName(plan, *at))), true});
    } else if (asked && asked->question) {
        const Asking asking = asked->question->asking;
        const bool two = asking == Asking::Beep || asking == Asking::Extra;
        if (two || asking == Asking::Glow) rings.push_back(asked->question->one);
        if (two) rings.push_back(asked->question->other);
    }
    std::shared_ptr<const Bench> built;
    std::string looked;
    if (asked && asked->isFound()) {
        built = asked->fits.front().built;
        if (!asked->fits.front().ids.empty()) looked = asked->fits.front().ids.front();
    } else if (asked && asked->question && !plan.findBoard(asked->question->id)) {
        looked = asked->question->id;
    }
    view_.setPlan(std::move(tags));
    view_.marks().set(&Marks::guide, rings);
    view_.marks().set(&Marks::built, built);
    view_.marks().set(&Marks::lit, looked);
    followLight();
}

/// A hole that is clicked while the card is open is where the red tip stands, and begins no jumper.
bool DoctorDesk::eventFilter(QObject* watched, QEvent* event) {
    if (event->type() != QEvent::MouseButtonPress || !isOpen()) return QObject::eventFilter(watched, event);
    const auto* press = static_cast<QMouseEvent*>(event);
    const std::optional<Hole> hole = view_.holeAtHand();
    if (press->button() != Qt::LeftButton || !hole || !view_.hoveredPart().isEmpty())
        return QObject::eventFilter(watched, event);
    red_ = *hole;
    followPlace();
    markBoard();
    card_->asking().field()->setFocus(Qt::OtherFocusReason);
    return true;
}

}  // namespace tiepoint::ui
