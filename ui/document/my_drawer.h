#pragma once
// What the person or the class has, remembered between starts: which resistors mends and the helper may propose, and the whole kit where one was
// chosen, whose resistors these then are. Window's thread only.

#include "core/course/kit.h"
#include "core/parts/drawer.h"

#include <QObject>

#include <optional>

namespace tiepoint::ui {

class MyDrawer : public QObject {
    Q_OBJECT
public:
    /// Reads what was remembered; everything where nothing is, or where it can't be read.
    explicit MyDrawer(QObject* parent = nullptr);

    const ResistorDrawer& drawer() const { return drawer_; }
    /// The resistors; of a kit they become its own.
    void set(ResistorDrawer drawer);
    /// Nothing: no kit was chosen, and all parts are at hand.
    const std::optional<Kit>& kit() const { return kit_; }
    void useKit(std::optional<Kit> kit);

Q_SIGNALS:
    void changed();

private:
    void keep();

    ResistorDrawer drawer_;
    std::optional<Kit> kit_;
};

}  // namespace tiepoint::ui
