// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later

#include "storage/exchange/csv_reader.h"
#include "storage/exchange/export.h"
#include "storage/exchange/import.h"
#include "tests/support/logbook_fixture.h"

#include <SQLiteCpp/SQLiteCpp.h>
#include <gtest/gtest.h>

#include <sstream>

namespace levelbar::storage::exchange_test {
namespace {

using tests::kNow;

struct Reading {
    CsvHeader header;
    std::vector<std::pair<int, std::vector<std::string>>> records;
    std::vector<std::pair<int, FaultCode>> faults;
};

Reading read(std::string_view text)
{
    Reading reading;
    readCsv(text,
            {[&](const CsvHeader& header) {
                 reading.header = header;
                 return true;
             },
             [&](int line, std::span<const std::string> cells) {
                 reading.records.emplace_back(line, std::vector(cells.begin(), cells.end()));
             },
             [&](int line, const Fault& fault) { reading.faults.emplace_back(line, fault.code); }});
    return reading;
}

TEST(CsvReaderTest, FollowsRfc4180)
{
    // RFC 4180, section 2: quotes, doubled quotes, line breaks inside quotes, CRLF.
    const Reading reading =
        read("a,b,c\r\n\"x,1\",\"say \"\"hi\"\"\",\"two\r\nlines\"\r\n1, 2 ,3\r\n");
    ASSERT_EQ(reading.records.size(), 2U);
    EXPECT_EQ(reading.records[0].second,
              (std::vector<std::string>{"x,1", "say \"hi\"", "two\r\nlines"}));
    EXPECT_EQ(reading.records[0].first, 2);
    EXPECT_EQ(reading.records[1].second, (std::vector<std::string>{"1", "2", "3"}));
    EXPECT_EQ(reading.records[1].first, 4) << "the line where the record starts";
}

TEST(CsvReaderTest, FindsTheSeparatorAndTheByteOrderMark)
{
    EXPECT_EQ(read("\xEF\xBB\xBF"
                   "a;b\n1;2\n")
                  .header.columns,
              (std::vector<std::string>{"a", "b"}));
    EXPECT_TRUE(read("a;b\n").header.allowsDecimalComma());
    EXPECT_EQ(read("a\tb\n1\t2\n").records[0].second, (std::vector<std::string>{"1", "2"}));
    EXPECT_FALSE(read("a,b\n").header.allowsDecimalComma());
}

TEST(CsvReaderTest, SaysWhatIsBrokenAndWhere)
{
    EXPECT_EQ(read("").faults, (std::vector<std::pair<int, FaultCode>>{{1, FaultCode::Empty}}));
    EXPECT_EQ(read("a,b\n1,2,3\n").faults[0], std::pair(2, FaultCode::TooManyCells));
    EXPECT_EQ(read("a,b\n1,\"2\n3,4\n").faults[0], std::pair(2, FaultCode::BrokenQuote));
    EXPECT_EQ(read(std::string_view("a,b\n1,\0\n3,4\n", 12)).faults[0],
              std::pair(2, FaultCode::ControlCharacter));
    EXPECT_EQ(read("a,b\n\xFF,2\n").faults[0], std::pair(2, FaultCode::NotUtf8));
    const Reading wide = read("a,b\n" + std::string(10'000'000, 'x') + ",1\n3,4\n");
    EXPECT_EQ(wide.faults, (std::vector<std::pair<int, FaultCode>>{{2, FaultCode::LineTooLong}}));
    EXPECT_EQ(wide.records.size(), 1U) << "reading goes on after it";
    EXPECT_EQ(read("a,b,c\n1\n").records[0].second, (std::vector<std::string>{"1", "", ""}));
}

TEST(CsvReaderTest, FindsTheSeparatorBelowEmptyLines)
{
    EXPECT_EQ(read("\n\r\na;b\n1;2\n").header.columns, (std::vector<std::string>{"a", "b"}));
}

TEST(CsvReaderTest, CallsTextInUtf16WhatItIs)
{
    EXPECT_EQ(read(std::string_view("\xFF\xFE"
                                    "a\0,\0",
                                    6))
                  .faults[0]
                  .second,
              FaultCode::NotUtf8);
}

class ImportTest : public testing::Test {
protected:
    ImportReport import(std::string_view members,
                        std::string_view sets = {},
                        std::string_view tests = {},
                        bool update = false,
                        bool addExercises = false)
    {
        ImportRequest request;
        if (!members.empty()) {
            request.members = {"members.csv", members};
        }
        if (!sets.empty()) {
            request.sets = {"sets.csv", sets};
        }
        if (!tests.empty()) {
            request.tests = {"tests.csv", tests};
        }
        request.update = update;
        request.addExercises = addExercises;
        return importCsv(m_logbook, request, kNow);
    }

    std::string everything()
    {
        std::ostringstream out;
        writeMembers(m_logbook, out);
        writeSets(m_logbook, out);
        writeTrials(m_logbook, out);
        return out.str();
    }

    // One fault, as it is printed, and nothing written.
    void expectFault(std::string_view sets, const std::string& line)
    {
        const std::string before = everything();
        const ImportReport report = import({}, sets);
        ASSERT_EQ(report.faults.size(), 1U) << sets;
        EXPECT_EQ(text(report.faults[0]), line);
        EXPECT_EQ(everything(), before);
    }

    Logbook m_logbook = Logbook::inMemory(kNow);
};

constexpr std::string_view kMembers =
    "member_id,name,sex,height_cm,level,classes\nM1,Zoë,female,171.5,novice,Bars|Noon\n";
constexpr std::string_view kHeader = "date,member_id,exercise,set,side,load,unit,reps,rir,class\n";

std::string sets(const char* row)
{
    return std::string(kHeader) + row + "\n";
}

TEST_F(ImportTest, TakesPeopleSetsAndTestsInOneCall)
{
    const ImportReport report =
        import(kMembers,
               sets("2026-11-25,M1,barbell BENCH press,1,both,135,lb,8,1.5,Bars"),
               "date,member_id,test,side,trial,value\n2026-11-25,M1,Grip strength,left,1,31.5\n"
               "2026-11-25,M1,One-rep max: Barbell bench press,both,1,70\n");
    EXPECT_TRUE(report.faults.empty()) << text(report.faults.front());
    EXPECT_EQ(report.members.added, 1);
    EXPECT_EQ(report.sets.added, 1);
    EXPECT_EQ(report.tests.added, 2);
    EXPECT_EQ(report.classesAdded, 2);
    const auto stored = SetStore(m_logbook).ofMember(MemberStore(m_logbook).find("M1")->id);
    EXPECT_EQ(stored[0].performed.load.number(), "135");
    EXPECT_EQ(stored[0].performed.reserve, Reserve{15});
    EXPECT_EQ(stored[0].performed.known, HowKnown::Counted);
}

TEST_F(ImportTest, TheSameAgainChangesNothing)
{
    const std::string row = sets("2026-11-25,M1,Barbell bench press,1,both,60,kg,8,,Bars");
    import(kMembers, row);
    const std::string before = everything();
    const ImportReport report =
        import(kMembers, sets("2026-11-25,M1,Barbell bench press,1,both,60.0,,8,,Bars"));
    EXPECT_TRUE(report.faults.empty());
    EXPECT_EQ(report.sets.unchanged, 1);
    EXPECT_EQ(report.members.unchanged, 1);
    EXPECT_EQ(everything(), before);
}

TEST_F(ImportTest, OtherValuesNeedUpdate)
{
    import(kMembers, sets("2026-11-25,M1,Barbell bench press,1,both,60,kg,8,,Bars"));
    const std::string changed = sets("2026-11-25,M1,Barbell bench press,1,both,60,kg,9,,Bars");
    expectFault(
        changed,
        "sets.csv:2: column 'reps': '9' differs from what is stored, '8' (--update takes the new "
        "value)");
    const ImportReport report = import({}, changed, {}, true);
    EXPECT_EQ(report.sets.updated, 1);
}

TEST_F(ImportTest, EmptyCellsOfPeopleLeaveWhatIsStored)
{
    import(kMembers);
    EXPECT_TRUE(import("member_id,name,sex\nM1,,\n").faults.empty());
    EXPECT_EQ(MemberStore(m_logbook).find("M1")->name, "Zoë");
    EXPECT_EQ(import("member_id,name\nM1,Zoe\n").faults.size(), 1U);
}

TEST_F(ImportTest, EveryFaultIsAClearLineAndNothingIsWritten)
{
    import(kMembers);
    expectFault(sets("31/02/2026,M1,Barbell bench press,1,both,60,kg,8,,"),
                "sets.csv:2: column 'date': '31/02/2026' is not a date like 2026-11-25");
    expectFault(sets("2026-02-31,M1,Barbell bench press,1,both,60,kg,8,,"),
                "sets.csv:2: column 'date': '2026-02-31' is not a date like 2026-11-25");
    expectFault(sets("2026-11-25,M9,Barbell bench press,1,both,60,kg,8,,"),
                "sets.csv:2: column 'member_id': there is no member 'M9'");
    expectFault(sets("2026-11-25,M1,Space press,1,both,60,kg,8,,"),
                "sets.csv:2: column 'exercise': there is no exercise 'Space press'");
    expectFault(sets("2026-11-25,M1,Barbell bench press,1,both,-60,kg,8,,"),
                "sets.csv:2: column 'load': '-60' lies outside 0 to 1000");
    expectFault(sets("2026-11-25,M1,Barbell bench press,1,both,60,kg,1000000000,,"),
                "sets.csv:2: column 'reps': '1000000000' is not a whole number from 0 to 200");
    expectFault(sets("2026-11-25,M1,Barbell bench press,1,both,60,kg,ten,,"),
                "sets.csv:2: column 'reps': 'ten' is not a whole number from 0 to 200");
    expectFault(sets("2026-11-25,M1,Barbell bench press,1,middle,60,kg,8,,"),
                "sets.csv:2: column 'side': 'middle' is none of left, right, both");
    expectFault("date,member,exercise,set\n2026-11-25,M1,x,1\n",
                "sets.csv:1: the column 'member_id' is missing");
}

TEST_F(ImportTest, AFaultIsOneShortLineWhateverTheCellHolds)
{
    import(kMembers);
    expectFault(sets("2026-11-25,\"M\n\x1B\xE2\x80\xA8"
                     "9\",Barbell bench press,1,both,60,kg,8,,"),
                "sets.csv:2: column 'member_id': there is no member 'M\xEF\xBF\xBD\xEF\xBF\xBD"
                "\xEF\xBF\xBD"
                "9'");
    const std::string wide(100'000, 'x');
    const std::string cut = std::string(40, 'x') + "…";
    expectFault(sets(("2026-11-25,M1,Push-up,1," + wide + ",0,kg,8,,").c_str()),
                "sets.csv:2: column 'side': '" + cut + "' is none of left, right, both");
    expectFault(sets(("2026-11-25,M1,Push-up,1,both,0," + wide + ",8,,").c_str()),
                "sets.csv:2: column 'unit': '" + cut + "' is none of kg, lb");
}

TEST_F(ImportTest, NamesStandOnOneLineAndNotesMayHaveMore)
{
    import(kMembers);
    expectFault(sets("2026-11-25,M1,Push-up,1,both,0,kg,8,,\"No\non\""),
                "sets.csv:2: column 'class': the text holds a control character");
    EXPECT_EQ(import("member_id,name\nM2,\"A\nB\"\n").faults.size(), 1U);
    const std::string note = "member_id,note\nM2,\"one\r\ntwo\rthree\"\n";
    EXPECT_TRUE(import(note).faults.empty());
    EXPECT_EQ(MemberStore(m_logbook).find("M2")->note, "one\ntwo\nthree");
    EXPECT_EQ(import(note).members.unchanged, 1);
}

TEST_F(ImportTest, AClassOfMembersMayBeNamedInSets)
{
    const std::string longest(200, 'c');
    const ImportReport report =
        import("member_id,classes\nM1," + longest + "\n",
               sets(("2026-11-25,M1,Push-up,1,both,0,kg,8,," + longest).c_str()));
    EXPECT_TRUE(report.faults.empty());
    EXPECT_EQ(report.classesAdded, 1);
}

TEST_F(ImportTest, ARepeatedKeyIsFoundAmongThousands)
{
    import(kMembers);
    std::string rows(kHeader);
    for (int day = 1; day <= 9; ++day) {
        for (int number = 1; number <= 999; ++number) {
            rows += "2026-11-0" + std::to_string(day) + ",M1,Push-up," + std::to_string(number) +
                    ",both,0,kg,8,,\n";
        }
    }
    rows += "2026-11-05,M1,push-UP,500,both,0,kg,8,,\n";
    const ImportReport report = import({}, rows);
    ASSERT_EQ(report.faults.size(), 1U);
    EXPECT_EQ(text(report.faults[0]),
              "sets.csv:8993: the same row stands in line 4497 already"); // 1 + 4 * 999 + 500
}

TEST_F(ImportTest, AllFaultsAreListedNotOnlyTheFirst)
{
    import(kMembers);
    const ImportReport report =
        import({},
               std::string(kHeader) + "2026-13-01,M1,Barbell bench press,1,both,60,kg,8,,\n"
                                      "2026-11-25,M1,Barbell bench press,1,both,60,kg,8,,\n"
                                      "2026-11-25,M1,Barbell bench press,1,both,60,kg,8,,\n"
                                      "2026-11-25,M1,Barbell bench press,2,both,x,kg,y,z,\n");
    ASSERT_EQ(report.faults.size(), 5U);
    EXPECT_EQ(text(report.faults[1]), "sets.csv:4: the same row stands in line 3 already");
    EXPECT_EQ(report.faults[4].line, 5);
    EXPECT_TRUE(SetStore(m_logbook).ofMember(MemberStore(m_logbook).find("M1")->id).empty());
}

TEST_F(ImportTest, UnknownColumnsAreReportedAndPassedOver)
{
    const ImportReport report = import("member_id,mood\nM1,sunny\n");
    EXPECT_TRUE(report.faults.empty());
    ASSERT_EQ(report.passedOver.size(), 1U);
    EXPECT_EQ(report.passedOver[0],
              "members.csv:1: column 'mood' is not known and was passed over");
}

TEST_F(ImportTest, DecimalCommasAreTakenWithSemicolons)
{
    const ImportReport report = import(
        "member_id;height_cm;note\nM1;171,5;one, two\n",
        "date;member_id;exercise;set;load;reps\n2026-11-25;M1;Barbell bench press;1;62,5;8\n");
    ASSERT_TRUE(report.faults.empty()) << text(report.faults.front());
    EXPECT_EQ(MemberStore(m_logbook).find("M1")->statureTenthMillimetres, 17150);
    EXPECT_EQ(MemberStore(m_logbook).find("M1")->note, "one, two");
    EXPECT_EQ(SetStore(m_logbook)
                  .ofMember(MemberStore(m_logbook).find("M1")->id)[0]
                  .performed.load.number(),
              "62.5");
}

TEST_F(ImportTest, AddsExercisesWithTheSidesSeen)
{
    import(kMembers);
    const ImportReport report =
        import({},
               std::string(kHeader) + "2026-11-25,M1,Landmine push,1,left,20,kg,8,,\n"
                                      "2026-11-25,M1,LANDMINE push,1,right,20,kg,8,,\n",
               {},
               false,
               true);
    ASSERT_TRUE(report.faults.empty()) << text(report.faults.front());
    EXPECT_EQ(report.exercisesAdded, 1);
    const auto added = LibraryStore(m_logbook).findExercise("landmine push");
    ASSERT_TRUE(added);
    EXPECT_EQ(added->sidedness, Sidedness::SingleSided);
    EXPECT_FALSE(added->isShipped);
}

TEST_F(ImportTest, TwoExercisesThatAreAddedMayHaveAMaximumEach)
{
    const ImportReport report = import("member_id\nM1\n",
                                       {},
                                       "date,member_id,test,value\n"
                                       "2026-11-25,M1,One-rep max: Moon press,70\n"
                                       "2026-11-25,M1,One-rep max: Sun press,80\n",
                                       false,
                                       true);
    EXPECT_TRUE(report.faults.empty());
    EXPECT_EQ(report.exercisesAdded, 2);
    EXPECT_EQ(report.tests.added, 2);
}

TEST_F(ImportTest, WhoCameStaysAsTheInstructorSaidWhenAFileComesAgain)
{
    const std::string file = sets("2026-11-25,M1,Barbell bench press,1,both,60,kg,8,2,Bars");
    import(kMembers, file);
    const ClassStore classes(m_logbook);
    const auto meeting =
        classes.meeting(classes.find("Bars")->id, parseDay("2026-11-25").value()).value();
    const MemberId member = MemberStore(m_logbook).find("M1")->id;
    EXPECT_EQ(classes.attendanceOf(meeting.id).front().came, true);
    Action action(m_logbook, ActionKind::MarkAttendance, kNow);
    ClassStore::setAttendance(action, meeting.id, {member, true, false});
    action.commit();
    EXPECT_EQ(import({}, file).sets.unchanged, 1);
    EXPECT_EQ(classes.attendanceOf(meeting.id).front().came, false);
}

TEST_F(ImportTest, AnArchivedClassIsUsedAndNotMadeAgain)
{
    import("member_id,classes\nM1,Noon\n");
    m_logbook.database().exec("UPDATE class SET is_archived = 1");
    const ImportReport report =
        import("member_id,classes\nM2,Noon\n", sets("2026-11-25,M1,Push-up,1,both,0,kg,8,,Noon"));
    ASSERT_TRUE(report.faults.empty()) << text(report.faults.front());
    EXPECT_EQ(report.classesAdded, 0);
    EXPECT_EQ(ClassStore(m_logbook).all(true).size(), 1U);
    EXPECT_TRUE(ClassStore(m_logbook).all().empty()) << "still archived";
    EXPECT_EQ(ClassStore(m_logbook).find("Noon")->id, ClassStore(m_logbook).all(true)[0].id);
}

// Two meetings of one class on one day, which only the column start tells apart.
TEST_F(ImportTest, TwoMeetingsOnADayAreKeptApartByTheirStart)
{
    const std::string header = "date,member_id,exercise,set,class,start,reps\n";
    const std::string early = "2026-11-25,M1,Push-up,1,Noon,09:00,8\n";
    const std::string late = "2026-11-25,M2,Push-up,1,Noon,18:30,9\n";
    const ImportReport report = import("member_id\nM1\nM2\n", header + late + early);
    ASSERT_TRUE(report.faults.empty()) << text(report.faults.front());
    const ClassStore classes(m_logbook);
    const auto meetings = classes.meetingsOf(classes.find("Noon")->id);
    ASSERT_EQ(meetings.size(), 2U);
    for (const Meeting& meeting : meetings) {
        EXPECT_EQ(classes.attendanceOf(meeting.id).size(), 1U);
    }
    std::ostringstream out;
    writeSets(m_logbook, out);
    EXPECT_NE(out.str().find(",09:00,"), std::string::npos);
    EXPECT_NE(out.str().find(",18:30,"), std::string::npos);
    // The same rows without their start mean the meetings in which they stand.
    const ImportReport again =
        import({},
               "date,member_id,exercise,set,class,reps\n2026-11-25,M1,Push-up,1,Noon,8\n"
               "2026-11-25,M2,Push-up,1,Noon,9\n");
    ASSERT_TRUE(again.faults.empty()) << text(again.faults.front());
    EXPECT_EQ(again.sets.unchanged, 2);
    for (const Meeting& meeting : meetings) {
        EXPECT_EQ(classes.attendanceOf(meeting.id).size(), 1U) << "nobody came twice";
    }
    // A new row without one goes to the first meeting.
    import({}, "date,member_id,exercise,set,class,reps\n2026-11-25,M1,Floor press,1,Noon,8\n");
    EXPECT_EQ(SetStore(m_logbook).ofMeeting(meetings.back().id).size(), 2U);
}

TEST_F(ImportTest, ADryRunWritesNothing)
{
    ImportRequest request;
    request.members = {"members.csv", kMembers};
    request.dryRun = true;
    EXPECT_EQ(importCsv(m_logbook, request, kNow).members.added, 1);
    EXPECT_TRUE(MemberStore(m_logbook).all().empty());
}

TEST_F(ImportTest, WhatIsExportedComesBackUnchanged)
{
    import(
        "member_id,name,note\n\"O'Neil \"\"7\"\" 💪\",\" blanks \",\"two\nlines; and, more\"\n",
        std::string(
            "date,member_id,exercise,set,side,load,unit,reps,rir,class,known,kind,stopped,clean,"
            "pain,pain_area,pain_side,start,keyed_at,keyed_by,note,hook_hole,bench_angle,order\n") +
            "2026-11-25,\"O'Neil \"\"7\"\" 💪\",Push-up,1,both,0,kg,8,1.5,Noon,sheet,open,no "
            "more,no,3,"
            "wrist,left,12:15,2026-11-25T12:20:00Z,IK,\"a, b\",9,-10,4\n");
    const std::string first = everything();
    EXPECT_NE(first.find("O'Neil \"\"7\"\" 💪"), std::string::npos);
    std::ostringstream members;
    std::ostringstream done;
    writeMembers(m_logbook, members);
    writeSets(m_logbook, done);
    Logbook other = Logbook::inMemory(kNow);
    ImportRequest request;
    const std::string membersText = members.str();
    const std::string setsText = done.str();
    request.members = {"members.csv", membersText};
    request.sets = {"sets.csv", setsText};
    const ImportReport report = importCsv(other, request, kNow);
    ASSERT_TRUE(report.faults.empty()) << text(report.faults.front());
    std::swap(m_logbook, other);
    EXPECT_EQ(everything(), first);
}

} // namespace
} // namespace levelbar::storage::exchange_test
