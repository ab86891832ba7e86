// The program's own malloc stands before that of the C library, which is there under another name as well.

#include "core/allocations.h"

#include <cstddef>

namespace tiepoint::test {
namespace {

thread_local std::int64_t askedFor = 0;

}  // namespace

std::int64_t allocations() { return askedFor; }

}  // namespace tiepoint::test

#if defined(__SANITIZE_ADDRESS__) || defined(__SANITIZE_THREAD__)

bool tiepoint::test::countsAllocations() { return false; }

#else

bool tiepoint::test::countsAllocations() { return true; }

extern "C" {

void* __libc_malloc(std::size_t bytes) noexcept;
void* __libc_calloc(std::size_t count, std::size_t bytes) noexcept;
void* __libc_realloc(void* at, std::size_t bytes) noexcept;
void* __libc_memalign(std::size_t alignment, std::size_t bytes) noexcept;

void* malloc(std::size_t bytes) noexcept {
    ++tiepoint::test::askedFor;
    return __libc_malloc(bytes);
}

void* calloc(std::size_t count, std::size_t bytes) noexcept {
    ++tiepoint::test::askedFor;
    return __libc_calloc(count, bytes);
}

void* realloc(void* at, std::size_t bytes) noexcept {
    ++tiepoint::test::askedFor;
    return __libc_realloc(at, bytes);
}

void* aligned_alloc(std::size_t alignment, std::size_t bytes) noexcept {
    ++tiepoint::test::askedFor;
    return __libc_memalign(alignment, bytes);
}

}  // extern "C"

#endif
