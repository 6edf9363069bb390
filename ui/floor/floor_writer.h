// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/plan/person_plan.h"
#include "storage/action.h"
#include "storage/spot_store.h"
#include "ui/floor/floor_batch.h"
#include "ui/floor/floor_sheet.h"
#include "ui/workspace.h"

#include <functional>
#include <optional>
#include <string>
#include <utility>
#include <vector>

namespace levelbar::ui {

// What was keyed for one set.
struct KeyedSet {
    std::optional<int> reps;
    std::optional<int> secondsTenths;
    std::optional<int> metresTenths;
    std::optional<Reserve> reserve;
    HowKnown known = HowKnown::Counted;
    SetKind kind = SetKind::Work;
    std::optional<StopReason> stopped;
    std::optional<int> pain; // 0 to 10
    // Begins or ends with this set: weaker side first.
    std::optional<SidePrescription> prescription;
};

// What a taking back undid, with the set it was about when it was about one.
struct TakenBack {
    storage::ActionKind kind = storage::ActionKind::LogSet;
    std::vector<MemberId> members;
    std::optional<DoneSet> undone;   // as it was keyed
    std::optional<DoneSet> restored; // as it is again; nothing when it is gone
};

// Everything the class floor writes. Each function is one action of the logbook, announced once
// it is durable; each throws StoreError and has then changed nothing.
class FloorWriter {
public:
    explicit FloorWriter(Workspace& workspace)
        : m_workspace(workspace)
    {
    }

    // Who keys, written beside every set.
    void setInitials(const std::string& initials) { m_initials = initials; }

    // Places that the logbook does not have yet: stored with every new set.
    void setSpotSource(std::function<std::vector<storage::FloorSpot>()> source)
    {
        m_spots = std::move(source);
    }

    ClassId addClass(const std::string& name);

    // Marks a person as come and lays their plan (see planFor); makes the meeting when there is
    // none yet.
    void markCame(const FloorSheet& sheet,
                  const FloorReference& reference,
                  MemberId member,
                  const SidePlans& sides = {});
    // Back to not known; takes away what was planned. Only for somebody without done sets.
    void unmark(const FloorSheet& sheet, MemberId member);

    // Keeps the template and, in a meeting that is open, plans for everyone here what is new and
    // takes away what is planned no more; done sets stay.
    void setTemplate(const FloorSheet& sheet,
                     const FloorReference& reference,
                     const std::vector<TemplateItem>& items,
                     const std::function<SidePlans(MemberId)>& sides = {});

    // The plan of a cell that has none yet.
    [[nodiscard]] PlannedSet
    suggestion(const FloorSheet& sheet, const FloorReference& reference, const CellKey& key) const;

    // Stores a set; a plan that is not stored yet is stored with it. `sameLoad`: an open planned
    // set, the other side's, that takes the load over.
    DoneSet log(const FloorSheet& sheet,
                const PlannedSet& planned,
                const KeyedSet& keyed,
                std::optional<PlannedSet> sameLoad = std::nullopt);
    DoneSet correct(const DoneSet& stored, const KeyedSet& keyed);
    DoneSet correctLoad(const DoneSet& stored, const Mass& load);

    // Gives planned sets of one meeting that are not done yet another load.
    void changeLoad(std::vector<PlannedSet> planned, const Mass& load, Day day);

    // All of it, or nothing. Somebody new, when there was one.
    std::optional<MemberId> write(const FloorBatch& batch, Day day);

    // Nothing when there is nothing to take back.
    std::optional<TakenBack> takeBackLast();

private:
    void finish(storage::Action& action);
    // Plans sets with what is expected of them; the id of the last.
    PlannedSetId planNow(storage::Action& action, std::vector<PlannedSet> sets, Day day) const;
    [[nodiscard]] DoneSet signedNow(DoneSet set) const;
    DoneSet replace(const DoneSet& set);
    void addSet(storage::Action& action, const NewSet& added, Day day);
    MemberId addNewcomer(storage::Action& action, const NewcomerPlan& newcomer, Day day);
    void putSpots(storage::Action& action, MeetingId meeting) const;
    static void
    putPrescription(storage::Action& action, MemberId member, const SidePrescription& prescription);

    Workspace& m_workspace;
    std::string m_initials;
    std::function<std::vector<storage::FloorSpot>()> m_spots;
};

} // namespace levelbar::ui
