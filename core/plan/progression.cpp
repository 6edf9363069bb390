// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/plan/progression.h"

#include "core/exercise/pain.h"

#include <algorithm>
#include <cmath>

namespace levelbar {

namespace {

constexpr int kLongAwayDays = 56;
constexpr double kLighter = 0.9;
constexpr double kMuchLighter = 0.8;
constexpr double kMostRaise = 1.10;
constexpr double kLargeJumpPercent = 10.0 + 1e-9; // ten exactly is no large jump
constexpr int kSameReps = 2;                      // reps apart that still count as the same aim
constexpr int kMissedReps = 3; // short of the aim with everything given: still the same aim
constexpr int kExtraReps = 2;
constexpr int kCountedWithin = 3; // sessions
constexpr int kHardWeeks = 5;
constexpr double kHardlyMore = 1.01;     // over the estimated load, and still held
constexpr std::int64_t kSlack = 100'000; // exact units: a thousandth of a gram

// One day's work sets of the exercise and side.
struct Session {
    Day day;
    Mass top; // heaviest load
    std::vector<const PerformedSet*> sets;
};

bool isWork(const PerformedSet& set)
{
    return set.reps && set.kind != SetKind::Ramp && set.load.thousandths() > 0;
}

bool isCounted(const PerformedSet& set)
{
    const bool isSeen = set.known == HowKnown::Counted || set.known == HowKnown::Sheet;
    return isSeen && !set.isAtLeast;
}

std::vector<Session> sessionsOf(const ProgressionQuestion& question)
{
    std::vector<Session> sessions;
    for (const PerformedSet& set : question.sets) {
        if (set.day >= question.today) {
            break;
        }
        if (!isWork(set)) {
            continue;
        }
        if (sessions.empty() || sessions.back().day != set.day) {
            sessions.push_back({set.day, set.load, {}});
        }
        Session& session = sessions.back();
        session.sets.push_back(&set);
        if (exactWeight(set.load) > exactWeight(session.top)) {
            session.top = set.load;
        }
    }
    return sessions;
}

// The last counted set at the session's heaviest load: what the handbook's rule looks at.
const PerformedSet* lastCounted(const Session& session)
{
    for (auto at = session.sets.rbegin(); at != session.sets.rend(); ++at) {
        if (isCounted(**at) && exactWeight((*at)->load) == exactWeight(session.top)) {
            return *at;
        }
    }
    return nullptr;
}

int painOf(const Session& session)
{
    int worst = 0;
    for (const PerformedSet* set : session.sets) {
        const int score = set->pain.value_or(0);
        worst = std::max({worst, score, set->stopped == StopReason::Pain ? kPainThatMatters : 0});
    }
    return worst;
}

bool isClean(const Session& session)
{
    return std::none_of(session.sets.begin(), session.sets.end(), [](const PerformedSet* set) {
        return set->isClean == false || set->stopped == StopReason::Form;
    });
}

// Tried to the end and still two reps short, or failed.
bool isMissed(const Session& session, const RepGoal& goal)
{
    const PerformedSet* set = lastCounted(session);
    if (set == nullptr) {
        return false;
    }
    const bool isAll = *set->reps == 0 || set->stopped == StopReason::NoMore ||
                       (set->reserve && set->reserve->tenths == 0);
    return isAll && *set->reps <= goal.reps - kExtraReps;
}

// How many reps beyond the aim: reserve counts where it is known.
double extraReps(const Session& session, const RepGoal& goal)
{
    const PerformedSet* set = lastCounted(session);
    if (set == nullptr || set->stopped == StopReason::Pain) {
        return -goal.reps;
    }
    return set->reserve ? *set->reps + set->reserve->reps() - goal.reps - goal.reserve
                        : *set->reps - goal.reps;
}

// A counted set of last time reached the aim, as far as is known: nothing but doubt speaks against
// the same again.
bool isMet(const Session& session, const RepGoal& goal)
{
    const PerformedSet* set = lastCounted(session);
    return set != nullptr && *set->reps >= goal.reps && set->isClean != false &&
           set->stopped != StopReason::Pain && set->stopped != StopReason::Form &&
           (!set->reserve || *set->reps + set->reserve->reps() >= goal.reps + goal.reserve);
}

bool isForOtherReps(const Session& session, const RepGoal& goal)
{
    return std::none_of(session.sets.begin(), session.sets.end(), [&](const PerformedSet* set) {
        // Fewer reps with everything given is a miss of the same aim, not another one.
        const bool isAll = set->stopped == StopReason::NoMore || *set->reps == 0 ||
                           (set->reserve && set->reserve->tenths == 0);
        const int apart = *set->reps - goal.reps;
        return std::abs(apart) <= kSameReps || (apart < 0 && apart >= -kMissedReps && isAll) ||
               (apart > 0 && apart <= 2 * kSameReps);
    });
}

// Weeks running up to the last session, none of them skipped.
int weeksRunning(const std::vector<Session>& sessions)
{
    std::size_t first = sessions.size() - 1;
    while (first > 0 && sessions[first].day - sessions[first - 1].day <= 10) {
        --first;
    }
    return (sessions.back().day - sessions[first].day) / 7;
}

// Table "load increases" of the handbook, in kilograms: the high end for each kind.
double handbookStep(const ProgressionQuestion& question)
{
    const bool isNew = question.experience.value_or(Experience::Novice) == Experience::Novice;
    if (question.isLowerBody) {
        return isNew ? 4.0 : 7.0;
    }
    return isNew ? 2.0 : 4.0;
}

class Decider {
public:
    Decider(const ProgressionQuestion& question, const AvailableLoads& loads)
        : m_question(question)
        , m_loads(loads)
        , m_sessions(sessionsOf(question))
    {
        m_answer.reps = question.goal.reps;
        m_answer.load = question.allowed;
    }

    Progression decide()
    {
        if (m_sessions.empty()) {
            return answer(LoadDecision::Start, ProgressionRule::NothingBefore, m_answer.load);
        }
        const Session& last = m_sessions.back();
        m_answer.last = last.top;
        m_answer.lastDay = last.day;
        m_next = m_loads.above(last.top);
        if (m_next) {
            m_answer.jumpPercent = 100.0 * (m_next->kilograms() / last.top.kilograms() - 1.0);
        }
        m_answer.pain = painOf(last);
        if (m_answer.pain >= kPainThatMatters) {
            return lower(ProgressionRule::Pain, kLighter);
        }
        m_answer.pain = 0;
        if (const int away = m_question.today - last.day; away > kReturnDays) {
            return lower(ProgressionRule::Return, away > kLongAwayDays ? kMuchLighter : kLighter);
        }
        if (isForOtherReps(last, m_question.goal)) {
            return answer(LoadDecision::Start, ProgressionRule::OtherReps, m_answer.load);
        }
        if (missedTwice()) {
            const bool isLong = weeksRunning(m_sessions) >= kHardWeeks;
            return lower(isLong ? ProgressionRule::Deload : ProgressionRule::MissedTwice, kLighter);
        }
        return bySize();
    }

private:
    Progression
    answer(LoadDecision decision, ProgressionRule rule, const std::optional<AvailableLoad>& load)
    {
        m_answer.decision = decision;
        m_answer.rule = rule;
        m_answer.load = load;
        return m_answer;
    }

    // The lighter of a share of last time and of what the estimate allows.
    Progression lower(ProgressionRule rule, double share)
    {
        const double most = m_question.allowed ? m_question.allowed->kilograms() : 0.0;
        const double kilograms = std::min(most, share * m_answer.last->kilograms());
        return answer(LoadDecision::Lower, rule, m_loads.atMost(kilograms));
    }

    [[nodiscard]] Progression hold(ProgressionRule rule)
    {
        auto load = m_loads.exactly(*m_answer.last);
        if (!load) { // a load from elsewhere, or a piece that is gone
            load = m_loads.atMost(m_answer.last->kilograms());
        }
        return answer(LoadDecision::Hold, rule, load);
    }

    [[nodiscard]] bool missedTwice() const
    {
        const std::size_t count = m_sessions.size();
        return count >= 2 && isMissed(m_sessions[count - 1], m_question.goal) &&
               isMissed(m_sessions[count - 2], m_question.goal);
    }

    [[nodiscard]] bool isCountedLately() const
    {
        const std::size_t from =
            m_sessions.size() > kCountedWithin ? m_sessions.size() - kCountedWithin : 0;
        return std::any_of(m_sessions.begin() + static_cast<std::ptrdiff_t>(from),
                           m_sessions.end(),
                           [](const Session& session) {
                               return std::any_of(
                                   session.sets.begin(),
                                   session.sets.end(),
                                   [](const PerformedSet* set) { return isCounted(*set); });
                           });
    }

    [[nodiscard]] bool isTwoForTwo() const
    {
        const std::size_t count = m_sessions.size();
        if (count < 2) {
            return false;
        }
        const Session& last = m_sessions[count - 1];
        const Session& previous = m_sessions[count - 2];
        return exactWeight(last.top) == exactWeight(previous.top) &&
               extraReps(last, m_question.goal) >= kExtraReps &&
               extraReps(previous, m_question.goal) >= kExtraReps;
    }

    // Nothing forbids: the size of last time's load beside what the estimate allows.
    Progression bySize()
    {
        const std::int64_t last = exactWeight(*m_answer.last);
        const bool isWellMet = isMet(m_sessions.back(), m_question.goal) &&
                               kilogramsOf(last) <= m_question.mostKilograms;
        const bool isTooHeavy =
            kilogramsOf(last) > kHardlyMore * m_question.loadKilograms && !isWellMet;
        const std::int64_t allowed = m_question.allowed ? m_question.allowed->exact : 0;
        if (allowed < last) {
            return isTooHeavy ? answer(LoadDecision::Lower,
                                       ProgressionRule::HarderThanMeant,
                                       m_question.allowed)
                              : hold(ProgressionRule::AsPlanned);
        }
        if (allowed == last) {
            return hold(m_next ? ProgressionRule::AsPlanned : ProgressionRule::NoHeavierPiece);
        }
        if (!isCountedLately()) {
            return hold(ProgressionRule::NotCounted);
        }
        if (!isClean(m_sessions.back())) {
            return hold(ProgressionRule::NotClean);
        }
        return raise();
    }

    Progression raise()
    {
        const double extra = extraReps(m_sessions.back(), m_question.goal);
        const bool isTwo = isTwoForTwo();
        if (m_answer.jumpPercent > kLargeJumpPercent && !isTwo) {
            Progression held = hold(ProgressionRule::RepsFirst);
            held.reps = m_question.goal.reps + kExtraReps;
            return held;
        }
        double most = m_next->kilograms();
        ProgressionRule rule = ProgressionRule::StrengthGrew;
        if (isTwo) {
            rule = ProgressionRule::TwoForTwo;
            most = std::max(most, m_answer.last->kilograms() + handbookStep(m_question));
        } else if (extra >= kExtraReps) {
            rule = ProgressionRule::EasierThanMeant;
            most = std::max(most, m_answer.last->kilograms() * kMostRaise);
        }
        most = std::min(most, m_question.allowed->kilograms());
        return answer(LoadDecision::Raise, rule, m_loads.atMost(most + kilogramsOf(kSlack)));
    }

    const ProgressionQuestion& m_question;
    const AvailableLoads& m_loads;
    std::vector<Session> m_sessions;
    std::optional<AvailableLoad> m_next;
    Progression m_answer;
};

} // namespace

Progression decideLoad(const ProgressionQuestion& question, const AvailableLoads& loads)
{
    return Decider(question, loads).decide();
}

} // namespace levelbar
