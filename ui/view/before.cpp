#include "ui/view/before.h"

namespace tiepoint::ui {
namespace {

constexpr qint64 kAtOnceMs = 600;  ///< steps closer than this are one

}  // namespace

Before::Before() {
    showing_.setSingleShot(true);
    showing_.setInterval(kShownMs);
    connect(&showing_, &QTimer::timeout, this, &Before::end);
}

bool Before::follow(std::shared_ptr<const Snapshot> snapshot) {
    if (last_ && last_->revision == snapshot->revision && last_->inputSequence == snapshot->inputSequence) return false;
    const bool goesOn = sinceLast_.isValid() && sinceLast_.elapsed() < kAtOnceMs;
    if (!goesOn || !base_) base_ = last_;
    last_ = std::move(snapshot);
    sinceLast_.start();
    if (!base_) return false;
    auto found = compareSnapshots(*base_, *last_);
    const bool had = changes_ != nullptr;
    changes_ = found.empty() ? nullptr : std::make_shared<const std::vector<Change>>(std::move(found));
    if (changes_)
        showing_.start();
    else
        showing_.stop();
    return had || changes_;
}

void Before::forget() {
    base_ = last_ = nullptr;
    sinceLast_.invalidate();
    if (changes_) end();
}

void Before::end() {
    showing_.stop();
    changes_ = nullptr;
    Q_EMIT faded();
}

}  // namespace tiepoint::ui
