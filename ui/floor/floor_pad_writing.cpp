// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
// What the pad reads from the logbook and writes to it.
#include "storage/setup_store.h"
#include "ui/floor/floor_pad.h"
#include "ui/floor/floor_words.h"
#include "ui/floor/load_steps.h"
#include "ui/floor/typed_set.h"
#include "ui/words.h"

#include <algorithm>

namespace levelbar::ui {

namespace {

const PadCell* plannedIn(const ClassFloor& hour, PlannedSetId id)
{
    const auto found = std::find_if(hour.cells.begin(), hour.cells.end(), [id](const auto& cell) {
        return cell.planned.id == id;
    });
    return found == hour.cells.end() ? nullptr : &*found;
}

KeyedSet keyedOf(const PerformedSet& performed)
{
    KeyedSet keyed;
    keyed.reps = performed.reps;
    keyed.secondsTenths = performed.secondsTenths;
    keyed.metresTenths = performed.metresTenths;
    keyed.reserve = performed.reserve;
    keyed.known = performed.known;
    keyed.kind = performed.kind;
    keyed.stopped = performed.stopped;
    keyed.pain = performed.pain;
    return keyed;
}

} // namespace

std::map<MemberId, storage::FloorSpot> FloorPad::storedSpots(const FloorSheet& sheet) const
{
    std::map<MemberId, storage::FloorSpot> spots;
    if (sheet.meeting) {
        const storage::SpotStore store(m_workspace.logbook);
        for (const storage::FloorSpot& spot : store.ofMeeting(sheet.meeting->id)) {
            spots.emplace(spot.said.member, spot);
        }
    }
    return spots;
}

std::vector<storage::FloorSpot> FloorPad::changedSpots() const
{
    std::vector<storage::FloorSpot> changed;
    for (const FloorPerson& who : pad().floor.people) {
        if (who.member.value <= 0) {
            continue; // somebody new, who is not in the logbook
        }
        const FloorPlace place = placeNow(pad().floor, who);
        const storage::FloorSpot spot{
            {who.member, who.minutesLate, who.leftMinute, who.leftWhy, who.easyAt},
            place.bib,
            place.rack,
            place.turn};
        const auto known = m_hour->stored.find(who.member);
        if (known == m_hour->stored.end() || !(known->second == spot)) {
            changed.push_back(spot);
        }
    }
    return changed;
}

// They only matter while people are shared out.
RackSettings FloorPad::settingsFor(const FloorSheet& sheet) const
{
    std::vector<MemberId> members;
    for (const FloorRow& row : sheet.rows) {
        if (m_racks < 2 || hasLifted(row)) {
            return {};
        }
        members.push_back(row.member);
    }
    return storage::SetupStore(m_workspace.logbook).settingsOf(members);
}

NewSet FloorPad::newSet(const PadCell& cell) const
{
    NewSet added;
    added.done = *cell.done;
    added.planned = cell.planned;
    const CellKey key = keyOf(cell.planned);
    const auto shown = m_model.cell(key);
    if (!shown) {
        return added;
    }
    if (shown->planned) {
        added.planned = *shown->planned;
    }
    const KeyedSet keyed = withSides(*shown, keyedOf(cell.done->performed));
    added.done.performed.kind = keyed.kind;
    added.done.performed.stopped = keyed.stopped;
    added.done.performed.pain = keyed.pain;
    // What is written on another day was not watched by the one who writes.
    const bool isToday = m_model.sheet().day == m_workspace.clock.today();
    if (!isToday && keyed.known == HowKnown::Counted) {
        added.done.performed.known = HowKnown::Sheet;
    }
    added.prescription = keyed.prescription;
    const CellSides& sides = shown->sides;
    if (sides.isFirst && (sides.isCapped || sides.isOpenPair)) {
        const auto other =
            m_model.cell({key.member, key.exercise, key.number, otherSide(key.side)});
        if (other && other->isOpen()) {
            added.sameLoad = other->planned;
        }
    }
    return added;
}

std::optional<NewcomerPlan> FloorPad::newcomerPlan(const ClassFloor& after,
                                                   const FloorPerson& who) const
{
    if (!m_model.sheet().meeting) {
        return std::nullopt;
    }
    const FloorPlace place = placeNow(after, who);
    NewcomerPlan plan;
    plan.meeting = m_model.sheet().meeting->id;
    plan.spot.bib = who.bib;
    plan.spot.rack = place.rack;
    plan.spot.turn = place.turn;
    for (const PadCell& cell : after.cells) {
        if (cell.planned.member == who.member) {
            plan.sets.push_back(cell.planned);
            plan.sets.back().meeting = plan.meeting;
        }
    }
    return plan;
}

// What is not planned any more as it was; nothing: nothing is to be stored of the cell.
std::optional<PlannedSet> FloorPad::replanned(const ClassFloor& before, const PadCell& cell) const
{
    const PadCell* was = plannedIn(before, cell.planned.id);
    if (was == nullptr || was->planned == cell.planned || !cell.isOpen()) {
        return std::nullopt;
    }
    // What left and right made of the amount is not the plan's.
    PlannedSet planned = cell.planned;
    const auto stored = m_model.cell(keyOf(was->planned));
    if (stored && stored->planned && was->planned.amount == planned.amount) {
        planned.amount = stored->planned->amount;
    }
    return planned;
}

// Pain said since: what stands beside no set is a thing to follow up, or it would be lost.
void FloorPad::addPains(const FloorPerson& who, std::size_t known, FloorBatch& batch) const
{
    const auto isOf = [&who](const DoneSet& set, const SaidPain& pain) {
        return set.member == who.member && set.painArea == pain.area;
    };
    for (std::size_t at = known; at < who.pains.size(); ++at) {
        const SaidPain& pain = who.pains[at];
        const bool isWritten =
            std::any_of(batch.added.begin(),
                        batch.added.end(),
                        [&](const NewSet& set) { return isOf(set.done, pain); }) ||
            std::any_of(batch.corrected.begin(), batch.corrected.end(), [&](const DoneSet& set) {
                return isOf(set, pain);
            });
        if (isWritten || pain.score == 0) {
            continue;
        }
        const QString place = pain.side == Side::Both
                                  ? plain(pain.area)
                                  : tr("%1 %2").arg(plain(pain.area), sideText(pain.side));
        FollowUp followUp;
        followUp.text = tr("Pain %1 of 10, %2, before any set of it: leave it out until it was "
                           "looked at.")
                            .arg(pain.score)
                            .arg(place)
                            .toStdString();
        followUp.written = m_model.sheet().day;
        followUp.due = m_model.sheet().day;
        followUp.member = who.member;
        if (m_model.sheet().meeting) {
            followUp.meeting = m_model.sheet().meeting->id;
        }
        batch.followUps.push_back(std::move(followUp));
    }
}

void FloorPad::addPeople(const ClassFloor& before, const ClassFloor& after, FloorBatch& batch) const
{
    for (const FloorPerson& who : after.people) {
        const FloorPerson* was = person(before, who.member);
        if (was == nullptr && who.member.value < 0) {
            batch.newcomer = newcomerPlan(after, who);
            continue;
        }
        if (who.member.isStored()) {
            addPains(who, was == nullptr ? 0 : was->pains.size(), batch);
        }
        const bool isSaid = was == nullptr || was->minutesLate != who.minutesLate ||
                            was->leftMinute != who.leftMinute || was->leftWhy != who.leftWhy ||
                            was->easyAt != who.easyAt;
        if (isSaid && m_model.sheet().meeting) {
            batch.saidIn = m_model.sheet().meeting->id;
        }
    }
}

FloorBatch FloorPad::batchOf(const ClassFloor& before, const ClassFloor& after) const
{
    FloorBatch batch;
    for (const PadCell& cell : after.cells) {
        if (cell.done) {
            const PadCell* was = padCellOf(before, keyOf(cell.planned));
            if (was == nullptr || !was->done) {
                batch.added.push_back(newSet(cell));
            } else if (!(*was->done == *cell.done)) {
                batch.corrected.push_back(*cell.done);
            }
        } else if (const auto planned = replanned(before, cell)) {
            batch.replanned.push_back(*planned);
        }
    }
    addPeople(before, after, batch);
    return batch;
}

std::optional<QString> FloorPad::reasonAgainst(const FloorBatch& batch) const
{
    if (!batch.added.empty() && m_model.sheet().day > m_workspace.clock.today()) {
        return tr("This day is still to come: only plans can be laid for it.");
    }
    for (const NewSet& added : batch.added) {
        const Exercise* exercise = m_model.reference().library.exercise(added.planned.exercise);
        if (lacksLoad(added.planned, exercise)) {
            return tr("%1 is new to this and has no load yet: + gives the lightest there is.")
                .arg(personName(m_model.reference(), added.planned.member));
        }
    }
    return std::nullopt;
}

} // namespace levelbar::ui
