// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/review/member_sides_figure.h"

#include "core/base/number.h"
#include "core/sides/side_pairs.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <map>
#include <numbers>

namespace levelbar {

namespace {

const SideModel& modelOf(const Review& review, const Measure& measure)
{
    static const SideModel kUsual;
    const auto found = std::find_if(review.sideModels.begin(),
                                    review.sideModels.end(),
                                    [&](const auto& model) { return model.measure == measure; });
    return found == review.sideModels.end() ? kUsual : *found;
}

// Test values by day: the best valid one.
std::map<Day, double> bestByDay(std::span<const Trial> trials, Direction direction, Day asOf)
{
    std::map<Day, double> best;
    for (const Trial& trial : trials) {
        if (!trial.isValid || trial.day > asOf || trial.value() <= 0.0) {
            continue;
        }
        const auto [at, isFirst] = best.emplace(trial.day, trial.value());
        const bool isBetter = direction == Direction::LessIsBetter ? trial.value() < at->second
                                                                   : trial.value() > at->second;
        if (!isFirst && isBetter) {
            at->second = trial.value();
        }
    }
    return best;
}

std::vector<BandPoint>
valueBand(const std::map<Day, double>& values, const SideNoise& pairNoise, Day asOf)
{
    SideSeries series;
    for (const auto& [day, value] : values) {
        series.pairs.push_back({day, 100.0 * std::log(value), false, {}});
    }
    SideNoise noise = pairNoise;
    noise.spread /= std::numbers::sqrt2;
    std::vector<BandPoint> band;
    const auto add = [&](Day day) {
        if (const auto look = lookAt(series, day, noise)) {
            const double reach = kNormalQuantile * std::sqrt(look->variance);
            band.push_back({day,
                            std::exp(look->mean / 100.0),
                            std::exp((look->mean - reach) / 100.0),
                            std::exp((look->mean + reach) / 100.0)});
        }
    };
    for (const SidePair& pair : series.pairs) {
        add(pair.day);
    }
    if (!series.pairs.empty() && series.pairs.back().day < asOf) {
        add(asOf);
    }
    return band;
}

void addDots(MemberSidesFigure& figure, Side side, const StrengthFigure& strength)
{
    for (const StrengthDot& dot : strength.dots) {
        figure.dots.push_back({side, dot});
    }
}

void addDots(MemberSidesFigure& figure, Side side, const std::map<Day, double>& values)
{
    for (const auto& [day, value] : values) {
        figure.dots.push_back({side, {day, value, HowKnown::Counted, true, false, std::nullopt}});
    }
}

// Pairs of tests, with the values they come from.
void addTestPairs(MemberSidesFigure& figure,
                  std::span<const Trial> left,
                  std::span<const Trial> right,
                  Direction direction,
                  Day asOf)
{
    const auto lefts = bestByDay(left, direction, asOf);
    const auto rights = bestByDay(right, direction, asOf);
    for (const SidePair& pair : pairsFromTrials(left, right, direction)) {
        if (pair.day <= asOf) {
            figure.pairs.push_back({pair.day,
                                    percentOf(pair.logPercent),
                                    PairKind::Test,
                                    std::nullopt,
                                    std::nullopt,
                                    lefts.at(pair.day),
                                    rights.at(pair.day)});
        }
    }
}

std::span<const PerformedSet> setsOn(std::span<const PerformedSet> sets, Day day)
{
    const auto first = std::partition_point(
        sets.begin(), sets.end(), [day](const PerformedSet& set) { return set.day < day; });
    const auto last = std::partition_point(
        first, sets.end(), [day](const PerformedSet& set) { return set.day == day; });
    return {first, last};
}

// The first sets of that day which can be compared.
void nameSets(PairDot& pair, const ExerciseSeries& series, const StrengthFit* fit)
{
    for (const PerformedSet& left : setsOn(series.sets[kLeftPlace], pair.day)) {
        for (const PerformedSet& right : setsOn(series.sets[kRightPlace], pair.day)) {
            const bool isPair =
                left.number == right.number && !pairsFromSets({&left, 1}, {&right, 1}, fit).empty();
            if (isPair) {
                pair.left = left;
                pair.right = right;
                return;
            }
        }
    }
}

void addSetPairs(MemberSidesFigure& figure,
                 const ExerciseSeries& series,
                 const StrengthFit* fit,
                 Day asOf)
{
    const std::size_t tests = figure.pairs.size();
    for (const SidePair& pair :
         pairsFromSets(series.sets[kLeftPlace], series.sets[kRightPlace], fit)) {
        const bool isTested =
            std::any_of(figure.pairs.begin(),
                        figure.pairs.begin() + static_cast<std::ptrdiff_t>(tests),
                        [&](const PairDot& other) { return other.day == pair.day; });
        if (pair.day > asOf || isTested) {
            continue;
        }
        PairDot dot;
        dot.day = pair.day;
        dot.percent = percentOf(pair.logPercent);
        dot.kind = pair.isOpen ? PairKind::Open : PairKind::Sets;
        nameSets(dot, series, fit);
        figure.pairs.push_back(dot);
    }
}

void fillFromExercise(MemberSidesFigure& figure,
                      const MemberHistory& history,
                      const Library& library,
                      ExerciseId exercise,
                      Day asOf)
{
    figure.unit = "kg";
    const auto all = seriesOf(history, library);
    const auto series = std::find_if(
        all.begin(), all.end(), [&](const auto& each) { return each.exercise->id == exercise; });
    if (series == all.end()) {
        return;
    }
    const auto fitted = fittedExercise(history, library, exercise, asOf);
    if (fitted) {
        const StrengthFigure left = strengthFigure(*fitted, Side::Left, asOf);
        const StrengthFigure right = strengthFigure(*fitted, Side::Right, asOf);
        figure.left = left.band;
        figure.right = right.band;
        addDots(figure, Side::Left, left);
        addDots(figure, Side::Right, right);
    }
    addTestPairs(
        figure, series->trials[kLeftPlace], series->trials[kRightPlace], series->direction, asOf);
    if (series->isStrength()) {
        addSetPairs(figure, *series, fitted ? &fitted->fit : nullptr, asOf);
    }
}

void fillFromTest(MemberSidesFigure& figure,
                  const MemberHistory& history,
                  const TestKind& test,
                  const SideNoise& noise,
                  Day asOf)
{
    figure.unit = test.unit;
    figure.isLessBetter = test.direction == Direction::LessIsBetter;
    const auto trialsOf = [&](Side side) {
        for (const TrialSeries& series : history.trials) {
            if (series.test == test.id && series.side == side) {
                return std::span<const Trial>(series.trials);
            }
        }
        return std::span<const Trial>();
    };
    const auto lefts = bestByDay(trialsOf(Side::Left), test.direction, asOf);
    const auto rights = bestByDay(trialsOf(Side::Right), test.direction, asOf);
    figure.left = valueBand(lefts, noise, asOf);
    figure.right = valueBand(rights, noise, asOf);
    addDots(figure, Side::Left, lefts);
    addDots(figure, Side::Right, rights);
    addTestPairs(figure, trialsOf(Side::Left), trialsOf(Side::Right), test.direction, asOf);
}

void addDifference(MemberSidesFigure& figure,
                   std::optional<Side> dominant,
                   const SideModel& model,
                   Day asOf)
{
    SideSeries series;
    series.dominant = dominant;
    for (const PairDot& pair : figure.pairs) {
        const double size = logPercentOf(std::abs(pair.percent));
        series.pairs.push_back({pair.day, pair.percent < 0.0 ? -size : size, false, {}});
    }
    const auto add = [&](Day day) {
        if (const auto look = lookAt(series, day, model.noise)) {
            const Estimate known = asPercent(
                posteriorOf(*look, model.prior, centreFor(model.prior, dominant)), look->days);
            figure.difference.push_back({day, known.value, known.low, known.high});
        }
    };
    for (const SidePair& pair : series.pairs) {
        add(pair.day);
    }
    if (!series.pairs.empty() && series.pairs.back().day < asOf) {
        add(asOf);
    }
}

std::string whole(double value)
{
    return fmt::format("{:.0f}", value);
}

std::string loadOf(const PerformedSet& set)
{
    return fmt::format("{} {}", set.load.number(), unitWord(set.load.unit()));
}

} // namespace

MemberSidesFigure memberSidesFigure(const MemberHistory& history,
                                    const Library& library,
                                    const Review& review,
                                    const SideReview& side)
{
    MemberSidesFigure figure;
    figure.review = side;
    const SideModel& model = modelOf(review, side.measure);
    const TestKind* test = side.measure.test ? library.test(*side.measure.test) : nullptr;
    if (side.measure.exercise) {
        fillFromExercise(figure, history, library, *side.measure.exercise, review.asOf);
    } else if (test != nullptr) {
        fillFromTest(figure, history, *test, model.noise, review.asOf);
    }
    std::stable_sort(figure.dots.begin(), figure.dots.end(), [](const auto& a, const auto& b) {
        return a.dot.day < b.dot.day;
    });
    std::stable_sort(figure.pairs.begin(), figure.pairs.end(), [](const auto& a, const auto& b) {
        return a.day < b.day;
    });
    addDifference(figure, history.member.dominantSide, model, review.asOf);
    return figure;
}

std::vector<Phrase> phrases(const PairDot& pair, const std::string& unit)
{
    const std::string percent = whole(std::abs(pair.percent));
    std::vector<Phrase> all;
    if (pair.kind == PairKind::Test) {
        all.push_back({"Tested: %1 and %2 %3, about %4 %.",
                       {decimalText(std::lround(pair.leftValue * 10.0), 1),
                        decimalText(std::lround(pair.rightValue * 10.0), 1),
                        unit,
                        percent}});
    } else if (pair.left && pair.right && pair.left->load == pair.right->load) {
        all.push_back({"%1 and %2 reps with %3: about %4 % in strength.",
                       {std::to_string(*pair.left->reps),
                        std::to_string(*pair.right->reps),
                        loadOf(*pair.left),
                        percent}});
    } else if (pair.left && pair.right) {
        all.push_back({"%1 × %2 and %3 × %4: about %5 % in strength.",
                       {loadOf(*pair.left),
                        std::to_string(*pair.left->reps),
                        loadOf(*pair.right),
                        std::to_string(*pair.right->reps),
                        percent}});
    } else {
        all.push_back({"About %1 % in strength.", {percent}});
    }
    if (percent == "0") {
        all.push_back({"No difference that day.", {}});
    } else {
        all.push_back(
            {pair.percent > 0.0 ? "Left weaker that day." : "Right weaker that day.", {}});
    }
    if (pair.kind == PairKind::Open) {
        all.push_back({"An open pair.", {}});
    }
    return all;
}

} // namespace levelbar
