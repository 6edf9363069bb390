// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/exercise/rung_decision.h"
#include "storage/exercise_detail_store.h"
#include "storage/ladder_store.h"
#include "storage/store_error.h"
#include "tests/support/logbook_fixture.h"

#include <algorithm>
#include <map>

namespace levelbar::storage::ladder_store_test {
namespace {

using tests::exercise;
using tests::kNow;

const Day kToday{20600};
constexpr double kBodyMass = 80.0;

// A person on one rung of a shipped ladder, with sessions made to measure.
class OnRung {
public:
    OnRung(const Ladder& ladder, std::size_t place, const Exercise& exercise)
        : m_ladder(ladder)
        , m_place(place)
        , m_exercise(exercise)
    {
    }

    [[nodiscard]] const Rung& rung() const { return m_ladder.rungs[m_place]; }

    // As many sessions as asked for, the last one `back` days ago.
    [[nodiscard]] std::vector<PerformedSet> sessions(int count, int amount, int back = 3) const
    {
        std::vector<PerformedSet> sets;
        for (int i = count - 1; i >= 0; --i) {
            for (int number = 1; number <= rung().up.sets; ++number) {
                PerformedSet set;
                set.day = kToday - back - 2 * i;
                set.number = number;
                (m_exercise.amount == AmountKind::Reps      ? set.reps
                 : m_exercise.amount == AmountKind::Seconds ? set.secondsTenths
                                                            : set.metresTenths) =
                    m_exercise.amount == AmountKind::Reps ? amount : amount * 10;
                set.load = Mass::ofKilograms(kBodyMass * rung().up.loadPercent / 100.0);
                sets.push_back(set);
            }
        }
        return sets;
    }

    [[nodiscard]] RungDecision decide(const std::vector<PerformedSet>& sets) const
    {
        RungQuestion question;
        question.sets = sets;
        question.otherSide = sets;
        question.isOneSided = m_exercise.sidedness == Sidedness::SingleSided;
        question.amount = m_exercise.amount;
        question.today = kToday;
        question.bodyMassKilograms = kBodyMass;
        return decideRung(m_ladder, m_place, question);
    }

private:
    const Ladder& m_ladder;
    std::size_t m_place;
    const Exercise& m_exercise;
};

void expectUpGateWorks(const OnRung& on)
{
    const GateUp& up = on.rung().up;
    EXPECT_EQ(on.decide(on.sessions(up.sessions, up.amount)).reason, RungReason::GateReached);
    EXPECT_EQ(on.decide(on.sessions(up.sessions - 1, up.amount)).reason, RungReason::MoreSessions);
    const RungReason short1 = on.decide(on.sessions(up.sessions, up.amount - 1)).reason;
    EXPECT_TRUE(short1 == RungReason::NotYet) << static_cast<int>(short1);
    auto unclean = on.sessions(up.sessions, up.amount);
    unclean.back().isClean = false;
    EXPECT_EQ(on.decide(unclean).reason, RungReason::NotClean);
    if (up.loadPercent > 0) {
        auto light = on.sessions(up.sessions, up.amount);
        light.back().load = Mass::ofKilograms(kBodyMass * (up.loadPercent - 1) / 100.0);
        EXPECT_EQ(on.decide(light).reason, RungReason::TooLight);
    }
}

void expectDownGateWorks(const OnRung& on)
{
    const GateUp& up = on.rung().up;
    const GateDown& down = on.rung().down;
    auto sore = on.sessions(up.sessions, up.amount);
    sore.back().pain = down.pain;
    EXPECT_EQ(on.decide(sore).reason, RungReason::Pain);
    sore.back().pain = down.pain - 1;
    EXPECT_EQ(on.decide(sore).reason, RungReason::SomePain);
    EXPECT_EQ(on.decide(on.sessions(up.sessions, up.amount, down.daysAway + 1)).reason,
              RungReason::Absence);
    EXPECT_EQ(on.decide(on.sessions(up.sessions, up.amount, down.daysAway)).reason,
              RungReason::GateReached);
    EXPECT_EQ(on.decide(on.sessions(down.sessions, down.fewerThan - 1)).reason, RungReason::TooFew);
    EXPECT_NE(on.decide(on.sessions(down.sessions, down.fewerThan)).reason, RungReason::TooFew);
    EXPECT_NE(on.decide(on.sessions(down.sessions - 1, down.fewerThan - 1)).reason,
              RungReason::TooFew);
}

TEST(ShippedLaddersTest, StandForEachPatternAndPassTheCheck)
{
    const Logbook logbook = Logbook::inMemory(kNow);
    const auto ladders = LadderStore(logbook).all();
    EXPECT_EQ(checkLadders(ladders, LibraryStore(logbook).all().exercises), ladders);
    std::map<Pattern, int> patterns;
    for (const Ladder& ladder : ladders) {
        ++patterns[ladder.pattern];
        EXPECT_GE(ladder.rungs.size(), 6U) << ladder.key;
        EXPECT_TRUE(ladder.isShipped);
    }
    EXPECT_EQ(patterns.size(), 9U);
    EXPECT_FALSE(patterns.contains(Pattern::Other));
}

TEST(ShippedLaddersTest, EveryGateOpensAndClosesWhereItSays)
{
    const Logbook logbook = Logbook::inMemory(kNow);
    std::map<std::string, Exercise> byKey;
    for (const Exercise& each : LibraryStore(logbook).all().exercises) {
        byKey.emplace(each.key, each);
    }
    int rungs = 0;
    for (const Ladder& ladder : LadderStore(logbook).all()) {
        for (std::size_t place = 0; place < ladder.rungs.size(); ++place) {
            SCOPED_TRACE(ladder.key + " " + std::to_string(place + 1));
            const Rung& rung = ladder.rungs[place];
            const Exercise& each = byKey.at(rung.exerciseKey);
            // A share of body mass can only be asked where a load is typed.
            EXPECT_TRUE(rung.up.loadPercent == 0 || each.load != LoadKind::None);
            const OnRung on(ladder, place, each);
            expectUpGateWorks(on);
            expectDownGateWorks(on);
            const bool isLast = place + 1 == ladder.rungs.size();
            EXPECT_EQ(on.decide(on.sessions(rung.up.sessions, rung.up.amount)).move,
                      isLast ? RungMove::Stay : RungMove::Up);
            EXPECT_EQ(on.decide(on.sessions(rung.down.sessions, rung.down.fewerThan - 1)).move,
                      place == 0 ? RungMove::Stay : RungMove::Down);
            ++rungs;
        }
    }
    EXPECT_GE(rungs, 60);
}

Ladder changedPushUps(const Logbook& logbook)
{
    Ladder ladder = LadderStore(logbook).all().front();
    ladder.name = "Our push-ups";
    ladder.isShipped = false;
    ladder.rungs.resize(3);
    ladder.rungs[1] = {"close-grip-push-up", "on the low box", {8, 1, 3, 5}, {4, 14, 2, 3}, "ours"};
    return ladder;
}

TEST(LadderStoreTest, TheGymsVersionStandsInTheShippedOnesPlaceUntilItGoes)
{
    Logbook logbook = Logbook::inMemory(kNow);
    const auto shipped = LadderStore(logbook).all();
    const Ladder own = changedPushUps(logbook);
    {
        Action action(logbook, ActionKind::EditGym, kNow);
        LadderStore::put(action, own);
        EXPECT_TRUE(action.commit().touchesLibrary);
    }
    auto ladders = LadderStore(logbook).all();
    ASSERT_EQ(ladders.size(), shipped.size());
    EXPECT_EQ(ladders.front(), own);
    {
        Action action(logbook, ActionKind::EditGym, kNow);
        LadderStore::removeOwn(action, own.key);
        action.commit();
    }
    EXPECT_EQ(LadderStore(logbook).all(), shipped);
    takeBack(logbook, lastTakeable(logbook).value(), kNow);
    EXPECT_EQ(LadderStore(logbook).all().front(), own);
    takeBack(logbook, lastTakeable(logbook).value(), kNow);
    EXPECT_EQ(LadderStore(logbook).all(), shipped);
}

TEST(LadderStoreTest, ALadderOfTheGymsOwnIsChangedAndTakenBackInOneStep)
{
    Logbook logbook = Logbook::inMemory(kNow);
    Ladder own = changedPushUps(logbook);
    own.key = "own";
    own.pattern = Pattern::Carry;
    const auto save = [&](const Ladder& ladder) {
        Action action(logbook, ActionKind::EditGym, kNow);
        LadderStore::put(action, ladder);
        action.commit();
    };
    save(own);
    EXPECT_EQ(LadderStore(logbook).all().back(), own) << "by pattern, then by age";
    Ladder longer = own;
    std::swap(longer.rungs[0], longer.rungs[2]);
    longer.rungs.push_back(own.rungs[1]);
    longer.name = "Longer";
    save(longer);
    EXPECT_EQ(LadderStore(logbook).all().back(), longer);
    takeBack(logbook, lastTakeable(logbook).value(), kNow);
    EXPECT_EQ(LadderStore(logbook).all().back(), own);
}

TEST(LadderStoreTest, ARungOfAnUnknownExerciseIsRefusedWhole)
{
    Logbook logbook = Logbook::inMemory(kNow);
    const auto before = LadderStore(logbook).all();
    Ladder wrong = changedPushUps(logbook);
    wrong.rungs[2].exerciseKey = "nothing";
    Action action(logbook, ActionKind::EditGym, kNow);
    try {
        LadderStore::put(action, wrong);
        FAIL() << "nothing was thrown";
    } catch (const StoreError& error) {
        EXPECT_EQ(error.kind(), StoreErrorKind::Constraint);
    }
}

TEST(ExerciseDetailStoreTest, AChangeOfAShippedOneIsTakenBackByWritingWhatWasShipped)
{
    Logbook logbook = Logbook::inMemory(kNow);
    const Exercise bench = exercise(logbook, "Barbell bench press");
    const ExerciseDetail shipped = ExerciseDetailStore(logbook).find(bench.id);
    const auto save = [&](const ExerciseDetail& detail) {
        Action action(logbook, ActionKind::EditGym, kNow);
        ExerciseDetailStore::set(action, bench, detail);
        action.commit();
    };
    const ExerciseDetail empty; // nothing at all is a change too
    save(empty);
    EXPECT_EQ(ExerciseDetailStore(logbook).find(bench.id), empty);
    ExerciseDetail other = shipped;
    other.cautions = {"Ask first"};
    other.areas = {"neck"};
    other.benchAngle = -20;
    save(other);
    EXPECT_EQ(ExerciseDetailStore(logbook).find(bench.id), other);
    EXPECT_EQ(ExerciseDetailStore(logbook).all().at(bench.id), other);
    takeBack(logbook, lastTakeable(logbook).value(), kNow);
    EXPECT_EQ(ExerciseDetailStore(logbook).find(bench.id), empty);
    save(shipped);
    EXPECT_EQ(ExerciseDetailStore(logbook).find(bench.id), shipped);
    EXPECT_EQ(ExerciseDetailStore(logbook).find(ExerciseId{99999}), ExerciseDetail{});
}

} // namespace
} // namespace levelbar::storage::ladder_store_test
