// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later

#include "tests/support/open_data_fixture.h"

#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include <array>
#include <cmath>
#include <fstream>
#include <map>
#include <numeric>
#include <sstream>
#include <string>
#include <vector>

// The open data of real people as a first run: imported and reviewed by the program, and what it
// shows of the leg data worked out a second time here, from the published formulas.
namespace levelbar::open_data_test {
namespace {

using Json = nlohmann::json;

class OpenDataTest : public tests::OpenDataFixture {};

TEST_F(OpenDataTest, GripOfOneDayListsNobody)
{
    const Json json = review("grip", "grip_trials_2013_2014.csv", "2026-01-05");
    EXPECT_EQ(json["members"].size(), 2747U);
    EXPECT_EQ(json["look"], 0);
    EXPECT_EQ(json["act"], 0);
    int measured = 0;
    int rightStronger = 0;
    for (const Json& member : json["members"]) {
        for (const Json& side : member["sides"]) {
            EXPECT_EQ(side["measure"], "Grip strength");
            EXPECT_EQ(side["days"], 1);
            EXPECT_EQ(side["tier"], "none");
            ++measured;
            rightStronger += side["difference_percent"] > 0 ? 1 : 0;
        }
    }
    EXPECT_GT(measured, 2500);
    // Most people are right-handed, and the dominant hand is the stronger one in most of them
    // (Wang 2019, Laterality, from the same survey).
    EXPECT_GT(rightStronger, measured / 2);
}

TEST_F(OpenDataTest, PressDataHasAStrengthForEveryTest)
{
    const Json json = review("press", "press_one_rm_14wk.csv", "2026-04-20");
    EXPECT_EQ(json["members"].size(), 27U);
    for (const Json& member : json["members"]) {
        EXPECT_GE(member["strength"].size(), 1U);
        for (const Json& strength : member["strength"]) {
            EXPECT_EQ(strength["trend"]["call"], "too_early") << "three tests are no trend yet";
        }
    }
}

// ---- The leg data a second time: plain arithmetic, written from the formulas, not from the code.

struct LegPair {
    int day;
    double d; // 100 ln(right / left)
};

double normalBelow(double x)
{
    return 0.5 * std::erfc(-x / std::sqrt(2.0));
}

double normalDensity(double x, double variance)
{
    return std::exp(-0.5 * x * x / variance) / std::sqrt(2.0 * 3.14159265358979323846 * variance);
}

// Normals: what a person's difference is believed to be.
struct Mixture {
    std::vector<double> mean;
    std::vector<double> spread;
    std::vector<double> share;

    double below(double x) const
    {
        double sum = 0.0;
        for (std::size_t i = 0; i < mean.size(); ++i) {
            sum += share[i] * normalBelow((x - mean[i]) / spread[i]);
        }
        return sum;
    }

    double centre() const
    {
        return std::inner_product(mean.begin(), mean.end(), share.begin(), 0.0);
    }

    double quantile(double p) const
    {
        double low = -500.0;
        double high = 500.0;
        for (int i = 0; i < 200; ++i) {
            const double middle = (low + high) / 2.0;
            (below(middle) < p ? low : high) = middle;
        }
        return (low + high) / 2.0;
    }
};

double asPercent(double d)
{
    const double size = 100.0 * (1.0 - std::exp(-std::abs(d) / 100.0));
    return d < 0 ? -size : size;
}

// Pairs by exercise and person.
std::map<std::string, std::map<std::string, std::vector<LegPair>>>
readPairs(const std::string& path)
{
    std::map<std::string, std::map<std::string, std::map<int, std::map<std::string, double>>>>
        values;
    std::ifstream in(path);
    std::string line;
    std::getline(in, line);
    while (std::getline(in, line)) {
        std::istringstream row(line);
        std::array<std::string, 7> cell;
        for (std::string& text : cell) {
            std::getline(row, text, ',');
        }
        if (!cell[6].empty()) {
            const std::string name =
                cell[3] == "leg press" ? "Single-leg press" : "Single-leg knee extension";
            values[name][cell[0]][7 * std::stoi(cell[2])][cell[4]] = std::stod(cell[6]);
        }
    }
    std::map<std::string, std::map<std::string, std::vector<LegPair>>> pairs;
    for (const auto& [name, people] : values) {
        for (const auto& [person, days] : people) {
            for (const auto& [day, sides] : days) {
                if (sides.size() == 2) {
                    pairs[name][person].push_back(
                        {day, 100.0 * std::log(sides.at("right") / sides.at("left"))});
                }
            }
        }
    }
    return pairs;
}

constexpr int kLegToday = 84;
constexpr double kFirst = 1.6; // variance of a first pair
constexpr int kSteps = 11;     // of the logarithm of a person's relative variance, -2.5 to 2.5

double relative(int step)
{
    return std::exp(-2.5 + 0.5 * step);
}

// A person's weighted mean, its variance over that of one day, and the sum of squares.
struct LegLook {
    double mean = 0.0;
    double variance = 0.0;
    double squares = 0.0;
    double freedom = 0.0;
};

LegLook lookOf(const std::vector<LegPair>& pairs)
{
    double weights = 0.0;
    double sum = 0.0;
    double squares = 0.0;
    double plainWeights = 0.0;
    double plainSum = 0.0;
    for (std::size_t i = 0; i < pairs.size(); ++i) {
        const double variance = i == 0 ? kFirst : 1.0;
        const double weight = std::exp2(-(kLegToday - pairs[i].day) / 60.0) / variance;
        sum += weight * pairs[i].d;
        weights += weight;
        squares += weight * weight * variance;
        plainWeights += 1.0 / variance;
        plainSum += pairs[i].d / variance;
    }
    LegLook look{sum / weights, squares / (weights * weights), 0.0, 0.0};
    for (std::size_t i = 0; i < pairs.size(); ++i) {
        const double off = pairs[i].d - plainSum / plainWeights;
        look.squares += off * off / (i == 0 ? kFirst : 1.0);
    }
    look.freedom = static_cast<double>(pairs.size()) - 1.0;
    return look;
}

using LegLooks = std::map<std::string, LegLook>;

// Scale of people's variances for a tail: a fixed point of expectation-maximisation, held near
// 6 ln-% as if from 20 more degrees of freedom.
double scaleOf(const LegLooks& looks, double tail)
{
    const double usual = 36.0 * (tail - 2.0) / tail;
    double scale = usual;
    for (int round = 0; round < 300; ++round) {
        double top = 20.0 * usual;
        double bottom = 20.0;
        for (const auto& [person, look] : looks) {
            top += look.squares * (tail + look.freedom) / (tail + look.squares / scale);
            bottom += look.freedom;
        }
        scale = top / bottom;
    }
    return scale;
}

// Log likelihood of the tail: sums of squares over the scale follow freedom x F(freedom, tail);
// log-normal prior around 8.
double tailValue(const LegLooks& looks, double tail)
{
    const double scale = scaleOf(looks, tail);
    const double usual = 36.0 * (tail - 2.0) / tail;
    double sum = 10.0 * std::log(usual / scale) - 10.0 * usual / scale;
    for (const auto& [person, look] : looks) {
        sum += std::lgamma((tail + look.freedom) / 2.0) - std::lgamma(tail / 2.0);
        sum -= look.freedom / 2.0 * std::log(tail * scale);
        sum -= (tail + look.freedom) / 2.0 * std::log(1.0 + look.squares / (tail * scale));
    }
    const double off = std::log(tail / 8.0) / 0.7;
    return sum - off * off / 2.0;
}

struct LegNoise {
    double variance = 36.0; // mean over people
    double tail = 8.0;
};

LegNoise noiseOf(const LegLooks& looks)
{
    LegNoise noise;
    double best = -1e300;
    for (double logTail = std::log(3.0); logTail < std::log(200.0); logTail += 0.002) {
        const double tail = std::exp(logTail);
        const double value = tailValue(looks, tail);
        if (value > best) {
            best = value;
            noise = {std::max(9.0, scaleOf(looks, tail) * tail / (tail - 2.0)), tail};
        }
    }
    return noise;
}

// Share of each step for a person: inverse gamma of mean 1, and the person's own squares.
std::array<double, kSteps> stepShares(const LegLook& look, const LegNoise& noise)
{
    std::array<double, kSteps> shares{};
    double sum = 0.0;
    for (int step = 0; step < kSteps; ++step) {
        const double r = relative(step);
        double& share = shares.at(static_cast<std::size_t>(step));
        share =
            std::pow(r, -(noise.tail + look.freedom) / 2.0) *
            std::exp(-(noise.tail - 2.0) / (2.0 * r) - look.squares / (2.0 * noise.variance * r));
        sum += share;
    }
    for (double& share : shares) {
        share /= sum;
    }
    return shares;
}

struct LegPrior {
    double variance[2] = {16.0, 144.0};
    double wide = 0.1;
    double exponent = 0.0;
};

// A person's posterior: a narrow and a wide normal for each step, in that order.
Mixture posteriorFor(const LegLook& look, const LegNoise& noise, const LegPrior& prior)
{
    const auto shares = stepShares(look, noise);
    Mixture mixture;
    double sum = 0.0;
    for (int step = 0; step < kSteps; ++step) {
        for (int k = 0; k < 2; ++k) {
            const double own = prior.variance[k] * std::pow(relative(step), prior.exponent);
            const double error = noise.variance * look.variance * relative(step);
            const double keep = own / (own + error);
            mixture.mean.push_back(keep * look.mean);
            mixture.spread.push_back(std::sqrt(keep * error));
            mixture.share.push_back(shares.at(static_cast<std::size_t>(step)) *
                                    (k == 0 ? 1.0 - prior.wide : prior.wide) *
                                    normalDensity(look.mean, own + error));
            sum += mixture.share.back();
        }
    }
    for (double& share : mixture.share) {
        share /= sum;
    }
    return mixture;
}

// One round of expectation-maximisation, held near the start as if by ten more people.
LegPrior nextPrior(const LegLooks& looks, const LegNoise& noise, const LegPrior& prior)
{
    double sums[2] = {9.0 * 16.0, 1.0 * 144.0};
    double counts[2] = {9.0, 1.0};
    double slope = -16.0 * prior.exponent; // its prior: normal around 0, 0.25
    double bend = 16.0;
    for (const auto& [person, look] : looks) {
        const Mixture mixture = posteriorFor(look, noise, prior);
        for (std::size_t i = 0; i < mixture.share.size(); ++i) {
            const std::size_t k = i % 2;
            const double logStep = -2.5 + 0.5 * static_cast<double>(i / 2);
            const double size =
                mixture.mean[i] * mixture.mean[i] + mixture.spread[i] * mixture.spread[i];
            const double scaled = size * std::exp(-logStep * prior.exponent);
            sums[k] += mixture.share[i] * scaled;
            counts[k] += mixture.share[i];
            slope += mixture.share[i] * logStep * (scaled / prior.variance[k] - 1.0) / 2.0;
            bend += mixture.share[i] * logStep * logStep * scaled / prior.variance[k] / 2.0;
        }
    }
    LegPrior next;
    next.variance[0] = std::max(1.0, sums[0] / counts[0]);
    next.variance[1] = std::max(4.0 * next.variance[0], sums[1] / counts[1]);
    next.wide = std::min(0.3, std::max(0.005, counts[1] / (counts[0] + counts[1])));
    next.exponent = std::min(1.0, std::max(0.0, prior.exponent + slope / bend));
    return next;
}

// Every person's difference in one exercise.
std::map<std::string, Mixture>
legMixtures(const std::map<std::string, std::vector<LegPair>>& people)
{
    LegLooks looks;
    for (const auto& [person, pairs] : people) {
        looks[person] = lookOf(pairs);
    }
    const LegNoise noise = noiseOf(looks);
    LegPrior prior;
    for (int round = 0; round < 3000; ++round) {
        prior = nextPrior(looks, noise, prior);
    }
    std::map<std::string, Mixture> result;
    for (const auto& [person, look] : looks) {
        result[person] = posteriorFor(look, noise, prior);
    }
    return result;
}

TEST_F(OpenDataTest, LegDifferencesAreWhatTheFormulasGive)
{
    const Json json = review("leg", "leg_one_rm_12wk.csv", "2026-03-30");
    const auto pairs = readPairs(std::string(LEVELBAR_TEST_DATA) + "/leg_one_rm_12wk.csv");
    std::map<std::string, std::map<std::string, Mixture>> expected;
    for (const auto& [exercise, people] : pairs) {
        expected[exercise] = legMixtures(people);
    }
    int compared = 0;
    for (const Json& member : json["members"]) {
        for (const Json& side : member["sides"]) {
            const std::string exercise = side["measure"];
            const std::string person = member["member_id"];
            const Mixture& mixture = expected.at(exercise).at(person);
            // The program stops learning a little earlier, and drops steps of a tiny share.
            EXPECT_NEAR(side["difference_percent"], asPercent(mixture.centre()), 0.02) << person;
            EXPECT_NEAR(side["low_percent"], asPercent(mixture.quantile(0.05)), 0.02) << person;
            EXPECT_NEAR(side["high_percent"], asPercent(mixture.quantile(0.95)), 0.02) << person;
            const double limit = -100.0 * std::log(0.9);
            const double beyond =
                mixture.centre() < 0 ? mixture.below(-limit) : 1.0 - mixture.below(limit);
            EXPECT_NEAR(side["probability_beyond_threshold"], beyond, 0.001) << person;
            EXPECT_EQ(side["days"], pairs.at(exercise).at(person).size());
            ++compared;
        }
    }
    EXPECT_EQ(compared, 40);
}

TEST_F(OpenDataTest, LegTrendsAgreeWithAPlainLineThroughTheTests)
{
    const Json json = review("leg", "leg_one_rm_12wk.csv", "2026-03-30");
    std::map<std::string, std::map<std::string, std::vector<std::pair<double, double>>>> points;
    std::ifstream in(std::string(LEVELBAR_TEST_DATA) + "/leg_one_rm_12wk.csv");
    std::string line;
    std::getline(in, line);
    while (std::getline(in, line)) {
        std::istringstream row(line);
        std::array<std::string, 7> cell;
        for (std::string& text : cell) {
            std::getline(row, text, ',');
        }
        if (!cell[6].empty() && std::stoi(cell[2]) >= 5) { // the last eight weeks
            const std::string name =
                cell[3] == "leg press" ? "Single-leg press" : "Single-leg knee extension";
            points[name][cell[0]].emplace_back(std::stod(cell[2]),
                                               100.0 * std::log(std::stod(cell[6])));
        }
    }
    int compared = 0;
    int inside = 0;
    double difference = 0.0;
    for (const Json& member : json["members"]) {
        for (const Json& strength : member["strength"]) {
            const Json& trend = strength["trend"];
            if (trend["percent_per_week"].is_null()) {
                continue;
            }
            const auto& xy = points[strength["exercise"]][member["member_id"]];
            double mx = 0;
            double my = 0;
            for (const auto& [x, y] : xy) {
                mx += x / static_cast<double>(xy.size());
                my += y / static_cast<double>(xy.size());
            }
            double sxx = 0;
            double sxy = 0;
            for (const auto& [x, y] : xy) {
                sxx += (x - mx) * (x - mx);
                sxy += (x - mx) * (y - my);
            }
            const double slope = sxy / sxx;
            inside += trend["low"] <= slope && slope <= trend["high"] ? 1 : 0;
            difference += static_cast<double>(trend["percent_per_week"]) - slope;
            ++compared;
        }
    }
    ASSERT_GT(compared, 60);
    // The model takes days, sides and the earlier weeks in, and expects beginners' leaps to slow
    // down, so it is not the line itself; but the line must lie within its interval about as often
    // as the interval promises, and the two must not differ as a whole.
    EXPECT_GT(inside, compared * 85 / 100);
    EXPECT_LT(std::abs(difference / compared), 0.6);
}

} // namespace
} // namespace levelbar::open_data_test
