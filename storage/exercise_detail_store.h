// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/exercise/exercise.h"
#include "core/exercise/exercise_detail.h"
#include "storage/action.h"

#include <map>

namespace levelbar::storage {

// How exercises are taught: the shipped details with the gym's changes laid over them, part by
// part, and those of its own exercises.
class ExerciseDetailStore {
public:
    explicit ExerciseDetailStore(const Logbook& logbook)
        : m_logbook(logbook)
    {
    }

    // Every exercise has an entry, empty where nothing is known.
    [[nodiscard]] std::map<ExerciseId, ExerciseDetail> all() const;

    // Empty also for an unknown exercise.
    [[nodiscard]] ExerciseDetail find(ExerciseId exercise) const;

    // Writes a detail that checkDetail has passed. Of a shipped exercise only what differs from
    // the shipped detail is kept, so that library updates still reach the rest; writing the
    // shipped detail takes the gym's changes back.
    static void set(WriteScope& scope, const Exercise& exercise, const ExerciseDetail& detail);

private:
    const Logbook& m_logbook;
};

} // namespace levelbar::storage
