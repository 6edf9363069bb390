// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "storage/writer_lock.h"

#include "storage/store_error.h"

#include <cerrno>
#include <fcntl.h>
#include <sys/file.h>
#include <sys/stat.h>
#include <unistd.h>
#include <utility>

namespace levelbar::storage {

namespace {

// Whether the descriptor is still the file of that name: the holder before us removes it.
bool isCurrent(int descriptor, const std::filesystem::path& path)
{
    struct stat held {};

    struct stat named {};

    return ::fstat(descriptor, &held) == 0 && ::stat(path.c_str(), &named) == 0 &&
           held.st_ino == named.st_ino && held.st_dev == named.st_dev;
}

} // namespace

WriterLock::WriterLock(const std::filesystem::path& logbook)
    : m_path(logbook)
{
    m_path += "-lock";
    constexpr int kTries = 100;
    for (int attempt = 0; attempt < kTries; ++attempt) {
        const int descriptor = ::open(m_path.c_str(), O_RDWR | O_CREAT | O_CLOEXEC, 0600);
        if (descriptor < 0) {
            throw StoreError(StoreErrorKind::ReadOnly,
                             logbook.string() +
                                 " may not be written: its folder refuses new files.");
        }
        if (::flock(descriptor, LOCK_EX | LOCK_NB) != 0) {
            ::close(descriptor);
            throw StoreError(
                StoreErrorKind::Busy,
                logbook.string() +
                    " is being written by another program; close it there and try again.");
        }
        if (isCurrent(descriptor, m_path)) {
            m_descriptor = descriptor;
            return;
        }
        ::close(descriptor);
    }
    throw StoreError(StoreErrorKind::Busy,
                     logbook.string() + " is being opened and closed too fast.");
}

WriterLock::WriterLock(WriterLock&& other) noexcept
    : m_path(std::move(other.m_path))
    , m_descriptor(std::exchange(other.m_descriptor, -1))
{
}

WriterLock& WriterLock::operator=(WriterLock&& other) noexcept
{
    if (this != &other) {
        release();
        m_path = std::move(other.m_path);
        m_descriptor = std::exchange(other.m_descriptor, -1);
    }
    return *this;
}

WriterLock::~WriterLock()
{
    release();
}

void WriterLock::release() noexcept
{
    if (m_descriptor >= 0) {
        ::unlink(m_path.c_str());
        ::close(m_descriptor);
        m_descriptor = -1;
    }
}

} // namespace levelbar::storage
