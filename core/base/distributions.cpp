// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/base/distributions.h"

#include <boost/math/distributions/chi_squared.hpp>
#include <boost/math/distributions/fisher_f.hpp>
#include <boost/math/distributions/normal.hpp>
#include <boost/math/distributions/students_t.hpp>

#include <cmath>
#include <numbers>

namespace levelbar {

namespace {

// Boost works in long double unless told not to; five times slower for a digit nobody reads.
using InDouble = boost::math::policies::policy<boost::math::policies::promote_double<false>>;
using StudentsT = boost::math::students_t_distribution<double, InDouble>;

} // namespace

double normalBelow(double x)
{
    return 0.5 * std::erfc(-x / std::numbers::sqrt2);
}

double normalQuantile(double probability)
{
    return boost::math::quantile(boost::math::normal(), probability);
}

double studentBelow(double x, double degreesOfFreedom)
{
    return boost::math::cdf(StudentsT(degreesOfFreedom), x);
}

double studentQuantile(double probability, double degreesOfFreedom)
{
    return boost::math::quantile(StudentsT(degreesOfFreedom), probability);
}

double chiSquareQuantile(double probability, double degreesOfFreedom)
{
    return boost::math::quantile(boost::math::chi_squared(degreesOfFreedom), probability);
}

double fisherQuantile(double probability, double above, double below)
{
    return boost::math::quantile(boost::math::fisher_f(above, below), probability);
}

} // namespace levelbar
