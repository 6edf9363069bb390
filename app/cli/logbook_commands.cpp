// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/cli/command.h"
#include "resources/embedded.h"
#include "storage/backup.h"
#include "storage/erase.h"
#include "storage/exchange/export.h"
#include "storage/integrity.h"
#include "storage/member_store.h"
#include "storage/store_error.h"

#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include <filesystem>

namespace levelbar::cli {

storage::Logbook openForReading(const std::string& path, const Clock& clock)
{
    storage::OpenOptions options;
    options.mode = storage::OpenMode::ReadOnly;
    return storage::Logbook::open(path, clock.now, options);
}

int runNew(const NewOptions& options, const Clock& clock)
{
    storage::Logbook logbook = storage::Logbook::create(options.logbook, clock.now);
    if (options.demo) {
        storage::ImportRequest request;
        request.members = {"demo members.csv", resources::demoMembersCsv()};
        request.sets = {"demo sets.csv", resources::demoSetsCsv()};
        request.tests = {"demo tests.csv", resources::demoTestsCsv()};
        const storage::ImportReport report = storage::importCsv(logbook, request, clock.now);
        printFaults(report);
        if (!report.faults.empty()) {
            return kInputAtFault;
        }
    }
    logbook.close();
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

int runCheck(const CheckOptions& options, const Clock& clock)
{
    const storage::Logbook logbook = openForReading(options.logbook, clock);
    const storage::IntegrityReport report = storage::checkIntegrity(logbook);
    if (options.json) {
        const nlohmann::ordered_json json = {{"sound", report.isSound()},
                                             {"schema_version", report.schemaVersion},
                                             {"members", report.members},
                                             {"sets", report.sets},
                                             {"tests", report.trials},
                                             {"faults", report.faults}};
        fmt::print("{}\n", json.dump(2));
    } else {
        fmt::print("{}: schema {}, {} people, {} sets, {} trials of tests.\n",
                   options.logbook,
                   report.schemaVersion,
                   report.members,
                   report.sets,
                   report.trials);
        if (report.isSound()) {
            fmt::print("Sound: nothing wrong was found.\n");
        }
    }
    for (const std::string& fault : report.faults) {
        fmt::print(stderr, "{}: {}\n", options.logbook, fault);
    }
    return report.isSound() ? kDone : kInputAtFault;
}

int runBackup(const std::string& path, const std::string& file, const Clock& clock)
{
    const storage::Logbook logbook = openForReading(path, clock);
    storage::backUp(logbook, file);
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
    storage::Logbook logbook = storage::Logbook::open(path, clock.now);
    const auto member = storage::MemberStore(logbook).find(code);
    if (!member) {
        fmt::print(stderr, "{}: there is no member '{}'\n", path, code);
        return kInputAtFault;
    }
    storage::eraseMember(logbook, member->id);
    logbook.close();
    fmt::print("Removed {} from {} for good. Backups and exports made before still hold them.\n",
               code,
               path);
    return kDone;
}

} // namespace levelbar::cli
