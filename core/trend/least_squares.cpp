// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/trend/least_squares.h"

#include "core/base/distributions.h"
#include "core/base/square.h"

#include <algorithm>
#include <cmath>

namespace levelbar {

namespace {

using Column = std::vector<double>;

constexpr double kSingular = 1e-10; // of a column's length that must be left beside the others

bool isFinite(std::span<const double> values)
{
    return std::all_of(values.begin(), values.end(), [](double v) { return std::isfinite(v); });
}

// Takes the mean off and returns it. A second pass takes up what the first lost to rounding.
double centre(Column& values)
{
    const auto count = static_cast<double>(values.size());
    double mean = 0.0;
    for (int pass = 0; pass < 2; ++pass) {
        double sum = 0.0;
        for (const double v : values) {
            sum += v;
        }
        for (double& v : values) {
            v -= sum / count;
        }
        mean += sum / count;
    }
    return mean;
}

double squaresFrom(const Column& values, std::size_t first)
{
    double sum = 0.0;
    for (std::size_t i = first; i < values.size(); ++i) {
        sum += square(values[i]);
    }
    return sum;
}

// Mirrors `target` from row k on, by the vector that lies in `mirror` from row k on.
void reflect(Column& target, const Column& mirror, std::size_t k, double mirrorSquares)
{
    double dot = 0.0;
    for (std::size_t i = k; i < target.size(); ++i) {
        dot += mirror[i] * target[i];
    }
    const double factor = 2.0 * dot / mirrorSquares;
    for (std::size_t i = k; i < target.size(); ++i) {
        target[i] -= factor * mirror[i];
    }
}

// Columns become the upper triangle R, y becomes Q'y. False when a column depends on others.
bool triangulate(std::vector<Column>& columns, Column& y)
{
    for (std::size_t k = 0; k < columns.size(); ++k) {
        const double length = std::sqrt(squaresFrom(columns[k], k));
        if (length < kSingular) {
            return false;
        }
        Column mirror = columns[k];
        const double diagonal = mirror[k] > 0.0 ? -length : length;
        mirror[k] -= diagonal;
        const double mirrorSquares = squaresFrom(mirror, k);
        for (std::size_t j = k; j < columns.size(); ++j) {
            reflect(columns[j], mirror, k, mirrorSquares);
        }
        reflect(y, mirror, k, mirrorSquares);
    }
    return true;
}

// Solves R x = right, R the upper triangle of the columns.
Column backSubstituted(const std::vector<Column>& columns, Column right)
{
    for (std::size_t k = columns.size(); k-- > 0;) {
        right[k] /= columns[k][k];
        for (std::size_t i = 0; i < k; ++i) {
            right[i] -= columns[k][i] * right[k];
        }
    }
    right.resize(columns.size());
    return right;
}

// Squared lengths of the rows of R's inverse, and of `means` times it: variances over that of
// one value.
Column variances(const std::vector<Column>& columns, const Column& means)
{
    Column sums(columns.size() + 1, 0.0);
    for (std::size_t j = 0; j < columns.size(); ++j) {
        Column unit(columns.size(), 0.0);
        unit[j] = 1.0;
        const Column inverse = backSubstituted(columns, unit); // column j of the inverse
        double mean = 0.0;
        for (std::size_t i = 0; i < columns.size(); ++i) {
            sums[i + 1] += square(inverse[i]);
            mean += means[i] * inverse[i];
        }
        sums[0] += square(mean);
    }
    return sums;
}

} // namespace

Result<LinearFit> fitColumns(std::span<const std::vector<double>> given, std::span<const double> ys)
{
    const bool isUsable = !given.empty() && ys.size() > given.size() + 1 && isFinite(ys) &&
                          std::all_of(given.begin(), given.end(), [&](const Column& column) {
                              return column.size() == ys.size() && isFinite(column);
                          });
    const auto fault = refuse(FaultCode::NotInDomain,
                              {std::to_string(ys.size()) + " points",
                               "more than coefficients, in columns that do not depend on each "
                               "other"});
    if (!isUsable) {
        return fault;
    }
    std::vector<Column> columns(given.begin(), given.end());
    Column y(ys.begin(), ys.end());
    Column means;
    Column scales;
    for (Column& column : columns) {
        means.push_back(centre(column));
        scales.push_back(std::sqrt(squaresFrom(column, 0)));
        if (!(scales.back() > 0.0)) {
            return fault;
        }
        for (double& v : column) {
            v /= scales.back();
        }
        means.back() /= scales.back();
    }
    const double meanY = centre(y);
    const double all = squaresFrom(y, 0);
    if (!triangulate(columns, y)) {
        return fault;
    }
    LinearFit fit;
    fit.count = static_cast<int>(ys.size());
    fit.residualSquares = squaresFrom(y, columns.size());
    fit.rSquared = all > 0.0 ? 1.0 - fit.residualSquares / all : 0.0;
    const Column slopes = backSubstituted(columns, y);
    const Column relative = variances(columns, means);
    fit.coefficients.push_back(meanY);
    for (std::size_t j = 0; j < slopes.size(); ++j) {
        fit.coefficients[0] -= slopes[j] * means[j];
        fit.coefficients.push_back(slopes[j] / scales[j]);
    }
    fit.residualSpread = std::sqrt(fit.residualSquares / fit.degreesOfFreedom());
    fit.errors.push_back(fit.residualSpread * std::sqrt(1.0 / fit.count + relative[0]));
    for (std::size_t j = 0; j < slopes.size(); ++j) {
        fit.errors.push_back(fit.residualSpread * std::sqrt(relative[j + 1]) / scales[j]);
    }
    return fit;
}

Estimate coefficientOf(const LinearFit& fit, std::size_t place, double level)
{
    const double half =
        studentQuantile(0.5 + level / 2.0, fit.degreesOfFreedom()) * fit.errors[place];
    const double value = fit.coefficients[place];
    return {value, value - half, value + half, level, fit.count};
}

} // namespace levelbar
