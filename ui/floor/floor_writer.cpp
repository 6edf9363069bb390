// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/floor/floor_writer.h"

#include "storage/history_reader.h"
#include "storage/library_store.h"
#include "storage/set_store.h"
#include "storage/side_store.h"
#include "ui/floor/floor_expectation.h"

#include <algorithm>
#include <map>
#include <set>

namespace levelbar::ui {

namespace {

using storage::Action;
using storage::ActionKind;
using storage::ClassStore;
using storage::SetStore;

CellKey cellOf(const PlannedSet& planned)
{
    return {planned.member, planned.exercise, planned.number, planned.side};
}

// Whose plan, and when.
struct PlanFor {
    MemberId member;
    MeetingId meeting;
    Day day;
    SidePlans sides;
};

std::vector<PlannedSet> setsFor(const storage::Logbook& logbook,
                                const FloorReference& reference,
                                const std::vector<PlanItem>& items,
                                const PlanFor& whom)
{
    const auto history = storage::historyOf(logbook, whom.member, whom.day);
    if (!history) {
        return {};
    }
    return planFor(
        {*history, reference.library, reference.kit, items, whom.day, whom.meeting, whom.sides});
}

// Plans what the class does and is not planned yet.
void layPlan(storage::WriteScope& scope,
             const PlanFor& whom,
             const std::vector<PlanItem>& items,
             const FloorReference& reference,
             Moment now)
{
    const storage::Logbook& logbook = scope.logbook();
    std::set<CellKey> planned;
    for (const PlannedSet& set : SetStore(logbook).plannedOf(whom.meeting)) {
        planned.insert(cellOf(set));
    }
    auto sets = setsFor(logbook, reference, items, whom);
    std::erase_if(sets, [&](const PlannedSet& set) { return !planned.insert(cellOf(set)).second; });
    expectReps(sets, logbook, reference.library, whom.day, now);
    for (const PlannedSet& set : sets) {
        SetStore::plan(scope, set);
    }
}

// Takes away open planned sets that the class does no more.
void dropPlan(storage::WriteScope& scope,
              const FloorSheet& sheet,
              const std::vector<PlanItem>& items)
{
    std::map<ExerciseId, int> wanted;
    for (const PlanItem& item : items) {
        wanted[item.what.exercise] += item.what.sets;
    }
    for (const FloorRow& row : sheet.rows) {
        for (const FloorCell& cell : row.cells) {
            if (!cell.isPlannedOnly()) {
                continue;
            }
            const auto sets = wanted.find(cell.planned->exercise);
            if (sets == wanted.end() || cell.planned->number > sets->second) {
                SetStore::removePlanned(scope, cell.planned->id);
            }
        }
    }
}

bool isBooked(const FloorSheet& sheet, MemberId member)
{
    return std::any_of(
        sheet.attendance.begin(), sheet.attendance.end(), [member](const auto& attendance) {
            return attendance.member == member && attendance.isBooked;
        });
}

std::optional<storage::ActionEntry> lastTakeableEntry(const storage::Logbook& logbook)
{
    const auto last = storage::lastTakeable(logbook);
    if (!last) {
        return std::nullopt;
    }
    constexpr int kFarBack = 1000;
    for (const storage::ActionEntry& entry : storage::recentActions(logbook, kFarBack)) {
        if (entry.id == *last) {
            return entry;
        }
    }
    storage::ActionEntry entry; // older than what is listed: taken back without its details
    entry.id = *last;
    return entry;
}

using SetsByKey = std::map<storage::SetKey, DoneSet>;

SetsByKey setsOf(const storage::Logbook& logbook, const std::vector<MemberId>& members)
{
    SetsByKey sets;
    for (const MemberId member : members) {
        for (const DoneSet& set : SetStore(logbook).ofMember(member)) {
            sets.emplace(storage::keyOf(set), set);
        }
    }
    return sets;
}

void noteDifference(const SetsByKey& before, const SetsByKey& after, TakenBack& taken)
{
    for (const auto& [key, set] : before) {
        const auto now = after.find(key);
        if (now == after.end()) {
            taken.undone = set;
        } else if (!(now->second == set)) {
            taken.undone = set;
            taken.restored = now->second;
        }
    }
}

void apply(const KeyedSet& keyed, PerformedSet& performed)
{
    performed.reps = keyed.reps;
    performed.secondsTenths = keyed.secondsTenths;
    performed.metresTenths = keyed.metresTenths;
    performed.reserve = keyed.reserve;
    performed.known = keyed.known;
    performed.stopped = keyed.stopped;
    performed.pain = keyed.pain;
    performed.kind = keyed.kind;
}

} // namespace

void FloorWriter::finish(Action& action)
{
    m_workspace.notifier.announce(action.commit());
}

void FloorWriter::putPrescription(Action& action,
                                  MemberId member,
                                  const SidePrescription& prescription)
{
    const auto stored = storage::SideStore(action.logbook()).ofMember(member).prescriptions;
    if (std::find(stored.begin(), stored.end(), prescription) == stored.end()) {
        storage::SideStore::putPrescription(action, member, prescription);
    }
}

ClassId FloorWriter::addClass(const std::string& name)
{
    Action action(m_workspace.logbook, ActionKind::EditClass, m_workspace.clock.now());
    const ClassId added = ClassStore::add(action, name);
    finish(action);
    return added;
}

void FloorWriter::markCame(const FloorSheet& sheet,
                           const FloorReference& reference,
                           MemberId member,
                           const SidePlans& sides)
{
    // The first person marked opens the meeting: one action, so that one key takes both back.
    const ActionKind kind = sheet.meeting ? ActionKind::MarkAttendance : ActionKind::OpenMeeting;
    Action action(m_workspace.logbook, kind, m_workspace.clock.now());
    const MeetingId id = sheet.meeting
                             ? sheet.meeting->id
                             : ClassStore::addMeeting(action, sheet.groupClass, sheet.day, {});
    ClassStore::setAttendance(action, id, {member, isBooked(sheet, member), true});
    layPlan(action, {member, id, sheet.day, sides}, sheet.plan, reference, m_workspace.clock.now());
    finish(action);
}

void FloorWriter::unmark(const FloorSheet& sheet, MemberId member)
{
    if (!sheet.meeting) {
        return;
    }
    Action action(m_workspace.logbook, ActionKind::MarkAttendance, m_workspace.clock.now());
    for (const PlannedSet& set : SetStore(m_workspace.logbook).plannedOf(sheet.meeting->id)) {
        if (set.member == member) {
            SetStore::removePlanned(action, set.id);
        }
    }
    ClassStore::setAttendance(
        action, sheet.meeting->id, {member, isBooked(sheet, member), std::nullopt});
    finish(action);
}

void FloorWriter::setTemplate(const FloorSheet& sheet,
                              const FloorReference& reference,
                              const std::vector<TemplateItem>& items,
                              const std::function<SidePlans(MemberId)>& sides)
{
    Action action(m_workspace.logbook, ActionKind::EditTemplate, m_workspace.clock.now());
    ClassStore::setTemplate(action, sheet.groupClass, items);
    if (sheet.meeting) {
        const auto plan =
            itemsOn(action.logbook(), sheet.groupClass, sheet.day, FloorTemplate{items, false, 0});
        dropPlan(action, sheet, plan);
        for (const FloorRow& row : sheet.rows) {
            layPlan(
                action,
                {row.member, sheet.meeting->id, sheet.day, sides ? sides(row.member) : SidePlans{}},
                plan,
                reference,
                m_workspace.clock.now());
        }
    }
    finish(action);
}

PlannedSet FloorWriter::suggestion(const FloorSheet& sheet,
                                   const FloorReference& reference,
                                   const CellKey& key) const
{
    PlanItem item{{key.exercise, key.number, std::nullopt}, 1, {}, {}, {}};
    const auto known =
        std::find_if(sheet.plan.begin(), sheet.plan.end(), [&key](const PlanItem& one) {
            return one.what.exercise == key.exercise;
        });
    if (known != sheet.plan.end()) {
        item = *known;
        item.what.sets = std::max(item.what.sets, key.number);
    }
    const MeetingId meeting = sheet.meeting ? sheet.meeting->id : MeetingId{};
    for (const PlannedSet& set :
         setsFor(m_workspace.logbook, reference, {item}, {key.member, meeting, sheet.day, {}})) {
        if (cellOf(set) == key) {
            return set;
        }
    }
    PlannedSet set; // a side on which the exercise is not planned as a rule
    set.meeting = meeting;
    set.member = key.member;
    set.exercise = key.exercise;
    set.side = key.side;
    set.number = key.number;
    set.isNew = true;
    return set;
}

DoneSet FloorWriter::signedNow(DoneSet set) const
{
    set.keyedAt = m_workspace.clock.now();
    set.keyedBy = m_initials;
    return set;
}

PlannedSetId FloorWriter::planNow(Action& action, std::vector<PlannedSet> sets, Day day) const
{
    const storage::Logbook& logbook = m_workspace.logbook;
    const Library library = storage::LibraryStore(logbook).all();
    expectReps(sets, logbook, library, day, m_workspace.clock.now());
    PlannedSetId last;
    for (const PlannedSet& set : sets) {
        last = SetStore::plan(action, set);
    }
    return last;
}

DoneSet FloorWriter::log(const FloorSheet& sheet,
                         const PlannedSet& planned,
                         const KeyedSet& keyed,
                         std::optional<PlannedSet> sameLoad)
{
    Action action(m_workspace.logbook, ActionKind::LogSet, m_workspace.clock.now());
    const SetStore sets(m_workspace.logbook);
    DoneSet set;
    set.member = planned.member;
    set.exercise = planned.exercise;
    set.side = planned.side;
    set.performed.day = sheet.day;
    set.performed.number = sets.nextNumber(set.member, set.exercise, set.side, sheet.day);
    set.performed.order = sets.nextOrder(set.member, sheet.day);
    set.performed.load = planned.load;
    apply(keyed, set.performed);
    set.meeting = planned.meeting;
    set.planned = planned.id.isStored() ? planned.id : planNow(action, {planned}, sheet.day);
    set = signedNow(std::move(set));
    SetStore::add(action, set);
    if (sameLoad && !(sameLoad->load == set.performed.load)) {
        sameLoad->load = set.performed.load;
        SetStore::updatePlanned(action, *sameLoad);
    }
    if (keyed.prescription) {
        putPrescription(action, set.member, *keyed.prescription);
    }
    if (set.meeting) {
        putSpots(action, *set.meeting);
    }
    finish(action);
    return set;
}

DoneSet FloorWriter::replace(const DoneSet& set)
{
    Action action(m_workspace.logbook, ActionKind::CorrectSet, m_workspace.clock.now());
    SetStore::update(action, set);
    finish(action);
    return set;
}

DoneSet FloorWriter::correct(const DoneSet& stored, const KeyedSet& keyed)
{
    DoneSet set = signedNow(stored);
    apply(keyed, set.performed);
    return replace(set);
}

DoneSet FloorWriter::correctLoad(const DoneSet& stored, const Mass& load)
{
    DoneSet set = signedNow(stored);
    set.performed.load = load;
    return replace(set);
}

void FloorWriter::changeLoad(std::vector<PlannedSet> planned, const Mass& load, Day day)
{
    Action action(m_workspace.logbook, ActionKind::PlanMeeting, m_workspace.clock.now());
    for (PlannedSet& set : planned) {
        if (set.id.isStored()) {
            SetStore::removePlanned(action, set.id);
        }
        set.load = load;
    }
    planNow(action, std::move(planned), day);
    finish(action);
}

std::optional<TakenBack> FloorWriter::takeBackLast()
{
    storage::Logbook& logbook = m_workspace.logbook;
    const auto entry = lastTakeableEntry(logbook);
    if (!entry) {
        return std::nullopt;
    }
    TakenBack taken;
    taken.kind = entry->kind;
    taken.members = entry->members;
    const bool isAboutASet =
        entry->kind == ActionKind::LogSet || entry->kind == ActionKind::CorrectSet;
    const SetsByKey before = isAboutASet ? setsOf(logbook, entry->members) : SetsByKey{};
    const storage::Change change = storage::takeBack(logbook, entry->id, m_workspace.clock.now());
    if (isAboutASet) {
        noteDifference(before, setsOf(logbook, entry->members), taken);
    }
    m_workspace.notifier.announce(change);
    return taken;
}

} // namespace levelbar::ui
