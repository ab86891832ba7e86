#pragma once
// What small files of the program have in common in reading: the first thing that is wrong with one, told with its place once the file's head has
// been judged. Internal to reading.

#include "core/base/json_scan.h"
#include "core/bench/file_head.h"
#include "core/bench/read_helpers.h"

#include <optional>
#include <string>
#include <string_view>
#include <utility>

namespace tiepoint {

class FirstTrouble {
public:
    explicit FirstTrouble(std::string_view text) : text_(text) {}

    /// Keeps what is wrong below a pointer, if nothing was wrong before.
    void hold(reading::Failure failure, const std::string& pointer = {}) {
        if (!failure || trouble_) return;
        failure->pointer = pointer + failure->pointer;
        trouble_ = std::move(failure);
    }

    /// Scans the text, hands on each piece, and says what is wrong with it: that it is no JSON, another kind of file, or what was held first.
    template <class Lists, class Take>
    std::optional<Error> scan(const Lists& lists, const FileHead& head, std::string_view format, std::string_view what,
                              Take take) {
        if (auto error = scanJson(text_, lists, take)) return error;
        if (auto trouble = head.judge(format, what)) return located(text_, std::move(*trouble));
        if (trouble_) return located(text_, std::move(*trouble_));
        return std::nullopt;
    }

private:
    std::string_view text_;
    reading::Failure trouble_;
};

}  // namespace tiepoint
