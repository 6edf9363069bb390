// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "storage/logbook.h"

#include "storage/migrations.h"
#include "storage/shipped_library.h"
#include "storage/sqlite_errors.h"
#include "storage/whole_file.h"
#include "storage/writer_lock.h"

#include <SQLiteCpp/Backup.h>
#include <SQLiteCpp/SQLiteCpp.h>
#include <fmt/format.h>
#include <sqlite3.h>

#include <unistd.h>

namespace levelbar::storage {

namespace {

constexpr int kBusyMilliseconds = 5000;

// One thread uses a connection, so SQLite need not lock it at every call; interrupting from another
// thread is safe all the same (sqlite3_interrupt).
int readWrite()
{
    return SQLite::OPEN_READWRITE | SQLite::OPEN_NOMUTEX;
}

void setUp(SQLite::Database& database)
{
    database.setBusyTimeout(kBusyMilliseconds);
    database.exec("PRAGMA foreign_keys = ON");
    database.exec("PRAGMA trusted_schema = OFF");
}

// Write-ahead logging, and a confirmed set is on the disk.
void setUpForWriting(SQLite::Database& database)
{
    database.exec("PRAGMA journal_mode = WAL");
    database.exec("PRAGMA synchronous = FULL");
}

void checkIsOurs(SQLite::Database& database, const std::filesystem::path& path)
{
    const int id = database.execAndGet("PRAGMA application_id").getInt();
    if (id != kApplicationId) {
        throw StoreError(StoreErrorKind::NotALogbook,
                         path.string() + " is not a Levelbar logbook.");
    }
    const int version = database.execAndGet("PRAGMA user_version").getInt();
    if (version > currentSchemaVersion()) {
        throw StoreError(
            StoreErrorKind::TooNew,
            fmt::format(
                "{} was written by a newer Levelbar (schema {}, this one knows {}); open it "
                "with that one.",
                path.string(),
                version,
                currentSchemaVersion()));
    }
}

// SQLite reads a torn last page as if zeros followed.
void checkIsWhole(SQLite::Database& database, const std::filesystem::path& path)
{
    const std::int64_t page = database.execAndGet("PRAGMA page_size").getInt64();
    const auto size = static_cast<std::int64_t>(std::filesystem::file_size(path));
    if (size % page != 0) {
        throw StoreError(StoreErrorKind::Corrupt,
                         path.string() + " is cut short (its last page ends early); restore a "
                                         "backup.");
    }
}

std::string uriOf(const std::filesystem::path& path, const char* query)
{
    std::string uri = "file:";
    for (const char c : path.string()) {
        if (c == '%' || c == '?' || c == '#') {
            uri += fmt::format("%{:02X}", static_cast<unsigned char>(c));
        } else {
            uri += c;
        }
    }
    return uri + query;
}

std::filesystem::path beside(std::filesystem::path path, const char* ending)
{
    path += ending;
    return path;
}

// At rest a logbook is one file: where nothing can be written beside it, SQLite is told that it
// will not change.
std::string readOnlyName(const std::filesystem::path& path)
{
    const std::filesystem::path folder = path.has_parent_path() ? path.parent_path() : ".";
    if (::access(folder.c_str(), W_OK) == 0) {
        return uriOf(path, "");
    }
    std::error_code error;
    const auto log = std::filesystem::file_size(beside(path, "-wal"), error);
    if (error || log == 0) {
        return uriOf(path, "?immutable=1");
    }
    if (!std::filesystem::exists(beside(path, "-shm"), error)) {
        throw StoreError(StoreErrorKind::ReadOnly,
                         beside(path, "-wal").string() +
                             " holds changes that were not brought in yet; copy both files into a "
                             "folder that may be written and open the logbook there.");
    }
    return uriOf(path, "");
}

void requireFile(const std::filesystem::path& path)
{
    std::error_code error;
    if (!std::filesystem::exists(path, error)) {
        throw StoreError(StoreErrorKind::NotFound, path.string() + " is not there.");
    }
    if (!std::filesystem::is_regular_file(path, error)) {
        throw StoreError(StoreErrorKind::NotALogbook,
                         path.string() + " is not a Levelbar logbook.");
    }
}

} // namespace

// The lock is declared first, so that it goes last: the file is at rest before others may write.
struct Logbook::Open {
    std::filesystem::path path;
    OpenMode mode = OpenMode::ReadWrite;
    WriterLock lock;
    std::unique_ptr<SQLite::Database> database;
};

Logbook::Logbook(std::unique_ptr<Open> open)
    : m_open(std::move(open))
{
}

Logbook::Logbook(Logbook&&) noexcept = default;

Logbook& Logbook::operator=(Logbook&& other) noexcept
{
    std::swap(m_open, other.m_open); // the other's destructor closes what was open here
    std::swap(m_curves, other.m_curves);
    return *this;
}

Logbook::~Logbook()
{
    try {
        close();
    } catch (...) { // NOLINT(bugprone-empty-catch): a destructor keeps failures to itself
    }
}

Logbook Logbook::create(const std::filesystem::path& path, Moment now, const OpenOptions& options)
{
    refuseLeftovers(path);
    makePrivateFile(path);
    try {
        return translateErrors(path, [&] {
            auto open = std::make_unique<Open>();
            open->path = path;
            open->lock = WriterLock(path);
            open->database = std::make_unique<SQLite::Database>(
                path.string(), readWrite(), kBusyMilliseconds, options.vfs);
            SQLite::Database& database = *open->database;
            setUp(database);
            database.exec(fmt::format("PRAGMA application_id = {}", kApplicationId));
            setUpForWriting(database);
            migrate(database, path, migrations());
            Logbook logbook(std::move(open));
            refreshShippedLibrary(logbook, now);
            return logbook;
        });
    } catch (...) {
        std::error_code ignored;
        std::filesystem::remove(path, ignored); // half a logbook is none
        throw;
    }
}

Logbook Logbook::open(const std::filesystem::path& path, Moment now, const OpenOptions& options)
{
    requireFile(path);
    return translateErrors(path, [&] {
        auto open = std::make_unique<Open>();
        open->path = path;
        open->mode = options.mode;
        if (options.mode == OpenMode::ReadOnly) {
            open->database = std::make_unique<SQLite::Database>(
                readOnlyName(path),
                SQLite::OPEN_READONLY | SQLite::OPEN_URI | SQLite::OPEN_NOMUTEX,
                kBusyMilliseconds,
                options.vfs);
            setUp(*open->database);
            checkIsOurs(*open->database, path);
            checkIsWhole(*open->database, path);
            if (!options.takesOlder && open->database->execAndGet("PRAGMA user_version").getInt() <
                                           currentSchemaVersion()) {
                throw StoreError(StoreErrorKind::ReadOnly,
                                 path.string() + " comes from an older Levelbar and must be opened "
                                                 "for writing once.");
            }
            return Logbook(std::move(open));
        }
        open->lock = WriterLock(path);
        open->database = std::make_unique<SQLite::Database>(
            path.string(), readWrite(), kBusyMilliseconds, options.vfs);
        SQLite::Database& database = *open->database;
        setUp(database);
        checkIsOurs(database, path);
        checkIsWhole(database, path);
        if (sqlite3_db_readonly(database.getHandle(), "main") != 0) {
            throw StoreError(StoreErrorKind::ReadOnly,
                             path.string() + " may not be written; check its permissions.");
        }
        setUpForWriting(database);
        migrate(database, path, migrations());
        Logbook logbook(std::move(open));
        refreshShippedLibrary(logbook, now);
        return logbook;
    });
}

Logbook Logbook::scratchCopy(const std::filesystem::path& path, Moment now)
{
    OpenOptions reading;
    reading.mode = OpenMode::ReadOnly;
    reading.takesOlder = true;
    const Logbook source = Logbook::open(path, now, reading);
    return translateErrors(path, [&] {
        auto open = std::make_unique<Open>();
        open->path = path;
        open->database = std::make_unique<SQLite::Database>(
            "", SQLite::OPEN_READWRITE | SQLite::OPEN_CREATE | SQLite::OPEN_NOMUTEX);
        SQLite::Backup(*open->database, source.database()).executeStep();
        setUp(*open->database);
        migrate(*open->database, {}, migrations());
        Logbook logbook(std::move(open));
        refreshShippedLibrary(logbook, now);
        return logbook;
    });
}

Logbook Logbook::inMemory(Moment now)
{
    return translateErrors({}, [&] {
        auto open = std::make_unique<Open>();
        open->database = std::make_unique<SQLite::Database>(":memory:", SQLite::OPEN_READWRITE);
        setUp(*open->database);
        open->database->exec(fmt::format("PRAGMA application_id = {}", kApplicationId));
        migrate(*open->database, {}, migrations());
        Logbook logbook(std::move(open));
        refreshShippedLibrary(logbook, now);
        return logbook;
    });
}

void Logbook::close()
{
    if (!m_open) {
        return;
    }
    const std::unique_ptr<Open> open = std::move(m_open);
    if (!open->database || !open->lock.isHeld()) { // read only, or no file
        return;
    }
    translateErrors(open->path, [&] {
        // A reader that is still there keeps the log; whoever closes last clears it up.
        open->database->setBusyTimeout(0);
        const int busy = open->database->execAndGet("PRAGMA wal_checkpoint(TRUNCATE)").getInt();
        if (busy == 0) {
            SQLite::Statement leave(*open->database, "PRAGMA journal_mode = DELETE");
            static_cast<void>(leave.tryExecuteStep());
        }
    });
}

bool Logbook::canWrite() const
{
    return m_open->mode == OpenMode::ReadWrite;
}

const std::filesystem::path& Logbook::path() const
{
    return m_open->path;
}

int Logbook::schemaVersion() const
{
    return translateErrors(path(),
                           [&] { return database().execAndGet("PRAGMA user_version").getInt(); });
}

std::int64_t Logbook::dataVersion() const
{
    return translateErrors(path(),
                           [&] { return database().execAndGet("PRAGMA data_version").getInt64(); });
}

FileState Logbook::state() const
{
    return {dataVersion(), sqlite3_total_changes(m_open->database->getHandle())};
}

RememberedCurves& Logbook::rememberedCurves() const
{
    return m_curves;
}

void Logbook::interrupt() noexcept
{
    sqlite3_interrupt(m_open->database->getHandle());
}

SQLite::Database& Logbook::database() const
{
    return *m_open->database;
}

} // namespace levelbar::storage
