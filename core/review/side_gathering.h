// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/review/exercise_series.h"
#include "core/review/review.h"

#include <array>
#include <map>
#include <vector>

namespace levelbar {

// Turns the histories of the roster, one at a time, into the measures whose sides are compared.
class SideGathering {
public:
    // Both must outlive it.
    SideGathering(const Library& library, const ReviewSettings& settings, Day asOf);

    // `fits` by place in `series`, null where there is none; `owner` says whose it is. Returns what
    // looks like entry slips of the last 120 days.
    std::vector<SlipQuestion> add(const MemberHistory& history,
                                  const std::vector<ExerciseSeries>& series,
                                  const std::vector<const StrengthFit*>& fits,
                                  std::size_t owner);

    // Exercises before tests, by id. Call once.
    [[nodiscard]] std::vector<MeasuredSides> take();

private:
    // What is known of one person beside the pairs.
    struct Person {
        const MemberHistory& history;
        const SideRecords& records;
        const std::vector<ExerciseSeries>& series;
        std::size_t owner = 0;
        std::vector<SlipQuestion> slips;
    };

    // One person's two sides in one measure, before they become a series.
    struct Found {
        Measure measure;
        std::vector<SidePair> pairs;
        std::vector<SideSlip> slips;
        std::array<std::map<Day, double>, 2> best; // of the left and right side, see dailyBest
        std::string unit;
        bool isLessBetter = false;
        SideSettings settings;
    };

    [[nodiscard]] std::vector<std::string> areasOf(const Measure& measure) const;
    [[nodiscard]] std::vector<PainDay> painsOf(const Person& person, const Measure& measure) const;
    [[nodiscard]] std::optional<Baseline> baselineOf(const Person& person,
                                                     const Found& found) const;
    void addExercise(Person& person, const ExerciseSeries& series, const StrengthFit* fit);
    void addTests(Person& person);
    void keep(Person& person, Found found);

    const Library& m_library;
    const ReviewSettings& m_settings;
    Day m_asOf;
    std::map<ExerciseId, MeasuredSides> m_exercises;
    std::map<TestId, MeasuredSides> m_tests;
};

} // namespace levelbar
