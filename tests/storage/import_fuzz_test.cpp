// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later

#include "storage/exchange/csv_reader.h"
#include "storage/exchange/import.h"
#include "tests/support/logbook_fixture.h"
#include "tests/support/random.h"

#include <SQLiteCpp/SQLiteCpp.h>

#include <algorithm>
#include <map>

namespace levelbar::storage::import_fuzz_test {
namespace {

using tests::kNow;
using tests::Random;

constexpr int kFiles = 2000;

const std::array<std::string, 3> kValid = {
    "member_id,name,sex,birth_date,height_cm,body_mass_kg,dominant_side,level,goal,group,classes,"
    "note\nM1,Ann,female,1990-05-04,171.5,64.2,left,novice,general,Works,Bars|Noon,\"a "
    "\"\"b\"\"\"\n"
    "M2,\"Ben, Jr\",male,,180,,right,advanced,,,Bars,\"two\nlines\"\nM3,שלום,,,,,,,,,,\n",
    "date,member_id,exercise,set,side,load,unit,reps,rir,class,order,seconds,metres,known,kind,"
    "stopped,clean,hook_hole,bench_angle,pain,pain_area,pain_side,start,keyed_at,keyed_by,note\n"
    "2026-10-01,M1,Barbell bench press,1,both,62.5,kg,8,1.5,Bars,1,,,counted,work,planned,yes,9,,"
    "2,wrist,left,18:30,2026-10-01T18:40:00Z,IK,\"x, y\"\n"
    "2026-10-01,M2,Floor press,1,both,135,lb,10,,Bars,2,,,sheet,open,no more,no,,-10,,,,,,,\n"
    "2026-10-02,M3,Single-leg press,12,left,40,kg,0,0,,,,,,test,,,,,,,,,,,\n",
    "date,member_id,test,side,trial,value,unit,valid,note\n"
    "2026-10-01,M1,Grip strength,left,1,31.5,kg,yes,\n"
    "2026-10-01,M2,One-rep max: Floor press,both,1,155,lb,yes,\"n\"\"o\"\n"
    "2026-10-02,M2,Push-ups to failure,both,1,22,,no,tired\n"};

// What hurts parsers most.
const std::array<std::string, 24> kPieces = {"\"",
                                             "\"\"",
                                             ",",
                                             ";",
                                             "\t",
                                             "\r",
                                             "\n",
                                             "\r\n",
                                             std::string(1, '\0'),
                                             "\xEF\xBB\xBF",
                                             "\xFF",
                                             "\xED\xA0\x80",
                                             "\xC0\xAF",
                                             "\x1B",
                                             "-",
                                             "1e9",
                                             "99999999999999999999",
                                             "0x10",
                                             "NaN",
                                             "|",
                                             "💪",
                                             "2026-02-30",
                                             "'",
                                             " "};

std::string replaced(const std::string& text, const std::string& from, const std::string& to)
{
    std::string result;
    for (std::size_t at = 0; at < text.size();) {
        const bool isThere = text.compare(at, from.size(), from) == 0;
        result += isThere ? to : std::string(1, text[at]);
        at += isThere ? from.size() : 1;
    }
    return result;
}

std::size_t placeIn(const std::string& text, Random& random)
{
    return static_cast<std::size_t>(random.below(static_cast<int>(text.size()) + 1));
}

void mutateOnce(std::string& text, Random& random)
{
    const std::size_t at = placeIn(text, random);
    const std::size_t length =
        std::min<std::size_t>(static_cast<std::size_t>(random.below(20)), text.size() - at);
    switch (random.below(10)) {
    case 0: // a byte becomes another
        if (at < text.size()) {
            text[at] = static_cast<char>(random.below(256));
        }
        break;
    case 1:
        text.erase(at, length);
        break;
    case 2: // again somewhere else
        text.insert(placeIn(text, random), text.substr(at, length));
        break;
    case 3: // other separators, with or without other line ends
        text = replaced(text, ",", random.chance(0.5) ? ";" : "\t");
        break;
    case 4:
        text = replaced(text, "\n", random.chance(0.5) ? "\r" : "\r\n");
        break;
    case 5:
        text.insert(0, "\xEF\xBB\xBF");
        break;
    case 6:
        text.resize(at);
        break;
    case 7: // now and then longer than any record may be
        text.insert(at, std::string(random.chance(0.03) ? kLongestRecord + 1 : 300, 'x'));
        break;
    default:
        text.insert(at, random.pick<std::string>(kPieces));
    }
}

std::map<std::string, std::int64_t> rowsOf(const Logbook& logbook)
{
    std::map<std::string, std::int64_t> rows;
    SQLite::Statement tables(logbook.database(),
                             "SELECT name FROM sqlite_schema WHERE type = 'table'");
    while (tables.executeStep()) {
        const std::string name = tables.getColumn(0).getString();
        rows[name] = logbook.database().execAndGet("SELECT count(*) FROM " + name).getInt64();
    }
    return rows;
}

// Of the whole record or the whole file: there is no one column to name.
bool isOfTheRecord(FaultCode code)
{
    constexpr std::array kCodes = {FaultCode::NotUtf8,
                                   FaultCode::ControlCharacter,
                                   FaultCode::NoHeader,
                                   FaultCode::MissingColumn,
                                   FaultCode::RepeatedKey,
                                   FaultCode::RepeatedColumn,
                                   FaultCode::BrokenQuote,
                                   FaultCode::LineTooLong,
                                   FaultCode::TooManyCells,
                                   FaultCode::DiffersFromStored};
    return std::find(kCodes.begin(), kCodes.end(), code) != kCodes.end();
}

void expectTold(const ImportFault& fault, const std::string& bytes)
{
    const auto lines = 1 + std::count_if(bytes.begin(), bytes.end(), [](char c) {
                           return c == '\n' || c == '\r';
                       });
    EXPECT_GE(fault.line, 1);
    EXPECT_LE(fault.line, lines);
    EXPECT_TRUE(!fault.column.empty() || isOfTheRecord(fault.fault.code)) << text(fault);
    const std::string told = text(fault);
    EXPECT_EQ(told.find_first_of("\n\r\x1B"), std::string::npos) << "one line: " << told;
    EXPECT_LT(told.size(), 600U) << told.substr(0, 200);
}

TEST(ImportFuzzTest, WhateverTheBytesAreAFileGoesInWholeOrNotAtAll)
{
    Logbook logbook = Logbook::inMemory(kNow);
    auto before = rowsOf(logbook);
    int refused = 0;
    for (int i = 0; i < kFiles; ++i) {
        SCOPED_TRACE("seed " + std::to_string(i));
        Random random(static_cast<std::uint64_t>(i));
        std::array<std::string, 3> files = kValid;
        std::string& victim = files.at(static_cast<std::size_t>(random.below(3)));
        for (int change = random.below(4); change >= 0; --change) {
            mutateOnce(victim, random);
        }
        ImportRequest request;
        request.members = {"members.csv", files[0]};
        request.sets = {"sets.csv", files[1]};
        request.tests = {"tests.csv", files[2]};
        request.addExercises = random.chance(0.5);
        request.update = random.chance(0.5);
        const ImportReport report = importCsv(logbook, request, kNow);
        for (const ImportFault& fault : report.faults) {
            const std::size_t file = fault.file == "members.csv" ? 0
                                     : fault.file == "sets.csv"  ? 1
                                                                 : 2;
            expectTold(fault, files.at(file));
        }
        const auto after = rowsOf(logbook);
        if (report.faults.empty()) {
            EXPECT_EQ(after.at("done_set"), before.at("done_set") + report.sets.added);
            EXPECT_EQ(after.at("member"), before.at("member") + report.members.added);
            EXPECT_EQ(after.at("trial"), before.at("trial") + report.tests.added);
        } else {
            ++refused;
            EXPECT_EQ(after, before);
        }
        if (testing::Test::HasFailure()) {
            return; // the first one tells enough
        }
        before = after;
        if (after.at("done_set") > 200) {
            logbook = Logbook::inMemory(kNow);
            before = rowsOf(logbook);
        }
    }
    EXPECT_GT(refused, kFiles / 4) << "otherwise nothing was tried";
    EXPECT_LT(refused, kFiles);
}

} // namespace
} // namespace levelbar::storage::import_fuzz_test
