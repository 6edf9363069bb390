// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/base/square.h"
#include "core/trend/kink.h"
#include "core/trend/value_trend.h"
#include "tests/support/random.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdio>
#include <string>

// Invented rosters whose truth is known: how often bands hold it, and how often calls are wrong.
namespace levelbar::trend_roster_test {
namespace {

using tests::Random;

constexpr int kPeople = 150;
constexpr int kAhead = 14; // days from the last value to the one that is forecast

struct World {
    std::string name;
    int shortestGap = 3; // days
    int longestGap = 14;
    std::optional<double> pace; // variance a week of the slope; else one of four, at random
    double unlikeness = 0.3;    // of people's spreads: standard deviation of the logarithm
    double offShare = 0.0;      // values with a further error of 15 %
};

struct Person {
    std::vector<DatedValue> series;
    std::vector<double> levels; // ln-percent, day by day from the first value
    DatedValue next;

    [[nodiscard]] double levelOn(Day day) const
    {
        return levels[static_cast<std::size_t>(day - series.front().day)];
    }
};

Person makePerson(const World& world, Random& random)
{
    constexpr std::array kPaces = {0.0005, 0.002, 0.006, 0.02};
    const double pace = world.pace ? *world.pace : random.pick<const double>(kPaces);
    const double spread = 4.0 * std::exp(random.normal(0.0, world.unlikeness));
    const int count = 6 + random.below(35);
    Person person;
    double level = 100.0 * std::log(60.0);
    double slope = random.normal(0.3, 0.8);
    int until = 0; // the day of the next value
    for (int day = 0;; ++day) {
        person.levels.push_back(level);
        if (day == until) {
            double y = level + random.normal(0.0, spread);
            const bool isLast = static_cast<int>(person.series.size()) == count;
            if (isLast) {
                person.next = {Day{20000 + day}, std::exp(y / 100.0)};
                return person;
            }
            y += random.chance(world.offShare) ? random.normal(0.0, 15.0) : 0.0;
            person.series.push_back({Day{20000 + day}, std::exp(y / 100.0)});
            until +=
                static_cast<int>(person.series.size()) == count
                    ? kAhead
                    : world.shortestGap + random.below(world.longestGap - world.shortestGap + 1);
        }
        slope += random.normal(0.0, std::sqrt(pace / 7.0));
        level += slope / 7.0;
    }
}

struct Tally {
    int count = 0;
    int change = 0; // intervals that hold the truth
    int level = 0;
    int middle = 0;
    int ahead = 0;
    int next = 0;
    int called = 0; // rising or falling
    int wrong = 0;  // of these, the true change does not matter, or is the other way
    int kinks = 0;
    double squares = 0.0;

    [[nodiscard]] double share(int hits) const { return static_cast<double>(hits) / count; }
};

bool holds(const Estimate& interval, double truth)
{
    return interval.low <= truth && truth <= interval.high;
}

void add(Tally& tally, const Person& person, const TrendNoise& noise)
{
    const Day last = person.series.back().day;
    const ValueTrend trend = valueTrend(person.series, kMaximumMeasure, noise, last).value();
    if (!trend.changePerWeek) {
        return;
    }
    ++tally.count;
    const Day fourth = person.series[person.series.size() - 4].day;
    const Day back = std::max(person.series.front().day, std::min(last - 56, fourth));
    const double change = (person.levelOn(last) - person.levelOn(back)) / ((last - back) / 7.0);
    tally.change += holds(*trend.changePerWeek, change) ? 1 : 0;
    tally.level += holds(trend.level, std::exp(person.levelOn(last) / 100.0)) ? 1 : 0;
    tally.squares += square(100.0 * std::log(trend.level.value) - person.levelOn(last));
    const bool isRising = trend.call == TrendCall::Rising;
    const bool isFalling = trend.call == TrendCall::Falling;
    tally.called += isRising || isFalling ? 1 : 0;
    tally.wrong += (isRising && change <= 0.25) || (isFalling && change >= -0.25) ? 1 : 0;
    const Day middle = person.series.front().day + (last - person.series.front().day) / 2;
    const std::vector<Day> days = {middle, person.next.day};
    const auto band = trendBand(person.series, kMaximumMeasure, noise, days).value();
    tally.middle += holds(band[0].level, std::exp(person.levelOn(middle) / 100.0)) ? 1 : 0;
    tally.ahead += holds(band[1].level, std::exp(person.levelOn(person.next.day) / 100.0)) ? 1 : 0;
    tally.next += holds(band[1].nextValue, person.next.value) ? 1 : 0;
    tally.kinks += findKink(person.series, kMaximumMeasure, noise).value() ? 1 : 0;
}

Tally over(const World& world, std::uint64_t rosters)
{
    Tally tally;
    for (std::uint64_t seed = 1; seed <= rosters; ++seed) {
        Random random(seed);
        std::vector<Person> people;
        std::vector<std::vector<DatedValue>> all;
        for (int i = 0; i < kPeople; ++i) {
            people.push_back(makePerson(world, random));
            all.push_back(people.back().series);
        }
        const TrendNoise noise = poolTrendNoise(all, kMaximumMeasure).value();
        for (const Person& person : people) {
            add(tally, person, noise);
        }
    }
    std::printf(
        "%s, %d series: held by change %.3f, level %.3f, band in the middle %.3f, two weeks "
        "ahead %.3f, next value %.3f; level off by %.2f %%; %d called, wrong %.3f; kinks "
        "%.4f\n",
        world.name.c_str(),
        tally.count,
        tally.share(tally.change),
        tally.share(tally.level),
        tally.share(tally.middle),
        tally.share(tally.ahead),
        tally.share(tally.next),
        std::sqrt(tally.squares / tally.count),
        tally.called,
        static_cast<double>(tally.wrong) / tally.called,
        tally.share(tally.kinks));
    return tally;
}

void expectNineInTen(const Tally& tally, double slack)
{
    for (const int hits : {tally.level, tally.middle, tally.ahead, tally.next}) {
        EXPECT_NEAR(tally.share(hits), 0.9, slack);
    }
    EXPECT_NEAR(tally.share(tally.change), 0.91, slack + 0.02);
    EXPECT_LT(tally.wrong, 0.08 * tally.called);
    EXPECT_LT(tally.share(tally.kinks), 0.01);
}

TEST(TrendRoster, BandsHoldTheTruthNineTimesInTen)
{
    expectNineInTen(over({"off days", 3, 14, std::nullopt, 0.3, 0.05}, 2), 0.05);
}

TEST(TrendRosterSlow, BandsHoldTheTruthInEveryWorld)
{
    for (const World& world : {World{"mixed", 3, 14, std::nullopt, 0.3, 0.0},
                               World{"off days", 3, 14, std::nullopt, 0.3, 0.05},
                               World{"straight lines", 3, 14, 0.0, 0.3, 0.0},
                               World{"wandering", 3, 14, 0.02, 0.3, 0.0},
                               World{"monthly", 20, 40, std::nullopt, 0.3, 0.03},
                               World{"unlike people", 3, 14, std::nullopt, 0.6, 0.03}}) {
        // Where everybody's slope wanders as fast as we think possible, bands are a little narrow.
        expectNineInTen(over(world, 20), world.name == "wandering" ? 0.05 : 0.03);
    }
}

} // namespace
} // namespace levelbar::trend_roster_test
