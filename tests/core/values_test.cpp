// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later

#include "core/base/day.h"
#include "core/base/mass.h"
#include "core/base/number.h"
#include "core/base/utf8.h"
#include "core/exercise/done_set.h"
#include "core/exercise/effort.h"
#include "core/member/member.h"

#include <gtest/gtest.h>

namespace levelbar::values_test {
namespace {

TEST(MassTest, KeepsWhatWasTypedToTheLastDigit)
{
    const Mass pounds = parseMass("135", MassUnit::Pound).value();
    EXPECT_EQ(pounds.number(), "135");
    EXPECT_EQ(pounds.unit(), MassUnit::Pound);
    // The international pound, exact by definition.
    EXPECT_DOUBLE_EQ(pounds.kilograms(), 135 * 0.45359237);
}

TEST(MassTest, SixtyAndSixtyPointZeroAreTheSame)
{
    EXPECT_EQ(parseMass("60", MassUnit::Kilogram).value(),
              parseMass("60.0", MassUnit::Kilogram).value());
    EXPECT_EQ(parseMass("62.500", MassUnit::Kilogram)->number(), "62.5");
}

TEST(MassTest, RefusesWhatIsNotALoad)
{
    for (const char* text :
         {"-5", "1e3", "1001", "12.3456", "ten", "", "1.2.3", "+5", " 5", "0x10", "nan"}) {
        EXPECT_FALSE(parseMass(text, MassUnit::Kilogram)) << text;
    }
    EXPECT_TRUE(parseMass("1000", MassUnit::Kilogram));
    EXPECT_TRUE(parseMass("2204.622", MassUnit::Pound));
    EXPECT_FALSE(parseMass("2204.623", MassUnit::Pound));
}

TEST(NumberTest, SaysWhatIsAllowed)
{
    const auto ten = parseWhole("ten", 0, 200);
    ASSERT_FALSE(ten);
    EXPECT_EQ(sentence(ten.error()), "'ten' is not a whole number from 0 to 200");
    EXPECT_FALSE(parseWhole("1000000000", 0, 200));
    EXPECT_FALSE(parseWhole("99999999999999999999999", 0, 200));
}

TEST(NumberTest, TextAndUnitsAreInverse)
{
    for (const std::int64_t units : {0LL, 1LL, -1LL, 999LL, 1000LL, -1500LL, 123456789LL}) {
        EXPECT_EQ(parseDecimal(decimalText(units, 3), 3, -1'000'000'000, 1'000'000'000).value(),
                  units);
    }
    EXPECT_EQ(decimalText(-500, 3), "-0.5");
}

TEST(DayTest, RefusesDaysThatNoCalendarHas)
{
    for (const char* text : {"2026-02-31",
                             "2026-02-29",
                             "31/02/2026",
                             "2026-13-01",
                             "2026-1-1",
                             "26-01-01",
                             "2026-00-10",
                             ""}) {
        EXPECT_FALSE(parseDay(text)) << text;
    }
    EXPECT_TRUE(parseDay("2024-02-29"));  // a leap year
    EXPECT_FALSE(parseDay("1900-02-29")); // a century that is none
    EXPECT_TRUE(parseDay("2000-02-29"));
}

TEST(DayTest, KeepsToItsRange)
{
    EXPECT_TRUE(parseDay("1900-01-01"));
    EXPECT_TRUE(parseDay("2100-12-31"));
    EXPECT_FALSE(parseDay("1899-12-31"));
    EXPECT_FALSE(parseDay("2101-01-01"));
}

TEST(DayTest, CountsFromNineteenSeventy)
{
    EXPECT_EQ(parseDay("1970-01-01")->sinceEpoch, 0);
    EXPECT_EQ(parseDay("2000-03-01")->sinceEpoch, 11017);
    EXPECT_EQ(isoText(Day{11017}), "2000-03-01");
    EXPECT_EQ(isoWeekday(parseDay("2026-11-25").value()), 3); // a Wednesday
    EXPECT_EQ(shortText(parseDay("2026-12-12").value()), "12 Dec");
}

TEST(MomentTest, ComesBackAsWritten)
{
    for (const char* text :
         {"2026-11-25T17:30:00Z", "1969-12-31T23:59:59Z", "2026-11-25T17:30:00.250Z"}) {
        EXPECT_EQ(isoText(parseMoment(text).value()), text);
    }
    EXPECT_FALSE(parseMoment("2026-11-25 17:30:00"));
    EXPECT_FALSE(parseMoment("2026-11-25T24:00:00Z"));
    EXPECT_FALSE(parseMoment("2026-02-30T10:00:00Z"));
}

TEST(TimeOfDayTest, IsMinutesSinceMidnight)
{
    EXPECT_EQ(parseTimeOfDay("17:30")->minutes, 1050);
    EXPECT_EQ(text(TimeOfDay{5}), "00:05");
    EXPECT_FALSE(parseTimeOfDay("24:00"));
    EXPECT_FALSE(parseTimeOfDay("7:30"));
}

TEST(Utf8Test, CountsCharactersAndRefusesBrokenText)
{
    EXPECT_EQ(codePoints("Ilse"), 4U);
    EXPECT_EQ(codePoints("Žižka 💪"), 7U);
    EXPECT_FALSE(codePoints("\xC0\xAF"));         // overlong
    EXPECT_FALSE(codePoints("\xED\xA0\x80"));     // a surrogate
    EXPECT_FALSE(codePoints("\xF4\x90\x80\x80")); // beyond Unicode
    EXPECT_FALSE(codePoints("\xE2\x82"));         // cut short
}

TEST(MemberCodeTest, TakesAnyScriptAndNoControls)
{
    EXPECT_EQ(checkMemberCode("O'Neil \"7\" 💪").value(), "O'Neil \"7\" 💪");
    EXPECT_TRUE(checkMemberCode("学生-12"));
    EXPECT_FALSE(checkMemberCode(""));
    EXPECT_FALSE(checkMemberCode("a\tb"));
    EXPECT_FALSE(checkMemberCode("a\xC2\x85"
                                 "b")); // next line, a C1 control
    EXPECT_TRUE(checkMemberCode(std::string(64, 'x')));
    EXPECT_FALSE(checkMemberCode(std::string(65, 'x')));
}

TEST(MemberTest, TheNextIdFollowsTheLargest)
{
    const auto next = [](const std::vector<std::string>& codes) {
        return proposeMemberCode(codes);
    };
    EXPECT_EQ(next({}), "1");
    EXPECT_EQ(next({"M007", "M048", "M012"}), "M049");
    EXPECT_EQ(next({"M099"}), "M100");
    EXPECT_EQ(next({"Ann", "Bo"}), "1");
    EXPECT_EQ(next({"99999999999999999999"}),
              "99999999999"
              "1000000000")
        << "no number overflows";
}

TEST(MemberTest, StatureAndMassAreReadWithinBounds)
{
    EXPECT_EQ(parseStature("171.5").value(), 17150);
    EXPECT_EQ(parseStature("49.9").error().code, FaultCode::OutOfRange);
    EXPECT_EQ(parseBodyMass("72.4").value(), Mass::ofKilograms(72.4));
    EXPECT_EQ(parseBodyMass("1").error().code, FaultCode::OutOfRange);
    EXPECT_EQ(parseDominantSide("both").error().code, FaultCode::NotOneOf);
}

TEST(CellTest, ReadsWhatAnInstructorKeys)
{
    EXPECT_TRUE(parseCell("")->asPlanned);
    EXPECT_EQ(parseCell("9")->reps, 9);
    EXPECT_FALSE(parseCell("9")->reserve);
    EXPECT_EQ(parseCell("9.2")->reserve, Reserve{20});
    EXPECT_EQ(parseCell("9,2")->reserve, Reserve{20});
    EXPECT_EQ(parseCell("0")->reps, 0);
    for (const char* text : {"9.", ".2", "nine", "9.2.1", "201", "-1", "9 2"}) {
        EXPECT_FALSE(parseCell(text)) << text;
    }
}

TEST(CellTest, ReadsRpeWhereTheGymChoseIt)
{
    const auto read = [](const char* text) { return parseCell(text, EffortScale::Rpe); };
    EXPECT_TRUE(read("")->asPlanned);
    EXPECT_FALSE(read("9")->reserve);
    EXPECT_EQ(read("9.8")->reserve, Reserve{20});
    EXPECT_EQ(read("9,85")->reserve, Reserve{15});
    EXPECT_EQ(read("12.10")->reserve, Reserve{0});
    EXPECT_EQ(read("12.10")->reps, 12);
    for (const char* text : {"9.", "9.4", "9.11", "9.83", "9.100", ".8", "201.8"}) {
        EXPECT_FALSE(read(text)) << text;
    }
    EXPECT_EQ(parseCell("9.2", EffortScale::Reserve)->reserve, Reserve{20});
}

TEST(ReserveTest, TakesHalves)
{
    EXPECT_EQ(parseReserve("1.5")->tenths, 15);
    EXPECT_EQ(text(Reserve{15}), "1.5");
    EXPECT_FALSE(parseReserve("51"));
}

TEST(FaultTest, EveryCodeHasItsSentence)
{
    for (int code = 0; code <= static_cast<int>(FaultCode::RepeatedBib); ++code) {
        EXPECT_FALSE(sentenceTemplate(static_cast<FaultCode>(code)).empty()) << code;
    }
    EXPECT_EQ(fill("%1 and %2, %3", {"one", "two"}), "one and two, %3");
}

} // namespace
} // namespace levelbar::values_test
