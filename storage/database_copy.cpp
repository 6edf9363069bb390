// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "storage/database_copy.h"

#include "storage/sqlite_errors.h"
#include "storage/store_error.h"
#include "storage/whole_file.h"

namespace levelbar::storage {

namespace {

void copyInto(SQLite::Database& database,
              const std::filesystem::path& source,
              const std::filesystem::path& temporary)
{
    makePrivateFile(temporary); // SQLite takes an empty file as it is, with its permissions
    try {
        SQLite::Statement copy(database, "VACUUM INTO ?");
        copy.bind(1, temporary.string());
        copy.exec();
    } catch (const SQLite::Exception& error) {
        // Reading and writing fail in one statement: damage is the logbook's, all else the copy's.
        const StoreError atSource = asStoreError(error, source);
        const bool isDamaged = atSource.kind() == StoreErrorKind::Corrupt ||
                               atSource.kind() == StoreErrorKind::NotALogbook;
        throw isDamaged ? atSource : asStoreError(error, temporary);
    }
}

} // namespace

void copyDatabase(SQLite::Database& database,
                  const std::filesystem::path& source,
                  const std::filesystem::path& target)
{
    refuseLeftovers(target);
    std::error_code error;
    if (std::filesystem::exists(target, error)) {
        throw StoreError(StoreErrorKind::Exists,
                         target.string() + " is there already; choose another name.");
    }
    std::filesystem::path temporary = target;
    temporary += ".part";
    std::filesystem::remove(temporary, error);
    try {
        copyInto(database, source, temporary);
        if (!syncToDisk(temporary)) {
            throw StoreError(StoreErrorKind::Full, target.string() + " could not be written.");
        }
        std::filesystem::rename(temporary, target, error);
        if (error) {
            throw StoreError(StoreErrorKind::ReadOnly, target.string() + " could not be written.");
        }
    } catch (...) {
        std::filesystem::remove(temporary, error);
        throw;
    }
    syncToDisk(target.has_parent_path() ? target.parent_path() : ".");
}

} // namespace levelbar::storage
