// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/floor/worth_eyes.h"
#include "core/plan/target.h"
#include "core/strength/rep_curve.h"
#include "core/strength/strength.h"
#include "core/trend/trend.h"
#include "tests/support/random.h"
#include "tests/support/sets.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdio>
#include <numeric>

namespace levelbar::worth_eyes_test {
namespace {

const StrengthParameters kParameters = forExperience(Experience::Intermediate);
const Day kFirst = tests::day("2026-03-02");

// ln 1RM 4.0 (55 kg), spread of ln as given.
StrengthFit known(double spread)
{
    StrengthFit fit;
    fit.level = 4.0;
    fit.levelVariance = spread * spread;
    fit.factorVariance = 0.04;
    fit.shapeVariance = 0.03;
    return fit;
}

ComingSet eightWith(double reserve)
{
    return {4.0 + std::log(repFraction(8.0 + reserve)), 0.0, 8.0, reserve, 0};
}

EyesQuestion question(std::size_t cell, double spread)
{
    EyesQuestion made;
    made.cell = cell;
    made.member = {static_cast<std::int64_t>(cell) + 1};
    made.fit = known(spread);
    made.set = eightWith(2.0);
    return made;
}

TEST(ExpectedFallTest, TeachesMostWhereLeastIsKnown)
{
    const double wide = expectedFall(known(0.10), eightWith(2.0), kParameters);
    EXPECT_GT(wide, expectedFall(known(0.03), eightWith(2.0), kParameters));
    EXPECT_LT(wide, 0.01) << "no more than there is";
    EXPECT_GT(expectedFallUnknown(eightWith(2.0), kParameters), wide);
}

TEST(ExpectedFallTest, ASetNearTheEndTeachesMoreThanAnEasyOne)
{
    EXPECT_GT(expectedFall(known(0.06), eightWith(1.0), kParameters),
              expectedFall(known(0.06), eightWith(6.0), kParameters));
}

TEST(ExpectedFallTest, TheSecondSetOfADayTeachesLess)
{
    ComingSet second = eightWith(2.0);
    second.seenToday = 1;
    const double later = expectedFall(known(0.06), second, kParameters);
    EXPECT_GT(later, 0.0);
    EXPECT_LT(later, 0.5 * expectedFall(known(0.06), eightWith(2.0), kParameters));
}

// One counted session before; the fall said beforehand against the filter's own.
TEST(ExpectedFallTest, AgreesWithWhatTheFilterDoesWhenTheSetComesAsExpected)
{
    std::vector<PerformedSet> sets;
    for (int week = 0; week < 4; ++week) {
        sets.push_back(tests::set(kFirst + 7 * week, 1, 60, 8, 2));
    }
    const Day today = kFirst + 28;
    const auto fitOf = [today](const std::vector<PerformedSet>& all) {
        const std::vector<ExerciseHistory> one = {{{all, {}}, {}, {}, std::nullopt}};
        return fitMember(one, {Experience::Intermediate, {}}, today).front().value().fit;
    };
    const StrengthFit before = fitOf(sets);
    const ComingSet coming{std::log(60.0), 0.0, 8.0, 2.0, 0};
    const double said = expectedFall(before, coming, kParameters);
    sets.push_back(tests::set(today, 1, 60, 8, 2));
    const double came = before.levelVariance - fitOf(sets).levelVariance;
    // The filter also weighs the set by its tail, and learns the day from it.
    EXPECT_GT(said, 0.5 * came);
    EXPECT_LT(said, 2.0 * came);
}

TEST(WorthEyesTest, PicksSixAtMostThoseThatTeachMost)
{
    std::vector<EyesQuestion> round;
    for (std::size_t i = 0; i < 10; ++i) {
        round.push_back(question(i, 0.02 + 0.01 * static_cast<double>(i)));
    }
    const auto picks = worthEyes(round, kParameters);
    ASSERT_EQ(picks.size(), kMostEyes);
    for (std::size_t i = 0; i < picks.size(); ++i) {
        EXPECT_EQ(picks[i].cell, 9 - i);
    }
}

TEST(WorthEyesTest, SafetyComesFirstButLeavesHalfForLearning)
{
    std::vector<EyesQuestion> round;
    for (std::size_t i = 0; i < 12; ++i) {
        round.push_back(question(i, 0.02 + 0.01 * static_cast<double>(i)));
    }
    for (std::size_t i = 0; i < 5; ++i) {
        round[i].reasons.isNew = true;
    }
    round[1].reasons.hasPain = true;
    round[3].reasons.isMaximum = true;
    const auto picks = worthEyes(round, kParameters);
    ASSERT_EQ(picks.size(), 6U);
    EXPECT_EQ(picks[0].cell, 1U) << "pain";
    EXPECT_EQ(picks[1].cell, 3U) << "a maximum";
    EXPECT_EQ(picks[2].cell, 4U) << "new, and least known of the new";
    EXPECT_EQ(picks[3].cell, 11U);
    EXPECT_FALSE(picks[3].isForSafety);
}

TEST(WorthEyesTest, OnePersonOnceAndNothingThatTeachesNothing)
{
    std::vector<EyesQuestion> round = {question(0, 0.05), question(1, 0.06), question(2, 0.07)};
    round[1].member = round[0].member;
    round[2].hasLoad = false;
    const auto picks = worthEyes(round, kParameters);
    ASSERT_EQ(picks.size(), 1U);
    EXPECT_EQ(picks.front().cell, 1U);
}

// ---- eight weeks in an invented class ----

constexpr int kPeople = 24;
constexpr int kSessions = 16;
constexpr int kRounds = 3;

struct Pupil {
    double truth = 0.0; // ln 1RM on the last day
    std::vector<PerformedSet> past;
    // By session, then round: as it would be counted, and as planned.
    std::vector<std::array<PerformedSet, kRounds>> counted;
    std::vector<std::array<PerformedSet, kRounds>> accepted;
    std::vector<double> plannedReserve;
};

// Two sessions a week. Each has a strength, a rep curve and a way to name the reserve of their
// own; a third has twelve sessions behind them, a third three, a third none.
Pupil makePupil(tests::Random& random, int index)
{
    Pupil pupil;
    const double level = random.normal(std::log(60.0), 0.25);
    const double factor = std::exp(random.normal(0.0, 0.25));
    const double perWeek = random.normal(0.003, 0.003);
    const double bias = random.normal(-0.4, 0.4);
    const double planError = random.normal(0.0, 0.05);
    constexpr std::array kBehind = {12, 3, 0};
    const int behind = kBehind[static_cast<std::size_t>(index % 3)];
    for (int session = -behind; session < kSessions; ++session) {
        const double strength = level + perWeek * session / 2.0;
        const double dayEffect = random.normal(0.0, 0.025);
        const int reps = 5 + random.below(6);
        const int left = 1 + random.below(5);
        const double share = repFraction(1.0 + (reps + left - 1.0) / factor);
        const double load =
            std::round(std::exp(strength + planError + random.normal(0.0, 0.02)) * share / 2.5) *
            2.5;
        std::array<PerformedSet, kRounds> counted;
        std::array<PerformedSet, kRounds> accepted;
        for (int round = 0; round < kRounds; ++round) {
            const double average = repsAtFraction(load / std::exp(strength + dayEffect));
            const double possible = 1.0 + (average - 1.0) * factor - 0.4 * round +
                                    random.normal(0.0, 0.5 + 0.035 * reps);
            const int done = std::max(0, std::min(reps, static_cast<int>(possible)));
            const double named = possible - done + bias + random.normal(0.0, 0.6);
            const auto at = static_cast<std::size_t>(round);
            const Day day = kFirst + session * 7 / 2 + (session < 0 ? -1 : 0);
            counted[at] = tests::set(
                day, round + 1, load, done, std::max(0, static_cast<int>(std::lround(named))));
            accepted[at] = tests::set(day, round + 1, load, done);
            accepted[at].known = HowKnown::Accepted;
        }
        if (session < 0) {
            pupil.past.push_back(counted.front());
        } else {
            pupil.counted.push_back(counted);
            pupil.accepted.push_back(accepted);
            pupil.plannedReserve.push_back(left);
        }
    }
    pupil.truth = level + perWeek * kSessions / 2.0;
    return pupil;
}

std::optional<StrengthFit> fitOf(const std::vector<PerformedSet>& sets, Day today)
{
    const std::vector<ExerciseHistory> one = {{{sets, {}}, {}, {}, std::nullopt}};
    const auto fits = fitMember(one, {Experience::Intermediate, {}}, today);
    return fits.front() ? std::optional(fits.front()->fit) : std::nullopt;
}

enum class Policy { Chosen, Random, All };

std::vector<EyesQuestion> askAll(const std::vector<Pupil>& pupils,
                                 const std::vector<std::optional<StrengthFit>>& fits,
                                 const std::vector<int>& seen,
                                 std::size_t session)
{
    std::vector<EyesQuestion> round;
    for (std::size_t i = 0; i < pupils.size(); ++i) {
        const PerformedSet& planned = pupils[i].accepted[session].front();
        EyesQuestion made;
        made.cell = i;
        made.member = {static_cast<std::int64_t>(i) + 1};
        made.fit = fits[i];
        made.set = {std::log(planned.load.kilograms()),
                    0.0,
                    static_cast<double>(*planned.reps),
                    pupils[i].plannedReserve[session],
                    seen[i]};
        round.push_back(made);
    }
    return round;
}

// Mean error of ln 1RM at the end.
double errorAfter(Policy policy, const std::vector<Pupil>& pupils, std::uint64_t seed)
{
    tests::Random random(seed);
    std::vector<std::vector<PerformedSet>> histories;
    for (const Pupil& pupil : pupils) {
        histories.push_back(pupil.past);
    }
    for (std::size_t session = 0; session < kSessions; ++session) {
        std::vector<std::optional<StrengthFit>> fits(pupils.size());
        for (std::size_t i = 0; i < pupils.size() && policy == Policy::Chosen; ++i) {
            fits[i] = fitOf(histories[i], pupils[i].accepted[session].front().day);
        }
        std::vector<int> seen(pupils.size());
        for (std::size_t round = 0; round < kRounds; ++round) {
            std::vector<bool> isCounted(pupils.size(), policy == Policy::All);
            if (policy == Policy::Chosen) {
                for (const EyesPick& pick :
                     worthEyes(askAll(pupils, fits, seen, session), kParameters)) {
                    isCounted[pick.cell] = true;
                    ++seen[pick.cell];
                }
            }
            for (std::size_t left = policy == Policy::Random ? kMostEyes : 0; left > 0;) {
                const auto at = static_cast<std::size_t>(random.below(kPeople));
                left -= isCounted[at] ? 0 : 1;
                isCounted[at] = true;
            }
            for (std::size_t i = 0; i < pupils.size(); ++i) {
                histories[i].push_back(
                    (isCounted[i] ? pupils[i].counted : pupils[i].accepted)[session][round]);
            }
        }
    }
    double sum = 0.0;
    for (std::size_t i = 0; i < pupils.size(); ++i) {
        const auto fit = fitOf(histories[i], kFirst + 7 * kSessions / 2);
        sum += fit ? std::abs(fit->level - pupils[i].truth) : 1.0;
    }
    return sum / kPeople;
}

TEST(WorthEyesTest, SixChosenSetsARoundTeachMoreThanSixAtRandom)
{
    constexpr int kClasses = 16;
    double chosen = 0.0;
    double atRandom = 0.0;
    double all = 0.0;
    int better = 0;
    for (std::uint64_t seed = 1; seed <= kClasses; ++seed) {
        tests::Random random(seed);
        std::vector<Pupil> pupils;
        for (int i = 0; i < kPeople; ++i) {
            pupils.push_back(makePupil(random, i));
        }
        const double ours = errorAfter(Policy::Chosen, pupils, seed);
        const double theirs = errorAfter(Policy::Random, pupils, seed);
        chosen += 100.0 * ours / kClasses;
        atRandom += 100.0 * theirs / kClasses;
        all += 100.0 * errorAfter(Policy::All, pupils, seed) / kClasses;
        better += ours < theirs ? 1 : 0;
    }
    std::printf("[ eyes ] mean error of ln 1RM after 8 weeks: six chosen %.2f %%, six at random "
                "%.2f %%, all 24 counted %.2f %%; chosen better in %d of %d classes\n",
                chosen,
                atRandom,
                all,
                better,
                kClasses);
    EXPECT_LT(chosen, atRandom);
}

// ---- who only ever presses Enter ----

// The program proposes, the instructor presses Enter: three sets, twice a week. A raise needs a
// counted set, so the load stays where it began.
class EnterOnly {
public:
    explicit EnterOnly(double start, bool isFirstDayCounted)
        : m_isFirstDayCounted(isFirstDayCounted)
        , m_load(Mass::ofKilograms(start))
    {
        Exercise bench;
        bench.id = {1};
        bench.implement = Implement::Barbell;
        m_library.exercises = {bench};
        m_history.member.experience = Experience::Intermediate;
        m_history.sets = {{{1}, Side::Both, {}}};
    }

    ExerciseFit nextSession(Day day)
    {
        auto& sets = m_history.sets.front().sets;
        if (!sets.empty()) {
            const auto target =
                targetFor(m_history, m_library, m_kit, {{1}, Side::Both, 8, Reserve{20}, day});
            m_load = target && target->progression.load ? target->progression.load->load : m_load;
        }
        const bool isCounted = sets.empty() && m_isFirstDayCounted;
        for (int number = 1; number <= 3; ++number) {
            sets.push_back(tests::set(day, number, m_load.kilograms(), 8));
            sets.back().known = isCounted ? HowKnown::Counted : HowKnown::Accepted;
            if (isCounted) {
                sets.back().reserve = Reserve{20};
            }
        }
        const std::vector<ExerciseHistory> one = {{{sets, {}}, {}, {}, std::nullopt}};
        return fitMember(one, {Experience::Intermediate, {}}, day).front().value();
    }

    [[nodiscard]] double load() const { return m_load.kilograms(); }

private:
    bool m_isFirstDayCounted;
    Mass m_load;
    Library m_library;
    MemberHistory m_history;
    Kit m_kit = assumedKit();
};

TEST(OnlyEnterTest, TwelveWeeksOfEnterNarrowNothingAndNothingRises)
{
    tests::Random random(8);
    double least = 10.0;
    for (int person = 0; person < 10; ++person) {
        const double start = 2.5 * std::round(random.uniform(12.0, 36.0));
        EnterOnly instructor(start, person % 2 == 0);
        double afterTwoWeeks = 0.0;
        for (int session = 0; session < 24; ++session) {
            const Day day = kFirst + session * 7 / 2;
            const ExerciseFit fit = instructor.nextSession(day);
            ASSERT_NE(trendOf(fit, day).call, TrendCall::Rising);
            const double spread = strengthOf(fit, Side::Both, day).logSpread;
            afterTwoWeeks = session == 3 ? spread : afterTwoWeeks;
            if (session == 23) {
                least = std::min(least, spread / afterTwoWeeks);
            }
        }
        EXPECT_LE(instructor.load(), start) << "no key raised it";
    }
    std::printf("[ enter ] interval after 12 weeks over that after 2: at least %.2f\n", least);
    EXPECT_GT(least, 0.9);
}

} // namespace
} // namespace levelbar::worth_eyes_test
