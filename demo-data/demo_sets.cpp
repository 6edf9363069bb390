// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "demo-data/demo_sets.h"

#include "demo-data/demo_loads.h"

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <map>
#include <optional>

namespace levelbar::demo {

namespace {

struct Station {
    const char* exercise;
    Kind kind;
    double share; // of the bench press 1RM; for one dumbbell or side what that one lifts
    bool isOneSided;
    bool isLeg;
    int sets;
};

// What each class does, in the order of kClasses.
const std::vector<std::vector<Station>>& programmes()
{
    static const std::vector<std::vector<Station>> kAll = {
        {{"Barbell bench press", Kind::Barbell, 1.0, false, false, 3},
         {"Single-leg knee extension", Kind::Stack, 0.55, true, true, 1},
         {"Plank", Kind::Seconds, 0, false, false, 1}},
        {{"Dumbbell bench press", Kind::Dumbbell, 0.43, false, false, 3},
         {"Single-arm dumbbell row", Kind::Dumbbell, 0.46, true, false, 2},
         {"Incline push-up", Kind::PushUp, 0, false, false, 2}},
        {{"Single-arm dumbbell bench press", Kind::Dumbbell, 0.40, true, false, 2},
         {"Leg press", Kind::Stack, 2.6, false, true, 2}},
        {{"Incline barbell bench press", Kind::Barbell, 0.83, false, false, 2},
         {"Single-leg press", Kind::Stack, 1.45, true, true, 2}},
        {{"Push-up", Kind::PushUp, 0, false, false, 2},
         {"Barbell bench press", Kind::Barbell, 1.0, false, false, 2},
         {"Single-arm dumbbell bench press", Kind::Dumbbell, 0.40, true, false, 2},
         {"Farmer carry", Kind::Metres, 0.35, false, false, 1}},
    };
    return kAll;
}

// One row before it becomes text.
struct Row {
    std::string side = "both";
    int set = 1;
    std::string load;
    std::string unit = "kg";
    std::string reps;
    std::string reserve;
    std::string seconds;
    std::string metres;
    std::string known = "counted";
    std::string kind = "work";
    std::string stopped;
    std::string clean;
    std::string hole;
    std::string pain;
    std::string painArea;
    std::string painSide;
    std::string note;
};

class Meeting {
public:
    Meeting(const std::vector<Person>& people, tests::Random& random, std::string& out)
        : m_people(people)
        , m_random(random)
        , m_out(out)
    {
    }

    void hold(int place, int day)
    {
        m_class = &kClasses.at(static_cast<std::size_t>(place));
        m_date = dateText(day);
        m_dayNumber = day;
        m_minute = 0;
        // Open pairs every other week: both sides as far as they go, nobody capped.
        m_isOpenWeek = (day / 7) % 2 == 0;
        for (const Person& person : m_people) {
            const bool isMember = std::find(person.classes.begin(), person.classes.end(), place) !=
                                  person.classes.end();
            if (isMember && !isAway(person, day) && m_random.chance(person.attendance)) {
                train(person, programmes().at(static_cast<std::size_t>(place)));
            }
        }
    }

private:
    void train(const Person& person, const std::vector<Station>& stations)
    {
        m_order = 0;
        m_dayEffect = m_random.normal(0.0, 0.02) +
                      (m_random.chance(0.06) ? -m_random.uniform(0.03, 0.09) : 0.0);
        m_level = std::log(person.benchKilograms) + strengthChange(person, m_dayNumber);
        for (const Station& station : stations) {
            switch (station.kind) {
            case Kind::PushUp:
                pushUps(person, station);
                break;
            case Kind::Seconds:
            case Kind::Metres:
                holdOrCarry(person, station);
                break;
            default:
                lift(person, station);
            }
        }
    }

    void lift(const Person& person, const Station& station)
    {
        const bool isPounds = person.writesPounds && station.kind == Kind::Barbell;
        const double level = m_level + std::log(station.share);
        constexpr std::array<int, 4> kReps = {6, 8, 8, 10};
        const int reps = m_random.pick<int>(kReps);
        const double guess = std::exp(level + m_random.normal(-0.02, 0.03)) *
                             shareFor(1.0 + (reps + 1.0) / std::sqrt(person.repFactor));
        const double load = nearest(station.kind, guess, isPounds);
        const double kilograms = isPounds ? load * 0.45359237 : load;
        if (station.kind == Kind::Barbell && m_random.chance(0.25)) {
            Row ramp;
            ramp.load = number(nearest(station.kind, guess * 0.6, isPounds));
            ramp.unit = isPounds ? "lb" : "kg";
            ramp.reps = "8";
            ramp.kind = "ramp";
            write(person, station, ramp, 1, "both");
        }
        const int first = lastNumber(person, station, "both") + 1;
        for (int k = 0; k < station.sets; ++k) {
            if (station.isOneSided) {
                liftSides(person, station, load, kilograms, reps, k);
            } else {
                const double possible = possibleReps(person, level, kilograms, k);
                write(person,
                      station,
                      liftRow(person, load, isPounds, reps, possible),
                      first + k,
                      "both");
            }
        }
    }

    double possibleReps(const Person& person, double level, double kilograms, int earlier)
    {
        const double factor = person.repFactor;
        const double possible =
            repsAt(kilograms / std::exp(level + m_dayEffect), factor) - 0.4 * earlier;
        return possible + m_random.normal() * (0.5 + 0.03 * possible);
    }

    void liftSides(const Person& person,
                   const Station& station,
                   double load,
                   double kilograms,
                   int reps,
                   int k)
    {
        const double tilt = station.isLeg ? person.legTilt : person.armTilt;
        const double level = m_level + std::log(station.share);
        // Weaker side first, and it sets the reps; in an open week both go to one in reserve.
        const bool isListed = std::abs(tilt) > 0.1;
        const bool isLeftFirst = isListed ? tilt > 0.0 : (m_dayNumber / 7) % 2 == 0;
        int cap = 0;
        for (const bool isLeft : {isLeftFirst, !isLeftFirst}) {
            const double side = isLeft ? -0.5 : 0.5;
            const double own = level + side * tilt + m_random.normal(0.0, 0.012);
            const double possible = possibleReps(person, own, kilograms, k);
            Row row = liftRow(person, load, false, reps + (m_isOpenWeek ? 3 : 0), possible);
            if (m_isOpenWeek) {
                row.kind = "open";
                row.known = "counted";
                if (row.reserve.empty()) {
                    row.reserve = reserveText(person, possible - std::stoi(row.reps));
                }
            } else if (isListed && cap > 0 && std::stoi(row.reps) >= cap) {
                row.reps = std::to_string(cap);
                row.stopped = "capped";
                row.reserve.clear();
            }
            cap = std::stoi(row.reps);
            write(person, station, row, k + 1, isLeft ? "left" : "right");
        }
    }

    Row liftRow(const Person& person, double load, bool isPounds, int reps, double possible)
    {
        Row row;
        row.load = number(load);
        row.unit = isPounds ? "lb" : "kg";
        const int most = std::max(0, static_cast<int>(possible));
        const int done = std::min(reps, most);
        row.known = howKnown();
        if (row.known == "accepted" || row.known == "group") {
            row.reps = std::to_string(std::max(done, std::min(reps, most)));
            return row;
        }
        row.reps = std::to_string(done);
        if (done == most && done < reps) {
            row.stopped = "no more";
        }
        if (m_random.chance(0.72)) {
            row.reserve = done == most && done < reps ? "0" : reserveText(person, possible - done);
        }
        if (m_random.chance(0.03)) {
            row.clean = "no";
            row.note = "Hips came up";
        }
        return row;
    }

    std::string reserveText(const Person& person, double left)
    {
        const double named = left + person.reserveBias * std::min(1.0, left / 2.0) +
                             m_random.normal() * (0.4 + 0.15 * left);
        return std::to_string(static_cast<int>(std::clamp(std::round(named), 0.0, 12.0)));
    }

    void pushUps(const Person& person, const Station& station)
    {
        for (int k = 0; k < station.sets; ++k) {
            Row row;
            row.load = "0";
            const double share = person.isFemale ? 0.62 : 0.66;
            const bool isIncline = std::string_view(station.exercise) == "Incline push-up";
            const double work = person.massKilograms * share * (isIncline ? 0.72 : 1.0);
            const double possible =
                repsAt(work / (std::exp(m_level + m_dayEffect) * 1.05), person.repFactor) - k;
            const int reps = std::clamp(static_cast<int>(possible), 1, 25);
            row.reps = std::to_string(std::min(reps, isIncline ? 15 : 20));
            row.known = howKnown();
            if (isIncline) {
                row.hole = std::to_string(person.isFemale ? 9 : 7);
            }
            if (row.known == "counted" && m_random.chance(0.5)) {
                row.reserve = reserveText(person, std::max(0.0, possible - std::stoi(row.reps)));
            }
            write(person, station, row, k + 1, "both");
        }
    }

    void holdOrCarry(const Person& person, const Station& station)
    {
        Row row;
        row.known = howKnown();
        if (station.kind == Kind::Seconds) {
            row.load = "0";
            row.seconds = std::to_string(30 + 5 * m_random.below(10));
        } else {
            row.load = number(nearest(station.kind, std::exp(m_level) * station.share, false));
            row.metres = std::to_string(20 + 10 * m_random.below(4));
        }
        write(person, station, row, 1, "both");
    }

    std::string howKnown()
    {
        const double draw = m_random.uniform();
        if (draw < m_class->countedShare) {
            return "counted";
        }
        if (draw < m_class->countedShare + m_class->acceptedShare) {
            return "accepted";
        }
        return draw < m_class->countedShare + m_class->acceptedShare + m_class->groupShare
                   ? "group"
                   : "sheet";
    }

    int& lastNumber(const Person& person, const Station& station, const std::string& side)
    {
        return m_numbers[person.code + m_date + station.exercise + side];
    }

    static std::string number(double value)
    {
        std::array<char, 32> text{};
        std::snprintf(text.data(), text.size(), "%g", value);
        return text.data();
    }

    void addPain(const Person& person, const Station& station, const std::string& side, Row& row)
    {
        const bool isPress =
            !station.isLeg && station.kind != Kind::Seconds && station.kind != Kind::Metres;
        if (m_dayNumber < person.painFrom || !isPress ||
            (side != "both" && side != person.painSide)) {
            return;
        }
        row.pain = std::to_string(3 + m_random.below(3));
        row.painArea = person.painArea;
        row.painSide = person.painSide;
        if (person.stopsForPain && m_random.chance(0.6)) {
            row.stopped = "pain";
            row.reps = std::to_string(std::max(1, std::stoi(row.reps) - 3));
            row.reserve.clear();
        }
    }

    void
    write(const Person& person, const Station& station, Row row, int set, const std::string& side)
    {
        addPain(person, station, side, row);
        lastNumber(person, station, side) = set;
        std::array<char, 48> clock{};
        const int start = std::stoi(std::string(m_class->start).substr(0, 2)) * 60 +
                          std::stoi(std::string(m_class->start).substr(3));
        m_minute = (m_minute + 1) % 55;
        const int minute = start + 3 + m_minute;
        std::snprintf(clock.data(),
                      clock.size(),
                      "T%02d:%02d:%02dZ",
                      minute / 60,
                      minute % 60,
                      m_random.below(60));
        ++m_order;
        m_out += m_date + "," + person.code + "," + station.exercise + "," + std::to_string(set) +
                 "," + side + "," + row.load + "," + row.unit + "," + row.reps + "," + row.reserve +
                 "," + m_class->name + "," + std::to_string(m_order) + "," + row.seconds + "," +
                 row.metres + "," + row.known + "," + row.kind + "," + row.stopped + "," +
                 row.clean + "," + row.hole + "," + row.pain + "," + row.painArea + "," +
                 row.painSide + "," + m_class->start + "," + m_date + clock.data() + "," +
                 m_class->instructor + "," + row.note + "\n";
    }

    const std::vector<Person>& m_people;
    tests::Random& m_random;
    std::string& m_out;
    const GroupClass* m_class = nullptr;
    std::string m_date;
    int m_dayNumber = 0;
    int m_order = 0;
    int m_minute = 0;
    bool m_isOpenWeek = false;
    double m_dayEffect = 0.0;
    double m_level = 0.0;
    std::map<std::string, int> m_numbers;
};

} // namespace

std::string setsCsv(const std::vector<Person>& people, tests::Random& random)
{
    std::string out =
        "date,member_id,exercise,set,side,load,unit,reps,rir,class,order,seconds,metres,"
        "known,kind,stopped,clean,hook_hole,pain,pain_area,pain_side,start,keyed_at,"
        "keyed_by,note\n";
    const int days = static_cast<int>((kLastDay - kFirstDay).count());
    Meeting meeting(people, random, out);
    for (int day = 0; day <= days; ++day) {
        const int weekday = day % 7;
        // Closed for two weeks in August.
        const bool isClosed = day >= 161 && day < 175;
        if (weekday < static_cast<int>(kClasses.size()) && !isClosed) {
            meeting.hold(weekday, day);
        }
    }
    return out;
}

} // namespace levelbar::demo
