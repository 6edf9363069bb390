// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later

#include "tests/support/dense_strength.h"
#include "tests/support/leg_data.h"
#include "tests/support/open_data_fixture.h"

#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include <cmath>
#include <map>
#include <string>
#include <vector>

// What the program shows of the strength and trend of the open leg data, worked out a second time
// from one dense system of equations.
namespace levelbar::leg_trend_test {
namespace {

using Json = nlohmann::json;
using tests::DenseStrength;

constexpr double kLegToday = 12.0;      // weeks: 2026-03-30
constexpr double kShown = 0.00051;      // half of the last decimal shown, and its own rounding
constexpr double kNormal95 = 1.6448536; // a nine-in-ten interval reaches so many spreads

class LegTrendTest : public tests::OpenDataFixture {};

std::map<std::string, DenseStrength>
denseOf(const std::map<std::string, std::vector<tests::DenseTest>>& exercises)
{
    std::vector<std::vector<tests::DenseTest>> all;
    all.reserve(exercises.size());
    for (const auto& [name, tests] : exercises) {
        all.push_back(tests);
    }
    const auto answers = tests::denseStrength(all, kLegToday);
    std::map<std::string, DenseStrength> byName;
    std::size_t next = 0;
    for (const auto& [name, tests] : exercises) {
        byName[name] = answers[next++];
    }
    return byName;
}

void expectStrength(const Json& shown, const DenseStrength& dense)
{
    const double side = shown["side"] == "left" ? -0.5 : 0.5;
    const double level = dense.level + side * dense.difference;
    const double reach =
        kNormal95 * std::sqrt(dense.levelVariance + side * side * dense.differenceVariance +
                              2.0 * side * dense.levelDifferenceCovariance);
    EXPECT_NEAR(shown["one_rm_kg"], std::exp(level), kShown);
    EXPECT_NEAR(shown["low_kg"], std::exp(level - reach), kShown);
    EXPECT_NEAR(shown["high_kg"], std::exp(level + reach), kShown);
}

void expectTrend(const Json& shown, const DenseStrength& dense)
{
    const double centre = 100.0 * dense.slope;
    const double reach = 100.0 * kNormal95 * std::sqrt(dense.slopeVariance);
    EXPECT_NEAR(shown["percent_per_week"], centre, kShown);
    EXPECT_NEAR(shown["low"], centre - reach, kShown);
    EXPECT_NEAR(shown["high"], centre + reach, kShown);
}

TEST_F(LegTrendTest, ShownDigitsAreThoseOfTheDenseSum)
{
    const Json json = review("leg", "leg_one_rm_12wk.csv", "2026-03-30");
    const auto people =
        tests::readLegTests(std::string(LEVELBAR_TEST_DATA) + "/leg_one_rm_12wk.csv");
    int strengths = 0;
    int trends = 0;
    for (const Json& member : json["members"]) {
        const std::string person = member["member_id"];
        const auto dense = denseOf(people.at(person));
        for (const Json& strength : member["strength"]) {
            SCOPED_TRACE(person + " " + strength["exercise"].get<std::string>());
            const DenseStrength& expected = dense.at(strength["exercise"]);
            expectStrength(strength, expected);
            ++strengths;
            if (!strength["trend"]["percent_per_week"].is_null()) {
                expectTrend(strength["trend"], expected);
                ++trends;
            }
        }
    }
    EXPECT_EQ(strengths, 80); // two sides of forty
    EXPECT_EQ(trends, 68);    // of the others there are too few days
}

} // namespace
} // namespace levelbar::leg_trend_test
