// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/base/fault.h"

#include <array>
#include <string_view>

namespace levelbar {

// Published equations that read a one-rep max off one set to the end. Kept to compare with and
// for whoever asks; the estimate of strength.h does not use them.
enum class RepEquation {
    Epley,
    Brzycki,
    Lander,
    Lombardi,
    Mayhew,
    OConnor,
    Wathen,
    Kemmler,
    Desgorces,
    ReynoldsChestPress,
};

inline constexpr std::array kRepEquations = {RepEquation::Epley,
                                             RepEquation::Brzycki,
                                             RepEquation::Lander,
                                             RepEquation::Lombardi,
                                             RepEquation::Mayhew,
                                             RepEquation::OConnor,
                                             RepEquation::Wathen,
                                             RepEquation::Kemmler,
                                             RepEquation::Desgorces,
                                             RepEquation::ReynoldsChestPress};

struct RepEquationFacts {
    std::string_view name;
    std::string_view formula; // W load, r reps
    std::string_view source;
    int leastReps = 1; // the range it was made for
    int mostReps = 10;
};

[[nodiscard]] const RepEquationFacts& factsOf(RepEquation equation);

// One-rep max in the unit of the load. A completed single is its load, whatever the equation
// says. NotInDomain outside the equation's range of reps, so that no pole or negative value ever
// appears; OutOfRange for a load that is not above zero.
[[nodiscard]] Result<double> oneRepMax(RepEquation equation, double load, int reps);

} // namespace levelbar
