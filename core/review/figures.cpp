// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/review/figures.h"

#include "core/strength/side_offset.h"

#include <algorithm>
#include <cmath>
#include <map>

namespace levelbar {

namespace {

bool isBoundOnly(const PerformedSet& set)
{
    const bool isKnown = set.known == HowKnown::Counted || set.known == HowKnown::Sheet;
    const bool isSized = set.reserve || set.stopped == StopReason::NoMore;
    return !isKnown || !isSized || set.isAtLeast || set.stopped == StopReason::Pain;
}

std::optional<StrengthDot> dotOf(const PerformedSet& set, const StrengthFit& fit)
{
    if (!set.reps || *set.reps < 1 || set.load.thousandths() <= 0 || set.kind == SetKind::Ramp) {
        return std::nullopt;
    }
    const double reserve = set.reserve ? set.reserve->reps() : 0.0;
    const double reps = std::clamp(*set.reps + reserve, 1.0, 40.0);
    const double share = loadForReps(fit, reps, 0.0).logLoad - fit.level;
    return StrengthDot{
        set.day, set.load.kilograms() / std::exp(share), set.known, false, isBoundOnly(set), set};
}

BandPoint bandPoint(const SmoothedStrength& past, double offset)
{
    const double centre = past.level + offset * past.difference;
    const double variance = past.levelVariance + offset * offset * past.differenceVariance +
                            2.0 * offset * past.levelDifferenceCovariance;
    const double reach = kNormalQuantile * std::sqrt(std::max(variance, 0.0));
    const Day day = dayOfWeeks(past.weeks);
    return {day, std::exp(centre), std::exp(centre - reach), std::exp(centre + reach)};
}

} // namespace

std::optional<FittedExercise>
fittedExercise(const MemberHistory& history, const Library& library, ExerciseId exercise, Day asOf)
{
    const std::vector<ExerciseSeries> all = seriesOf(history, library);
    const StrengthQuestion question = strengthQuestion(all);
    const auto place = std::find_if(question.places.begin(),
                                    question.places.end(),
                                    [&](std::size_t p) { return all[p].exercise->id == exercise; });
    if (place == question.places.end()) {
        return std::nullopt;
    }
    const auto fits = fitMember(question.exercises, history.prior(), asOf, {true, {}});
    const auto& fit = fits[static_cast<std::size_t>(place - question.places.begin())];
    if (!fit || fit->isFromRelated) {
        return std::nullopt;
    }
    return FittedExercise{all[*place], fit->fit};
}

StrengthFigure strengthFigure(
    const MemberHistory& history, const Library& library, ExerciseId exercise, Side side, Day asOf)
{
    const auto fitted = fittedExercise(history, library, exercise, asOf);
    return fitted ? strengthFigure(*fitted, side, asOf) : StrengthFigure{};
}

StrengthFigure strengthFigure(const FittedExercise& fitted, Side side, Day asOf)
{
    StrengthFigure figure;
    const ExerciseSeries& series = fitted.series;
    if (!series.has(side)) {
        return figure;
    }
    const auto at = static_cast<std::size_t>(side);
    for (const PerformedSet& set : series.sets[at]) {
        const auto dot = set.day <= asOf ? dotOf(set, fitted.fit) : std::nullopt;
        if (dot) {
            figure.dots.push_back(*dot);
        }
    }
    figure.dots.reserve(figure.dots.size() + series.maxima[at].size());
    for (const TestedMaximum& test : series.maxima[at]) {
        if (test.day <= asOf) {
            figure.dots.push_back(
                {test.day, test.kilograms, HowKnown::Counted, true, false, std::nullopt});
        }
    }
    std::stable_sort(figure.dots.begin(), figure.dots.end(), [](const auto& a, const auto& b) {
        return a.day < b.day;
    });
    figure.band.reserve(fitted.fit.path.size());
    for (const SmoothedStrength& past : fitted.fit.path) {
        figure.band.push_back(bandPoint(past, sideOffset(side)));
    }
    return figure;
}

std::optional<std::size_t> nearestDot(
    const StrengthFigure& figure, Day day, double kilograms, double daySpan, double kilogramSpan)
{
    std::optional<std::size_t> best;
    double least = 0.0;
    for (std::size_t i = 0; i < figure.dots.size(); ++i) {
        const double across = (figure.dots[i].day - day) / std::max(daySpan, 1e-9);
        const double up = (figure.dots[i].kilograms - kilograms) / std::max(kilogramSpan, 1e-9);
        const double distance = across * across + up * up;
        if (!best || distance < least) {
            best = i;
            least = distance;
        }
    }
    return best;
}

SidesFigure sidesFigure(const Review& review, const std::string& measure)
{
    SidesFigure figure;
    figure.measure = measure;
    for (const MemberReview& member : review.members) {
        for (const SideReview& side : member.sides) {
            if (side.measure.name == measure) {
                figure.thresholdPercent = side.thresholdPercent;
                figure.rows.push_back(
                    {member.member.id, member.member.code, member.member.name, side});
            }
        }
    }
    sortRows(figure, SidesOrder::ByDifference);
    return figure;
}

void sortRows(SidesFigure& figure, SidesOrder order)
{
    const auto isBefore = [order](const SidesRow& a, const SidesRow& b) {
        if (order == SidesOrder::ByDifference) {
            return a.side.differencePercent.value > b.side.differencePercent.value;
        }
        const bool isSeenTwice = a.side.days >= 2;
        return isSeenTwice != (b.side.days >= 2)
                   ? isSeenTwice
                   : a.side.probabilityBeyondFive > b.side.probabilityBeyondFive;
    };
    std::stable_sort(figure.rows.begin(), figure.rows.end(), isBefore);
}

std::vector<std::string> measuresOf(const Review& review)
{
    std::map<std::string, int> counts;
    for (const MemberReview& member : review.members) {
        for (const SideReview& side : member.sides) {
            ++counts[side.measure.name];
        }
    }
    std::vector<std::string> names;
    names.reserve(counts.size());
    for (const auto& [name, count] : counts) {
        names.push_back(name);
    }
    std::stable_sort(names.begin(), names.end(), [&](const auto& a, const auto& b) {
        return counts[a] > counts[b];
    });
    return names;
}

} // namespace levelbar
