// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cmath>
#include <cstdint>
#include <numbers>
#include <random>
#include <span>

namespace levelbar::tests {

// Numbers that are the same on every machine for a seed: the standard's generators are, its
// distributions are not.
class Random {
public:
    explicit Random(std::uint64_t seed)
        : m_engine(seed)
    {
    }

    // In [0, 1).
    double uniform() { return static_cast<double>(m_engine() >> 11U) * 0x1.0p-53; }

    double uniform(double low, double high) { return low + (high - low) * uniform(); }

    // 0 to count - 1.
    int below(int count) { return static_cast<int>(uniform() * count); }

    bool chance(double probability) { return uniform() < probability; }

    double normal() // Box and Muller 1958
    {
        const double radius = std::sqrt(-2.0 * std::log(1.0 - uniform()));
        return radius * std::cos(2.0 * std::numbers::pi * uniform());
    }

    double normal(double mean, double spread) { return mean + spread * normal(); }

    // Student's t with three degrees of freedom; standard deviation sqrt(3).
    double studentThree()
    {
        const double top = normal();
        double sum = 0.0;
        for (int i = 0; i < 3; ++i) {
            const double z = normal();
            sum += z * z;
        }
        return top / std::sqrt(sum / 3.0);
    }

    template <typename T> T pick(std::span<const T> values)
    {
        return values[static_cast<std::size_t>(below(static_cast<int>(values.size())))];
    }

private:
    std::mt19937_64 m_engine;
};

} // namespace levelbar::tests
