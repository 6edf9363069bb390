// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "storage/whole_file.h"

#include "storage/store_error.h"

#include <fcntl.h>
#include <fstream>
#include <unistd.h>

namespace levelbar::storage {

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

void writeWholeFile(const std::filesystem::path& path,
                    const std::function<void(std::ostream& out)>& write)
{
    std::filesystem::path temporary = path;
    temporary += ".part";
    std::error_code ignored;
    std::filesystem::remove(temporary, ignored);
    {
        std::ofstream out(temporary, std::ios::binary | std::ios::trunc);
        std::filesystem::permissions(temporary,
                                     std::filesystem::perms::owner_read |
                                         std::filesystem::perms::owner_write,
                                     ignored);
        if (!out) {
            throw StoreError(StoreErrorKind::ReadOnly,
                             path.string() + " cannot be written; choose another place.");
        }
        write(out);
        out.flush();
        if (!out || !syncToDisk(temporary)) {
            std::filesystem::remove(temporary, ignored);
            throw StoreError(StoreErrorKind::Full,
                             path.string() + " could not be written; is the disk full?");
        }
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
