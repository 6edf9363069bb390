// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/base/day.h"
#include "core/base/id.h"
#include "core/base/mass.h"
#include "core/base/side.h"

#include <optional>
#include <span>
#include <string>
#include <string_view>

namespace levelbar {

// Which norms apply. The numbers of these enumerations are stored; do not change them.
enum class Sex { Female = 1, Male = 2 };
enum class Experience { Novice = 1, Intermediate = 2, Advanced = 3 };
enum class Goal { Strength = 1, Hypertrophy = 2, Endurance = 3, Power = 4, General = 5 };

// A person on the roster ("People" on screen). What is not known is empty, never a stand-in.
struct Member {
    MemberId id;
    std::string code; // the gym's own id ("member_id" outside): see checkMemberCode
    std::string name; // may be empty
    std::optional<Sex> sex;
    std::optional<Day> birthDate;
    std::optional<int>
        statureTenthMillimetres;      // 5000 to 26000: surveys give centimetres with two decimals
    std::optional<Mass> intakeMass;   // body mass at intake; dated ones are trials
    std::optional<Side> dominantSide; // Left or Right
    std::optional<Experience> experience;
    std::optional<Goal> goal;
    std::string group; // employer, department or contract
    std::string note;  // private
    bool isArchived = false;

    friend bool operator==(const Member&, const Member&) = default;
};

// 1 to 64 characters of any script (counted as Unicode code points), no control characters.
// Case counts. Returns the text unchanged.
[[nodiscard]] Result<std::string> checkMemberCode(std::string_view text);

// A name or a word on one line: UTF-8, no control characters, at most `longest` code points.
[[nodiscard]] Result<std::string> checkName(std::string_view text, int longest);

// Free text of people: UTF-8, no control characters but line feed and tab, at most `longest`
// code points. Other line endings become line feeds.
[[nodiscard]] Result<std::string> checkText(std::string_view text, int longest);

[[nodiscard]] std::string_view sexWord(Sex sex);
[[nodiscard]] std::string_view experienceWord(Experience experience);
[[nodiscard]] std::string_view goalWord(Goal goal);
[[nodiscard]] Result<Sex> parseSex(std::string_view text);
[[nodiscard]] Result<Experience> parseExperience(std::string_view text);
[[nodiscard]] Result<Goal> parseGoal(std::string_view text);

inline constexpr int kLongestMemberText = 200; // code points of a name or group
inline constexpr int kLongestNote = 10'000;

// As typed, with a point as decimal mark. Stature: 50 to 260 cm, at most two decimals, in tenths
// of a millimetre. Body mass: 2 to 500 kg, at most three decimals. A dominant side is left or
// right.
[[nodiscard]] Result<int> parseStature(std::string_view centimetres);
[[nodiscard]] Result<Mass> parseBodyMass(std::string_view kilograms);
[[nodiscard]] Result<Side> parseDominantSide(std::string_view text);

// The id that comes next: the largest number that one of them ends with, and one more, with what
// stands before it and as many digits ("M048": "M049"). "1" where none ends with a number.
[[nodiscard]] std::string proposeMemberCode(std::span<const std::string> codes);

} // namespace levelbar
