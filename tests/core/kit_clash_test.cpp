// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/floor/kit_clash.h"
#include "tests/support/class_hour.h"
#include "tests/support/random.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cstdio>
#include <set>

namespace levelbar::kit_clash_test {
namespace {

using tests::kDumbbellPress;
using tests::kDumbbellRow;

FloorBook withPairs(std::vector<double> kilograms, int count = 2)
{
    FloorBook book = tests::gymBook();
    book.kit.handWeights.clear();
    for (const double mass : kilograms) {
        book.kit.handWeights.push_back({Implement::Dumbbell, Mass::ofKilograms(mass), count});
    }
    return withLoads(book);
}

KitWant want(int member, int station, int round, double kilograms, ExerciseId what = kDumbbellPress)
{
    return {{member}, station, round, what, Mass::ofKilograms(kilograms)};
}

TEST(KitClashTest, OnePairForThreeInARoundIsAClash)
{
    const FloorBook book = withPairs({8, 10, 12});
    const std::vector<KitWant> wants = {
        want(1, 7, 2, 10), want(2, 8, 2, 10), want(3, 9, 2, 10), want(4, 9, 1, 10)};
    const auto clashes = findClashes(wants, book);
    ASSERT_EQ(clashes.size(), 1U);
    EXPECT_EQ(clashes.front().round, 2);
    EXPECT_EQ(clashes.front().piece.count, 6) << "single dumbbells";
    EXPECT_EQ(clashes.front().owned, 2);
    EXPECT_EQ(clashes.front().wants.size(), 3U);
    const Phrase said = clashPhrase(clashes.front());
    EXPECT_EQ(fill(said.text, said.arguments), "Round 2: 6 of 10 kg wanted, 2 there (people: 3).");
}

TEST(KitClashTest, NothingIsShortWhileNobodyHasSaidWhatTheGymOwns)
{
    FloorBook book = withPairs({10});
    book.kit.isAssumed = true;
    EXPECT_TRUE(findClashes(std::vector{want(1, 7, 1, 11), want(2, 8, 1, 11)}, book).empty());
}

TEST(KitClashTest, PeopleOfOneStationHandThePairOn)
{
    const FloorBook book = withPairs({10});
    EXPECT_TRUE(findClashes(std::vector{want(1, 7, 1, 10), want(2, 7, 1, 10)}, book).empty());
    EXPECT_EQ(findClashes(std::vector{want(1, 7, 1, 10), want(2, 8, 1, 10)}, book).size(), 1U);
}

TEST(KitClashTest, PlatesOfRacksSideBySideAreCounted)
{
    FloorBook book = tests::gymBook();
    for (PlateKind& plate : book.kit.plates) {
        plate.count = 2;
    }
    book = withLoads(book);
    const auto wants = std::vector{want(1, 1, 1, 60, tests::kBench),  // 20 a side
                                   want(2, 2, 1, 65, tests::kSquat)}; // 20 + 2.5
    const auto clashes = findClashes(wants, book);
    ASSERT_EQ(clashes.size(), 1U);
    EXPECT_DOUBLE_EQ(clashes.front().piece.mass.kilograms(), 20.0);
}

TEST(KitClashTest, OffersTheOtherOrderBeforeAnotherLoad)
{
    const FloorBook book = withPairs({8, 10, 12});
    const std::vector<KitWant> wants = {
        want(1, 7, 1, 10), want(1, 7, 2, 12, kDumbbellRow), want(2, 8, 1, 10)};
    const auto fixes = fixesFor(findClashes(wants, book).front(), wants, book);
    ASSERT_GE(fixes.size(), 2U);
    EXPECT_EQ(fixes.front().fix, KitFix::OtherOrder);
    EXPECT_TRUE(std::any_of(fixes.begin(), fixes.end(), [](const auto& fix) {
        return fix.fix == KitFix::LighterLoad;
    }));
    for (const KitChange& fix : fixes) {
        EXPECT_TRUE(findClashes(after(fix, wants), book).empty());
    }
}

TEST(KitClashTest, WhoHasLiftedIsLeftAlone)
{
    const FloorBook book = withPairs({10, 12});
    const std::vector<KitWant> wants = {want(1, 7, 1, 10), want(2, 8, 1, 10)};
    const std::vector<MemberId> fixed = {{1}};
    const KitSettlement settled = settle(wants, book, fixed);
    ASSERT_EQ(settled.changes.size(), 1U);
    EXPECT_EQ(settled.changes.front().want, 1U);
    EXPECT_EQ(settled.shortPieces, 0);
    const std::vector<MemberId> both = {{1}, {2}};
    EXPECT_EQ(settle(wants, book, both).shortPieces, 2);
}

TEST(KitClashTest, AWholeClassIsSettledAsFarAsItGoes)
{
    FloorBook book = tests::gymBook();
    for (HandWeight& piece : book.kit.handWeights) {
        piece.count = 4; // two pairs of each for four benches
    }
    book = withLoads(book);
    ClassFloor floor = tests::fullClass();
    std::erase_if(floor.cells, [](const PadCell& cell) { return cell.round > 3; });
    const auto wants = wantsOf(floor);
    EXPECT_EQ(wants.size(), 66U);
    int before = 0;
    for (const KitClash& clash : findClashes(wants, book)) {
        before += clash.piece.count - clash.owned;
    }
    EXPECT_GT(before, 0);
    const KitSettlement settled = settle(wants, book);
    std::vector<KitWant> done = wants;
    for (const KitChange& change : settled.changes) {
        done = after(change, std::move(done));
    }
    std::printf("[ kit ] %d pieces short before, %d after %zu changes\n",
                before,
                settled.shortPieces,
                settled.changes.size());
    EXPECT_LT(settled.shortPieces, before);
}

int shortOf(const std::vector<KitWant>& wants, const FloorBook& book)
{
    int sum = 0;
    for (const KitClash& clash : findClashes(wants, book)) {
        sum += clash.piece.count - clash.owned;
    }
    return sum;
}

// Every combination of at most one change a person.
std::pair<int, int> bruteForce(const std::vector<KitWant>& start, const FloorBook& book)
{
    std::set<MemberId> people;
    for (const KitWant& one : start) {
        people.insert(one.member);
    }
    std::vector<std::pair<std::vector<KitWant>, int>> all = {{start, 0}};
    for (const MemberId member : people) {
        const auto changes = changesOf(member, start, book);
        const auto before = all;
        for (const auto& [wants, cost] : before) {
            for (const KitChange& change : changes) {
                all.emplace_back(after(change, wants), cost + change.cost);
            }
        }
    }
    std::pair<int, int> best{1000, 1000};
    for (const auto& [wants, cost] : all) {
        best = std::min(best, {shortOf(wants, book), cost});
    }
    return best;
}

TEST(KitClashTest, SettlesSmallClassesAsWellAsTryingEverything)
{
    tests::Random random(17);
    int withClash = 0;
    int unsettled = 0;
    for (int trial = 0; trial < 60; ++trial) {
        const FloorBook book = withPairs({8, 10, 12}, 2 + 2 * random.below(2));
        std::vector<KitWant> wants;
        const int people = 2 + random.below(2);
        for (int member = 1; member <= people + 1; ++member) {
            const int station = 7 + random.below(4);
            for (int round = 1; round <= 2; ++round) {
                if (random.chance(0.8)) {
                    wants.push_back(want(member,
                                         station,
                                         round,
                                         8.0 + 2.0 * random.below(3),
                                         random.chance(0.5) ? kDumbbellPress : kDumbbellRow));
                }
            }
        }
        const KitSettlement settled = settle(wants, book);
        ASSERT_TRUE(settled.isProvedBest);
        const auto best = bruteForce(wants, book);
        ASSERT_EQ(std::pair(settled.shortPieces, settled.cost), best) << trial;
        std::vector<KitWant> done = wants;
        for (const KitChange& change : settled.changes) {
            done = after(change, std::move(done));
        }
        ASSERT_EQ(shortOf(done, book), settled.shortPieces);
        withClash += shortOf(wants, book) > 0 ? 1 : 0;
        unsettled += settled.shortPieces > 0 ? 1 : 0;
    }
    EXPECT_GT(withClash, 20) << "too few clashes to tell";
    EXPECT_LT(unsettled, withClash);
}

} // namespace
} // namespace levelbar::kit_clash_test
