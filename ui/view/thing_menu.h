#pragma once
// A menu that looks like a piece of the tray drawn out: rows with a picture of what happens, a word, and a key at the right. Keys, focus
// and what screen readers are told are those of any menu. Belongs to the window's thread.

#include "ui/theme/words.h"
#include "ui/view/thing_pictures.h"

#include <QMenu>

#include <functional>
#include <map>

namespace tiepoint::ui {

class ThingMenu : public QMenu {
    Q_OBJECT
public:
    ThingMenu(const Look& look, QWidget* parent);

    /// `key` stands at the right, as a person reads it; may be empty.
    QAction* addRow(const QString& word, const QString& key, RowPicture picture, std::function<void()> chosen);
    /// Its size with all its rows.
    QSize wantedSize() const { return sizeHint(); }

protected:
    void paintEvent(QPaintEvent* event) override;

private:
    struct Row {
        QString key;
        RowPicture picture;
    };
    void paintRow(QPainter& painter, const QAction& action, const Row& row);
    void paintKeyCap(QPainter& painter, const QRectF& frame, const QString& key);
    QFont wordFont() const;
    double capWidth(const QString& key) const;
    void widenFor(const QString& word, const QString& key);

    Look look_;
    WordSheet sheet_{this};
    std::map<const QAction*, Row> rows_;
};

}  // namespace tiepoint::ui
