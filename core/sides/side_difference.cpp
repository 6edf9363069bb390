// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/sides/side_difference.h"

#include <algorithm>
#include <cmath>

namespace levelbar {

namespace {

constexpr double kSmallPercent = 5.0;
constexpr int kRecentDays = 28;
constexpr int kReplayWeeks = 8;
constexpr double kStay = 0.1; // how far below the cut a listed name may fall and stay
constexpr double kClearSide = 0.90;
constexpr double kJump = 1.96;
constexpr double kNoCut = 1.0 - kFalseShare; // the cut when a list is empty

struct Candidate {
    std::size_t owner = 0;
    std::size_t measure = 0;
    std::size_t series = 0;
    SideReview review;
    bool mayBeListed = false;
};

Estimate asPercent(const SidePosterior& posterior, int days)
{
    return {percentOf(posterior.mean()),
            percentOf(posterior.quantile((1.0 - kLevel) / 2.0)),
            percentOf(posterior.quantile((1.0 + kLevel) / 2.0)),
            kLevel,
            days};
}

// P(the difference is beyond `logPercent` on the side of the posterior's mean).
double beyond(const SidePosterior& posterior, double logPercent)
{
    return posterior.mean() < 0.0 ? posterior.below(-logPercent)
                                  : 1.0 - posterior.below(logPercent);
}

bool isPainful(const SideSeries& series, Day day)
{
    return series.lastPain && *series.lastPain <= day && day - *series.lastPain <= kRecentDays;
}

// A difference that the earlier pairs do not explain, seen first within four weeks.
bool isSudden(const SideSeries& series,
              Day day,
              const SideNoise& noise,
              const SidePrior& prior,
              double threshold)
{
    const double centre = centreFor(prior, series.dominant);
    const auto earlier = lookAt(series, day - kRecentDays - 1, noise);
    if (!earlier || earlier->days < 2) {
        return false;
    }
    const SidePosterior before = posteriorOf(*earlier, prior, centre);
    const double low = before.quantile(0.025);
    const double high = before.quantile(0.975);
    double sum = 0.0;
    int count = 0;
    for (const SidePair& pair : series.pairs) {
        if (pair.day <= day && day - pair.day <= kRecentDays) {
            sum += pair.logPercent;
            ++count;
        }
    }
    if (count < 2) {
        return false; // a single look is never enough
    }
    const double now = sum / count;
    const double error = kJump * noise.spread / std::sqrt(count);
    const bool isOff = now < low - error || now > high + error;
    return isOff && std::abs(now) > threshold;
}

SideReview reviewOf(const MeasuredSides& measure,
                    const SideLook& look,
                    const SidePosterior& posterior,
                    double thresholdPercent)
{
    SideReview review;
    review.measure = measure.measure;
    review.differencePercent = asPercent(posterior, look.days);
    const double mean = posterior.mean();
    if (mean != 0.0) {
        review.weaker = mean > 0.0 ? Side::Left : Side::Right;
    }
    review.probabilitySide = beyond(posterior, 0.0);
    review.thresholdPercent = thresholdPercent;
    review.probabilityBeyondThreshold = beyond(posterior, logPercentOf(thresholdPercent));
    review.probabilityBeyondFive = beyond(posterior, logPercentOf(kSmallPercent));
    review.days = look.days;
    review.lastPair = look.last;
    return review;
}

std::vector<Candidate>
judge(std::span<const MeasuredSides> measures, Day day, double thresholdPercent)
{
    const double threshold = logPercentOf(thresholdPercent);
    std::vector<Candidate> all;
    for (std::size_t m = 0; m < measures.size(); ++m) {
        const MeasuredSides& measure = measures[m];
        const SideNoise noise = poolNoise(measure.series, day, measure.settings);
        const SidePrior prior = learnPrior(measure.series, day, noise, measure.settings);
        for (std::size_t s = 0; s < measure.series.size(); ++s) {
            const SideSeries& series = measure.series[s];
            const auto look = lookAt(series, day, noise);
            if (!look) {
                continue;
            }
            const SidePosterior posterior =
                posteriorOf(*look, prior, centreFor(prior, series.dominant));
            Candidate candidate{measure.owners[s],
                                m,
                                s,
                                reviewOf(measure, *look, posterior, thresholdPercent),
                                look->days >= 2};
            const bool hurts =
                isPainful(series, day) && candidate.review.probabilitySide >= kClearSide;
            if (hurts || isSudden(series, day, noise, prior, threshold)) {
                candidate.review.tier = SideTier::SendOn;
                candidate.mayBeListed = false;
            }
            all.push_back(std::move(candidate));
        }
    }
    return all;
}

// Which candidates a list holds, by place, and the lowest probability among those in the cut.
struct Cut {
    std::vector<bool> isIn;
    double lowest = kNoCut;
};

Cut cutList(const std::vector<Candidate>& all, double SideReview::*probability)
{
    std::vector<std::size_t> order;
    for (std::size_t i = 0; i < all.size(); ++i) {
        if (all[i].mayBeListed) {
            order.push_back(i);
        }
    }
    std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
        return all[a].review.*probability > all[b].review.*probability;
    });
    Cut cut{std::vector<bool>(all.size(), false), kNoCut};
    double falseSum = 0.0;
    for (std::size_t k = 0; k < order.size(); ++k) {
        const double p = all[order[k]].review.*probability;
        falseSum += 1.0 - p;
        // Means of ascending values ascend: the first too high ends the list.
        if (falseSum > kFalseShare * static_cast<double>(k + 1)) {
            break;
        }
        cut.isIn[order[k]] = true;
        cut.lowest = p;
    }
    return cut;
}

using ListedKeys = std::vector<std::pair<std::size_t, std::size_t>>; // measure, series

// The list of a day, given who was on it a week before.
ListedKeys
listOf(const std::vector<Candidate>& all, double SideReview::*probability, const ListedKeys& before)
{
    const Cut cut = cutList(all, probability);
    ListedKeys listed;
    for (std::size_t i = 0; i < all.size(); ++i) {
        const std::pair key(all[i].measure, all[i].series);
        const bool stays = all[i].mayBeListed && all[i].review.*probability > cut.lowest - kStay &&
                           std::binary_search(before.begin(), before.end(), key);
        if (cut.isIn[i] || stays) {
            listed.push_back(key);
        }
    }
    return listed; // candidates are by measure and series, so this is sorted
}

} // namespace

std::string_view tierWord(SideTier tier)
{
    switch (tier) {
    case SideTier::None:
        break;
    case SideTier::Look:
        return "look";
    case SideTier::Act:
        return "act";
    case SideTier::SendOn:
        return "send_on";
    }
    return "none";
}

RosterSides reviewSides(std::span<const MeasuredSides> measures, Day day, double thresholdPercent)
{
    ListedKeys look;
    ListedKeys act;
    std::vector<Candidate> all;
    for (int week = kReplayWeeks; week >= 0; --week) {
        all = judge(measures, day - 7 * week, thresholdPercent);
        look = listOf(all, &SideReview::probabilityBeyondFive, look);
        act = listOf(all, &SideReview::probabilityBeyondThreshold, act);
    }
    RosterSides result;
    for (Candidate& candidate : all) {
        const std::pair key(candidate.measure, candidate.series);
        SideReview& review = candidate.review;
        const bool isAct = std::binary_search(act.begin(), act.end(), key);
        const bool isLook = isAct || std::binary_search(look.begin(), look.end(), key);
        if (isAct) {
            review.tier = SideTier::Act;
            ++result.act;
            result.expectedFalseAct += 1.0 - review.probabilityBeyondThreshold;
        } else if (isLook) {
            review.tier = SideTier::Look;
        }
        if (isLook) {
            ++result.look;
            result.expectedFalseLook += 1.0 - review.probabilityBeyondFive;
        }
        result.entries.push_back({candidate.owner, std::move(review)});
    }
    return result;
}

} // namespace levelbar
