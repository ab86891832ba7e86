#include "ui/window/keys_page.h"

#include "ui/cards/value_field.h"
#include "ui/theme/panels.h"
#include "ui/view/key_list.h"

#include <QHeaderView>
#include <QKeyEvent>
#include <QPainter>
#include <QScrollBar>

#include <algorithm>
#include <array>

namespace tiepoint::ui {
namespace {

constexpr double kPageHeader = 64, kPagePad = 24, kKeyRow = 38, kFieldBreadth = 320, kPageGap = 8, kFindHeight = 40;
constexpr int kKeysColumn = 0, kDoesColumn = 1;

}  // namespace

KeysPage::KeysPage(QWidget* parent)
    : QWidget(parent),
      look_{&theme(ThemeName::Day), 1},
      search_(new QLineEdit(this)),
      table_(new QTableWidget(this)),
      none_(new QLabel(QStringLiteral("No key is for that. Clear the field to see them all."), this)) {
    setAccessibleName(QStringLiteral("Keys"));
    search_->setPlaceholderText(QStringLiteral("Find a key"));
    search_->setAccessibleName(QStringLiteral("Find a key"));
    search_->installEventFilter(this);
    connect(search_, &QLineEdit::textChanged, this, &KeysPage::showOnly);
    table_->setAccessibleName(QStringLiteral("Keys and what they do"));
    table_->setFrameShape(QFrame::NoFrame);
    table_->setShowGrid(false);
    table_->setEditTriggers(QAbstractItemView::NoEditTriggers);
    table_->setSelectionBehavior(QAbstractItemView::SelectRows);
    table_->setSelectionMode(QAbstractItemView::SingleSelection);
    table_->setVerticalScrollMode(QAbstractItemView::ScrollPerPixel);
    table_->setTabKeyNavigation(false);
    table_->verticalHeader()->hide();
    table_->horizontalHeader()->hide();
    table_->horizontalHeader()->setStretchLastSection(true);
    none_->hide();
    fill();
    hide();
}

/// A row for each line, under the heading of its group.
void KeysPage::fill() {
    table_->setColumnCount(2);
    const auto addRow = [this](const QString& left, const QString& right, bool heading) {
        const int row = table_->rowCount();
        table_->insertRow(row);
        table_->setItem(row, kKeysColumn, new QTableWidgetItem(left));
        table_->setItem(row, kDoesColumn, new QTableWidgetItem(right));
        if (!heading) return;
        table_->setSpan(row, kKeysColumn, 1, 2);
        for (const int column : {kKeysColumn, kDoesColumn}) table_->item(row, column)->setFlags(Qt::ItemIsEnabled);
    };
    QString group;
    for (const KeyLine& line : keyLines()) {
        if (group != QLatin1String(line.group)) {
            group = QString::fromLatin1(line.group);
            addRow(group, {}, true);
        }
        addRow(line.keysInWords(), QString::fromLatin1(line.does), false);
    }
}

void KeysPage::showOnly(const QString& words) {
    int heading = -1;
    bool any = false;
    for (int row = 0; row < table_->rowCount(); ++row) {
        if (table_->columnSpan(row, kKeysColumn) > 1) {
            heading = row;
            table_->setRowHidden(row, true);
            continue;
        }
        const bool suits = std::ranges::any_of(std::array{kKeysColumn, kDoesColumn}, [&](int column) {
            return table_->item(row, column)->text().contains(words.trimmed(), Qt::CaseInsensitive);
        });
        table_->setRowHidden(row, !suits);
        if (suits) table_->setRowHidden(heading, false);
        any = any || suits;
    }
    none_->setVisible(!any);
    table_->setVisible(any);
}

void KeysPage::open() {
    search_->clear();
    placeIn(frame_);
    show();
    raise();
    search_->setFocus(Qt::OtherFocusReason);
}

void KeysPage::close() {
    hide();
    Q_EMIT closed();
}

void KeysPage::setLook(const Look& look) {
    look_ = look;
    const Theme& theme = *look.theme;
    table_->setFont(look.font(text::kSmall + 1));
    table_->setStyleSheet(
        QStringLiteral("QTableView { color: %1; background: %2; outline: none; }"
                       "QTableView::item { padding: 0 %5px; }"
                       "QTableView::item:selected { color: %1; background: %3; border-left: %6px solid %4; }")
            .arg(theme.text.name(), theme.card.name(), mix(theme.card, theme.accent, 0.16).name(), theme.accent.name())
            .arg(look.ipx(10))
            .arg(look.ipx(4)) +
        scrollBarStyle(look));
    none_->setFont(look.font(text::kSmall + 1));
    none_->setStyleSheet(QStringLiteral("color: %1;").arg(theme.dimText.name()));
    search_->setFont(look.font(text::kSmall + 1));
    search_->setStyleSheet(fieldStyle(look));
    for (int row = 0; row < table_->rowCount(); ++row) {
        const bool heading = table_->columnSpan(row, kKeysColumn) > 1;
        table_->setRowHeight(row, look.ipx(heading ? kKeyRow * 1.25 : kKeyRow));
        QFont font = look.font(text::kSmall + 1, heading ? QFont::Normal : QFont::DemiBold);
        table_->item(row, kKeysColumn)->setFont(font);
        table_->item(row, kKeysColumn)->setForeground(heading ? theme.dimText : theme.text);
        table_->item(row, kKeysColumn)
            ->setTextAlignment(Qt::AlignLeft | (heading ? Qt::AlignBottom : Qt::AlignVCenter));
    }
    table_->setColumnWidth(kKeysColumn, breadthOf(kKeysColumn));
    update();
}

/// That its longest words take.
int KeysPage::breadthOf(int column) const {
    int breadth = 0;
    for (int row = 0; row < table_->rowCount(); ++row)
        breadth = std::max(breadth, table_->sizeHintForIndex(table_->model()->index(row, column)).width());
    return breadth + look_.ipx(kPageGap);
}

void KeysPage::placeIn(const QRect& frame) {
    frame_ = frame;
    const int side = look_.ipx(kPagePad), bar = table_->verticalScrollBar()->sizeHint().width();
    const int wanted = 2 * side + breadthOf(kKeysColumn) + breadthOf(kDoesColumn) + bar;
    const int width = std::min(wanted, frame.width() - 2 * side);
    const int height = frame.height() - 2 * look_.ipx(8);
    setGeometry(frame.center().x() - width / 2, frame.top() + look_.ipx(8), width, height);
    const int header = look_.ipx(kPageHeader), field = std::min(look_.ipx(kFieldBreadth), width / 2);
    search_->setGeometry(width - side - field, (header - look_.ipx(kFindHeight)) / 2 + look_.ipx(4), field,
                         look_.ipx(kFindHeight));
    none_->setGeometry(side + look_.ipx(10), header, width - 2 * side, look_.ipx(kKeyRow));
    table_->setGeometry(side, header, width - 2 * side, height - header - side);
}

void KeysPage::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    const double margin = look_.px(kCardMargin);
    paintCard(painter, look_, QRectF(rect()).adjusted(margin, margin, -margin, -margin));
    const double left = look_.px(kPagePad + 10);
    sheet_.begin();
    sheet_.draw(painter, QRectF(left, margin, search_->x() - left, look_.px(kPageHeader)), QStringLiteral("Keys"),
                {look_.font(text::kBody), look_.theme->text, Qt::AlignLeft | Qt::AlignVCenter});
}

/// What is typed into the field is no shortcut of the window; up and down go on to the table.
bool KeysPage::eventFilter(QObject* watched, QEvent* event) {
    if (event->type() == QEvent::ShortcutOverride) {
        const auto& key = *static_cast<QKeyEvent*>(event);
        if (!(key.modifiers() & (Qt::ControlModifier | Qt::AltModifier)) && !key.text().isEmpty()) {
            event->accept();
            return true;
        }
    }
    if (event->type() == QEvent::KeyPress && static_cast<QKeyEvent*>(event)->key() == Qt::Key_Down) {
        table_->setFocus(Qt::TabFocusReason);
        return true;
    }
    return QWidget::eventFilter(watched, event);
}

void KeysPage::keyPressEvent(QKeyEvent* event) {
    if (event->key() == Qt::Key_Escape)
        close();
    else
        QWidget::keyPressEvent(event);
}

}  // namespace tiepoint::ui
