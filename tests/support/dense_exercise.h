// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "tests/support/dense_equations.h"
#include "tests/support/dense_strength.h"

#include <cstddef>
#include <optional>
#include <vector>

// One exercise of dense_strength.h.
namespace levelbar::tests {

// The variances that exercises of one person share: in all, and an exercise's own part.
inline constexpr double kFactorMean = -0.045;
inline constexpr double kFactorVariance = 0.30 * 0.30;
inline constexpr double kFactorVarianceInPerson = 0.15 * 0.15;
inline constexpr double kDayVariance = 0.030 * 0.030;
inline constexpr double kDayVarianceOfExercise = 0.02 * 0.02;

struct Normal {
    double mean = 0.0;
    double variance = 0.0;
};

// Where the tests are linearised.
struct Point {
    double level = 0.0;
    double difference = 0.0;
    double factor = 0.0;
    double shape = 0.0;
};

struct Stop {
    double week = 0.0;
    std::optional<std::size_t> day; // among the days with tests
    Point point;
};

class DenseExercise {
public:
    DenseExercise(std::vector<DenseTest> tests, double today);

    // Solve, and linearise again where the solution lies: at most so often.
    void iterate(int most, bool endsWithNewPoints);

    [[nodiscard]] const Numbers& days() const { return m_days; }

    [[nodiscard]] Normal factor() const
    {
        return {m_solution.mean[kFactor], m_solution.covariance[kFactor][kFactor]};
    }

    // A day's effect: centre from everything, variance from that day and those before it.
    [[nodiscard]] Normal day(std::size_t d) const;

    void expectFactor(const Normal& prior) { m_factorPrior = prior; }

    void expectDay(std::size_t d, const Normal& prior) { m_dayPriors[d] = prior; }

    [[nodiscard]] DenseStrength answer() const;

private:
    static constexpr std::size_t kFactor = 0;
    static constexpr std::size_t kShape = 1;

    static std::size_t levelAt(std::size_t j) { return 2 + 3 * j; }

    static std::size_t slopeAt(std::size_t j) { return 3 + 3 * j; }

    static std::size_t differenceAt(std::size_t j) { return 4 + 3 * j; }

    [[nodiscard]] std::size_t dayAt(std::size_t d) const { return 2 + 3 * m_stops.size() + 2 * d; }

    [[nodiscard]] std::size_t sideDayAt(std::size_t d) const { return dayAt(d) + 1; }

    [[nodiscard]] Numbers none() const
    {
        return Numbers(2 + 3 * m_stops.size() + 2 * m_days.size(), 0.0);
    }

    // "This unknown is about value", give or take.
    [[nodiscard]] Equation about(std::size_t place, double value, double variance) const;

    void guess();
    [[nodiscard]] double excess(std::size_t j) const;
    [[nodiscard]] std::vector<Equation> equations() const;
    void addMove(std::size_t j, std::vector<Equation>& all) const;
    [[nodiscard]] Equation
    testEquation(const DenseTest& test, const Stop& stop, std::size_t j) const;
    double movePoints();

    std::vector<DenseTest> m_tests;
    double m_lookBack = 0.0;
    Numbers m_days;
    std::vector<Stop> m_stops; // days with tests, today - look-back, today
    Normal m_factorPrior{kFactorMean, kFactorVariance};
    std::vector<Normal> m_dayPriors;
    Numbers m_dayWeights;
    double m_firstLevel = 0.0;
    std::vector<Equation> m_equations;
    Solution m_solution;
};

} // namespace levelbar::tests
