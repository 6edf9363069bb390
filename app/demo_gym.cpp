// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/demo_gym.h"

#include "resources/embedded.h"
#include "storage/bulk_write.h"
#include "storage/class_plan_store.h"
#include "storage/class_store.h"
#include "storage/goal_store.h"
#include "storage/incident_store.h"
#include "storage/library_store.h"
#include "storage/member_store.h"
#include "storage/station_store.h"
#include "storage/timetable_store.h"

#include <array>
#include <string_view>

namespace levelbar {

namespace {

struct DemoHour {
    std::string_view name;
    int weekday;
    int startMinute;
    std::string_view instructor;
};

constexpr std::array<DemoHour, 5> kDemoWeek = {{{"Monday Bars", 1, 17 * 60 + 30, "KV"},
                                                {"Tuesday Noon", 2, 12 * 60 + 15, "KV"},
                                                {"Wednesday Early", 3, 6 * 60 + 45, "OB"},
                                                {"Thursday Dumbbells", 4, 18 * 60, "OB"},
                                                {"Friday Mix", 5, 16 * 60, "KV"}}};
constexpr int kDemoPlaces = 24;
constexpr const char* kHall = "Long hall";

void addStations(storage::WriteScope& scope)
{
    Room hall;
    hall.name = kHall;
    hall.id = storage::StationStore::put(scope, hall);
    Rack racks;
    racks.room = hall.id;
    racks.name = "Wall racks";
    racks.count = 6;
    storage::StationStore::put(scope, racks);
    Bench benches;
    benches.room = hall.id;
    benches.name = "Benches";
    benches.angles = {0, 30, 45};
    benches.count = 4;
    storage::StationStore::put(scope, benches);
}

void addWeek(storage::WriteScope& scope)
{
    for (const storage::GroupClass& one : storage::ClassStore(scope.logbook()).all()) {
        for (const DemoHour& hour : kDemoWeek) {
            if (one.name == hour.name) {
                WeeklySlot slot;
                slot.groupClass = one.id;
                slot.weekday = hour.weekday;
                slot.start = TimeOfDay{hour.startMinute};
                slot.plan = {60, kHall, std::string(hour.instructor), kDemoPlaces};
                storage::TimetableStore::add(scope, slot);
            }
        }
    }
}

// The week before Christmas is a lighter one for all.
void addLighterWeek(storage::WriteScope& scope)
{
    constexpr CivilDate kMonday{2026, 12, 14};
    for (const storage::GroupClass& one : storage::ClassStore(scope.logbook()).all()) {
        storage::ClassPlanStore::setWeek(
            scope, one.id, {*dayOf(kMonday), WeekKind::Lighter, "Before the holidays", {}});
    }
}

// What two of its people work towards.
void addGoals(storage::WriteScope& scope)
{
    struct DemoGoal {
        std::string_view code;
        std::string_view exercise;
        Side side;
        double kilograms;
        CivilDate by;
    };

    constexpr CivilDate kAgreed{2026, 10, 1};
    constexpr std::array<DemoGoal, 3> kGoals = {
        {{"M018", "Single-arm dumbbell bench press", Side::Left, 28.0, {2026, 12, 31}},
         {"M018", "Single-arm dumbbell bench press", Side::Right, 28.0, {2026, 12, 31}},
         {"M001", "Barbell bench press", Side::Both, 75.0, {2027, 3, 1}}}};
    for (const DemoGoal& goal : kGoals) {
        const auto member = storage::MemberStore(scope.logbook()).find(goal.code);
        const auto exercise = storage::LibraryStore(scope.logbook()).findExercise(goal.exercise);
        if (member && exercise) {
            storage::GoalStore::put(scope,
                                    member->id,
                                    {exercise->id,
                                     goal.side,
                                     Mass::ofKilograms(goal.kilograms),
                                     *dayOf(goal.by),
                                     *dayOf(kAgreed)});
        }
    }
}

} // namespace

storage::ImportReport addDemoGym(storage::Logbook& logbook, Moment now)
{
    storage::ImportRequest request;
    request.members = {"demo members.csv", resources::demoMembersCsv()};
    request.sets = {"demo sets.csv", resources::demoSetsCsv()};
    request.tests = {"demo tests.csv", resources::demoTestsCsv()};
    storage::ImportReport report = storage::importCsv(logbook, request, now);
    if (report.faults.empty()) {
        storage::BulkWrite write(logbook, "demo gym", now);
        addStations(write);
        addWeek(write);
        addLighterWeek(write);
        addGoals(write);
        storage::IncidentStore::setEmergencyCard(
            write,
            {"Mill Lane 4, yard door, first floor (an invented address)",
             "On the wall beside the front desk",
             "Whoever stands nearest to the telephone at the front desk; dial 0 first"});
        write.commit();
    }
    return report;
}

} // namespace levelbar
