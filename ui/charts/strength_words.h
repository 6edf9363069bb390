// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/exercise/effort.h"
#include "core/plan/strength_goal.h"
#include "ui/charts/chart_scale.h"

#include <QString>

#include <optional>

namespace levelbar::ui {

// What a strength chart shows at once.
struct StrengthView {
    StrengthCourse course;
    QString name;                        // "Barbell bench press"
    std::optional<StrengthCourse> other; // a second exercise beside it
    QString otherName;
    std::optional<StrengthGoal> goal;
    ChartScale scale;
    EffortScale effort = EffortScale::Reserve;
    Day asOf;
};

// "12 Nov 2026: 60 kg × 8, 2 in reserve, counted: speaks for 74.1 kg".
[[nodiscard]] QString dotWords(const StrengthDot& dot, const StrengthView& view);

// "7 Jan 2027, if it goes on so: about 73 kg, nine times in ten between 68 and 79 kg".
[[nodiscard]] QString forecastWords(const BandPoint& point, const StrengthView& view);

// For whoever cannot see it: what lies in the chart and where it leads.
[[nodiscard]] QString chartWords(const StrengthView& view);

} // namespace levelbar::ui
