#include "app/json_writer.h"

#include "core/base/json_text.h"

#include <cassert>
#include <cmath>
#include <utility>

namespace tiepoint::app {
namespace {

constexpr std::size_t kIndent = 2;

}  // namespace

JsonWriter& JsonWriter::key(std::string_view name) {
    separate();
    text_ += jsonString(name);
    text_ += ": ";
    afterKey_ = true;
    return *this;
}

JsonWriter& JsonWriter::value(double number) {
    if (!std::isfinite(number)) return null();
    separate();
    // Adding 0 turns a negative zero, which says nothing here, into a plain one.
    text_ += jsonNumber(number + 0.0);
    return *this;
}

JsonWriter& JsonWriter::value(int number) {
    separate();
    text_ += std::to_string(number);
    return *this;
}

JsonWriter& JsonWriter::value(bool yes) { return raw(yes ? "true" : "false"); }

JsonWriter& JsonWriter::value(std::string_view text) {
    separate();
    text_ += jsonString(text);
    return *this;
}

JsonWriter& JsonWriter::null() { return raw("null"); }

JsonWriter& JsonWriter::raw(std::string_view json) {
    separate();
    text_ += json;
    return *this;
}

std::string JsonWriter::take() {
    assert(levels_.empty());
    text_ += '\n';
    return std::exchange(text_, {});
}

JsonWriter& JsonWriter::open(char bracket, Form form) {
    separate();
    text_ += bracket;
    // Inside a row everything stays on its line.
    if (!levels_.empty() && levels_.back().form == Form::Row) form = Form::Row;
    levels_.push_back({form});
    return *this;
}

JsonWriter& JsonWriter::close(char bracket) {
    assert(!levels_.empty() && !afterKey_);
    const Level level = levels_.back();
    levels_.pop_back();
    if (level.form == Form::Block && !level.empty) newLine();
    text_ += bracket;
    return *this;
}

void JsonWriter::separate() {
    if (std::exchange(afterKey_, false) || levels_.empty()) return;
    Level& level = levels_.back();
    if (!level.empty) text_ += ',';
    if (level.form == Form::Block) {
        newLine();
    } else if (!level.empty) {
        text_ += ' ';
    }
    level.empty = false;
}

void JsonWriter::newLine() {
    text_ += '\n';
    text_.append(kIndent * levels_.size(), ' ');
}

}  // namespace tiepoint::app
