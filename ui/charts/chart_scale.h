// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/review/body_mass.h"

#include <QString>

namespace levelbar::ui {

enum class ChartUnit { Kilograms, Pounds, PerBodyMass };

// How a chart counts loads: as they are, or per kilogram of the body mass of that day.
class ChartScale {
public:
    ChartScale() = default;

    // Without a known body mass, PerBodyMass is Kilograms.
    ChartScale(ChartUnit unit, BodyMassCourse masses);

    [[nodiscard]] ChartUnit unit() const { return m_unit; }

    // What a kilogram is on that day.
    [[nodiscard]] double factorOn(Day day) const;

    [[nodiscard]] double of(double kilograms, Day day) const { return kilograms * factorOn(day); }

    // "71.5 kg", "157.6 lb", "1.02 × body mass".
    [[nodiscard]] QString text(double kilograms, Day day) const;
    [[nodiscard]] QString number(double kilograms, Day day) const;
    [[nodiscard]] QString axisTitle() const;

private:
    ChartUnit m_unit = ChartUnit::Kilograms;
    BodyMassCourse m_masses;
};

} // namespace levelbar::ui
