// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "storage/sqlite_errors.h"

#include <SQLiteCpp/Exception.h>
#include <sqlite3.h>

namespace levelbar::storage {

namespace {

StoreErrorKind kindOf(int code)
{
    switch (code & 0xFF) { // the primary code of an extended one
    case SQLITE_BUSY:
    case SQLITE_LOCKED:
        return StoreErrorKind::Busy;
    case SQLITE_FULL:
        return StoreErrorKind::Full;
    case SQLITE_READONLY:
    case SQLITE_PERM:
        return StoreErrorKind::ReadOnly;
    case SQLITE_CORRUPT:
        return StoreErrorKind::Corrupt;
    case SQLITE_NOTADB:
        return StoreErrorKind::NotALogbook;
    case SQLITE_CONSTRAINT:
        return StoreErrorKind::Constraint;
    case SQLITE_INTERRUPT:
        return StoreErrorKind::Interrupted;
    case SQLITE_CANTOPEN:
        return StoreErrorKind::NotFound;
    default:
        return StoreErrorKind::Other;
    }
}

std::string sentenceFor(StoreErrorKind kind, const std::string& name, const std::string& detail)
{
    switch (kind) {
    case StoreErrorKind::Busy:
        return name + " is being written by another program; close it there and try again.";
    case StoreErrorKind::Full:
        return "The disk is full: " + name + " could not be written. Make room and try again.";
    case StoreErrorKind::ReadOnly:
        return name + " may not be written; check its permissions.";
    case StoreErrorKind::Corrupt:
        return name + " is damaged (" + detail + "); restore a backup.";
    case StoreErrorKind::NotALogbook:
        return name + " is not a Levelbar logbook.";
    case StoreErrorKind::Constraint:
        return "The values contradict what is stored (" + detail + ").";
    case StoreErrorKind::Interrupted:
        return "Reading " + name + " was stopped.";
    case StoreErrorKind::NotFound:
        return name + " cannot be opened; check that it and its folder are there.";
    case StoreErrorKind::Exists:
    case StoreErrorKind::TooNew:
    case StoreErrorKind::Other:
        break;
    }
    return name + " could not be read or written (" + detail + ").";
}

} // namespace

StoreError asStoreError(const SQLite::Exception& error, const std::filesystem::path& path)
{
    const StoreErrorKind kind = kindOf(
        error.getExtendedErrorCode() != -1 ? error.getExtendedErrorCode() : error.getErrorCode());
    const std::string name = path.empty() ? "The logbook" : path.string();
    return {kind, sentenceFor(kind, name, error.what())};
}

void rethrowAsStoreError(const std::filesystem::path& path)
{
    try {
        throw;
    } catch (const SQLite::Exception& error) {
        throw asStoreError(error, path);
    }
}

} // namespace levelbar::storage
