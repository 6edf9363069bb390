// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/trend/value_trend.h"

#include "core/base/square.h"
#include "core/trend/trend_fit.h"

#include <algorithm>
#include <cmath>

namespace levelbar {

namespace {

constexpr double kSure = 0.8;
constexpr int kLookBackDays = 56;
constexpr int kLookBackValues = 4;
constexpr int kOldDays = 21;
constexpr double kOldGaps = 1.5;
constexpr int kYear = 365;
constexpr int kNoGainWeeks = 8;
constexpr double kHardlyBetter = 0.2;
constexpr double kProgressSure = 0.95;
constexpr double kProgressWeeks = 8.0;

Day lookBack(std::span<const DatedValue> series)
{
    const Day first = series.front().day;
    const auto count = std::min<std::size_t>(kLookBackValues, series.size());
    const Day fourth = series[series.size() - count].day;
    return std::max(first, std::min(series.back().day - kLookBackDays, fourth));
}

// When the standard error of a straight line's slope can be down to `goal`, at the pace so far
// and with the gates of a call passed. Equal gaps: spread / gap * sqrt(12 / (n^3 - n)).
std::optional<Day>
askAgain(std::span<const DatedValue> series, int gap, double spread, double goal, Day today)
{
    const Day first = series.front().day;
    for (int more = 1;; ++more) {
        const Day day = std::max(series.back().day + more * gap, today + (more - 1) * gap + 1);
        if (day - today > kYear) {
            return std::nullopt;
        }
        const double n = static_cast<double>(series.size()) + more;
        const double meanGap = (day - first) / 7.0 / (n - 1.0);
        const double error = spread / meanGap * std::sqrt(12.0 / (n * n * n - n));
        if (n >= kTrendDays && day - first >= kTrendSpanDays && error <= goal) {
            return day;
        }
    }
}

TrendCall called(const ValueTrend& trend)
{
    if (trend.isOld) {
        return TrendCall::Unclear;
    }
    if (trend.probabilityRising >= kSure) {
        return TrendCall::Rising;
    }
    if (trend.probabilityFalling >= kSure) {
        return TrendCall::Falling;
    }
    const double steady = 1.0 - trend.probabilityRising - trend.probabilityFalling;
    return steady >= kSure ? TrendCall::Steady : TrendCall::Unclear;
}

Estimate inUnit(Estimate estimate, TrendScale scale)
{
    estimate.value = offScale(estimate.value, scale);
    estimate.low = offScale(estimate.low, scale);
    estimate.high = offScale(estimate.high, scale);
    return estimate;
}

int offDays(const TrendSeries& series)
{
    int count = 0;
    for (std::size_t i = 0; i < series.nodes.size(); ++i) {
        count += series.nodes[i].variance > series.usualError(i) ? 1 : 0;
    }
    return count;
}

TrendGuess smoothedLevel(const TrendSeries& series,
                         const TrendMixture& mix,
                         const Paces<std::vector<TrendState>>& smooth,
                         std::size_t node)
{
    Paces<double> means{};
    Paces<double> variances{};
    for (std::size_t i = 0; i < kTrendPaces; ++i) {
        means[i] = smooth[i][node].level + series.expectedBy(series.days[node]);
        variances[i] = smooth[i][node].levelVariance;
    }
    return mix.average(means, variances);
}

} // namespace

Result<ValueTrend> valueTrend(std::span<const DatedValue> values,
                              const TrendMeasure& measure,
                              const TrendNoise& noise,
                              Day today)
{
    if (const auto checked = checkSeries(values, measure); !checked) {
        return tl::unexpected(checked.error());
    }
    if (values.back().day > today) {
        return refuse(FaultCode::NotInDomain,
                      {isoText(values.back().day), "up to " + isoText(today)});
    }
    ValueTrend trend;
    trend.valuesSeen = static_cast<int>(values.size());
    trend.last = values.back().day;
    const int span = trend.last - values.front().day;
    trend.spanWeeks = span / 7;
    const int gap = medianGapDays(values, measure);
    trend.isOld = today - trend.last > std::max<double>(kOldDays, kOldGaps * gap);
    TrendSeries series = makeTrendSeries(values, measure, noise);
    trend.offDays = offDays(series);
    const Day back = lookBack(values);
    const TrendMixture mix = mixTrend(series, {nodeAt(series, back), false});
    const double quantile = mix.quantile();
    trend.level = inUnit(
        mix.levelAfter(series, (today - trend.last) / 7.0).interval(quantile, trend.valuesSeen),
        measure.scale);
    if (trend.valuesSeen < kTrendDays || span < kTrendSpanDays) {
        trend.askAgainOn = askAgain(values, gap, noise.spread, 2.0 * measure.mattering, today);
        return trend;
    }
    const TrendGuess change = mix.gain(7.0 / (trend.last - back));
    trend.changePerWeek = change.interval(quantile, trend.valuesSeen);
    trend.probabilityRising = change.above(measure.mattering);
    trend.probabilityFalling = 1.0 - change.above(-measure.mattering);
    trend.call = called(trend);
    if (trend.call == TrendCall::Unclear && !trend.isOld) {
        trend.askAgainOn = askAgain(values, gap, noise.spread, measure.mattering, today);
    }
    return trend;
}

TrendVerdict verdictOf(TrendCall call, Direction direction)
{
    if (direction == Direction::None || (call != TrendCall::Rising && call != TrendCall::Falling)) {
        return TrendVerdict::Neither;
    }
    const bool isMore = call == TrendCall::Rising;
    return isMore == (direction == Direction::MoreIsBetter) ? TrendVerdict::Better
                                                            : TrendVerdict::Worse;
}

bool showsNoGain(const ValueTrend& trend, Direction direction)
{
    if (!trend.changePerWeek || trend.isOld || trend.spanWeeks < kNoGainWeeks ||
        direction == Direction::None || verdictOf(trend.call, direction) == TrendVerdict::Worse) {
        return false;
    }
    return (direction == Direction::MoreIsBetter ? trend.probabilityRising
                                                 : trend.probabilityFalling) <= kHardlyBetter;
}

std::optional<bool> isClosing(const ValueTrend& difference)
{
    if (difference.call != TrendCall::Rising && difference.call != TrendCall::Falling) {
        return std::nullopt;
    }
    return (difference.call == TrendCall::Rising) == (difference.level.value < 0.0);
}

Result<std::vector<TrendBandDay>> trendBand(std::span<const DatedValue> values,
                                            const TrendMeasure& measure,
                                            const TrendNoise& noise,
                                            std::span<const Day> days)
{
    if (const auto checked = checkSeries(values, measure); !checked) {
        return tl::unexpected(checked.error());
    }
    TrendSeries series = makeTrendSeries(values, measure, noise);
    const Day last = values.back().day + kForecastDays;
    for (const Day day : days) {
        if (day < values.front().day || day > last) {
            return refuse(FaultCode::OutOfRange,
                          {isoText(day), isoText(values.front().day), isoText(last)});
        }
        if (day <= values.back().day) {
            nodeAt(series, day);
        }
    }
    const TrendMixture mix = mixTrend(series, {});
    const double quantile = mix.quantile();
    Paces<std::vector<TrendState>> smooth;
    for (std::size_t i = 0; i < kTrendPaces; ++i) {
        const auto run =
            filterTrend(series.nodes, series.models[i], std::nullopt, series.slopeVariance);
        if (!run) {
            return tl::unexpected(run.error());
        }
        smooth[i] = smoothTrend(*run, series.nodes);
    }
    std::vector<TrendBandDay> band;
    const auto count = static_cast<int>(values.size());
    for (const Day day : days) {
        const TrendGuess level = day > values.back().day
                                     ? mix.levelAfter(series, (day - values.back().day) / 7.0)
                                     : smoothedLevel(series, mix, smooth, nodeAt(series, day));
        TrendGuess next = level;
        next.variance += mix.valueVariance();
        band.push_back({day,
                        inUnit(level.interval(quantile, count), measure.scale),
                        inUnit(next.interval(quantile, count), measure.scale)});
    }
    return band;
}

Result<TrendProgress> progressSince(std::span<const DatedValue> values,
                                    const TrendMeasure& measure,
                                    const TrendNoise& noise,
                                    Day since)
{
    if (const auto checked = checkSeries(values, measure); !checked) {
        return tl::unexpected(checked.error());
    }
    TrendProgress progress;
    progress.until = values.back().day;
    if (since >= progress.until) {
        return refuse(FaultCode::OutOfRange,
                      {isoText(since), isoText(values.front().day), isoText(progress.until - 1)});
    }
    progress.since = std::max(since, values.front().day);
    if (progress.since == progress.until) {
        return refuse(FaultCode::NotInDomain, {"1 day", "values of two days or more"});
    }
    TrendSeries series = makeTrendSeries(values, measure, noise);
    const TrendMixture mix = mixTrend(series, {nodeAt(series, progress.since), false});
    const TrendGuess change = mix.gain(1.0);
    progress.change = change.interval(mix.quantile(), static_cast<int>(values.size()));
    progress.probabilityAbove = change.above(0.0);
    const double sure = std::max(progress.probabilityAbove, 1.0 - progress.probabilityAbove);
    progress.isBeyondNoise = sure >= kProgressSure &&
                             std::abs(progress.change.value) > kProgressWeeks * measure.mattering;
    return progress;
}

} // namespace levelbar
