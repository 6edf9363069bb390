// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/bodyweight/personal_lever.h"

#include <cstddef>

namespace levelbar {

namespace {

using Weights = std::array<double, PersonalLever::Parts>;

Weights carriedBy(const PersonalLever& lever, const Weights& weights)
{
    Weights carried{};
    for (std::size_t i = 0; i < weights.size(); ++i) {
        for (std::size_t j = 0; j < weights.size(); ++j) {
            carried.at(i) += lever.covariance.at(i).at(j) * weights.at(j);
        }
    }
    return carried;
}

double product(const Weights& a, const Weights& b)
{
    double sum = 0.0;
    for (std::size_t i = 0; i < a.size(); ++i) {
        sum += a.at(i) * b.at(i);
    }
    return sum;
}

Weights loadWeights(double rise)
{
    return {1.0, rise, 0.0};
}

Weights readingWeights(double rise)
{
    return {1.0, rise, rise};
}

} // namespace

double PersonalLever::logFactor(double rise) const
{
    return product(loadWeights(rise), mean);
}

double PersonalLever::logVariance(double rise) const
{
    const Weights weights = loadWeights(rise);
    return product(weights, carriedBy(*this, weights));
}

ExpectedReading expectedReading(const PersonalLever& lever, double rise)
{
    const Weights weights = readingWeights(rise);
    return {product(weights, lever.mean), product(weights, carriedBy(lever, weights))};
}

PersonalLever learnt(const PersonalLever& lever, double logRatio, double rise, double noiseVariance)
{
    const Weights weights = readingWeights(rise);
    const Weights carried = carriedBy(lever, weights);
    const double total = product(weights, carried) + noiseVariance;
    const double surprise = logRatio - product(weights, lever.mean);
    PersonalLever after = lever;
    for (std::size_t i = 0; i < weights.size(); ++i) {
        after.mean.at(i) += carried.at(i) * surprise / total;
        for (std::size_t j = 0; j < weights.size(); ++j) {
            after.covariance.at(i).at(j) -= carried.at(i) * carried.at(j) / total;
        }
    }
    ++after.readings;
    return after;
}

} // namespace levelbar
