// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "storage/history_reader.h"

#include "storage/member_store.h"
#include "storage/rep_curve_reader.h"
#include "storage/row_binder.h"
#include "storage/row_columns.h"
#include "storage/sqlite_errors.h"

#include <SQLiteCpp/Savepoint.h>

#include <algorithm>
#include <optional>

namespace levelbar::storage {

namespace {

// Only what the engine reads, in the order of the primary key: no sorting, one pass.
constexpr const char* kSets = R"sql(
SELECT member, exercise, side, day, number, day_order, reps, seconds_tenths, metres_tenths, load,
       load_unit, reserve_tenths, known, kind, stopped, is_clean, pain
FROM done_set WHERE member BETWEEN ? AND ? ORDER BY member, exercise, side, day, number
)sql";

constexpr const char* kTrials = R"sql(
SELECT member, test, side, day, number, value, unit, is_valid
FROM trial WHERE member BETWEEN ? AND ? ORDER BY member, test, side, day, number
)sql";

// A cursor over rows that are ordered by member.
class Cursor {
public:
    Cursor(SQLite::Database& database, const char* sql, MemberId from, MemberId to)
        : m_statement(database, sql)
    {
        Binder(m_statement).add(from).add(to);
        advance();
    }

    [[nodiscard]] bool isAt(MemberId member) const { return m_hasRow && m_member == member; }

    // Rows of people who are not handed over.
    void skipBefore(MemberId member)
    {
        while (m_hasRow && m_member < member) {
            advance();
        }
    }

    [[nodiscard]] Columns columns() { return Columns(m_statement, 1); }

    void advance()
    {
        m_hasRow = m_statement.executeStep();
        if (m_hasRow) {
            m_member = MemberId{m_statement.getColumn(0).getInt64()};
        }
    }

private:
    SQLite::Statement m_statement;
    MemberId m_member;
    bool m_hasRow = false;
};

void takeSet(Columns columns, MemberHistory& history)
{
    const auto exercise = columns.id<ExerciseId>();
    const auto side = columns.word<Side>();
    if (history.sets.empty() || history.sets.back().exercise != exercise ||
        history.sets.back().side != side) {
        history.sets.push_back({exercise, side, {}});
    }
    PerformedSet& set = history.sets.back().sets.emplace_back();
    set.day = columns.day();
    set.number = columns.whole();
    set.order = columns.whole();
    set.reps = columns.maybeWhole();
    set.secondsTenths = columns.maybeWhole();
    set.metresTenths = columns.maybeWhole();
    set.load = columns.mass();
    if (const auto tenths = columns.maybeWhole()) {
        set.reserve = Reserve{*tenths};
    }
    set.known = columns.word<HowKnown>();
    set.kind = columns.word<SetKind>();
    set.stopped = columns.maybeWord<StopReason>();
    set.isClean = columns.maybeFlag();
    set.pain = columns.maybeWhole();
}

void takeTrial(Columns columns, MemberHistory& history)
{
    const auto test = columns.id<TestId>();
    const auto side = columns.word<Side>();
    if (history.trials.empty() || history.trials.back().test != test ||
        history.trials.back().side != side) {
        history.trials.push_back({test, side, {}});
    }
    Trial& trial = history.trials.back().trials.emplace_back();
    trial.member = history.member.id;
    trial.test = test;
    trial.side = side;
    trial.day = columns.day();
    trial.number = columns.whole();
    trial.valueThousandths = columns.number();
    trial.unit = columns.text();
    trial.isValid = columns.flag();
}

void read(const Logbook& logbook,
          std::vector<Member> members,
          const RepCurveExpectation& curve,
          const std::function<void(MemberHistory&)>& visit)
{
    std::sort(members.begin(), members.end(), [](const Member& a, const Member& b) {
        return a.id < b.id;
    });
    SQLite::Database& database = logbook.database();
    Cursor sets(database, kSets, members.front().id, members.back().id);
    Cursor trials(database, kTrials, members.front().id, members.back().id);
    for (Member& member : members) {
        MemberHistory history;
        history.member = std::move(member);
        history.curve = curve;
        const MemberId id = history.member.id;
        sets.skipBefore(id);
        for (; sets.isAt(id); sets.advance()) {
            takeSet(sets.columns(), history);
        }
        trials.skipBefore(id);
        for (; trials.isAt(id); trials.advance()) {
            takeTrial(trials.columns(), history);
        }
        visit(history);
    }
}

} // namespace

void forEachHistory(const Logbook& logbook,
                    Day asOf,
                    const std::function<void(MemberHistory&)>& visit)
{
    translateErrors(logbook.path(), [&] {
        // One state of the file from first to last, whatever is written meanwhile. A reader
        // inside an open transaction already has that.
        std::optional<SQLite::Savepoint> reading;
        reading.emplace(logbook.database(), "reading_histories");
        std::vector<Member> members = MemberStore(logbook).all();
        if (!members.empty()) {
            read(logbook, std::move(members), repCurveOn(logbook, asOf), visit);
        }
        reading->release();
    });
}

std::optional<MemberHistory> historyOf(const Logbook& logbook, MemberId member, Day asOf)
{
    auto history = bareHistoryOf(logbook, member);
    if (history) {
        history->curve = repCurveOn(logbook, asOf);
    }
    return history;
}

std::optional<MemberHistory> bareHistoryOf(const Logbook& logbook, MemberId member)
{
    const auto found = MemberStore(logbook).byId(member);
    if (!found) {
        return std::nullopt;
    }
    std::optional<MemberHistory> result;
    translateErrors(logbook.path(), [&] {
        read(logbook, {*found}, {}, [&](MemberHistory& history) { result = std::move(history); });
    });
    return result;
}

} // namespace levelbar::storage
