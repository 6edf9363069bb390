// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/strength/strength_timeline.h"

#include "core/base/square.h"
#include "core/strength/rep_curve.h"
#include "core/strength/set_reading.h"

#include <algorithm>
#include <cmath>

namespace levelbar {

namespace {

constexpr double kSameTime = 1e-9; // weeks

double median(std::vector<double>& values)
{
    const auto middle = values.begin() + static_cast<std::ptrdiff_t>(values.size() / 2);
    std::nth_element(values.begin(), middle, values.end());
    if (values.size() % 2 == 1) {
        return *middle;
    }
    return 0.5 * (*middle + *std::max_element(values.begin(), middle));
}

void addDays(const StrengthInput& input, StrengthTimeline& timeline)
{
    const auto& sets = input.sets;
    for (int i = 0; i < static_cast<int>(sets.size());) {
        TimelineNode node{sets[static_cast<std::size_t>(i)].weeks, i, i, timeline.days++, false};
        while (node.last < static_cast<int>(sets.size()) &&
               sets[static_cast<std::size_t>(node.last)].weeks == node.weeks) {
            ++node.last;
        }
        timeline.nodes.push_back(node);
        i = node.last;
    }
}

// Weeks between neighbouring days; the nodes are days still.
double usualGap(const StrengthTimeline& timeline)
{
    std::vector<double> gaps;
    for (std::size_t j = 1; j < timeline.nodes.size(); ++j) {
        gaps.push_back(timeline.nodes[j].weeks - timeline.nodes[j - 1].weeks);
    }
    return gaps.empty() ? 0.0 : median(gaps);
}

// A node at `weeks`, if no day falls there.
void addTime(double weeks, int sets, StrengthTimeline& timeline)
{
    const auto at = std::lower_bound(timeline.nodes.begin(),
                                     timeline.nodes.end(),
                                     weeks - kSameTime,
                                     [](const TimelineNode& n, double w) { return n.weeks < w; });
    if (at == timeline.nodes.end() || at->weeks > weeks + kSameTime) {
        const int next = at == timeline.nodes.end() ? sets : at->first;
        timeline.nodes.insert(at, TimelineNode{weeks, next, next, -1, false});
    }
}

TrendStep trendStep(double weeks, double sinceFirst, const StrengthParameters& p)
{
    const double tau = p.slopeMemory;
    const double keep = std::exp(-weeks / tau);
    const double walk = square(p.slopeWalk);
    TrendStep step;
    step.weeks = weeks;
    step.keep = keep;
    step.mix = tau * (1.0 - keep);
    step.levelNoise = walk * weeks * weeks * weeks / 3.0;
    step.crossNoise = walk * weeks * weeks / 2.0;
    step.slopeNoise = walk * weeks;
    if (weeks / tau >= 0.02) { // below, the exact form cancels to nothing
        step.slopeNoise = walk * tau / 2.0 * (1.0 - keep * keep);
        step.crossNoise = walk * tau * tau / 2.0 * square(1.0 - keep);
        step.levelNoise =
            walk * tau * tau * (weeks - 2.0 * tau * (1.0 - keep) + tau / 2.0 * (1.0 - keep * keep));
    }
    step.levelNoise += square(p.levelWalk) * weeks;
    // The extra walk of the first weeks, summed over this stretch.
    step.levelNoise += square(p.learningWalk) * p.learningWeeks *
                       (std::exp(-sinceFirst / p.learningWeeks) -
                        std::exp(-(sinceFirst + weeks) / p.learningWeeks));
    return step;
}

// ln 1RM that a day's sets speak for: the median of what each says alone.
double
dayGuess(const StrengthInput& input, const TimelineNode& node, const StrengthParameters& parameters)
{
    std::vector<double> values;
    for (int i = node.first; i < node.last; ++i) {
        const StrengthObservation& set = input.sets[static_cast<std::size_t>(i)];
        const double reps = set.reps + (isReserveKnown(set) ? set.reserve : 2.0) +
                            parameters.fatigue * tiringSets(set);
        values.push_back(set.logLoad - std::log(repFraction(reps)));
    }
    return median(values);
}

// Each day's median with up to two neighbours on either side, those less than `reach` weeks away.
std::vector<double>
runningMedian(const std::vector<double>& weeks, const std::vector<double>& values, double reach)
{
    std::vector<double> smooth(values.size());
    std::vector<double> near;
    for (std::size_t k = 0; k < values.size(); ++k) {
        near.clear();
        const std::size_t from = k < 2 ? 0 : k - 2;
        for (std::size_t n = from; n < std::min(k + 3, values.size()); ++n) {
            if (std::abs(weeks[n] - weeks[k]) < reach) {
                near.push_back(values[n]);
            }
        }
        smooth[k] = median(near);
    }
    return smooth;
}

} // namespace

StrengthTimeline makeTimeline(const StrengthInput& input, const StrengthParameters& parameters)
{
    StrengthTimeline timeline;
    addDays(input, timeline);
    timeline.freeGap = std::max(parameters.freeGap, 2.0 * usualGap(timeline));
    const double past = input.today - input.lookBack;
    for (const double weeks : {past, input.today}) {
        addTime(weeks, static_cast<int>(input.sets.size()), timeline);
    }
    for (TimelineNode& node : timeline.nodes) {
        node.isPast = std::abs(node.weeks - past) < kSameTime;
    }
    timeline.firstWeek = input.sets.front().weeks;
    return timeline;
}

TrendStep
stepTo(std::size_t j, const StrengthTimeline& timeline, const StrengthParameters& parameters)
{
    if (j == 0) {
        return {};
    }
    const double before = timeline.nodes[j - 1].weeks;
    return trendStep(
        timeline.nodes[j].weeks - before, std::max(0.0, before - timeline.firstWeek), parameters);
}

std::vector<double> firstGuess(const StrengthInput& input,
                               const StrengthTimeline& timeline,
                               const StrengthParameters& parameters)
{
    std::vector<double> weeks;
    std::vector<double> levels;
    for (const TimelineNode& node : timeline.nodes) {
        if (node.hasSets()) {
            weeks.push_back(node.weeks);
            levels.push_back(dayGuess(input, node, parameters));
        }
    }
    const std::vector<double> smooth = runningMedian(weeks, levels, parameters.guessReach);
    std::vector<double> guess;
    guess.reserve(timeline.nodes.size());
    for (const TimelineNode& node : timeline.nodes) {
        const auto after = std::lower_bound(weeks.begin(), weeks.end(), node.weeks);
        const auto k = static_cast<std::size_t>(after - weeks.begin());
        if (after == weeks.end()) {
            guess.push_back(smooth.back());
        } else if (k == 0 || *after == node.weeks) {
            guess.push_back(smooth[k]);
        } else {
            const double share = (node.weeks - weeks[k - 1]) / (weeks[k] - weeks[k - 1]);
            guess.push_back(smooth[k - 1] + share * (smooth[k] - smooth[k - 1]));
        }
    }
    return guess;
}

} // namespace levelbar
