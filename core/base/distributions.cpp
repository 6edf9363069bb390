// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/base/distributions.h"

#include <boost/math/distributions/students_t.hpp>

#include <cmath>
#include <numbers>

namespace levelbar {

double normalBelow(double x)
{
    return 0.5 * std::erfc(-x / std::numbers::sqrt2);
}

double studentBelow(double x, double degreesOfFreedom)
{
    return boost::math::cdf(boost::math::students_t(degreesOfFreedom), x);
}

double studentQuantile(double probability, double degreesOfFreedom)
{
    return boost::math::quantile(boost::math::students_t(degreesOfFreedom), probability);
}

} // namespace levelbar
