// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/floor/floor_sheet.h"

#include "storage/class_plan_store.h"
#include "storage/company_store.h"
#include "storage/gym_store.h"
#include "storage/library_store.h"
#include "storage/member_store.h"
#include "storage/set_store.h"
#include "storage/station_store.h"
#include "ui/floor/floor_words.h"

#include <QCollator>

#include <algorithm>
#include <set>

namespace levelbar::ui {

namespace {

constexpr std::size_t kMeetingsForProposal = 4;

// How many sets, and on which sides, an exercise takes in the grid.
struct Extent {
    int sets = 0;
    std::set<Side> sides;
};

class SheetBuilder {
public:
    SheetBuilder(FloorSheet& sheet, const FloorReference& reference)
        : m_sheet(sheet)
        , m_reference(reference)
    {
    }

    void build(const std::vector<PlannedSet>& planned, const std::vector<DoneSet>& done)
    {
        for (const PlanItem& item : m_sheet.plan) {
            extentOf(item.what.exercise).sets += item.what.sets;
        }
        for (const PlannedSet& set : planned) {
            place({set.member, set.exercise, set.number, set.side}).planned = set;
        }
        placeDone(planned, done);
        addColumns();
        addRows();
    }

private:
    Extent& extentOf(ExerciseId exercise)
    {
        if (!m_extents.contains(exercise)) {
            m_order.push_back(exercise);
        }
        return m_extents[exercise];
    }

    FloorCell& place(const CellKey& key)
    {
        Extent& extent = extentOf(key.exercise);
        extent.sets = std::max(extent.sets, key.number);
        extent.sides.insert(key.side);
        m_members.insert(key.member);
        return m_cells[key];
    }

    // A done set stands where its plan stands; one without a plan at its own number, or at the
    // next place that is free.
    void placeDone(const std::vector<PlannedSet>& planned, const std::vector<DoneSet>& done)
    {
        std::map<PlannedSetId, int> numbers;
        for (const PlannedSet& set : planned) {
            numbers[set.id] = set.number;
        }
        std::vector<DoneSet> loose;
        for (const DoneSet& set : done) {
            const auto plan = set.planned ? numbers.find(*set.planned) : numbers.end();
            if (plan == numbers.end()) {
                loose.push_back(set);
                continue;
            }
            place({set.member, set.exercise, plan->second, set.side}).done = set;
        }
        for (const DoneSet& set : loose) {
            CellKey key{set.member, set.exercise, set.performed.number, set.side};
            while (m_cells.contains(key) && m_cells.at(key).done) {
                ++key.number;
            }
            place(key).done = set;
        }
    }

    void addColumns()
    {
        for (const ExerciseId exercise : m_order) {
            const Extent& extent = m_extents.at(exercise);
            std::vector<Side> sides(extent.sides.begin(), extent.sides.end());
            if (sides.empty()) {
                sides = plannedSides(m_reference.library.exercise(exercise));
            }
            for (int number = 1; number <= extent.sets; ++number) {
                for (const Side side : sides) {
                    m_sheet.columns.push_back({exercise, number, side});
                }
            }
        }
    }

    void addRows()
    {
        for (const storage::Attendance& attendance : m_sheet.attendance) {
            if (attendance.came.value_or(false)) {
                m_members.insert(attendance.member);
            }
        }
        for (const MemberId member : m_members) {
            FloorRow row{member, {}};
            for (const FloorColumn& column : m_sheet.columns) {
                const auto cell =
                    m_cells.find({member, column.exercise, column.number, column.side});
                row.cells.push_back(cell == m_cells.end() ? FloorCell{} : cell->second);
            }
            m_sheet.rows.push_back(std::move(row));
        }
    }

    FloorSheet& m_sheet;
    const FloorReference& m_reference;
    std::vector<ExerciseId> m_order;
    std::map<ExerciseId, Extent> m_extents;
    std::map<CellKey, FloorCell> m_cells;
    std::set<MemberId> m_members;
};

} // namespace

FloorTemplate templateFor(const storage::Logbook& logbook, ClassId groupClass, Day day)
{
    const storage::ClassStore classes(logbook);
    FloorTemplate found;
    found.items = classes.templateOf(groupClass);
    if (!found.items.empty()) {
        return found;
    }
    // Only earlier days: a proposal must not change while the class is being logged.
    const storage::SetStore sets(logbook);
    std::vector<DoneSet> seen;
    for (const storage::Meeting& meeting : classes.meetingsOf(groupClass)) {
        if (meeting.day >= day) {
            continue;
        }
        const auto done = sets.ofMeeting(meeting.id);
        if (done.empty()) {
            continue;
        }
        seen.insert(seen.end(), done.begin(), done.end());
        if (++found.meetingsSeen == static_cast<int>(kMeetingsForProposal)) {
            break;
        }
    }
    found.items = templateFromHistory(seen);
    found.isProposed = !found.items.empty();
    return found;
}

std::vector<PlanItem>
itemsOn(const storage::Logbook& logbook, ClassId groupClass, Day day, const FloorTemplate& proposed)
{
    const storage::ClassPlanStore store(logbook);
    std::vector<PlanItem> usual = store.itemsOf(groupClass);
    if (usual.empty()) {
        usual = planItems(proposed.items);
    }
    return itemsIn(day, usual, store.weeksOf(groupClass));
}

std::vector<Side> plannedSides(const Exercise* exercise)
{
    if (exercise != nullptr && exercise->sidedness == Sidedness::SingleSided) {
        return {Side::Left, Side::Right};
    }
    return {Side::Both};
}

std::optional<int> writtenRacks(const storage::Logbook& logbook, Day day)
{
    const storage::StationStore store(logbook);
    const Stations all = store.all();
    if (all.racks.empty()) {
        return std::nullopt;
    }
    int racks = 0;
    for (const Rack& alike : without(all, store.goneOn(day)).racks) {
        racks += alike.count;
    }
    return std::max(1, racks);
}

FloorReference readReference(const storage::Logbook& logbook, Day today)
{
    FloorReference reference;
    reference.library = storage::LibraryStore(logbook).all();
    const storage::GymStore gym(logbook);
    reference.effort = gym.effortScale();
    reference.kit = gym.kitOn(today);
    reference.company = storage::CompanyStore(logbook).all();
    for (Member& member : storage::MemberStore(logbook).all(true)) {
        const MemberId id = member.id;
        reference.people.emplace(id, std::move(member));
    }
    return reference;
}

FloorSheet readSheet(const storage::Logbook& logbook,
                     const FloorReference& reference,
                     ClassId groupClass,
                     Day day)
{
    const storage::ClassStore classes(logbook);
    FloorSheet sheet;
    sheet.groupClass = groupClass;
    sheet.day = day;
    sheet.meeting = classes.meeting(groupClass, day);
    sheet.items = templateFor(logbook, groupClass, day);
    sheet.plan = itemsOn(logbook, groupClass, day, sheet.items);
    for (ClassWeek& week : storage::ClassPlanStore(logbook).weeksOf(groupClass)) {
        if (week.monday == mondayOf(day)) {
            sheet.week = std::move(week);
        }
    }
    std::vector<PlannedSet> planned;
    std::vector<DoneSet> done;
    if (sheet.meeting) {
        const storage::SetStore sets(logbook);
        sheet.attendance = classes.attendanceOf(sheet.meeting->id);
        planned = sets.plannedOf(sheet.meeting->id);
        done = sets.ofMeeting(sheet.meeting->id);
    }
    SheetBuilder(sheet, reference).build(planned, done);

    QCollator collator;
    collator.setCaseSensitivity(Qt::CaseInsensitive);
    const auto nameOf = [&](const FloorRow& row) { return personName(reference, row.member); };
    std::sort(sheet.rows.begin(), sheet.rows.end(), [&](const auto& a, const auto& b) {
        const int order = collator.compare(nameOf(a), nameOf(b));
        return order != 0 ? order < 0 : a.member < b.member;
    });
    return sheet;
}

} // namespace levelbar::ui
