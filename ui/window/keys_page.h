#pragma once
// The page of keys: every key of the program and what it does, from the list that the actions are made from, with a field that looks for words.
// An overlay over the bench that nothing waits for.

#include "ui/theme/look.h"
#include "ui/theme/words.h"

#include <QLabel>
#include <QLineEdit>
#include <QTableWidget>
#include <QWidget>

namespace tiepoint::ui {

class KeysPage : public QWidget {
    Q_OBJECT
public:
    explicit KeysPage(QWidget* parent);

    void setLook(const Look& look);
    /// Lies in the middle of a frame of the parent's.
    void placeIn(const QRect& frame);
    /// Shows all keys, with the keyboard in the field.
    void open();

    QLineEdit& search() const { return *search_; }
    QTableWidget& table() const { return *table_; }
    QLabel& none() const { return *none_; }  ///< said where no line suits

Q_SIGNALS:
    void closed();

protected:
    bool eventFilter(QObject* watched, QEvent* event) override;
    void paintEvent(QPaintEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;

private:
    void fill();
    void showOnly(const QString& words);
    void close();
    int breadthOf(int column) const;

    Look look_;
    WordSheet sheet_{this};
    QLineEdit* search_;
    QTableWidget* table_;
    QLabel* none_;
    QRect frame_;
};

}  // namespace tiepoint::ui
