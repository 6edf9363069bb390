// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/base/fault.h"
#include "core/base/id.h"

#include <optional>
#include <string>
#include <string_view>

namespace levelbar {

// The numbers of these enumerations are stored; do not change them.
enum class Pattern {
    HorizontalPress = 1,
    VerticalPress = 2,
    HorizontalPull = 3,
    VerticalPull = 4,
    Squat = 5,
    Hinge = 6,
    SingleLeg = 7,
    Trunk = 8,
    Carry = 9,
    Other = 10, // a gym's own exercise whose pattern was not told
};
enum class Implement {
    Barbell = 1,
    Dumbbell = 2,
    Kettlebell = 3,
    Machine = 4,
    Cable = 5,
    BodyWeight = 6,
    Band = 7,
    Other = 8,
};
// TwoSided: both arms or legs at once. SingleSided: each side on its own. Either: the gym's own
// exercise, seen both ways.
enum class Sidedness { TwoSided = 1, SingleSided = 2, Either = 3 };
enum class AmountKind { Reps = 1, Seconds = 2, Metres = 3 };
// External: the typed load is what is lifted. Added: the body is the base, the typed load comes
// on top. None: no load is typed.
enum class LoadKind { External = 1, Added = 2, None = 3 };

// What can be logged. The key is stable for ever; the name is what people see and may change.
struct Exercise {
    ExerciseId id;
    std::string key;  // "barbell-bench-press"
    std::string name; // "Barbell bench press"
    Pattern pattern = Pattern::Other;
    Implement implement = Implement::Other;
    Sidedness sidedness = Sidedness::TwoSided;
    AmountKind amount = AmountKind::Reps;
    LoadKind load = LoadKind::External;
    std::string baseExerciseKey;              // the lift it is compared with, or empty
    std::optional<double> ratioToBase;        // its 1RM over the base's
    std::optional<double> ratioSpreadPercent; // standard deviation of ln ratio, times 100
    std::string source;                       // where the ratio comes from
    bool isShipped = true;                    // else the gym's own
    bool isHidden = false;

    friend bool operator==(const Exercise&, const Exercise&) = default;
};

[[nodiscard]] std::string_view patternWord(Pattern pattern);
[[nodiscard]] std::string_view implementWord(Implement implement);
[[nodiscard]] std::string_view sidednessWord(Sidedness sidedness);
[[nodiscard]] std::string_view amountWord(AmountKind amount);
[[nodiscard]] std::string_view loadKindWord(LoadKind load);
[[nodiscard]] Result<Pattern> parsePattern(std::string_view text);
[[nodiscard]] Result<Implement> parseImplement(std::string_view text);
[[nodiscard]] Result<Sidedness> parseSidedness(std::string_view text);
[[nodiscard]] Result<AmountKind> parseAmountKind(std::string_view text);
[[nodiscard]] Result<LoadKind> parseLoadKind(std::string_view text);

} // namespace levelbar
