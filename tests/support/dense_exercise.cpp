// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/support/dense_exercise.h"

#include <algorithm>
#include <cmath>
#include <utility>

namespace levelbar::tests {

namespace {

double square(double x)
{
    return x * x;
}

// ---- The model's numbers; ln 1RM in natural logarithms, time in weeks.

constexpr double kLevelWalk = 0.003;
constexpr double kLearningWalk = 0.20;
constexpr double kLearningWeeks = 2.5;
constexpr double kGuessReach = 2.0;
constexpr double kSlopeWalk = 0.0012;
constexpr double kSlopeMemory = 26.0;
constexpr double kLateSlope = 0.001;
constexpr double kStartSpread = 0.30;
constexpr double kFirstSlope = 0.0035;
constexpr double kFirstSlopeSpread = 0.006; // experience unknown
constexpr double kShapeSpread = 0.20;
constexpr double kDayTail = 5.0;
constexpr double kSideSpread = 0.08;
constexpr double kSideWalk = 0.0015;
constexpr double kSideDaySpread = 0.02;
constexpr double kSideScaleError = 0.10;
constexpr double kTestedSpread = 0.7; // reps
constexpr double kSharedSpread = 0.026 * 0.4;
constexpr double kBreakLoss = 0.003;
constexpr double kBreakLossSpread = 0.010;
constexpr double kRegain = 0.003;
constexpr double kRegainSpread = 0.006;
constexpr double kFreeGap = 2.5;
constexpr double kLongestBreak = 8.0;
constexpr double kLongestLookBack = 8.0;

// ---- The average rep curve (Desgorces 2010), written as reps by share of 1RM.

double repsAtShare(double share)
{
    return share > 1.0 - 0.0402 ? 1.0 + (1.0 - share) / 0.0402
                                : std::log(0.837677 / (std::max(share, 0.25) - 0.176846)) / 0.0338;
}

// Reps gained per unit of ln 1RM, = -share * d(reps)/d(share).
double repsPerLevel(double share)
{
    const double held = std::max(share, 0.25);
    return share > 1.0 - 0.0402 ? share / 0.0402 : held / (held - 0.176846) / 0.0338;
}

double median(Numbers values)
{
    std::sort(values.begin(), values.end());
    const std::size_t half = values.size() / 2;
    return values.size() % 2 == 1 ? values[half] : 0.5 * (values[half - 1] + values[half]);
}

// The integral over [0, weeks], by Simpson's rule.
template <typename Function> double integral(double weeks, const Function& function)
{
    constexpr int kSteps = 400;
    double sum = function(0.0) + function(weeks);
    for (int i = 1; i < kSteps; ++i) {
        sum += (i % 2 == 1 ? 4.0 : 2.0) * function(weeks * i / kSteps);
    }
    return sum * weeks / kSteps / 3.0;
}

} // namespace

DenseExercise::DenseExercise(std::vector<DenseTest> tests, double today)
    : m_tests(std::move(tests))
    , m_lookBack(std::clamp(today - m_tests.front().week, 1.0, kLongestLookBack))
{
    for (const DenseTest& test : m_tests) {
        if (m_days.empty() || m_days.back() != test.week) {
            m_days.push_back(test.week);
            m_dayPriors.push_back({0.0, kDayVariance});
        }
    }
    Numbers weeks = m_days;
    weeks.insert(weeks.end(), {today - m_lookBack, today});
    std::sort(weeks.begin(), weeks.end());
    weeks.erase(std::unique(weeks.begin(),
                            weeks.end(),
                            [](double a, double b) { return std::abs(a - b) < 1e-9; }),
                weeks.end());
    for (const double week : weeks) {
        const auto day = std::find(m_days.begin(), m_days.end(), week);
        Stop stop{week, std::nullopt, {}};
        if (day != m_days.end()) {
            stop.day = static_cast<std::size_t>(day - m_days.begin());
        }
        m_stops.push_back(stop);
    }
    guess();
}

void DenseExercise::iterate(int most, bool endsWithNewPoints)
{
    m_dayWeights.assign(m_days.size(), 1.0);
    for (int iteration = 1;; ++iteration) {
        m_equations = equations();
        m_solution = solve(m_equations);
        const bool isLast = iteration == most;
        if ((isLast && !endsWithNewPoints) || movePoints() < 1e-3 || isLast) {
            return;
        }
    }
}

Normal DenseExercise::day(std::size_t d) const
{
    const Solution then = solve(m_equations, m_days[d]);
    return {m_solution.mean[dayAt(d)], then.covariance[dayAt(d)][dayAt(d)]};
}

Equation DenseExercise::about(std::size_t place, double value, double variance) const
{
    Equation equation{none(), value, variance};
    equation.coefficients[place] = 1.0;
    return equation;
}

// Each day's median load, smoothed over neighbours that are near, joined by straight lines.
void DenseExercise::guess()
{
    Numbers medians;
    for (const double day : m_days) {
        Numbers values;
        for (const DenseTest& test : m_tests) {
            if (test.week == day) {
                values.push_back(std::log(test.kilograms));
            }
        }
        medians.push_back(median(values));
    }
    Numbers smooth;
    for (std::size_t d = 0; d < m_days.size(); ++d) {
        Numbers near;
        for (std::size_t n = d < 2 ? 0 : d - 2; n < std::min(d + 3, m_days.size()); ++n) {
            if (std::abs(m_days[n] - m_days[d]) < kGuessReach) {
                near.push_back(medians[n]);
            }
        }
        smooth.push_back(median(near));
    }
    for (Stop& stop : m_stops) {
        stop.point.level = stop.week <= m_days.front() ? smooth.front() : smooth.back();
        for (std::size_t d = 1; d < m_days.size(); ++d) {
            if (m_days[d - 1] < stop.week && stop.week <= m_days[d]) {
                const double share = (stop.week - m_days[d - 1]) / (m_days[d] - m_days[d - 1]);
                stop.point.level = (1.0 - share) * smooth[d - 1] + share * smooth[d];
            }
        }
    }
    m_firstLevel = m_stops.front().point.level;
}

// Weeks of a break, beyond those that cost nothing, from the last day with tests before the stop.
double DenseExercise::excess(std::size_t j) const
{
    const auto next = std::lower_bound(m_days.begin(), m_days.end(), m_stops[j].week);
    if (next == m_days.begin()) {
        return 0.0;
    }
    Numbers gaps;
    for (std::size_t d = 1; d < m_days.size(); ++d) {
        gaps.push_back(m_days[d] - m_days[d - 1]);
    }
    const double free = gaps.empty() ? kFreeGap : std::max(kFreeGap, 2.0 * median(gaps));
    return std::clamp(m_stops[j].week - *(next - 1) - free, 0.0, kLongestBreak);
}

// From stop j - 1 to stop j: a slope that falls back towards the late one, and what a break costs.
void DenseExercise::addMove(std::size_t j, std::vector<Equation>& all) const
{
    const Stop& from = m_stops[j - 1];
    const double weeks = m_stops[j].week - from.week;
    const auto kept = [](double t) { return std::exp(-t / kSlopeMemory); };
    const auto mixed = [&](double t) { return kSlopeMemory * (1.0 - kept(t)); };
    const double trained = std::max(0.0, from.week - m_days.front());
    double level = integral(weeks, [&](double t) {
        return square(kLevelWalk) + square(kSlopeWalk * mixed(t)) +
               square(kLearningWalk) * std::exp(-(trained + t) / kLearningWeeks);
    });
    const double cross =
        integral(weeks, [&](double t) { return square(kSlopeWalk) * mixed(t) * kept(t); });
    double slope = integral(weeks, [&](double t) { return square(kSlopeWalk * kept(t)); });
    double levelStep = kLateSlope * (weeks - mixed(weeks));
    double slopeStep = kLateSlope * (1.0 - kept(weeks));
    const double broken = excess(j);
    const double growth = from.day ? broken : broken - excess(j - 1);
    if (growth > 0.0) {
        levelStep -= kBreakLoss * growth;
        level += square(kBreakLossSpread) * growth;
    }
    if (m_stops[j].day && broken > 0.0) {
        slopeStep += kRegain;
        slope += square(kRegainSpread);
    }
    Equation slopeEquation = about(slopeAt(j), slopeStep, slope);
    slopeEquation.coefficients[slopeAt(j - 1)] = -kept(weeks);
    // The level's noise goes partly with the slope's: what is left of it stands alone.
    const double share = cross / slope;
    Equation levelEquation =
        about(levelAt(j), levelStep - share * slopeStep, level - share * cross);
    levelEquation.coefficients[levelAt(j - 1)] = -1.0;
    levelEquation.coefficients[slopeAt(j - 1)] = -mixed(weeks) + share * kept(weeks);
    levelEquation.coefficients[slopeAt(j)] = -share;
    Equation sideEquation = about(differenceAt(j), 0.0, square(kSideWalk) * weeks);
    sideEquation.coefficients[differenceAt(j - 1)] = -1.0;
    all.insert(all.end(), {slopeEquation, levelEquation, sideEquation});
}

// One rep was lifted and nothing was left, on the average curve: a single says nothing of how many
// reps a lighter load allows. The day counts from no effect, wherever the solution
// puts it.
Equation DenseExercise::testEquation(const DenseTest& test, const Stop& stop, std::size_t j) const
{
    const Point& point = stop.point;
    const double level = point.level + test.side * point.difference;
    const double share = test.kilograms / std::exp(level);
    const double plain = repsAtShare(share);
    const double steep = repsPerLevel(share);
    Equation equation{none(), 0.0, square(kTestedSpread), stop.week};
    Numbers& by = equation.coefficients;
    by[levelAt(j)] = steep;
    by[differenceAt(j)] = steep * test.side;
    by[dayAt(*stop.day)] = steep;
    by[sideDayAt(*stop.day)] = steep * test.side;
    equation.value = 1.0 - plain + steep * level;
    return equation;
}

std::vector<Equation> DenseExercise::equations() const
{
    std::vector<Equation> all = {about(levelAt(0), m_firstLevel, square(kStartSpread)),
                                 about(slopeAt(0), kFirstSlope, square(kFirstSlopeSpread)),
                                 about(differenceAt(0), 0.0, square(kSideSpread)),
                                 about(kFactor, m_factorPrior.mean, m_factorPrior.variance),
                                 about(kShape, 0.0, square(kShapeSpread))};
    for (std::size_t d = 0; d < m_days.size(); ++d) {
        const Normal& prior = m_dayPriors[d];
        all.push_back(about(dayAt(d), prior.mean, prior.variance / m_dayWeights[d]));
        all.push_back(about(sideDayAt(d), 0.0, square(kSideDaySpread)));
    }
    for (std::size_t j = 0; j < m_stops.size(); ++j) {
        if (j > 0) {
            addMove(j, all);
        }
        for (const DenseTest& test : m_tests) {
            if (m_stops[j].day && test.week == m_stops[j].week) {
                all.push_back(testEquation(test, m_stops[j], j));
            }
        }
    }
    return all;
}

// To the solution; returns how far.
double DenseExercise::movePoints()
{
    double farthest = 0.0;
    for (std::size_t j = 0; j < m_stops.size(); ++j) {
        Stop& stop = m_stops[j];
        const Point next{m_solution.mean[levelAt(j)],
                         m_solution.mean[differenceAt(j)],
                         std::clamp(m_solution.mean[kFactor], -0.9, 0.9),
                         std::clamp(m_solution.mean[kShape], -0.5, 0.5)};
        farthest = std::max({farthest,
                             std::abs(next.level - stop.point.level),
                             std::abs(next.difference - stop.point.difference),
                             std::abs(next.factor - stop.point.factor),
                             0.2 * std::abs(next.shape - stop.point.shape)});
        stop.point = next;
        if (stop.day) {
            // A Student-t day: the farther off, the less it is held to the usual spread.
            const Normal& usual = m_dayPriors[*stop.day];
            const double off = m_solution.mean[dayAt(*stop.day)] - usual.mean;
            m_dayWeights[*stop.day] = (kDayTail + 1.0) / (kDayTail + square(off) / usual.variance);
        }
    }
    return farthest;
}

DenseStrength DenseExercise::answer() const
{
    DenseStrength answer;
    const auto& mean = m_solution.mean;
    const auto& covariance = m_solution.covariance;
    const double shared = square(kSharedSpread); // an error that all days have in common
    for (std::size_t j = 0; j < m_stops.size(); ++j) {
        const std::size_t level = levelAt(j);
        const std::size_t side = differenceAt(j);
        if (m_stops[j].day || j + 1 == m_stops.size()) {
            answer.past.push_back({m_stops[j].week,
                                   mean[level],
                                   mean[side],
                                   covariance[level][level] + shared,
                                   covariance[side][side] + square(kSideScaleError * mean[side])});
        }
    }
    const std::size_t last = m_stops.size() - 1;
    std::size_t past = last;
    while (m_stops[past].week > m_stops[last].week - m_lookBack + 1e-9) {
        --past;
    }
    Numbers change = none();
    change[levelAt(last)] = 1.0 / m_lookBack;
    change[levelAt(past)] = -1.0 / m_lookBack;
    answer.level = answer.past.back().level;
    answer.levelVariance = answer.past.back().levelVariance;
    answer.difference = answer.past.back().difference;
    answer.differenceVariance = answer.past.back().differenceVariance;
    answer.levelDifferenceCovariance = covariance[levelAt(last)][differenceAt(last)];
    answer.slope = (mean[levelAt(last)] - mean[levelAt(past)]) / m_lookBack;
    answer.slopeVariance = m_solution.variance(change);
    answer.factor = mean[kFactor];
    answer.factorVariance = covariance[kFactor][kFactor];
    return answer;
}

} // namespace levelbar::tests
