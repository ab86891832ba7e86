#pragma once
// A value or an error. Every function that can fail for a reason outside the program returns one.

#include <cassert>
#include <string>
#include <utility>
#include <variant>

namespace tiepoint {

enum class ErrorKind {
    Io,         ///< a file can't be read or written
    Syntax,     ///< the text is not JSON
    Format,     ///< JSON, but not a bench: wrong type, missing or unknown member, another format or version
    Reference,  ///< names something that doesn't exist, or exists twice
    Placement,  ///< a lead can't be where it is said to be
    Range,      ///< a number outside its range
};

/// Where an error lies: a JSON pointer ("/parts/3/leads/anode"), and line and column from 1 (0: unknown).
struct Place {
    std::string pointer;
    int line = 0;
    int column = 0;
};

/// What went wrong, in one plain sentence without file and place.
struct [[nodiscard]] Error {
    ErrorKind kind = ErrorKind::Format;
    std::string message;
    Place place = {};
    std::string file = {};

    /// "file:line:column: /pointer: message" with the unknown pieces left out; never holds a line break.
    std::string oneLine() const;
};

/// A value of T or an Error. Ask ok() before value() or error(); a wrong guess is a programmer's error.
template <class T>
class [[nodiscard]] Result {
public:
    Result(T value) : content_(std::move(value)) {}
    Result(Error error) : content_(std::move(error)) {}

    bool ok() const { return content_.index() == 0; }
    explicit operator bool() const { return ok(); }

    const T& value() const& {
        assert(ok());
        return std::get<0>(content_);
    }
    T& value() & {
        assert(ok());
        return std::get<0>(content_);
    }
    T&& value() && {
        assert(ok());
        return std::get<0>(std::move(content_));
    }
    const Error& error() const {
        assert(!ok());
        return std::get<1>(content_);
    }

    const T* operator->() const { return &value(); }
    const T& operator*() const& { return value(); }

private:
    std::variant<T, Error> content_;
};

/// Success without a value.
struct Done {};

}  // namespace tiepoint
