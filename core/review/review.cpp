// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/review/review.h"

#include "core/exercise/pain.h"
#include "core/review/exercise_series.h"
#include "core/review/side_gathering.h"
#include "core/review/wording.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <utility>

namespace levelbar {

namespace {

constexpr int kPainDays = 28;
constexpr int kAbsentAfterDays = 21;
constexpr int kGoneAfterDays = 84;
constexpr int kNoGainWeeks = 8;
constexpr double kHardlyRising = 0.2;

struct PainSummary {
    std::optional<Day> last;
    int score = 0;
    int sets = 0;
    int setsOnLastDay = 0;
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
                pain.setsOnLastDay = pain.last == set.day ? pain.setsOnLastDay + 1 : 1;
                pain.last = set.day;
                pain.exercise = series.exercise;
            }
        }
    }
}

std::string percent(double value)
{
    const double rounded = std::round(value);
    return fmt::format("{:.0f}", rounded == 0.0 ? 0.0 : rounded); // never "-0"
}

Attention painful(const PainSummary& pain)
{
    return {AttentionKind::Pain,
            SideTier::None,
            std::nullopt,
            {std::to_string(pain.score),
             pain.exercise->name,
             shortText(*pain.last),
             std::to_string(pain.sets)},
            1.0,
            {*pain.last, pain.setsOnLastDay},
            pain.exercise->id,
            pain.sets};
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
    attention.evidence = {review.lastPair, static_cast<int>(review.tier)};
    attention.exercise = review.measure.exercise;
    return attention;
}

} // namespace

struct Reviewer::Working {
    Working(const Library& known, Day day, ReviewSettings wanted)
        : library(&known)
        , asOf(day)
        , settings(std::move(wanted))
        , sides(known, settings, day)
    {
        review.asOf = day;
    }

    const Library* library;
    Day asOf;
    ReviewSettings settings;
    SideGathering sides;
    Review review;
    std::vector<PainSummary> pains;                // one a member
    std::vector<std::vector<TestResults>> results; // one a member

    [[nodiscard]] std::vector<SlipQuestion> addStrength(const MemberHistory& history,
                                                        const std::vector<ExerciseSeries>& series,
                                                        MemberReview& member);
    [[nodiscard]] Attention falling(const StrengthReview& strength) const;
    [[nodiscard]] std::optional<Attention> noGain(const MemberReview& member) const;
    void addAttention(MemberReview& member, const PainSummary& pain) const;
};

Reviewer::Reviewer(const Library& library, Day asOf, ReviewSettings settings)
    : m_working(std::make_unique<Working>(library, asOf, std::move(settings)))
{
}

Reviewer::Reviewer(Reviewer&&) noexcept = default;
Reviewer& Reviewer::operator=(Reviewer&&) noexcept = default;
Reviewer::~Reviewer() = default;

std::vector<SlipQuestion> Reviewer::Working::addStrength(const MemberHistory& history,
                                                         const std::vector<ExerciseSeries>& series,
                                                         MemberReview& member)
{
    const StrengthQuestion question = strengthQuestion(series);
    const auto fits = fitMember(question.exercises, history.prior(), asOf);
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
    return sides.add(history, series, fitAt, review.members.size());
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
    member.slips = w.addStrength(history, series, member);
    PainSummary pain;
    for (const ExerciseSeries& exercise : series) {
        notePain(pain, exercise, w.asOf);
    }
    w.pains.push_back(pain);
    w.results.push_back(testResults(history, *w.library, w.asOf));
    w.review.members.push_back(std::move(member));
}

Attention Reviewer::Working::falling(const StrengthReview& strength) const
{
    const Estimate& change = *strength.trend.percentPerWeek;
    return {AttentionKind::Falling,
            SideTier::None,
            std::nullopt,
            {library->exercise(strength.exercise)->name,
             oneDecimal(-change.value),
             oneDecimal(-change.high),
             oneDecimal(-change.low)},
            strength.trend.probabilityFalling,
            {strength.strength.lastSet},
            strength.exercise};
}

// A flat line is what an advanced person's should look like (Steele 2022).
std::optional<Attention> Reviewer::Working::noGain(const MemberReview& member) const
{
    const StrengthReview* main = mainStrength(member);
    if (main == nullptr || !main->trend.percentPerWeek || main->trend.spanWeeks < kNoGainWeeks ||
        main->trend.call == TrendCall::Falling || main->trend.probabilityRising > kHardlyRising ||
        member.member.experience == Experience::Advanced) {
        return std::nullopt;
    }
    return Attention{
        AttentionKind::NoGain,
        SideTier::None,
        std::nullopt,
        {library->exercise(main->exercise)->name, std::to_string(main->trend.spanWeeks)},
        1.0 - main->trend.probabilityRising,
        {main->strength.lastSet},
        main->exercise};
}

void Reviewer::Working::addAttention(MemberReview& member, const PainSummary& pain) const
{
    auto& all = member.attention;
    if (pain.last) {
        all.push_back(painful(pain));
    }
    for (const SideReview& side : member.sides) {
        if (side.tier != SideTier::None) {
            all.push_back(imbalance(side));
        }
    }
    for (const StrengthReview& strength : member.strength) {
        if (strength.trend.call == TrendCall::Falling && strength.side != Side::Right) {
            all.push_back(falling(strength));
        }
    }
    if (const auto flat = noGain(member)) {
        all.push_back(*flat);
    }
    const int away = member.lastSeen ? asOf - *member.lastSeen : 0;
    if (away > kAbsentAfterDays && away <= kGoneAfterDays) {
        all.push_back({AttentionKind::Absence,
                       SideTier::None,
                       std::nullopt,
                       {std::to_string(away / 7)},
                       1.0,
                       {*member.lastSeen}});
    }
    std::stable_sort(all.begin(), all.end(), [](const Attention& a, const Attention& b) {
        return a.kind != b.kind ? a.kind < b.kind : a.certainty > b.certainty;
    });
}

Review Reviewer::finish()
{
    Working& w = *m_working;
    const std::vector<MeasuredSides> measures = w.sides.take();
    RosterSides sides = reviewSides(measures, w.asOf, w.settings.sideThresholdPercent);
    for (RosterSides::Entry& entry : sides.entries) {
        w.review.members[entry.owner].sides.push_back(std::move(entry.review));
    }
    for (const MeasuredSides& measure : measures) {
        w.review.measures.push_back(steadinessOf(measure, w.asOf, w.settings.sideThresholdPercent));
    }
    w.review.sideModels = std::move(sides.models);
    w.review.look = sides.look;
    w.review.act = sides.act;
    w.review.expectedFalseLook = sides.expectedFalseLook;
    w.review.expectedFalseAct = sides.expectedFalseAct;
    w.review.testNoise = poolTestNoise(w.results, *w.library);
    for (std::size_t i = 0; i < w.review.members.size(); ++i) {
        w.review.members[i].tests =
            testTrends(w.results[i], *w.library, w.review.testNoise, w.asOf);
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
