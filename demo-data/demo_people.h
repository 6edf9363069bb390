// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "tests/support/random.h"

#include <array>
#include <chrono>
#include <string>
#include <vector>

namespace levelbar::demo {

// The invented gym's people and what is true of them. Nothing of this is anybody's.

inline constexpr std::chrono::sys_days kFirstDay{std::chrono::year{2026} / 2 / 23}; // a Monday
inline constexpr std::chrono::sys_days kLastDay{std::chrono::year{2026} / 11 / 20}; // a Friday

enum class Level { Novice, Intermediate, Advanced };

// Time away: day numbers from kFirstDay, both included.
struct Away {
    int from = 0;
    int to = 0;
};

struct Person {
    std::string code; // M001 to M048
    std::string name;
    bool isFemale = true;
    int birthYear = 1980;
    int birthMonth = 1;
    int birthDayOfMonth = 1;
    int heightTenths = 1700; // millimetres
    double massKilograms = 70.0;
    bool isLeftHanded = false;
    Level level = Level::Intermediate;
    std::string goal;
    std::string group;
    std::vector<int> classes; // places in kClasses
    std::string note;
    int joined = 0;    // day number
    int left = 100000; // day number after which they come no more
    std::vector<Away> away;
    double attendance = 0.7;    // share of meetings
    double benchKilograms = 50; // true 1RM on the first day
    double weeksTrained = 20;   // before the first day: gains slow with it
    double yearlyGain = 0.2;    // ln, about, for a beginner's first year
    double repFactor = 1.0;
    double armTilt = 0.0; // ln(right / left), single-arm work
    double legTilt = 0.0;
    double gripTilt = 0.05;
    double reserveBias = 0.0; // reps
    bool writesPounds = false;
    int painFrom = 100000; // day number from which an exercise hurts
    std::string painArea;
    std::string painSide;
    bool stopsForPain = false;
};

struct GroupClass {
    const char* name;
    int weekday; // 0 = Monday
    const char* start;
    const char* instructor; // initials
    double countedShare;    // how its sets get known
    double acceptedShare;
    double groupShare; // the rest is typed from a sheet
};

inline constexpr std::array<GroupClass, 5> kClasses = {{
    {"Monday Bars", 0, "17:30", "IK", 0.80, 0.15, 0.05},
    {"Tuesday Noon", 1, "12:15", "IK", 0.60, 0.20, 0.05},
    {"Wednesday Early", 2, "06:45", "TB", 0.85, 0.10, 0.05},
    {"Thursday Dumbbells", 3, "18:00", "TB", 0.70, 0.15, 0.15},
    {"Friday Mix", 4, "16:00", "IK", 0.75, 0.15, 0.05},
}};

[[nodiscard]] std::vector<Person> makePeople(tests::Random& random);

// ln of strength on a day relative to the first, gains and time away taken in.
[[nodiscard]] double strengthChange(const Person& person, int day);
[[nodiscard]] bool isAway(const Person& person, int day);

[[nodiscard]] std::string dateText(int day); // ISO
[[nodiscard]] std::string membersCsv(const std::vector<Person>& people);

} // namespace levelbar::demo
