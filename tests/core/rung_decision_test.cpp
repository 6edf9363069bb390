// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/exercise/rung_decision.h"
#include "tests/support/random.h"
#include "tests/support/sets.h"

#include <gtest/gtest.h>

#include <array>
#include <utility>

namespace levelbar::rung_decision_test {
namespace {

using tests::day;

const Day kToday = day("2026-06-30");

// Three rungs alike: 10 clean in 2 sets, 2 sessions running; down for pain of 3, more than 28
// days, or fewer than 4 in 2 sessions running.
Ladder ladder()
{
    Ladder made;
    for (const char* key : {"easy", "middle", "hard"}) {
        made.rungs.push_back({key, "", {10, 2, 2, 0}, {3, 28, 4, 2}, "invented"});
    }
    return made;
}

PerformedSet done(Day on, int number, int reps)
{
    PerformedSet set;
    set.day = on;
    set.number = number;
    set.reps = reps;
    return set;
}

// `back` days ago, one set for each count of reps.
std::vector<PerformedSet> session(int back, const std::vector<int>& reps)
{
    std::vector<PerformedSet> sets;
    for (const int count : reps) {
        sets.push_back(done(kToday - back, static_cast<int>(sets.size()) + 1, count));
    }
    return sets;
}

std::vector<PerformedSet> operator+(std::vector<PerformedSet> first,
                                    const std::vector<PerformedSet>& second)
{
    first.insert(first.end(), second.begin(), second.end());
    return first;
}

RungQuestion ask(const std::vector<PerformedSet>& sets)
{
    RungQuestion question;
    question.sets = sets;
    question.today = kToday;
    return question;
}

RungDecision decide(const std::vector<PerformedSet>& sets, std::size_t place = 1)
{
    return decideRung(ladder(), place, ask(sets));
}

std::vector<PerformedSet> gatePassed()
{
    return session(9, {10, 10}) + session(2, {12, 11});
}

TEST(RungDecisionTest, NothingDoneStays)
{
    const RungDecision decision = decide({});
    EXPECT_EQ(decision.move, RungMove::Stay);
    EXPECT_EQ(decision.reason, RungReason::NothingBefore);
}

TEST(RungDecisionTest, EnoughCleanSessionsInARowGoUp)
{
    const RungDecision decision = decide(gatePassed());
    EXPECT_EQ(decision.move, RungMove::Up);
    EXPECT_EQ(decision.reason, RungReason::GateReached);
    EXPECT_EQ(decision.sessionsReached, 2);
    EXPECT_EQ(decision.amount, 12);
    EXPECT_EQ(decision.daysAway, 2);
}

TEST(RungDecisionTest, OneSessionIsNotTwo)
{
    EXPECT_EQ(decide(session(2, {10, 10})).reason, RungReason::MoreSessions);
    EXPECT_EQ(decide(session(9, {10, 9}) + session(2, {10, 10})).reason, RungReason::MoreSessions);
    const RungDecision broken =
        decide(session(16, {10, 10}) + session(9, {10, 10}) + session(2, {10, 9}));
    EXPECT_EQ(broken.reason, RungReason::NotYet) << "in a row means up to the last session";
    EXPECT_EQ(broken.move, RungMove::Stay);
}

TEST(RungDecisionTest, SaysWhatTheLastSessionLacks)
{
    EXPECT_EQ(decide(session(2, {12})).reason, RungReason::TooFewSets);
    EXPECT_EQ(decide(session(2, {9, 9})).reason, RungReason::NotYet);
    auto unclean = gatePassed();
    unclean.back().isClean = false;
    EXPECT_EQ(decide(unclean).reason, RungReason::NotClean);
    auto form = gatePassed();
    form.back().stopped = StopReason::Form;
    EXPECT_EQ(decide(form).reason, RungReason::NotClean);
    auto keyed = gatePassed();
    keyed[2].known = HowKnown::Accepted;
    EXPECT_EQ(decide(keyed).move, RungMove::Up) << "one counted set of the session is enough";
    keyed[3].known = HowKnown::Group;
    EXPECT_EQ(decide(keyed).reason, RungReason::NotCounted);
    keyed[3].known = HowKnown::Sheet;
    EXPECT_EQ(decide(keyed).move, RungMove::Up);
}

TEST(RungDecisionTest, PainGoesDownBeforeAnythingElse)
{
    auto sore = gatePassed();
    sore.back().pain = 3;
    const RungDecision decision = decide(sore);
    EXPECT_EQ(decision.move, RungMove::Down);
    EXPECT_EQ(decision.reason, RungReason::Pain);
    EXPECT_EQ(decision.pain, 3);
    sore.back().pain = 2;
    EXPECT_EQ(decide(sore).reason, RungReason::SomePain);
    EXPECT_EQ(decide(sore).move, RungMove::Stay);
    sore.back().pain.reset();
    sore.back().stopped = StopReason::Pain;
    EXPECT_EQ(decide(sore).reason, RungReason::Pain) << "also without a score";
    auto before = gatePassed();
    before.front().pain = 9;
    EXPECT_EQ(decide(before).reason, RungReason::MoreSessions)
        << "only the last session sends down";
}

TEST(RungDecisionTest, AbsenceGoesDownTheDayAfterTheGate)
{
    EXPECT_EQ(decide(session(35, {10, 10}) + session(28, {10, 10})).move, RungMove::Up);
    const RungDecision away = decide(session(36, {10, 10}) + session(29, {10, 10}));
    EXPECT_EQ(away.move, RungMove::Down);
    EXPECT_EQ(away.reason, RungReason::Absence);
    EXPECT_EQ(away.daysAway, 29);
}

TEST(RungDecisionTest, TooFewTwiceInARowGoesDown)
{
    EXPECT_EQ(decide(session(9, {3, 2}) + session(2, {3, 3})).reason, RungReason::TooFew);
    EXPECT_EQ(decide(session(9, {3, 2}) + session(2, {3, 3})).move, RungMove::Down);
    EXPECT_EQ(decide(session(2, {3, 3})).reason, RungReason::NotYet) << "once";
    EXPECT_EQ(decide(session(9, {3, 4}) + session(2, {3, 3})).reason, RungReason::NotYet)
        << "the best set of a session counts";
}

TEST(RungDecisionTest, AShortSetWithRepsLeftIsNotTooFew)
{
    auto easy = session(9, {3, 3}) + session(2, {3, 3});
    easy[2].reserve = Reserve{10}; // one more: four were in it
    EXPECT_EQ(decide(easy).reason, RungReason::NotYet);
    easy[2].reserve = Reserve{0};
    EXPECT_EQ(decide(easy).reason, RungReason::TooFew);
    for (const StopReason reason : {StopReason::Planned, StopReason::Capped, StopReason::Time}) {
        auto cut = session(9, {3, 3}) + session(2, {3, 3});
        cut[2].stopped = reason;
        EXPECT_EQ(decide(cut).reason, RungReason::NotYet);
    }
    auto accepted = session(9, {3, 3}) + session(2, {3, 3});
    accepted[2].known = accepted[3].known = HowKnown::Accepted;
    EXPECT_EQ(decide(accepted).reason, RungReason::NotYet) << "nobody saw how it went";
}

TEST(RungDecisionTest, TheLadderEndsAtItsEnds)
{
    const RungDecision top = decide(gatePassed(), 2);
    EXPECT_EQ(top.move, RungMove::Stay);
    EXPECT_EQ(top.reason, RungReason::GateReached);
    EXPECT_TRUE(top.isAtEnd);
    const RungDecision bottom = decide(session(40, {10, 10}), 0);
    EXPECT_EQ(bottom.move, RungMove::Stay);
    EXPECT_EQ(bottom.reason, RungReason::Absence);
    EXPECT_TRUE(bottom.isAtEnd);
    EXPECT_EQ(decide(gatePassed(), 0).move, RungMove::Up);
    EXPECT_FALSE(decide(gatePassed(), 0).isAtEnd);
}

TEST(RungDecisionTest, WarmUpTodayAndTheTimeBeforeTheRungDoNotCount)
{
    auto ramp = gatePassed();
    ramp[2].kind = SetKind::Ramp;
    EXPECT_EQ(decide(ramp).reason, RungReason::TooFewSets);
    const auto today = gatePassed() + session(0, {1, 1});
    EXPECT_EQ(decide(today).move, RungMove::Up);
    const auto sets = gatePassed();
    RungQuestion question = ask(sets);
    question.since = kToday - 5;
    EXPECT_EQ(decideRung(ladder(), 1, question).reason, RungReason::MoreSessions);
    question.since = kToday - 1;
    EXPECT_EQ(decideRung(ladder(), 1, question).reason, RungReason::NothingBefore);
    question.since = kToday - 29;
    question.sets = {};
    EXPECT_EQ(decideRung(ladder(), 1, question).reason, RungReason::Absence)
        << "came to the rung and then stayed away";
}

TEST(RungDecisionTest, TheWeakerSideSetsTheReps)
{
    const auto left = gatePassed();
    auto right = gatePassed();
    RungQuestion question = ask(left);
    question.otherSide = right;
    question.isOneSided = true;
    EXPECT_EQ(decideRung(ladder(), 1, question).move, RungMove::Up);
    right.back().reps = 8;
    right[2].reps = 8;
    question.otherSide = right;
    EXPECT_EQ(decideRung(ladder(), 1, question).reason, RungReason::NotYet);
    EXPECT_EQ(decideRung(ladder(), 1, question).amount, 8);
    std::swap(question.sets, question.otherSide);
    EXPECT_EQ(decideRung(ladder(), 1, question).reason, RungReason::NotYet);
    EXPECT_EQ(decideRung(ladder(), 1, question).amount, 8) << "whichever side it is";
    std::swap(question.sets, question.otherSide);
    right.resize(2);
    question.otherSide = right;
    EXPECT_EQ(decideRung(ladder(), 1, question).reason, RungReason::TooFewSets)
        << "a day with one side alone";
}

TEST(RungDecisionTest, SecondsAndMetresAreTakenWhole)
{
    auto sets = gatePassed();
    for (PerformedSet& set : sets) {
        set.reps.reset();
        set.secondsTenths = 100;
    }
    RungQuestion question = ask(sets);
    question.amount = AmountKind::Seconds;
    EXPECT_EQ(decideRung(ladder(), 1, question).move, RungMove::Up);
    sets.back().secondsTenths = 99;
    question.sets = sets;
    EXPECT_EQ(decideRung(ladder(), 1, question).reason, RungReason::NotYet);
    for (PerformedSet& set : sets) {
        set.metresTenths = 105;
    }
    question.amount = AmountKind::Metres;
    EXPECT_EQ(decideRung(ladder(), 1, question).move, RungMove::Up);
}

TEST(RungDecisionTest, AGateWithLoadNeedsTheLoadAndTheBodyMass)
{
    Ladder loaded = ladder();
    loaded.rungs[1].up.loadPercent = 25;
    auto sets = gatePassed();
    for (PerformedSet& set : sets) {
        set.load = Mass::ofKilograms(20);
    }
    RungQuestion question = ask(sets);
    EXPECT_EQ(decideRung(loaded, 1, question).reason, RungReason::BodyMassUnknown);
    question.bodyMassKilograms = 80.0;
    EXPECT_EQ(decideRung(loaded, 1, question).move, RungMove::Up);
    question.bodyMassKilograms = 80.1;
    EXPECT_EQ(decideRung(loaded, 1, question).reason, RungReason::TooLight);
}

TEST(RungDecisionTest, EveryReasonHasASentenceWithItsNumbers)
{
    const auto sets = gatePassed() + session(1, {9, 9});
    const RungDecision decision = decide(sets);
    const auto arguments = rungReasonArguments(decision, ladder().rungs[1]);
    EXPECT_EQ(fill(rungReasonTemplate(decision.reason), arguments),
              "9 last time; 10 in each set are asked for.");
    for (int i = 0; i <= static_cast<int>(RungReason::GateReached); ++i) {
        RungDecision any;
        any.reason = static_cast<RungReason>(i);
        const std::string said =
            fill(rungReasonTemplate(any.reason), rungReasonArguments(any, ladder().rungs[1]));
        EXPECT_FALSE(said.empty()) << i;
        EXPECT_EQ(said.find("%1"), std::string::npos) << said;
        EXPECT_EQ(said.find("%2"), std::string::npos) << said;
    }
}

// The rules once more, written the long way for reps of both sides at once without reserve,
// reasons to stop, or load.
RungMove byHand(const std::vector<std::vector<PerformedSet>>& sessions, std::size_t place)
{
    int running = 0;
    int weak = 0;
    bool hurtsLast = false;
    for (const auto& sets : sessions) {
        int good = 0;
        int goodCounted = 0;
        int best = -1;
        int pain = 0;
        for (const PerformedSet& set : sets) {
            const bool isSeen = set.known == HowKnown::Counted || set.known == HowKnown::Sheet;
            const bool isGood = *set.reps >= 10 && set.isClean.value_or(true);
            good += isGood ? 1 : 0;
            goodCounted += isGood && isSeen ? 1 : 0;
            best = isSeen ? std::max(best, *set.reps) : best;
            pain = std::max(pain, set.pain.value_or(0));
        }
        running = good >= 2 && goodCounted >= 1 && pain == 0 ? running + 1 : 0;
        weak = best >= 0 && best < 4 ? weak + 1 : 0;
        hurtsLast = pain >= 3;
    }
    const bool isDown = hurtsLast || weak >= 2 || kToday - sessions.back().front().day > 28;
    if (isDown) {
        return place == 0 ? RungMove::Stay : RungMove::Down;
    }
    return running >= 2 && place < 2 ? RungMove::Up : RungMove::Stay;
}

TEST(RungDecisionTest, AgreesWithTheRulesWrittenTheLongWay)
{
    tests::Random random(20260630);
    const auto upTo = [&](int most) { return random.below(most + 1); };
    std::array<int, 3> seen{};
    for (int round = 0; round < 10000; ++round) {
        std::vector<std::vector<PerformedSet>> sessions;
        std::vector<PerformedSet> all;
        int back = 40 + upTo(15);
        const int level = upTo(14); // weak, middling and strong people
        const int count = 1 + upTo(4);
        for (int i = 0; i < count && back > 0; ++i) {
            std::vector<PerformedSet> sets;
            const int setCount = 1 + upTo(2);
            for (int k = 1; k <= setCount; ++k) {
                PerformedSet set = done(kToday - back, k, std::max(0, level - 1 + upTo(2)));
                set.known = upTo(3) == 0 ? HowKnown::Accepted : HowKnown::Counted;
                set.isClean = upTo(9) == 0 ? std::optional(false) : std::nullopt;
                set.pain = upTo(9) == 0 ? std::optional(upTo(5)) : std::nullopt;
                sets.push_back(set);
            }
            all = all + sets;
            sessions.push_back(sets);
            back -= 1 + upTo(16);
        }
        const auto place = static_cast<std::size_t>(upTo(2));
        const RungMove expected = byHand(sessions, place);
        ASSERT_EQ(decide(all, place).move, expected) << "round " << round;
        ++seen.at(static_cast<std::size_t>(expected));
    }
    for (const int times : seen) {
        EXPECT_GT(times, 100) << "each move is met often enough to prove something";
    }
}

} // namespace
} // namespace levelbar::rung_decision_test
