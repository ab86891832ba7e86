// What is kept of a lesson by table: counted, summed, written and read; hostile bytes are refused.

#include "core/course/class_record.h"

#include <gtest/gtest.h>

namespace tiepoint {
namespace {

TEST(ClassRecord, TablesAddUpAndReplaceTheWholeClass) {
    Vote vote;
    EXPECT_TRUE(vote.isEmpty());
    EXPECT_EQ(vote.total(0), -1);
    vote.set(kWholeClass, 1, 12);
    EXPECT_EQ(vote.total(1), 12);
    EXPECT_FALSE(vote.isByTable());
    vote.set(3, 0, 2);
    EXPECT_TRUE(vote.isByTable());
    EXPECT_EQ(vote.total(1), -1) << "counted anew, table by table";
    vote.set(4, 0, 1);
    vote.set(4, 1, 0);
    EXPECT_EQ(vote.total(0), 3);
    EXPECT_EQ(vote.total(1), 0);
    EXPECT_EQ(vote.of(3, 0), 2);
    EXPECT_EQ(vote.of(3, 1), -1);
    EXPECT_EQ(vote.of(9, 0), -1);
    vote.set(kWholeClass, 0, 7);
    EXPECT_EQ(vote.total(0), 7);
}

ClassRecord lively() {
    ClassRecord record;
    record.lesson = "One \"loop\"";
    record.step = 3;
    record.votes[1][0].set(kWholeClass, 2, 9);
    record.votes[1][1].set(2, 0, 1);
    record.votes[1][1].set(15, 3, 2);
    record.looked = {{2, 1}, {2, 15}, {4, 3}};
    record.paper = {"Which gets more current?", "Where does it end up?"};
    return record;
}

TEST(ClassRecord, ComesBackAsItWasWritten) {
    for (const ClassRecord& record : {ClassRecord{}, lively()}) {
        const auto again = readClassRecord(writeClassRecord(record));
        ASSERT_TRUE(again.ok()) << again.error().oneLine();
        EXPECT_EQ(*again, record);
    }
}

TEST(ClassRecord, WhatIsDamagedIsRefused) {
    const std::string sound = writeClassRecord(lively());
    for (const auto& [from, to] :
         std::initializer_list<std::pair<std::string, std::string>>{{"tiepoint-class", "tiepoint-kit"},
                                                                    {"\"vote\": 2", "\"vote\": 3"},
                                                                    {"\"step\": 4", "\"step\": -4"},
                                                                    {"\"table\": 15", "\"table\": 1500"},
                                                                    {"\"hands\": [1]", "\"hands\": [1e9]"},
                                                                    {"\"hands\": [1]", "\"hands\": {}"},
                                                                    {"\"tables\"", "\"names\""},
                                                                    {"\"lesson\"", "\"pupil\""}}) {
        std::string damaged = sound;
        const auto at = damaged.find(from);
        ASSERT_NE(at, std::string::npos) << from;
        damaged.replace(at, from.size(), to);
        const auto read = readClassRecord(damaged);
        ASSERT_FALSE(read.ok()) << to;
        EXPECT_GT(read.error().place.line, 0) << to;
    }
    EXPECT_FALSE(readClassRecord("").ok());
    EXPECT_FALSE(readClassRecordFile("/dev/zero").ok());
}

}  // namespace
}  // namespace tiepoint
