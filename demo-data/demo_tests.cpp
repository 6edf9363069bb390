// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "demo-data/demo_loads.h"
#include "demo-data/demo_sets.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdio>

namespace levelbar::demo {

namespace {

void testRow(std::string& out,
             int day,
             const Person& person,
             const char* test,
             const char* side,
             int trial,
             double value,
             const char* unit)
{
    std::array<char, 128> text{};
    std::snprintf(text.data(),
                  text.size(),
                  "%s,%s,%s,%s,%d,%g,%s,yes,\n",
                  dateText(day).c_str(),
                  person.code.c_str(),
                  test,
                  side,
                  trial,
                  value,
                  unit);
    out += text.data();
}

} // namespace

std::string testsCsv(const std::vector<Person>& people, tests::Random& random)
{
    std::string out = "date,member_id,test,side,trial,value,unit,valid,note\n";
    const int days = static_cast<int>((kLastDay - kFirstDay).count());
    for (const Person& person : people) {
        const int first = person.joined + random.below(4);
        for (int day = first; day <= std::min(days, person.left); day += 77 + random.below(15)) {
            if (isAway(person, day)) {
                continue;
            }
            const double grip =
                (person.isFemale ? 30.0 : 47.0) *
                std::pow(person.benchKilograms / (person.isFemale ? 38.0 : 75.0), 0.3) *
                std::exp(0.2 * strengthChange(person, day));
            for (const bool isLeft : {true, false}) {
                const double own = grip * std::exp((isLeft ? -0.5 : 0.5) * person.gripTilt +
                                                   random.normal(0, 0.02));
                for (int trial = 1; trial <= 3; ++trial) {
                    const double value = own * std::exp(random.normal(-0.02, 0.025));
                    testRow(out,
                            day,
                            person,
                            "Grip strength",
                            isLeft ? "left" : "right",
                            trial,
                            std::round(value * 10.0) / 10.0,
                            "kg");
                }
            }
            testRow(out,
                    day,
                    person,
                    "Body mass",
                    "both",
                    1,
                    std::round((person.massKilograms + random.normal(0, 0.8)) * 2.0) / 2.0,
                    "kg");
            const double bench = person.benchKilograms * std::exp(strengthChange(person, day));
            if (person.level != Level::Novice && random.chance(0.4)) {
                testRow(out,
                        day,
                        person,
                        "One-rep max: Barbell bench press",
                        "both",
                        1,
                        std::floor(bench * std::exp(random.normal(-0.01, 0.02)) / 2.5) * 2.5,
                        "kg");
            }
            const double pushUps =
                repsAt(person.massKilograms * 0.64 / (bench * 1.05), person.repFactor);
            testRow(out,
                    day,
                    person,
                    "Push-ups to failure",
                    "both",
                    1,
                    std::clamp(std::round(pushUps + random.normal(0, 1.2)), 0.0, 60.0),
                    "reps");
        }
    }
    return out;
}

} // namespace levelbar::demo
