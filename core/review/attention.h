// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/base/day.h"
#include "core/sides/side_difference.h"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace levelbar {

// What can call for the instructor's attention. The order is the order of the lists: safety
// first.
enum class AttentionKind {
    Pain,
    Imbalance,
    Falling,
    NoGain,
    Absence,
    LoadJump,
    Retest,
    Clearance,
    TargetMissed,
};

// One reason to look at a person: a code and the words that fill its template.
struct Attention {
    AttentionKind kind = AttentionKind::Pain;
    SideTier tier = SideTier::None;     // of an imbalance
    std::optional<Side> side;           // the weaker one, of an imbalance
    std::vector<std::string> arguments; // %1, %2, ... of the template
    double certainty = 1.0;             // probability that it is so; 1 for a plain fact

    friend bool operator==(const Attention&, const Attention&) = default;
};

[[nodiscard]] std::string_view attentionWord(AttentionKind kind); // "pain", "no_gain", ...

// English template with %1, %2, ..., and the finished sentence with its full stop.
[[nodiscard]] std::string_view attentionTemplate(const Attention& attention);
[[nodiscard]] std::string sentence(const Attention& attention);

} // namespace levelbar
