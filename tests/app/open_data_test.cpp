// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later

#include "tests/support/logbook_fixture.h"
#include "tests/support/run_program.h"

#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include <chrono>
#include <cmath>
#include <cstdio>
#include <fstream>
#include <map>
#include <numeric>
#include <sstream>

// The open data of real people as a first run: imported and reviewed by the program, and what it
// shows of the leg data worked out a second time here, from the published formulas.
namespace levelbar {
namespace {

using Json = nlohmann::json;
using tests::quoted;
using tests::Ran;
using tests::TemporaryFolder;

class OpenDataTest : public testing::Test {
protected:
    Json review(const std::string& study, const std::string& file, const std::string& on)
    {
        const std::string data = LEVELBAR_TEST_DATA;
        const std::string cli = quoted(std::string(LEVELBAR_BINARY_DIR) + "/levelbar-cli");
        const std::string into = "cd " + quoted(m_folder.path().string()) + " && ";
        for (const char* what : {"members", "tests"}) {
            const Ran made = tests::run(into + "awk -v study=" + study + " -f " +
                                        quoted(data + "/to_" + what + ".awk") + " " +
                                        quoted(data + "/" + file) + " > " + what + ".csv");
            EXPECT_EQ(made.status, 0) << made.error;
        }
        const auto start = std::chrono::steady_clock::now();
        const Ran imported =
            tests::run(into + cli + " new g.levelbar && " + cli +
                       " import g.levelbar --members members.csv --tests tests.csv");
        EXPECT_EQ(imported.status, 0) << imported.error;
        const auto middle = std::chrono::steady_clock::now();
        const Ran ran = tests::run(into + cli + " review g.levelbar --json --on " + on);
        EXPECT_EQ(ran.status, 0) << ran.error;
        const std::chrono::duration<double> importing = middle - start;
        const std::chrono::duration<double> reviewing = std::chrono::steady_clock::now() - middle;
        std::printf("%s: import %.2f s, review %.2f s\n",
                    study.c_str(),
                    importing.count(),
                    reviewing.count());
        return Json::parse(ran.out);
    }

    TemporaryFolder m_folder;
};

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

// Two normals: what a person's difference is believed to be.
struct Mixture {
    double mean[2];
    double spread[2];
    double share[2];

    double below(double x) const
    {
        return share[0] * normalBelow((x - mean[0]) / spread[0]) +
               share[1] * normalBelow((x - mean[1]) / spread[1]);
    }

    double centre() const { return share[0] * mean[0] + share[1] * mean[1]; }

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

// Every person's difference in one exercise: noise pooled over people and held near 6 ln-% as if
// from 20 more degrees of freedom; weights 0.5 per 60 days; prior of a narrow (4) and a wide (12)
// normal, one in ten wide, learnt by expectation-maximisation as if ten such people more were
// there.
std::map<std::string, Mixture>
legMixtures(const std::map<std::string, std::vector<LegPair>>& people)
{
    double squares = 20.0 * 36.0;
    double freedom = 20.0;
    for (const auto& [person, pairs] : people) {
        double mean = 0.0;
        for (const LegPair& pair : pairs) {
            mean += pair.d / static_cast<double>(pairs.size());
        }
        for (const LegPair& pair : pairs) {
            squares += (pair.d - mean) * (pair.d - mean);
        }
        freedom += static_cast<double>(pairs.size()) - 1.0;
    }
    const double noise = std::max(9.0, squares / freedom);
    std::map<std::string, std::pair<double, double>> looks; // mean, variance
    for (const auto& [person, pairs] : people) {
        double sum = 0.0;
        double weights = 0.0;
        double weightSquares = 0.0;
        for (const LegPair& pair : pairs) {
            const double weight = std::exp2(-(kLegToday - pair.day) / 60.0);
            sum += weight * pair.d;
            weights += weight;
            weightSquares += weight * weight;
        }
        looks[person] = {sum / weights, noise * weightSquares / (weights * weights)};
    }
    double variance[2] = {16.0, 144.0};
    double wide = 0.1;
    for (int round = 0; round < 60; ++round) {
        double sums[2] = {9.0 * 16.0, 1.0 * 144.0};
        double counts[2] = {9.0, 1.0};
        for (const auto& [person, look] : looks) {
            const double w1 = wide * normalDensity(look.first, look.second + variance[1]);
            const double w0 = (1.0 - wide) * normalDensity(look.first, look.second + variance[0]);
            const double weights[2] = {w0 / (w0 + w1), w1 / (w0 + w1)};
            for (int k = 0; k < 2; ++k) {
                const double keep = variance[k] / (variance[k] + look.second);
                sums[k] +=
                    weights[k] * (keep * keep * look.first * look.first + keep * look.second);
                counts[k] += weights[k];
            }
        }
        variance[0] = std::max(1.0, sums[0] / counts[0]);
        variance[1] = std::max(4.0 * variance[0], sums[1] / counts[1]);
        wide = std::min(0.3, std::max(0.005, counts[1] / (counts[0] + counts[1])));
    }
    std::map<std::string, Mixture> result;
    for (const auto& [person, look] : looks) {
        const double w1 = wide * normalDensity(look.first, look.second + variance[1]);
        const double w0 = (1.0 - wide) * normalDensity(look.first, look.second + variance[0]);
        Mixture mixture{};
        for (int k = 0; k < 2; ++k) {
            const double keep = variance[k] / (variance[k] + look.second);
            mixture.mean[k] = keep * look.first;
            mixture.spread[k] = std::sqrt(keep * look.second);
            mixture.share[k] = (k == 0 ? w0 : w1) / (w0 + w1);
        }
        result[person] = mixture;
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
            EXPECT_NEAR(side["difference_percent"], asPercent(mixture.centre()), 0.0011) << person;
            EXPECT_NEAR(side["low_percent"], asPercent(mixture.quantile(0.05)), 0.0011) << person;
            EXPECT_NEAR(side["high_percent"], asPercent(mixture.quantile(0.95)), 0.0011) << person;
            const double limit = -100.0 * std::log(0.9);
            const double beyond =
                mixture.centre() < 0 ? mixture.below(-limit) : 1.0 - mixture.below(limit);
            EXPECT_NEAR(side["probability_beyond_threshold"], beyond, 0.0001) << person;
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
} // namespace levelbar
