// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/trend/least_squares.h"
#include "core/trend/regression.h"
#include "core/trend/robust_line.h"

#include <gtest/gtest.h>

#include <array>
#include <cmath>
#include <cstdio>
#include <numeric>

// Data and certified values of NIST's Statistical Reference Datasets (public domain), as they
// stand in the tests of the GNU Scientific Library; values of R as computed by R 4.2.2.
namespace levelbar::least_squares_test {
namespace {

using Column = std::vector<double>;

// So many digits agree with the certified value: NIST's log relative error.
double digits(double value, double certified)
{
    return value == certified ? 15.0 : -std::log10(std::abs((value - certified) / certified));
}

struct Certified {
    std::vector<double> coefficients;
    std::vector<double> errors;
    double spread = 0.0;
    double squares = 0.0;
    double rSquared = 0.0;
};

void expectDigits(const LinearFit& fit, const Certified& certified, double least)
{
    ASSERT_EQ(fit.coefficients.size(), certified.coefficients.size());
    double fewest = 15.0;
    for (std::size_t i = 0; i < certified.coefficients.size(); ++i) {
        fewest = std::min({fewest,
                           digits(fit.coefficients[i], certified.coefficients[i]),
                           digits(fit.errors[i], certified.errors[i])});
    }
    fewest = std::min({fewest,
                       digits(fit.residualSpread, certified.spread),
                       digits(fit.residualSquares, certified.squares),
                       digits(fit.rSquared, certified.rSquared)});
    std::printf("digits that agree: %.1f\n", fewest);
    EXPECT_GE(fewest, least);
}

TEST(LeastSquares, NorrisOfNist)
{
    const std::vector<Column> x = {{0.2,   337.4, 118.2, 884.6, 10.1,  226.5, 666.3, 996.3, 448.6,
                                    777.0, 558.2, 0.4,   0.6,   775.5, 666.9, 338.0, 447.5, 11.6,
                                    556.0, 228.1, 995.8, 887.6, 120.2, 0.3,   0.3,   556.8, 339.1,
                                    887.2, 999.0, 779.0, 11.1,  118.3, 229.2, 669.1, 448.9, 0.5}};
    const Column y = {0.1,   338.8, 118.1, 888.0, 9.2,   228.1, 668.5, 998.5, 449.1,
                      778.9, 559.2, 0.3,   0.1,   778.1, 668.8, 339.3, 448.9, 10.8,
                      557.7, 228.3, 998.0, 888.8, 119.6, 0.3,   0.6,   557.6, 339.3,
                      888.0, 998.5, 778.9, 10.2,  117.6, 228.9, 668.4, 449.2, 0.2};
    expectDigits(fitColumns(x, y).value(),
                 {{-0.262323073774029, 1.00211681802045},
                  {0.232818234301152, 0.429796848199937E-03},
                  0.884796396144373,
                  26.6173985294224,
                  0.999993745883712},
                 9.0);
}

TEST(LeastSquares, PontiusOfNist)
{
    // A load cell: the square of the load beside the load.
    const Column y = {0.11019, 0.21956, 0.32949, 0.43899, 0.54803, 0.65694, 0.76562, 0.87487,
                      0.98292, 1.09146, 1.20001, 1.30822, 1.41599, 1.52399, 1.63194, 1.73947,
                      1.84646, 1.95392, 2.06128, 2.16844, 0.11052, 0.22018, 0.32939, 0.43886,
                      0.54798, 0.65739, 0.76596, 0.87474, 0.98300, 1.09150, 1.20004, 1.30818,
                      1.41613, 1.52408, 1.63159, 1.73965, 1.84696, 1.95445, 2.06177, 2.16829};
    std::vector<Column> x(2);
    for (std::size_t i = 0; i < y.size(); ++i) {
        const double load = 150000.0 * static_cast<double>(i % 20 + 1);
        x[0].push_back(load);
        x[1].push_back(load * load);
    }
    expectDigits(fitColumns(x, y).value(),
                 {{0.673565789473684E-03, 0.732059160401003E-06, -0.316081871345029E-14},
                  {0.107938612033077E-03, 0.157817399981659E-09, 0.486652849992036E-16},
                  0.205177424076185E-03,
                  0.155761768796992E-05,
                  0.999999900178537},
                 9.0);
}

TEST(LeastSquares, LongleyOfNist)
{
    const Column y = {60323.,
                      61122.,
                      60171.,
                      61187.,
                      63221.,
                      63639.,
                      64989.,
                      63761.,
                      66019.,
                      67857.,
                      68169.,
                      66513.,
                      68655.,
                      69564.,
                      69331.,
                      70551.};
    std::vector<Column> x = {{83.0,
                              88.5,
                              88.2,
                              89.5,
                              96.2,
                              98.1,
                              99.0,
                              100.0,
                              101.2,
                              104.6,
                              108.4,
                              110.8,
                              112.6,
                              114.2,
                              115.7,
                              116.9},
                             {234289.,
                              259426.,
                              258054.,
                              284599.,
                              328975.,
                              346999.,
                              365385.,
                              363112.,
                              397469.,
                              419180.,
                              442769.,
                              444546.,
                              482704.,
                              502601.,
                              518173.,
                              554894.},
                             {2356.,
                              2325.,
                              3682.,
                              3351.,
                              2099.,
                              1932.,
                              1870.,
                              3578.,
                              2904.,
                              2822.,
                              2936.,
                              4681.,
                              3813.,
                              3931.,
                              4806.,
                              4007.},
                             {1590.,
                              1456.,
                              1616.,
                              1650.,
                              3099.,
                              3594.,
                              3547.,
                              3350.,
                              3048.,
                              2857.,
                              2798.,
                              2637.,
                              2552.,
                              2514.,
                              2572.,
                              2827.},
                             {107608.,
                              108632.,
                              109773.,
                              110929.,
                              112075.,
                              113270.,
                              115094.,
                              116219.,
                              117388.,
                              118734.,
                              120445.,
                              121950.,
                              123366.,
                              125368.,
                              127852.,
                              130081.}};
    x.emplace_back(16);
    std::iota(x.back().begin(), x.back().end(), 1947.0);
    expectDigits(fitColumns(x, y).value(),
                 {{-3482258.63459582,
                   15.0618722713733,
                   -0.358191792925910E-01,
                   -2.02022980381683,
                   -1.03322686717359,
                   -0.511041056535807E-01,
                   1829.15146461355},
                  {890420.383607373,
                   84.9149257747669,
                   0.334910077722432E-01,
                   0.488399681651699,
                   0.214274163161675,
                   0.226073200069370,
                   455.478499142212},
                  304.854073561965,
                  836424.055505915,
                  0.995479004577296},
                 9.0);
}

TEST(LeastSquares, OneColumnIsTheStraightLine)
{
    // R's datasets::women, weight by height; lm().
    const Column height = {58, 59, 60, 61, 62, 63, 64, 65, 66, 67, 68, 69, 70, 71, 72};
    const Column weight = {
        115, 117, 120, 123, 126, 129, 132, 135, 139, 142, 146, 150, 154, 159, 164};
    const LinearFit fit = fitColumns(std::vector<Column>{height}, weight).value();
    EXPECT_NEAR(fit.coefficients[0], -87.516666667, 1e-8);
    EXPECT_NEAR(fit.coefficients[1], 3.45, 1e-12);
    EXPECT_NEAR(fit.errors[0], 5.936944049, 1e-8);
    EXPECT_NEAR(fit.errors[1], 0.091136495, 1e-8);
    EXPECT_NEAR(fit.residualSpread, 1.525005254, 1e-8);
    const LineFit line = fitLine(height, weight).value();
    const Estimate slope = coefficientOf(fit, 1);
    EXPECT_NEAR(slope.low, slopeOf(line).low, 1e-12);
    EXPECT_NEAR(slope.high, slopeOf(line).high, 1e-12);
    EXPECT_EQ(slope.count, 15);
}

TEST(LeastSquares, RefusesColumnsThatDependOnEachOther)
{
    const Column one = {1, 2, 3, 4, 6};
    const Column twice = {2, 4, 6, 8, 12};
    const Column flat = {5, 5, 5, 5, 5};
    const Column y = {1, 3, 2, 4, 5};
    EXPECT_TRUE(fitColumns(std::vector<Column>{one}, y));
    EXPECT_FALSE(fitColumns(std::vector<Column>{one, twice}, y));
    EXPECT_FALSE(fitColumns(std::vector<Column>{flat}, y));
    EXPECT_FALSE(fitColumns({}, y));
    EXPECT_FALSE(fitColumns(std::vector<Column>{{1, 2, 3}}, y));
    EXPECT_FALSE(fitColumns(std::vector<Column>{{1, 2, 3, 4, std::nan("")}}, y));
}

// MASS::phones (Rousseeuw and Leroy 1987): calls in Belgium by year, six of them counted in
// another unit.
constexpr std::array kCalls = {4.4,  4.7,  4.7,  5.9,  6.6,  7.3,  8.1,  8.8,
                               10.6, 12.0, 13.5, 14.9, 16.1, 21.2, 119., 124.,
                               142., 159., 182., 212., 43.,  24.,  27.,  29.};

std::vector<double> years()
{
    std::vector<double> x(kCalls.size());
    std::iota(x.begin(), x.end(), 50.0);
    return x;
}

TEST(RobustLineTest, BisquareStandsTheBadYearsOfPhones)
{
    // MASS::rlm(calls ~ year, psi = psi.bisquare) of R: -52.302511, 1.098046, error 0.044491,
    // s 1.655456; it stops when residuals move by 1e-4 of their size.
    const RobustLine line = fitRobustLine(years(), kCalls, RobustLoss::Bisquare).value();
    EXPECT_NEAR(line.slope, 1.098046, 2e-4);
    EXPECT_NEAR(line.intercept, -52.302511, 1e-2);
    EXPECT_NEAR(line.slopeError, 0.044491, 1e-3);
    EXPECT_NEAR(line.spread, 1.655456, 2e-3);
    const Estimate slope = slopeOf(line);
    EXPECT_LT(slope.low, 1.098);
    EXPECT_GT(slope.high, 1.098);
    EXPECT_EQ(slope.count, 24);
    // What least squares makes of them (lm): 5.041478, error 1.657937.
    const LineFit plain = fitLine(years(), kCalls).value();
    EXPECT_NEAR(plain.slope, 5.041478, 1e-6);
    EXPECT_NEAR(plain.intercept, -260.059246, 1e-6);
    EXPECT_NEAR(plain.slopeError, 1.657937, 1e-6);
}

TEST(RobustLineTest, HuberIsPulledByThem)
{
    // MASS::rlm(calls ~ year) of R after 50 rounds, not yet settled: 2.0396.
    const RobustLine line = fitRobustLine(years(), kCalls, RobustLoss::Huber).value();
    EXPECT_NEAR(line.slope, 2.0396, 1e-4);
}

TEST(RobustLineTest, GoodPointsGiveAboutLeastSquares)
{
    // No source: a line with small alternating residuals, none beyond either loss's bend.
    std::vector<double> x;
    std::vector<double> y;
    for (int i = 0; i < 12; ++i) {
        x.push_back(i);
        y.push_back(3.0 + 0.5 * i + (i % 4 < 2 ? 0.1 : -0.1));
    }
    const LineFit plain = fitLine(x, y).value();
    const RobustLine huber = fitRobustLine(x, y, RobustLoss::Huber).value();
    EXPECT_NEAR(huber.slope, plain.slope, 1e-6);
    EXPECT_NEAR(huber.slopeError, plain.slopeError, 1e-6);
    EXPECT_NEAR(huber.interceptError, plain.interceptError, 1e-6);
    EXPECT_NEAR(fitRobustLine(x, y, RobustLoss::Bisquare).value().slope, plain.slope, 1e-3);
}

TEST(RobustLineTest, PointsOnALineGiveItExactly)
{
    const std::array kX = {0.0, 1.0, 2.0, 3.0, 4.0};
    const std::array kY = {1.0, 3.0, 5.0, 7.0, 90.0};
    const RobustLine line = fitRobustLine(kX, kY, RobustLoss::Bisquare).value();
    EXPECT_NEAR(line.slope, 2.0, 1e-12);
    EXPECT_NEAR(line.intercept, 1.0, 1e-12);
    EXPECT_EQ(line.slopeError, 0.0);
    EXPECT_FALSE(fitRobustLine(kX, std::array{1.0, 2.0}, RobustLoss::Huber));
    EXPECT_FALSE(
        fitRobustLine(std::array{1.0, 1.0, 1.0}, std::array{1.0, 2.0, 3.0}, RobustLoss::Huber));
}

} // namespace
} // namespace levelbar::least_squares_test
