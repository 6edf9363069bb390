// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/base/day.h"
#include "core/base/id.h"
#include "storage/logbook.h"

#include <memory>
#include <optional>
#include <string>
#include <vector>

namespace levelbar::storage {

// What an action did, as a code: the window has words for it. The numbers are stored; do not
// change them.
enum class ActionKind {
    LogSet = 1,
    CorrectSet = 2,
    MarkAttendance = 3,
    PlanMeeting = 4,
    EditTemplate = 5,
    OpenMeeting = 6,
    AddMember = 7,
    EditMember = 8,
    EditGym = 9,
    EditClass = 10,
    EditSideReason = 11,
    EditSideThreshold = 12,
    EditSidePrescription = 13,
    EditSurgery = 14,
    EditGoal = 15,
    EditRackRules = 16, // who must not share a rack, who can spot
    EditStation = 31,
    MarkGone = 32,
    EditSetupCard = 33,
    ReadScale = 34,
    AddExercise = 35,
    EditExercise = 36,
    HideExercise = 37,
    EditLadder = 38,
    SettleReason = 50,
    WriteFollowUp = 51,
    FinishFollowUp = 52,
    EditTimetable = 60, // weekly hours, terms, holidays
    ChangeMeeting = 61, // cancelled, moved, covered for, one more
    BookPlace = 62,
    PlanWeek = 63,
    EditBlocks = 64,
    WriteIncident = 65,
    RateSession = 66,
    EditEmergencyCard = 67,
    PrintSheet = 68,
    CloseMeeting = 69,
    TakeBack = 100, // reverses another action
};

// Which kinds of rows a commit touched.
struct Change {
    std::vector<MemberId> members; // sorted, each once
    bool touchesSets = false;
    bool touchesTrials = false;
    bool touchesRoster = false;  // persons, their classes
    bool touchesClasses = false; // classes, meetings, attendance, plans, templates
    bool touchesLibrary = false; // exercises, tests, what the gym owns
    bool touchesToday = false;   // follow-ups, and what was said to the lines of the day
};

// Proof that a transaction is open: every write function of the stores takes one. While it lives,
// repCurveOn answers as at its beginning, so that a class is planned by one curve and learns it
// once.
class WriteScope {
public:
    WriteScope(const WriteScope&) = delete;
    WriteScope& operator=(const WriteScope&) = delete;
    virtual ~WriteScope();

    [[nodiscard]] Logbook& logbook() const { return m_logbook; }

    // The import whose number added rows carry; nothing outside imports.
    [[nodiscard]] virtual std::optional<ImportId> import() const { return std::nullopt; }

protected:
    explicit WriteScope(Logbook& logbook);

private:
    Logbook& m_logbook;
};

// A named transaction that can be taken back, recorded with SQLite's session extension. Without
// commit() everything in it is undone by the destructor.
class Action : public WriteScope {
public:
    // ReadOnly when the logbook was opened for reading.
    Action(Logbook& logbook, ActionKind kind, Moment now);
    ~Action() override;

    // Makes it durable and takeable-back. An action that changed nothing leaves no trace.
    Change commit();

    // See takeBack below.
    static Change reverse(Logbook& logbook, ActionId action, Moment now);

private:
    struct Recording;
    std::unique_ptr<Recording> m_recording;
};

// One line of the history of actions.
struct ActionEntry {
    ActionId id;
    ActionKind kind = ActionKind::LogSet;
    Moment at;
    std::optional<ActionId> reverses;   // what it took back
    std::optional<ActionId> reversedBy; // what took it back
    bool canBeTakenBack = true;         // false when a migration has changed what it touches
    std::vector<MemberId> members;
};

// Newest first.
[[nodiscard]] std::vector<ActionEntry> recentActions(const Logbook& logbook, int most);

// The newest action that is neither a taking back nor taken back: what "take back" means now.
[[nodiscard]] std::optional<ActionId> lastTakeable(const Logbook& logbook);

// The newest taking back that was not itself reversed and after which nothing else was done:
// what "do again" means now.
[[nodiscard]] std::optional<ActionId> lastTakenBack(const Logbook& logbook);

// Applies the inverse as a new action that names the one it reverses. Constraint when later
// changes stand in the way or it was taken back already; nothing is changed then.
Change takeBack(Logbook& logbook, ActionId action, Moment now);

} // namespace levelbar::storage
