// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/review/body_mass.h"

#include <algorithm>

namespace levelbar {

BodyMassCourse::BodyMassCourse(const MemberHistory& history, const Library& library, Day asOf)
{
    if (history.member.intakeMass && history.member.intakeMass->kilograms() > 0.0) {
        m_intake = history.member.intakeMass->kilograms();
    }
    for (const TrialSeries& series : history.trials) {
        const TestKind* test = library.test(series.test);
        if (test != nullptr && test->key == kBodyMassTest) {
            m_weighings = resultsOf(series.trials, test->direction, asOf);
            std::erase_if(m_weighings, [](const DatedValue& v) { return !(v.value > 0.0); });
        }
    }
}

std::optional<double> BodyMassCourse::on(Day day) const
{
    if (m_weighings.empty()) {
        return m_intake;
    }
    const auto after = std::lower_bound(
        m_weighings.begin(), m_weighings.end(), day, [](const DatedValue& weighing, Day d) {
            return weighing.day < d;
        });
    if (after == m_weighings.begin()) {
        return after->value;
    }
    if (after == m_weighings.end()) {
        return m_weighings.back().value;
    }
    const DatedValue& before = *(after - 1);
    const double share = static_cast<double>(day - before.day) / (after->day - before.day);
    return before.value + share * (after->value - before.value);
}

} // namespace levelbar
