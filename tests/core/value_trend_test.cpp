// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/trend/kink.h"
#include "core/trend/value_trend.h"
#include "tests/support/random.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <limits>

namespace levelbar::value_trend_test {
namespace {

using Series = std::vector<DatedValue>;

constexpr Day kStart{20000};

// One value every `gap` days, rising by `slope` percent a week from 60, with errors of that spread.
Series rising(int count, int gap, double slope, double spread = 1.0)
{
    tests::Random random(3);
    Series series;
    for (int i = 0; i < count; ++i) {
        const double y = slope * i * gap / 7.0 + random.normal(0.0, spread);
        series.push_back({kStart + i * gap, 60.0 * std::exp(y / 100.0)});
    }
    return series;
}

ValueTrend trendOf(const Series& series, const TrendMeasure& measure = kMaximumMeasure)
{
    return valueTrend(series, measure, usualNoise(measure), series.back().day).value();
}

// A little up and much to and fro: nine weeks that could mean anything.
Series toAndFro()
{
    Series series;
    for (const double value : {60.0, 65.0, 58.0, 63.0, 61.0, 66.0, 59.0, 64.0, 62.0}) {
        series.push_back({kStart + 7 * static_cast<int>(series.size()), value});
    }
    return series;
}

TEST(ValueTrendTest, CallsWhatIsClear)
{
    EXPECT_EQ(trendOf(rising(24, 5, 1.0)).call, TrendCall::Rising);
    EXPECT_EQ(trendOf(rising(24, 5, -1.0)).call, TrendCall::Falling);
    EXPECT_EQ(trendOf(rising(40, 5, 0.0)).call, TrendCall::Steady);
    const ValueTrend unclear = trendOf(toAndFro());
    EXPECT_EQ(unclear.call, TrendCall::Unclear);
    ASSERT_TRUE(unclear.askAgainOn);
    EXPECT_GT(*unclear.askAgainOn, unclear.last);
}

TEST(ValueTrendTest, GivesLevelChangeAndCount)
{
    const ValueTrend trend = trendOf(rising(24, 5, 1.0));
    EXPECT_NEAR(trend.level.value, 60.0 * std::exp(0.01 * 23 * 5 / 7.0), 1.0);
    EXPECT_LT(trend.level.low, trend.level.value);
    EXPECT_GT(trend.level.high, trend.level.value);
    EXPECT_NEAR(trend.changePerWeek->value, 1.0, 0.2);
    EXPECT_EQ(trend.changePerWeek->count, 24);
    EXPECT_EQ(trend.valuesSeen, 24);
    EXPECT_EQ(trend.spanWeeks, 23 * 5 / 7);
    EXPECT_FALSE(trend.isOld);
    EXPECT_GT(trend.probabilityRising, 0.95);
    EXPECT_LT(trend.probabilityFalling, 0.01);
}

TEST(ValueTrendTest, IsTooEarlyBeforeFourValuesOverFourWeeks)
{
    for (const Series& series : {rising(1, 7, 1.0), rising(3, 14, 1.0), rising(8, 3, 1.0)}) {
        const ValueTrend trend = trendOf(series);
        EXPECT_EQ(trend.call, TrendCall::TooEarly);
        EXPECT_FALSE(trend.changePerWeek);
        EXPECT_EQ(trend.probabilityRising, 0.0);
        EXPECT_TRUE(std::isfinite(trend.level.low) && std::isfinite(trend.level.high));
        ASSERT_TRUE(trend.askAgainOn);
        EXPECT_GE(*trend.askAgainOn - series.front().day, 28);
        EXPECT_LT(*trend.askAgainOn - series.back().day, 200);
    }
    EXPECT_NE(trendOf(rising(5, 7, 1.0)).call, TrendCall::TooEarly);
}

TEST(ValueTrendTest, QuarterlyTestsHaveATrendToo)
{
    const ValueTrend trend = trendOf(rising(5, 84, 0.6));
    EXPECT_EQ(trend.call, TrendCall::Rising);
    EXPECT_NEAR(trend.changePerWeek->value, 0.6, 0.2);
}

TEST(ValueTrendTest, OldValuesCallNothing)
{
    const Series series = rising(24, 5, 1.0);
    const TrendNoise noise = usualNoise(kMaximumMeasure);
    const Day last = series.back().day;
    EXPECT_EQ(valueTrend(series, kMaximumMeasure, noise, last + 21)->call, TrendCall::Rising);
    const ValueTrend old = valueTrend(series, kMaximumMeasure, noise, last + 22).value();
    EXPECT_EQ(old.call, TrendCall::Unclear);
    EXPECT_TRUE(old.isOld);
    EXPECT_FALSE(old.askAgainOn);
    const ValueTrend fresh = trendOf(series);
    EXPECT_GT(old.level.high - old.level.low, fresh.level.high - fresh.level.low);
}

TEST(ValueTrendTest, OneWrongValueHardlyMoves)
{
    Series series = rising(24, 5, 0.0);
    const ValueTrend before = trendOf(series);
    series[21].value *= 10.0; // a slip of the decimal point
    const ValueTrend after = trendOf(series);
    EXPECT_EQ(before.offDays, 0);
    EXPECT_EQ(after.offDays, 1);
    EXPECT_NEAR(100.0 * std::log(after.level.value / before.level.value), 0.0, 1.5);
    EXPECT_NEAR(after.changePerWeek->value, before.changePerWeek->value, 0.3);
}

TEST(ValueTrendTest, TwoInARowAreAChange)
{
    Series series = rising(24, 10, 0.0);
    series[22].value *= 0.8;
    const ValueTrend one = trendOf(series);
    series[23].value *= 0.8;
    const ValueTrend both = trendOf(series);
    EXPECT_EQ(one.offDays, 1);
    EXPECT_EQ(both.offDays, 0);
    EXPECT_LT(both.level.value, 0.95 * one.level.value);
}

TEST(ValueTrendTest, ALayOffLoosensTheTrend)
{
    Series series = rising(16, 5, 1.0);
    Series paused = series;
    for (std::size_t i = 12; i < paused.size(); ++i) {
        paused[i].day = paused[i].day + 90;
        paused[i].value *= 0.8; // what was lost
    }
    const ValueTrend trend = trendOf(paused);
    EXPECT_EQ(trend.offDays, 0);
    EXPECT_NEAR(trend.level.value / paused.back().value, 1.0, 0.04);
    EXPECT_GT(trend.level.high - trend.level.low,
              (trendOf(series).level.high - trendOf(series).level.low) * 0.8);
}

TEST(ValueTrendTest, PlainScaleKnowsNoughtAndBelow)
{
    Series series;
    for (int i = 0; i < 12; ++i) {
        series.push_back({kStart + 14 * i, -6.0 + i + (i % 2 == 0 ? 0.4 : -0.4)});
    }
    const ValueTrend trend = trendOf(series, kRepsMeasure);
    EXPECT_EQ(trend.call, TrendCall::Rising);
    EXPECT_NEAR(trend.changePerWeek->value, 0.5, 0.1);
    EXPECT_NEAR(trend.level.value, 5.0, 0.7);
    const Series zeros(8, DatedValue{kStart, 0.0});
    Series still = zeros;
    for (std::size_t i = 0; i < still.size(); ++i) {
        still[i].day = kStart + 14 * static_cast<int>(i);
    }
    const ValueTrend same = trendOf(still, kRepsMeasure);
    EXPECT_NEAR(same.level.value, 0.0, 1e-9);
    EXPECT_LT(same.level.low, 0.0) << "eight noughts are not certainty";
    EXPECT_EQ(verdictOf(same.call, Direction::MoreIsBetter), TrendVerdict::Neither);
}

TEST(ValueTrendTest, RefusesWhatIsNoSeries)
{
    const TrendNoise noise = usualNoise(kMaximumMeasure);
    const auto fault = [&](const Series& series, const TrendMeasure& measure = kMaximumMeasure) {
        const auto trend = valueTrend(series, measure, noise, kStart + 1000);
        return trend ? FaultCode::Empty : trend.error().code;
    };
    Series series = rising(6, 7, 0.0);
    EXPECT_EQ(fault(series), FaultCode::Empty);
    EXPECT_EQ(fault({}), FaultCode::NotInDomain);
    series[2].value = 0.0;
    EXPECT_EQ(fault(series), FaultCode::NotInDomain);
    series[2].value = std::numeric_limits<double>::quiet_NaN();
    EXPECT_EQ(fault(series), FaultCode::NotInDomain);
    series = rising(6, 7, 0.0);
    std::swap(series[1], series[2]);
    EXPECT_EQ(fault(series), FaultCode::NotInDomain);
    EXPECT_EQ(fault(rising(6, 7, 0.0), {TrendScale::Ratio, 0.0, 4.0, 7}), FaultCode::NotInDomain);
    EXPECT_FALSE(valueTrend(rising(6, 7, 0.0), kMaximumMeasure, noise, kStart));
    EXPECT_FALSE(poolTrendNoise(std::vector<Series>{series}, kMaximumMeasure));
    EXPECT_FALSE(findKink(series, kMaximumMeasure, noise));
}

TEST(TrendVerdictTest, LessIsBetterTurnsItRound)
{
    EXPECT_EQ(verdictOf(TrendCall::Rising, Direction::MoreIsBetter), TrendVerdict::Better);
    EXPECT_EQ(verdictOf(TrendCall::Rising, Direction::LessIsBetter), TrendVerdict::Worse);
    EXPECT_EQ(verdictOf(TrendCall::Falling, Direction::LessIsBetter), TrendVerdict::Better);
    EXPECT_EQ(verdictOf(TrendCall::Falling, Direction::None), TrendVerdict::Neither);
    EXPECT_EQ(verdictOf(TrendCall::Unclear, Direction::MoreIsBetter), TrendVerdict::Neither);
    const ValueTrend flat = trendOf(rising(40, 5, 0.0));
    EXPECT_TRUE(showsNoGain(flat, Direction::MoreIsBetter));
    EXPECT_TRUE(showsNoGain(flat, Direction::LessIsBetter));
    EXPECT_FALSE(showsNoGain(flat, Direction::None));
    EXPECT_FALSE(showsNoGain(trendOf(rising(24, 5, 1.0)), Direction::MoreIsBetter));
    EXPECT_FALSE(showsNoGain(trendOf(rising(24, 5, 1.0)), Direction::LessIsBetter))
        << "worse is more than no gain";
}

TEST(TrendVerdictTest, ADifferenceClosesOrWidens)
{
    Series series;
    for (int i = 0; i < 20; ++i) {
        series.push_back({kStart + 7 * i, -30.0 + 1.2 * i + (i % 2 == 0 ? 1.0 : -1.0)});
    }
    EXPECT_EQ(isClosing(trendOf(series, kSideMeasure)), true);
    for (DatedValue& value : series) {
        value.value += 60.0;
    }
    EXPECT_EQ(isClosing(trendOf(series, kSideMeasure)), false);
    EXPECT_EQ(isClosing(trendOf(toAndFro())), std::nullopt);
}

TEST(TrendBandTest, GoesFromTheFirstValueToSixWeeksAfterTheLast)
{
    const Series series = rising(24, 5, 1.0);
    const TrendNoise noise = usualNoise(kMaximumMeasure);
    const Day last = series.back().day;
    std::vector<Day> days = {kStart, kStart + 3, last, last + 1, last + 21, last + 42};
    const auto band = trendBand(series, kMaximumMeasure, noise, days).value();
    ASSERT_EQ(band.size(), days.size());
    for (std::size_t i = 0; i < band.size(); ++i) {
        EXPECT_EQ(band[i].day, days[i]);
        EXPECT_LT(band[i].nextValue.low, band[i].level.low);
        EXPECT_GT(band[i].nextValue.high, band[i].level.high);
    }
    const auto width = [&](std::size_t i) { return band[i].level.high / band[i].level.low; };
    EXPECT_LT(width(2), width(3));
    EXPECT_LT(width(3), width(4));
    EXPECT_LT(width(4), width(5));
    EXPECT_GT(band[5].level.value, band[3].level.value);
    EXPECT_NEAR(band[3].level.value / band[2].level.value, 1.0, 0.005) << "no step at the end";
    const ValueTrend trend = valueTrend(series, kMaximumMeasure, noise, last + 21).value();
    EXPECT_NEAR(trend.level.value, band[4].level.value, 1e-9) << "one level, wherever it is asked";
    EXPECT_NEAR(trend.level.low, band[4].level.low, 1e-9);
    for (const Day day : {kStart - 1, last + 43}) {
        const auto refused = trendBand(series, kMaximumMeasure, noise, std::vector<Day>{day});
        ASSERT_FALSE(refused);
        EXPECT_EQ(refused.error().code, FaultCode::OutOfRange);
    }
}

TEST(TrendBandTest, KnowsTheMiddleBetterThanTheEnds)
{
    const Series series = rising(24, 5, 0.3);
    const std::vector<Day> days = {kStart, kStart + 57, series.back().day};
    const auto band = trendBand(series, kMaximumMeasure, usualNoise(kMaximumMeasure), days).value();
    const auto width = [&](std::size_t i) { return band[i].level.high / band[i].level.low; };
    EXPECT_LT(width(1), width(0));
    EXPECT_LT(width(1), width(2));
}

TEST(TrendProgressTest, TellsAChangeFromNoise)
{
    const TrendNoise noise = usualNoise(kMaximumMeasure);
    const Series up = rising(24, 5, 1.0);
    const TrendProgress real = progressSince(up, kMaximumMeasure, noise, kStart + 20).value();
    EXPECT_TRUE(real.isBeyondNoise);
    EXPECT_GT(real.probabilityAbove, 0.99);
    EXPECT_NEAR(real.change.value, 95 / 7.0, 3.0);
    const TrendProgress none =
        progressSince(rising(24, 5, 0.0), kMaximumMeasure, noise, kStart + 20).value();
    EXPECT_FALSE(none.isBeyondNoise);
    const TrendProgress all = progressSince(up, kMaximumMeasure, noise, kStart - 100).value();
    EXPECT_EQ(all.since, kStart);
    EXPECT_EQ(all.until, up.back().day);
    EXPECT_FALSE(progressSince(up, kMaximumMeasure, noise, up.back().day));
    EXPECT_FALSE(progressSince(rising(1, 7, 0.0), kMaximumMeasure, noise, kStart - 1));
}

TEST(TrendNoiseTest, LearnsFromTheRosterAndKeepsToThePrior)
{
    const TrendNoise none = poolTrendNoise({}, kMaximumMeasure).value();
    EXPECT_EQ(none.spread, kMaximumMeasure.spread);
    EXPECT_EQ(none.series, 0);
    tests::Random random(5);
    std::vector<Series> people;
    for (int person = 0; person < 60; ++person) {
        Series series;
        for (int i = 0; i < 8; ++i) {
            series.push_back({kStart + 14 * i, 50.0 * std::exp(random.normal(0.0, 0.08))});
        }
        people.push_back(series);
    }
    const TrendNoise steady = poolTrendNoise(people, kMaximumMeasure).value();
    // The root mean square over people, whose variances are inverse gamma.
    EXPECT_NEAR(steady.spread * std::sqrt(10.0 / 8.0), 8.0, 0.5);
    EXPECT_EQ(steady.series, 60);
    EXPECT_EQ(steady.values, 480);
    for (DatedValue& value : people[0]) { // one person all over the place
        value.value *= std::exp(random.normal(0.0, 0.8));
    }
    const TrendNoise noisy = poolTrendNoise(people, kMaximumMeasure).value();
    EXPECT_LT(noisy.spread, 1.1 * steady.spread);
    const std::vector<Series> few(people.begin() + 1, people.begin() + 3);
    const TrendNoise little = poolTrendNoise(few, kMaximumMeasure).value();
    EXPECT_LT(std::abs(little.spread - 4.0), 0.6 * std::abs(steady.spread - 4.0) + 1.0);
}

TEST(TrendKinkTest, FindsTheDayAPlateauBegan)
{
    tests::Random random(11);
    Series series;
    for (int i = 0; i <= 48; ++i) {
        const double weeks = 0.5 * i;
        const double y = 1.5 * std::min(weeks, 12.0) - 0.5 * std::max(0.0, weeks - 12.0);
        series.push_back(
            {kStart + 7 * i / 2, 60.0 * std::exp((y + random.normal(0.0, 3.0)) / 100.0)});
    }
    const auto kink = findKink(series, kMaximumMeasure, usualNoise(kMaximumMeasure)).value();
    ASSERT_TRUE(kink);
    EXPECT_NEAR(kink->day - kStart, 84, 21);
    EXPECT_LE(kink->earliest, kStart + 84);
    EXPECT_GE(kink->latest, kStart + 84);
    EXPECT_LE(kink->earliest, kink->day);
    EXPECT_GE(kink->latest, kink->day);
    EXPECT_NEAR(kink->before.value, 1.5, 0.4);
    EXPECT_NEAR(kink->after.value, -0.5, 0.4);
    EXPECT_GT(kink->evidence, kStrongEvidence);
}

TEST(TrendKinkTest, FindsNoneInAStraightLineOrInFewValues)
{
    const TrendNoise noise = usualNoise(kMaximumMeasure);
    EXPECT_FALSE(findKink(rising(48, 4, 1.0, 3.0), kMaximumMeasure, noise).value());
    EXPECT_FALSE(findKink(rising(7, 14, 1.0), kMaximumMeasure, noise).value());
    EXPECT_FALSE(findKink(Series(9, DatedValue{kStart, 50.0}), kMaximumMeasure, noise).value());
}

TEST(DatedValuesTest, ADaysResultIsItsBestTrial)
{
    const auto trial = [](Day day, int number, std::int64_t value, bool isValid = true) {
        Trial made;
        made.day = day;
        made.number = number;
        made.valueThousandths = value;
        made.unit = "kg";
        made.isValid = isValid;
        return made;
    };
    const std::vector<Trial> trials = {trial(kStart, 1, 30000),
                                       trial(kStart, 2, 33000),
                                       trial(kStart, 3, 99000, false),
                                       trial(kStart + 7, 1, 31000),
                                       trial(kStart + 9, 1, 40000)};
    const Series best = {{kStart, 33.0}, {kStart + 7, 31.0}};
    EXPECT_EQ(resultsOf(trials, Direction::MoreIsBetter, kStart + 8), best);
    EXPECT_EQ(resultsOf(trials, Direction::LessIsBetter, kStart + 8)[0].value, 30.0);
    EXPECT_EQ(resultsOf(trials, Direction::None, kStart + 8)[0].value, 31.5);
}

} // namespace
} // namespace levelbar::value_trend_test
