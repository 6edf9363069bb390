// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/exercise/done_set.h"
#include "core/exercise/exercise.h"
#include "core/plan/given_prediction.h"

#include <optional>
#include <span>
#include <vector>

namespace levelbar {

// One exercise of a class and how many sets of it everyone does.
struct TemplateItem {
    ExerciseId exercise;
    int sets = 3;            // 1 to 20
    std::optional<int> reps; // aimed at; nothing: as last time

    friend bool operator==(const TemplateItem&, const TemplateItem&) = default;
};

// A set that a person is to do in a meeting.
struct PlannedSet {
    PlannedSetId id;
    MeetingId meeting;
    MemberId member;
    ExerciseId exercise;
    Side side = Side::Both;
    int number = 1; // within the meeting, per exercise and side
    Mass load;
    std::optional<int> amount; // reps, or tenths of seconds or metres; nothing = not known
    std::optional<Reserve> reserve;
    bool isNew = false; // never done before: no load or reps to go by
    std::optional<GivenPrediction> prediction = std::nullopt;

    friend bool operator==(const PlannedSet&, const PlannedSet&) = default;
};

// What one person is to do: the template's exercises and sets, each side of a single-sided one
// on its own, at what they lifted last (the last day's set of the same number, else its last
// work set). `done`: that person's earlier sets, any order. `exercises`: those of the template.
// Ids of the result are not set; meeting and member are copied in.
[[nodiscard]] std::vector<PlannedSet> planFromLast(MeetingId meeting,
                                                   MemberId member,
                                                   std::span<const TemplateItem> items,
                                                   std::span<const Exercise> exercises,
                                                   std::span<const DoneSet> done);

// A template for a class that has none yet: the exercises that at least a third of the people in
// its recent meetings did, most common first, with their median number of sets. `done`: the
// sets of those meetings.
[[nodiscard]] std::vector<TemplateItem> templateFromHistory(std::span<const DoneSet> done);

} // namespace levelbar
