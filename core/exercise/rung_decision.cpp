// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/exercise/rung_decision.h"

#include <algorithm>
#include <array>
#include <map>

namespace levelbar {

namespace {

constexpr int kTenths = 10;

// One day on the rung: the sets of both sides, or all of them on the first.
struct Session {
    Day day;
    std::array<std::vector<const PerformedSet*>, 2> sides;
};

int amountOf(const PerformedSet& set, AmountKind kind)
{
    switch (kind) {
    case AmountKind::Reps:
        return set.reps.value_or(0);
    case AmountKind::Seconds:
        return set.secondsTenths.value_or(0) / kTenths;
    case AmountKind::Metres:
        return set.metresTenths.value_or(0) / kTenths;
    }
    return 0;
}

bool isCounted(const PerformedSet& set)
{
    const bool isSeen = set.known == HowKnown::Counted || set.known == HowKnown::Sheet;
    return isSeen && !set.isAtLeast;
}

bool isClean(const PerformedSet& set)
{
    return set.isClean != false && set.stopped != StopReason::Form;
}

// Ended before the body did: what was left is not known.
bool isCutShort(const PerformedSet& set)
{
    return !set.reserve && (set.stopped == StopReason::Planned ||
                            set.stopped == StopReason::Capped || set.stopped == StopReason::Time);
}

class Judge {
public:
    Judge(const Rung& rung, const RungQuestion& question)
        : m_rung(rung)
        , m_question(question)
    {
        std::map<Day, Session> days;
        add(question.sets, 0, days);
        if (question.isOneSided) {
            add(question.otherSide, 1, days);
        }
        for (auto& [day, session] : days) {
            session.day = day;
            m_sessions.push_back(std::move(session));
        }
    }

    [[nodiscard]] RungDecision decide() const
    {
        RungDecision decision;
        const std::optional<Day> last =
            m_sessions.empty() ? m_question.since : std::optional(m_sessions.back().day);
        if (!last) {
            return decision;
        }
        decision.daysAway = m_question.today - *last;
        if (!m_sessions.empty()) {
            decision.pain = painOf(m_sessions.back());
            decision.amount = weakest(m_sessions.back(), [&](const PerformedSet& set) {
                return std::optional(amountOf(set, m_question.amount));
            });
            decision.sessionsReached = runOf([&](const Session& s) { return passes(s); });
        }
        decision.reason = reasonFor(decision);
        return decision;
    }

private:
    void add(std::span<const PerformedSet> sets, std::size_t side, std::map<Day, Session>& days)
    {
        for (const PerformedSet& set : sets) {
            if (set.day < m_question.today && set.kind != SetKind::Ramp &&
                (!m_question.since || set.day >= *m_question.since)) {
                days[set.day].sides.at(side).push_back(&set);
            }
        }
    }

    [[nodiscard]] std::size_t sideCount() const { return m_question.isOneSided ? 2 : 1; }

    // Sessions up to the last one, without a gap, for which `holds`.
    template <typename Holds> [[nodiscard]] int runOf(const Holds& holds) const
    {
        const auto end = std::find_if_not(m_sessions.rbegin(), m_sessions.rend(), holds);
        return static_cast<int>(end - m_sessions.rbegin());
    }

    // The best set of each side by `value`, and of these the less; nothing when a side has none.
    template <typename Value>
    [[nodiscard]] std::optional<int> weakest(const Session& session, const Value& value) const
    {
        std::optional<int> least;
        for (std::size_t side = 0; side < sideCount(); ++side) {
            std::optional<int> best;
            for (const PerformedSet* set : session.sides.at(side)) {
                best = std::max(best, value(*set)); // nothing is less than any number
            }
            if (!best) {
                return std::nullopt;
            }
            least = least ? std::min(least, best) : best;
        }
        return least;
    }

    // On every side, at least `count` sets for which `holds`.
    template <typename Holds>
    [[nodiscard]] bool hasSets(const Session& session, int count, const Holds& holds) const
    {
        for (std::size_t side = 0; side < sideCount(); ++side) {
            const auto& sets = session.sides.at(side);
            if (std::count_if(sets.begin(), sets.end(), [&](const PerformedSet* set) {
                    return holds(*set);
                }) < count) {
                return false;
            }
        }
        return true;
    }

    [[nodiscard]] bool isEnough(const PerformedSet& set) const
    {
        return amountOf(set, m_question.amount) >= m_rung.up.amount;
    }

    [[nodiscard]] bool isHeavyEnough(const PerformedSet& set) const
    {
        constexpr double kSlack = 1e-9; // pounds become kilograms in doubles
        return m_rung.up.loadPercent == 0 ||
               (m_question.bodyMassKilograms &&
                100.0 * set.load.kilograms() + kSlack >=
                    m_rung.up.loadPercent * *m_question.bodyMassKilograms);
    }

    [[nodiscard]] bool reaches(const PerformedSet& set) const
    {
        return isEnough(set) && isHeavyEnough(set) && isClean(set);
    }

    [[nodiscard]] bool passes(const Session& session) const
    {
        return painOf(session) == 0 &&
               hasSets(session, m_rung.up.sets, [&](const auto& set) { return reaches(set); }) &&
               hasSets(session, 1, [&](const auto& set) { return reaches(set) && isCounted(set); });
    }

    [[nodiscard]] bool isTooFew(const Session& session) const
    {
        bool isKnown = true;
        for (std::size_t side = 0; side < sideCount(); ++side) {
            for (const PerformedSet* set : session.sides.at(side)) {
                isKnown = isKnown && !isCutShort(*set);
            }
        }
        const auto had = weakest(session, [&](const PerformedSet& set) -> std::optional<int> {
            if (!isCounted(set)) {
                return std::nullopt;
            }
            const bool isReps = m_question.amount == AmountKind::Reps;
            const int left = isReps && set.reserve ? set.reserve->tenths / kTenths : 0;
            return amountOf(set, m_question.amount) + left;
        });
        return isKnown && had && *had < m_rung.down.fewerThan;
    }

    // The worst score; a set that ended for pain counts at least as the gate's.
    [[nodiscard]] int painOf(const Session& session) const
    {
        int worst = 0;
        for (const auto& sets : session.sides) {
            for (const PerformedSet* set : sets) {
                const int ended = set->stopped == StopReason::Pain ? m_rung.down.pain : 0;
                worst = std::max({worst, set->pain.value_or(0), ended});
            }
        }
        return worst;
    }

    [[nodiscard]] RungReason reasonFor(const RungDecision& decision) const
    {
        if (decision.pain >= m_rung.down.pain) {
            return RungReason::Pain;
        }
        if (decision.daysAway > m_rung.down.daysAway) {
            return RungReason::Absence;
        }
        if (m_sessions.empty()) {
            return RungReason::NothingBefore;
        }
        if (runOf([&](const Session& s) { return isTooFew(s); }) >= m_rung.down.sessions) {
            return RungReason::TooFew;
        }
        if (decision.sessionsReached >= m_rung.up.sessions) {
            return RungReason::GateReached;
        }
        return decision.sessionsReached > 0 ? RungReason::MoreSessions
                                            : whatIsMissing(m_sessions.back(), decision.pain);
    }

    // Why the last session does not pass the gate up.
    [[nodiscard]] RungReason whatIsMissing(const Session& last, int pain) const
    {
        const int sets = m_rung.up.sets;
        if (pain > 0) {
            return RungReason::SomePain;
        }
        if (!hasSets(last, sets, [](const auto&) { return true; })) {
            return RungReason::TooFewSets;
        }
        if (!hasSets(last, sets, [&](const auto& set) { return isEnough(set); })) {
            return RungReason::NotYet;
        }
        if (m_rung.up.loadPercent > 0 && !m_question.bodyMassKilograms) {
            return RungReason::BodyMassUnknown;
        }
        if (!hasSets(
                last, sets, [&](const auto& set) { return isEnough(set) && isHeavyEnough(set); })) {
            return RungReason::TooLight;
        }
        return hasSets(last, sets, [&](const auto& set) { return reaches(set); })
                   ? RungReason::NotCounted
                   : RungReason::NotClean;
    }

    const Rung& m_rung;
    const RungQuestion& m_question;
    std::vector<Session> m_sessions;
};

RungMove moveFor(RungReason reason)
{
    switch (reason) {
    case RungReason::Pain:
    case RungReason::Absence:
    case RungReason::TooFew:
        return RungMove::Down;
    case RungReason::GateReached:
        return RungMove::Up;
    default:
        return RungMove::Stay;
    }
}

} // namespace

RungDecision decideRung(const Ladder& ladder, std::size_t place, const RungQuestion& question)
{
    RungDecision decision = Judge(ladder.rungs.at(place), question).decide();
    decision.move = moveFor(decision.reason);
    decision.isAtEnd = (decision.move == RungMove::Down && place == 0) ||
                       (decision.move == RungMove::Up && place + 1 == ladder.rungs.size());
    if (decision.isAtEnd) {
        decision.move = RungMove::Stay;
    }
    return decision;
}

std::string_view rungReasonTemplate(RungReason reason)
{
    switch (reason) {
    case RungReason::NothingBefore:
        return "Not done on this rung yet.";
    case RungReason::Pain:
        return "It hurt last time (%1 of 10).";
    case RungReason::Absence:
        return "%1 days away, more than %2.";
    case RungReason::TooFew:
        return "Fewer than %1 in %2 sessions running.";
    case RungReason::SomePain:
        return "It hurt a little last time (%1 of 10): not up with that.";
    case RungReason::TooFewSets:
        return "Fewer than %1 sets last time.";
    case RungReason::BodyMassUnknown:
        return "%1 % of body mass is asked for; the body mass is not known.";
    case RungReason::TooLight:
        return "Enough, but with less than %1 % of body mass.";
    case RungReason::NotClean:
        return "Enough, but not clean.";
    case RungReason::NotCounted:
        return "Enough, but nobody counted.";
    case RungReason::NotYet:
        return "%1 last time; %2 in each set are asked for.";
    case RungReason::MoreSessions:
        return "%1 of %2 sessions running as asked for.";
    case RungReason::GateReached:
        return "%1 sessions running as asked for.";
    }
    return "";
}

std::vector<std::string> rungReasonArguments(const RungDecision& decision, const Rung& rung)
{
    switch (decision.reason) {
    case RungReason::Pain:
    case RungReason::SomePain:
        return {std::to_string(decision.pain)};
    case RungReason::Absence:
        return {std::to_string(decision.daysAway), std::to_string(rung.down.daysAway)};
    case RungReason::TooFew:
        return {std::to_string(rung.down.fewerThan), std::to_string(rung.down.sessions)};
    case RungReason::TooFewSets:
        return {std::to_string(rung.up.sets)};
    case RungReason::BodyMassUnknown:
    case RungReason::TooLight:
        return {std::to_string(rung.up.loadPercent)};
    case RungReason::NotYet:
        return {std::to_string(decision.amount.value_or(0)), std::to_string(rung.up.amount)};
    case RungReason::MoreSessions:
        return {std::to_string(decision.sessionsReached), std::to_string(rung.up.sessions)};
    case RungReason::GateReached:
        return {std::to_string(decision.sessionsReached)};
    default:
        return {};
    }
}

} // namespace levelbar
