// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/today/meeting_brief.h"
#include "core/today/proposed_action.h"
#include "core/today/today_list.h"
#include "tests/support/random.h"
#include "tests/support/sets.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <numeric>

namespace levelbar::today_list_test {
namespace {

using tests::day;

const Day kToday = day("2026-11-20");

Attention reason(AttentionKind kind, double certainty = 1.0)
{
    Attention made;
    made.kind = kind;
    made.certainty = certainty;
    made.evidence = {kToday - 2, 1};
    made.arguments = {"Squat", "Squat", "5", "3"};
    return made;
}

Attention imbalance(SideTier tier, double certainty)
{
    Attention made = reason(AttentionKind::Imbalance, certainty);
    made.tier = tier;
    made.side = Side::Left;
    made.evidence.amount = static_cast<int>(tier);
    return made;
}

// One person a list of reasons, with ids from 1.
Review roster(const std::vector<std::vector<Attention>>& reasons)
{
    Review review;
    review.asOf = kToday;
    for (const auto& of : reasons) {
        MemberReview member;
        member.member.id = MemberId{static_cast<std::int64_t>(review.members.size()) + 1};
        member.attention = of;
        review.members.push_back(member);
    }
    return review;
}

std::vector<std::int64_t> order(const TodayList& list)
{
    std::vector<std::int64_t> ids;
    for (const TodayLine& line : list.lines) {
        ids.push_back(line.member.value);
    }
    return ids;
}

TEST(TodayListTest, SafetyComesFirstThenWhatIsSurest)
{
    const Review review = roster({{reason(AttentionKind::NoGain, 0.995)},
                                  {reason(AttentionKind::Absence)},
                                  {reason(AttentionKind::Clearance)},
                                  {imbalance(SideTier::Act, 0.93)},
                                  {imbalance(SideTier::SendOn, 0.91)},
                                  {reason(AttentionKind::Pain)},
                                  {},
                                  {reason(AttentionKind::Falling, 0.97)}});
    EXPECT_EQ(order(todayList(review, {}, {})), (std::vector<std::int64_t>{6, 5, 3, 1, 2, 4, 8}));
}

TEST(TodayListTest, PainThatComesBackStandsBeforePainSeenOnce)
{
    Attention often = reason(AttentionKind::Pain);
    often.repeats = 4;
    Attention once = reason(AttentionKind::Pain);
    once.repeats = 1;
    EXPECT_EQ(order(todayList(roster({{once}, {often}}), {}, {})),
              (std::vector<std::int64_t>{2, 1}));
}

TEST(TodayListTest, JoinsSeveralReasonsOfAPersonAndPutsTheGravestAtTheHead)
{
    const Review review = roster({{reason(AttentionKind::Falling, 0.97)}});
    const FactsByMember facts = {
        {MemberId{1}, {reason(AttentionKind::Retest), reason(AttentionKind::Clearance)}}};
    const TodayList list = todayList(review, facts, {});
    ASSERT_EQ(list.lines.size(), 1U);
    ASSERT_EQ(list.lines[0].reasons.size(), 3U);
    EXPECT_EQ(list.lines[0].reasons[0].kind, AttentionKind::Clearance);
    EXPECT_EQ(list.lines[0].reasons[1].kind, AttentionKind::Retest);
    EXPECT_EQ(list.lines[0].reasons[2].kind, AttentionKind::Falling);
}

TEST(TodayListTest, FactsAndWhatIsSentOnDoNotPayForDoubtfulReasons)
{
    // Facts are certain; were they counted, they would let the 0.5 in.
    const Review review = roster({{reason(AttentionKind::Absence)},
                                  {reason(AttentionKind::Pain)},
                                  {imbalance(SideTier::SendOn, 1.0)},
                                  {reason(AttentionKind::NoGain, 0.5)}});
    const TodayList list = todayList(review, {}, {});
    EXPECT_EQ(list.statistical, 0);
    EXPECT_DOUBLE_EQ(list.expectedFalse, 0.0);
    EXPECT_EQ(list.lines.size(), 3U);
}

// By trying every number of entries, the surest first.
TEST(TodayListTest, KeepsAsManyAsTheFalseShareAllowsAndNoMore)
{
    tests::Random random(11);
    for (int round = 0; round < 200; ++round) {
        std::vector<std::vector<Attention>> reasons;
        std::vector<double> certainties;
        const int people = 1 + round % 30;
        for (int i = 0; i < people; ++i) {
            certainties.push_back(0.6 + 0.4 * random.uniform());
            reasons.push_back({reason(i % 2 == 0 ? AttentionKind::Falling : AttentionKind::NoGain,
                                      certainties.back())});
        }
        std::sort(certainties.begin(), certainties.end(), std::greater<>());
        int kept = 0;
        for (int n = 1; n <= people; ++n) {
            const double sure = std::accumulate(certainties.begin(), certainties.begin() + n, 0.0);
            kept = (n - sure) / n <= kFalseShare ? n : kept;
        }
        const TodayList list = todayList(roster(reasons), {}, {});
        EXPECT_EQ(list.statistical, kept);
        EXPECT_EQ(static_cast<int>(list.lines.size()), kept);
        EXPECT_LE(list.expectedFalse, kFalseShare * kept + 1e-9);
    }
}

TEST(TodayListTest, TheShareIsOfWhatIsShownNotOfWhatWasSettled)
{
    // With the sure one, 0.81 passes; settled away, it would stand alone at 19 % false.
    const Review review =
        roster({{reason(AttentionKind::NoGain, 0.999)}, {reason(AttentionKind::NoGain, 0.81)}});
    EXPECT_EQ(todayList(review, {}, {}).statistical, 2);
    SettledReason settled;
    settled.member = MemberId{1};
    settled.kind = AttentionKind::NoGain;
    settled.day = kToday;
    settled.evidence = {kToday - 2, 1};
    EXPECT_EQ(todayList(review, {}, std::span(&settled, 1)).statistical, 0);
}

TEST(TodayListTest, OneKindOfOnePersonIsHiddenAndNothingElse)
{
    const Review review = roster({{reason(AttentionKind::Absence), reason(AttentionKind::Retest)},
                                  {reason(AttentionKind::Absence)}});
    SettledReason settled;
    settled.member = MemberId{1};
    settled.kind = AttentionKind::Absence;
    settled.until = kToday + 1;
    settled.day = kToday - 3;
    settled.evidence = {kToday - 2, 1};
    const TodayList list = todayList(review, {}, std::span(&settled, 1));
    ASSERT_EQ(order(list), (std::vector<std::int64_t>{2, 1}));
    EXPECT_EQ(list.lines[1].reasons.size(), 1U);
    EXPECT_EQ(list.aside, 1);
    settled.until = kToday; // the day has come
    EXPECT_EQ(todayList(review, {}, std::span(&settled, 1)).lines[0].reasons.size(), 2U);
}

// Settled two days ago on what reason() rests on.
SettledReason settledTwoDaysAgo(AttentionKind kind)
{
    SettledReason settled;
    settled.kind = kind;
    settled.day = kToday - 2;
    settled.evidence = {kToday - 2, 1};
    return settled;
}

Attention withEvidence(AttentionKind kind, Day on, int amount)
{
    Attention made = reason(kind);
    made.evidence = {on, amount};
    return made;
}

TEST(SettledTest, TheSameEvidenceIsNoNewsForAnyKind)
{
    for (int kind = 0; kind <= static_cast<int>(AttentionKind::TargetMissed); ++kind) {
        const auto of = static_cast<AttentionKind>(kind);
        EXPECT_FALSE(isNews(reason(of), settledTwoDaysAgo(of))) << kind;
        EXPECT_TRUE(isHidden(reason(of), settledTwoDaysAgo(of), kToday)) << kind;
    }
}

TEST(SettledTest, PainIsNewsOnALaterDayOrOnceMoreOnTheSame)
{
    const auto settled = settledTwoDaysAgo(AttentionKind::Pain);
    EXPECT_TRUE(isNews(withEvidence(AttentionKind::Pain, kToday - 1, 1), settled));
    EXPECT_TRUE(isNews(withEvidence(AttentionKind::Pain, kToday - 2, 2), settled));
    EXPECT_FALSE(isNews(withEvidence(AttentionKind::Pain, kToday - 9, 5), settled));
}

TEST(SettledTest, AnImbalanceIsNewsAStepUpOrFourWeeksOn)
{
    const auto settled = settledTwoDaysAgo(AttentionKind::Imbalance);
    const auto of = AttentionKind::Imbalance;
    EXPECT_TRUE(isNews(withEvidence(of, kToday - 2, 2), settled));
    EXPECT_FALSE(isNews(withEvidence(of, kToday, 1), settled)); // one more pair tells no more
    EXPECT_FALSE(isNews(withEvidence(of, settled.day + 27, 1), settled));
    EXPECT_TRUE(isNews(withEvidence(of, settled.day + 28, 1), settled));
}

TEST(SettledTest, ATrendIsNewsFourWeeksOn)
{
    for (const AttentionKind of : {AttentionKind::Falling, AttentionKind::NoGain}) {
        const auto settled = settledTwoDaysAgo(of);
        EXPECT_FALSE(isNews(withEvidence(of, settled.day + 27, 0), settled));
        EXPECT_TRUE(isNews(withEvidence(of, settled.day + 28, 0), settled));
    }
}

TEST(SettledTest, AnAbsenceARetestAndAMissAreNewsWithALaterDay)
{
    for (const AttentionKind of :
         {AttentionKind::Absence, AttentionKind::Retest, AttentionKind::TargetMissed}) {
        EXPECT_TRUE(isNews(withEvidence(of, kToday - 1, 0), settledTwoDaysAgo(of)));
    }
}

TEST(SettledTest, ALoadJumpIsNewsInAWeekOfItsOwn)
{
    const auto of = AttentionKind::LoadJump;
    EXPECT_FALSE(isNews(withEvidence(of, kToday + 4, 0), settledTwoDaysAgo(of)));
    EXPECT_TRUE(isNews(withEvidence(of, kToday + 5, 0), settledTwoDaysAgo(of)));
}

TEST(SettledTest, AClearanceIsNewsWithAnotherEndOrOnceItHasEnded)
{
    const auto settled = settledTwoDaysAgo(AttentionKind::Clearance);
    EXPECT_TRUE(isNews(withEvidence(AttentionKind::Clearance, kToday + 9, 1), settled));
    EXPECT_TRUE(isNews(withEvidence(AttentionKind::Clearance, kToday - 2, 2), settled));
}

TEST(SettledTest, OnlyNewPainBreaksThroughNotBefore)
{
    for (const AttentionKind of : {AttentionKind::Pain, AttentionKind::Absence}) {
        auto settled = settledTwoDaysAgo(of);
        settled.until = kToday + 7;
        EXPECT_TRUE(isHidden(reason(of), settled, kToday));
        EXPECT_EQ(isHidden(withEvidence(of, kToday, 1), settled, kToday),
                  of != AttentionKind::Pain);
        EXPECT_FALSE(isHidden(reason(of), settled, kToday + 7));
    }
}

TEST(SettledTest, RemembersTheNewestEvidenceOfTheKind)
{
    const std::vector<Attention> reasons = {withEvidence(AttentionKind::Imbalance, kToday - 1, 1),
                                            withEvidence(AttentionKind::Imbalance, kToday - 5, 3),
                                            withEvidence(AttentionKind::Pain, kToday, 9)};
    const EvidenceMark mark = newestEvidence(reasons, AttentionKind::Imbalance);
    EXPECT_EQ(mark, (EvidenceMark{kToday - 1, 3}));
}

TEST(SettledTest, SaysWhatWasSaid)
{
    auto settled = settledTwoDaysAgo(AttentionKind::NoGain);
    settled.because = "knows it";
    EXPECT_EQ(sentence({settledPhrase(settled)}), "No gain: settled on 18 Nov: knows it.");
    settled.until = kToday + 14;
    EXPECT_EQ(sentence({settledPhrase(settled)}), "No gain: not before 4 Dec.");
}

TEST(ProposedActionTest, EveryReasonHasASentenceAndOneAction)
{
    for (int kind = 0; kind <= static_cast<int>(AttentionKind::TargetMissed); ++kind) {
        for (const SideTier tier : {SideTier::Look, SideTier::Act, SideTier::SendOn}) {
            Attention made = reason(static_cast<AttentionKind>(kind));
            made.tier = tier;
            made.side = Side::Right;
            for (const Phrase& phrase : {reasonPhrase(made), actionPhrase(made)}) {
                const std::string text = sentence({phrase});
                EXPECT_TRUE(text.ends_with('.')) << text;
                EXPECT_EQ(text.find("%1"), std::string::npos) << text;
            }
            EXPECT_FALSE(actionWord(proposedAction(made)).empty());
        }
    }
}

TEST(ProposedActionTest, PainThatComesBackIsLeftOutAndLookedAt)
{
    Attention pain = reason(AttentionKind::Pain);
    pain.repeats = 2;
    EXPECT_EQ(proposedAction(pain), ProposedAction::AskBefore);
    pain.repeats = 3;
    EXPECT_EQ(proposedAction(pain), ProposedAction::LeaveOutAndAsk);
}

TEST(MeetingBriefTest, NamesWhoHadPainLacksClearanceComesBackOrIsNew)
{
    std::vector<MemberReview> people(5);
    for (std::size_t i = 0; i < people.size(); ++i) {
        people[i].member.id = MemberId{static_cast<std::int64_t>(i) + 1};
        people[i].daysSeen = 20;
        people[i].lastSeen = kToday - 7;
    }
    people[0].daysSeen = 0;
    people[0].lastSeen.reset();
    people[1].lastSeen = kToday - 22;
    Attention pain = reason(AttentionKind::Pain);
    pain.evidence = {kToday - 7, 1};
    people[2].attention = {pain};
    people[3].attention = {pain};
    people[3].lastSeen = kToday - 3; // was here since, without pain
    std::vector<ExpectedMember> expected;
    for (const MemberReview& person : people) {
        expected.push_back({&person, kToday + 100});
    }
    expected[4].clearedUntil = kToday + 14;
    auto brief = meetingBrief(expected, kToday, true);
    ASSERT_EQ(brief.size(), 4U);
    EXPECT_EQ(brief[0].member, MemberId{3});
    EXPECT_EQ(sentence({brief[0].what}), "Had pain last time: Squat of 10 in Squat.");
    EXPECT_EQ(brief[1].kind, BriefKind::Clearance);
    EXPECT_EQ(sentence({brief[1].what}), "Clearance ends on 4 Dec.");
    EXPECT_EQ(brief[2].member, MemberId{2});
    EXPECT_EQ(brief[3].kind, BriefKind::New);
    people[3].attention[0].repeats = 4;
    brief = meetingBrief(expected, kToday, true);
    ASSERT_EQ(brief.size(), 5U) << "it keeps coming back";
    EXPECT_EQ(sentence({brief[1].what}),
              "Had pain on 13 Nov: Squat of 10 in Squat. Leave it out until it was looked at.");
    people[3].attention[0].repeats = 0;
    expected[4].clearedUntil.reset();
    EXPECT_EQ(sentence({meetingBrief(expected, kToday, true)[1].what}), "No clearance on file.");
    EXPECT_EQ(meetingBrief(expected, kToday, false).size(), 3U); // the gym keeps none
}

} // namespace
} // namespace levelbar::today_list_test
