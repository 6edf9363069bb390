// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/strength/equations.h"

#include <cmath>
#include <string>

namespace levelbar {

namespace {

// Coefficients from the papers named; those marked (m) were written down from memory and agree
// with the identities tested in tests/published/equations_test.cpp.
constexpr std::array<RepEquationFacts, kRepEquations.size()> kFacts = {{
    {"Epley", "W (1 + 0.033 r)", "Epley 1985, Boyd Epley Workout, Lincoln NE", 1, 10},
    {"Brzycki", "36 W / (37 - r)", "Brzycki 1993, JOPERD 64(1):88-90 (m)", 1, 10},
    {"Lander", "100 W / (101.3 - 2.67123 r)", "Lander 1985, NSCA J 6(6):60-61 (m)", 1, 10},
    {"Lombardi", "W r^0.10", "Lombardi 1989, Beginning Weight Training (m)", 1, 10},
    {"Mayhew",
     "100 W / (52.2 + 41.9 exp(-0.055 r))",
     "Mayhew 1992, J Appl Sport Sci Res 6:200-206 (m)",
     3,
     20},
    {"O'Connor", "W (1 + 0.025 r)", "O'Connor 1989, Weight Training Today (m)", 1, 12},
    {"Wathen",
     "100 W / (48.8 + 53.8 exp(-0.075 r))",
     "Wathen 1994, in Essentials of Strength Training, 1st ed. 435-446 (m)",
     1,
     15},
    {"Kemmler",
     "W (0.988 + 0.0104 r + 0.00190 r^2 - 0.0000584 r^3)",
     "Kemmler 2006, J Strength Cond Res 20:838-842",
     3,
     20},
    {"Desgorces",
     "100 W / (83.7677 exp(-0.0338 r) + 17.6846)",
     "Desgorces 2010, J Strength Cond Res 24:394-400",
     1,
     60},
    {"Reynolds, chest press",
     "W / (0.5551 exp(-0.0723 r) + 0.4847)",
     "Reynolds 2006, J Strength Cond Res 20:584-592 (m)",
     1,
     20},
}};

double evaluate(RepEquation equation, double load, double r)
{
    switch (equation) {
    case RepEquation::Epley:
        return load * (1.0 + 0.033 * r);
    case RepEquation::Brzycki:
        return 36.0 * load / (37.0 - r);
    case RepEquation::Lander:
        return 100.0 * load / (101.3 - 2.67123 * r);
    case RepEquation::Lombardi:
        return load * std::pow(r, 0.10);
    case RepEquation::Mayhew:
        return 100.0 * load / (52.2 + 41.9 * std::exp(-0.055 * r));
    case RepEquation::OConnor:
        return load * (1.0 + 0.025 * r);
    case RepEquation::Wathen:
        return 100.0 * load / (48.8 + 53.8 * std::exp(-0.075 * r));
    case RepEquation::Kemmler:
        return load * (0.988 + 0.0104 * r + 0.00190 * r * r - 0.0000584 * r * r * r);
    case RepEquation::Desgorces:
        return 100.0 * load / (83.7677 * std::exp(-0.0338 * r) + 17.6846);
    case RepEquation::ReynoldsChestPress:
        return load / (0.5551 * std::exp(-0.0723 * r) + 0.4847);
    }
    return load;
}

} // namespace

const RepEquationFacts& factsOf(RepEquation equation)
{
    return kFacts.at(static_cast<std::size_t>(equation));
}

Result<double> oneRepMax(RepEquation equation, double load, int reps)
{
    if (!(load > 0.0) || !std::isfinite(load)) {
        return refuse(FaultCode::OutOfRange, {std::to_string(load), "above 0", "1000"});
    }
    if (reps == 1) {
        return load;
    }
    const RepEquationFacts& facts = factsOf(equation);
    if (reps < facts.leastReps || reps > facts.mostReps) {
        const std::string range =
            std::to_string(facts.leastReps) + " to " + std::to_string(facts.mostReps) + " reps";
        return refuse(FaultCode::NotInDomain, {std::to_string(reps) + " reps", range});
    }
    return evaluate(equation, load, reps);
}

} // namespace levelbar
