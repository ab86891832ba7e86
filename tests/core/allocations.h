#pragma once
// Counts what a thread asks the heap for, whoever asks: new, or malloc itself. Only in the program of the core's tests.

#include <cstdint>

namespace tiepoint::test {

/// How often this thread has asked so far. Sanitizers keep the heap for themselves; with them it is always 0.
std::int64_t allocations();

/// Whether they are counted: not under a sanitizer.
bool countsAllocations();

}  // namespace tiepoint::test
