#pragma once
// Work that can be given up. Who begins work that may take long opens a StopScope with a token; the loops inside call stopIfAsked() at each
// turn, which throws Stopped once the token says that nobody wants the result any more. So a search through thousands of trials ends
// within a few milliseconds from wherever it is, and everything it has made goes on the way out. Work outside of a scope never stops.
//
// The token belongs to the thread and not to each function's arguments: what is reckoned stays a pure function of what it is given, whether
// or not someone waits for it.

#include <stop_token>

namespace tiepoint {

/// What stopIfAsked() throws; caught by who opened the scope.
struct Stopped {};

/// While it lives, what this thread works on stops when the token says so. Scopes nest; the innermost counts.
class StopScope {
public:
    explicit StopScope(std::stop_token token);
    ~StopScope();
    StopScope(const StopScope&) = delete;
    StopScope& operator=(const StopScope&) = delete;

private:
    std::stop_token token_;
    const std::stop_token* outer_;
};

/// Throws Stopped if this thread's work is not wanted any more. Takes a nanosecond or two: call it in every loop whose turns may be many
/// or dear.
void stopIfAsked();

}  // namespace tiepoint
