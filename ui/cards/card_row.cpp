#include "ui/cards/card_row.h"

#include "ui/theme/panels.h"
#include "ui/theme/qs.h"

#include <algorithm>

namespace tiepoint::ui {
namespace {

// Widths of the cards' surfaces in the 1920-wide layout.
constexpr double kReadingWidth = 520;
constexpr double kLoopWidth = 530;
constexpr double kLegendWidth = 774;
constexpr double kSpacing = 6;
constexpr double kRoomLines = 40;   // the smallest print is at least so small a part of the screen's height
constexpr double kRoomScale = 1.5;  // print of 20 lines at a desk is then a 36th of a screen's height
constexpr int kPatienceMs = 17;     // one frame

/// The highest potential as it is shown; empty where none is above the reference.
QString highestVolt(const Picture& picture) {
    const Snapshot* live = picture.live();
    Figure highest;
    for (int net = 0; live && net < picture.layout->netCount; ++net) {
        const Figure volt = live->shown().volt(net);
        if (volt.isKnown() && (!highest.isKnown() || volt.steps() > highest.steps())) highest = volt;
    }
    return highest.isKnown() && highest.steps() > 0 ? qs(besideFigure(highest, highest.printed())) : QString();
}

}  // namespace

CardRow::CardRow(BenchDocument& document, LiveBench& live, BenchView& view, QWidget* parent)
    : QWidget(parent),
      view_(view),
      reading_(new ReadingCard(this)),
      loop_(new LoopCard(this)),
      values_(new ValueEditor(document, this)),
      jumper_(new JumperCard(document, this)),
      legend_(new LegendCard(this)),
      look_{&theme(ThemeName::Day), 1} {
    values_->hide();
    jumper_->hide();
    patience_.setSingleShot(true);
    patience_.setInterval(kPatienceMs);
    connect(&patience_, &QTimer::timeout, this, &CardRow::refresh);
    connect(&document, &BenchDocument::benchChanged, this, [this] {
        followSelection();
        patience_.start();
    });
    connect(&live, &LiveBench::snapshotReady, this, &CardRow::refresh);
    connect(&view, &BenchView::hoverChanged, this, &CardRow::refresh);
    connect(&view, &BenchView::selectionChanged, this, [this] {
        followSelection();
        refresh();
    });
    connect(&view, &BenchView::viewsChanged, this, &CardRow::refresh);
    connect(legend_, &LegendCard::viewsChosen, &view, &BenchView::setViews);
    connect(jumper_, &JumperCard::refused, &view, [&view](const QString& why) { view.say(why); });
    connect(values_, &ValueEditor::done, &view, [&view] { view.setFocus(Qt::OtherFocusReason); });
}

std::string CardRow::pointedAt() const {
    if (const QString hovered = view_.hoveredPart(); !hovered.isEmpty()) return hovered.toStdString();
    const QStringList selected = view_.selection();
    return selected.size() == 1 ? selected.front().toStdString() : std::string();
}

void CardRow::followSelection() {
    const QStringList selected = view_.selection();
    const std::string id = selected.size() == 1 ? selected.front().toStdString() : std::string();
    values_->showPart(id);
    if (view_.picture().layout) jumper_->showJumper(view_.picture(), id);
    showMiddle(!roomCard());
}

/// What is selected has the loop's place.
void CardRow::showMiddle(bool shown) {
    values_->setVisible(shown && !values_->isEmpty());
    jumper_->setVisible(shown && !jumper_->isEmpty());
    loop_->setVisible(shown && values_->isEmpty() && jumper_->isEmpty());
    arrangeTime();
}

/// In the legend's place where that is free, else in the loop's.
void CardRow::arrangeTime() {
    if (!time_ || time_ == aside_) return;
    const bool right = !aside_ && !standing_ && !legendKept_;
    const bool middle = !right && values_->isEmpty() && jumper_->isEmpty();
    const bool shown = !roomCard() && (right || middle);
    time_->setLook(look_);
    time_->setGeometry(placeOf(right ? 2 : 1));
    if (middle && shown) loop_->hide();
    if (right && !roomCard()) legend_->hide();
    time_->setVisible(shown);
    if (shown) time_->raise();
}

void CardRow::setTime(Card* card) {
    if (time_ == card) return;
    if (time_ && time_ != aside_) time_->hide();
    time_ = card;
    legendKept_ = false;
    arrangeAside();
}

void CardRow::refresh() {
    patience_.stop();
    const Picture& picture = view_.picture();
    if (!picture.layout) return;
    const std::string id = pointedAt();
    reading_->setText(readingText(picture, id));
    loop_->showPicture(picture, id);
    if (const QStringList selected = view_.selection(); selected.size() == 1 && !jumper_->isEmpty())
        jumper_->showJumper(picture, selected.front().toStdString());
    legend_->showViews(picture.views, fullScaleAmpere(picture), highestVolt(picture),
                       picture.live() && picture.live()->alternates);
}

void CardRow::setLook(const Look& look) {
    if (look_ == look) return;
    look_ = look;
    for (Card* card : {static_cast<Card*>(reading_), static_cast<Card*>(loop_), static_cast<Card*>(values_),
                       static_cast<Card*>(jumper_), static_cast<Card*>(legend_)})
        card->setLook(look);
    if (standing_) standing_->setLook(look);
    if (aside_) aside_->setLook(asideLook());
    arrange();
    refresh();
}

void CardRow::setRoom(bool room) {
    if (room_ == room) return;
    room_ = room;
    legendCalled_ = false;
    arrangeAside();
    arrange();
}

void CardRow::setAlone(bool alone) {
    if (alone_ == alone) return;
    alone_ = alone;
    arrangeAside();
    arrange();
}

Card* CardRow::roomCard() const {
    if (!room_ && !alone_) return nullptr;
    if (aside_) return aside_->isForRoom() ? aside_ : nullptr;
    return legendCalled_ ? legend_ : nullptr;
}

void CardRow::callLegend() {
    legendCalled_ = room_ && (aside_ || !legendCalled_);
    legendKept_ = !room_ && time_ && (aside_ || !legendKept_);
    showAside(nullptr);
}

Look CardRow::asideLook() const {
    Look larger = look_;
    if (room_ && roomCard()) {
        // On a screen that is less broad than usual the layout's scale follows the breadth; a room asks for a share of the height.
        const double needed = window()->height() / (kRoomLines * text::kSmall);
        larger.scale = std::max(larger.scale * kRoomScale, needed);
    }
    return larger;
}

/// Of the three cards beside each other; also before the row has been shown.
QRect CardRow::placeOf(int card) const {
    constexpr double kWidths[] = {kReadingWidth, kLoopWidth, kLegendWidth};
    const double margins = 2 * look_.px(kCardMargin), spacing = look_.px(kSpacing);
    const double unit = (width() - 2 * spacing - 3 * margins) / (kReadingWidth + kLoopWidth + kLegendWidth);
    double left = 0;
    for (int i = 0; i < card; ++i) left += kWidths[i] * unit + margins + spacing;
    return QRectF(left, 0, kWidths[card] * unit + margins, height()).toRect();
}

void CardRow::arrange() {
    if (Card* card = roomCard()) {
        card->setLook(asideLook());  // the window's height counts, and may have changed
        return card->setGeometry(rect());
    }
    reading_->setGeometry(placeOf(0));
    for (QWidget* card : std::initializer_list<QWidget*>{loop_, values_, jumper_}) card->setGeometry(placeOf(1));
    legend_->setGeometry(placeOf(2));
    for (Card* card : {aside_, standing_}) {
        if (card) card->setGeometry(legend_->geometry());
    }
    arrangeTime();
}

void CardRow::showAside(Card* card) {
    if (card) legendCalled_ = false;
    if (aside_ && aside_ != card) aside_->hide();
    aside_ = card;
    arrangeAside();
    Q_EMIT asideChanged(aside_);
}

void CardRow::setStanding(Card* card) {
    if (standing_ && standing_ != card) standing_->hide();
    standing_ = card;
    arrangeAside();
}

void CardRow::arrangeAside() {
    const bool alone = roomCard() != nullptr, legendAlone = roomCard() == legend_;
    Card* shown = aside_ ? aside_ : legendAlone ? nullptr : standing_;
    reading_->setVisible(!alone);
    legend_->setVisible(shown == nullptr);
    showMiddle(!alone);
    legend_->setLook(legendAlone ? asideLook() : look_);
    legend_->setGeometry(legendAlone ? rect() : placeOf(2));
    if (standing_) standing_->setVisible(shown == standing_);
    if (!shown) return;
    shown->setLook(shown == aside_ ? asideLook() : look_);
    shown->setGeometry(alone ? rect() : legend_->geometry());
    shown->show();
    shown->raise();
}

void CardRow::resizeEvent(QResizeEvent* event) {
    QWidget::resizeEvent(event);
    arrange();
}

}  // namespace tiepoint::ui
