// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/report/report_reader.h"

#include "storage/exercise_detail_store.h"
#include "storage/goal_store.h"
#include "storage/gym_store.h"
#include "storage/history_reader.h"
#include "storage/ladder_store.h"
#include "storage/library_store.h"
#include "storage/period_reader.h"

#include <algorithm>

namespace levelbar::ui {

std::optional<PersonReport>
readPersonReport(const storage::Logbook& logbook, const ReviewedRoster& roster, MemberId member)
{
    const auto& reviews = roster.review.members;
    const auto review = std::find_if(reviews.begin(), reviews.end(), [&](const MemberReview& r) {
        return r.member.id == member;
    });
    const auto history = storage::historyOf(logbook, member, roster.review.asOf);
    if (!history || review == reviews.end()) {
        return std::nullopt;
    }
    const storage::GymStore gym(logbook);
    const Kit kit = gym.kit();
    return personReport({*history,
                         *review,
                         roster.library,
                         kit,
                         gym.effortScale(),
                         roster.review.asOf,
                         storage::GoalStore(logbook).ofMember(member)});
}

std::optional<TakeAway>
readTakeAway(const storage::Logbook& logbook, MemberId member, HomeKit kit, Day asOf)
{
    const auto history = storage::historyOf(logbook, member, asOf);
    if (!history) {
        return std::nullopt;
    }
    const Library library = storage::LibraryStore(logbook).all();
    const std::vector<Ladder> ladders = storage::LadderStore(logbook).all();
    const auto details = storage::ExerciseDetailStore(logbook).all();
    return chooseTakeAway({*history, library, ladders, details, kit, asOf});
}

GroupSummary readSummary(const storage::Logbook& logbook,
                         const ReviewedRoster& roster,
                         const SummaryQuestion& question)
{
    const PeriodFacts facts = storage::readPeriod(logbook, question.from, roster.review.asOf);
    return groupSummary(facts, roster.review, question.only);
}

} // namespace levelbar::ui
