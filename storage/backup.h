// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "storage/logbook.h"

#include <filesystem>

namespace levelbar::storage {

// Writes a whole copy of the logbook as it stands now, also while somebody works in it. The copy
// appears whole or not at all. Exists when the target is there.
void backUp(const Logbook& logbook, const std::filesystem::path& target);

// Makes a logbook from a backup. The backup is checked first: Corrupt when it is not sound.
// Exists when the target is there.
void restoreBackup(const std::filesystem::path& backup,
                   const std::filesystem::path& target,
                   Moment now);

} // namespace levelbar::storage
