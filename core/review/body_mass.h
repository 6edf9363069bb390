// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/review/history.h"
#include "core/trend/dated_values.h"

#include <optional>
#include <vector>

namespace levelbar {

// The key of the library's test of body mass.
inline constexpr std::string_view kBodyMassTest = "body-mass";

// A person's body mass through time: straight lines between weighings, the first and the last
// held outside; the mass at intake while nobody has weighed them.
class BodyMassCourse {
public:
    BodyMassCourse() = default;
    BodyMassCourse(const MemberHistory& history, const Library& library, Day asOf);

    // Kilograms; nothing when none is known.
    [[nodiscard]] std::optional<double> on(Day day) const;

private:
    std::vector<DatedValue> m_weighings; // kg, by day
    std::optional<double> m_intake;
};

} // namespace levelbar
