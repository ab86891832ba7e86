#pragma once
// What a lesson's reader is made from: values with all that they hold, lists of texts, counts, and predictions. Internal to core/course.

#include "core/bench/read_helpers.h"
#include "core/course/lesson.h"

#include <string>
#include <string_view>
#include <vector>

namespace tiepoint {

/// A value that was scanned as part of a larger text, with everything below it; offsets stay those of the larger text.
JsonValue wholeJson(std::string_view text, const JsonValue& value);

std::optional<Trouble> readCount(const JsonValue& value, const std::string& pointer, int most, int& count);
std::optional<Trouble> readTexts(const JsonValue& value, const std::string& pointer, std::vector<std::string>& texts);
Trouble unknownMember(const JsonValue& member, const std::string& pointer, std::string_view of);

/// Names and counts are judged here; whether the wrong idea's ids and holes are on the bench isn't.
std::optional<Trouble> readPrediction(const JsonValue& value, const std::string& at, std::string_view text,
                                      Prediction& ask);

}  // namespace tiepoint
