// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/review/history.h"
#include "storage/action.h"

#include <optional>
#include <string_view>

namespace levelbar::storage {

// Exercises and tests: the shipped ones with the gym's changes laid over them, and its own.
class LibraryStore {
public:
    explicit LibraryStore(const Logbook& logbook)
        : m_logbook(logbook)
    {
    }

    [[nodiscard]] Library all() const;

    // By name in any language, case folded in any script (simple Unicode case folding).
    [[nodiscard]] std::optional<Exercise> findExercise(std::string_view name) const;
    [[nodiscard]] std::optional<TestKind> findTest(std::string_view name) const;

    // A gym's own exercise; its key is made from a random 128-bit id.
    static ExerciseId addExercise(WriteScope& scope, const Exercise& exercise);

    // Writes what can be changed: of the gym's own everything but the key, of a shipped one the
    // name, which stays when the library is updated.
    static void updateExercise(WriteScope& scope, const Exercise& exercise);

    // Hidden ones are not offered any more; what was logged stays.
    static void setHidden(WriteScope& scope, ExerciseId exercise, bool isHidden);

    // The test "One-rep max: EXERCISE", made on first use.
    static TestId oneRepMaxOf(WriteScope& scope, const Exercise& exercise);

private:
    const Logbook& m_logbook;
};

} // namespace levelbar::storage
