#pragma once
// The tray along the front of the bench: one compartment for each family of parts, with the real part drawn in it. A drag out of a
// compartment takes its usual part; a click opens the drawer of the family, or takes the only part there is. Words typed into its field
// (or anywhere on the tray) open a drawer with what suits them.

#include "ui/tray/drawer.h"

#include <QLineEdit>
#include <QWidget>

#include <vector>

namespace tiepoint::ui {

class Tray : public QWidget {
    Q_OBJECT
public:
    /// The drawer opens inside `stage`, which must outlive the tray.
    Tray(QWidget* stage, QWidget* parent);

    void setLook(const Look& look);
    /// Lays a row into the tray's top, so high in the layout of 1080 lines while it isn't hidden. The tray owns it.
    void setTop(QWidget* row, double height);
    /// How high the tray is with what lies in it, in the same layout.
    double wantedHeight() const;
    const std::vector<TrayButton*>& compartments() const { return compartments_; }
    Drawer& drawer() const { return *drawer_; }
    void closeDrawer() { drawer_->hide(); }
    /// The resistors that the person has: only these lie in their compartment, until all are asked for.
    void setDrawer(const ResistorDrawer& drawer);
    /// What a class has: only this lies in the compartments, and those that it leaves empty go. Nothing: all there is.
    void setKit(const std::optional<Kit>& kit);
    /// What was taken by a click has come to its place, or was let go of.
    void letGo();
    QLineEdit& search() const { return *search_; }
    /// Puts the keyboard into the field.
    void beginSearch();

Q_SIGNALS:
    /// Something is taken out: while the mouse is down (dragged) or by a click, after which a click in a hole places it.
    void taken(const QString& kind, const QString& preset, QPoint globalPos);

protected:
    bool eventFilter(QObject* watched, QEvent* event) override;
    void paintEvent(QPaintEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;

private:
    void addCompartment(const TrayFamily& family);
    void toggleDrawer(std::size_t index);
    void openDrawer(const TrayFamily& family, int middle, const QString& words);
    void showAll();
    void take(const TrayItem& item, QPoint globalPos);
    void showFound();
    void arrange();
    double spareWith(TrayButton::Word place, double width, double gap);
    TrayFamily heldFamily(std::size_t index) const;
    bool isAtHand(const TrayItem& item) const { return kit_ ? isInKit(item, *kit_) : isHeld(item, held_); }
    /// So much of the height that row takes, px.
    double topRoom() const;

    std::vector<TrayFamily> families_;  ///< with everything
    ResistorDrawer held_;
    std::optional<Kit> kit_;
    bool showsAll_ = false;
    std::vector<TrayButton*> compartments_;
    Drawer* drawer_;
    QLineEdit* search_;
    QWidget* top_ = nullptr;
    double topHeight_ = 0;
    Look look_;
};

}  // namespace tiepoint::ui
