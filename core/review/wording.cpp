// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/review/wording.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace levelbar {

namespace {

constexpr double kClearSide = 0.90;

std::string ago(int days)
{
    if (days <= 0) {
        return "today";
    }
    if (days == 1) {
        return "yesterday";
    }
    if (days < 14) {
        return fmt::format("{} days ago", days);
    }
    return fmt::format("{} weeks ago", days / 7);
}

// Percent a week with one decimal, never "-0.0".
std::string tenths(double value)
{
    const double rounded = std::round(value * 10.0) / 10.0;
    return fmt::format("{:.1f}", rounded == 0.0 ? 0.0 : rounded);
}

} // namespace

std::string_view probabilityWord(double probability)
{
    if (probability >= 0.99) {
        return "almost certain";
    }
    if (probability >= 0.90) {
        return "very likely";
    }
    if (probability >= 0.75) {
        return "likely";
    }
    return probability >= 0.60 ? "leaning" : "can't tell";
}

std::string roundedToDoubt(double value, const Estimate& estimate)
{
    const double width = std::max(estimate.high - estimate.low, 1e-9);
    const double power = std::pow(10.0, std::floor(std::log10(width / 5.0)));
    double step = power;
    for (const double factor : {2.0, 5.0}) {
        if (power * factor <= width / 5.0) {
            step = power * factor;
        }
    }
    const double rounded = std::round(value / step) * step;
    const int decimals = std::clamp(static_cast<int>(std::ceil(-std::log10(step) - 1e-9)), 0, 2);
    return fmt::format("{:.{}f}", rounded == 0.0 ? 0.0 : rounded, decimals);
}

std::string sentence(const StrengthEstimate& estimate, Day today)
{
    const Estimate& max = estimate.oneRepMax;
    const std::string last = ago(today - estimate.lastSet);
    const std::string range = fmt::format("About {} kg; nine times in ten between {} and {}.",
                                          roundedToDoubt(max.value, max),
                                          roundedToDoubt(max.low, max),
                                          roundedToDoubt(max.high, max));
    if (estimate.isFromRelated) {
        return range + " A guess from a related lift: nothing of its own was seen.";
    }
    if (max.count == 0) {
        return fmt::format("{} No set was counted with its reserve: {} sets say only \"at least "
                           "this\", the last {}.",
                           range,
                           estimate.bounds,
                           last);
    }
    return fmt::format("{} Built on {} counted {}, the last {}.",
                       range,
                       max.count,
                       max.count == 1 ? "set" : "sets",
                       last);
}

std::string sentence(const Trend& trend)
{
    if (trend.call == TrendCall::TooEarly || !trend.percentPerWeek) {
        const int missing = std::max(1, kTrendDays - trend.daysSeen);
        return fmt::format("Too early: {} {} seen. About {} more needed; ask again after {}.",
                           trend.daysSeen,
                           trend.daysSeen == 1 ? "day" : "days",
                           missing,
                           trend.askAgainOn ? shortText(*trend.askAgainOn) : "a few weeks");
    }
    const Estimate& change = *trend.percentPerWeek;
    switch (trend.call) {
    case TrendCall::Rising:
        return fmt::format("Rising {} % a week, {} to {}, over {} weeks.",
                           tenths(change.value),
                           tenths(change.low),
                           tenths(change.high),
                           trend.spanWeeks);
    case TrendCall::Falling:
        return fmt::format("Falling {} % a week, {} to {}, over {} weeks.",
                           tenths(-change.value),
                           tenths(-change.high),
                           tenths(-change.low),
                           trend.spanWeeks);
    case TrendCall::Steady:
        return "Holding: we know the change is under 0.25 % a week.";
    case TrendCall::Unclear:
    case TrendCall::TooEarly:
        break;
    }
    return "Can't tell: enough days, but they disagree.";
}

std::string sentence(const SideReview& review)
{
    if (!review.weaker || review.probabilitySide < kClearSide) {
        return "No clear side.";
    }
    const bool isLeft = *review.weaker == Side::Left;
    const Estimate& d = review.differencePercent;
    const double sign = isLeft ? 1.0 : -1.0;
    const double near = sign * (isLeft ? d.low : d.high);
    const double far = sign * (isLeft ? d.high : d.low);
    return fmt::format("{} weaker by {:.0f} %, {:.0f} to {:.0f} ({}).",
                       isLeft ? "Left" : "Right",
                       std::abs(d.value),
                       near + 0.0,
                       far,
                       probabilityWord(review.probabilitySide));
}

} // namespace levelbar
