// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <filesystem>
#include <functional>
#include <iosfwd>

namespace levelbar::storage {

// Makes an empty file that nobody but its owner may read, from the first moment on. StoreError
// Exists when something of that name is there, ReadOnly when the folder refuses.
void makePrivateFile(const std::filesystem::path& path);

// StoreError Exists when SQLite's files of a logbook of that name, which is gone, still lie about:
// SQLite would play them into the new one.
void refuseLeftovers(const std::filesystem::path& logbook);

// Makes the folder and what lies above it; StoreError ReadOnly when that is refused.
void makeFolder(const std::filesystem::path& folder);

// Writes a file so that it appears whole or not at all, also when the power fails: into a
// temporary neighbour, on to the disk, then renamed. Readable by its owner only. StoreError Full
// or ReadOnly; an older file of that name stays as it was then.
void writeWholeFile(const std::filesystem::path& path,
                    const std::function<void(std::ostream& out)>& write);

// Brings a file or folder on to the disk. False when the system refuses.
bool syncToDisk(const std::filesystem::path& path);

} // namespace levelbar::storage
