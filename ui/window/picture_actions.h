#pragma once
// Pictures of the bench for others: onto the clipboard, and into files of any kind that the export writes.

#include "ui/export/paper_plan.h"
#include "ui/view/bench_view.h"

#include <QImage>
#include <QObject>

#include <functional>

namespace tiepoint::ui {

class PictureActions : public QObject {
    Q_OBJECT
public:
    using GivePath = std::function<void(const QString& path, Paper paper)>;
    /// How a person is asked for a file, and for the paper of a drawing in true size; tests answer in their place.
    using AskPath = std::function<void(const QString& suggestion, const GivePath&)>;
    /// Whether a file that is there already may be replaced.
    using AskReplace = std::function<void(const QString& path, const std::function<void(bool)>&)>;

    PictureActions(BenchView& view, QWidget* window);
    void setAskPath(AskPath ask) { ask_ = std::move(ask); }
    void setAskReplace(AskReplace ask) { replace_ = std::move(ask); }

    void copy();
    void save();

Q_SIGNALS:
    void said(const QString& words);
    void failed(const QString& why);

private:
    Picture picture() const;
    void askInDialogue(QWidget* window, const QString& suggestion, const GivePath& give);

    BenchView& view_;
    AskReplace replace_;
    AskPath ask_;
};

/// The paper that was chosen last; before that, what is usual where the person lives.
Paper usualPaper();

}  // namespace tiepoint::ui
