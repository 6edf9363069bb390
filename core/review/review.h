// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/review/attention.h"
#include "core/review/history.h"
#include "core/review/test_trends.h"
#include "core/sides/measure_steadiness.h"
#include "core/sides/side_difference.h"
#include "core/sides/side_records.h"
#include "core/strength/strength.h"
#include "core/trend/trend.h"

#include <map>
#include <memory>
#include <optional>
#include <vector>

namespace levelbar {

// One exercise and side of a person.
struct StrengthReview {
    ExerciseId exercise;
    Side side = Side::Both;
    StrengthEstimate strength;
    Trend trend;
};

// Both sides of a day are too far apart to be believed: was it typed wrong?
struct SlipQuestion {
    Measure measure;
    SideSlip slip;
};

struct MemberReview {
    Member member;
    std::optional<Day> lastSeen;          // last day with a set or a trial, up to asOf
    int daysSeen = 0;                     // distinct days with a set, up to asOf
    std::vector<StrengthReview> strength; // by exercise, then side
    std::vector<TestReview> tests;        // by test, then side
    std::vector<SideReview> sides;        // exercises before tests, by id
    std::vector<SlipQuestion> slips;      // exercises before tests, by id
    std::vector<Attention> attention;     // safety first, then by certainty
};

struct Review {
    Day asOf;
    std::vector<MemberReview> members; // in the order they were added
    int look = 0;                      // entries listed "look" or "act"
    int act = 0;                       // entries listed "act"
    double expectedFalseLook = 0.0;    // of `look`, how many are expected to be chance
    double expectedFalseAct = 0.0;
    std::vector<MeasureSteadiness> measures; // exercises before tests, by id
    std::vector<SideModel> sideModels;       // a measure with pairs each
    TestNoise testNoise;                     // what a result is worth, learnt from everyone
};

// What a review takes beside the histories. storage::SideStore::reviewSettings() reads it.
struct ReviewSettings {
    double sideThresholdPercent = kUsualThreshold; // 1 to 50: what counts as a difference to act on
    std::map<MeasureKey, double> sideThresholds;   // of measures with one of their own
    std::map<MemberId, SideRecords> sideRecords;   // of people with known reasons, operations, ...
    std::map<ExerciseId, std::vector<std::string>> areas; // what it stresses: words of bodyAreas()
};

// Builds a review of the whole roster from histories handed in one at a time, so that only one
// person's sets are in memory. Only data up to and including asOf count. Cost: linear in sets.
class Reviewer {
public:
    // The library must outlive the reviewer.
    Reviewer(const Library& library, Day asOf, ReviewSettings settings = {});
    Reviewer(Reviewer&&) noexcept;
    Reviewer& operator=(Reviewer&&) noexcept;
    ~Reviewer();

    void add(const MemberHistory& history);

    // Noise, priors and lists are taken over everyone added. Call once.
    [[nodiscard]] Review finish();

private:
    struct Working;
    std::unique_ptr<Working> m_working;
};

// The exercise and side that stands for a person where there is room for one: the one with the
// most sizing sets among those that are not too old. Null when there is none.
[[nodiscard]] const StrengthReview* mainStrength(const MemberReview& member);

// The side difference that stands for a person: the highest tier, then the surest. Null when
// there is none with two days.
[[nodiscard]] const SideReview* mainSide(const MemberReview& member);

} // namespace levelbar
