// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/strength/member_strength.h"

#include <span>

namespace levelbar {

// Learns from everybody of a gym where its average person's rep curve lies, so that somebody of
// whom few sets are known starts from there and not from the published mean. Published curves
// differ by up to 4 % of 1RM at eight reps; one person's sets hardly tell which holds, a gym's do.
//
// Every exercise is fitted alone from the published curve. What a fit knows of factor and shape
// beyond its prior is an estimate of the gym's mean, with the spread between people as its error
// (normal random effects; Lindley and Smith 1972). Errors that all share, such as how the gym's
// people name their reserve, do not average out: a person counts as three tenths of one.
class RepCurveLearner {
public:
    // One person's exercises, as fitMember() takes them; `today` not before their last set.
    void add(std::span<const ExerciseHistory> exercises,
             std::optional<Experience> experience,
             Day today);

    // The published curve while nobody has taught anything.
    [[nodiscard]] RepCurveExpectation learnt() const;

private:
    // Precision matrix of (factor, shape) and its product with their mean, from what was added;
    // centred at the published curve.
    struct Information {
        double factor = 0.0;
        double cross = 0.0;
        double shape = 0.0;
        double towardsFactor = 0.0;
        double towardsShape = 0.0;
    };

    [[nodiscard]] static Information informationOf(const StrengthFit& fit,
                                                   const StrengthParameters& known);

    Information m_sum;
    int m_people = 0;
};

} // namespace levelbar
