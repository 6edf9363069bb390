// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <filesystem>

namespace levelbar::storage {

// The right to write a logbook: one process at a time, by flock on a file beside it. Gone with
// the process, however it ends.
class WriterLock {
public:
    WriterLock() = default;
    // StoreError Busy when another process (or another lock in this one) holds it; ReadOnly when
    // the folder may not be written.
    explicit WriterLock(const std::filesystem::path& logbook);
    WriterLock(WriterLock&& other) noexcept;
    WriterLock& operator=(WriterLock&& other) noexcept;
    ~WriterLock();

    [[nodiscard]] bool isHeld() const { return m_descriptor >= 0; }

    void release() noexcept; // removes the file, too

private:
    std::filesystem::path m_path;
    int m_descriptor = -1;
};

} // namespace levelbar::storage
