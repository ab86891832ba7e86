#include "core/base/csv.h"

#include "core/base/printable.h"

namespace tiepoint {

std::string csvText(std::string_view text) {
    std::string field = printableLines(text);
    if (!field.empty() && std::string_view("=+-@").find(field.front()) != std::string_view::npos)
        field.insert(0, 1, '\'');
    if (field.find_first_of(",\"\n") == std::string::npos) return field;
    std::string quoted = "\"";
    for (const char each : field) {
        if (each == '"') quoted += '"';
        quoted += each;
    }
    return quoted + '"';
}

std::string csvLine(const std::vector<std::string>& fields) {
    std::string line;
    for (const std::string& field : fields) {
        if (&field != &fields.front()) line += ',';
        line += field;
    }
    return line + "\r\n";
}

}  // namespace tiepoint
