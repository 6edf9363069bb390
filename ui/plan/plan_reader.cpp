// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/plan/plan_reader.h"

#include "storage/class_plan_store.h"
#include "storage/class_store.h"
#include "storage/company_store.h"
#include "storage/gym_store.h"
#include "storage/history_reader.h"
#include "storage/library_store.h"
#include "storage/setup_store.h"
#include "storage/timetable_store.h"
#include "ui/floor/floor_sheet.h"
#include "ui/words.h"

#include <QCoreApplication>

#include <algorithm>

namespace levelbar::ui {

namespace {

constexpr int kUsualRacks = 4;

QString readerText(const char* text)
{
    return QCoreApplication::translate("PlanReader", text);
}

std::optional<TimetabledMeeting>
nextMeeting(const storage::TimetableStore& store, ClassId groupClass, Day today)
{
    const DayRange days{today, today + 7 * kPlanWeeks};
    for (const TimetabledMeeting& meeting : meetingsOf(store.timetable(days), days)) {
        if (meeting.key.groupClass == groupClass && !meeting.cancelled) {
            return meeting;
        }
    }
    return std::nullopt;
}

std::vector<MemberId> expectedIn(const storage::Logbook& logbook, const ClassPlan& plan)
{
    if (!plan.next) {
        return storage::ClassStore(logbook).membersOf(plan.groupClass);
    }
    const auto row = storage::TimetableStore(logbook).rowOf(plan.next->key);
    const MeetingPlaces places =
        storage::BookingStore(logbook).placesOf(plan.groupClass, row, plan.next->plan.capacity);
    std::vector<MemberId> members = places.booked;
    members.insert(members.end(), places.dropIns.begin(), places.dropIns.end());
    return members;
}

} // namespace

ClassPlan readClassPlan(const storage::Logbook& logbook, ClassId groupClass, Day today)
{
    const storage::ClassPlanStore store(logbook);
    ClassPlan plan;
    plan.groupClass = groupClass;
    plan.library = storage::LibraryStore(logbook).all();
    plan.usual = store.itemsOf(groupClass);
    plan.blocks = store.blocksOf(groupClass);
    plan.weeks = store.weeksOf(groupClass);
    plan.next = nextMeeting(storage::TimetableStore(logbook), groupClass, today);
    const Day on = plan.next ? plan.next->key.day : today;
    plan.kit = storage::GymStore(logbook).kitOn(on);
    if (plan.usual.empty()) {
        const FloorTemplate proposed = templateFor(logbook, groupClass, on);
        plan.proposedFrom = proposed.meetingsSeen;
        plan.usual = planItems(proposed.items);
    }
    for (const MemberId member : expectedIn(logbook, plan)) {
        if (auto history = storage::historyOf(logbook, member, on)) {
            plan.people.push_back(std::move(*history));
        }
    }
    std::vector<MemberId> members;
    for (const MemberHistory& person : plan.people) {
        members.push_back(person.member.id);
    }
    plan.settings = storage::SetupStore(logbook).settingsOf(members);
    plan.company = storage::CompanyStore(logbook).all();
    plan.racks = racksOn(logbook, on);
    return plan;
}

int racksOn(const storage::Logbook& logbook, Day day)
{
    return writtenRacks(logbook, day).value_or(kUsualRacks);
}

MeetingPlanAnswer planNext(const ClassPlan& plan, int racks, Day today, bool isProofWanted)
{
    const Day on = plan.next ? plan.next->key.day : today;
    const std::vector<PlanItem> items = itemsIn(on, plan.usual, plan.weeks);
    MeetingPlanQuestion question;
    question.people = plan.people;
    question.items = items;
    question.blocks = plan.blocks;
    question.library = &plan.library;
    question.kit = &plan.kit;
    question.settings = plan.settings;
    question.company = plan.company;
    question.racks = racks;
    question.on = on;
    question.isProofWanted = isProofWanted;
    return planMeeting(question);
}

std::vector<std::pair<MemberId, int>> sheetOrder(const ClassPlan& plan,
                                                 const MeetingPlanAnswer& answer)
{
    std::vector<std::pair<MemberId, int>> order;
    int racks = 0;
    const auto isIn = [&order](MemberId member) {
        return std::any_of(
            order.begin(), order.end(), [member](const auto& one) { return one.first == member; });
    };
    std::optional<std::size_t> first;
    for (const BlockPlan& block : answer.blocks) {
        for (const RackRound& round : block.rounds) {
            first = first.value_or(round.item);
            for (const RackPlace& place : round.places) {
                if (round.item == *first && !isIn(place.member)) {
                    order.emplace_back(place.member, place.rack);
                    racks = std::max(racks, place.rack);
                }
            }
        }
    }
    std::stable_sort(order.begin(), order.end(), [](const auto& a, const auto& b) {
        return a.second < b.second;
    });
    for (const MemberHistory& person : plan.people) {
        if (!isIn(person.member.id)) {
            order.emplace_back(person.member.id, racks + 1);
        }
    }
    return order;
}

namespace {

// Without its number.
SheetRow sheetRowOf(MemberId member,
                    const ClassPlan& plan,
                    const MeetingPlanAnswer& answer,
                    const std::vector<PlanItem>& items)
{
    SheetRow row;
    for (const MemberHistory& person : plan.people) {
        if (person.member.id == member) {
            row.name = personName(person.member);
        }
    }
    for (const PlannedTarget& target : answer.targets) {
        if (target.member == member) {
            const PlanItem& item = items[target.item];
            row.cells.push_back({aimText(target, item), item.what.sets});
        }
    }
    return row;
}

} // namespace

MeetingSheet
sheetOf(const ClassPlan& plan, const MeetingPlanAnswer& answer, const QString& className)
{
    MeetingSheet sheet;
    sheet.className = className;
    sheet.day = answer.book.day;
    if (plan.next) {
        sheet.start = plan.next->key.start;
    }
    const std::vector<PlanItem> items = itemsIn(sheet.day, plan.usual, plan.weeks);
    for (const PlanItem& item : items) {
        sheet.exercises.push_back(exerciseName(plan.library, item.what.exercise));
    }
    int racks = 0;
    for (const BlockPlan& block : answer.blocks) {
        for (const RackRound& round : block.rounds) {
            racks = std::max(racks, static_cast<int>(round.sharing.racks.size()));
        }
    }
    int number = 0;
    int rack = 0;
    for (const auto& [member, at] : sheetOrder(plan, answer)) {
        if (at != rack) {
            rack = at;
            sheet.racks.push_back(
                {at > racks ? readerText("No rack") : readerText("Rack %1").arg(at), {}});
        }
        SheetRow row = sheetRowOf(member, plan, answer, items);
        row.number = ++number;
        sheet.racks.back().rows.push_back(std::move(row));
    }
    return sheet;
}

QString exerciseName(const Library& library, ExerciseId exercise)
{
    const Exercise* found = library.exercise(exercise);
    return found == nullptr ? readerText("unknown exercise") : plain(found->name);
}

QString personName(const Member& member)
{
    return plain(member.name.empty() ? member.code : member.name);
}

QString aimText(const PlannedTarget& target, const PlanItem& item)
{
    if (const auto load = target.load()) {
        const QString mass =
            plain(load->load.number() + " " + std::string(unitWord(load->load.unit())));
        const int reps = target.target->progression.reps;
        return readerText("%1 × %2").arg(mass).arg(reps > 0 ? reps : target.target->reps);
    }
    return item.what.reps ? readerText("× %1").arg(*item.what.reps) : QString();
}

} // namespace levelbar::ui
