// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/base/fault.h"
#include "core/base/mass.h"
#include "core/exercise/exercise.h"

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <string>
#include <vector>

namespace levelbar {

struct BarKind {
    std::string name; // "Bar", "Light bar"; may be empty
    Mass mass;
    int count = 1;

    friend bool operator==(const BarKind&, const BarKind&) = default;
};

// Plates of one mass. A bar takes them in pairs, so an odd one stays on the tree.
struct PlateKind {
    Mass mass;
    int count = 0; // single plates owned

    friend bool operator==(const PlateKind&, const PlateKind&) = default;
};

// Dumbbells or kettlebells of one mass.
struct HandWeight {
    Implement implement = Implement::Dumbbell; // or Kettlebell
    Mass mass;
    int count = 0; // single pieces owned

    friend bool operator==(const HandWeight&, const HandWeight&) = default;
};

// What this gym owns to lift. Kilograms and pounds may stand side by side.
struct Kit {
    std::vector<BarKind> bars; // the first is the usual one
    Mass collars;              // both of a bar together; 0 when nobody counts them
    std::vector<PlateKind> plates;
    std::vector<HandWeight> handWeights;
    Mass stackStep;         // between two pins of a machine or cable
    bool isAssumed = false; // nobody said what the gym owns

    friend bool operator==(const Kit&, const Kit&) = default;
};

inline constexpr int kMostKindsOfPlates = 24;
inline constexpr int kMostPieces = 999;

// What a gym usually has, as many pieces as needed. Kilograms: a 20 kg bar, plates from 25 to
// 1.25, dumbbells 1 to 10 by 1 and on to 40 by 2, kettlebells 4 to 32 by 4 (bar and plates: IPF
// technical rules). Pounds: a 45 lb bar, plates from 45 to 2.5, dumbbells 5 to 100 by 5,
// kettlebells 10 to 70 by 10. The rest is common practice, no source.
[[nodiscard]] Kit assumedKit(MassUnit unit = MassUnit::Kilogram);

// The kit unchanged when it can be used: at least one bar, every mass above 0, counts from 0 to
// 999, no mass twice, at most 24 kinds of plates. OutOfRange or RepeatedPiece otherwise.
[[nodiscard]] Result<Kit> checkKit(Kit kit);

// A mass in units of 10^-11 kg, in which thousandths of a kilogram and of a pound are both whole:
// sums of plates of both kinds compare exactly.
[[nodiscard]] constexpr std::int64_t exactWeight(const Mass& mass)
{
    constexpr std::int64_t kPerGram = 100'000'000;
    constexpr std::int64_t kPerThousandthPound = 45'359'237;
    return mass.thousandths() * (mass.unit() == MassUnit::Pound ? kPerThousandthPound : kPerGram);
}

// The nearest such unit; beyond 0 to 2000 kg the nearer end.
[[nodiscard]] inline std::int64_t exactWeight(double kilograms)
{
    return std::llround(std::clamp(kilograms, 0.0, 2000.0) * 1e11);
}

[[nodiscard]] constexpr double kilogramsOf(std::int64_t exact)
{
    return static_cast<double>(exact) / 1e11;
}

} // namespace levelbar
