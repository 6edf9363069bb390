// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/trend/regression.h"

#include "core/base/distributions.h"

#include <algorithm>
#include <cmath>
#include <numeric>
#include <vector>

namespace levelbar {

namespace {

bool allFinite(std::span<const double> values)
{
    return std::all_of(values.begin(), values.end(), [](double v) { return std::isfinite(v); });
}

bool isUsable(std::span<const double> xs, std::span<const double> ys)
{
    if (xs.size() != ys.size() || xs.size() < 3 || !allFinite(xs) || !allFinite(ys)) {
        return false;
    }
    return std::any_of(xs.begin(), xs.end(), [&](double x) { return x != xs.front(); });
}

tl::unexpected<Fault> notALine(std::size_t count)
{
    return refuse(FaultCode::NotInDomain,
                  {std::to_string(count) + " points", "three or more at two or more places"});
}

double mean(std::span<const double> values)
{
    const double rough =
        std::accumulate(values.begin(), values.end(), 0.0) / static_cast<double>(values.size());
    double rest = 0.0; // a second pass takes up what the first lost to rounding
    for (const double v : values) {
        rest += v - rough;
    }
    return rough + rest / static_cast<double>(values.size());
}

} // namespace

Result<LineFit> fitLine(std::span<const double> xs, std::span<const double> ys)
{
    if (!isUsable(xs, ys)) {
        return notALine(xs.size());
    }
    LineFit fit;
    fit.count = static_cast<int>(xs.size());
    fit.meanX = mean(xs);
    const double meanY = mean(ys);
    double cross = 0.0;
    for (std::size_t i = 0; i < xs.size(); ++i) {
        fit.spreadX += (xs[i] - fit.meanX) * (xs[i] - fit.meanX);
        cross += (xs[i] - fit.meanX) * (ys[i] - meanY);
    }
    fit.slope = cross / fit.spreadX;
    fit.intercept = meanY - fit.slope * fit.meanX;
    double residuals = 0.0;
    for (std::size_t i = 0; i < xs.size(); ++i) {
        const double off = (ys[i] - meanY) - fit.slope * (xs[i] - fit.meanX);
        residuals += off * off;
    }
    const double count = fit.count;
    fit.residualSpread = std::sqrt(residuals / (count - 2.0));
    fit.slopeError = fit.residualSpread / std::sqrt(fit.spreadX);
    fit.interceptError =
        fit.residualSpread * std::sqrt(1.0 / count + fit.meanX * fit.meanX / fit.spreadX);
    return fit;
}

Estimate slopeOf(const LineFit& fit, double level)
{
    const double t = studentQuantile(0.5 + level / 2.0, fit.count - 2.0);
    return {fit.slope,
            fit.slope - t * fit.slopeError,
            fit.slope + t * fit.slopeError,
            level,
            fit.count};
}

Estimate heightAt(const LineFit& fit, double x, double level)
{
    const double t = studentQuantile(0.5 + level / 2.0, fit.count - 2.0);
    const double off = x - fit.meanX;
    const double error = fit.residualSpread * std::sqrt(1.0 / fit.count + off * off / fit.spreadX);
    const double height = fit.intercept + fit.slope * x;
    return {height, height - t * error, height + t * error, level, fit.count};
}

Result<Estimate> theilSenSlope(std::span<const double> xs, std::span<const double> ys, double level)
{
    if (!isUsable(xs, ys)) {
        return notALine(xs.size());
    }
    std::vector<double> slopes;
    for (std::size_t i = 0; i < xs.size(); ++i) {
        for (std::size_t j = i + 1; j < xs.size(); ++j) {
            if (xs[i] != xs[j]) {
                slopes.push_back((ys[j] - ys[i]) / (xs[j] - xs[i]));
            }
        }
    }
    std::sort(slopes.begin(), slopes.end());
    const std::size_t pairs = slopes.size();
    const double centre =
        pairs % 2 == 1 ? slopes[pairs / 2] : 0.5 * (slopes[pairs / 2 - 1] + slopes[pairs / 2]);
    // z from a t with very many degrees of freedom: the normal quantile.
    const double z = studentQuantile(0.5 + level / 2.0, 1e9);
    const auto n = static_cast<double>(xs.size());
    const double width = z * std::sqrt(n * (n - 1.0) * (2.0 * n + 5.0) / 18.0);
    const auto last = static_cast<double>(pairs) - 1.0;
    const auto rank = [&](double place) {
        return slopes[static_cast<std::size_t>(std::clamp(std::round(place), 0.0, last))];
    };
    const auto total = static_cast<double>(pairs);
    return Estimate{centre,
                    rank((total - width) / 2.0 - 1.0),
                    rank((total + width) / 2.0),
                    level,
                    static_cast<int>(xs.size())};
}

} // namespace levelbar
