// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/review/test_words.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace levelbar {

namespace {

// At most `decimals`, without needless zeros and never "-0".
std::string trimmed(double value, int decimals)
{
    const double scale = std::pow(10.0, decimals);
    const double rounded = std::round(value * scale) / scale + 0.0;
    std::string text = fmt::format("{:.{}f}", rounded == 0.0 ? 0.0 : rounded, decimals);
    while (text.find('.') != std::string::npos && (text.back() == '0' || text.back() == '.')) {
        const bool isPoint = text.back() == '.';
        text.pop_back();
        if (isPoint) {
            break;
        }
    }
    return text;
}

std::string changeUnit(const TestKind& test)
{
    return measureOf(test).scale == TrendScale::Ratio ? "%" : test.unit;
}

// A change in reps is a tenth of one: a second decimal keeps it from reading 0.0.
int decimalsOf(const TestKind& test)
{
    return measureOf(test).scale == TrendScale::Ratio ? 1 : 2;
}

std::vector<Phrase> tooEarly(const ValueTrend& trend)
{
    const int missing = std::max(1, kTrendDays - trend.valuesSeen);
    std::vector<Phrase> all = {{trend.valuesSeen == 1
                                    ? "Too early: 1 day seen. About %1 more needed."
                                    : "Too early: %2 days seen. About %1 more needed.",
                                {std::to_string(missing), std::to_string(trend.valuesSeen)}}};
    if (trend.askAgainOn) {
        all.front().text = trend.valuesSeen == 1
                               ? "Too early: 1 day seen. About %1 more needed; ask again after %3."
                               : "Too early: %2 days seen. About %1 more needed; ask again after "
                                 "%3.";
        all.front().arguments.push_back(shortText(*trend.askAgainOn));
    }
    return all;
}

std::vector<Phrase> unclear(const ValueTrend& trend)
{
    if (trend.isOld) {
        return {{"Too old to tell: the last result is from %1.", {shortText(trend.last)}}};
    }
    std::vector<Phrase> all = {{"Can't tell: enough days, but they disagree.", {}}};
    if (trend.askAgainOn) {
        all.push_back({"Ask again after %1.", {shortText(*trend.askAgainOn)}});
    }
    return all;
}

} // namespace

std::vector<Phrase> phrases(const TestReview& review, const TestKind& test)
{
    const ValueTrend& trend = review.trend;
    if (trend.call == TrendCall::TooEarly || !trend.changePerWeek) {
        return tooEarly(trend);
    }
    const Estimate& change = *trend.changePerWeek;
    const std::string unit = changeUnit(test);
    const auto number = [&](double value) { return trimmed(value, decimalsOf(test)); };
    std::vector<Phrase> all;
    switch (trend.call) {
    case TrendCall::Rising:
        all.push_back({"Rising %1 %5 a week, %2 to %3, over %4 weeks.",
                       {number(change.value),
                        number(change.low),
                        number(change.high),
                        std::to_string(trend.spanWeeks),
                        unit}});
        break;
    case TrendCall::Falling:
        all.push_back({"Falling %1 %5 a week, %2 to %3, over %4 weeks.",
                       {number(-change.value),
                        number(-change.high),
                        number(-change.low),
                        std::to_string(trend.spanWeeks),
                        unit}});
        break;
    case TrendCall::Steady:
        return {{"Holding: we know the change is under %1 %2 a week.",
                 {trimmed(measureOf(test).mattering, 2), unit}}};
    case TrendCall::Unclear:
    case TrendCall::TooEarly:
        return unclear(trend);
    }
    if (test.direction == Direction::LessIsBetter) {
        all.push_back({review.verdict == TrendVerdict::Better ? "Less is better here: that is good."
                                                              : "Less is better here: that is "
                                                                "worse.",
                       {}});
    }
    return all;
}

Phrase shortPhrase(const TestReview& review, const TestKind& test)
{
    const ValueTrend& trend = review.trend;
    if (trend.call == TrendCall::TooEarly || !trend.changePerWeek) {
        return {"too early", {}};
    }
    const double change = trend.changePerWeek->value;
    const std::string amount = trimmed(std::abs(change), decimalsOf(test));
    switch (trend.call) {
    case TrendCall::Rising:
        return {"rising %1 %2 a week", {amount, changeUnit(test)}};
    case TrendCall::Falling:
        return {"falling %1 %2 a week", {amount, changeUnit(test)}};
    case TrendCall::Steady:
        return {"holding", {}};
    case TrendCall::Unclear:
    case TrendCall::TooEarly:
        break;
    }
    return trend.isOld ? Phrase{"too old to tell", {}} : Phrase{"can't tell", {}};
}

std::string testValue(double value, const TestKind& test)
{
    const std::string number = trimmed(value, 1);
    return test.unit.empty() ? number : number + " " + test.unit;
}

} // namespace levelbar
