// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later

#include "tests/support/benjamini_hochberg.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <vector>

namespace levelbar::false_discovery_test {
namespace {

using tests::benjaminiHochberg;

// Benjamini and Hochberg 1995 (J R Stat Soc B 57:289-300): fifteen comparisons of a study of
// myocardial infarction.
const std::vector<double> kInfarction = {0.0001,
                                         0.0004,
                                         0.0019,
                                         0.0095,
                                         0.0201,
                                         0.0278,
                                         0.0298,
                                         0.0344,
                                         0.0459,
                                         0.3240,
                                         0.4262,
                                         0.5719,
                                         0.6528,
                                         0.7590,
                                         1.0000};

long rejected(const std::vector<double>& p, double q)
{
    const auto isRejected = benjaminiHochberg(p, q);
    return std::count(isRejected.begin(), isRejected.end(), true);
}

TEST(PublishedFalseDiscovery, PapersExample)
{
    EXPECT_EQ(rejected(kInfarction, 0.05), 4) << "as the paper says";
    EXPECT_EQ(rejected(kInfarction, 0.10), 9) << "p.adjust of R 4.2.2";
}

TEST(PublishedFalseDiscovery, OrderOfTheValuesDoesNotMatter)
{
    std::vector<double> turned(kInfarction.rbegin(), kInfarction.rend());
    const auto isRejected = benjaminiHochberg(turned, 0.05);
    for (std::size_t i = 0; i < turned.size(); ++i) {
        EXPECT_EQ(isRejected[i], turned[i] <= 0.0095);
    }
}

TEST(PublishedFalseDiscovery, StepsUp)
{
    // 0.03 alone is above 0.05 / 2, but 0.04 passes at rank two and takes it along.
    EXPECT_EQ(rejected({0.04, 0.03}, 0.05), 2);
    EXPECT_EQ(rejected({0.06, 0.03}, 0.05), 0);
    EXPECT_EQ(rejected({}, 0.05), 0);
}

} // namespace
} // namespace levelbar::false_discovery_test
