// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "demo-data/demo_people.h"

#include <algorithm>
#include <cmath>
#include <cstdio>

namespace levelbar::demo {

namespace {

struct Given {
    const char* name;
    bool isFemale;
};

constexpr std::array<Given, 48> kGiven = {{
    {"Ilse Brandvold", true},    {"Tomas Eklöv", false},      {"Nadja Rustić", true},
    {"Pavel Hrdlovan", false},   {"Oona Fairmeadow", true},   {"Kwabena Ostrey", false},
    {"Mirela Tandoi", true},     {"Jory Pennick", false},     {"Sunniva Aaldrup", true},
    {"Deshan Wickremal", false}, {"Lotte Verhaagen", true},   {"Amadou Kessaly", false},
    {"Bryony Tallow", true},     {"Enzo Maravelli", false},   {"Hanneke Dorsthuis", true},
    {"Yusuf Adarlan", false},    {"Petra Lindqvarn", true},   {"Caspar Wrenfield", false},
    {"Thuy Anh Lamvo", true},    {"Radek Solnický", false},   {"Maeve Corrigall", true},
    {"Ikaika Nohelani", false},  {"Zofia Brzegowa", true},    {"Gunnar Hástein", false},
    {"Rosalba Quintarel", true}, {"Olumide Farayemi", false}, {"Greta Mühlstein", true},
    {"Tariq Benhallam", false},  {"Anouk Delfosse", true},    {"Vihaan Pradhosh", false},
    {"Signe Thorgaard", true},   {"Mateo Rivascal", false},   {"Eilidh Stronach", true},
    {"Kenji Moridaka", false},   {"Fenna Oosterwal", true},   {"Luka Zadravec", false},
    {"Marisol Penhaven", true},  {"Henrik Sjölund", false},   {"Ayla Demirkol", true},
    {"Osei Antwerin", false},    {"Clodagh Finnerty", true},  {"Bastian Rehfeld", false},
    {"Noor Haddaway", true},     {"Stellan Vikmark", false},  {"Ximena Altavar", true},
    {"Piotr Wolanek", false},    {"Rhian Glasfryn", true},    {"Jonas Adderwick", false},
}};

constexpr std::array<const char*, 5> kGroups = {
    "Quayside", "Cold store", "Customs desk", "Dredging", "Office"};
constexpr std::array<const char*, 5> kGoals = {
    "strength", "hypertrophy", "general", "general", "endurance"};

double clamped(double value, double low, double high)
{
    return std::clamp(value, low, high);
}

void makeBody(tests::Random& random, Person& person)
{
    const double height = person.isFemale ? random.normal(167, 6) : random.normal(180, 7);
    person.heightTenths = static_cast<int>(std::lround(clamped(height, 150, 205) * 10));
    const double index = clamped(random.normal(25, 3), 19, 34);
    person.massKilograms = std::round(index * height * height / 10000.0 * 2.0) / 2.0;
    person.birthYear = 1961 + random.below(43);
    person.birthMonth = 1 + random.below(12);
    person.birthDayOfMonth = 1 + random.below(28);
    person.isLeftHanded = random.chance(0.11);
}

void makeStrength(tests::Random& random, Person& person)
{
    const double draw = random.uniform();
    person.level =
        draw < 0.4 ? Level::Novice : (draw < 0.8 ? Level::Intermediate : Level::Advanced);
    const double base = person.isFemale ? 31 : 58;
    const double byLevel = person.level == Level::Novice         ? 1.0
                           : person.level == Level::Intermediate ? 1.3
                                                                 : 1.65;
    person.benchKilograms = base * byLevel * std::exp(random.normal(0, 0.16));
    person.weeksTrained = person.level == Level::Novice         ? random.uniform(2, 10)
                          : person.level == Level::Intermediate ? random.uniform(30, 80)
                                                                : random.uniform(150, 400);
    person.yearlyGain = clamped(random.normal(0.36, 0.09), 0.1, 0.6);
    person.repFactor = std::exp(random.normal(0, 0.22));
    person.armTilt = random.normal(0.01, 0.022);
    person.legTilt = random.normal(0.0, 0.022);
    person.gripTilt = random.normal(person.isLeftHanded ? 0.0 : 0.035, 0.03);
    person.reserveBias = random.normal(-0.3, 0.4);
    person.goal = kGoals.at(static_cast<std::size_t>(random.below(5)));
    person.attendance = clamped(random.normal(0.72, 0.12), 0.35, 0.95);
}

// What is built in on purpose; README.md beside this file tells it.
void makeStories(std::vector<Person>& people)
{
    const auto at = [&people](int number) -> Person& {
        return people.at(static_cast<std::size_t>(number - 1));
    };
    at(4).armTilt = 0.19;   // left weaker by about 17 %
    at(11).armTilt = -0.16; // right weaker by about 15 %
    at(17).legTilt = 0.20;  // left weaker by about 18 %
    at(4).classes = {2, 3};
    at(11).classes = {0, 2};
    at(17).classes = {1, 3};
    at(26).classes = {0, 4};
    at(39).classes = {1, 3};
    for (const int number : {4, 11, 17, 26, 39}) {
        at(number).attendance = 0.85;
    }
    at(26).armTilt = 0.22;
    at(26).note = "Old left collarbone fracture, 2019.";
    at(39).legTilt = -0.20;
    at(7).painFrom = 255; // early November
    at(7).painArea = "shoulder";
    at(7).painSide = "right";
    at(31).painFrom = 262;
    at(31).painArea = "elbow";
    at(31).painSide = "left";
    at(31).stopsForPain = true;
    at(9).away = {{95, 130}};
    at(14).away = {{60, 85}};
    at(20).away = {{150, 205}};
    at(28).away = {{110, 140}, {230, 252}};
    at(35).away = {{175, 205}};
    at(44).away = {{240, 270}}; // away now
    at(12).joined = 120;
    at(23).joined = 190;
    at(38).joined = 245; // four weeks ago
    at(46).joined = 255;
    at(41).left = 170;
    at(6).writesPounds = true;
    at(22).writesPounds = true;
    at(16).note = "Works nights every third week.";
    at(33).note = "Asked for short sentences and no music.";
    at(19).yearlyGain = 0.02; // no gain to be seen
    at(19).weeksTrained = 40;
    for (const int number : {12, 23, 38, 46}) {
        at(number).level = Level::Novice;
        at(number).weeksTrained = 1;
    }
}

} // namespace

std::vector<Person> makePeople(tests::Random& random)
{
    std::vector<Person> people;
    for (std::size_t i = 0; i < kGiven.size(); ++i) {
        Person person;
        std::array<char, 8> code{};
        std::snprintf(code.data(), code.size(), "M%03d", static_cast<int>(i + 1));
        person.code = code.data();
        person.name = kGiven.at(i).name;
        person.isFemale = kGiven.at(i).isFemale;
        makeBody(random, person);
        makeStrength(random, person);
        person.group = kGroups.at(static_cast<std::size_t>(random.below(5)));
        person.classes = {static_cast<int>(i % kClasses.size())};
        if (random.chance(0.6)) {
            const int other = (person.classes.front() + 2 + random.below(2)) % 5;
            person.classes.push_back(other);
            std::sort(person.classes.begin(), person.classes.end());
        }
        people.push_back(std::move(person));
    }
    makeStories(people);
    return people;
}

bool isAway(const Person& person, int day)
{
    return day < person.joined || day > person.left ||
           std::any_of(person.away.begin(), person.away.end(), [day](const Away& away) {
               return away.from <= day && day <= away.to;
           });
}

double strengthChange(const Person& person, int day)
{
    // Linear in the logarithm of weeks trained; two weeks away cost nothing, then half a percent
    // a week, regained in as many weeks (simple, and as published means go).
    double lost = 0.0;
    int daysOff = 0;
    int trained = 0;
    for (int d = person.joined; d <= day; ++d) {
        if (isAway(person, d)) {
            ++daysOff;
            lost += daysOff > 14 ? 0.005 / 7.0 : 0.0;
        } else {
            daysOff = 0;
            ++trained;
            lost = std::max(0.0, lost - 0.012 / 7.0);
        }
    }
    const double weeks = person.weeksTrained + trained / 7.0;
    const double perLog = person.yearlyGain / std::log(53.0);
    return perLog * std::log((weeks + 1.0) / (person.weeksTrained + 1.0)) - lost;
}

std::string dateText(int day)
{
    const std::chrono::year_month_day date{kFirstDay + std::chrono::days{day}};
    std::array<char, 16> text{};
    std::snprintf(text.data(),
                  text.size(),
                  "%04d-%02u-%02u",
                  static_cast<int>(date.year()),
                  static_cast<unsigned>(date.month()),
                  static_cast<unsigned>(date.day()));
    return text.data();
}

namespace {

std::string numbersOf(const Person& person)
{
    std::array<char, 64> numbers{};
    std::snprintf(numbers.data(),
                  numbers.size(),
                  "%04d-%02d-%02d,%d.%d,%g",
                  person.birthYear,
                  person.birthMonth,
                  person.birthDayOfMonth,
                  person.heightTenths / 10,
                  person.heightTenths % 10,
                  person.massKilograms);
    return numbers.data();
}

std::string classesOf(const Person& person)
{
    std::string classes;
    for (const int place : person.classes) {
        classes += classes.empty() ? "" : "|";
        classes += kClasses.at(static_cast<std::size_t>(place)).name;
    }
    return classes;
}

const char* wordOf(Level level)
{
    return level == Level::Novice ? "novice"
                                  : (level == Level::Intermediate ? "intermediate" : "advanced");
}

} // namespace

std::string membersCsv(const std::vector<Person>& people)
{
    std::string out =
        "member_id,name,sex,birth_date,height_cm,body_mass_kg,dominant_side,level,goal,"
        "group,classes,note\n";
    int row = 0;
    for (const Person& person : people) {
        ++row;
        const bool hidesSex = row % 19 == 0; // some cells are empty in every real list
        const bool hidesHand = row % 13 == 0;
        const std::string sex = hidesSex ? "" : (person.isFemale ? "female" : "male");
        const std::string hand = hidesHand ? "" : (person.isLeftHanded ? "left" : "right");
        const std::string note = person.note.empty() ? "" : "\"" + person.note + "\"";
        for (const std::string& cell : {person.code,
                                        person.name,
                                        sex,
                                        numbersOf(person),
                                        hand,
                                        std::string(wordOf(person.level)),
                                        std::string(person.goal),
                                        std::string(person.group),
                                        classesOf(person)}) {
            out += cell;
            out += ',';
        }
        out += note;
        out += '\n';
    }
    return out;
}

} // namespace levelbar::demo
