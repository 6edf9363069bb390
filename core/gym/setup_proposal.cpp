// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/gym/setup_proposal.h"

#include "core/base/square.h"
#include "core/gym/stations.h"

#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <map>

namespace levelbar {

namespace {

constexpr double kLevelSpread = 40.0; // mm, between gyms
constexpr double kSlopeSpread = 0.10; // mm a mm of stature
constexpr double kStartCount = 6.0;   // people that the published spread is worth
constexpr double kMostAboveSafety = 15.0;
constexpr double kNineInTen = 1.645;
constexpr double kStatureCentre = 1700.0;
constexpr int kUsualWeight = 3;

const StationHeight* partOf(const StationHeights& heights, SetupPart part)
{
    if (part == SetupPart::Hook) {
        return &heights.hook;
    }
    return heights.safety ? &*heights.safety : nullptr;
}

// One card: how far from the published height, on which stature, how coarsely known.
struct Difference {
    double millimetres = 0.0;
    double stature = 0.0;   // mm over kStatureCentre
    double roughness = 0.0; // variance, mm²: the holes' pitch and a stature that nobody measured
};

// Level and slope of the differences: normal, from a start at 0.
struct GymLine {
    double level = 0.0;
    double slope = 0.0;
    double levelVariance = square(kLevelSpread);
    double slopeVariance = square(kSlopeSpread);
    double together = 0.0; // covariance

    [[nodiscard]] double at(double stature) const { return level + slope * stature; }

    [[nodiscard]] double varianceAt(double stature) const
    {
        return levelVariance + 2.0 * stature * together + square(stature) * slopeVariance;
    }

    void learn(const Difference& seen, double noise)
    {
        const double towardLevel = levelVariance + seen.stature * together;
        const double towardSlope = together + seen.stature * slopeVariance;
        const double total = varianceAt(seen.stature) + noise;
        const double surprise = seen.millimetres - at(seen.stature);
        level += towardLevel / total * surprise;
        slope += towardSlope / total * surprise;
        levelVariance -= square(towardLevel) / total;
        slopeVariance -= square(towardSlope) / total;
        together -= towardLevel * towardSlope / total;
    }
};

double statureOf(const BodySize& body)
{
    return body.stature ? body.stature->tenthMillimetres / 10.0 : meanStature(body.sex).mean;
}

// What a stature that nobody measured adds, by how the height goes with it.
double unknownStature(const BodySize& body, double heightOverStature)
{
    return body.stature ? 0.0 : square(meanStature(body.sex).spread * heightOverStature);
}

std::vector<Difference>
differencesOf(const SetupQuestion& question, SetupPart part, std::span<const SetupExample> others)
{
    std::vector<Difference> differences;
    for (const SetupExample& other : others) {
        const auto heights = stationHeights(question.exercise, question.benchAngle, other.body);
        const StationHeight* published = heights ? partOf(*heights, part) : nullptr;
        if (published == nullptr) {
            continue;
        }
        const double stature = statureOf(other.body);
        const double pitch = other.pitch.tenthMillimetres / 10.0;
        differences.push_back(
            {other.height.tenthMillimetres / 10.0 - published->millimetres,
             stature - kStatureCentre,
             square(pitch) / 12.0 + unknownStature(other.body, published->millimetres / stature)});
    }
    return differences;
}

GymLine lineThrough(const std::vector<Difference>& differences, double personVariance)
{
    GymLine line;
    for (const Difference& difference : differences) {
        line.learn(difference, personVariance + difference.roughness);
    }
    return line;
}

// People's own scatter about the line, from a start at the published spread.
double personVarianceOf(const std::vector<Difference>& differences, double published)
{
    const GymLine line = lineThrough(differences, published);
    double sum = kStartCount * published;
    for (const Difference& difference : differences) {
        const double off = difference.millimetres - line.at(difference.stature);
        sum += std::max(0.0, square(off) - difference.roughness);
    }
    return sum / (kStartCount + static_cast<double>(differences.size()));
}

int holeFor(const RackHoles& rack, SetupPart part, double millimetres)
{
    const int nearest = nearestHole(rack, Length::ofMetres(millimetres / 1000.0));
    const double above = rack.height(nearest).tenthMillimetres / 10.0 - millimetres;
    const bool isTooHigh = part == SetupPart::Safety && above > kMostAboveSafety;
    return isTooHigh ? std::max(1, nearest - 1) : nearest;
}

} // namespace

std::optional<HoleProposal>
proposeHole(const SetupQuestion& question, SetupPart part, std::span<const SetupExample> others)
{
    const auto heights = stationHeights(question.exercise, question.benchAngle, question.body);
    const StationHeight* published = heights ? partOf(*heights, part) : nullptr;
    if (published == nullptr || question.rack.count < 1) {
        return std::nullopt;
    }
    const std::vector<Difference> differences = differencesOf(question, part, others);
    const double person = personVarianceOf(differences, square(published->spread));
    const GymLine line = lineThrough(differences, person);
    const double stature = statureOf(question.body);
    const double from = stature - kStatureCentre;
    const double height = published->millimetres + line.at(from);
    const double spread =
        std::sqrt(person + line.varianceAt(from) +
                  unknownStature(question.body, published->millimetres / stature));
    HoleProposal proposal;
    proposal.hole = holeFor(question.rack, part, height);
    proposal.height = {height,
                       height - kNineInTen * spread,
                       height + kNineInTen * spread,
                       kLevel,
                       static_cast<int>(differences.size())};
    proposal.lowest = std::min(proposal.hole, holeFor(question.rack, part, proposal.height.low));
    proposal.highest = std::max(proposal.hole, holeFor(question.rack, part, proposal.height.high));
    return proposal;
}

std::optional<int> proposeBenchAngle(std::optional<int> usual,
                                     std::span<const int> others,
                                     std::span<const int> angles)
{
    if (!usual) {
        return std::nullopt;
    }
    std::map<int, int> votes;
    for (const int angle : others) {
        ++votes[angle];
    }
    votes[*usual] += kUsualWeight;
    int wanted = *usual;
    for (const auto& [angle, count] : votes) {
        wanted = count > votes[wanted] ? angle : wanted;
    }
    if (angles.empty()) {
        return wanted;
    }
    return *std::min_element(angles.begin(), angles.end(), [wanted](int a, int b) {
        const int offA = std::abs(a - wanted);
        const int offB = std::abs(b - wanted);
        return offA != offB ? offA < offB : std::abs(a) < std::abs(b);
    });
}

} // namespace levelbar
