// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/exercise/exercise.h"
#include "core/gym/bar_loads.h"

#include <optional>
#include <vector>

namespace levelbar {

// A load that exists in the gym for an exercise.
struct AvailableLoad {
    Mass load;
    std::int64_t exact = 0;     // see exactWeight
    std::vector<Mass> eachSide; // a bar's plates, the innermost first; empty otherwise

    [[nodiscard]] double kilograms() const { return kilogramsOf(exact); }
};

// The loads that the gym has for one exercise. Barbell: the usual bar from its own mass up, a
// lighter bar only below that; bars of which there is none are passed over. Dumbbell and
// kettlebell: the pieces owned, two of a mass where both hands lift. Machine, cable and the rest:
// multiples of the kit's step, from one step.
class AvailableLoads {
public:
    AvailableLoads(const Kit& kit, const Exercise& exercise);

    [[nodiscard]] std::optional<AvailableLoad> atMost(double kilograms) const;
    [[nodiscard]] std::optional<AvailableLoad> above(const Mass& load) const;
    [[nodiscard]] std::optional<AvailableLoad> below(const Mass& load) const;
    [[nodiscard]] std::optional<AvailableLoad> exactly(const Mass& load) const;
    [[nodiscard]] std::optional<AvailableLoad> lightest() const;

private:
    void addBars(const Kit& kit);
    void addHandWeights(const Kit& kit, const Exercise& exercise);
    void addSteps(const Kit& kit);
    [[nodiscard]] std::vector<AvailableLoad>::const_iterator
    firstNotBelow(std::int64_t exact) const;

    std::vector<AvailableLoad> m_loads; // lightest first, each once
};

} // namespace levelbar
