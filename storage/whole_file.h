// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <filesystem>
#include <functional>
#include <iosfwd>

namespace levelbar::storage {

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
