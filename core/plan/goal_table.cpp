// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/plan/goal_table.h"

#include <array>

namespace levelbar {

namespace {

// NSCA: Sheppard and Triplett in Essentials of Strength Training and Conditioning, 4th edition,
// 2016, tables 17.9 to 17.12 (cells seen in a study page, rest from memory). ACSM 2009:
// Progression models, Med Sci Sports Exerc 41:687-708 (abstract seen, cells from memory).
// ACSM Guidelines: for Exercise Testing and Prescription, 9th to 11th edition (from memory).
constexpr std::string_view kNsca = "NSCA Essentials 2016";
constexpr std::string_view kAcsm = "ACSM 2009";
constexpr std::string_view kGuidelines = "ACSM Guidelines";

constexpr auto kNovice = Experience::Novice;
constexpr auto kMiddle = Experience::Intermediate;
constexpr auto kAdvanced = Experience::Advanced;

constexpr std::array<GoalRow, 15> kRows = {{
    {Goal::Strength, kNovice, {60, 70}, {8, 12}, {1, 3}, {120, 180}, kAcsm},
    {Goal::Strength, kMiddle, {70, 80}, {8, 12}, {2, 3}, {120, 180}, kAcsm},
    {Goal::Strength, kAdvanced, {85, 100}, {1, 6}, {2, 6}, {120, 300}, kNsca},
    {Goal::Hypertrophy, kNovice, {70, 85}, {8, 12}, {1, 3}, {60, 120}, kAcsm},
    {Goal::Hypertrophy, kMiddle, {70, 85}, {8, 12}, {1, 3}, {60, 120}, kAcsm},
    {Goal::Hypertrophy, kAdvanced, {67, 85}, {6, 12}, {3, 6}, {30, 90}, kNsca},
    {Goal::Endurance, kNovice, {0, 67}, {10, 15}, {1, 3}, {30, 60}, kAcsm},
    {Goal::Endurance, kMiddle, {0, 67}, {10, 15}, {2, 3}, {30, 60}, kAcsm},
    {Goal::Endurance, kAdvanced, {30, 80}, {10, 25}, {2, 3}, {30, 120}, kAcsm},
    {Goal::Power, kNovice, {30, 60}, {3, 6}, {1, 3}, {120, 180}, kAcsm},
    {Goal::Power, kMiddle, {30, 60}, {3, 6}, {1, 3}, {120, 180}, kAcsm},
    {Goal::Power, kAdvanced, {75, 85}, {3, 5}, {3, 5}, {120, 300}, kNsca},
    {Goal::General, kNovice, {60, 70}, {8, 12}, {2, 4}, {120, 180}, kGuidelines},
    {Goal::General, kMiddle, {60, 70}, {8, 12}, {2, 4}, {120, 180}, kGuidelines},
    {Goal::General, kAdvanced, {80, 100}, {1, 8}, {2, 4}, {120, 180}, kGuidelines},
}};

} // namespace

std::span<const GoalRow> goalTable()
{
    return kRows;
}

const GoalRow& goalRow(std::optional<Goal> goal, std::optional<Experience> experience)
{
    const Goal wantedGoal = goal.value_or(Goal::General);
    const Experience wantedLevel = experience.value_or(Experience::Novice);
    for (const GoalRow& row : kRows) {
        if (row.goal == wantedGoal && row.experience == wantedLevel) {
            return row;
        }
    }
    return kRows[12]; // general, novice
}

int proposedReps(const GoalRow& row)
{
    return (row.reps.low + row.reps.high) / 2;
}

} // namespace levelbar
