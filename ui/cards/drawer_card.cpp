#include "ui/cards/drawer_card.h"

#include "core/base/quantity.h"
#include "core/bench/bench.h"
#include "ui/cards/value_field.h"
#include "ui/paint/bench_painter.h"
#include "ui/theme/panels.h"
#include "ui/theme/qs.h"

#include <QPainter>

#include <algorithm>

namespace tiepoint::ui {
namespace {

constexpr double kFieldHeight = 40, kDrawerButtonHeight = 34;
constexpr double kChipWidth = 128, kChipHeight = 34, kResistorLength = 62;
constexpr double kSampleMm = 13;  ///< a resistor with its leads

}  // namespace

ResistorDrawer starterDrawer() {
    return ResistorDrawer({10, 100, 220, 330, 470, 1e3, 2.2e3, 4.7e3, 10e3, 22e3, 47e3, 100e3, 1e6});
}

DrawerCard::DrawerCard(QWidget* parent)
    : AsideCard(parent),
      list_(new QLineEdit(this)),
      everything_(new QToolButton(this)),
      starter_(new QToolButton(this)) {
    setAccessibleName(tr("My drawer"));
    list_->setAccessibleName(tr("The resistors in my drawer"));
    list_->setPlaceholderText(tr("every value of E12; or a list: 220 330 1k 4k7"));
    everything_->setText(tr("Everything"));
    everything_->setToolTip(tr("Every value of the E12 series"));
    starter_->setText(tr("A beginner's kit"));
    connect(list_, &QLineEdit::editingFinished, this, &DrawerCard::commit);
    connect(everything_, &QToolButton::clicked, this, [this] { Q_EMIT chosen(ResistorDrawer()); });
    connect(starter_, &QToolButton::clicked, this, [this] { Q_EMIT chosen(starterDrawer()); });
}

void DrawerCard::showDrawer(const ResistorDrawer& drawer) {
    drawer_ = drawer;
    refusal_.clear();
    list_->setText(drawer.isEverything() ? QString() : qs(writeDrawer(drawer)));
    list_->setModified(false);
    update();
}

void DrawerCard::commit() {
    if (!list_->isModified()) return;
    list_->setModified(false);
    const auto typed = readDrawer(list_->text().toStdString());
    refusal_ = typed ? QString() : qs(typed.error().message);
    if (typed) Q_EMIT chosen(*typed);
    update();
}

void DrawerCard::arrangeCard() {
    AsideCard::arrangeCard();
    const QRectF box = body();
    list_->setStyleSheet(fieldStyle(look()));
    list_->setGeometry(QRectF(box.left(), box.top() + look().px(text::kBody * 1.6 + text::kSmall * 1.5), box.width(),
                              look().px(kFieldHeight))
                           .toRect());
    double x = box.left() - look().px(4);
    for (QToolButton* button : {everything_, starter_}) {
        button->setFont(look().font(text::kSmall + 1));
        button->setStyleSheet(wordButtonStyle(look()));
        const double width = std::min<double>(button->sizeHint().width(), box.right() - x);
        button->setGeometry(
            QRectF(x, box.bottom() - look().px(kDrawerButtonHeight), width, look().px(kDrawerButtonHeight)).toRect());
        x += width + look().px(14);
    }
}

void DrawerCard::paintBody(QPainter& painter) {
    const Theme& theme = *look().theme;
    const QRectF box = body();
    drawLine(painter, QRectF(box.left(), box.top(), widthBesideButton(), 0), tr("My drawer"),
             look().font(text::kBody, QFont::DemiBold), theme.text);
    const double from = box.top() + look().px(text::kBody * 1.4);
    drawBlock(painter, QRectF(box.left(), from, box.width(), list_->y() - look().px(2) - from),
              refusal_.isEmpty() ? tr("Mends, the resistor helper, the tray and the keys + and \u2212 use only these.")
                                 : refusal_,
              look().font(text::kSmall), refusal_.isEmpty() ? theme.dimText : theme.overload,
              Qt::AlignLeft | Qt::AlignVCenter);
    const double top = list_->geometry().bottom() + look().px(8),
                 bottom = box.bottom() - look().px(kDrawerButtonHeight);
    const QFont font = look().font(text::kSmall);
    double x = box.left(), y = top;
    for (const double ohm : drawer_.ohms()) {
        if (x + look().px(kChipWidth) > box.right()) {
            x = box.left();
            y += look().px(kChipHeight);
        }
        if (y + look().px(kChipHeight) > bottom) break;  // the field names them all
        Part resistor = makePart(usualResistor(), "R1");
        resistor.values[static_cast<std::size_t>(resistanceValue(*resistor.kind))] = ohm;
        painter.save();
        painter.setRenderHint(QPainter::Antialiasing);
        painter.translate(x + look().px(kResistorLength) / 2, y + look().px(kChipHeight) / 2);
        painter.scale(look().px(kResistorLength) / kSampleMm, look().px(kResistorLength) / kSampleMm);
        paintSample(painter, theme, resistor);
        painter.restore();
        drawLine(painter,
                 QRectF(x + look().px(kResistorLength + 4), y + look().px(kChipHeight - text::kSmall * 1.3) / 2,
                        look().px(kChipWidth - kResistorLength - 4), 0),
                 qs(formatSetting(ohm, "ohm")), font, theme.text);
        x += look().px(kChipWidth);
    }
}

}  // namespace tiepoint::ui
