// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/base/fault.h"
#include "ui/floor/floor_sheet.h"

#include <QLocale>
#include <QString>

// The class floor in words. Numbers are written as the locale writes them.
namespace levelbar::ui {

// The person's name, or the gym's id when there is none.
[[nodiscard]] QString personName(const FloorReference& reference, MemberId member);
[[nodiscard]] QString exerciseName(const FloorReference& reference, ExerciseId exercise);

// "62.5 kg", "135 lb".
[[nodiscard]] QString loadText(const Mass& load);

// What a set was or is to be, in full ("60 kg × 9", "20 s", "12 reps"); amounts that are not
// known are "?".
[[nodiscard]] QString plannedText(const PlannedSet& planned, const Exercise* exercise);
// In full: "60 kg × 9, 2 in reserve", "60 kg × 9 at RPE 8".
[[nodiscard]] QString doneText(const DoneSet& done, const Exercise* exercise, EffortScale effort);
// As short as a cell needs: "60 × 9 r2", "60 × 9 @8"; kilograms go without their unit.
[[nodiscard]] QString
doneCellText(const DoneSet& done, const Exercise* exercise, EffortScale effort);

// "Barbell bench press, set 2, left".
[[nodiscard]] QString placeText(const FloorReference& reference, const FloorColumn& column);
// "counted", "as planned", "whole group", "from a sheet".
[[nodiscard]] QString knownText(HowKnown known);
[[nodiscard]] QString sideText(Side side);
// The letter of a side: "L", "R", or nothing.
[[nodiscard]] QString sideLetter(Side side);

// Why a value was refused, as a sentence with its full stop.
[[nodiscard]] QString faultText(const Fault& fault);

} // namespace levelbar::ui
