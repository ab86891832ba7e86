#include "ui/cards/legend_card.h"

#include "ui/cards/legend_samples.h"
#include "ui/theme/panels.h"

#include <array>

namespace tiepoint::ui {

LegendCard::LegendCard(QWidget* parent)
    : Card(parent),
      arrows_(new ArrowsKey(this)),
      voltage_(new ViewKey(QStringLiteral("Voltage"), 50, paintVoltageSample, this)),
      strips_(new ViewKey(QStringLiteral("Strips"), 44, paintStripsSample, this)),
      readings_(new ViewKey(QStringLiteral("Readings"), 58, paintReadingSample, this)),
      turned_(new ViewKey(QStringLiteral("Underside"), 0, paintNoSample, this)) {
    setAccessibleName(QStringLiteral("Legend"));
    int digit = 1;
    for (ViewKey* key : {static_cast<ViewKey*>(arrows_), voltage_, strips_, readings_, turned_})
        key->setToolTip(QStringLiteral("Key %1").arg(digit++));  // the shortcuts of the same actions in the menu
    connect(arrows_, &QAbstractButton::clicked, this, [this](bool on) {
        choose([on](Views& views) { views.arrows = on ? Arrows::Conventional : Arrows::Off; });
    });
    connect(arrows_->directionKey(), &QAbstractButton::clicked, this, [this] {
        choose([](Views& views) {
            views.arrows = views.arrows == Arrows::Electrons ? Arrows::Conventional : Arrows::Electrons;
        });
    });
    connect(arrows_->lockKey(), &QAbstractButton::clicked, this, [this](bool locked) {
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
    showViews(views_, fullScaleAmpere_, {});
    Q_EMIT viewsChosen(views_);
}

void LegendCard::showViews(const Views& views, double fullScaleAmpere, const QString& highestVolt) {
    views_ = views;
    fullScaleAmpere_ = fullScaleAmpere;
    arrows_->showScale(views, fullScaleAmpere);
    voltage_->setChecked(views.voltage);
    strips_->setChecked(views.strips);
    readings_->setChecked(views.readings);
    turned_->setChecked(views.turned);
    if (!highestVolt.isEmpty()) voltage_->setRange(QStringLiteral("0"), highestVolt);
}

void LegendCard::arrangeCard() {
    for (ViewKey* key : {static_cast<ViewKey*>(arrows_), voltage_, strips_, readings_, turned_}) key->setLook(look());
    const double pad = look().px(16);
    const QRectF inside = frame().adjusted(pad, pad, -pad, -pad);
    const double upper = inside.height() * 0.555;
    const auto place = [](QWidget* key, const QRectF& box) { key->setGeometry(box.toRect()); };
    place(arrows_, QRectF(inside.left(), inside.top(), inside.width(), upper));
    // The lower keys get what stands on them needs, and share what is left.
    const std::array lower{voltage_, strips_, readings_, turned_};
    double needed = 0;
    for (const ViewKey* key : lower) needed += key->neededWidth();
    const double spare = (inside.width() - needed) / static_cast<double>(lower.size());
    const double top = inside.top() + upper + look().px(2);
    double left = inside.left();
    for (ViewKey* key : lower) {
        const double width = key->neededWidth() + spare;
        place(key, QRectF(left, top, width, inside.bottom() - top));
        left += width;
    }
}

}  // namespace tiepoint::ui
