// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/floor/catch_up.h"
#include "core/floor/floor_order.h"
#include "tests/support/class_hour.h"
#include "tests/support/random.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <map>
#include <tuple>

namespace levelbar::number_pad_test {
namespace {

using tests::Keyboard;
using tests::smallClass;

const std::vector<Station> kTwoRacks = {{1, StationKind::Rack, true}, {2, StationKind::Rack, true}};

// Bibs 1 and 2 at rack 1, 3 and 4 at rack 2, three rounds.
Keyboard fourPeople()
{
    return {smallClass(kTwoRacks, {1, 1, 2, 2}, 3), tests::gymBook()};
}

PadCommand parsed(std::string_view text)
{
    return parsePadEntry(text, EffortScale::Reserve).value();
}

TEST(PadEntryTest, LettersAndCodesMeanTheSame)
{
    const std::vector<std::pair<std::string, std::string>> pairs = {
        {"c", ".1"},
        {"e", ".2"},
        {"p6.2.1", ".3.6.2.1"},
        {"p3.7", ".3.3.7"},
        {"s", ".4"},
        {"s14", ".4.14"},
        {"l", ".5"},
        {"l12", ".5.12"},
        {"g", ".6"},
        {"g2", ".6.2"},
        {"k4", ".7.4"},
        {"k", ".7"},
        {"n23", ".8.23"},
        {"u", "//"},
        {"u", ".9"},
        {"t", ".0"},
        {"9.2", "9,2"},
    };
    for (const auto& [letter, code] : pairs) {
        EXPECT_EQ(parsed(letter), parsed(code)) << letter;
    }
}

TEST(PadEntryTest, ReadsWhatIsTyped)
{
    EXPECT_TRUE(parsed("").cell.asPlanned);
    EXPECT_EQ(parsed("9.2").cell, (CellEntry{false, 9, Reserve{20}}));
    EXPECT_EQ(parsed("0").cell.reps, 0);
    EXPECT_EQ(parsed("*3").number, 3);
    EXPECT_EQ(parsed("*3").verb, PadVerb::GoToStation);
    EXPECT_EQ(parsed("/14").verb, PadVerb::GoToBib);
    EXPECT_EQ(parsed("**").verb, PadVerb::RoundAsPlanned);
    EXPECT_EQ(parsed("p6.2.1").pain, (PadPain{6, "shoulder", Side::Left}));
    EXPECT_EQ(parsePadEntry("9.8", EffortScale::Rpe)->cell.reserve, Reserve{20});
}

TEST(PadEntryTest, RefusesWhatItDoesNotKnow)
{
    for (const char* text :
         {"*",     "/",      ".",    ".1.", "..", "*x", "x",  "9+",    "p6",  "p11.2",
          "p6.16", "p6.2.3", "k4.1", "e3",  "n",  ".8", "+1", "1.2.3", "*-1", " "}) {
        EXPECT_FALSE(parsePadEntry(text, EffortScale::Reserve)) << text;
    }
}

TEST(NumberPadTest, EnterGoesDownTheRacksRoundThenToTheNextRack)
{
    Keyboard keys = fourPeople();
    std::vector<std::int64_t> bibs;
    for (int i = 0; i < 5; ++i) {
        bibs.push_back(keys.under().planned.member.value);
        keys.type("\n");
    }
    EXPECT_EQ(bibs, (std::vector<std::int64_t>{1, 2, 3, 4, 1}));
    EXPECT_EQ(keys.floor().round, 2);
}

TEST(NumberPadTest, EveryWayOfKeyingSaysHowTheSetIsKnown)
{
    Keyboard keys = fourPeople();
    keys.type("\n9.2\n**");
    ASSERT_EQ(keys.stored().size(), 4U);
    const PerformedSet accepted = keys.stored()[0].performed;
    EXPECT_EQ(accepted.known, HowKnown::Accepted);
    EXPECT_EQ(accepted.reps, 8);
    EXPECT_FALSE(accepted.reserve) << "a plan confirmed by a key proves nothing";
    EXPECT_EQ(keys.stored()[1].performed.known, HowKnown::Counted);
    EXPECT_EQ(keys.stored()[1].performed.reserve, Reserve{20});
    EXPECT_EQ(keys.stored()[2].performed.known, HowKnown::Group);
    EXPECT_EQ(keys.stored()[3].member.value, 4);
}

TEST(NumberPadTest, NoughtIsTriedAndFailed)
{
    Keyboard keys = fourPeople();
    const PadOutcome outcome = keys.type("0\n");
    EXPECT_EQ(keys.stored().front().performed.reps, 0);
    EXPECT_EQ(tests::saidText(outcome), "1 P1: 40 kg, tried");
}

TEST(NumberPadTest, JumpsStayInTheRoundOfTheKeys)
{
    Keyboard keys = fourPeople();
    keys.type("**");
    EXPECT_EQ(keys.under().station, 2);
    keys.type("/1\n");
    EXPECT_EQ(keys.under().round, 2) << "bib 1 has done round 1";
    keys.type("*2\n");
    EXPECT_EQ(keys.under().round, 2);
    keys.type("**");
    EXPECT_EQ(keys.under().station, 1) << "round 2 goes on past the last rack";
    EXPECT_EQ(keys.under().round, 2);
}

TEST(NumberPadTest, AHeldEnterDoesNotRunOn)
{
    Keyboard keys = fourPeople();
    keys.hold(PadKey::Kind::Enter, 30);
    EXPECT_EQ(keys.stored().size(), 1U);
}

TEST(NumberPadTest, TakingBackSaysWhatAndPutsEverythingBack)
{
    Keyboard keys = fourPeople();
    keys.type("\n");
    const ClassFloor before = keys.floor();
    keys.type("9.2\n");
    const PadOutcome outcome = keys.type("//");
    EXPECT_EQ(keys.floor(), before);
    EXPECT_EQ(tests::saidText(outcome), "Taken back: 2 P2: 40 kg × 9, 2 in reserve");
    ASSERT_EQ(outcome.takenBack.size(), 1U);
    EXPECT_EQ(keys.stored().size(), 1U);
    keys.type("//");
    EXPECT_EQ(keys.type("//").refused->code, FaultCode::NothingToTakeBack);
}

TEST(NumberPadTest, NotCleanBelongsToTheSetCountedLastAndCanBeTakenBack)
{
    Keyboard keys = fourPeople();
    keys.type("9\n\nc\n");
    ASSERT_EQ(keys.stored().size(), 2U);
    EXPECT_EQ(keys.stored().back().member.value, 1);
    EXPECT_EQ(keys.stored().back().performed.isClean, false);
    keys.type(".1\n");
    EXPECT_EQ(keys.stored().back().performed.isClean, true);
    const PadOutcome outcome = keys.type("//");
    ASSERT_EQ(outcome.restored.size(), 1U);
    EXPECT_EQ(outcome.restored.front().performed.isClean, false);
}

TEST(NumberPadTest, WhatIsRefusedChangesNothingAndKeepsTheText)
{
    Keyboard keys = fourPeople();
    const ClassFloor before = keys.floor();
    EXPECT_EQ(keys.type("*9\n").refused->code, FaultCode::NoStation);
    EXPECT_EQ(keys.pad().typed, "*9");
    keys.type("\b\b/77\n");
    EXPECT_EQ(keys.floor(), before);
    keys.type("\x1b");
    EXPECT_EQ(keys.pad().typed, "");
}

TEST(NumberPadTest, AMaximumIsTypedNeverAccepted)
{
    ClassFloor floor = smallClass(kTwoRacks, {1, 1}, 1);
    floor.cells.front().kind = SetKind::Test;
    floor.cells.front().planned.amount = 1;
    Keyboard keys(floor, tests::gymBook());
    EXPECT_EQ(keys.type("\n").refused->code, FaultCode::NothingPlanned);
    keys.type("**");
    EXPECT_EQ(keys.stored().size(), 1U);
    EXPECT_EQ(keys.under().kind, SetKind::Test);
}

TEST(NumberPadTest, AnEmptyCellIsNotKnownAndNeverMissed)
{
    Keyboard keys = fourPeople();
    keys.type("9\n*2\n**");
    const ClosingCount count = countClosing(keys.floor());
    EXPECT_EQ(count, (ClosingCount{1, 0, 2, 9, 0}));
    EXPECT_EQ(fill(closingPhrase(count).text, closingPhrase(count).arguments),
              "12 sets: 1 seen, 2 accepted, 0 not asked for, 9 not known.");
}

TEST(NumberPadTest, CatchingUpGoesToWhatTheClockSaysShouldBeDone)
{
    Keyboard keys = fourPeople();
    keys.type("**");
    keys.setMinute(14);
    EXPECT_TRUE(keys.type(".0\n").refused) << "round 1 ends at minute 15";
    keys.type("\x1b/1\n");
    EXPECT_EQ(keys.under().round, 2);
    keys.setMinute(20);
    EXPECT_EQ(tests::saidText(keys.type("t\n")), "6 sets should be done by now");
    EXPECT_EQ(keys.under().round, 1);
    EXPECT_EQ(keys.under().station, 2);
    EXPECT_EQ(dueBy(keys.floor(), 20).size(), 6U);
}

using DonePlaces = std::map<std::tuple<MemberId, ExerciseId, int, Side>, std::tuple<int, int, int>>;

// Where each set was done: round, station and turn.
DonePlaces donePlaces(const ClassFloor& floor)
{
    DonePlaces places;
    for (const PadCell& cell : floor.cells) {
        if (cell.done) {
            const PlannedSet& planned = cell.planned;
            places[{planned.member, planned.exercise, planned.number, planned.side}] = {
                cell.round, cell.station, cell.turn};
        }
    }
    return places;
}

TEST(NumberPadTest, WhateverIsTypedTheCursorStandsOnAnOpenCellAndTakingBackUndoesIt)
{
    tests::Random random(3);
    constexpr std::string_view kSome = "012789.*/+-\n\n\n\n\n\n\n\n\ncelkps*/";
    int sets = 0;
    for (int trial = 0; trial < 15; ++trial) {
        Keyboard keys(tests::fullClass(), tests::gymBook());
        const ClassFloor start = keys.floor();
        for (int i = 0; i < 300; ++i) {
            const auto at = static_cast<std::size_t>(random.below(static_cast<int>(kSome.size())));
            keys.setMinute(i / 3);
            const DonePlaces before = donePlaces(keys.floor());
            if (keys.type(kSome.substr(at, 1)).refused) {
                keys.type("\x1b");
            }
            const ClassFloor& floor = keys.floor();
            const bool isAnyOpen = std::any_of(
                floor.cells.begin(), floor.cells.end(), [](const auto& c) { return c.isOpen(); });
            ASSERT_EQ(floor.cursor.has_value(), isAnyOpen);
            ASSERT_TRUE(!floor.cursor || floor.cells[*floor.cursor].isOpen());
            const auto done = std::count_if(floor.cells.begin(),
                                            floor.cells.end(),
                                            [](const auto& c) { return c.done.has_value(); });
            ASSERT_EQ(keys.stored().size(), static_cast<std::size_t>(done));
            const DonePlaces after = donePlaces(floor);
            for (const auto& [set, place] : before) {
                const auto found = after.find(set);
                ASSERT_TRUE(found == after.end() || found->second == place) << "moved";
            }
        }
        sets += static_cast<int>(keys.stored().size());
        keys.type("\x1b\x1b");
        while (!keys.type("//").refused) {
        }
        // Only the cursor may have moved before the first entry.
        EXPECT_EQ(keys.floor().cells, start.cells);
        EXPECT_EQ(keys.floor().people, start.people);
        EXPECT_TRUE(keys.stored().empty());
    }
    EXPECT_GT(sets, 200) << "the test keyed too little";
}

} // namespace
} // namespace levelbar::number_pad_test
