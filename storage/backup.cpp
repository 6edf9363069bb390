// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "storage/backup.h"

#include "storage/integrity.h"
#include "storage/rows.h"
#include "storage/sqlite_errors.h"
#include "storage/whole_file.h"

namespace levelbar::storage {

void backUp(const Logbook& logbook, const std::filesystem::path& target)
{
    std::error_code error;
    if (std::filesystem::exists(target, error)) {
        throw StoreError(StoreErrorKind::Exists,
                         target.string() + " is there already; choose another name.");
    }
    std::filesystem::path temporary = target;
    temporary += ".part";
    std::filesystem::remove(temporary, error);
    try {
        translateErrors(target, [&] {
            SQLite::Statement copy(logbook.database(), "VACUUM INTO ?");
            copy.bind(1, temporary.string());
            copy.exec();
        });
    } catch (...) {
        std::filesystem::remove(temporary, error);
        throw;
    }
    std::filesystem::permissions(
        temporary, std::filesystem::perms::owner_read | std::filesystem::perms::owner_write, error);
    const bool isOnDisk = syncToDisk(temporary);
    std::filesystem::rename(temporary, target, error);
    if (!isOnDisk || error) {
        std::filesystem::remove(temporary, error);
        throw StoreError(StoreErrorKind::Full, target.string() + " could not be written.");
    }
    syncToDisk(target.has_parent_path() ? target.parent_path() : ".");
}

void restoreBackup(const std::filesystem::path& backup,
                   const std::filesystem::path& target,
                   Moment now)
{
    OpenOptions options;
    options.mode = OpenMode::ReadOnly;
    const Logbook source = Logbook::open(backup, now, options);
    const IntegrityReport report = checkIntegrity(source);
    if (!report.isSound()) {
        throw StoreError(StoreErrorKind::Corrupt,
                         backup.string() + " is damaged (" + report.faults.front() +
                             "); it was not restored.");
    }
    backUp(source, target);
}

} // namespace levelbar::storage
