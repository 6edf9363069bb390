// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/base/fault.h"

#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace levelbar {

// How an exercise is taught, beside what is logged of it. A gym may change every part.
struct ExerciseDetail {
    std::vector<std::string> cues;     // a checklist, in the order of doing
    std::vector<std::string> cautions; // what to watch, and who should not
    std::vector<std::string> areas;    // body areas it stresses: words of bodyAreas()
    std::optional<int> benchAngle;     // degrees, -45 (decline) to 90; empty: none that matters

    friend bool operator==(const ExerciseDetail&, const ExerciseDetail&) = default;
};

inline constexpr std::size_t kMostParts = 12;
inline constexpr std::size_t kLongestPart = 120; // characters

// The areas in which stress, pain and limits are written, from the head down.
[[nodiscard]] std::span<const std::string_view> bodyAreas();

// A text of parts between '|', blanks at their ends dropped, empty parts left out.
[[nodiscard]] std::vector<std::string> partsOf(std::string_view text);
[[nodiscard]] std::string joinedParts(const std::vector<std::string>& parts);

// The detail with its parts trimmed; a '|' inside a part makes two of it. NotOneOf: an area that
// is none of bodyAreas(). RepeatedPiece: a part stands twice. OutOfRange: a bench angle outside
// -45 to 90, or more than 12 parts. TooLong, ControlCharacter, NotUtf8: a part's text.
[[nodiscard]] Result<ExerciseDetail> checkDetail(ExerciseDetail detail);

} // namespace levelbar
