// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/sides/side_news.h"

#include "core/base/estimate.h"

#include <algorithm>
#include <cmath>
#include <iterator>
#include <numeric>

namespace levelbar {

namespace {

constexpr int kFreshDays = 28;
constexpr double kJump = 1.96;
constexpr double kLargerPoints = 5.0;

std::optional<SidePosterior> posteriorOn(const SideSeries& series, const SideContext& context)
{
    const auto look = lookAt(series, context.day, context.noise);
    if (!look) {
        return std::nullopt;
    }
    return posteriorOf(*look, context.prior, centreFor(context.prior, series.dominant));
}

bool isLarger(const KnownReason& reason, const SidePosterior& posterior)
{
    const double now = percentOf(posterior.mean());
    const double low = percentOf(posterior.quantile((1.0 - kLevel) / 2.0));
    const double high = percentOf(posterior.quantile((1.0 + kLevel) / 2.0));
    const bool isClear = reason.agreedPercent < low || reason.agreedPercent > high;
    const bool isSameSide = now * reason.agreedPercent >= 0.0;
    const double grown =
        isSameSide ? std::abs(now) - std::abs(reason.agreedPercent) : std::abs(now);
    return isClear && grown >= kLargerPoints;
}

// What a day's pair tells beyond the known reason, seen as of that day.
std::optional<SideNews>
newsOf(Day day, const KnownReason& reason, const SideSeries& series, const SideContext& context)
{
    const SideContext then{day, context.noise, context.prior, context.thresholdPercent};
    if (jumpOf(series, then)) {
        return SideNews::Jump;
    }
    const auto posterior = posteriorOn(series, then);
    return posterior && isLarger(reason, *posterior) ? std::optional(SideNews::Larger)
                                                     : std::nullopt;
}

} // namespace

std::optional<SideJump> jumpOf(const SideSeries& series, const SideContext& context)
{
    const auto first =
        std::lower_bound(series.pairs.begin(),
                         series.pairs.end(),
                         context.day - kFreshDays,
                         [](const SidePair& pair, Day day) { return pair.day < day; });
    const auto last =
        std::upper_bound(first, series.pairs.end(), context.day, [](Day day, const SidePair& pair) {
            return day < pair.day;
        });
    const auto count = std::distance(first, last);
    const double sum = std::accumulate(first, last, 0.0, [](double before, const SidePair& pair) {
        return before + pair.logPercent;
    });
    const double now = count > 0 ? sum / static_cast<double>(count) : 0.0;
    // A single look is never enough.
    if (count < 2 || std::abs(now) <= logPercentOf(context.thresholdPercent)) {
        return std::nullopt;
    }
    const auto earlier = lookAt(series, context.day - kFreshDays - 1, context.noise);
    if (!earlier || earlier->days < 2) {
        return std::nullopt;
    }
    const SidePosterior before =
        posteriorOf(*earlier, context.prior, centreFor(context.prior, series.dominant));
    const double error = kJump * context.noise.spread / std::sqrt(count);
    if (now >= before.quantile(0.025) - error && now <= before.quantile(0.975) + error) {
        return std::nullopt;
    }
    return SideJump{percentOf(before.mean()), percentOf(now)};
}

const PainDay* lastPain(const SideSeries& series, Day day, int days, bool isOwnOnly)
{
    const auto found =
        std::find_if(series.pains.rbegin(), series.pains.rend(), [&](const PainDay& pain) {
            return pain.day <= day && day - pain.day <= days && (pain.isOwn() || !isOwnOnly);
        });
    return found == series.pains.rend() ? nullptr : &*found;
}

std::optional<SideNewsDay>
newsSince(const KnownReason& reason, const SideSeries& series, const SideContext& context)
{
    std::optional<SideNewsDay> first;
    const auto isLate = [&](Day day) {
        return day <= reason.since || day > context.day || (first && first->day <= day);
    };
    for (const PainDay& pain : series.pains) {
        if (pain.isOwn() && !isLate(pain.day)) {
            first = SideNewsDay{SideNews::Pain, pain.day};
        }
    }
    for (const SidePair& pair : series.pairs) {
        if (isLate(pair.day)) {
            continue;
        }
        if (const auto news = newsOf(pair.day, reason, series, context)) {
            first = SideNewsDay{*news, pair.day};
        }
    }
    return first;
}

} // namespace levelbar
