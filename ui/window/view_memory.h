#pragma once
// Which views are on, remembered: with the bench, which opens as it was left, and in the person's settings, for a bench that nobody has
// looked at yet. What turns a bench over and what locks its scale belong to one bench only: a new one lies face up, at its own scale.

#include "ui/document/bench_document.h"
#include "ui/view/bench_view.h"

#include <QObject>

namespace tiepoint::ui {

class ViewMemory : public QObject {
    Q_OBJECT
public:
    ViewMemory(BenchDocument& document, BenchView& view, QObject* parent);

    /// Another bench lies on the table: shows it as it was left, or else as the person likes it.
    void recall();
    /// Keeps what is shown with the bench.
    void keep() { document_.keepViews(view_.views()); }
    /// While it rests what is shown is somebody else's choice, such as a lesson's, and isn't remembered.
    void setResting(bool resting) { resting_ = resting; }

private:
    void remember();

    BenchDocument& document_;
    BenchView& view_;
    bool recalling_ = false, resting_ = false;
};

/// What the person's settings hold.
Views usualViews();

}  // namespace tiepoint::ui
