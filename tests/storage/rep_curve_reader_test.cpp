// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "storage/history_reader.h"
#include "storage/rep_curve_reader.h"
#include "storage/set_store.h"
#include "tests/support/logbook_fixture.h"

#include <gtest/gtest.h>

#include <string>

namespace levelbar::storage::rep_curve_reader_test {
namespace {

using tests::addMember;
using tests::benchSet;
using tests::kNow;
using tests::logSet;
using tests::TemporaryFolder;

const Day kMonday{20598}; // 2026-05-25

// Heavy and light sets to the end, far more reps with the light ones than is published.
void train(Logbook& logbook, MemberId member, Day day)
{
    constexpr std::array<std::pair<int, int>, 3> kSets = {{{80, 9}, {70, 17}, {60, 25}}};
    int number = 0;
    for (const auto& [kilograms, reps] : kSets) {
        DoneSet set = benchSet(logbook, member, day, ++number, reps);
        set.performed.load = Mass::ofKilograms(kilograms);
        set.performed.reserve = Reserve{0};
        logSet(logbook, set);
    }
}

class RepCurveReaderTest : public testing::Test {
protected:
    RepCurveReaderTest()
    {
        for (int i = 0; i < 5; ++i) {
            people.push_back(addMember(logbook, "M" + std::to_string(i)));
        }
    }

    void trainAll(Day day)
    {
        for (const MemberId member : people) {
            train(logbook, member, day);
        }
    }

    // Of two weeks ago, and far over what is published.
    [[nodiscard]] DoneSet lateSet() const
    {
        DoneSet set = benchSet(logbook, people.front(), kMonday - 14, 1, 25);
        set.performed.reserve = Reserve{0};
        return set;
    }

    Logbook logbook = Logbook::inMemory(kNow);
    std::vector<MemberId> people;
};

TEST_F(RepCurveReaderTest, AGymWithoutSetsGoesByThePublishedCurve)
{
    EXPECT_EQ(repCurveOn(logbook, kMonday), RepCurveExpectation());
}

TEST_F(RepCurveReaderTest, AWeeksSetsCountFromTheMondayAfter)
{
    trainAll(kMonday);
    for (int day = 0; day < 7; ++day) {
        EXPECT_EQ(repCurveOn(logbook, kMonday + day), RepCurveExpectation()) << day;
    }
    const RepCurveExpectation taught = repCurveOn(logbook, kMonday + 7);
    EXPECT_EQ(taught.people, 5);
    EXPECT_GT(taught.factor, kPublishedLogFactor);
    EXPECT_EQ(repCurveOn(logbook, kMonday + 13), taught);
}

TEST_F(RepCurveReaderTest, WhatComesLaterDoesNotChangeAnEarlierAnswer)
{
    trainAll(kMonday - 7);
    const RepCurveExpectation then = repCurveOn(logbook, kMonday);
    trainAll(kMonday + 7);
    EXPECT_EQ(repCurveOn(logbook, kMonday), then);
    EXPECT_NE(repCurveOn(logbook, kMonday + 14), then);
}

TEST_F(RepCurveReaderTest, ASetWrittenLateIsSeen)
{
    trainAll(kMonday - 7);
    const RepCurveExpectation before = repCurveOn(logbook, kMonday);
    trainAll(kMonday - 14);
    EXPECT_NE(repCurveOn(logbook, kMonday), before);
}

TEST_F(RepCurveReaderTest, WithinAnActionItIsThatOfTheBeginning)
{
    trainAll(kMonday - 7);
    const RepCurveExpectation before = repCurveOn(logbook, kMonday);
    {
        Action action(logbook, ActionKind::LogSet, kNow);
        SetStore::add(action, lateSet());
        EXPECT_EQ(repCurveOn(logbook, kMonday), before);
        action.commit();
    }
    EXPECT_NE(repCurveOn(logbook, kMonday), before);
}

TEST_F(RepCurveReaderTest, WhatWasNeverCommittedIsNotRemembered)
{
    trainAll(kMonday - 7);
    const RepCurveExpectation before = repCurveOn(logbook, kMonday);
    {
        Action abandoned(logbook, ActionKind::LogSet, kNow);
        SetStore::add(abandoned, lateSet());
        EXPECT_NE(repCurveOn(logbook, kMonday + 7), before) << "first asked for in the action";
    }
    EXPECT_EQ(repCurveOn(logbook, kMonday + 7), before);
}

TEST_F(RepCurveReaderTest, EveryHistoryCarriesItExceptABareOne)
{
    trainAll(kMonday - 7);
    const RepCurveExpectation taught = repCurveOn(logbook, kMonday);
    ASSERT_NE(taught, RepCurveExpectation());
    EXPECT_EQ(historyOf(logbook, people.front(), kMonday)->curve, taught);
    EXPECT_EQ(bareHistoryOf(logbook, people.front())->curve, RepCurveExpectation());
    int seen = 0;
    forEachHistory(logbook, kMonday, [&](const MemberHistory& history) {
        EXPECT_EQ(history.curve, taught);
        ++seen;
    });
    EXPECT_EQ(seen, 5);
}

TEST(RepCurveOfAFileTest, AWriteMayOutliveTheOpenFile)
{
    const TemporaryFolder folder;
    Logbook logbook = Logbook::create(folder / "gym.levelbar", kNow);
    Action action(logbook, ActionKind::LogSet, kNow);
    action.commit();
    logbook.close(); // and the action ends after it
}

TEST(RepCurveOfAFileTest, WhatAnotherProgramWritesIsSeen)
{
    const TemporaryFolder folder;
    const auto path = folder / "gym.levelbar";
    Logbook writer = Logbook::create(path, kNow);
    const MemberId member = addMember(writer, "M1");
    OpenOptions reading;
    reading.mode = OpenMode::ReadOnly;
    const Logbook reader = Logbook::open(path, kNow, reading);
    EXPECT_EQ(repCurveOn(reader, kMonday), RepCurveExpectation());
    train(writer, member, kMonday - 7);
    EXPECT_EQ(repCurveOn(reader, kMonday).people, 1);
    EXPECT_EQ(repCurveOn(reader, kMonday), repCurveOn(writer, kMonday));
}

} // namespace
} // namespace levelbar::storage::rep_curve_reader_test
