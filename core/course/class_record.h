#pragma once
// What is kept of a lesson from one time to the next: the last step, hands counted for each answer, by table where the teacher wants it, and
// tables whose boards were looked at. By table, never by name, and never in the lesson's file. Plain values; pure functions.

#include "core/base/result.h"

#include <array>
#include <filesystem>
#include <map>
#include <set>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace tiepoint {

inline constexpr int kMostTables = 99;
inline constexpr int kWholeClass = 0;  ///< the table of hands that were counted all at once

/// The hands of one vote: of each table for each answer; -1 where none has been counted.
class Vote {
public:
    /// Of all tables together; -1 where no table was counted for that answer.
    int total(int answer) const;
    int of(int table, int answer) const;
    /// Counts of tables and one of the whole class don't go together: the later replaces the other.
    void set(int table, int answer, int hands);
    bool isEmpty() const { return hands_.empty(); }
    bool isByTable() const { return !hands_.empty() && !hands_.contains(kWholeClass); }
    const std::map<int, std::vector<int>>& hands() const { return hands_; }
    friend bool operator==(const Vote&, const Vote&) = default;

private:
    std::map<int, std::vector<int>> hands_;
};

struct ClassRecord {
    std::string lesson;                        ///< its title
    int step = -1;                             ///< the last that stood on the table, from 0; -1: none
    std::map<int, std::array<Vote, 2>> votes;  ///< by step: before the talk and after it
    std::set<std::pair<int, int>> looked;      ///< by step and table
    std::vector<std::string> paper;  ///< the lesson's questions on paper, asked again at the start of the next
    friend bool operator==(const ClassRecord&, const ClassRecord&) = default;
};

/// Reads a record (format "tiepoint-class"); strict, whole or not at all.
Result<ClassRecord> readClassRecord(std::string_view text);
Result<ClassRecord> readClassRecordFile(const std::filesystem::path& path);
/// readClassRecord(writeClassRecord(r)) == r.
std::string writeClassRecord(const ClassRecord& record);

}  // namespace tiepoint
