#pragma once
// The open compartment: a panel above the tray with every kind, colour or usual value of one family. Lies over the cards as a child
// of the window, never as a pop-up of its own, so that a drag can begin in it.

#include "ui/tray/tray_button.h"

#include <QToolButton>
#include <QWidget>

#include <vector>

namespace tiepoint::ui {

class Drawer : public QWidget {
    Q_OBJECT
public:
    explicit Drawer(QWidget* parent);

    void setLook(const Look& look);
    /// Fills the drawer and shows it above a point of the parent's (the middle of the compartment's upper edge).
    /// Words that are to be said about it stand below; they alone where the family is empty.
    void openFor(const TrayFamily& family, QPoint above, const QString& words = {});
    /// A button that offers something about what is open, below it, until it is filled again.
    void offer(const QString& word);
    QToolButton& offerButton() const { return *offer_; }
    const QString& family() const { return family_; }
    const std::vector<TrayButton*>& buttons() const { return buttons_; }
    const QString& words() const { return words_; }

Q_SIGNALS:
    void dragged(const TrayItem& item, QPoint globalPos);
    void clicked(const TrayItem& item);
    void closed();
    void offerTaken();

protected:
    void paintEvent(QPaintEvent* event) override;
    void hideEvent(QHideEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;

private:
    void arrange(QPoint above);
    /// How broad and high the words are in a drawer of such a breadth; empty where there are none.
    QSize wordsSize(int breadth) const;

    Look look_;
    WordSheet sheet_{this};
    QString family_, words_;
    std::vector<TrayButton*> buttons_;
    QToolButton* offer_;
    QPoint above_;
};

}  // namespace tiepoint::ui
