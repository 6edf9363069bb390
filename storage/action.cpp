// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "storage/action.h"

#include "storage/migrations.h"
#include "storage/recorded_tables.h"
#include "storage/rep_curve_reader.h"
#include "storage/row_binder.h"
#include "storage/row_columns.h"
#include "storage/sqlite_errors.h"

#include <sqlite3.h>

#include <algorithm>
#include <map>
#include <set>

namespace levelbar::storage {

namespace {

// Actions recorded under an older schema than this cannot be taken back: a migration dropped,
// renamed or reordered what they touch.
constexpr int kOldestReversibleSchema = 1;
constexpr int kRecentForLiveness = 10000;

void requireOk(int code, const char* what)
{
    if (code != SQLITE_OK) {
        throw SQLite::Exception(std::string(what) + ": " + sqlite3_errstr(code), code);
    }
}

struct SessionDeleter {
    void operator()(sqlite3_session* session) const { sqlite3session_delete(session); }
};

using Session = std::unique_ptr<sqlite3_session, SessionDeleter>;

Session startSession(SQLite::Database& database)
{
    sqlite3_session* raw = nullptr;
    requireOk(sqlite3session_create(database.getHandle(), "main", &raw), "recording");
    Session session(raw);
    for (const RecordedTable& table : kRecordedTables) {
        requireOk(sqlite3session_attach(session.get(), table.name), "recording");
    }
    return session;
}

std::vector<unsigned char> changesetOf(sqlite3_session* session)
{
    int size = 0;
    void* bytes = nullptr;
    requireOk(sqlite3session_changeset(session, &size, &bytes), "recording");
    const auto* first = static_cast<const unsigned char*>(bytes);
    std::vector<unsigned char> changeset(first, first + size);
    sqlite3_free(bytes);
    return changeset;
}

void noteKind(TableKind kind, Change& change)
{
    switch (kind) {
    case TableKind::Sets:
        change.touchesSets = true;
        break;
    case TableKind::Trials:
        change.touchesTrials = true;
        break;
    case TableKind::Roster:
        change.touchesRoster = true;
        break;
    case TableKind::Classes:
        change.touchesClasses = true;
        break;
    case TableKind::Library:
        change.touchesLibrary = true;
        break;
    case TableKind::Today:
        change.touchesToday = true;
        break;
    }
}

// Who and what a changeset touches.
Change describe(std::vector<unsigned char>& changeset)
{
    Change change;
    std::set<MemberId> members;
    sqlite3_changeset_iter* iterator = nullptr;
    requireOk(
        sqlite3changeset_start(&iterator, static_cast<int>(changeset.size()), changeset.data()),
        "reading a recording");
    while (sqlite3changeset_next(iterator) == SQLITE_ROW) {
        const char* name = nullptr;
        int columns = 0;
        int operation = 0;
        int isIndirect = 0;
        sqlite3changeset_op(iterator, &name, &columns, &operation, &isIndirect);
        const auto table =
            std::find_if(kRecordedTables.begin(), kRecordedTables.end(), [&](const auto& known) {
                return std::string_view(known.name) == name;
            });
        if (table == kRecordedTables.end()) {
            continue;
        }
        noteKind(table->kind, change);
        if (table->memberColumn >= 0) {
            sqlite3_value* value = nullptr;
            if (operation == SQLITE_INSERT) {
                sqlite3changeset_new(iterator, table->memberColumn, &value);
            } else {
                sqlite3changeset_old(iterator, table->memberColumn, &value);
            }
            if (value != nullptr && sqlite3_value_type(value) != SQLITE_NULL) {
                members.insert(MemberId{sqlite3_value_int64(value)});
            }
        }
    }
    requireOk(sqlite3changeset_finalize(iterator), "reading a recording");
    change.members.assign(members.begin(), members.end());
    return change;
}

void requireWritable(const Logbook& logbook)
{
    if (!logbook.canWrite()) {
        throw StoreError(StoreErrorKind::ReadOnly,
                         logbook.path().string() + " was opened for reading only.");
    }
}

int onConflict(void* /*context*/, int /*why*/, sqlite3_changeset_iter* /*at*/)
{
    return SQLITE_CHANGESET_ABORT;
}

ActionId insertAction(SQLite::Database& database,
                      ActionKind kind,
                      Moment now,
                      std::optional<ActionId> reverses,
                      const std::vector<unsigned char>& changeset)
{
    SQLite::Statement insert(database,
                             "INSERT INTO action (kind, at, schema_version, reverses, changeset) "
                             "VALUES (?, ?, ?, ?, ?)");
    Binder(insert).add(kind).add(now).add(currentSchemaVersion()).add(reverses);
    insert.bind(5, changeset.data(), static_cast<int>(changeset.size()));
    insert.exec();
    return ActionId{database.getLastInsertRowid()};
}

} // namespace

struct Action::Recording {
    Recording(Logbook& logbook, ActionKind actionKind, Moment moment)
        : kind(actionKind)
        , now(moment)
        , transaction(logbook.database(), SQLite::TransactionBehavior::IMMEDIATE)
        , changesBefore(sqlite3_total_changes(logbook.database().getHandle()))
        , session(startSession(logbook.database()))
    {
    }

    ActionKind kind;
    Moment now;
    std::optional<ActionId> reverses;
    SQLite::Transaction transaction; // before the session, so that it ends after it
    int changesBefore;
    Session session;
};

WriteScope::WriteScope(Logbook& logbook)
    : m_logbook(logbook)
{
    forgetWhenChanged(logbook);
    logbook.rememberedCurves().isHeld = true;
}

WriteScope::~WriteScope()
{
    // Learnt in between may rest on what was never committed.
    m_logbook.rememberedCurves() = {};
}

Action::Action(Logbook& logbook, ActionKind kind, Moment now)
    : WriteScope(logbook)
{
    requireWritable(logbook);
    translateErrors(logbook.path(),
                    [&] { m_recording = std::make_unique<Recording>(logbook, kind, now); });
}

Action::~Action() = default;

Change Action::commit()
{
    // Whatever happens, this is over: on a throw the destructor of `recording` rolls back.
    const std::unique_ptr<Recording> recording = std::move(m_recording);
    SQLite::Database& database = logbook().database();
    return translateErrors(logbook().path(), [&]() -> Change {
        std::vector<unsigned char> changeset = changesetOf(recording->session.get());
        if (changeset.empty()) {
            if (sqlite3_total_changes(database.getHandle()) != recording->changesBefore) {
                throw StoreError(StoreErrorKind::Other,
                                 "The change could not be recorded, so it was not made.");
            }
            return {};
        }
        Change change = describe(changeset);
        recording->session.reset();
        const ActionId id =
            insertAction(database, recording->kind, recording->now, recording->reverses, changeset);
        SQLite::Statement note(database, "INSERT INTO action_member VALUES (?, ?)");
        for (const MemberId member : change.members) {
            Binder(note).add(id).add(member);
            note.exec();
            note.reset();
        }
        recording->transaction.commit();
        return change;
    });
}

std::vector<ActionEntry> recentActions(const Logbook& logbook, int most)
{
    return translateErrors(logbook.path(), [&] {
        SQLite::Database& database = logbook.database();
        SQLite::Statement select(
            database,
            "SELECT id, kind, at, reverses, schema_version FROM action ORDER BY id DESC LIMIT ?");
        select.bind(1, most);
        SQLite::Statement members(
            database, "SELECT member FROM action_member WHERE action = ? ORDER BY member");
        std::vector<ActionEntry> entries;
        std::map<ActionId, ActionId> reversed; // what is reversed, by what; newest first
        while (select.executeStep()) {
            Columns columns(select);
            ActionEntry entry;
            entry.id = columns.id<ActionId>();
            entry.kind = columns.word<ActionKind>();
            entry.at = Moment{columns.number()};
            entry.reverses = columns.maybeId<ActionId>();
            const auto by = reversed.find(entry.id);
            if (by != reversed.end()) {
                entry.reversedBy = by->second;
            } else if (entry.reverses) {
                // Only a reversal that stands counts; those that were reversed came up before.
                reversed[*entry.reverses] = entry.id;
            }
            entry.canBeTakenBack = columns.whole() >= kOldestReversibleSchema;
            members.bind(1, entry.id.value);
            while (members.executeStep()) {
                entry.members.push_back(MemberId{members.getColumn(0).getInt64()});
            }
            members.reset();
            entries.push_back(std::move(entry));
        }
        return entries;
    });
}

std::optional<ActionId> lastTakeable(const Logbook& logbook)
{
    for (const ActionEntry& entry : recentActions(logbook, kRecentForLiveness)) {
        if (entry.kind != ActionKind::TakeBack && !entry.reversedBy) {
            return entry.canBeTakenBack ? std::optional(entry.id) : std::nullopt;
        }
    }
    return std::nullopt;
}

std::optional<ActionId> lastTakenBack(const Logbook& logbook)
{
    const std::vector<ActionEntry> entries = recentActions(logbook, kRecentForLiveness);
    std::set<ActionId> takings;
    for (const ActionEntry& entry : entries) {
        if (entry.kind == ActionKind::TakeBack) {
            takings.insert(entry.id);
        }
    }
    for (const ActionEntry& entry : entries) {
        if (entry.kind != ActionKind::TakeBack) {
            return std::nullopt; // something new was done since
        }
        const bool isOfTaking = entry.reverses && takings.contains(*entry.reverses);
        if (!isOfTaking && !entry.reversedBy) {
            return entry.id;
        }
    }
    return std::nullopt;
}

Change takeBack(Logbook& logbook, ActionId action, Moment now)
{
    return Action::reverse(logbook, action, now);
}

Change Action::reverse(Logbook& logbook, ActionId action, Moment now)
{
    for (const ActionEntry& entry : recentActions(logbook, kRecentForLiveness)) {
        if (entry.id == action && (entry.reversedBy || !entry.canBeTakenBack)) {
            throw StoreError(StoreErrorKind::Constraint,
                             entry.reversedBy ? "This was taken back already."
                                              : "This can no longer be taken back.");
        }
    }
    Action reversal(logbook, ActionKind::TakeBack, now);
    reversal.m_recording->reverses = action;
    translateErrors(logbook.path(), [&] {
        SQLite::Database& database = logbook.database();
        SQLite::Statement select(database, "SELECT changeset FROM action WHERE id = ?");
        select.bind(1, action.value);
        if (!select.executeStep()) {
            throw StoreError(StoreErrorKind::Constraint, "There is no such action to take back.");
        }
        const SQLite::Column column = select.getColumn(0);
        int size = 0;
        void* inverse = nullptr;
        requireOk(sqlite3changeset_invert(column.getBytes(), column.getBlob(), &size, &inverse),
                  "taking back");
        select.reset();
        const int code = sqlite3changeset_apply(
            database.getHandle(), size, inverse, nullptr, &onConflict, nullptr);
        sqlite3_free(inverse);
        if (code == SQLITE_ABORT || code == SQLITE_CONSTRAINT) {
            throw StoreError(StoreErrorKind::Constraint,
                             "Later changes build on this one; take those back first.");
        }
        requireOk(code, "taking back");
    });
    return reversal.commit();
}

} // namespace levelbar::storage
