// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/cli/command.h"
#include "app/cli/json_print.h"
#include "app/demo_gym.h"
#include "core/base/fault.h"
#include "storage/backup.h"
#include "storage/erase.h"
#include "storage/exchange/export.h"
#include "storage/integrity.h"
#include "storage/member_store.h"
#include "storage/store_error.h"

#include <fmt/format.h>

#include <filesystem>

namespace levelbar::cli {

namespace {

constexpr const char* kRemedy = "restore a backup.";

// Whatever its schema and its state: to check it, or to copy it as it is.
storage::Logbook openAsItIs(const std::string& path, const Clock& clock)
{
    storage::OpenOptions options;
    options.mode = storage::OpenMode::ReadOnly;
    options.takesOlder = true;
    return storage::Logbook::open(path, clock.now, options);
}

} // namespace

storage::Logbook openForReading(const std::string& path, const Clock& clock)
{
    storage::OpenOptions options;
    options.mode = storage::OpenMode::ReadOnly;
    storage::Logbook logbook = storage::Logbook::open(path, clock.now, options);
    storage::requireSound(logbook, storage::Thoroughness::Quick, kRemedy);
    return logbook;
}

storage::Logbook openForWriting(const std::string& path, const Clock& clock)
{
    storage::requireSound(openAsItIs(path, clock), storage::Thoroughness::Quick, kRemedy);
    return storage::Logbook::open(path, clock.now);
}

namespace {

bool addDemo(storage::Logbook& logbook, const Clock& clock)
{
    const storage::ImportReport report = addDemoGym(logbook, clock.now);
    printFaults(report);
    return report.faults.empty();
}

// With what SQLite leaves beside it when it cannot close as it should.
void removeWhole(storage::Logbook logbook, const std::string& path)
{
    {
        const storage::Logbook closed = std::move(logbook);
    }
    std::error_code ignored;
    for (const char* ending : {"", "-wal", "-shm"}) {
        std::filesystem::remove(path + ending, ignored);
    }
}

} // namespace

int runNew(const NewOptions& options, const Clock& clock)
{
    storage::Logbook logbook = storage::Logbook::create(options.logbook, clock.now);
    try {
        if (options.demo && !addDemo(logbook, clock)) {
            removeWhole(std::move(logbook), options.logbook);
            return kInputAtFault;
        }
        logbook.close();
    } catch (...) {
        removeWhole(std::move(logbook), options.logbook); // half a demo is none
        throw;
    }
    fmt::print("Made {}{}.\n", options.logbook, options.demo ? " with the invented gym in it" : "");
    return kDone;
}

int runExport(const std::string& path, const std::string& folder, const Clock& clock)
{
    const storage::Logbook logbook = openForReading(path, clock);
    storage::exportCsv(logbook, folder);
    fmt::print("Wrote members.csv, sets.csv and tests.csv into {}.\n", folder);
    return kDone;
}

namespace {

// A file that is damaged so that it cannot even be opened has a fault, like any other.
storage::IntegrityReport checked(const std::string& path, const Clock& clock)
{
    try {
        return storage::checkIntegrity(openAsItIs(path, clock));
    } catch (const storage::StoreError& error) {
        if (error.kind() != storage::StoreErrorKind::Corrupt) {
            throw;
        }
        storage::IntegrityReport report;
        report.faults.emplace_back(error.what());
        return report;
    }
}

} // namespace

int runCheck(const CheckOptions& options, const Clock& clock)
{
    const storage::IntegrityReport report = checked(options.logbook, clock);
    if (options.json) {
        printJson({{"sound", report.isSound()},
                   {"schema_version", report.schemaVersion},
                   {"members", report.members},
                   {"sets", report.sets},
                   {"tests", report.trials},
                   {"faults", report.faults}});
    } else {
        fmt::print("{}: schema {}, {} people, {} sets, {} trials of tests.\n",
                   options.logbook,
                   report.schemaVersion,
                   report.members,
                   report.sets,
                   report.trials);
        fmt::print("{}",
                   report.isSound() ? "Sound: nothing wrong was found.\n"
                                    : "Not sound; the faults follow.\n");
    }
    for (const std::string& fault : report.faults) {
        atFault(options.logbook, fault);
    }
    return report.isSound() ? kDone : kInputAtFault;
}

int runBackup(const std::string& path, const std::string& file, const Clock& clock)
{
    storage::backUp(openAsItIs(path, clock), file); // looks at all of it itself
    fmt::print("Copied {} to {}.\n", path, file);
    return kDone;
}

int runRestore(const std::string& file, const std::string& path, const Clock& clock)
{
    storage::restoreBackup(file, path, clock.now);
    fmt::print("Made {} from {}.\n", path, file);
    return kDone;
}

int runErase(const std::string& path, const std::string& code, const Clock& clock)
{
    storage::Logbook logbook = openForWriting(path, clock);
    const auto member = storage::MemberStore(logbook).find(code);
    if (!member) {
        return atFault(path, sentence(Fault{FaultCode::UnknownMember, {excerpt(code)}}));
    }
    storage::eraseMember(logbook, member->id);
    logbook.close();
    fmt::print("Removed {} from {} for good. Backups and exports made before still hold them.\n",
               code,
               path);
    return kDone;
}

} // namespace levelbar::cli
