// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/sides/side_difference.h"

#include "core/base/distributions.h"
#include "core/sides/side_news.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace levelbar {

namespace {

constexpr double kSmallPercent = 5.0;
constexpr int kRecentDays = 28;
constexpr int kReplayWeeks = 8;
constexpr double kClearSide = 0.90;
constexpr double kSureSmaller = 0.90;

struct Candidate {
    std::size_t owner = 0;
    std::size_t measure = 0;
    std::size_t series = 0;
    SideReview review;
    bool mayBeListed = false;
};

// What the replay remembers of one person's measure from week to week.
struct Memory {
    bool wasLook = false;
    bool wasAct = false;
    bool isSeen = false; // has a pair in the window
    SideTier tier = SideTier::None;
    SideListing listing;
    std::optional<SideLeaving> left;
};

using Memories = std::vector<std::vector<Memory>>; // by measure, then series

// P(the difference is beyond `logPercent` on the side of the posterior's mean).
double beyond(const SidePosterior& posterior, double logPercent)
{
    return posterior.mean() < 0.0 ? posterior.below(-logPercent)
                                  : 1.0 - posterior.below(logPercent);
}

// Without the measure and the interval: the replayed weeks need neither.
SideReview reviewOf(const SideLook& look, const SidePosterior& posterior, double thresholdPercent)
{
    SideReview review;
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

// The posterior's spread, as if it were normal.
double spreadOf(const SidePosterior& posterior)
{
    const double z = normalQuantile((1.0 + kLevel) / 2.0);
    return (posterior.quantile((1.0 + kLevel) / 2.0) - posterior.quantile((1.0 - kLevel) / 2.0)) /
           (2.0 * z);
}

// Open pairs since the prescription began, and whether the difference has become smaller.
void addTraining(const SideSeries& series, const SideContext& context, SideReview& review)
{
    if (!series.trainedSince || *series.trainedSince > context.day) {
        return;
    }
    const auto posteriorOn = [&](Day day) -> std::optional<SidePosterior> {
        const auto look = lookAt(series, day, context.noise);
        return look ? std::optional(posteriorOf(
                          *look, context.prior, centreFor(context.prior, series.dominant)))
                    : std::nullopt;
    };
    const double small = logPercentOf(kSmallPercent);
    for (const SidePair& pair : series.pairs) {
        if (pair.isOpen && pair.day > *series.trainedSince && pair.day <= context.day) {
            const auto after = posteriorOn(pair.day);
            review.openPairs.push_back({pair.day,
                                        pair.first.value_or(Side::Left),
                                        after ? after->below(small) - after->below(-small) : 0.0});
        }
    }
    const auto before = posteriorOn(*series.trainedSince);
    const auto now = posteriorOn(context.day);
    if (before && now) {
        const double smaller = std::abs(before->mean()) - std::abs(now->mean());
        const double error = std::hypot(spreadOf(*before), spreadOf(*now));
        review.isClosing = smaller > 0.0 && normalBelow(smaller / error) >= kSureSmaller;
    }
}

// The operated side over the good side before. One value is worth a day's difference over the root
// of two; both values' days count.
std::optional<Baseline> baselineOf(const SideSeries& series, const SideNoise& noise)
{
    std::optional<Baseline> baseline = series.baseline;
    if (baseline && baseline->goodBefore && baseline->operatedNow) {
        const double error = noise.spread / std::numbers::sqrt2 *
                             std::sqrt(1.0 / std::max(1, baseline->daysBefore) +
                                       1.0 / std::max(1, baseline->daysNow));
        const double share = baseline->logPercent;
        const double z = normalQuantile((1.0 + kLevel) / 2.0);
        baseline->percentOfIt = Estimate{100.0 * std::exp(share / 100.0),
                                         100.0 * std::exp((share - z * error) / 100.0),
                                         100.0 * std::exp((share + z * error) / 100.0),
                                         kLevel,
                                         baseline->daysNow};
    }
    return baseline;
}

// Which list a person may be on, and why on none: safety first.
void settle(const SideSeries& series, const SideContext& context, Candidate& candidate)
{
    SideReview& review = candidate.review;
    const Day day = context.day;
    const auto reason =
        std::find_if(series.reasons.begin(), series.reasons.end(), [day](const KnownReason& known) {
            return known.holdsOn(day);
        });
    if (reason != series.reasons.end()) {
        review.reason = *reason;
        review.news = newsSince(*reason, series, context);
    }
    const PainDay* own = lastPain(series, day, kRecentDays, true);
    const PainDay* near = lastPain(series, day, kPauseDays, false);
    if (near != nullptr) {
        review.pause = *near;
    }
    review.listing = {review.days < 2 ? SideWhy::OneDay : SideWhy::NotSure, std::nullopt, false};
    candidate.mayBeListed = review.days >= 2;
    if (own != nullptr && review.probabilitySide >= kClearSide) {
        review.tier = SideTier::SendOn;
        review.listing = {SideWhy::Hurts, own->day, false};
    } else if ((review.jump = jumpOf(series, context))) {
        review.tier = SideTier::SendOn;
        review.listing.why = SideWhy::Jump;
    } else if (near != nullptr) {
        review.listing = {SideWhy::Paused, near->day, false};
    } else if (review.reason && !review.news) {
        review.listing = {SideWhy::KnownReason, review.reason->since, false};
    } else {
        return;
    }
    candidate.mayBeListed = false;
}

// Everyone with a pair, on one day. `priors` by measure: those of the week before come in as a
// start, today's go out.
std::vector<Candidate> judge(std::span<const MeasuredSides> measures,
                             Day day,
                             double thresholdPercent,
                             bool isToday,
                             std::vector<SidePrior>& priors)
{
    std::vector<Candidate> all;
    for (std::size_t m = 0; m < measures.size(); ++m) {
        const MeasuredSides& measure = measures[m];
        const SideNoise noise = poolNoise(measure.series, day, measure.settings);
        priors[m] = learnPrior(measure.series, day, noise, measure.settings, priors[m]);
        const SideContext context{
            day, noise, priors[m], measure.thresholdPercent.value_or(thresholdPercent)};
        for (std::size_t s = 0; s < measure.series.size(); ++s) {
            const SideSeries& series = measure.series[s];
            const auto look = lookAt(series, day, noise);
            if (!look) {
                continue;
            }
            const SidePosterior posterior =
                posteriorOf(*look, priors[m], centreFor(priors[m], series.dominant));
            Candidate candidate{measure.owners[s],
                                m,
                                s,
                                reviewOf(*look, posterior, context.thresholdPercent),
                                false};
            settle(series, context, candidate);
            if (isToday) {
                candidate.review.measure = measure.measure;
                candidate.review.differencePercent = asPercent(posterior, look->days);
                candidate.review.baseline = baselineOf(series, noise);
                addTraining(series, context, candidate.review);
            }
            all.push_back(std::move(candidate));
        }
    }
    return all;
}

// The list by one probability: true for the places of those on it.
std::vector<bool> cut(const std::vector<Candidate>& all,
                      double SideReview::*probability,
                      bool Memory::*was,
                      const Memories& memories)
{
    std::vector<std::size_t> places;
    std::vector<ListCandidate> candidates;
    for (std::size_t i = 0; i < all.size(); ++i) {
        if (all[i].mayBeListed) {
            places.push_back(i);
            candidates.push_back(
                {all[i].review.*probability, memories[all[i].measure][all[i].series].*was});
        }
    }
    const std::vector<bool> listed = listOf(candidates);
    std::vector<bool> isListed(all.size(), false);
    for (std::size_t k = 0; k < places.size(); ++k) {
        isListed[places[k]] = listed[k];
    }
    return isListed;
}

// Since when: the day of the pair that brought it, or the day of the weekly look where that is
// not known.
Day beganOn(const SideReview& review, Day day)
{
    return day - review.lastPair < 7 ? review.lastPair : day;
}

// What changed from the week before.
void remember(SideReview& review, Day day, bool isFirstWeek, Memory& memory)
{
    const bool isSame = review.tier == memory.tier && review.tier != SideTier::None;
    if (review.tier == SideTier::None && memory.tier != SideTier::None) {
        memory.left = SideLeaving{memory.tier, day, review.listing.why};
    }
    if (isSame) {
        review.listing.since = memory.listing.since;
        review.listing.isSinceBefore = memory.listing.isSinceBefore;
    } else if (review.tier != SideTier::None) {
        review.listing.since = review.listing.since.value_or(beganOn(review, day));
        review.listing.isSinceBefore = isFirstWeek;
        memory.left.reset();
    }
    memory.tier = review.tier;
    memory.listing = review.listing;
    review.left = memory.left;
}

// Both lists of a day, given those of the week before.
void list(std::vector<Candidate>& all, Day day, bool isFirstWeek, Memories& memories)
{
    const auto isLook = cut(all, &SideReview::probabilityBeyondFive, &Memory::wasLook, memories);
    const auto isAct = cut(all, &SideReview::probabilityBeyondThreshold, &Memory::wasAct, memories);
    for (auto& ofMeasure : memories) {
        for (Memory& memory : ofMeasure) {
            memory.wasLook = memory.wasAct = memory.isSeen = false;
        }
    }
    for (std::size_t i = 0; i < all.size(); ++i) {
        SideReview& review = all[i].review;
        Memory& memory = memories[all[i].measure][all[i].series];
        memory.isSeen = true;
        memory.wasLook = isLook[i];
        memory.wasAct = isAct[i];
        if (isAct[i]) {
            review.tier = SideTier::Act;
            review.listing.why = SideWhy::BeyondThreshold;
        } else if (isLook[i]) {
            review.tier = SideTier::Look;
            review.listing.why = SideWhy::BeyondFive;
        }
        remember(review, day, isFirstWeek, memory);
    }
    for (auto& ofMeasure : memories) {
        for (Memory& memory : ofMeasure) {
            memory = memory.isSeen ? std::move(memory) : Memory{};
        }
    }
}

} // namespace

Estimate asPercent(const SidePosterior& posterior, int days)
{
    return {percentOf(posterior.mean()),
            percentOf(posterior.quantile((1.0 - kLevel) / 2.0)),
            percentOf(posterior.quantile((1.0 + kLevel) / 2.0)),
            kLevel,
            days};
}

RosterSides reviewSides(std::span<const MeasuredSides> measures, Day day, double thresholdPercent)
{
    Memories memories;
    for (const MeasuredSides& measure : measures) {
        memories.emplace_back(measure.series.size());
    }
    std::vector<Candidate> all;
    std::vector<SidePrior> priors(measures.size());
    for (int week = kReplayWeeks; week >= 0; --week) {
        all = judge(measures, day - 7 * week, thresholdPercent, week == 0, priors);
        list(all, day - 7 * week, week == kReplayWeeks, memories);
    }
    RosterSides result;
    result.models.reserve(measures.size());
    for (std::size_t m = 0; m < measures.size(); ++m) {
        result.models.push_back({measures[m].measure,
                                 poolNoise(measures[m].series, day, measures[m].settings),
                                 priors[m]});
    }
    for (Candidate& candidate : all) {
        SideReview& review = candidate.review;
        const bool isAct = review.tier == SideTier::Act;
        if (isAct) {
            ++result.act;
            result.expectedFalseAct += 1.0 - review.probabilityBeyondThreshold;
        }
        if (isAct || review.tier == SideTier::Look) {
            ++result.look;
            result.expectedFalseLook += 1.0 - review.probabilityBeyondFive;
        }
        result.entries.push_back({candidate.owner, std::move(review)});
    }
    return result;
}

} // namespace levelbar
