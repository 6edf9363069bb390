// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/exercise/effort.h"
#include "core/exercise/exercise.h"
#include "ui/floor/floor_writer.h"

#include <QString>

namespace levelbar::ui {

// How a cell's text is to be read.
struct TypedMeaning {
    AmountKind kind = AmountKind::Reps;
    HowKnown known = HowKnown::Counted;
    EffortScale effort = EffortScale::Reserve;
};

// An amount; for reps also reps and reserve ("9.2"). With "p" or "/" behind it pain stopped the
// set ("6p"), with its score on the scale to 10 if known ("6p4").
[[nodiscard]] Result<KeyedSet> parseTypedSet(const QString& text, const TypedMeaning& meaning);

// amount: reps, or tenths of seconds or metres.
[[nodiscard]] KeyedSet keyedAmount(AmountKind kind, int amount);

// What the plan for left and right makes of a set: the limit that stopped it, an open pair.
[[nodiscard]] KeyedSet withSides(const FloorCell& cell, KeyedSet keyed);

} // namespace levelbar::ui
