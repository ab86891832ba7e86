#include "ui/tray/tray.h"

#include "ui/theme/panels.h"
#include "ui/tray/tray_search.h"

#include <QCursor>
#include <QKeyEvent>
#include <QPainter>

#include <algorithm>

namespace tiepoint::ui {
namespace {

constexpr double kTubsHeight = 96;
constexpr double kInset = 5;
constexpr double kTrayGap = 5;
constexpr double kSearchWidth = 150;
constexpr std::size_t kMostFound = 16;
const QString kFound = QStringLiteral("Found");

}  // namespace

Tray::Tray(QWidget* stage, QWidget* parent)
    : QWidget(parent),
      families_(trayFamilies()),
      drawer_(new Drawer(stage)),
      search_(new QLineEdit(this)),
      look_{&theme(ThemeName::Day), 1} {
    setAccessibleName(QStringLiteral("Tray"));
    for (const TrayFamily& family : families_) addCompartment(family);
    connect(drawer_, &Drawer::dragged, this, &Tray::take);
    connect(drawer_, &Drawer::clicked, this, [this](const TrayItem& item) { take(item, QCursor::pos()); });
    connect(drawer_, &Drawer::offerTaken, this, &Tray::showAll);
    connect(drawer_, &Drawer::closed, this, [this] {
        for (TrayButton* button : compartments_) button->setActive(false);
    });
    search_->setPlaceholderText(QStringLiteral("Find"));
    search_->setAccessibleName(QStringLiteral("Find in the tray"));
    search_->setToolTip(QStringLiteral("A name, a value such as 4k7, 47 ohm or 100 mA, or what it does"));
    search_->installEventFilter(this);
    connect(search_, &QLineEdit::textChanged, this, &Tray::showFound);
}

void Tray::beginSearch() {
    search_->setFocus(Qt::ShortcutFocusReason);
    search_->selectAll();
}

void Tray::showFound() {
    TrayFound found = findInTray(search_->text());
    if (found.items.empty() && found.words.isEmpty()) {
        if (drawer_->family() == kFound) closeDrawer();
        return;
    }
    if (found.items.size() > kMostFound) {
        found.words += QStringLiteral("%1The first %2 of %3.")
                           .arg(found.words.isEmpty() ? QString() : QStringLiteral(" "))
                           .arg(kMostFound)
                           .arg(found.items.size());
        found.items.resize(kMostFound);
    }
    openDrawer({kFound, std::move(found.items)}, search_->geometry().center().x(), found.words);
}

bool Tray::eventFilter(QObject* watched, QEvent* event) {
    if (event->type() == QEvent::ShortcutOverride && watched == search_) {
        event->accept();  // what is typed here is no shortcut of the window
        return true;
    }
    if (event->type() != QEvent::KeyPress) return QWidget::eventFilter(watched, event);
    const auto& key = *static_cast<QKeyEvent*>(event);
    if (watched != search_) {
        // Words typed on a compartment are looked for.
        const bool word = !key.text().isEmpty() && key.text().front().isLetterOrNumber() &&
                          !(key.modifiers() & (Qt::ControlModifier | Qt::AltModifier));
        if (!word) return QWidget::eventFilter(watched, event);
        beginSearch();
        search_->setText(key.text());
        search_->end(false);
        return true;
    }
    const bool open = drawer_->isVisible() && drawer_->family() == kFound && !drawer_->buttons().empty();
    if (key.key() == Qt::Key_Escape) {
        search_->clear();
        closeDrawer();
        return true;
    }
    if (open && (key.key() == Qt::Key_Return || key.key() == Qt::Key_Enter)) {
        take(drawer_->buttons().front()->item(), QCursor::pos());
        return true;
    }
    if (open && key.key() == Qt::Key_Down) {
        drawer_->buttons().front()->setFocus(Qt::TabFocusReason);
        return true;
    }
    return QWidget::eventFilter(watched, event);
}

void Tray::addCompartment(const TrayFamily& family) {
    auto* button = new TrayButton(family.items.front(), family.name, TrayButton::Shape::Compartment, this);
    const std::size_t index = compartments_.size();
    connect(button, &TrayButton::dragged, this, &Tray::take);
    connect(button, &QAbstractButton::clicked, this, [this, index] { toggleDrawer(index); });
    button->installEventFilter(this);
    compartments_.push_back(button);
}

void Tray::toggleDrawer(std::size_t index) {
    const bool open = drawer_->isVisible() && drawer_->family() == families_[index].name;
    closeDrawer();
    if (open) return;
    const TrayFamily family = showsAll_ ? families_[index] : heldFamily(index);
    if (family.items.size() == 1) {
        take(family.items.front(), QCursor::pos());
        compartments_[index]->setActive(true);  // its part is in the hand, which isn't over the bench yet
        return;
    }
    openDrawer(family, compartments_[index]->geometry().center().x(), {});
    compartments_[index]->setActive(true);
    if (compartments_[index]->hasFocus())
        drawer_->buttons().front()->setFocus(Qt::TabFocusReason);  // whoever came by the keyboard goes on by it
}

void Tray::openDrawer(const TrayFamily& family, int middle, const QString& words) {
    drawer_->openFor(family, mapTo(drawer_->parentWidget(), QPoint(middle, 0)), words);
    for (TrayButton* button : drawer_->buttons()) {
        if (!isAtHand(button->item()))
            button->setPale(kit_ ? QStringLiteral("Not in the kit") : QStringLiteral("Not in My drawer"));
    }
    const bool resistors = !held_.isEverything() && std::ranges::any_of(family.items, isResistor);
    const bool counts = kit_ ? family.name != QStringLiteral("Jumper") : resistors;
    if (counts && family.name != kFound)
        drawer_->offer(!showsAll_ ? QStringLiteral("Show all")
                       : kit_     ? QStringLiteral("Only those in the kit")
                                  : QStringLiteral("Only those in My drawer"));
}

/// All resistors, or only those in the person's drawer again.
void Tray::showAll() {
    const auto open = std::ranges::find(families_, drawer_->family(), &TrayFamily::name);
    if (open == families_.end()) return;
    showsAll_ = !showsAll_;
    closeDrawer();
    toggleDrawer(static_cast<std::size_t>(open - families_.begin()));
}

void Tray::setDrawer(const ResistorDrawer& drawer) {
    held_ = drawer;
    showsAll_ = false;
    closeDrawer();
    for (std::size_t i = 0; i < compartments_.size(); ++i)
        if (!kit_) compartments_[i]->setItem(withDrawer(families_[i], held_).items.front());
}

TrayFamily Tray::heldFamily(std::size_t index) const {
    return kit_ ? withKit(families_[index], *kit_) : withDrawer(families_[index], held_);
}

void Tray::setKit(const std::optional<Kit>& kit) {
    kit_ = kit;
    showsAll_ = false;
    closeDrawer();
    for (std::size_t i = 0; i < compartments_.size(); ++i) {
        const TrayFamily held = heldFamily(i);
        compartments_[i]->setVisible(!held.items.empty());
        if (!held.items.empty()) compartments_[i]->setItem(held.items.front());
    }
    arrange();
    update();
}

void Tray::letGo() {
    if (drawer_->isVisible()) return;
    for (TrayButton* button : compartments_) button->setActive(false);
}

void Tray::take(const TrayItem& item, QPoint globalPos) {
    closeDrawer();
    search_->clear();
    Q_EMIT taken(item.kind, item.preset, globalPos);
}

void Tray::setLook(const Look& look) {
    if (look_ == look) return;
    look_ = look;
    drawer_->setLook(look);
    for (TrayButton* button : compartments_) button->setLook(look);
    const Theme& theme = *look.theme;
    search_->setFont(look.font(text::kBody - 3));
    search_->setStyleSheet(
        QStringLiteral(
            "QLineEdit { color: %1; background: %2; border: %5px solid %3; border-radius: %6px; padding: 0 %7px; }"
            "QLineEdit:focus { border-color: %4; }")
            .arg(theme.text.name(), theme.card.name(), mix(theme.cardEdge, theme.dimText, 0.6).name(),
                 theme.accent.name())
            .arg(std::max(1, look.ipx(2)))
            .arg(look.ipx(6))
            .arg(look.ipx(10)));
    arrange();
    update();
}

void Tray::setTop(QWidget* row, double height) {
    top_ = row;
    topHeight_ = height;
    row->setParent(this);
    setTabOrder(row, compartments_.front());
}

double Tray::wantedHeight() const { return kTubsHeight + (top_ && !top_->isHidden() ? topHeight_ : 0); }

double Tray::topRoom() const { return top_ && !top_->isHidden() ? look_.px(topHeight_) : 0; }

/// Places the words and returns what is then over, for each compartment; negative: they don't fit.
double Tray::spareWith(TrayButton::Word place, double width, double gap) {
    double wanted = 0;
    int shown = 0;
    for (TrayButton* button : compartments_) {
        if (button->isHidden()) continue;
        button->setWordAt(place);
        wanted += button->wantedWidth();
        ++shown;
    }
    return (width - wanted - gap * (shown - 1)) / std::max(1, shown);
}

void Tray::arrange() {
    if (compartments_.empty()) return;
    const double margin = look_.px(kCardMargin), inset = look_.px(kInset), gap = look_.px(kTrayGap);
    if (top_) top_->setGeometry(QRectF(margin + inset, margin, width() - 2 * (margin + inset), topRoom()).toRect());
    const QRectF inside =
        QRectF(rect()).adjusted(margin + inset, topRoom() + margin + inset, -margin - inset, -margin - inset);
    const double searchWidth = look_.px(kSearchWidth);
    search_->setGeometry(
        QRectF(inside.right() - searchWidth, inside.top() + inside.height() * 0.18, searchWidth, inside.height() * 0.64)
            .toRect());
    double spare = 0;
    for (const TrayButton::Word place : {TrayButton::Word::Beside, TrayButton::Word::Below, TrayButton::Word::None}) {
        spare = spareWith(place, inside.width() - searchWidth - gap, gap);
        if (spare >= 0) break;
    }
    double left = inside.left();
    for (TrayButton* button : compartments_) {
        if (button->isHidden()) continue;
        const double width = button->wantedWidth() + spare;
        button->setGeometry(QRectF(left, inside.top(), width, inside.height()).toRect());
        left += width + gap;
    }
}

void Tray::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    const double margin = look_.px(kCardMargin);
    paintCard(painter, look_, QRectF(rect()).adjusted(margin, margin, -margin, -margin));
    if (topRoom() > 0) {
        const double line = margin + topRoom(), side = margin + look_.px(kInset);
        painter.setPen(QPen(look_.theme->cardEdge, std::max(1.0, look_.px(1.2))));
        painter.drawLine(QPointF(side, line), QPointF(width() - side, line));
    }
    if (!look_.theme->flat) return;
    painter.setPen(QPen(look_.theme->cardEdge, look_.px(2)));
    for (std::size_t i = 1; i < compartments_.size(); ++i) {
        if (compartments_[i]->isHidden()) continue;  // flat: a line between compartments in place of tubs
        const double x = compartments_[i]->x() - look_.px(kTrayGap / 2);
        const double high = height() - topRoom();
        painter.drawLine(QPointF(x, topRoom() + high * 0.2), QPointF(x, topRoom() + high * 0.8));
    }
}

void Tray::resizeEvent(QResizeEvent* event) {
    QWidget::resizeEvent(event);
    drawer_->hide();
    arrange();
}

}  // namespace tiepoint::ui
