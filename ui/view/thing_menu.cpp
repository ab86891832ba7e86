#include "ui/view/thing_menu.h"

#include "ui/theme/panels.h"

#include <QPaintEvent>

#include <algorithm>
#include <cmath>

namespace tiepoint::ui {
namespace {

// In the 1080-line layout: a row is 1/24 of its height.
constexpr double kMenuRowHeight = 45, kRowInset = 2, kRim = 6;
constexpr double kRowPictureLeft = 12, kRowPictureWidth = 46, kRowPictureInset = 5;
constexpr double kRowWordLeft = 72, kCapGap = 34, kCapRight = 12;
constexpr double kRowWordSize = 24, kCapSize = 18, kCapPad = 9, kKeyCapHeight = 29;

}  // namespace

ThingMenu::ThingMenu(const Look& look, QWidget* parent) : QMenu(parent), look_(look) {
    // The style sheet only says how large a row is; it is painted below.
    setFont(wordFont());
    const double line = QFontMetricsF(wordFont()).height();
    const int above = static_cast<int>(std::lround((look.px(kMenuRowHeight) - line) / 2));
    setStyleSheet(QStringLiteral("QMenu { padding: %1px; margin: 0; border: none; background: transparent; }"
                                 "QMenu { font-family: '%3'; font-size: %4px; font-weight: 500; }"
                                 "QMenu::item { padding: %2px 0 %2px 0; border: none; background: transparent; }")
                      .arg(look.ipx(kRim))
                      .arg(std::max(0, above))
                      .arg(wordFont().family())
                      .arg(look.ipx(kRowWordSize)));
}

QFont ThingMenu::wordFont() const { return look_.font(kRowWordSize, QFont::Medium); }

double ThingMenu::capWidth(const QString& key) const {
    if (key.isEmpty()) return 0;
    return QFontMetricsF(look_.font(kCapSize)).horizontalAdvance(key) + look_.px(2 * kCapPad);
}

void ThingMenu::widenFor(const QString& word, const QString& key) {
    const double needed = look_.px(kRowWordLeft) + QFontMetricsF(wordFont()).horizontalAdvance(word) +
                          look_.px(kCapGap) + capWidth(key) + look_.px(kCapRight + 2 * kRim);
    setMinimumWidth(std::max(minimumWidth(), static_cast<int>(std::ceil(needed))));
}

QAction* ThingMenu::addRow(const QString& word, const QString& key, RowPicture picture, std::function<void()> chosen) {
    QAction* action = addAction(word);
    rows_[action] = {key, std::move(picture)};
    connect(action, &QAction::triggered, this, [chosen = std::move(chosen)] { chosen(); });
    widenFor(word, key);
    return action;
}

void ThingMenu::paintKeyCap(QPainter& painter, const QRectF& frame, const QString& key) {
    const Theme& theme = *look_.theme;
    painter.setPen(QPen(mix(theme.cardEdge, theme.dimText, 0.35), look_.px(1.6)));
    painter.setBrush(theme.card);
    painter.drawRoundedRect(frame, look_.px(5), look_.px(5));
    sheet_.draw(painter, frame, key, {look_.font(kCapSize), theme.text, Qt::AlignCenter});
}

void ThingMenu::paintRow(QPainter& painter, const QAction& action, const Row& row) {
    const double inset = look_.px(kRowInset);
    const QRectF whole = actionGeometry(const_cast<QAction*>(&action));
    const QRectF face = whole.adjusted(inset, inset, -inset, -inset);
    const bool active = activeAction() == &action;
    paintButton(painter, look_, face, {active, false, false, false});
    const double inside = look_.px(kRowPictureInset);
    painter.save();
    row.picture(painter, look_,
                QRectF(face.left() + look_.px(kRowPictureLeft), face.top() + inside, look_.px(kRowPictureWidth),
                       face.height() - 2 * inside));
    painter.restore();
    const double cap = capWidth(row.key);
    const double wordLeft = face.left() + look_.px(kRowWordLeft);
    sheet_.draw(painter,
                QRectF(wordLeft, face.top(), face.right() - look_.px(kCapRight) - cap - wordLeft, face.height()),
                action.text(), {wordFont(), look_.theme->text, Qt::AlignLeft | Qt::AlignVCenter});
    if (row.key.isEmpty()) return;
    const double height = look_.px(kKeyCapHeight);
    paintKeyCap(painter, {face.right() - look_.px(kCapRight) - cap, face.center().y() - height / 2, cap, height},
                row.key);
}

void ThingMenu::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    const Theme& theme = *look_.theme;
    const double edge = look_.px(2.4);
    sheet_.begin();
    painter.fillRect(rect(), theme.accent);
    painter.fillRect(QRectF(rect()).adjusted(edge, edge, -edge, -edge),
                     theme.flat ? theme.card : mix(theme.card, theme.cardEdge, theme.dark ? 0.25 : 0.35));
    for (const QAction* action : actions()) {
        if (const auto row = rows_.find(action); row != rows_.end()) paintRow(painter, *action, row->second);
    }
}

}  // namespace tiepoint::ui
