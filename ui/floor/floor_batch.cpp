// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/floor/floor_batch.h"

#include "storage/class_store.h"
#include "storage/member_store.h"
#include "storage/set_store.h"
#include "storage/spot_store.h"
#include "storage/today_store.h"
#include "ui/floor/floor_writer.h"

namespace levelbar::ui {

using storage::Action;
using storage::ActionKind;
using storage::SetStore;

namespace {

ActionKind kindOf(const FloorBatch& batch)
{
    if (batch.newcomer) {
        return ActionKind::AddMember;
    }
    if (!batch.added.empty()) {
        return ActionKind::LogSet;
    }
    if (!batch.corrected.empty()) {
        return ActionKind::CorrectSet;
    }
    if (!batch.replanned.empty()) {
        return ActionKind::PlanMeeting;
    }
    return batch.followUps.empty() ? ActionKind::MarkAttendance : ActionKind::WriteFollowUp;
}

} // namespace

void FloorWriter::addSet(Action& action, const NewSet& added, Day day)
{
    const SetStore sets(m_workspace.logbook);
    DoneSet set = signedNow(added.done);
    set.meeting = added.planned.meeting;
    set.planned =
        added.planned.id.isStored() ? added.planned.id : planNow(action, {added.planned}, day);
    set.performed.day = day;
    set.performed.number = sets.nextNumber(set.member, set.exercise, set.side, day);
    set.performed.order = sets.nextOrder(set.member, day);
    SetStore::add(action, set);
    if (added.sameLoad && !(added.sameLoad->load == set.performed.load)) {
        PlannedSet other = *added.sameLoad;
        other.load = set.performed.load;
        SetStore::updatePlanned(action, other);
    }
    if (added.prescription) {
        putPrescription(action, set.member, *added.prescription);
    }
}

void FloorWriter::putSpots(Action& action, MeetingId meeting) const
{
    if (m_spots && meeting.isStored()) {
        for (const storage::FloorSpot& spot : m_spots()) {
            storage::SpotStore::put(action, meeting, spot);
        }
    }
}

// A person of their own, with an id that says what they are until a name is agreed to.
MemberId FloorWriter::addNewcomer(Action& action, const NewcomerPlan& newcomer, Day day)
{
    const storage::MemberStore members(m_workspace.logbook);
    Member member;
    const std::string code =
        "Not screened " + isoText(day) + ", bib " + std::to_string(newcomer.spot.bib);
    member.code = code;
    for (int again = 2; members.find(member.code); ++again) {
        member.code = code + " (" + std::to_string(again) + ")";
    }
    member.experience = Experience::Novice;
    const MemberId id = storage::MemberStore::add(action, member);
    storage::ClassStore::setAttendance(action, newcomer.meeting, {id, false, true});
    storage::FloorSpot spot = newcomer.spot;
    spot.said.member = id;
    storage::SpotStore::put(action, newcomer.meeting, spot);
    std::vector<PlannedSet> sets = newcomer.sets;
    for (PlannedSet& set : sets) {
        set.member = id;
    }
    planNow(action, std::move(sets), day);
    return id;
}

std::optional<MemberId> FloorWriter::write(const FloorBatch& batch, Day day)
{
    std::optional<MemberId> newcomer;
    Action action(m_workspace.logbook, kindOf(batch), m_workspace.clock.now());
    for (const NewSet& added : batch.added) {
        addSet(action, added, day);
    }
    for (const DoneSet& set : batch.corrected) {
        SetStore::update(action, set);
    }
    for (const PlannedSet& set : batch.replanned) {
        if (set.id.isStored()) {
            SetStore::removePlanned(action, set.id);
        }
    }
    planNow(action, batch.replanned, day);
    if (batch.newcomer) {
        newcomer = addNewcomer(action, *batch.newcomer, day);
    }
    for (const FollowUp& followUp : batch.followUps) {
        storage::TodayStore::write(action, followUp);
    }
    if (batch.saidIn) {
        putSpots(action, *batch.saidIn);
    } else if (!batch.added.empty()) {
        putSpots(action, batch.added.front().planned.meeting);
    }
    finish(action);
    return newcomer;
}

} // namespace levelbar::ui
