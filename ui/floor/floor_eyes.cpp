// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/floor/floor_eyes.h"

#include "core/floor/worth_eyes.h"
#include "core/review/exercise_series.h"
#include "core/strength/member_strength.h"
#include "core/strength/side_offset.h"
#include "core/strength/strength.h"
#include "storage/history_reader.h"
#include "ui/floor/pad_hour.h"

#include <cmath>

namespace levelbar::ui {

namespace {

constexpr int kNewDays = 3;
constexpr int kBackDays = 21;
constexpr int kMaximumReps = 4;
constexpr Reserve kPlannedReserve{20}; // when the plan says none; assumed

bool hadPainOn(Day day, const MemberHistory& history)
{
    return std::any_of(history.sets.begin(), history.sets.end(), [day](const SetSeries& series) {
        return std::any_of(series.sets.begin(), series.sets.end(), [day](const PerformedSet& set) {
            return set.day == day && (set.pain.value_or(0) > 0 || set.stopped == StopReason::Pain);
        });
    });
}

void noteSets(EyesHistory& known, const MemberHistory& history, Day day)
{
    std::set<Day> days;
    for (const SetSeries& series : history.sets) {
        for (const PerformedSet& set : series.sets) {
            if (set.day >= day) {
                continue;
            }
            days.insert(set.day);
            Mass& heaviest = known.heaviest[series.exercise];
            if (set.reps.value_or(0) > 0 && set.load.kilograms() > heaviest.kilograms()) {
                heaviest = set.load;
            }
        }
    }
    known.days = static_cast<int>(days.size());
    if (days.empty()) {
        return;
    }
    known.lastDay = *days.rbegin();
    known.hadPain = hadPainOn(*known.lastDay, history);
}

void noteFits(EyesHistory& known, const MemberHistory& history, const Library& library, Day day)
{
    const auto series = seriesOf(history, library);
    const StrengthQuestion question = strengthQuestion(series);
    const auto fits = fitMember(question.exercises, history.prior(), day - 1);
    for (std::size_t i = 0; i < fits.size(); ++i) {
        if (fits[i] && !fits[i]->isFromRelated) {
            known.fits[series[question.places[i]].exercise->id] = fits[i]->fit;
        }
    }
}

int countedToday(const ClassFloor& hour, const PlannedSet& planned)
{
    int counted = 0;
    for (const PadCell& cell : hour.cells) {
        const bool isAlike = cell.done && cell.planned.member == planned.member &&
                             cell.planned.exercise == planned.exercise &&
                             cell.planned.side == planned.side;
        counted += isAlike && cell.done->performed.known == HowKnown::Counted ? 1 : 0;
    }
    return counted;
}

EyesReasons
reasonsFor(const PadCell& cell, const EyesHistory& known, const FloorPerson* who, Day day)
{
    EyesReasons reasons;
    reasons.hasPain = known.hadPain || (who != nullptr && !who->pains.empty());
    reasons.isNew = known.days < kNewDays;
    reasons.isBack = known.lastDay && day - *known.lastDay > kBackDays;
    const auto heaviest = known.heaviest.find(cell.planned.exercise);
    reasons.isFirstLoad = heaviest != known.heaviest.end() &&
                          cell.planned.load.kilograms() > heaviest->second.kilograms();
    const bool isFew = cell.planned.amount && *cell.planned.amount <= kMaximumReps;
    reasons.isMaximum = cell.kind == SetKind::Test ||
                        (isFew && cell.planned.reserve && *cell.planned.reserve <= Reserve{10});
    return reasons;
}

} // namespace

const EyesHistory& FloorEyes::historyOf(const storage::Logbook& logbook,
                                        const Library& library,
                                        MemberId member,
                                        Day day)
{
    const auto [place, isNew] = m_known.try_emplace({member, day});
    if (isNew) {
        if (const auto history = storage::historyOf(logbook, member, day)) {
            noteSets(place->second, *history, day);
            noteFits(place->second, *history, library, day);
        }
    }
    return place->second;
}

std::set<CellKey> FloorEyes::pick(const storage::Logbook& logbook,
                                  const FloorReference& reference,
                                  const ClassFloor& hour,
                                  Day day)
{
    std::vector<EyesQuestion> round;
    for (std::size_t at = 0; at < hour.cells.size(); ++at) {
        const PadCell& cell = hour.cells[at];
        if (!cell.isOpen() || cell.isHeld || cell.round != hour.round) {
            continue;
        }
        const PlannedSet& planned = cell.planned;
        const EyesHistory& known = historyOf(logbook, reference.library, planned.member, day);
        EyesQuestion question;
        question.cell = at;
        question.member = planned.member;
        const auto fit = known.fits.find(planned.exercise);
        if (fit != known.fits.end()) {
            question.fit = fit->second;
        }
        question.hasLoad = planned.load.kilograms() > 0.0 && planned.amount.value_or(0) > 0;
        if (question.hasLoad) {
            question.set = {std::log(planned.load.kilograms()),
                            sideOffset(planned.side),
                            static_cast<double>(*planned.amount),
                            planned.reserve.value_or(kPlannedReserve).reps(),
                            countedToday(hour, planned)};
        }
        question.reasons = reasonsFor(cell, known, person(hour, planned.member), day);
        round.push_back(std::move(question));
    }
    // The spreads that differ with experience hardly change which sets teach most.
    const auto picks = worthEyes(round, forExperience(Experience::Intermediate));
    std::set<CellKey> eyes;
    for (const EyesPick& one : picks) {
        eyes.insert(keyOf(hour.cells[one.cell].planned));
    }
    return eyes;
}

} // namespace levelbar::ui
