#pragma once
// A value that is large and shared, compared by what it holds; one that is the same object is equal without a look.

#include <memory>
#include <utility>

namespace tiepoint::ui {

template <class T>
class SharedValue {
public:
    SharedValue() = default;
    SharedValue(std::shared_ptr<const T> value) : value_(std::move(value)) {}
    const T* operator->() const { return value_.get(); }
    const T& operator*() const { return *value_; }
    explicit operator bool() const { return value_ != nullptr; }
    const std::shared_ptr<const T>& pointer() const { return value_; }
    friend bool operator==(const SharedValue& a, const SharedValue& b) {
        return a.value_ == b.value_ || (a.value_ && b.value_ && *a.value_ == *b.value_);
    }

private:
    std::shared_ptr<const T> value_;
};

}  // namespace tiepoint::ui
