// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "storage/exchange/import_context.h"

#include "core/member/member.h"
#include "storage/case_folding.h"
#include "storage/library_store.h"
#include "storage/member_store.h"
#include "storage/row_binder.h"

namespace levelbar::storage {

namespace {

constexpr int kLongestName = 100;

Sidedness sidednessOf(const std::set<Side>& sides)
{
    const bool hasBoth = sides.contains(Side::Both);
    const bool hasOne = sides.contains(Side::Left) || sides.contains(Side::Right);
    if (hasBoth && hasOne) {
        return Sidedness::Either;
    }
    return hasOne ? Sidedness::SingleSided : Sidedness::TwoSided;
}

} // namespace

ImportContext::ImportContext(WriteScope& scope, const ImportRequest& request, ImportReport& report)
    : m_scope(scope)
    , m_request(request)
    , m_report(report)
    , m_insertCame(scope.logbook().database(),
                   "INSERT INTO attendance (meeting, member, came, import) VALUES (?, ?, 1, ?) "
                   "ON CONFLICT (meeting, member) DO UPDATE SET came = 1 WHERE came IS NULL")
{
    for (const Member& known : MemberStore(scope.logbook()).all(true)) {
        m_members.emplace(known.code, known.id);
    }
    const Library library = LibraryStore(scope.logbook()).all();
    for (const Exercise& known : library.exercises) {
        m_exercisesByFolded.emplace(foldCase(known.name), known);
    }
    for (const TestKind& known : library.tests) {
        m_testsByFolded.emplace(foldCase(known.name), known);
    }
    const ClassStore classes(scope.logbook());
    for (const GroupClass& known : classes.all(true)) {
        m_classes.emplace(known.name, known.id);
        for (const Meeting& meeting : classes.meetingsOf(known.id)) { // the latest comes first
            std::vector<Meeting>& ofDay = m_meetings[{known.id, meeting.day}];
            ofDay.insert(ofDay.begin(), meeting);
        }
    }
}

std::optional<MemberId> ImportContext::member(std::string_view code) const
{
    const auto found = m_members.find(code);
    return found == m_members.end() ? std::nullopt : std::optional(found->second);
}

void ImportContext::addMember(const std::string& code, MemberId id)
{
    m_members.emplace(code, id);
}

const Exercise* ImportContext::findExercise(std::string_view name)
{
    const auto spelled = m_exercisesByText.find(name);
    if (spelled != m_exercisesByText.end()) {
        return spelled->second;
    }
    const auto folded = m_exercisesByFolded.find(foldCase(name));
    if (folded == m_exercisesByFolded.end()) {
        return nullptr;
    }
    m_exercisesByText.emplace(std::string(name), &folded->second);
    return &folded->second;
}

Result<ExerciseId> ImportContext::exercise(std::string_view name, Side side, AmountKind amount)
{
    if (const Exercise* found = findExercise(name)) {
        noteSide(found->id, side);
        return found->id;
    }
    if (!m_request.addExercises || name.empty()) {
        return refuse(FaultCode::UnknownExercise, {excerpt(name)});
    }
    const auto checked = checkName(name, kLongestName);
    if (!checked) {
        return tl::unexpected(checked.error());
    }
    Exercise exercise;
    exercise.name = *checked;
    exercise.sidedness = sidednessOf({side});
    exercise.amount = amount;
    exercise.isShipped = false;
    exercise.id = LibraryStore::addExercise(m_scope, exercise);
    ++m_report.exercisesAdded;
    m_exercisesByFolded.emplace(foldCase(name), exercise);
    m_added[exercise.id] = {exercise, {side}};
    return exercise.id;
}

void ImportContext::noteSide(ExerciseId exercise, Side side)
{
    if (m_added.empty()) {
        return;
    }
    const auto added = m_added.find(exercise);
    if (added != m_added.end()) {
        added->second.sides.insert(side);
    }
}

void ImportContext::finishExercises()
{
    SQLite::Statement change(m_scope.logbook().database(),
                             "UPDATE exercise SET sidedness = ? WHERE id = ?");
    for (const auto& [id, added] : m_added) {
        Binder(change).add(sidednessOf(added.sides)).add(id);
        change.exec();
        change.reset();
    }
}

Result<const TestKind*> ImportContext::test(std::string_view name, Side side)
{
    const auto spelled = m_testsByText.find(name);
    if (spelled != m_testsByText.end()) {
        return spelled->second;
    }
    std::string folded = foldCase(name);
    auto found = m_testsByFolded.find(folded);
    const std::string prefix = foldCase(kOneRepMaxPrefix);
    if (found == m_testsByFolded.end() && folded.starts_with(prefix)) {
        const auto id = exercise(name.substr(kOneRepMaxPrefix.size()), side, AmountKind::Reps);
        if (!id) {
            return tl::unexpected(id.error());
        }
        const Exercise& lifted =
            m_exercisesByFolded.at(foldCase(name.substr(kOneRepMaxPrefix.size())));
        const TestId made = LibraryStore::oneRepMaxOf(m_scope, lifted);
        const Library library = LibraryStore(m_scope.logbook()).all();
        folded = foldCase(std::string(kOneRepMaxPrefix) + lifted.name);
        found = m_testsByFolded.emplace(folded, *library.test(made)).first;
    }
    if (found == m_testsByFolded.end()) {
        return refuse(FaultCode::UnknownTest, {excerpt(name)});
    }
    m_testsByText.emplace(std::string(name), &found->second);
    return &found->second;
}

ClassId ImportContext::groupClass(std::string_view name)
{
    const auto found = m_classes.find(name);
    if (found != m_classes.end()) {
        return found->second;
    }
    const ClassId id = ClassStore::add(m_scope, name);
    ++m_report.classesAdded;
    m_classes.emplace(std::string(name), id);
    return id;
}

MeetingId ImportContext::meeting(ClassId groupClass, Day day, std::optional<TimeOfDay> start)
{
    std::vector<Meeting>& known = m_meetings[{groupClass, day}];
    for (const Meeting& candidate : known) {
        if (!start || candidate.start == start) {
            return candidate.id;
        }
    }
    const MeetingId id = ClassStore::addMeeting(m_scope, groupClass, day, start);
    known.push_back({id, groupClass, day, start});
    return id;
}

std::span<const Meeting> ImportContext::meetingsOf(ClassId groupClass, Day day) const
{
    const auto known = m_meetings.find({groupClass, day});
    return known == m_meetings.end() ? std::span<const Meeting>() : known->second;
}

void ImportContext::noteCame(MeetingId meeting, MemberId member)
{
    // Rows of one person in one meeting mostly stand together.
    if (m_lastCame == std::pair(meeting, member) || !m_came.emplace(meeting, member).second) {
        return;
    }
    m_lastCame = {meeting, member};
    Binder(m_insertCame).add(meeting).add(member).add(m_scope.import());
    m_insertCame.exec();
    m_insertCame.reset();
}

} // namespace levelbar::storage
