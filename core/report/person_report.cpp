// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/report/person_report.h"

#include "core/plan/goal_table.h"
#include "core/plan/target_words.h"
#include "core/report/report_tests.h"

#include <algorithm>

namespace levelbar {

namespace {

constexpr int kMonthsWithoutYearDays = 300;

// Sets that size it; left and right share theirs, so that each has half.
int sizingSets(const StrengthReview& entry)
{
    const int count = entry.strength.oneRepMax.count;
    return entry.side == Side::Both ? count : count / 2;
}

bool isSurer(const StrengthReview& a, const StrengthReview& b)
{
    const bool isOldA = a.strength.evidence == Evidence::TooOld;
    const bool isOldB = b.strength.evidence == Evidence::TooOld;
    if (isOldA != isOldB) {
        return isOldB;
    }
    return sizingSets(a) > sizingSets(b);
}

// One entry an exercise, the surest first; of two sides the weaker.
std::vector<const StrengthReview*> mainLifts(const MemberReview& review)
{
    std::vector<const StrengthReview*> lifts;
    for (const StrengthReview& entry : review.strength) {
        if (entry.strength.isFromRelated) {
            continue;
        }
        const auto same = std::find_if(lifts.begin(), lifts.end(), [&](const auto* other) {
            return other->exercise == entry.exercise;
        });
        if (same == lifts.end()) {
            lifts.push_back(&entry);
        } else if (entry.strength.oneRepMax.value < (*same)->strength.oneRepMax.value) {
            *same = &entry;
        }
    }
    std::stable_sort(
        lifts.begin(), lifts.end(), [](const auto* a, const auto* b) { return isSurer(*a, *b); });
    lifts.resize(std::min(lifts.size(), kMostReportLifts));
    return lifts;
}

// What a difference calls for, in words for the person it is about.
Phrase whatFollows(SideTier tier)
{
    switch (tier) {
    case SideTier::Look:
        return {"Both sides are measured once more before anything is changed.", {}};
    case SideTier::Act:
        return {"The weaker side goes first; the stronger one stops at its reps.", {}};
    case SideTier::SendOn:
        return {"New, sudden or painful: have it looked at by a clinician first.", {}};
    case SideTier::None:
        break;
    }
    return {"Nothing to change.", {}};
}

std::vector<Phrase> sideWords(const SideReview& side)
{
    if (side.days < 2) {
        return {{"Seen on one day: too early to say.", {}}};
    }
    std::vector<Phrase> all = phrases(side);
    all.push_back(whatFollows(side.tier));
    return all;
}

int urgency(const SideReview& side)
{
    switch (side.tier) {
    case SideTier::SendOn:
        return 4;
    case SideTier::Act:
        return 3;
    case SideTier::Look:
        return 2;
    case SideTier::None:
        break;
    }
    return side.days >= 2 ? 1 : 0;
}

void addSides(const MemberReview& review, PersonReport& report)
{
    std::vector<const SideReview*> sides;
    for (const SideReview& side : review.sides) {
        sides.push_back(&side);
    }
    std::stable_sort(sides.begin(), sides.end(), [](const auto* a, const auto* b) {
        return std::pair(urgency(*a), a->probabilitySide) >
               std::pair(urgency(*b), b->probabilitySide);
    });
    const std::size_t shown = std::min(sides.size(), kMostReportSides);
    for (std::size_t i = 0; i < shown; ++i) {
        report.sides.push_back({sides[i]->measure.name, sideWords(*sides[i])});
    }
    report.moreSides = static_cast<int>(sides.size() - shown);
    if (!sides.empty()) {
        report.sideCaution = {{"A difference is a thing to train or to ask about, not a diagnosis. "
                               "New, sudden or painful ones go to a clinician.",
                               {}}};
    }
}

ReportLift
liftOf(const ReportQuestion& question, const Exercise& exercise, const StrengthReview& entry)
{
    std::vector<Phrase> strength = phrases(entry.strength, question.asOf);
    if (entry.strength.evidence == Evidence::TooOld) {
        strength.push_back({"Too old to build on: lift it again first.", {}});
    }
    std::vector<Phrase> trend = phrases(entry.trend);
    for (const StrengthGoal& goal : question.goals) {
        if (goal.exercise == exercise.id && goal.side == entry.side) {
            const auto words =
                phrases(goal, goalOutlook(goal, entry, {}, question.asOf), entry.trend);
            trend.insert(trend.end(), words.begin(), words.end());
        }
    }
    return {
        exercise.name,
        entry.side,
        strengthFigure(question.history, question.library, exercise.id, entry.side, question.asOf),
        std::move(strength),
        std::move(trend)};
}

TargetQuestion targetQuestion(const ReportQuestion& question, const Exercise& exercise, Side side)
{
    const Member& member = question.history.member;
    const bool isOneSided = exercise.sidedness == Sidedness::SingleSided;
    return {exercise.id,
            isOneSided ? std::nullopt : std::optional(side),
            proposedReps(goalRow(member.goal, member.experience)),
            Reserve{10 * kUsualReserve},
            question.asOf};
}

void addTarget(const ReportQuestion& question,
               const Exercise& exercise,
               const Result<Target>& target,
               PersonReport& report)
{
    if (!target) {
        report.targets.push_back(
            {exercise.name,
             Side::Both,
             {{sentenceTemplate(target.error().code), target.error().arguments}},
             {},
             {}});
        return;
    }
    ReportTarget next{exercise.name, target->side, headline(*target), {}, reasonPhrases(*target)};
    if (target->isKitAssumed && !next.reasons.empty()) {
        report.targetNote = {next.reasons.back()}; // said once for all of them
        next.reasons.pop_back();
    }
    const Phrase effort = effortPhrase(target->reserve, question.effort);
    next.headline.push_back({"Stop %1.", {fill(effort.text, effort.arguments)}});
    if (target->progression.load) {
        next.plates = platesText(*target->progression.load, exercise.implement);
    }
    report.targets.push_back(std::move(next));
    for (const Phrase& caution : cautionPhrases(*target)) {
        const bool isSaid = std::any_of(report.targetCaution.begin(),
                                        report.targetCaution.end(),
                                        [&](const Phrase& p) { return p.text == caution.text; });
        if (!isSaid) {
            report.targetCaution.push_back(caution);
        }
    }
}

std::vector<Phrase> seenWords(const MemberReview& review, Day asOf)
{
    if (!review.lastSeen) {
        return {{"Nothing is logged yet.", {}}};
    }
    const std::string last = reportDay(*review.lastSeen, asOf);
    if (review.daysSeen == 0) {
        return {{"No set is logged yet; last tested on %1.", {last}}};
    }
    if (review.daysSeen == 1) {
        return {{"One day with sets; last seen on %1.", {last}}};
    }
    return {{"%1 days with sets; last seen on %2.", {std::to_string(review.daysSeen), last}}};
}

} // namespace

std::string reportDay(Day day, Day asOf)
{
    const std::string text = shortText(day);
    const bool isFar = asOf - day > kMonthsWithoutYearDays;
    return isFar ? text + " " + std::to_string(civilDate(day).year) : text;
}

std::vector<Phrase> reportFoot()
{
    return {{"This page informs a trained instructor and the person it is about; it does not "
             "diagnose. Questions of health belong to a clinician.",
             {}}};
}

PersonReport personReport(const ReportQuestion& question)
{
    PersonReport report;
    report.member = question.history.member;
    report.asOf = question.asOf;
    report.seen = seenWords(question.review, question.asOf);
    std::vector<TargetQuestion> asked;
    for (const StrengthReview* entry : mainLifts(question.review)) {
        const Exercise* exercise = question.library.exercise(entry->exercise);
        report.lifts.push_back(liftOf(question, *exercise, *entry));
        asked.push_back(targetQuestion(question, *exercise, entry->side));
    }
    const auto targets = targetsFor(question.history, question.library, question.kit, asked);
    for (std::size_t i = 0; i < asked.size(); ++i) {
        addTarget(question, *question.library.exercise(asked[i].exercise), targets[i], report);
    }
    if (!report.targets.empty()) {
        report.targetCaution.push_back(
            {"Pain stops the set: tell your instructor, and if it stays, spreads or comes back, "
             "ask a clinician.",
             {}});
    }
    addSides(question.review, report);
    report.tests = testLines(question.history, question.library, question.asOf);
    if (!report.tests.empty()) {
        report.testCaution = {{"A test shows how one day went. A result that worries you is for a "
                               "clinician to judge.",
                               {}}};
    }
    return report;
}

} // namespace levelbar
