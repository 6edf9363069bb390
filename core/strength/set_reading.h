// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/base/square.h"
#include "core/strength/strength_filter.h"

namespace levelbar {

// How one set, or one test, becomes an observation in reps; inside the strength model only.

// Whether the reps left are told, or surely none.
[[nodiscard]] bool isReserveKnown(const StrengthObservation& set);

// Reps that are left when so many are told.
[[nodiscard]] inline double trueReserve(double told, const StrengthParameters& parameters)
{
    return told > 0.0 ? told + parameters.reserveBias : 0.0;
}

// Earlier sets of the day as far as each tires more than the one before.
[[nodiscard]] double tiringSets(const StrengthObservation& set);

// The value that the set gives and the variance of its error on either side.
struct SetValue {
    double reps = 0.0;
    double lowVariance = 0.0;  // when more reps were seen than predicted
    double highVariance = 0.0; // when fewer
};

[[nodiscard]] SetValue
valueOf(const StrengthObservation& set, double predicted, const StrengthParameters& parameters);

// A set against what the point predicts, linearised there: one residual, its variance, and how
// many reps more each part of the state allows.
struct SetReading {
    double residual = 0.0; // reps seen beyond those predicted
    double variance = 1.0; // reps squared; of the set's own error, with its Student-t weight
    double perLevel = 0.0; // reps per unit of ln 1RM
    double perFactor = 0.0;
    double perShape = 0.0;
    double perFatigue = 0.0;
};

// Reads the sets of one day at one point. Sets of one load and side share most of the work.
class SetReader {
public:
    SetReader(const StrengthParameters& parameters, const StrengthPoint& point)
        : m_parameters(parameters)
        , m_point(point)
    {
    }

    [[nodiscard]] SetReading read(const StrengthObservation& set);

private:
    void readCurve(const StrengthObservation& set);

    const StrengthParameters& m_parameters;
    const StrengthPoint& m_point;
    bool m_hasCurve = false;
    bool m_isTest = false;
    double m_load = 0.0; // ln kg and side that the curve below was read for
    double m_side = 0.0;
    double m_logReps = 0.0;
    double m_repsBeyondFirst = 0.0;
    double m_repsPerFactor = 0.0;
    double m_repsPerLevel = 0.0;
};

// In the header, because it is the inner loop.
inline SetReading SetReader::read(const StrengthObservation& set)
{
    if (!m_hasCurve || set.logLoad != m_load || set.side != m_side ||
        (set.evidence == SetEvidence::Tested) != m_isTest) {
        readCurve(set);
    }
    const double tired = tiringSets(set);
    const double predicted = 1.0 + m_repsBeyondFirst - m_point.fatigue * tired;
    const SetValue value = valueOf(set, predicted, m_parameters);
    const double dayPart = m_point.day + set.side * m_point.sideDay;
    SetReading reading;
    // Linearised at day effect zero: at its smoothed value the rep-curve factor runs away,
    // because a large factor lets small days explain all scatter.
    reading.residual = value.reps - predicted - m_repsPerLevel * dayPart;
    const double variance = reading.residual > 0.0 ? value.lowVariance : value.highVariance;
    const double tail = m_parameters.setTail;
    // A Student-t error: the farther off, the less it counts.
    // A tested maximum is watched by everyone: no slips there.
    reading.variance = set.evidence == SetEvidence::Tested
                           ? variance
                           : variance * (tail + square(reading.residual) / variance) / (tail + 1.0);
    reading.perLevel = m_repsPerLevel;
    reading.perFactor = m_repsPerFactor;
    reading.perShape = m_repsPerFactor * m_logReps;
    reading.perFatigue = -tired;
    return reading;
}

} // namespace levelbar
