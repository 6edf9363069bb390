// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/charts/chart_scale.h"

#include "core/base/mass.h"

#include <QCoreApplication>
#include <QLocale>

namespace levelbar::ui {

namespace {

QString scaleText(const char* text)
{
    return QCoreApplication::translate("ChartScale", text);
}

} // namespace

ChartScale::ChartScale(ChartUnit unit, BodyMassCourse masses)
    : m_unit(unit)
    , m_masses(std::move(masses))
{
    if (unit == ChartUnit::PerBodyMass && !m_masses.on(Day{})) {
        m_unit = ChartUnit::Kilograms;
    }
}

double ChartScale::factorOn(Day day) const
{
    switch (m_unit) {
    case ChartUnit::Kilograms:
        break;
    case ChartUnit::Pounds:
        return 1.0 / kKilogramsPerPound;
    case ChartUnit::PerBodyMass:
        return 1.0 / m_masses.on(day).value_or(1.0);
    }
    return 1.0;
}

QString ChartScale::number(double kilograms, Day day) const
{
    return QLocale().toString(of(kilograms, day), 'f', m_unit == ChartUnit::PerBodyMass ? 2 : 1);
}

QString ChartScale::text(double kilograms, Day day) const
{
    switch (m_unit) {
    case ChartUnit::Kilograms:
        break;
    case ChartUnit::Pounds:
        return scaleText("%1 lb").arg(number(kilograms, day));
    case ChartUnit::PerBodyMass:
        return scaleText("%1 × body mass").arg(number(kilograms, day));
    }
    return scaleText("%1 kg").arg(number(kilograms, day));
}

QString ChartScale::axisTitle() const
{
    switch (m_unit) {
    case ChartUnit::Kilograms:
        break;
    case ChartUnit::Pounds:
        return scaleText("1RM, lb");
    case ChartUnit::PerBodyMass:
        return scaleText("1RM / body mass");
    }
    return scaleText("1RM, kg");
}

} // namespace levelbar::ui
