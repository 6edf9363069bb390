// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/bodyweight/push_up_capacity.h"

#include "core/base/square.h"
#include "core/bodyweight/out_of_range.h"
#include "core/strength/rep_curve.h"
#include "core/strength/set_reading.h"
#include "core/strength/strength.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace levelbar {

namespace {

constexpr int kMostReps = 60;
constexpr double kBenchSpread = 0.17;

double overBench(std::optional<Sex> sex)
{
    constexpr double kMen = 1.25;
    constexpr double kWomen = 1.4;
    if (!sex) {
        return std::sqrt(kMen * kWomen);
    }
    return *sex == Sex::Male ? kMen : kWomen;
}

// Scatter between sets to the end: Mitter 2022, 0.7 reps at 90 %, 1.1 at 70 %.
double setSpread(double reps)
{
    return 0.55 + 0.04 * std::max(reps, 1.0);
}

// How a named reserve errs: Hackett 2017, Refalo 2023. Nothing when it went to the end.
double reserveSpread(double reserve)
{
    if (reserve <= 0.0) {
        return 0.0;
    }
    return 0.73 + 0.13 * std::min(reserve, 5.0) + 0.35 * std::max(0.0, reserve - 5.0);
}

// What is not known, each as a number of its standard deviations.
enum Doubt {
    LeverOne, // level, with the slope as far as they move together
    LeverTwo, // the slope's own part
    KindThen,
    KindNow,
    Curve,
    RepsThen,
    LoadThen,
    DayNow,
    SetNow,
    Doubts,
};

using Deviations = std::array<double, Doubts>;

// Reps at a rung as a function of what is not known.
class Expectation {
public:
    Expectation(const PersonalLever& lever, const PushUpCapacity& then, const FormulaLoad& now)
        : m_then(then)
        , m_logRatio(std::log(now.repLoad()) - then.logLoad)
    {
        // The load then and now share the person's level: from push-ups it cancels.
        const double level = then.isPushUp ? 0.0 : 1.0;
        const double slope = then.isPushUp ? now.rise - then.rise : now.rise;
        m_logRatio +=
            level * lever.mean[PersonalLever::Level] + slope * lever.mean[PersonalLever::Slope];
        // Cholesky's square root of the covariance of level and slope.
        const auto& covariance = lever.covariance;
        const double root = std::sqrt(covariance[PersonalLever::Level][PersonalLever::Level]);
        const double shared = covariance[PersonalLever::Level][PersonalLever::Slope] / root;
        const double own = std::sqrt(
            std::max(0.0, covariance[PersonalLever::Slope][PersonalLever::Slope] - square(shared)));
        m_logSpreads[LeverOne] = level * root + slope * shared;
        m_logSpreads[LeverTwo] = slope * own;
    }

    void takeKinds(PushUpKind kindNow, double spreadNow)
    {
        const bool isShared = m_then.isPushUp && m_then.kind == kindNow;
        m_logSpreads[KindNow] = isShared ? spreadNow - m_then.kindSpread : spreadNow;
        m_logSpreads[KindThen] = isShared ? 0.0 : -m_then.kindSpread;
    }

    void takeDays(double dayNow)
    {
        m_logSpreads[LoadThen] = -m_then.logSpread;
        m_logSpreads[DayNow] = dayNow;
    }

    [[nodiscard]] double repsAt(const Deviations& deviations) const
    {
        double logRatio = m_logRatio;
        for (std::size_t i = 0; i < Doubts; ++i) {
            logRatio += deviations.at(i) * m_logSpreads.at(i);
        }
        const double curve = std::exp(m_then.logCurve + deviations[Curve] * m_then.logCurveSpread);
        const double repsThen =
            std::max(1.0, m_then.reps + deviations[RepsThen] * m_then.repsSpread);
        const double fractionThen = repFraction(1.0 + (repsThen - 1.0) / curve);
        const double average = repsAtFraction(fractionThen * std::exp(logRatio));
        const double reps = 1.0 + (average - 1.0) * curve;
        return std::max(0.0, reps + deviations[SetNow] * setSpread(reps));
    }

private:
    PushUpCapacity m_then;
    double m_logRatio = 0.0; // ln of the load now over then
    Deviations m_logSpreads{};
};

} // namespace

Result<PushUpCapacity> capacityFromPushUps(const Presser& presser, const PushUpsDone& done)
{
    if (done.pushUp.kind == PushUpKind::HandRelease) {
        return refuse(FaultCode::NotInDomain, {"hand-release push-up", "reps of the other kinds"});
    }
    const auto formula = formulaLoad(presser, done.pushUp);
    if (!formula) {
        return tl::unexpected(formula.error());
    }
    const double toTheEnd = done.reps + done.reserve.reps();
    if (done.reps < 1 || done.reserve < Reserve{} || toTheEnd > kMostReps) {
        return outOfRange(toTheEnd, 1, kMostReps, 1);
    }
    PushUpCapacity capacity;
    capacity.logLoad = std::log(formula->repLoad());
    capacity.rise = formula->rise;
    capacity.kind = done.pushUp.kind;
    capacity.kindSpread = formula->kindSpread;
    const StrengthParameters parameters;
    const double reserve = done.reserve.reps();
    capacity.reps = done.reps + trueReserve(reserve, parameters);
    capacity.repsSpread = std::hypot(setSpread(toTheEnd), reserveSpread(reserve));
    capacity.logSpread = parameters.daySpread;
    return capacity;
}

Result<PushUpCapacity> capacityFromBench(std::optional<Sex> sex, const Estimate& oneRepMax)
{
    constexpr double kMost = 1000.0;
    for (const double number : {oneRepMax.low, oneRepMax.value, oneRepMax.high}) {
        if (!(number > 0.0 && number <= kMost)) {
            return outOfRange(number, 0.0, kMost, 1);
        }
    }
    if (oneRepMax.value < oneRepMax.low || oneRepMax.value > oneRepMax.high) {
        return outOfRange(oneRepMax.value, oneRepMax.low, oneRepMax.high, 1);
    }
    const double spread = std::log(oneRepMax.high / oneRepMax.low) / (2.0 * kNormalQuantile);
    PushUpCapacity capacity;
    capacity.isPushUp = false;
    capacity.logLoad = std::log(oneRepMax.value * overBench(sex));
    capacity.logSpread = std::hypot(spread, kBenchSpread);
    return capacity;
}

Result<Estimate> expectedPushUps(const Presser& presser,
                                 const PersonalLever& lever,
                                 const PushUpCapacity& capacity,
                                 const PushUp& pushUp)
{
    const auto formula = formulaLoad(presser, pushUp);
    if (!formula) {
        return tl::unexpected(formula.error());
    }
    Expectation expectation(lever, capacity, *formula);
    expectation.takeKinds(pushUp.kind, formula->kindSpread);
    expectation.takeDays(StrengthParameters().daySpread);
    Estimate reps;
    reps.value = expectation.repsAt({});
    reps.count = 1 + lever.readings;
    double down = 0.0;
    double up = 0.0;
    for (std::size_t i = 0; i < Doubts; ++i) {
        Deviations deviations{};
        deviations.at(i) = kNormalQuantile;
        const double one = expectation.repsAt(deviations) - reps.value;
        deviations.at(i) = -kNormalQuantile;
        const double other = expectation.repsAt(deviations) - reps.value;
        down += square(std::min({0.0, one, other}));
        up += square(std::max({0.0, one, other}));
    }
    reps.low = std::max(0.0, reps.value - std::sqrt(down));
    reps.high = reps.value + std::sqrt(up);
    return reps;
}

} // namespace levelbar
