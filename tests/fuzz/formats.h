#pragma once
// What must hold of any bytes at all that one of the program's readers is given: it neither crashes nor hangs, an error says what is
// wrong and where in one line, and what is accepted is sound and survives being written and read again. The fuzz programs hand over what they
// make up, the tests what once went wrong (tests/fuzz/corpus).

#include <span>
#include <stdexcept>
#include <string>
#include <string_view>
#include <vector>

namespace tiepoint::fuzz {

/// Thrown where a promise doesn't hold; says which.
class BrokenPromise : public std::logic_error {
public:
    using std::logic_error::logic_error;
};

/// A format that the program reads.
struct Format {
    std::string_view name;                  ///< also of its folder in the corpus
    bool (*take)(std::string_view bytes);   ///< reads bytes; returns whether they were accepted, throws BrokenPromise
    std::vector<std::string> (*samples)();  ///< good texts to begin with
};

std::span<const Format> formats();
/// The format of that name; there must be one.
const Format& findFormat(std::string_view name);

}  // namespace tiepoint::fuzz
