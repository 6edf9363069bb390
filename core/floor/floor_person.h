// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/base/day.h"
#include "core/base/fault.h"
#include "core/base/id.h"
#include "core/base/side.h"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace levelbar {

// A score said during the hour.
struct SaidPain {
    int score = 0;    // 0 to 10
    std::string area; // a word of bodyAreas()
    Side side = Side::Both;

    friend bool operator==(const SaidPain&, const SaidPain&) = default;
};

// Why somebody left before the end. The words are stored; do not change them.
enum class LeftWhy { NotSaid, HadToGo, Unwell, Pain, Other };

// "", "had_to_go", "unwell", "pain", "other".
[[nodiscard]] std::string_view leftWhyWord(LeftWhy why);
[[nodiscard]] Result<LeftWhy> parseLeftWhy(std::string_view word);
// "had to go", "unwell"; empty when it was not said.
[[nodiscard]] std::string_view leftWhyText(LeftWhy why);

// Someone in the hour.
struct FloorPerson {
    MemberId member;
    int bib = 0;
    std::string name; // empty without consent: then only the bib is said
    int station = 1;
    bool isScreened = true;
    std::optional<int> minutesLate;
    std::optional<int> leftMinute; // of the hour; nothing: still here
    LeftWhy leftWhy = LeftWhy::NotSaid;
    std::optional<Moment> easyAt; // since then it is an easy day: their sets count as "at least"
    std::vector<SaidPain> pains;

    [[nodiscard]] bool isEasyDay() const { return easyAt.has_value(); }

    [[nodiscard]] bool hasLeft() const { return leftMinute.has_value(); }

    friend bool operator==(const FloorPerson&, const FloorPerson&) = default;
};

// What was said of somebody in an hour that was interrupted.
struct RememberedPerson {
    MemberId member;
    std::optional<int> minutesLate;
    std::optional<int> leftMinute; // of the hour
    LeftWhy leftWhy = LeftWhy::NotSaid;
    std::optional<Moment> easyAt; // the loads of the plan are those of the easy day already

    friend bool operator==(const RememberedPerson&, const RememberedPerson&) = default;
};

} // namespace levelbar
