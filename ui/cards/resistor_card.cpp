#include "ui/cards/resistor_card.h"

#include "core/base/quantity.h"
#include "ui/paint/bench_painter.h"
#include "ui/theme/panels.h"
#include "ui/theme/qs.h"

#include <QPainter>

#include <algorithm>

namespace tiepoint::ui {
namespace {

constexpr double kAskHeight = 40, kFieldGap = 8, kLabelWidth = 86, kFieldsWidth = 290, kColumnGap = 26;
constexpr double kAskButtonHeight = 34;
constexpr double kAskResistorLength = 150;
constexpr double kAskSampleMm = 13;  ///< a resistor with its leads

const ValueSpec& valueSpecOf(const PartKind& kind, const char* value) {
    return kind.values[static_cast<std::size_t>(kind.valueIndex(value))];
}

/// The wanted current: of the numbers that people choose from (common practice), any other may be typed.
const ValueSpec& wantedSpec() {
    static const ValueSpec spec = [] {
        ValueSpec wanted;
        wanted.name = "current";
        wanted.label = "Wanted";
        wanted.unit = "A";
        wanted.minimum = 1e-4;
        wanted.maximum = 0.05;
        wanted.fallback = 0.01;
        wanted.series = "E6";
        return wanted;
    }();
    return spec;
}

}  // namespace

ResistorCard::ResistorCard(QWidget* parent)
    : AsideCard(parent),
      supply_(makeValueField(valueSpecOf(usualSupply(), "voltage"), this)),
      light_(makeValueField(valueSpecOf(usualLight(), "colour"), this)),
      current_(makeValueField(wantedSpec(), this)),
      put_(new QToolButton(this)),
      drawer_(new QToolButton(this)) {
    setAccessibleName(tr("Resistor helper"));
    question_.light = makePart(usualLight(), "D1");
    question_.wantedAmpere = wantedSpec().fallback;
    drawer_->setText(tr("My drawer…"));
    connect(supply_, &ValueField::chosen, this, [this](double volt) {
        question_.supplyVolt = std::clamp(volt, supply_->spec().minimum, supply_->spec().maximum);
        reckon();
    });
    connect(light_, &ValueField::chosen, this, [this](double colour) {
        question_.light.values[static_cast<std::size_t>(question_.light.kind->valueIndex("colour"))] = colour;
        reckon();
    });
    connect(current_, &ValueField::chosen, this, [this](double ampere) {
        question_.wantedAmpere = ampere;
        reckon();
    });
    for (ValueField* field : {supply_, light_, current_}) {
        connect(field, &ValueField::refusalShown, this, [this](const QString& why) {
            typo_ = why;
            update();
        });
    }
    connect(put_, &QToolButton::clicked, this, &ResistorCard::putWanted);
    connect(drawer_, &QToolButton::clicked, this, &ResistorCard::drawerWanted);
    reckon();
}

void ResistorCard::begin(const ResistorQuestion& question) {
    question_ = question;
    reckon();
}

void ResistorCard::setDrawer(const ResistorDrawer& drawer) {
    question_.drawer = drawer;
    reckon();
}

void ResistorCard::setPlace(const QString& words, bool possible) {
    if (words == place_ && possible == put_->isEnabled()) return;  // told at each instant
    place_ = words;
    put_->setEnabled(possible);
    put_->setToolTip(words.isEmpty() ? tr("Select the resistor, or an LED that has one in series") : words);
    put_->setAccessibleName(words);
    arrangeCard();
}

QString ResistorCard::refusal() const { return answer_ && !answer_->ok() ? qs(answer_->error().message) : QString(); }

void ResistorCard::reckon() {
    answer_ = chooseResistor(question_);
    supply_->showValue(question_.supplyVolt);
    light_->showValue(question_.light.value(question_.light.kind->valueIndex("colour")));
    current_->showValue(question_.wantedAmpere);
    const QString words =
        choice() ? tr("Exactly %1. Take %2: %3 flows, and it turns %4 into heat.")
                       .arg(qs(formatQuantity(choice()->exactOhm, "ohm")), qs(formatSetting(choice()->ohm, "ohm")),
                            qs(formatQuantity(choice()->ampere, "A")), qs(formatQuantity(choice()->watt, "W")))
                 : refusal();
    setAccessibleDescription(words);
    Q_EMIT reckoned();
    update();
}

QString ResistorCard::drawerWords() const {
    return question_.drawer.isEverything()
               ? tr("from every value of E12")
               : tr("from my drawer of %n value(s)", nullptr, static_cast<int>(question_.drawer.ohms().size()));
}

void ResistorCard::arrangeCard() {
    AsideCard::arrangeCard();
    const QRectF box = body();
    const double top = box.top() + look().px(text::kBody * 1.6);
    double y = top;
    for (ValueField* field : {supply_, light_, current_}) {
        field->setLook(look(), kLabelWidth);
        field->setStyleSheet(fieldStyle(look()));
        field->setGeometry(QRectF(box.left(), y, look().px(kFieldsWidth), look().px(kAskHeight)).toRect());
        y += look().px(kAskHeight + kFieldGap);
    }
    const double left = box.left() + look().px(kFieldsWidth + kColumnGap);
    double x = left - look().px(4);
    for (QToolButton* button : {put_, drawer_}) {
        button->setFont(look().font(text::kSmall + 1));
        button->setStyleSheet(wordButtonStyle(look()));
    }
    put_->setText(place_.isEmpty() ? tr("Put it in") : place_);
    const double room = box.right() - x - drawer_->sizeHint().width() - look().px(14);
    if (put_->sizeHint().width() > room) put_->setText(tr("Put it in"));  // the tip tells where
    for (QToolButton* button : {put_, drawer_}) {
        const double width = std::min<double>(button->sizeHint().width(), box.right() - x);
        button->setGeometry(
            QRectF(x, box.bottom() - look().px(kAskButtonHeight), width, look().px(kAskButtonHeight)).toRect());
        x += width + look().px(14);
    }
}

void ResistorCard::paintResistor(QPainter& painter, QPointF at) const {
    Part resistor = makePart(usualResistor(), "R1");
    resistor.values[static_cast<std::size_t>(resistanceValue(*resistor.kind))] = choice()->ohm;
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    painter.translate(at + QPointF(look().px(kAskResistorLength) / 2, 0));
    painter.scale(look().px(kAskResistorLength) / kAskSampleMm, look().px(kAskResistorLength) / kAskSampleMm);
    paintSample(painter, *look().theme, resistor);
    painter.restore();
}

void ResistorCard::paintBody(QPainter& painter) {
    const Theme& theme = *look().theme;
    const QRectF box = body();
    const double titleWidth = look().px(kFieldsWidth + kColumnGap - 6);
    if (typo_.isEmpty())
        drawLine(painter, QRectF(box.left(), box.top(), titleWidth, 0), tr("A resistor for an LED"),
                 look().font(text::kBody, QFont::DemiBold), theme.text);
    else
        drawLine(painter, QRectF(box.left(), box.top(), titleWidth, 0), typo_, look().font(text::kSmall),
                 theme.overload);
    const double left = box.left() + look().px(kFieldsWidth + kColumnGap), width = box.right() - left;
    double y = box.top();
    const QFont small = look().font(text::kSmall + 1);
    const auto line = [&](const QString& words, const QColor& colour) {
        drawLine(painter, QRectF(left, y, width, 0), words, small, colour);
        y += look().px((text::kSmall + 1) * 1.42);
    };
    if (!choice()) {
        y += look().px(text::kBody * 1.7);
        drawBlock(painter, QRectF(left, y, width, box.bottom() - look().px(kAskButtonHeight) - y), refusal(), small,
                  theme.text);
        return;
    }
    const double big = text::kTitle * 1.15;
    paintResistor(painter, QPointF(left, y + look().px(big) * 0.7));
    const double beside = look().px(kAskResistorLength + 14);
    drawLine(painter, QRectF(left + beside, y, width - beside, 0), qs(formatSetting(choice()->ohm, "ohm")),
             look().font(big, QFont::DemiBold), theme.text);
    y += look().px(big * 1.6);
    QStringList bands;
    for (const BandColour band : choice()->bands.value_or(std::vector<BandColour>()))
        bands << QString::fromUtf8(bandName(band).data(), static_cast<qsizetype>(bandName(band).size()));
    line(tr("%1 exactly; %2")
             .arg(qs(formatQuantity(choice()->exactOhm, "ohm")),
                  bands.isEmpty() ? drawerWords() : bands.join(QLatin1Char(' '))),
         theme.dimText);
    line(tr("%1 flows, where %2 is wanted")
             .arg(qs(formatQuantity(choice()->ampere, "A")), qs(formatQuantity(question_.wantedAmpere, "A"))),
         theme.text);
    line(tr("%1 of heat: %2 is enough")
             .arg(qs(formatQuantity(choice()->watt, "W")), qs(formatSetting(choice()->ratingWatt, "W"))),
         theme.text);
}

}  // namespace tiepoint::ui
