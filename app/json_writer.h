#pragma once
// Writes JSON in the order in which it is told, in linear time. Numbers are the shortest text that reads back exactly;
// what is no number is null. A list or object opened as a Row stands on one line.

#include <string>
#include <string_view>
#include <vector>

namespace tiepoint::app {

class JsonWriter {
public:
    enum class Form { Block, Row };

    JsonWriter& beginObject(Form form = Form::Block) { return open('{', form); }
    JsonWriter& endObject() { return close('}'); }
    JsonWriter& beginArray(Form form = Form::Block) { return open('[', form); }
    JsonWriter& endArray() { return close(']'); }
    JsonWriter& key(std::string_view name);

    JsonWriter& value(double number);
    JsonWriter& value(int number);
    JsonWriter& value(bool yes);
    JsonWriter& value(std::string_view text);
    JsonWriter& value(const char* text) { return value(std::string_view(text)); }
    JsonWriter& null();
    /// Puts text in that is JSON already.
    JsonWriter& raw(std::string_view json);

    template <class T>
    JsonWriter& field(std::string_view name, const T& content) {
        return key(name).value(content);
    }
    /// A list of texts on one line.
    template <class List>
    JsonWriter& texts(std::string_view name, const List& list) {
        key(name).beginArray(Form::Row);
        for (const auto& text : list) value(std::string_view(text));
        return endArray();
    }

    /// The finished text, with a line break at its end.
    std::string take();

private:
    struct Level {
        Form form = Form::Block;
        bool empty = true;
    };

    JsonWriter& open(char bracket, Form form);
    JsonWriter& close(char bracket);
    /// What stands before the next member: a comma, a line break, the indent. Nothing right behind a key.
    void separate();
    void newLine();

    std::string text_;
    std::vector<Level> levels_;
    bool afterKey_ = false;
};

}  // namespace tiepoint::app
