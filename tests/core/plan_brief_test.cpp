// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/today/plan_brief.h"

#include <gtest/gtest.h>

namespace levelbar::plan_brief_test {
namespace {

constexpr ExerciseId kRow{7};

class PlanBriefTest : public testing::Test {
protected:
    PlanBriefTest()
    {
        Exercise row;
        row.id = kRow;
        row.name = "Row";
        library.exercises = {row};
        PlanItem item;
        item.what.exercise = kRow;
        items = {item};
    }

    void aim(MemberId member, double kilograms, std::optional<double> last)
    {
        Target target;
        const Mass mass = Mass::ofKilograms(kilograms);
        target.progression.load = AvailableLoad{};
        target.progression.load->load = mass;
        target.progression.load->exact = exactWeight(mass);
        if (last) {
            target.progression.last = Mass::ofKilograms(*last);
        }
        answer.targets.push_back({member, 0, target});
    }

    [[nodiscard]] std::vector<std::string> lines() const
    {
        std::vector<std::string> all;
        for (const PlanBriefEntry& entry : planBrief(answer, items, library)) {
            all.push_back(sentence({entry.what}));
        }
        return all;
    }

    Library library;
    std::vector<PlanItem> items;
    MeetingPlanAnswer answer;
};

TEST_F(PlanBriefTest, NamesOnlyLoadsThatDifferFromTheLastOnes)
{
    aim(MemberId{1}, 62.5, 60.0);
    aim(MemberId{2}, 50.0, 50.0);
    aim(MemberId{3}, 40.0, std::nullopt);
    EXPECT_EQ(lines(), std::vector<std::string>{"Row: 62.5 kg, last time 60 kg."});
    EXPECT_EQ(planBrief(answer, items, library).front().member, MemberId{1});
}

TEST_F(PlanBriefTest, APersonWithoutATargetIsLeftOut)
{
    answer.targets.push_back({MemberId{1}, 0, tl::unexpected(Fault{})});
    EXPECT_TRUE(lines().empty());
}

TEST_F(PlanBriefTest, WhatTheGymHasTooFewOfComesFirst)
{
    aim(MemberId{1}, 62.5, 60.0);
    KitClash clash;
    clash.round = 2;
    clash.piece.implement = Implement::Dumbbell;
    clash.piece.mass = Mass::ofKilograms(10.0);
    clash.piece.count = 6;
    clash.owned = 4;
    answer.clashes = {clash};
    const auto brief = planBrief(answer, items, library);
    ASSERT_EQ(brief.size(), 2U);
    EXPECT_FALSE(brief.front().member.isStored());
    EXPECT_EQ(sentence({brief.front().what}), sentence({clashPhrase(clash)}));
}

} // namespace
} // namespace levelbar::plan_brief_test
