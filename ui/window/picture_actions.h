#pragma once
// Pictures of the bench for others: onto the clipboard, and into files of any kind that the export writes.

#include "ui/view/bench_view.h"

#include <QImage>
#include <QObject>

#include <functional>

namespace tiepoint::ui {

class PictureActions : public QObject {
    Q_OBJECT
public:
    using GivePath = std::function<void(const QString& path)>;
    /// How a person is asked for a file; tests answer in their place.
    using AskPath = std::function<void(const QString& suggestion, const GivePath&)>;

    PictureActions(BenchView& view, QWidget* window);
    void setAskPath(AskPath ask) { ask_ = std::move(ask); }

    void copy();
    void save();

Q_SIGNALS:
    void said(const QString& words);
    void failed(const QString& why);

private:
    Picture picture() const;

    BenchView& view_;
    AskPath ask_;
};

}  // namespace tiepoint::ui
