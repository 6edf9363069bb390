// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/base/day.h"
#include "core/plan/class_plan.h"

#include <optional>
#include <span>
#include <string>
#include <vector>

namespace levelbar {

// An exercise of a class with all that a plan says of it.
struct PlanItem {
    TemplateItem what;
    int block = 1;                  // 1 to 20
    std::optional<Reserve> reserve; // to be left; nothing: kPlanReserve
    std::optional<int> workSeconds; // 1 to 3600; of one set
    std::optional<int> restSeconds; // 0 to 3600; of one person between two sets

    friend bool operator==(const PlanItem&, const PlanItem&) = default;
};

inline constexpr Reserve kPlanReserve{20};

// A template of which nothing more is said: one block.
[[nodiscard]] std::vector<PlanItem> planItems(std::span<const TemplateItem> items);

// A part of the hour.
struct PlanBlock {
    int number = 1;
    int minutes = 20;
    int halves = 1; // 2: the halves of the class take turns at the racks and swap

    friend bool operator==(const PlanBlock&, const PlanBlock&) = default;
};

// The numbers are stored; do not change them.
enum class WeekKind { Usual = 1, Lighter = 2 };

// A week that differs from the template.
struct ClassWeek {
    Day monday;
    WeekKind kind = WeekKind::Usual;
    std::string note;
    std::vector<PlanItem> items; // none: those of the template

    friend bool operator==(const ClassWeek&, const ClassWeek&) = default;
};

[[nodiscard]] Day mondayOf(Day day);

// What a class does in the week of `monday`, which may be any of its days. A lighter week has the
// same exercises with half the sets, rounded up, and two more reps in reserve, at most 5 (fewer
// sets and less effort for a week: Bell 2023, a consensus of experts, from memory; by how much is
// common practice, no source).
[[nodiscard]] std::vector<PlanItem>
itemsIn(Day monday, std::span<const PlanItem> usual, std::span<const ClassWeek> weeks);

enum class ItemNews { Added, Removed, Changed };

// What differs between two weeks for one exercise. `before` or `after` is missing with Added and
// Removed.
struct ItemChange {
    ItemNews news = ItemNews::Changed;
    ExerciseId exercise;
    std::optional<PlanItem> before;
    std::optional<PlanItem> after;

    friend bool operator==(const ItemChange&, const ItemChange&) = default;
};

// In the order of `after`, what was removed last. An exercise that stands twice is taken by its
// first, second, ... place.
[[nodiscard]] std::vector<ItemChange> changesBetween(std::span<const PlanItem> before,
                                                     std::span<const PlanItem> after);

} // namespace levelbar
