// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/today/day_facts.h"

#include "core/today/due_attention.h"
#include "storage/answered_plans.h"
#include "storage/session_store.h"
#include "storage/today_store.h"

namespace levelbar::ui {

namespace {

constexpr int kAnsweredDays = 84; // enough for the last two days of an exercise

} // namespace

DayFactsReader::DayFactsReader(const storage::Logbook& logbook, const Library& library, Day today)
    : m_library(library)
    , m_today(today)
    , m_rated(storage::SessionStore(logbook).rated({today - kHabitDays, today}))
{
    m_facts.clearedUntil = storage::TodayStore(logbook).clearances();
    for (const AnsweredPlan& pair : storage::answeredPlans(logbook, today - kAnsweredDays, today)) {
        m_answered[pair.planned.member].push_back(pair);
    }
}

void DayFactsReader::add(const MemberHistory& history)
{
    const auto keep = [&](std::optional<Attention> reason) {
        if (reason) {
            m_facts.reasons[history.member.id].push_back(std::move(*reason));
        }
    };
    keep(loadJump(hardSetHabit(history, m_today),
                  sessionLoadHabit(m_rated[history.member.id], m_today)));
    keep(retestDue(history, m_library, m_today));
    keep(targetMissed(m_answered[history.member.id], m_library, m_today));
}

DayFacts DayFactsReader::finish(const Review& review)
{
    for (const MemberReview& member : review.members) {
        const auto end = m_facts.clearedUntil.find(member.member.id);
        if (end == m_facts.clearedUntil.end()) {
            continue;
        }
        if (auto due = clearanceDue(end->second, member.lastSeen, m_today)) {
            m_facts.reasons[member.member.id].push_back(std::move(*due));
        }
    }
    return std::move(m_facts);
}

} // namespace levelbar::ui
