// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/trend/robust_line.h"

#include "core/base/distributions.h"
#include "core/base/square.h"
#include "core/trend/regression.h"

#include <algorithm>
#include <cmath>
#include <vector>

namespace levelbar {

namespace {

constexpr double kHuber = 1.345;
constexpr double kBisquare = 4.685;
constexpr double kNormalMedian = 0.6745; // of the size of a standard normal, as published
constexpr int kMostSteps = 2000;
constexpr double kLeastStep = 1e-6; // of the spread

// Residuals count in spreads.
double weightOf(double residual, RobustLoss loss)
{
    const double size = std::abs(residual);
    if (loss == RobustLoss::Huber) {
        return size <= kHuber ? 1.0 : kHuber / size;
    }
    return size < kBisquare ? square(1.0 - square(size / kBisquare)) : 0.0;
}

// Derivative of residual times weight.
double steepnessOf(double residual, RobustLoss loss)
{
    const double size = std::abs(residual);
    if (loss == RobustLoss::Huber) {
        return size <= kHuber ? 1.0 : 0.0;
    }
    const double t = square(size / kBisquare);
    return t < 1.0 ? (1.0 - t) * (1.0 - 5.0 * t) : 0.0;
}

double median(std::vector<double> values)
{
    std::sort(values.begin(), values.end());
    const std::size_t half = values.size() / 2;
    return values.size() % 2 == 1 ? values[half] : 0.5 * (values[half - 1] + values[half]);
}

class Reweighting {
public:
    Reweighting(std::span<const double> xs, std::span<const double> ys, RobustLoss loss)
        : m_xs(xs)
        , m_ys(ys)
        , m_loss(loss)
        , m_residuals(xs.size())
    {
    }

    // False when the weights do not settle.
    bool settle(double slope)
    {
        m_line.count = static_cast<int>(m_xs.size());
        m_line.slope = slope;
        std::vector<double> heights(m_xs.size());
        for (std::size_t i = 0; i < heights.size(); ++i) {
            heights[i] = m_ys[i] - slope * m_xs[i];
        }
        m_line.intercept = median(heights);
        measure();
        for (int round = 0; round < kMostSteps; ++round) {
            if (!(m_line.spread > m_exact)) {
                return true;
            }
            const RobustLine before = m_line;
            if (!step()) {
                return false;
            }
            double moved = 0.0;
            for (const double x : m_xs) {
                moved = std::max(moved,
                                 std::abs(m_line.intercept - before.intercept +
                                          x * (m_line.slope - before.slope)));
            }
            moved = std::max(moved, std::abs(m_line.spread - before.spread));
            if (moved <= kLeastStep * m_line.spread) {
                return addErrors();
            }
        }
        return false;
    }

    [[nodiscard]] const RobustLine& line() const { return m_line; }

private:
    // Residuals and spread under the line.
    void measure()
    {
        std::vector<double> sizes(m_xs.size());
        double largest = 0.0;
        for (std::size_t i = 0; i < m_xs.size(); ++i) {
            m_residuals[i] = m_ys[i] - m_line.intercept - m_line.slope * m_xs[i];
            sizes[i] = std::abs(m_residuals[i]);
            largest = std::max(largest, std::abs(m_ys[i]));
        }
        m_line.spread = median(sizes) / kNormalMedian;
        m_exact = 1e-13 * largest; // rounding
    }

    bool step()
    {
        double weights = 0.0;
        double meanX = 0.0;
        double meanY = 0.0;
        std::vector<double> weight(m_xs.size());
        for (std::size_t i = 0; i < m_xs.size(); ++i) {
            weight[i] = weightOf(m_residuals[i] / m_line.spread, m_loss);
            weights += weight[i];
            meanX += weight[i] * m_xs[i];
            meanY += weight[i] * m_ys[i];
        }
        meanX /= weights;
        meanY /= weights;
        double cross = 0.0;
        double squares = 0.0;
        for (std::size_t i = 0; i < m_xs.size(); ++i) {
            cross += weight[i] * (m_xs[i] - meanX) * (m_ys[i] - meanY);
            squares += weight[i] * square(m_xs[i] - meanX);
        }
        if (!(squares > 0.0)) { // all that still weigh stand at one x
            return false;
        }
        m_line.slope = cross / squares;
        m_line.intercept = meanY - m_line.slope * meanX;
        measure();
        return true;
    }

    // False when the points say nothing of how far the line could move.
    bool addErrors()
    {
        const double n = m_line.count;
        double squares = 0.0;
        double steep = 0.0;
        double steepSquares = 0.0;
        double meanX = 0.0;
        for (std::size_t i = 0; i < m_xs.size(); ++i) {
            const double residual = m_residuals[i] / m_line.spread;
            squares += square(m_residuals[i] * weightOf(residual, m_loss));
            const double steepness = steepnessOf(residual, m_loss);
            steep += steepness / n;
            steepSquares += square(steepness);
            meanX += m_xs[i] / n;
        }
        if (!(steep > 0.0)) {
            return false;
        }
        const double variance = (steepSquares - n * square(steep)) / (n - 1.0);
        const double correction = 1.0 + 2.0 * variance / (n * square(steep));
        const double one = std::sqrt(squares / (n - 2.0)) * correction / steep;
        double spreadX = 0.0;
        for (const double x : m_xs) {
            spreadX += square(x - meanX);
        }
        m_line.slopeError = one / std::sqrt(spreadX);
        m_line.interceptError = one * std::sqrt(1.0 / n + square(meanX) / spreadX);
        return true;
    }

    std::span<const double> m_xs;
    std::span<const double> m_ys;
    RobustLoss m_loss;
    std::vector<double> m_residuals;
    RobustLine m_line;
    double m_exact = 0.0;
};

} // namespace

Result<RobustLine>
fitRobustLine(std::span<const double> xs, std::span<const double> ys, RobustLoss loss)
{
    const auto start = theilSenSlope(xs, ys);
    if (!start) {
        return tl::unexpected(start.error());
    }
    Reweighting fit(xs, ys, loss);
    if (!fit.settle(start->value)) {
        return refuse(FaultCode::NotInDomain,
                      {std::to_string(xs.size()) + " points", "points whose weights settle"});
    }
    return fit.line();
}

Estimate slopeOf(const RobustLine& line, double level)
{
    const double half = studentQuantile(0.5 + level / 2.0, line.count - 2.0) * line.slopeError;
    return {line.slope, line.slope - half, line.slope + half, level, line.count};
}

} // namespace levelbar
