// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later

#include "core/plan/prediction.h"
#include "tests/support/cli_folder.h"

#include <nlohmann/json.hpp>

namespace levelbar::how_right_test {
namespace {

const Day kFirst = parseDay("2026-10-01").value();

class HowRightTest : public tests::CliFolder {
protected:
    void SetUp() override
    {
        storage::Logbook logbook = storage::Logbook::create(m_folder / "g.levelbar", tests::kNow);
        const MemberId member = tests::addMember(logbook, "M1", "Ann");
        for (int i = 0; i < 10; ++i) { // eight of ten inside 8 to 12
            keep(logbook, member, i, i < 8 ? 9 : 15);
        }
    }

    // A set planned with 8 to 12 reps expected, and what was then done of it.
    static void keep(storage::Logbook& logbook, MemberId member, int day, int reps)
    {
        PlannedSet planned;
        {
            storage::Action action(logbook, storage::ActionKind::PlanMeeting, tests::kNow);
            const ClassId morning = day == 0 ? storage::ClassStore::add(action, "Morning")
                                             : storage::ClassStore(logbook).find("Morning")->id;
            planned.meeting = storage::ClassStore::addMeeting(action, morning, kFirst + day, {});
            planned.member = member;
            planned.exercise = tests::exercise(logbook, "Barbell bench press").id;
            planned.load = Mass::ofKilograms(60);
            planned.amount = 8;
            planned.reserve = Reserve{20};
            planned.prediction = GivenPrediction{
                10.0, 8.0, 12.0, Experience::Advanced, kPredictionVersion, tests::kNow};
            planned.id = storage::SetStore::plan(action, planned);
            action.commit();
        }
        DoneSet done = tests::benchSet(logbook, member, kFirst + day, 1, reps);
        done.performed.reserve = Reserve{0};
        done.planned = planned.id;
        tests::logSet(logbook, done);
    }
};

TEST_F(HowRightTest, JsonCountsWhatFellInside)
{
    const auto ran = cli("how-right g.levelbar --from 2026-10-01 --to 2026-10-31 --json");
    ASSERT_EQ(ran.status, 0) << ran.error;
    const auto json = nlohmann::json::parse(ran.out);
    EXPECT_EQ(json["from"], "2026-10-01");
    EXPECT_EQ(json["to"], "2026-10-31");
    EXPECT_EQ(json["sets"], 10);
    EXPECT_EQ(json["people"], 1);
    EXPECT_EQ(json["inside"], 8);
    EXPECT_EQ(json["share"], 0.8);
    // Wilson 1927, z = 1.645, 8 of 10: worked by hand (0.541 to 0.931).
    EXPECT_NEAR(json["share_low"].get<double>(), 0.541, 0.002);
    EXPECT_NEAR(json["share_high"].get<double>(), 0.931, 0.002);
    ASSERT_EQ(json["by_exercise"].size(), 1U);
    EXPECT_EQ(json["by_exercise"][0]["exercise"], "Barbell bench press");
    EXPECT_EQ(json["by_level"][0]["level_of_person"], "advanced");
}

TEST_F(HowRightTest, BothEndsOfThePeriodCount)
{
    const auto of = [&](const char* period) {
        return nlohmann::json::parse(cli(std::string("how-right g.levelbar --json ") + period).out);
    };
    EXPECT_EQ(of("--from 2026-10-01 --to 2026-10-01")["sets"], 1);
    EXPECT_EQ(of("--from 2026-10-10 --to 2026-10-31")["sets"], 1);
    const auto none = of("--from 2026-11-01 --to 2026-11-30");
    EXPECT_EQ(none["sets"], 0);
    EXPECT_TRUE(none["share"].is_null());
}

TEST_F(HowRightTest, SaysItInWordsAndATable)
{
    const auto ran = cli("how-right g.levelbar --from 2026-10-01 --to 2026-10-31");
    EXPECT_EQ(ran.status, 0);
    for (const char* words : {"How right were we, 2026-10-01 to 2026-10-31",
                              "80 %",
                              "Barbell bench press",
                              "advanced"}) {
        EXPECT_NE(ran.out.find(words), std::string::npos) << ran.out;
    }
}

TEST_F(HowRightTest, WrongUsageAndAPeriodThatEndsBeforeItBeginsAreToldApart)
{
    EXPECT_EQ(cli("how-right g.levelbar --from 2026-02-30").status, 2);
    const auto ran = cli("how-right g.levelbar --from 2026-10-31 --to 2026-10-01");
    EXPECT_EQ(ran.status, 2);
    EXPECT_EQ(lines(ran.error), 1);
    EXPECT_EQ(cli("how-right none.levelbar").status, 3);
}

} // namespace
} // namespace levelbar::how_right_test
