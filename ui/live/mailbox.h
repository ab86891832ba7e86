#pragma once
// A mailbox for one value that one thread puts in and another takes out: the newest wins, and what wasn't taken in time is gone. So a slow
// reader never has more than one value waiting for it. Safe from any thread; its lock guards nothing but the slot.

#include <mutex>
#include <utility>

namespace tiepoint::ui {

template <class Value>
class Mailbox {
public:
    /// Whether the box was empty, and its reader has to be told.
    [[nodiscard]] bool put(Value value) {
        {
            const std::lock_guard guard(mutex_);
            std::swap(value_, value);
            if (std::exchange(full_, true)) return false;  // what was there before goes, after the lock
        }
        return true;
    }

    /// What was put in last. Only after it was said that there is something.
    Value take() {
        const std::lock_guard guard(mutex_);
        full_ = false;
        return std::exchange(value_, Value());
    }

private:
    std::mutex mutex_;
    Value value_{};
    bool full_ = false;
};

}  // namespace tiepoint::ui
