// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/floor/catch_up.h"
#include "core/floor/newcomer.h"
#include "core/floor/turn_seconds.h"
#include "tests/support/class_hour.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cstdio>

namespace levelbar::floor_events_test {
namespace {

using tests::Keyboard;
using tests::saidText;
using tests::smallClass;

const std::vector<Station> kRacksAndBenches = {{1, StationKind::Rack, true},
                                               {2, StationKind::Rack, true},
                                               {7, StationKind::Bench, true},
                                               {8, StationKind::Bench, true}};

// Bibs 1, 2 at rack 1, 3 at rack 2, 4 at bench 7, 5 at bench 8.
Keyboard fivePeople(int rounds = 3)
{
    return {smallClass(kRacksAndBenches, {1, 1, 2, 7, 8}, rounds), tests::gymBook()};
}

std::vector<PadCell> cellsOf(const ClassFloor& floor, int bib)
{
    std::vector<PadCell> found;
    std::copy_if(floor.cells.begin(),
                 floor.cells.end(),
                 std::back_inserter(found),
                 [bib](const PadCell& cell) { return cell.planned.member.value == bib; });
    return found;
}

double kilograms(const PadCell& cell)
{
    return cell.planned.load.kilograms();
}

TEST(LoadStepTest, GoesToTheNextLoadThatExistsForTheSetsStillOpen)
{
    Keyboard keys = fivePeople();
    keys.type("\n/1\n+");
    const auto cells = cellsOf(keys.floor(), 1);
    EXPECT_DOUBLE_EQ(kilograms(cells[0]), 40.0) << "done";
    EXPECT_DOUBLE_EQ(kilograms(cells[1]), 42.5);
    EXPECT_DOUBLE_EQ(kilograms(cells[2]), 42.5);
    keys.type("-");
    EXPECT_DOUBLE_EQ(kilograms(cellsOf(keys.floor(), 1)[1]), 40.0);
}

TEST(LoadStepTest, PassesOverAPairThatAnotherBenchHas)
{
    FloorBook book = tests::gymBook();
    for (HandWeight& piece : book.kit.handWeights) {
        piece.count = 2; // one pair of each
    }
    ClassFloor floor = smallClass(kRacksAndBenches, {7, 8}, 2);
    for (PadCell& cell : floor.cells) {
        cell.planned.load = Mass::ofKilograms(cell.station == 7 ? 10.0 : 12.0);
    }
    Keyboard keys(floor, book);
    EXPECT_EQ(saidText(keys.type("+")), "1 P1: 14 kg from now on, 2 sets") << "12 is at bench 8";
    book.kit.handWeights.resize(11); // up to 12 kg
    Keyboard fewer(floor, book);
    EXPECT_EQ(fewer.type("+").refused->code, FaultCode::NoFreeLoad);
}

TEST(EasyDayTest, IsATenthLessOneSetFewerAndCountsAsAtLeast)
{
    Keyboard keys = fivePeople();
    EXPECT_EQ(saidText(keys.type("e\n")), "1 P1: easy day, about a tenth less, 1 set fewer");
    const auto cells = cellsOf(keys.floor(), 1);
    EXPECT_DOUBLE_EQ(kilograms(cells[0]), 35.0) << "36 kg is nearer to 35 than to 37.5";
    EXPECT_EQ(cells[2].setAside, NotAsked::EasyDay);
    EXPECT_TRUE(cells[1].isOpen());
    keys.type("8.4\n");
    EXPECT_TRUE(keys.stored().front().performed.isAtLeast);
    EXPECT_EQ(keys.stored().front().performed.reserve, Reserve{40}) << "kept as typed";
    keys.type("\n");
    EXPECT_FALSE(keys.stored().back().performed.isAtLeast) << "somebody else's";
}

TEST(PainTest, OffersThreeOthersAndChangesTheAreasSetsTogether)
{
    Keyboard keys = fivePeople();
    keys.type("**/1\n"); // round 1 of rack 1 is done
    const PadOutcome asked = keys.type("p6.2.1\n");
    ASSERT_TRUE(keys.pad().question);
    EXPECT_EQ(keys.pad().question->choices.size(), 3U);
    EXPECT_EQ(asked.said.front().text, "%1: pain %2, %3 %4. Stop the set");
    const auto last = std::find_if(keys.stored().begin(), keys.stored().end(), [](const auto& set) {
        return set.member.value == 1;
    });
    EXPECT_EQ(last->performed.pain, 6);
    EXPECT_EQ(last->performed.stopped, StopReason::Pain);
    EXPECT_EQ(last->painArea, "shoulder");
    EXPECT_EQ(last->painSide, Side::Left);
    keys.type("1\n");
    const auto cells = cellsOf(keys.floor(), 1);
    EXPECT_EQ(cells[0].planned.exercise, tests::kBench) << "done, so it stays";
    EXPECT_EQ(cells[1].planned.exercise, tests::kFloorPress) << "a press that spares the shoulder";
    EXPECT_EQ(cells[2].planned.exercise, tests::kFloorPress);
    EXPECT_NE(cells[1].planned.number, cells[2].planned.number);
    EXPECT_EQ(cellsOf(keys.floor(), 2)[1].planned.exercise, tests::kBench);
}

TEST(PainTest, HoldsTheSetsUntilOneIsPicked)
{
    Keyboard keys = fivePeople();
    keys.type("p4.2\n\x1b"); // the question is put away
    const ClassFloor held = keys.floor();
    keys.type("**");
    EXPECT_EQ(keys.stored().size(), 1U) << "bib 2 only";
    keys.type("/1\n");
    EXPECT_EQ(keys.type("8\n").refused->code, FaultCode::SetWaits);
    keys.type("\b/1\n.4\n1\n\n");
    EXPECT_EQ(keys.stored().size(), 2U);
}

TEST(PainTest, NoneOfThemLeavesTheSetsOutWithoutAMiss)
{
    Keyboard keys = fivePeople();
    keys.type("p8.2\n");
    EXPECT_EQ(keys.type("7\n").refused->code, FaultCode::ChooseFirst);
    keys.type("\b0\n");
    for (const PadCell& cell : cellsOf(keys.floor(), 1)) {
        EXPECT_EQ(cell.setAside, NotAsked::Pain);
    }
    EXPECT_EQ(countClosing(keys.floor()).unknown, 12);
}

// As the logbook knows the hour: done sets and what is planned, none of it set aside.
TEST(PainTest, AnInterruptedHourStillSparesWhatHurts)
{
    Keyboard keys = fivePeople();
    keys.type("**/1\np6.2.1\n\b0\n");
    ClassFloor again = keys.floor();
    for (PadCell& cell : again.cells) {
        cell.setAside.reset();
        cell.isHeld = false;
    }
    for (FloorPerson& who : again.people) {
        who.pains.clear();
    }
    const ClassFloor spared = rememberingPain(again, tests::gymBook());
    const auto cells = cellsOf(spared, 1);
    EXPECT_TRUE(cells[0].done);
    EXPECT_EQ(cells[1].setAside, NotAsked::Pain);
    EXPECT_EQ(cells[2].setAside, NotAsked::Pain);
    EXPECT_EQ(person(spared, {1})->pains.size(), 1U);
    EXPECT_TRUE(cellsOf(spared, 2)[1].isOpen()) << "nobody else's";
    for (PadCell& cell : again.cells) { // they went on with it after all
        if (cell.planned.member == MemberId{1} && cell.round == 2) {
            DoneSet next = *cellsOf(again, 1)[0].done;
            next.performed.order += 10;
            next.performed.pain.reset();
            next.painArea.clear();
            cell.done = next;
        }
    }
    EXPECT_TRUE(cellsOf(rememberingPain(again, tests::gymBook()), 1)[2].isOpen());
}

TEST(PainTest, TakingBackTakesThePainAwayToo)
{
    Keyboard keys = fivePeople();
    keys.type("\n/1\n");
    const ClassFloor before = keys.floor();
    keys.type("p6.2//");
    EXPECT_EQ(keys.floor(), before) << "nothing was entered yet";
    keys.type("\x1bp6.2\n//");
    EXPECT_EQ(keys.floor(), before);
    EXPECT_FALSE(keys.pad().question);
    EXPECT_FALSE(keys.stored().front().performed.pain);
}

TEST(LateTest, AfterTenMinutesTheWarmUpIsShortAndNoMaximumIsTried)
{
    ClassFloor floor = smallClass(kRacksAndBenches, {1, 1}, 5);
    for (PadCell& cell : floor.cells) {
        cell.kind = cell.round <= 3 ? SetKind::Ramp : (cell.round == 5 ? SetKind::Test : cell.kind);
        cell.planned.amount = cell.kind == SetKind::Test ? 1 : 5;
    }
    Keyboard keys(floor, tests::gymBook());
    keys.type("l11\n");
    const auto cells = cellsOf(keys.floor(), 1);
    EXPECT_TRUE(cells[0].isOpen());
    EXPECT_EQ(cells[1].setAside, NotAsked::ShorterWarmUp);
    EXPECT_TRUE(cells[2].isOpen());
    EXPECT_TRUE(cells[3].isOpen());
    EXPECT_EQ(cells[4].setAside, NotAsked::NoMaximum);
    Keyboard early(floor, tests::gymBook());
    early.type("l10\n");
    for (const PadCell& cell : cellsOf(early.floor(), 1)) {
        EXPECT_TRUE(cell.isOpen());
    }
}

TEST(LateTest, RoundsThatAreOverAreNotAskedFor)
{
    Keyboard keys = fivePeople();
    keys.setMinute(21);
    keys.type("/4\n.5\n"); // by the clock; rounds end at 15, 20, 25
    const auto cells = cellsOf(keys.floor(), 4);
    EXPECT_EQ(cells[0].setAside, NotAsked::NotYetHere);
    EXPECT_EQ(cells[1].setAside, NotAsked::NotYetHere);
    EXPECT_TRUE(cells[2].isOpen());
    EXPECT_EQ(person(keys.floor(), {4})->minutesLate, 21);
}

TEST(LeaveTest, NothingOfTheirsIsOpenAndNothingWasMissed)
{
    Keyboard keys = fivePeople();
    keys.type("\n/1\ng\n");
    const ClosingCount count = countClosing(keys.floor());
    EXPECT_EQ(count.setAside, 2);
    EXPECT_EQ(count.unknown, 12);
    keys.type("2\n"); // the answer to why
    EXPECT_EQ(personWithBib(keys.floor(), 1)->leftWhy, LeftWhy::Unwell);
    EXPECT_TRUE(keys.type("/1\n").refused);
}

TEST(LeaveTest, TheReasonIsSaidAtOnceOrNotAtAll)
{
    Keyboard keys = fivePeople();
    const PadOutcome left = keys.type("/1\ng1\n");
    EXPECT_NE(saidText(left).find("had to go"), std::string::npos);
    EXPECT_EQ(personWithBib(keys.floor(), 1)->leftWhy, LeftWhy::HadToGo);
    keys.type("/2\ng\n\n");
    EXPECT_EQ(personWithBib(keys.floor(), 2)->leftWhy, LeftWhy::NotSaid);
    EXPECT_TRUE(personWithBib(keys.floor(), 2)->hasLeft());
    keys.type("//");
    EXPECT_FALSE(personWithBib(keys.floor(), 2)->hasLeft());
}

TEST(LeaveTest, TheQuestionWhyStandsInNobodysWay)
{
    Keyboard keys = fivePeople();
    keys.type("/1\ng\n/2\ne\n"); // another word goes on
    EXPECT_TRUE(personWithBib(keys.floor(), 2)->isEasyDay());
    EXPECT_TRUE(keys.type("/3\ng\n9\n").refused) << "nine is no reason, and nobody's reps";
}

TEST(LeaveTest, ThereAreFourReasons)
{
    Keyboard keys = fivePeople();
    EXPECT_TRUE(keys.type("/2\ng5\n").refused);
    EXPECT_FALSE(personWithBib(keys.floor(), 2)->hasLeft());
}

TEST(SwapTest, TwoOfARackChangeTurnsWhereNeitherHasLifted)
{
    Keyboard keys = fivePeople();
    keys.type("\n"); // bib 1 in round 1
    keys.type("/1\ns2\n");
    EXPECT_EQ(cellsOf(keys.floor(), 1)[0].turn, 1);
    EXPECT_EQ(cellsOf(keys.floor(), 1)[1].turn, 2);
    EXPECT_EQ(cellsOf(keys.floor(), 2)[1].turn, 1);
    EXPECT_TRUE(keys.type("s3\n").refused) << "at another rack";
}

TEST(NewcomerTest, TheQuestionsStayUntilThreeAnswersOrNone)
{
    Keyboard keys = fivePeople();
    keys.type("n23\n");
    EXPECT_EQ(keys.type("0\n").refused->code, FaultCode::ThreeAnswers);
    keys.type("\x1b\x1b");
    EXPECT_TRUE(keys.pad().question) << "not put away by a slip";
    keys.type("010\n");
    EXPECT_FALSE(keys.pad().question);
}

TEST(RefusedEntryTest, TheNextCharacterBeginsAnew)
{
    Keyboard keys = fivePeople();
    EXPECT_TRUE(keys.type("9.9.9\n").refused);
    EXPECT_FALSE(keys.pad().typed.empty()) << "it stays to be read";
    EXPECT_FALSE(keys.type("9\n").refused);
    EXPECT_EQ(keys.stored().front().performed.reps, 9);
}

TEST(NewcomerTest, HasNoNameIsNotScreenedAndLiftsNoBar)
{
    Keyboard keys = fivePeople();
    keys.type("**"); // rack 1
    const PadOutcome asked = keys.type("n23\n");
    EXPECT_NE(saidText(asked).find("23 is new, not screened"), std::string::npos);
    EXPECT_NE(saidText(asked).find(newcomerQuestions()[2]), std::string::npos);
    keys.type("000\n");
    const FloorPerson* who = personWithBib(keys.floor(), 23);
    EXPECT_EQ(who->name, "");
    EXPECT_FALSE(who->isScreened) << "three questions are no screening";
    const auto cells = cellsOf(keys.floor(), -23);
    ASSERT_EQ(cells.size(), 3U);
    for (const PadCell& cell : cells) {
        const Implement tool = tests::gymBook().find(cell.planned.exercise)->exercise.implement;
        EXPECT_TRUE(tool == Implement::BodyWeight || tool == Implement::Dumbbell);
        EXPECT_LE(kilograms(cell), 1.0) << "the lightest there is";
        EXPECT_TRUE(cell.planned.isNew);
    }
    EXPECT_EQ(keys.type("n4\n").refused->code, FaultCode::RepeatedBib);
}

TEST(NewcomerTest, AnyYesHoldsEverySet)
{
    Keyboard keys = fivePeople();
    keys.type("n23\n010\n/23\n");
    EXPECT_EQ(keys.type("\n").refused->code, FaultCode::SetWaits);
    keys.type("//");
    EXPECT_FALSE(keys.type("\n").refused) << "the answers are taken back";
}

TEST(KitGoneTest, ABenchSaysWhoIsHitAndChangesNothingBeforeAPick)
{
    Keyboard keys = fivePeople();
    keys.type("*7\n\n*8\n\n"); // both benches have done round 1
    const ClassFloor before = keys.floor();
    const PadOutcome asked = keys.type("k7\n");
    EXPECT_EQ(asked.said.front().arguments, (std::vector<std::string>{"7", "2", "4 P4"}));
    ASSERT_EQ(keys.pad().question->choices.size(), 3U);
    EXPECT_EQ(keys.floor(), before);
    EXPECT_EQ(keys.pad().question->choices[0].minutes, 0) << "rack 1 has two as well";
    keys.type("0\n");
    EXPECT_EQ(keys.floor(), before);
}

TEST(KitGoneTest, SharingMovesOnlyWhoIsHitAndSaysTheMinutes)
{
    Keyboard keys(smallClass(kRacksAndBenches, {7, 7, 8, 8}, 4), tests::gymBook());
    keys.type("**"); // round 1 of bench 7
    keys.type("k7\n");
    // Three rounds of 2 turns become 4 turns, at 90 s; round 1 of bench 8 stays as it is.
    EXPECT_EQ(keys.pad().question->choices[0].minutes, 9);
    keys.type("1\n");
    for (const int bib : {1, 2}) {
        const auto cells = cellsOf(keys.floor(), bib);
        EXPECT_EQ(cells[0].station, 7) << "done there";
        EXPECT_EQ(cells[1].station, 8);
        EXPECT_GT(cells[1].turn, 2) << "after those who are there already";
    }
    EXPECT_EQ(cellsOf(keys.floor(), 3)[1].turn, 1);
    keys.type("//");
    EXPECT_EQ(cellsOf(keys.floor(), 1)[1].station, 7);
}

TEST(KitGoneTest, OtherExercisesNeedNoBench)
{
    Keyboard keys = fivePeople();
    keys.type("k7\n2\n");
    for (const PadCell& cell : cellsOf(keys.floor(), 4)) {
        EXPECT_EQ(cell.planned.exercise, tests::kPushUp);
    }
    EXPECT_EQ(cellsOf(keys.floor(), 5)[0].planned.exercise, tests::kDumbbellPress);
}

TEST(KitGoneTest, APairThatIsGoneHitsWhoeverWantsIt)
{
    FloorBook book = tests::gymBook();
    for (HandWeight& piece : book.kit.handWeights) {
        piece.count = 2;
    }
    Keyboard keys(smallClass(kRacksAndBenches, {7, 1}, 3), book);
    keys.type("*7\nk\n");
    EXPECT_EQ(keys.pad().question->choices.size(), 3U);
    keys.type("1\n");
    EXPECT_DOUBLE_EQ(kilograms(cellsOf(keys.floor(), 1)[0]), 9.0);
    keys.type("+");
    EXPECT_DOUBLE_EQ(kilograms(cellsOf(keys.floor(), 1)[0]), 12.0) << "10 is not here";
}

TEST(TurnsOfTheFloorTest, SetsKeyedOnTheirOwnTellHowLongATurnTakes)
{
    Keyboard keys = fivePeople();
    keys.setMinute(10);
    keys.type("8\n");
    keys.setMinute(11);
    keys.type("8\n");
    keys.setMinute(12);
    keys.type("**"); // rack 2, a group: says nothing
    keys.type("*1\n");
    keys.setMinute(13);
    keys.type("8\n");
    const auto turns = keyedTurns(keys.floor());
    ASSERT_EQ(turns.size(), 3U);
    EXPECT_EQ(turns[2].place, 2) << "the first turn of round 2 is the third of the rack";
    EXPECT_EQ(secondsOfTurn(turns).count, 2);
}

// ---- a whole hour ----

// 22 people on 6 racks and 4 benches; nine rounds, some 200 sets.
TEST(ClassHourTest, AnHourTakesAtMost320KeysAndFortySetsAreSeen)
{
    Keyboard keys(tests::fullClass(), tests::gymBook());
    // Round by round; a number is typed for a set that was watched, ** for the rest of a rack.
    const auto round = [&keys](int minute, std::string_view script) {
        keys.setMinute(minute);
        const PadOutcome last = keys.type(script);
        EXPECT_FALSE(last.refused) << script << ": " << keys.pad().typed;
    };
    round(2, "/5\nl\n");      // late, comes at minute 2
    round(12, "/9\nl\n*1\n"); // very late
    round(15, "9.2\n****8\n8\n****7.1\n****10\n******");
    round(20, "****9\n8.3\n****8\n6\n******9.2\n**");
    round(22, "n23\n000\n"); // somebody new
    round(25, "8\n**9\n****8.2\n**7\n10\n********");
    round(30, "**7\n****8.1\n****9\n10\n****8\n****");
    round(33, "/13\np6.7\n1\n*1\n"); // lower back hurts at the row
    round(35, "8\n****9\n****7\n8\n******8\n**");
    round(38, "k10\n1\n"); // a bench is needed next door; its people share
    round(40, "6.1\n****8\n9\n******8\n****");
    round(44, "/4\ng\n*1\n"); // has to go
    round(45, "8\n8\n******9\n7\n****10\n**");
    round(50, "7.2\n****8\n****9\n8\n****");
    round(55, "**8\n9\n**7\n****");
    const ClosingCount count = countClosing(keys.floor());
    std::printf("[ hour ] %d keys; counted %d, accepted %d, group %d, not known %d, set aside %d "
                "of %zu\n",
                keys.keys(),
                count.counted,
                count.accepted,
                count.group,
                count.unknown,
                count.setAside,
                keys.floor().cells.size());
    EXPECT_LE(keys.keys(), 320);
    EXPECT_GE(count.counted, 40);
    EXPECT_GE(count.counted + count.accepted + count.group + count.unknown + count.setAside, 198);
    EXPECT_GT(count.unknown, 0) << "some were never keyed, and that is said";
    EXPECT_EQ(static_cast<std::size_t>(count.counted + count.accepted + count.group),
              keys.stored().size());
    for (const DoneSet& set : keys.stored()) {
        EXPECT_TRUE(set.performed.known == HowKnown::Counted || !set.performed.reserve);
    }
    EXPECT_EQ(personWithBib(keys.floor(), 23)->name, "");
}

} // namespace
} // namespace levelbar::floor_events_test
