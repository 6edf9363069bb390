// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/review/review.h"

#include "core/review/exercise_series.h"
#include "core/sides/side_pairs.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <map>

namespace levelbar {

namespace {

constexpr int kPainDays = 28;
constexpr int kPainThatMatters = 3; // of 10; common practice, no source
constexpr int kAbsentAfterDays = 21;
constexpr int kGoneAfterDays = 84;
constexpr int kNoGainWeeks = 8;
constexpr double kHardlyRising = 0.2;
// Right-handed people grip 5 % stronger with the right on average (Wang 2019, Laterality).
constexpr double kGripCentre = 5.0;
constexpr std::string_view kGripKey = "grip-strength";

bool hurts(const PerformedSet& set)
{
    return set.pain.value_or(0) >= kPainThatMatters || set.stopped == StopReason::Pain;
}

struct PainSummary {
    std::optional<Day> last;
    int score = 0;
    int sets = 0;
    const Exercise* exercise = nullptr;
};

void notePain(PainSummary& pain, const ExerciseSeries& series, Day asOf)
{
    for (const auto& sets : series.sets) {
        for (const PerformedSet& set : sets) {
            if (!hurts(set) || set.day > asOf || asOf - set.day > kPainDays) {
                continue;
            }
            ++pain.sets;
            pain.score = std::max(pain.score, set.pain.value_or(0));
            if (!pain.last || set.day >= *pain.last) {
                pain.last = set.day;
                pain.exercise = series.exercise;
            }
        }
    }
}

std::optional<Day> lastPainIn(const ExerciseSeries& series, Day asOf)
{
    PainSummary pain;
    notePain(pain, series, asOf);
    return pain.last;
}

std::string percent(double value)
{
    const double rounded = std::round(value);
    return fmt::format("{:.0f}", rounded == 0.0 ? 0.0 : rounded); // never "-0"
}

std::string tenths(double value)
{
    return fmt::format("{:.1f}", value);
}

Attention imbalance(const SideReview& review)
{
    const bool isLeft = review.weaker == Side::Left;
    const Estimate& d = review.differencePercent;
    Attention attention;
    attention.kind = AttentionKind::Imbalance;
    attention.tier = review.tier;
    attention.side = review.weaker;
    attention.certainty = review.tier == SideTier::Act ? review.probabilityBeyondThreshold
                                                       : review.probabilityBeyondFive;
    attention.arguments = {review.measure.name,
                           percent(std::abs(d.value)),
                           percent(isLeft ? d.low : -d.high),
                           percent(isLeft ? d.high : -d.low)};
    return attention;
}

// Drops what lies after the day, so that an earlier review sees what was known then.
template <typename T> void cut(std::vector<T>& rows, Day asOf)
{
    rows.erase(
        std::find_if(rows.begin(), rows.end(), [asOf](const T& row) { return row.day > asOf; }),
        rows.end());
}

} // namespace

struct Reviewer::Working {
    const Library* library = nullptr;
    Day asOf;
    ReviewSettings settings;
    Review review;
    std::map<ExerciseId, MeasuredSides> exerciseSides;
    std::map<TestId, MeasuredSides> testSides;
    std::vector<PainSummary> pains; // one a member

    void addStrength(const std::vector<ExerciseSeries>& series, MemberReview& member);
    void addSides(const ExerciseSeries& series, const StrengthFit* fit, const Member& member);
    void addTestSides(const MemberHistory& history);
    void addAttention(MemberReview& member, const PainSummary& pain) const;
};

Reviewer::Reviewer(const Library& library, Day asOf, ReviewSettings settings)
    : m_working(std::make_unique<Working>())
{
    m_working->library = &library;
    m_working->asOf = asOf;
    m_working->settings = settings;
    m_working->review.asOf = asOf;
}

Reviewer::Reviewer(Reviewer&&) noexcept = default;
Reviewer& Reviewer::operator=(Reviewer&&) noexcept = default;
Reviewer::~Reviewer() = default;

void Reviewer::Working::addStrength(const std::vector<ExerciseSeries>& series, MemberReview& member)
{
    const StrengthQuestion question = strengthQuestion(series);
    const auto fits = fitMember(question.exercises, member.member.experience, asOf);
    std::vector<const StrengthFit*> fitAt(series.size(), nullptr);
    for (std::size_t j = 0; j < fits.size(); ++j) {
        if (!fits[j] || fits[j]->isFromRelated) {
            continue;
        }
        const ExerciseSeries& source = series[question.places[j]];
        fitAt[question.places[j]] = &fits[j]->fit;
        for (const Side side : {Side::Both, Side::Left, Side::Right}) {
            const auto last = source.has(side) ? source.lastDay(side, asOf) : std::nullopt;
            if (!last) {
                continue;
            }
            StrengthReview entry{source.exercise->id, side, strengthOf(*fits[j], side, asOf), {}};
            entry.strength.lastSet = *last;
            entry.strength.evidence = evidenceOf(*last, asOf);
            entry.trend = trendOf(*fits[j], asOf);
            member.strength.push_back(entry);
        }
    }
    for (std::size_t i = 0; i < series.size(); ++i) {
        addSides(series[i], fitAt[i], member.member);
    }
}

void Reviewer::Working::addSides(const ExerciseSeries& series,
                                 const StrengthFit* fit,
                                 const Member& member)
{
    constexpr auto kLeft = static_cast<std::size_t>(Side::Left);
    constexpr auto kRight = static_cast<std::size_t>(Side::Right);
    auto tests = pairsFromTrials(series.trials[kLeft], series.trials[kRight], series.direction);
    std::vector<SidePair> sets;
    if (series.isStrength()) {
        sets = pairsFromSets(series.sets[kLeft], series.sets[kRight], fit);
    }
    const bool isTest = !tests.empty() && sets.empty();
    SideSeries pairs{
        joinPairs(std::move(tests), sets), member.dominantSide, lastPainIn(series, asOf)};
    cut(pairs.pairs, asOf);
    if (pairs.pairs.empty()) {
        return;
    }
    auto [at, isNew] = exerciseSides.try_emplace(series.exercise->id);
    MeasuredSides& measure = at->second;
    if (isNew) {
        measure.measure = {series.exercise->id, std::nullopt, series.exercise->name};
        measure.settings.isTest = true;
    }
    // Reps are the noisier kind: one person's sets make the measure one of sets.
    measure.settings.isTest = measure.settings.isTest && isTest;
    measure.owners.push_back(review.members.size());
    measure.series.push_back(std::move(pairs));
}

void Reviewer::Working::addTestSides(const MemberHistory& history)
{
    for (const TrialSeries& left : history.trials) {
        const TestKind* test = library->test(left.test);
        const bool isMeasure = left.side == Side::Left && test != nullptr && !test->maximumOf &&
                               test->direction != Direction::None;
        const auto right = std::find_if(
            history.trials.begin(), history.trials.end(), [&](const TrialSeries& other) {
                return other.test == left.test && other.side == Side::Right;
            });
        if (!isMeasure || right == history.trials.end()) {
            continue;
        }
        SideSeries pairs{pairsFromTrials(left.trials, right->trials, test->direction),
                         history.member.dominantSide,
                         std::nullopt};
        cut(pairs.pairs, asOf);
        if (pairs.pairs.empty()) {
            continue;
        }
        MeasuredSides& measure = testSides[test->id];
        measure.measure = {std::nullopt, test->id, test->name};
        measure.settings.handedCentre = test->key == kGripKey ? kGripCentre : 0.0;
        measure.owners.push_back(review.members.size());
        measure.series.push_back(std::move(pairs));
    }
}

void Reviewer::add(const MemberHistory& history)
{
    Working& w = *m_working;
    const std::vector<ExerciseSeries> series = seriesOf(history, *w.library);
    MemberReview member;
    member.member = history.member;
    std::vector<Day> days;
    for (const SetSeries& sets : history.sets) {
        for (const PerformedSet& set : sets.sets) {
            if (set.day <= w.asOf) {
                days.push_back(set.day);
            }
        }
    }
    std::sort(days.begin(), days.end());
    days.erase(std::unique(days.begin(), days.end()), days.end());
    member.daysSeen = static_cast<int>(days.size());
    if (!days.empty()) {
        member.lastSeen = days.back();
    }
    for (const TrialSeries& trials : history.trials) {
        for (const Trial& trial : trials.trials) {
            if (trial.day <= w.asOf) {
                member.lastSeen = std::max(member.lastSeen.value_or(trial.day), trial.day);
            }
        }
    }
    w.addStrength(series, member);
    w.addTestSides(history);
    PainSummary pain;
    for (const ExerciseSeries& exercise : series) {
        notePain(pain, exercise, w.asOf);
    }
    w.pains.push_back(pain);
    w.review.members.push_back(std::move(member));
}

void Reviewer::Working::addAttention(MemberReview& member, const PainSummary& pain) const
{
    auto& all = member.attention;
    if (pain.last) {
        all.push_back({AttentionKind::Pain,
                       SideTier::None,
                       std::nullopt,
                       {std::to_string(pain.score),
                        pain.exercise->name,
                        shortText(*pain.last),
                        std::to_string(pain.sets)},
                       1.0});
    }
    for (const SideReview& side : member.sides) {
        if (side.tier != SideTier::None) {
            all.push_back(imbalance(side));
        }
    }
    for (const StrengthReview& strength : member.strength) {
        if (strength.trend.call == TrendCall::Falling && strength.side != Side::Right) {
            const Estimate& change = *strength.trend.percentPerWeek;
            all.push_back({AttentionKind::Falling,
                           SideTier::None,
                           std::nullopt,
                           {library->exercise(strength.exercise)->name,
                            tenths(-change.value),
                            tenths(-change.high),
                            tenths(-change.low)},
                           strength.trend.probabilityFalling});
        }
    }
    // A flat line is what an advanced person's should look like (Steele 2022).
    const StrengthReview* main = mainStrength(member);
    if (main != nullptr && main->trend.percentPerWeek && main->trend.spanWeeks >= kNoGainWeeks &&
        main->trend.call != TrendCall::Falling && main->trend.probabilityRising <= kHardlyRising &&
        member.member.experience != Experience::Advanced) {
        all.push_back(
            {AttentionKind::NoGain,
             SideTier::None,
             std::nullopt,
             {library->exercise(main->exercise)->name, std::to_string(main->trend.spanWeeks)},
             1.0 - main->trend.probabilityRising});
    }
    const int away = member.lastSeen ? asOf - *member.lastSeen : 0;
    if (away > kAbsentAfterDays && away <= kGoneAfterDays) {
        all.push_back({AttentionKind::Absence,
                       SideTier::None,
                       std::nullopt,
                       {std::to_string(away / 7)},
                       1.0});
    }
    std::stable_sort(all.begin(), all.end(), [](const Attention& a, const Attention& b) {
        return a.kind != b.kind ? a.kind < b.kind : a.certainty > b.certainty;
    });
}

Review Reviewer::finish()
{
    Working& w = *m_working;
    std::vector<MeasuredSides> measures;
    for (auto& [id, measure] : w.exerciseSides) {
        measures.push_back(std::move(measure));
    }
    for (auto& [id, measure] : w.testSides) {
        measures.push_back(std::move(measure));
    }
    RosterSides sides = reviewSides(measures, w.asOf, w.settings.sideThresholdPercent);
    for (RosterSides::Entry& entry : sides.entries) {
        w.review.members[entry.owner].sides.push_back(std::move(entry.review));
    }
    w.review.look = sides.look;
    w.review.act = sides.act;
    w.review.expectedFalseLook = sides.expectedFalseLook;
    w.review.expectedFalseAct = sides.expectedFalseAct;
    for (std::size_t i = 0; i < w.review.members.size(); ++i) {
        w.addAttention(w.review.members[i], w.pains[i]);
    }
    return std::move(w.review);
}

const StrengthReview* mainStrength(const MemberReview& member)
{
    const StrengthReview* best = nullptr;
    for (const StrengthReview& review : member.strength) {
        if (review.strength.evidence == Evidence::TooOld) {
            continue;
        }
        if (best == nullptr || review.strength.oneRepMax.count > best->strength.oneRepMax.count) {
            best = &review;
        }
    }
    return best;
}

const SideReview* mainSide(const MemberReview& member)
{
    const SideReview* best = nullptr;
    for (const SideReview& review : member.sides) {
        if (review.days < 2) {
            continue;
        }
        const bool isBetter = best == nullptr || review.tier > best->tier ||
                              (review.tier == best->tier &&
                               review.probabilityBeyondFive > best->probabilityBeyondFive);
        if (isBetter) {
            best = &review;
        }
    }
    return best;
}

} // namespace levelbar
