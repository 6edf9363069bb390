// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "storage/whole_file.h"

#include "storage/store_error.h"

#include <cerrno>
#include <fcntl.h>
#include <fstream>
#include <unistd.h>

namespace levelbar::storage {

void makePrivateFile(const std::filesystem::path& path)
{
    const int descriptor = ::open(path.c_str(), O_RDWR | O_CREAT | O_EXCL | O_CLOEXEC, 0600);
    if (descriptor >= 0) {
        ::close(descriptor);
        return;
    }
    if (errno == EEXIST) {
        throw StoreError(StoreErrorKind::Exists,
                         path.string() + " is there already; choose another name.");
    }
    throw StoreError(StoreErrorKind::ReadOnly,
                     path.string() + " cannot be made; check that its folder is there and may be "
                                     "written.");
}

void refuseLeftovers(const std::filesystem::path& logbook)
{
    std::error_code error;
    if (std::filesystem::exists(logbook, error)) {
        return; // theirs, and the name is taken anyway
    }
    for (const char* ending : {"-wal", "-journal"}) {
        std::filesystem::path left = logbook;
        left += ending;
        if (std::filesystem::exists(left, error)) {
            throw StoreError(StoreErrorKind::Exists,
                             left.string() + " is left from a logbook that is gone; move it away "
                                             "or choose another name.");
        }
    }
}

void makeFolder(const std::filesystem::path& folder)
{
    std::error_code error;
    std::filesystem::create_directories(folder, error);
    if (error || !std::filesystem::is_directory(folder, error)) {
        throw StoreError(StoreErrorKind::ReadOnly,
                         folder.string() + " cannot be made a folder; choose another place.");
    }
}

bool syncToDisk(const std::filesystem::path& path)
{
    const int descriptor = ::open(path.c_str(), O_RDONLY | O_CLOEXEC);
    if (descriptor < 0) {
        return false;
    }
    const bool isDone = ::fsync(descriptor) == 0;
    ::close(descriptor);
    return isDone;
}

namespace {

void fill(const std::filesystem::path& temporary,
          const std::filesystem::path& path,
          const std::function<void(std::ostream& out)>& write)
{
    std::ofstream out(temporary, std::ios::binary | std::ios::trunc);
    if (!out) {
        throw StoreError(StoreErrorKind::ReadOnly,
                         path.string() + " cannot be written; choose another place.");
    }
    write(out);
    out.flush();
    if (!out || !syncToDisk(temporary)) {
        throw StoreError(StoreErrorKind::Full,
                         path.string() + " could not be written; is the disk full?");
    }
}

} // namespace

void writeWholeFile(const std::filesystem::path& path,
                    const std::function<void(std::ostream& out)>& write)
{
    std::filesystem::path temporary = path;
    temporary += ".part";
    std::error_code ignored;
    std::filesystem::remove(temporary, ignored);
    makePrivateFile(temporary);
    try {
        fill(temporary, path, write);
    } catch (...) {
        std::filesystem::remove(temporary, ignored);
        throw;
    }
    std::error_code error;
    std::filesystem::rename(temporary, path, error);
    if (error) {
        std::filesystem::remove(temporary, ignored);
        throw StoreError(StoreErrorKind::ReadOnly,
                         path.string() + " cannot be written; choose another place.");
    }
    syncToDisk(path.has_parent_path() ? path.parent_path() : ".");
}

} // namespace levelbar::storage
