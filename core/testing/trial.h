// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/base/day.h"
#include "core/base/id.h"
#include "core/base/side.h"

#include <optional>
#include <string>
#include <string_view>

namespace levelbar {

// The numbers are stored; do not change them.
enum class Direction { MoreIsBetter = 1, LessIsBetter = 2, None = 3 };

// A test of the library, or "One-rep max: EXERCISE" made from an exercise on first use.
struct TestKind {
    TestId id;
    std::string key;
    std::string name;
    std::string unit; // "kg", "reps", "s", "m", "/min"; what a trial's value is in by default
    Direction direction = Direction::MoreIsBetter;
    bool isSided = false;                // each side on its own
    std::optional<ExerciseId> maximumOf; // the exercise whose one-rep max it is
    std::int64_t lowestThousandths = 0;
    std::int64_t highestThousandths = 1'000'000'000;

    friend bool operator==(const TestKind&, const TestKind&) = default;
};

inline constexpr std::string_view kOneRepMaxPrefix = "One-rep max: ";

// One trial of a test.
struct Trial {
    MemberId member;
    TestId test;
    Day day;
    Side side = Side::Both;
    int number = 1;                    // 1 to 99
    std::int64_t valueThousandths = 0; // in `unit`, as typed
    std::string unit;                  // the test's own, or lb where that is kg
    bool isValid = true;
    std::string note;

    friend bool operator==(const Trial&, const Trial&) = default;

    // The value in the test's own unit: pounds become kilograms.
    [[nodiscard]] double value() const;
};

[[nodiscard]] std::string_view directionWord(Direction direction);
[[nodiscard]] Result<Direction> parseDirection(std::string_view text);

} // namespace levelbar
