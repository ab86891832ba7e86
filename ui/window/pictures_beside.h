#pragma once
// Draws small pictures of benches in a thread of low priority, one after the other, so that the window stands first. Belongs to the window's
// thread; nothing comes of what is still to be drawn when it goes.

#include "ui/paint/miniature.h"

#include <QObject>
#include <QThreadPool>

#include <atomic>
#include <functional>

namespace tiepoint::ui {

class PicturesBeside : public QObject {
    Q_OBJECT
public:
    using Fill = std::function<Miniature()>;  ///< run beside; nothing is drawn where it is empty
    using Take = std::function<void(const QImage&)>;

    explicit PicturesBeside(QObject* parent = nullptr);
    ~PicturesBeside() override;

    /// `take` is called in the window's thread.
    void order(const Fill& fill, const Take& take);

private:
    std::atomic<bool> going_{false};
    QThreadPool pool_;  // last: its thread uses the above
};

}  // namespace tiepoint::ui
