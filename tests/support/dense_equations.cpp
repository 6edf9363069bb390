// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/support/dense_equations.h"

#include <cstddef>
#include <numeric>
#include <utility>

namespace levelbar::tests {

namespace {

// One step of Gauss and Jordan: leaves the column with a single one, in that row.
void eliminate(std::vector<Numbers>& matrix, std::size_t pivot)
{
    const double divisor = matrix[pivot][pivot];
    for (double& entry : matrix[pivot]) {
        entry /= divisor;
    }
    for (std::size_t r = 0; r < matrix.size(); ++r) {
        const double times = r == pivot ? 0.0 : matrix[r][pivot];
        for (std::size_t c = 0; times != 0.0 && c < matrix[r].size(); ++c) {
            matrix[r][c] -= times * matrix[pivot][c];
        }
    }
}

// Solves and inverts a symmetric positive matrix, which needs no search for pivots.
Solution invert(std::vector<Numbers> matrix, const Numbers& rightSide)
{
    const std::size_t size = rightSide.size();
    for (std::size_t r = 0; r < size; ++r) {
        matrix[r].resize(2 * size);
        matrix[r][size + r] = 1.0;
    }
    for (std::size_t pivot = 0; pivot < size; ++pivot) {
        eliminate(matrix, pivot);
    }
    Solution solution;
    for (const Numbers& row : matrix) {
        solution.covariance.emplace_back(row.begin() + static_cast<std::ptrdiff_t>(size),
                                         row.end());
        const Numbers& inverse = solution.covariance.back();
        solution.mean.push_back(
            std::inner_product(inverse.begin(), inverse.end(), rightSide.begin(), 0.0));
    }
    return solution;
}

} // namespace

double Solution::variance(const Numbers& weights) const
{
    double sum = 0.0;
    for (std::size_t r = 0; r < weights.size(); ++r) {
        for (std::size_t c = 0; c < weights.size(); ++c) {
            sum += weights[r] * covariance[r][c] * weights[c];
        }
    }
    return sum;
}

Solution solve(const std::vector<Equation>& equations, double until)
{
    const std::size_t size = equations.front().coefficients.size();
    std::vector<Numbers> matrix(size, Numbers(size, 0.0));
    Numbers rightSide(size, 0.0);
    for (const Equation& equation : equations) {
        if (equation.week > until) {
            continue;
        }
        for (std::size_t r = 0; r < size; ++r) {
            const double weight = equation.coefficients[r] / equation.variance;
            rightSide[r] += weight * equation.value;
            for (std::size_t c = 0; c < size; ++c) {
                matrix[r][c] += weight * equation.coefficients[c];
            }
        }
    }
    return invert(std::move(matrix), rightSide);
}

} // namespace levelbar::tests
