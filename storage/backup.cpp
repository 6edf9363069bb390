// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "storage/backup.h"

#include "storage/database_copy.h"
#include "storage/integrity.h"

namespace levelbar::storage {

void backUp(const Logbook& logbook, const std::filesystem::path& target)
{
    requireSound(logbook, Thoroughness::Full, "no copy was made; keep the backups there are.");
    copyDatabase(logbook.database(), logbook.path(), target);
}

void restoreBackup(const std::filesystem::path& backup,
                   const std::filesystem::path& target,
                   Moment now)
{
    OpenOptions options;
    options.mode = OpenMode::ReadOnly;
    options.takesOlder = true; // it is brought up to date when it is opened
    const Logbook source = Logbook::open(backup, now, options);
    requireSound(source, Thoroughness::Full, "it was not restored; try an older backup.");
    copyDatabase(source.database(), source.path(), target);
}

} // namespace levelbar::storage
