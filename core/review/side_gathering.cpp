// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/review/side_gathering.h"

#include "core/exercise/pain.h"
#include "core/sides/side_pairs.h"

#include <algorithm>
#include <cmath>

namespace levelbar {

namespace {

// Right-handed people grip 5 % stronger with the right on average (Wang 2019, Laterality).
constexpr double kGripCentre = 5.0;
constexpr std::string_view kGripKey = "grip-strength";
constexpr std::string_view kGripArea = "wrist";

constexpr int kSlipDays = 120;       // as long as a pair counts
constexpr int kYear = 365;           // how far before an operation its reference may lie
constexpr std::size_t kBestDays = 3; // that make the reference, and the operated side's value

// Drops what lies after the day, so that an earlier review sees what was known then.
template <typename T> void cut(std::vector<T>& rows, Day asOf)
{
    rows.erase(
        std::find_if(rows.begin(), rows.end(), [asOf](const T& row) { return row.day > asOf; }),
        rows.end());
}

double meanOf(const std::vector<double>& values)
{
    double sum = 0.0;
    for (const double value : values) {
        sum += value / static_cast<double>(values.size());
    }
    return sum;
}

} // namespace

SideGathering::SideGathering(const Library& library, const ReviewSettings& settings, Day asOf)
    : m_library(library)
    , m_settings(settings)
    , m_asOf(asOf)
{
}

std::vector<std::string> SideGathering::areasOf(const Measure& measure) const
{
    if (measure.exercise) {
        const auto areas = m_settings.areas.find(*measure.exercise);
        return areas == m_settings.areas.end() ? std::vector<std::string>() : areas->second;
    }
    const TestKind* test = measure.test ? m_library.test(*measure.test) : nullptr;
    return test != nullptr && test->key == kGripKey ? std::vector{std::string(kGripArea)}
                                                    : std::vector<std::string>();
}

std::vector<PainDay> SideGathering::painsOf(const Person& person, const Measure& measure) const
{
    const std::vector<std::string> areas = areasOf(measure);
    std::vector<PainDay> pains;
    for (const ExerciseSeries& series : person.series) {
        const bool isOwn = measure.exercise == series.exercise->id;
        const auto stressed = m_settings.areas.find(series.exercise->id);
        std::string shared;
        if (!isOwn && stressed != m_settings.areas.end()) {
            const auto area = std::find_if(areas.begin(), areas.end(), [&](const auto& one) {
                return std::find(stressed->second.begin(), stressed->second.end(), one) !=
                       stressed->second.end();
            });
            shared = area == areas.end() ? std::string() : *area;
        }
        if (!isOwn && shared.empty()) {
            continue;
        }
        for (const auto& sets : series.sets) {
            for (const PerformedSet& set : sets) {
                if (hurts(set) && set.day <= m_asOf) {
                    pains.push_back({set.day, series.exercise->name, shared});
                }
            }
        }
    }
    // Of one day the measure's own pain stands last, where it is found first.
    std::stable_sort(pains.begin(), pains.end(), [](const PainDay& a, const PainDay& b) {
        return a.day != b.day ? a.day < b.day : !a.isOwn() && b.isOwn();
    });
    return pains;
}

std::optional<Baseline> SideGathering::baselineOf(const Person& person, const Found& found) const
{
    const std::vector<std::string> areas = areasOf(found.measure);
    const Surgery* last = nullptr;
    for (const Surgery& surgery : person.records.surgeries) {
        const bool isOfThis =
            surgery.measure ? *surgery.measure == found.measure.key()
                            : std::find(areas.begin(), areas.end(), surgery.area) != areas.end();
        if (isOfThis && surgery.day <= m_asOf && (last == nullptr || surgery.day > last->day)) {
            last = &surgery;
        }
    }
    if (last == nullptr) {
        return std::nullopt;
    }
    const auto isRight = static_cast<std::size_t>(last->side == Side::Right);
    std::vector<double> before;
    for (const auto& [day, value] : found.best.at(1 - isRight)) {
        if (day < last->day && last->day - day <= kYear) {
            before.push_back(value);
        }
    }
    std::sort(before.rbegin(), before.rend());
    before.resize(std::min(before.size(), kBestDays));
    std::vector<double> now;
    const auto& operated = found.best.at(isRight);
    for (auto at = operated.rbegin(); at != operated.rend() && now.size() < kBestDays; ++at) {
        if (at->first > last->day && at->first <= m_asOf) {
            now.push_back(at->second);
        }
    }
    Baseline baseline{last->side, last->day, found.unit, {}, {}, 0, 0, 0.0, {}};
    baseline.daysBefore = static_cast<int>(before.size());
    baseline.daysNow = static_cast<int>(now.size());
    const double sign = found.isLessBetter ? -1.0 : 1.0;
    if (!before.empty()) {
        baseline.goodBefore = std::exp(sign * meanOf(before));
    }
    if (!now.empty()) {
        baseline.operatedNow = std::exp(sign * meanOf(now));
    }
    baseline.logPercent =
        before.empty() || now.empty() ? 0.0 : 100.0 * (meanOf(now) - meanOf(before));
    return baseline;
}

void SideGathering::addExercise(Person& person,
                                const ExerciseSeries& series,
                                const StrengthFit* fit)
{
    const auto& trials = series.trials;
    Found found;
    found.measure = {series.exercise->id, std::nullopt, series.exercise->name};
    found.unit = "kg";
    auto tests = pairsFromTrials(trials[kLeftPlace], trials[kRightPlace], series.direction);
    found.slips = slipsOfTrials(trials[kLeftPlace], trials[kRightPlace], series.direction);
    std::vector<SidePair> sets;
    if (series.isStrength()) {
        sets = pairsFromSets(series.sets[kLeftPlace], series.sets[kRightPlace], fit);
        const auto slips = slipsOfSets(series.sets[kLeftPlace], series.sets[kRightPlace], fit);
        found.slips.insert(found.slips.end(), slips.begin(), slips.end());
    }
    if (!person.records.surgeries.empty()) {
        for (const std::size_t side : {kLeftPlace, kRightPlace}) {
            auto best = dailyBest(trials[side], series.direction);
            best.merge(dailyBest(series.sets[side], fit));
            found.best.at(side == kRightPlace ? 1 : 0) = std::move(best);
        }
    }
    // Reps are the noisier kind: one person's sets make the measure one of sets.
    found.settings.isTest = !tests.empty() && sets.empty();
    found.pairs = joinPairs(std::move(tests), sets);
    keep(person, std::move(found));
}

void SideGathering::addTests(Person& person)
{
    const MemberHistory& history = person.history;
    for (const TrialSeries& left : history.trials) {
        const TestKind* test = m_library.test(left.test);
        const bool isMeasure = left.side == Side::Left && test != nullptr && !test->maximumOf &&
                               test->direction != Direction::None;
        const auto right = std::find_if(
            history.trials.begin(), history.trials.end(), [&](const TrialSeries& other) {
                return other.test == left.test && other.side == Side::Right;
            });
        if (!isMeasure || right == history.trials.end()) {
            continue;
        }
        Found found;
        found.measure = {std::nullopt, test->id, test->name};
        found.unit = test->unit;
        found.isLessBetter = test->direction == Direction::LessIsBetter;
        found.settings.handedCentre = test->key == kGripKey ? kGripCentre : 0.0;
        found.pairs = pairsFromTrials(left.trials, right->trials, test->direction);
        found.slips = slipsOfTrials(left.trials, right->trials, test->direction);
        if (!person.records.surgeries.empty()) {
            found.best[0] = dailyBest(left.trials, test->direction);
            found.best[1] = dailyBest(right->trials, test->direction);
        }
        keep(person, std::move(found));
    }
}

void SideGathering::keep(Person& person, Found found)
{
    const MeasureKey key = found.measure.key();
    const SideRecords& records = person.records;
    for (SideSlip& slip : found.slips) {
        // A reason agreed since then has answered the question.
        const KnownReason* answer = records.reasonFor(key, m_asOf);
        const bool isAnswered = answer != nullptr && slip.day <= answer->since;
        if (slip.day <= m_asOf && m_asOf - slip.day <= kSlipDays && !isAnswered) {
            person.slips.push_back({found.measure, std::move(slip)});
        }
    }
    SideSeries series;
    series.pairs = std::move(found.pairs);
    cut(series.pairs, m_asOf);
    series.baseline = baselineOf(person, found);
    if (series.baseline) {
        // The difference is another one since.
        std::erase_if(series.pairs, [day = series.baseline->surgery](const SidePair& pair) {
            return pair.day <= day;
        });
    }
    if (series.pairs.empty()) {
        return;
    }
    series.dominant = person.history.member.dominantSide;
    series.pains = painsOf(person, found.measure);
    std::copy_if(records.reasons.begin(),
                 records.reasons.end(),
                 std::back_inserter(series.reasons),
                 [&key](const KnownReason& reason) { return reason.measure == key; });
    if (key.exercise) {
        const SidePrescription* running = records.prescriptionFor(*key.exercise, m_asOf);
        series.trainedSince = running == nullptr ? std::nullopt : std::optional(running->started);
    }
    MeasuredSides& sides = key.exercise ? m_exercises[*key.exercise] : m_tests[*key.test];
    const bool isFirst = sides.owners.empty();
    const bool isTest = found.settings.isTest && (isFirst || sides.settings.isTest);
    sides.settings = found.settings;
    sides.settings.isTest = isTest;
    sides.measure = std::move(found.measure);
    if (const auto own = m_settings.sideThresholds.find(key);
        own != m_settings.sideThresholds.end()) {
        sides.thresholdPercent = own->second;
    }
    sides.owners.push_back(person.owner);
    sides.series.push_back(std::move(series));
}

std::vector<SlipQuestion> SideGathering::add(const MemberHistory& history,
                                             const std::vector<ExerciseSeries>& series,
                                             const std::vector<const StrengthFit*>& fits,
                                             std::size_t owner)
{
    static const SideRecords kNone;
    const auto records = m_settings.sideRecords.find(history.member.id);
    Person person{history,
                  records == m_settings.sideRecords.end() ? kNone : records->second,
                  series,
                  owner,
                  {}};
    for (std::size_t i = 0; i < series.size(); ++i) {
        addExercise(person, series[i], fits[i]);
    }
    addTests(person);
    return std::move(person.slips);
}

std::vector<MeasuredSides> SideGathering::take()
{
    std::vector<MeasuredSides> measures;
    for (auto& [id, measure] : m_exercises) {
        measures.push_back(std::move(measure));
    }
    for (auto& [id, measure] : m_tests) {
        measures.push_back(std::move(measure));
    }
    return measures;
}

} // namespace levelbar
