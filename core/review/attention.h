// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/base/day.h"
#include "core/sides/side_difference.h"

#include <compare>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace levelbar {

// What can call for the instructor's attention. The order is the order of the lists: safety
// first. The numbers are stored; do not change them.
enum class AttentionKind {
    Pain = 0,
    Imbalance = 1,
    Falling = 2,
    NoGain = 3,
    Absence = 4,
    LoadJump = 5,
    Retest = 6,
    Clearance = 7,
    TargetMissed = 8,
};

// The newest thing a reason rests on, so that it can be told later whether something new came.
// `amount` grows with what was seen on that day: painful sets; the tier of an imbalance; 2 when a
// clearance has ended, 1 before; else 0.
struct EvidenceMark {
    Day day;
    int amount = 0;

    friend auto operator<=>(const EvidenceMark&, const EvidenceMark&) = default;
};

// One reason to look at a person: a code and the words that fill its template.
struct Attention {
    AttentionKind kind = AttentionKind::Pain;
    SideTier tier = SideTier::None;     // of an imbalance
    std::optional<Side> side;           // the weaker one, of an imbalance
    std::vector<std::string> arguments; // %1, %2, ... of the template
    double certainty = 1.0;             // probability that it is so; 1 for a plain fact
    EvidenceMark evidence = {};
    std::optional<ExerciseId> exercise = std::nullopt; // what it is about, when it is one
    int repeats = 0;                                   // sets with pain in four weeks, of pain

    friend bool operator==(const Attention&, const Attention&) = default;
};

[[nodiscard]] std::string_view attentionWord(AttentionKind kind); // "pain", "no_gain", ...

// English template with %1, %2, ..., and the finished sentence with its full stop.
[[nodiscard]] std::string_view attentionTemplate(const Attention& attention);
[[nodiscard]] std::string sentence(const Attention& attention);

} // namespace levelbar
