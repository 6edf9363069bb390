// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/floor/floor_session.h"

#include "storage/library_store.h"
#include "storage/member_store.h"

#include <algorithm>
#include <set>

namespace levelbar::ui {

namespace {

constexpr std::size_t kMeetingsForProposal = 4;

std::vector<Side> sidesOf(const Exercise& exercise)
{
    if (exercise.sidedness == Sidedness::SingleSided) {
        return {Side::Left, Side::Right};
    }
    return {Side::Both};
}

} // namespace

FloorSession::FloorSession(Workspace& workspace)
    : m_workspace(workspace)
{
}

void FloorSession::open(ClassId groupClass, Day day)
{
    m_class = groupClass;
    m_day = day;
    reload();
}

void FloorSession::reload()
{
    if (!isOpen()) {
        return;
    }
    const storage::ClassStore classes(m_workspace.logbook);
    m_library = storage::LibraryStore(m_workspace.logbook).all();
    m_meeting = classes.meeting(m_class, m_day);
    m_items = classes.templateOf(m_class);
    m_isProposed = m_items.empty();
    if (m_isProposed) {
        m_items = proposal();
    }
    readPeople();
    readCells();
}

std::vector<TemplateItem> FloorSession::proposal() const
{
    std::vector<DoneSet> sets;
    std::size_t looked = 0;
    for (const storage::Meeting& meeting :
         storage::ClassStore(m_workspace.logbook).meetingsOf(m_class)) {
        if (meeting.day >= m_day || looked++ >= kMeetingsForProposal) {
            continue;
        }
        const auto more = storage::SetStore(m_workspace.logbook).ofMeeting(meeting.id);
        sets.insert(sets.end(), more.begin(), more.end());
    }
    return templateFromHistory(sets);
}

void FloorSession::readPeople()
{
    const storage::ClassStore classes(m_workspace.logbook);
    const storage::MemberStore members(m_workspace.logbook);
    std::set<MemberId> came;
    if (m_meeting) {
        for (const storage::Attendance& attendance : classes.attendanceOf(m_meeting->id)) {
            if (attendance.came == true) {
                came.insert(attendance.member);
            }
        }
    }
    const auto belonging = classes.membersOf(m_class);
    std::set<MemberId> wanted(belonging.begin(), belonging.end());
    wanted.insert(came.begin(), came.end());
    m_candidates.clear();
    m_present.clear();
    for (const Member& member : members.all(true)) {
        if (wanted.contains(member.id)) {
            m_candidates.push_back(member);
            if (came.contains(member.id)) {
                m_present.push_back(member);
            }
        }
    }
    const auto byName = [](const Member& a, const Member& b) {
        return std::tie(a.name, a.code) < std::tie(b.name, b.code);
    };
    std::sort(m_candidates.begin(), m_candidates.end(), byName);
    std::sort(m_present.begin(), m_present.end(), byName);
}

void FloorSession::readCells()
{
    m_cells.clear();
    m_columns.clear();
    std::map<PlannedSetId, CellKey> keys;
    std::map<std::tuple<ExerciseId, Side>, int> most; // sets of each exercise and side
    if (m_meeting) {
        const storage::SetStore sets(m_workspace.logbook);
        for (const PlannedSet& planned : sets.plannedOf(m_meeting->id)) {
            const CellKey key(planned.member, planned.exercise, planned.side, planned.number);
            m_cells[key].planned = planned;
            keys[planned.id] = key;
            int& count = most[{planned.exercise, planned.side}];
            count = std::max(count, planned.number);
        }
        // Sets that came without a plan (imported ones) take the places in order.
        std::map<std::tuple<MemberId, ExerciseId, Side>, int> unplanned;
        for (const DoneSet& set : sets.ofMeeting(m_meeting->id)) {
            if (set.planned && keys.contains(*set.planned)) {
                m_cells[keys[*set.planned]].done = set;
            } else if (set.performed.kind != SetKind::Ramp) {
                const int place = ++unplanned[{set.member, set.exercise, set.side}];
                m_cells[{set.member, set.exercise, set.side, place}].done = set;
                int& count = most[{set.exercise, set.side}];
                count = std::max(count, place);
            }
        }
    }
    std::vector<std::pair<ExerciseId, int>> order;
    for (const TemplateItem& item : m_items) {
        order.emplace_back(item.exercise, item.sets);
    }
    for (const auto& [key, count] : most) {
        const ExerciseId exercise = std::get<0>(key);
        const auto at = std::find_if(
            order.begin(), order.end(), [&](const auto& entry) { return entry.first == exercise; });
        if (at == order.end()) {
            order.emplace_back(exercise, count);
        } else {
            at->second = std::max(at->second, count);
        }
    }
    for (const auto& [id, count] : order) {
        const Exercise* exercise = m_library.exercise(id);
        for (int number = 1; exercise != nullptr && number <= count; ++number) {
            for (const Side side : sidesOf(*exercise)) {
                m_columns.push_back({exercise, side, number});
            }
        }
    }
}

bool FloorSession::isPresent(MemberId member) const
{
    return std::any_of(m_present.begin(), m_present.end(), [&](const Member& present) {
        return present.id == member;
    });
}

const FloorCell& FloorSession::cell(std::size_t row, std::size_t column) const
{
    static const FloorCell kEmpty;
    const FloorColumn& place = m_columns.at(column);
    const auto found =
        m_cells.find({m_present.at(row).id, place.exercise->id, place.side, place.number});
    return found == m_cells.end() ? kEmpty : found->second;
}

MeetingId FloorSession::meetingFor(storage::WriteScope& scope)
{
    if (m_meeting) {
        return m_meeting->id;
    }
    return storage::ClassStore::addMeeting(scope, m_class, m_day, std::nullopt);
}

void FloorSession::layPlan(storage::WriteScope& scope, MeetingId meeting, MemberId member)
{
    std::vector<DoneSet> done = storage::SetStore(m_workspace.logbook).ofMember(member);
    done.erase(std::remove_if(done.begin(),
                              done.end(),
                              [this](const DoneSet& set) { return set.performed.day >= m_day; }),
               done.end());
    for (const PlannedSet& planned :
         planFromLast(meeting, member, m_items, m_library.exercises, done)) {
        const auto known = m_cells.find({member, planned.exercise, planned.side, planned.number});
        const bool isThere =
            known != m_cells.end() && (known->second.planned || known->second.done);
        if (!isThere) {
            storage::SetStore::plan(scope, planned);
        }
    }
}

bool FloorSession::setPresent(const Member& member, bool came)
{
    if (!came) {
        for (const auto& [key, cell] : m_cells) {
            if (std::get<0>(key) == member.id && cell.done) {
                return false;
            }
        }
    }
    storage::Action action(
        m_workspace.logbook, storage::ActionKind::MarkAttendance, m_workspace.clock.now());
    const MeetingId meeting = meetingFor(action);
    storage::ClassStore::setAttendance(action, meeting, {member.id, false, came});
    if (came) {
        layPlan(action, meeting, member.id);
    } else {
        for (const auto& [key, cell] : m_cells) {
            if (std::get<0>(key) == member.id && cell.planned) {
                storage::SetStore::removePlanned(action, cell.planned->id);
            }
        }
    }
    const storage::Change change = action.commit();
    reload();
    m_workspace.notifier.announce(change);
    return true;
}

void FloorSession::setTemplate(const std::vector<TemplateItem>& items)
{
    storage::Action action(
        m_workspace.logbook, storage::ActionKind::EditTemplate, m_workspace.clock.now());
    storage::ClassStore::setTemplate(action, m_class, items);
    m_items = items;
    const auto isWanted = [&items](const CellKey& key) {
        return std::any_of(items.begin(), items.end(), [&](const TemplateItem& item) {
            return item.exercise == std::get<1>(key) && std::get<3>(key) <= item.sets;
        });
    };
    for (const auto& [key, cell] : m_cells) {
        if (cell.planned && !cell.done && !isWanted(key)) {
            storage::SetStore::removePlanned(action, cell.planned->id);
        }
    }
    if (m_meeting) {
        for (const Member& member : m_present) {
            layPlan(action, m_meeting->id, member.id);
        }
    }
    const storage::Change change = action.commit();
    reload();
    m_workspace.notifier.announce(change);
}

ClassId FloorSession::addClass(const std::string& name)
{
    storage::Action action(
        m_workspace.logbook, storage::ActionKind::OpenMeeting, m_workspace.clock.now());
    const ClassId id = storage::ClassStore::add(action, name);
    m_workspace.notifier.announce(action.commit());
    return id;
}

Result<DoneSet> FloorSession::store(std::size_t row, std::size_t column, const CellEntry& entry)
{
    const FloorCell current = cell(row, column);
    const FloorColumn& place = m_columns.at(column);
    const Member& member = m_present.at(row);
    DoneSet set = current.done.value_or(DoneSet{});
    PerformedSet& performed = set.performed;
    if (!current.done) {
        const storage::SetStore sets(m_workspace.logbook);
        set.member = member.id;
        set.exercise = place.exercise->id;
        set.side = place.side;
        performed.day = m_day;
        performed.number = sets.nextNumber(member.id, set.exercise, set.side, m_day);
        performed.order = sets.nextOrder(member.id, m_day);
        if (current.planned) {
            performed.load = current.planned->load;
            set.planned = current.planned->id;
        }
    }
    const auto setAmount = [&](int amount) {
        performed.reps.reset();
        switch (place.exercise->amount) {
        case AmountKind::Reps:
            performed.reps = amount;
            break;
        case AmountKind::Seconds:
            performed.secondsTenths = amount;
            break;
        case AmountKind::Metres:
            performed.metresTenths = amount;
            break;
        }
    };
    if (entry.asPlanned) {
        if (!current.planned || !current.planned->amount) {
            return refuse(FaultCode::NeedsAmount);
        }
        // A plan confirmed by a key never proves itself: the reserve stays empty.
        setAmount(*current.planned->amount);
        performed.known = HowKnown::Accepted;
        performed.reserve.reset();
    } else {
        const bool isReps = place.exercise->amount == AmountKind::Reps;
        setAmount(isReps ? entry.reps : 10 * entry.reps); // seconds and metres keep tenths
        performed.known = HowKnown::Counted;
        performed.reserve = entry.reserve;
    }
    set.keyedAt = m_workspace.clock.now();
    set.keyedBy = m_initials;

    storage::Action action(m_workspace.logbook,
                           current.done ? storage::ActionKind::CorrectSet
                                        : storage::ActionKind::LogSet,
                           m_workspace.clock.now());
    if (current.done) {
        storage::SetStore::update(action, set);
    } else {
        set.meeting = meetingFor(action);
        storage::SetStore::add(action, set);
    }
    const storage::Change change = action.commit();
    m_cells[{member.id, set.exercise, set.side, place.number}].done = set;
    m_workspace.notifier.announce(change);
    return set;
}

void FloorSession::setLoad(std::size_t row, std::size_t column, Mass load)
{
    const FloorColumn& place = m_columns.at(column);
    const MemberId member = m_present.at(row).id;
    storage::Action action(
        m_workspace.logbook, storage::ActionKind::PlanMeeting, m_workspace.clock.now());
    for (auto& [key, cell] : m_cells) {
        const auto& [who, exercise, side, number] = key;
        const bool isHit = who == member && exercise == place.exercise->id && side == place.side &&
                           number >= place.number && cell.planned && !cell.done;
        if (isHit) {
            PlannedSet changed = *cell.planned;
            changed.load = load;
            storage::SetStore::updatePlanned(action, changed);
        }
    }
    const storage::Change change = action.commit();
    readCells();
    m_workspace.notifier.announce(change);
}

} // namespace levelbar::ui
