#pragma once
// Things in the order of where they begin along x, so that those that reach into a stretch are found without looking at the rest.

#include <algorithm>
#include <utility>
#include <vector>

namespace tiepoint {

template <class T>
class InOrder {
public:
    void add(double left, double right, T thing) {
        widest_ = std::max(widest_, right - left);
        spans_.push_back({left, right, std::move(thing)});
    }
    /// Puts them in order. Call it once, after the last `add`.
    void sort() {
        std::stable_sort(spans_.begin(), spans_.end(), [](const Span& a, const Span& b) { return a.left < b.left; });
    }
    /// Shows each thing that reaches into the stretch, in the order of their left ends.
    template <class See>
    void within(double left, double right, See&& see) const {
        auto span = std::partition_point(spans_.begin(), spans_.end(),
                                         [&](const Span& each) { return each.left < left - widest_; });
        for (; span != spans_.end() && span->left <= right; ++span) {
            if (span->right >= left) see(span->thing);
        }
    }
    template <class See>
    void each(See&& see) const {
        for (const Span& span : spans_) see(span.thing);
    }
    template <class See>
    void eachSpan(See&& see) const {
        for (const Span& span : spans_) see(span.left, span.right, span.thing);
    }
    bool empty() const { return spans_.empty(); }

private:
    struct Span {
        double left, right;
        T thing;
    };
    std::vector<Span> spans_;
    double widest_ = 0;
};

}  // namespace tiepoint
