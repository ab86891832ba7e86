#pragma once
// The person's own drawer, remembered between starts: which resistors mends and the helper may propose. Window's thread only.

#include "core/parts/drawer.h"

#include <QObject>

namespace tiepoint::ui {

class MyDrawer : public QObject {
    Q_OBJECT
public:
    /// Reads what was remembered; everything where nothing is, or where it can't be read.
    explicit MyDrawer(QObject* parent = nullptr);

    const ResistorDrawer& drawer() const { return drawer_; }
    void set(ResistorDrawer drawer);

Q_SIGNALS:
    void changed();

private:
    ResistorDrawer drawer_;
};

}  // namespace tiepoint::ui
