// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "storage/logbook.h"

#include <filesystem>

namespace levelbar::storage {

// Writes a whole copy of the logbook as it stands now, also while somebody works in it. The copy
// appears whole or not at all, readable by its owner only. Corrupt when the logbook is damaged (it
// is checked first); Exists when the target is there, or what an earlier file of that name left.
void backUp(const Logbook& logbook, const std::filesystem::path& target);

// Makes a logbook from a backup, an older schema's included. The backup is checked first: Corrupt
// when it is not sound. Exists when the target is there.
void restoreBackup(const std::filesystem::path& backup,
                   const std::filesystem::path& target,
                   Moment now);

} // namespace levelbar::storage
