// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/review/wording.h"

#include "core/base/fault.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace levelbar {

namespace {

constexpr double kClearSide = 0.90;

} // namespace

std::string oneDecimal(double value)
{
    const double rounded = std::round(value * 10.0) / 10.0;
    return fmt::format("{:.1f}", rounded == 0.0 ? 0.0 : rounded);
}

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

std::string sentence(const std::vector<Phrase>& phrases)
{
    std::string all;
    for (const Phrase& phrase : phrases) {
        all += (all.empty() ? "" : " ") + fill(phrase.text, phrase.arguments);
    }
    return all;
}

Phrase agoPhrase(int days)
{
    if (days <= 0) {
        return {"today", {}};
    }
    if (days == 1) {
        return {"yesterday", {}};
    }
    if (days < 14) {
        return {"%1 days ago", {std::to_string(days)}};
    }
    return {"%1 weeks ago", {std::to_string(days / 7)}};
}

std::vector<Phrase> phrases(const StrengthEstimate& estimate, Day today)
{
    const Estimate& max = estimate.oneRepMax;
    const Phrase ago = agoPhrase(today - estimate.lastSet);
    std::vector<Phrase> all = {{"About %1 kg; nine times in ten between %2 and %3.",
                                {roundedToDoubt(max.value, max),
                                 roundedToDoubt(max.low, max),
                                 roundedToDoubt(max.high, max)}}};
    if (estimate.isFromRelated) {
        all.push_back({"A guess from a related lift: nothing of its own was seen.", {}});
        return all;
    }
    if (max.count == 0) {
        all.push_back({"No set was counted with its reserve: %1 say only \"at least this\".",
                       {std::to_string(estimate.bounds)}});
    } else if (max.count == 1) {
        all.push_back({"Built on one counted set.", {}});
    } else {
        all.push_back({"Built on %1 counted sets.", {std::to_string(max.count)}});
    }
    all.push_back({"The last: %1.", {fill(ago.text, ago.arguments)}});
    return all;
}

std::vector<Phrase> phrases(const Trend& trend)
{
    if (trend.call == TrendCall::TooEarly || !trend.percentPerWeek) {
        const int missing = std::max(1, kTrendDays - trend.daysSeen);
        const std::string day = trend.askAgainOn ? shortText(*trend.askAgainOn) : "a few weeks";
        return {{trend.daysSeen == 1
                     ? "Too early: 1 day seen. About %2 more needed; ask again after %3."
                     : "Too early: %1 days seen. About %2 more needed; ask again after %3.",
                 {std::to_string(trend.daysSeen), std::to_string(missing), day}}};
    }
    const Estimate& change = *trend.percentPerWeek;
    const std::string weeks = std::to_string(trend.spanWeeks);
    switch (trend.call) {
    case TrendCall::Rising:
        return {
            {"Rising %1 % a week, %2 to %3, over %4 weeks.",
             {oneDecimal(change.value), oneDecimal(change.low), oneDecimal(change.high), weeks}}};
    case TrendCall::Falling:
        return {{"Falling %1 % a week, %2 to %3, over %4 weeks.",
                 {oneDecimal(-change.value),
                  oneDecimal(-change.high),
                  oneDecimal(-change.low),
                  weeks}}};
    case TrendCall::Steady:
        return {{"Holding: we know the change is under 0.25 % a week.", {}}};
    case TrendCall::Unclear:
    case TrendCall::TooEarly:
        break;
    }
    if (trend.isOld && trend.lastSeen) {
        return {{"Can't tell: nothing that sizes it since %1.", {shortText(*trend.lastSeen)}}};
    }
    return {{"Can't tell: enough days, but they disagree.", {}}};
}

Phrase shortPhrase(const Trend& trend)
{
    if (trend.call == TrendCall::TooEarly || !trend.percentPerWeek) {
        return {"too early", {}};
    }
    const double change = trend.percentPerWeek->value;
    switch (trend.call) {
    case TrendCall::Rising:
        return {"rising %1 % a week", {oneDecimal(change)}};
    case TrendCall::Falling:
        return {"falling %1 % a week", {oneDecimal(-change)}};
    case TrendCall::Steady:
        return {"holding", {}};
    case TrendCall::Unclear:
    case TrendCall::TooEarly:
        break;
    }
    return {"can't tell", {}};
}

Phrase shortPhrase(const SideReview& review)
{
    if (!review.weaker || review.probabilitySide < kClearSide) {
        return {"no clear side", {}};
    }
    const bool isLeft = *review.weaker == Side::Left;
    return {isLeft ? "left by %1 %" : "right by %1 %",
            {fmt::format("{:.0f}", std::abs(review.differencePercent.value))}};
}

std::vector<Phrase> phrases(const SideReview& review)
{
    if (!review.weaker || review.probabilitySide < kClearSide) {
        return {{"No clear side.", {}}};
    }
    const bool isLeft = *review.weaker == Side::Left;
    const Estimate& d = review.differencePercent;
    const auto whole = [](double value) {
        const double rounded = std::round(value);
        return fmt::format("{:.0f}", rounded == 0.0 ? 0.0 : rounded); // never "-0"
    };
    return {
        {isLeft ? "Left weaker by %1 %, %2 to %3 (%4)." : "Right weaker by %1 %, %2 to %3 (%4).",
         {whole(std::abs(d.value)),
          whole(isLeft ? d.low : -d.high),
          whole(isLeft ? d.high : -d.low),
          std::string(probabilityWord(review.probabilitySide))}}};
}

} // namespace levelbar
