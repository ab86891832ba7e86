#include "ui/cards/legend_card.h"

#include "ui/cards/legend_samples.h"
#include "ui/theme/panels.h"
#include "ui/view/key_list.h"

#include <array>
#include <utility>

namespace tiepoint::ui {

LegendCard::LegendCard(QWidget* parent)
    : Card(parent),
      arrows_(new ArrowsButton(this)),
      voltage_(new ViewButton(QStringLiteral("Voltage"), 50, paintVoltageSample, this)),
      strips_(new ViewButton(QStringLiteral("Strips"), 44, paintStripsSample, this)),
      readings_(new ViewButton(QStringLiteral("Readings"), 58, paintReadingSample, this)),
      turned_(new ViewButton(QStringLiteral("Underside"), 0, paintNoSample, this)) {
    setAccessibleName(QStringLiteral("Legend"));
    const std::pair<ViewButton*, KeyFor> buttons[] = {{arrows_, KeyFor::Arrows},
                                                      {voltage_, KeyFor::Voltage},
                                                      {strips_, KeyFor::Strips},
                                                      {readings_, KeyFor::Readings},
                                                      {turned_, KeyFor::Underside}};
    for (const auto& [button, what] : buttons) {
        button->setKeyWords(otherKeyOf(what));
        button->setToolTip(QStringLiteral("Key %1, or %2 while digits type a value")
                               .arg(keysFor(what).front().toString(), otherKeyOf(what)));
    }
    connect(arrows_, &QAbstractButton::clicked, this, [this](bool on) {
        choose([on](Views& views) { views.arrows = on ? Arrows::Conventional : Arrows::Off; });
    });
    connect(arrows_->directionButton(), &QAbstractButton::clicked, this, [this] {
        choose([](Views& views) {
            views.arrows = views.arrows == Arrows::Electrons ? Arrows::Conventional : Arrows::Electrons;
        });
    });
    connect(arrows_->lockButton(), &QAbstractButton::clicked, this, [this](bool locked) {
        choose([this, locked](Views& views) {
            views.lockedFullScaleAmpere = locked ? std::optional(fullScaleAmpere_) : std::nullopt;
        });
    });
    connect(voltage_, &QAbstractButton::clicked, this, [this](bool on) { choose([on](Views& v) { v.voltage = on; }); });
    connect(strips_, &QAbstractButton::clicked, this, [this](bool on) { choose([on](Views& v) { v.strips = on; }); });
    connect(readings_, &QAbstractButton::clicked, this,
            [this](bool on) { choose([on](Views& v) { v.readings = on; }); });
    connect(turned_, &QAbstractButton::clicked, this, [this](bool on) { choose([on](Views& v) { v.turned = on; }); });
}

void LegendCard::choose(const std::function<void(Views&)>& change) {
    change(views_);
    showViews(views_, fullScaleAmpere_, {}, alternates_);
    Q_EMIT viewsChosen(views_);
}

void LegendCard::showViews(const Views& views, double fullScaleAmpere, const QString& highestVolt, bool alternates) {
    views_ = views;
    alternates_ = alternates;
    fullScaleAmpere_ = fullScaleAmpere;
    arrows_->showScale(views, fullScaleAmpere, alternates);
    voltage_->setChecked(views.voltage);
    strips_->setChecked(views.strips);
    readings_->setChecked(views.readings);
    turned_->setChecked(views.turned);
    if (!highestVolt.isEmpty() && voltage_->setRange(QStringLiteral("0 V"), highestVolt)) arrangeCard();
}

void LegendCard::arrangeCard() {
    for (ViewButton* button : {static_cast<ViewButton*>(arrows_), voltage_, strips_, readings_, turned_})
        button->setLook(look());
    const double pad = look().px(16);
    const QRectF inside = frame().adjusted(pad, pad, -pad, -pad);
    const double upper = inside.height() * 0.555;
    const auto place = [](QWidget* button, const QRectF& box) { button->setGeometry(box.toRect()); };
    place(arrows_, QRectF(inside.left(), inside.top(), inside.width(), upper));
    // The lower buttons get what stands on them needs, and share what is left.
    const std::array lower{voltage_, strips_, readings_, turned_};
    const auto neededBy = [&lower](bool bare) {
        double needed = 0;
        for (ViewButton* button : lower) {
            button->setBare(bare);
            needed += button->neededWidth();
        }
        return needed;
    };
    double needed = neededBy(false);
    if (needed > inside.width()) needed = neededBy(true);
    const double spare = (inside.width() - needed) / static_cast<double>(lower.size());
    const double top = inside.top() + upper + look().px(2);
    double left = inside.left();
    for (ViewButton* button : lower) {
        const double width = button->neededWidth() + spare;
        place(button, QRectF(left, top, width, inside.bottom() - top));
        left += width;
    }
}

}  // namespace tiepoint::ui
