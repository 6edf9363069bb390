// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/plan/target.h"

#include "core/review/exercise_series.h"
#include "core/review/related_lift.h"
#include "core/strength/expected_reps.h"
#include "core/strength/set_reading.h"
#include "core/strength/side_offset.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <map>
#include <utility>

namespace levelbar {

namespace {

constexpr int kNewDays = 3;
// A piece so little above the load is taken for it: far less than the doubt.
constexpr double kSnapSlack = 1.01;
constexpr double kUncertainSpread = 0.06;
constexpr double kLowerThirty = 0.5244005127080409; // standard normal quantiles
constexpr double kLowerTen = 1.2815515655446004;
constexpr int kHardestRampReps = 3;
constexpr double kLeastRampStep = 0.1; // of the work load, else a step is not worth the plates

std::optional<Fault> faultOf(const TargetQuestion& question, const Exercise& exercise)
{
    if (question.reps < 1 || question.reps > kMostTargetReps) {
        return Fault{FaultCode::NotAWholeNumber,
                     {std::to_string(question.reps), "1", std::to_string(kMostTargetReps)}};
    }
    if (question.reserve.tenths < 0 || question.reserve.tenths > 10 * kMostTargetReserve) {
        return Fault{FaultCode::OutOfRange,
                     {text(question.reserve), "0", std::to_string(kMostTargetReserve)}};
    }
    if (exercise.load != LoadKind::External || exercise.amount != AmountKind::Reps) {
        return Fault{FaultCode::NotByLoad, {exercise.name}};
    }
    if (!question.side) {
        return std::nullopt;
    }
    const bool isBoth = *question.side == Side::Both;
    if ((exercise.sidedness == Sidedness::TwoSided && !isBoth) ||
        (exercise.sidedness == Sidedness::SingleSided && isBoth)) {
        return Fault{FaultCode::WrongSide,
                     {exercise.name,
                      isBoth ? "one side at a time" : "both sides at once",
                      std::string(sideWord(*question.side))}};
    }
    return std::nullopt;
}

// The person's series, with a place for every exercise asked for.
std::vector<ExerciseSeries> seriesWith(const MemberHistory& history,
                                       const Library& library,
                                       std::span<const TargetQuestion> questions)
{
    std::vector<ExerciseSeries> series = seriesOf(history, library);
    for (const TargetQuestion& question : questions) {
        const bool isThere =
            std::any_of(series.begin(), series.end(), [&question](const ExerciseSeries& s) {
                return s.exercise->id == question.exercise;
            });
        const Exercise* exercise = library.exercise(question.exercise);
        if (!isThere && exercise != nullptr) {
            ExerciseSeries empty;
            empty.exercise = exercise;
            series.push_back(empty);
        }
    }
    return series;
}

std::size_t placeOf(const StrengthQuestion& question,
                    const std::vector<ExerciseSeries>& series,
                    ExerciseId exercise)
{
    for (std::size_t j = 0; j < question.places.size(); ++j) {
        if (series[question.places[j]].exercise->id == exercise) {
            return j;
        }
    }
    return question.places.size();
}

Caution cautionOf(const ExerciseFit& fit, const Target& target, double spread, Day on)
{
    if (fit.isFromRelated) {
        return Caution::NeverDone;
    }
    if (on - target.strength.lastSet > kReturnDays) {
        return Caution::Returning;
    }
    if (static_cast<int>(fit.evidence.measuredDays.size()) < kNewDays) {
        return Caution::New;
    }
    return spread > kUncertainSpread ? Caution::Uncertain : Caution::None;
}

double cautiousQuantile(Caution caution)
{
    switch (caution) {
    case Caution::None:
        return 0.0;
    case Caution::NeverDone:
        return kLowerTen;
    case Caution::New:
    case Caution::Returning:
    case Caution::Uncertain:
        break;
    }
    return kLowerThirty;
}

// The load that allows the aim, with its doubt.
void sizeLoad(Target& target, const ExerciseFit& fit, Day on)
{
    // A reserve is asked for as people tell it, so as to be met by what they tell.
    const double total = target.reps + trueReserve(target.reserve.reps(), StrengthParameters());
    const LoadForReps load = loadForReps(fit.fit, total, sideOffset(target.side));
    const double spread = kTargetSpreadScale * std::sqrt(std::max(load.variance, 1e-12));
    target.load = {std::exp(load.logLoad),
                   std::exp(load.logLoad - kNormalQuantile * spread),
                   std::exp(load.logLoad + kNormalQuantile * spread),
                   kLevel,
                   fit.evidence.measured};
    target.percentOfMaximum = 100.0 * target.load.value / target.strength.oneRepMax.value;
    target.caution = cautionOf(fit, target, spread, on);
    target.aimKilograms = std::exp(load.logLoad - cautiousQuantile(target.caution) * spread);
}

std::vector<WarmUpSet> rampTo(double workKilograms, const AvailableLoads& loads, int workReps)
{
    constexpr std::array<std::pair<double, int>, 4> kSteps = {
        {{0.50, 10}, {0.70, 5}, {0.80, 3}, {0.90, 1}}};
    // Where the work set itself is long, the short heavy steps are not needed.
    const std::size_t count = workReps > 10 ? 1 : (workReps > kHardestRampReps ? 2 : 4);
    std::vector<WarmUpSet> ramp;
    for (std::size_t step = 0; step < count; ++step) {
        auto load = loads.atMost(kSteps[step].first * workKilograms);
        if (!load && ramp.empty()) {
            load = loads.lightest();
        }
        const double from = ramp.empty() ? 0.0 : ramp.back().load.kilograms();
        const bool isNew = load && load->kilograms() < workKilograms &&
                           load->kilograms() - from >= kLeastRampStep * workKilograms;
        if (isNew) {
            ramp.push_back({*load, kSteps[step].second});
        }
    }
    return ramp;
}

bool isLower(Pattern pattern)
{
    return pattern == Pattern::Squat || pattern == Pattern::Hinge || pattern == Pattern::SingleLeg;
}

// Where nobody said what the gym owns: the usual kit in the unit this person's loads were typed
// in last, and the dumbbells and kettlebells they have been seen with.
Kit kitFor(const Kit& kit, const ExerciseSeries& series)
{
    if (!kit.isAssumed) {
        return kit;
    }
    const Exercise& exercise = *series.exercise;
    Day newest;
    MassUnit unit = MassUnit::Kilogram;
    std::map<std::int64_t, Mass> seen;
    for (const auto& sets : series.sets) {
        for (const PerformedSet& set : sets) {
            if (set.load.thousandths() > 0) {
                seen.emplace(exactWeight(set.load), set.load);
            }
        }
        if (!sets.empty() && sets.back().day >= newest) {
            newest = sets.back().day;
            unit = sets.back().load.unit();
        }
    }
    Kit usual = assumedKit(unit);
    for (const HandWeight& piece : usual.handWeights) {
        if (piece.implement == exercise.implement) {
            seen.erase(exactWeight(piece.mass));
        }
    }
    for (const auto& [exact, mass] : seen) {
        usual.handWeights.push_back({exercise.implement, mass, kMostPieces});
    }
    return usual;
}

// The side that decides: the one asked for, both at once, or the weaker one.
Side sideOf(const TargetQuestion& question, const Exercise& exercise, const StrengthFit& fit)
{
    if (question.side) {
        return *question.side;
    }
    if (exercise.sidedness == Sidedness::SingleSided) {
        return fit.difference >= 0.0 ? Side::Left : Side::Right;
    }
    return Side::Both;
}

void chooseLoad(Target& target,
                const TargetQuestion& question,
                const Exercise& exercise,
                const Kit& kit,
                const ExerciseSeries& series,
                const Member& member)
{
    const AvailableLoads loads(kitFor(kit, series), exercise);
    ProgressionQuestion progression;
    progression.sets = series.sets[static_cast<std::size_t>(target.side)];
    progression.today = question.on;
    progression.goal = {target.reps, target.reserve.reps()};
    progression.loadKilograms = target.load.value;
    progression.mostKilograms = target.load.high;
    const double slack = target.caution == Caution::None ? kSnapSlack : 1.0;
    progression.allowed = loads.atMost(slack * target.aimKilograms);
    progression.isLowerBody = isLower(exercise.pattern);
    progression.experience = member.experience;
    target.progression = decideLoad(progression, loads);
    if (target.progression.load) {
        target.ramp = rampTo(target.progression.load->kilograms(), loads, target.reps);
    } else {
        target.lightest = loads.lightest();
    }
}

// All of one person's exercises, fitted as of one day. An exercise without evidence tells the
// others nothing, so that any number of questions may share a fit.
class PersonFit {
public:
    PersonFit(const MemberHistory& history,
              const Library& library,
              std::span<const TargetQuestion> questions,
              Day on)
        : m_history(history)
        , m_library(library)
        , m_on(on)
        , m_series(seriesWith(history, library, questions))
        , m_asked(strengthQuestion(m_series))
    {
        for (std::size_t j = 0; j < m_asked.places.size(); ++j) {
            const ExerciseSeries& own = m_series[m_asked.places[j]];
            if (!own.has(Side::Both) && !own.has(Side::Left) && !own.has(Side::Right)) {
                m_asked.exercises[j].related =
                    relatedLift(*own.exercise, library, m_series, m_asked);
            }
        }
        m_fits = fitMember(m_asked.exercises, history.prior(), on);
    }

    [[nodiscard]] Day on() const { return m_on; }

    [[nodiscard]] Result<Target> target(const Kit& kit, const TargetQuestion& question) const
    {
        const Exercise* exercise = m_library.exercise(question.exercise);
        if (exercise == nullptr) {
            return refuse(FaultCode::UnknownExercise, {std::to_string(question.exercise.value)});
        }
        if (const auto fault = faultOf(question, *exercise)) {
            return tl::unexpected(*fault);
        }
        const std::size_t place = placeOf(m_asked, m_series, exercise->id);
        if (!m_fits[place]) {
            return refuse(FaultCode::NothingKnown, {m_history.member.code, exercise->name});
        }
        const ExerciseFit& fit = *m_fits[place];
        Target target;
        target.exercise = exercise->id;
        target.side = sideOf(question, *exercise, fit.fit);
        target.reps = question.reps;
        target.reserve = question.reserve;
        target.isKitAssumed = kit.isAssumed;
        target.strength = strengthOf(fit, target.side, m_on);
        target.repsAtFourFifths = repsAtFourFifths(fit, m_history.curve);
        sizeLoad(target, fit, m_on);
        const ExerciseSeries& own = m_series[m_asked.places[place]];
        chooseLoad(target, question, *exercise, kit, own, m_history.member);
        if (target.lightest) {
            const double logLoad = std::log(target.lightest->kilograms());
            target.lightestReps = expectedReps(fit.fit, logLoad, sideOffset(target.side)).reps;
        }
        return target;
    }

    [[nodiscard]] std::optional<LastMove> lastMoveOf(ExerciseId exercise) const
    {
        const std::size_t place = placeOf(m_asked, m_series, exercise);
        return lastMove(m_asked.exercises, place, m_history.prior(), m_on);
    }

private:
    const MemberHistory& m_history;
    const Library& m_library;
    Day m_on;
    std::vector<ExerciseSeries> m_series;
    StrengthQuestion m_asked;
    std::vector<std::optional<ExerciseFit>> m_fits;
};

} // namespace

Result<Target> targetFor(const MemberHistory& history,
                         const Library& library,
                         const Kit& kit,
                         const TargetQuestion& question)
{
    const PersonFit fit(history, library, {&question, 1}, question.on);
    Result<Target> target = fit.target(kit, question);
    if (target) {
        target->lastMove = fit.lastMoveOf(question.exercise);
    }
    return target;
}

std::vector<Result<Target>> targetsFor(const MemberHistory& history,
                                       const Library& library,
                                       const Kit& kit,
                                       std::span<const TargetQuestion> questions)
{
    std::vector<Result<Target>> targets;
    targets.reserve(questions.size());
    std::optional<PersonFit> fit;
    for (const TargetQuestion& question : questions) {
        if (!fit || fit->on() != question.on) {
            fit.emplace(history, library, questions, question.on);
        }
        targets.push_back(fit->target(kit, question));
    }
    return targets;
}

} // namespace levelbar
