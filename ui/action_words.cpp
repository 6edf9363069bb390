// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/action_words.h"

#include <QCoreApplication>

#include <algorithm>
#include <array>
#include <utility>

namespace levelbar::ui {

namespace {

constexpr std::array kWords = {
    std::pair(storage::ActionKind::LogSet, QT_TRANSLATE_NOOP("ActionWords", "a logged set")),
    std::pair(storage::ActionKind::CorrectSet, QT_TRANSLATE_NOOP("ActionWords", "a corrected set")),
    std::pair(storage::ActionKind::MarkAttendance, QT_TRANSLATE_NOOP("ActionWords", "who came")),
    std::pair(storage::ActionKind::PlanMeeting, QT_TRANSLATE_NOOP("ActionWords", "a planned load")),
    std::pair(storage::ActionKind::EditTemplate,
              QT_TRANSLATE_NOOP("ActionWords", "the exercises of a class")),
    std::pair(storage::ActionKind::OpenMeeting, QT_TRANSLATE_NOOP("ActionWords", "a new class")),
    std::pair(storage::ActionKind::AddMember, QT_TRANSLATE_NOOP("ActionWords", "a new person")),
    std::pair(storage::ActionKind::EditMember,
              QT_TRANSLATE_NOOP("ActionWords", "a person's details")),
    std::pair(storage::ActionKind::EditGym, QT_TRANSLATE_NOOP("ActionWords", "what the gym owns")),
    std::pair(storage::ActionKind::EditClass,
              QT_TRANSLATE_NOOP("ActionWords", "a new class in the timetable")),
    std::pair(storage::ActionKind::EditSideReason,
              QT_TRANSLATE_NOOP("ActionWords", "a known reason for a side difference")),
    std::pair(storage::ActionKind::EditSideThreshold,
              QT_TRANSLATE_NOOP("ActionWords", "a threshold for side differences")),
    std::pair(storage::ActionKind::EditSidePrescription,
              QT_TRANSLATE_NOOP("ActionWords", "how a side difference is trained")),
    std::pair(storage::ActionKind::EditSurgery, QT_TRANSLATE_NOOP("ActionWords", "an operation")),
    std::pair(storage::ActionKind::EditGoal, QT_TRANSLATE_NOOP("ActionWords", "a goal")),
    std::pair(storage::ActionKind::EditRackRules,
              QT_TRANSLATE_NOOP("ActionWords", "who shares a rack with whom")),
    std::pair(storage::ActionKind::SettleReason,
              QT_TRANSLATE_NOOP("ActionWords", "what was said to a line of the day")),
    std::pair(storage::ActionKind::WriteFollowUp,
              QT_TRANSLATE_NOOP("ActionWords", "a new follow-up")),
    std::pair(storage::ActionKind::FinishFollowUp,
              QT_TRANSLATE_NOOP("ActionWords", "whether a follow-up is done")),
    std::pair(storage::ActionKind::EditStation,
              QT_TRANSLATE_NOOP("ActionWords", "racks and benches")),
    std::pair(storage::ActionKind::MarkGone,
              QT_TRANSLATE_NOOP("ActionWords", "what is gone today")),
    std::pair(storage::ActionKind::EditSetupCard,
              QT_TRANSLATE_NOOP("ActionWords", "a set-up card")),
    std::pair(storage::ActionKind::ReadScale,
              QT_TRANSLATE_NOOP("ActionWords", "a reading of the scale")),
    std::pair(storage::ActionKind::AddExercise, QT_TRANSLATE_NOOP("ActionWords", "a new exercise")),
    std::pair(storage::ActionKind::EditExercise,
              QT_TRANSLATE_NOOP("ActionWords", "a changed exercise")),
    std::pair(storage::ActionKind::HideExercise,
              QT_TRANSLATE_NOOP("ActionWords", "an exercise hidden or offered again")),
    std::pair(storage::ActionKind::EditLadder, QT_TRANSLATE_NOOP("ActionWords", "a ladder")),
    std::pair(storage::ActionKind::EditTimetable,
              QT_TRANSLATE_NOOP("ActionWords", "the timetable")),
    std::pair(storage::ActionKind::ChangeMeeting,
              QT_TRANSLATE_NOOP("ActionWords", "a change of one class meeting")),
    std::pair(storage::ActionKind::BookPlace, QT_TRANSLATE_NOOP("ActionWords", "a booking")),
    std::pair(storage::ActionKind::PlanWeek,
              QT_TRANSLATE_NOOP("ActionWords", "the plan of a week")),
    std::pair(storage::ActionKind::EditBlocks,
              QT_TRANSLATE_NOOP("ActionWords", "the blocks of a class")),
    std::pair(storage::ActionKind::WriteIncident,
              QT_TRANSLATE_NOOP("ActionWords", "an incident report")),
    std::pair(storage::ActionKind::RateSession,
              QT_TRANSLATE_NOOP("ActionWords", "a session rating")),
    std::pair(storage::ActionKind::EditEmergencyCard,
              QT_TRANSLATE_NOOP("ActionWords", "the emergency card")),
    std::pair(storage::ActionKind::PrintSheet,
              QT_TRANSLATE_NOOP("ActionWords", "a printed sheet's number")),
    std::pair(storage::ActionKind::CloseMeeting,
              QT_TRANSLATE_NOOP("ActionWords", "the end of a class")),
};

} // namespace

QString actionWords(storage::ActionKind kind)
{
    const auto* const known = std::find_if(
        kWords.begin(), kWords.end(), [&](const auto& words) { return words.first == kind; });
    const char* const text =
        known == kWords.end() ? QT_TRANSLATE_NOOP("ActionWords", "a change") : known->second;
    return QCoreApplication::translate("ActionWords", text);
}

} // namespace levelbar::ui
